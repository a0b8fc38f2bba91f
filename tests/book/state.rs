//! Today's state: versions, putting away, batches, looking up, and entries that change nothing.

use super::sample::{began, does, ended, entry, id, ingredient, plan, said, undo};
use potside::book::{Act, Journal, Refusal, Settings, Subject};
use potside::formula::Recipe;
use potside::pot::Residue;
use potside::quantity::{Amount, Exact, Mass, MassUnit, Quantity, Voice};
use potside::shelf::Finish;

pub(crate) fn journal() -> Journal {
    Journal::open(vec![], "tablet")
}

#[test]
fn a_change_makes_a_new_version_and_keeps_the_old_one() {
    let mut j = journal();
    let first = does(&mut j, ingredient("w", "Meadow wax", 860));
    let mut change = ingredient("w", "Meadow wax", 862);
    if let Act::Ingredient { over, .. } = &mut change {
        *over = Some(first.id.clone());
    }
    let second = does(&mut j, change);
    let kept = j.state().ingredients.get(&id("w")).unwrap();
    assert_eq!(kept.versions.len(), 2);
    assert_eq!(kept.latest().map(|v| (&v.entry, v.over.as_ref())), Some((&second.id, Some(&first.id))));
    assert_eq!(kept.version(&first.id).map(|(n, v)| (n, v.body.density)), {
        let density = Some(potside::quantity::Density::base(Exact::ratio(860, 1000)));
        Some((1, density))
    });
    assert_eq!(kept.version(&id("other")), None);
}

#[test]
fn what_is_put_away_is_not_shown_and_comes_back() {
    let mut j = journal();
    does(&mut j, ingredient("b", "beeswax", 1));
    does(&mut j, ingredient("a", "Almond wax", 1));
    let names = |j: &Journal| -> Vec<String> {
        let shown = j.state().ingredients_shown();
        shown.iter().filter_map(|k| k.body()).map(|i| i.name.clone()).collect()
    };
    assert_eq!(names(&j), ["Almond wax", "beeswax"]);
    does(&mut j, Act::Retire { id: id("a"), retired: true });
    assert_eq!(names(&j), ["beeswax"]);
    does(&mut j, Act::Retire { id: id("a"), retired: false });
    assert_eq!(names(&j), ["Almond wax", "beeswax"]);
}

#[test]
fn settings_are_the_latest_and_undone_are_the_ones_before() {
    let mut j = journal();
    let each = |grams| Residue::Each(Amount::new(Exact::whole(grams), MassUnit::Gram));
    let settings = |grams| Act::Settings(Settings { residue: each(grams), ..Settings::default() });
    let first = does(&mut j, settings(5));
    let last = does(&mut j, settings(8));
    assert_eq!(j.state().settings.residue, each(8));
    does(&mut j, undo(&last.id));
    assert_eq!(j.state().settings.residue, each(5));
    does(&mut j, undo(&first.id));
    assert_eq!(j.state().settings, Settings::default());
}

#[test]
fn a_batch_begins_runs_and_ends_and_undo_takes_back_each() {
    let mut j = journal();
    does(&mut j, began("b1", 4));
    let noted = does(&mut j, said("b1", "window was open"));
    assert_eq!(j.state().running().map(|b| &b.id), Some(&id("b1")));
    let end = does(&mut j, ended("b1", "all good"));
    assert!(j.state().running().is_none());
    let batch = j.state().batches.get(&id("b1")).unwrap();
    assert_eq!((batch.run.plan.vessels, batch.run.events().len(), batch.run.entries().len()), (4, 1, 3));
    assert_eq!(batch.ended.as_ref().map(|(_, at, note)| (*at, note.as_str())), Some((end.at, "all good")));
    does(&mut j, undo(&end.id));
    assert!(j.state().running().is_some());
    does(&mut j, undo(&noted.id));
    assert_eq!(j.state().batches.get(&id("b1")).unwrap().run.events().len(), 0);
}

#[track_caller]
fn ignored(j: &Journal, want: &[Refusal]) {
    let got: Vec<&Refusal> = j.state().ignored.values().map(|i| &i.why).collect();
    assert_eq!(got, want.iter().collect::<Vec<_>>());
    for why in want {
        assert!(why.to_string().ends_with('.'), "{why}");
    }
}

#[test]
fn an_entry_that_cannot_be_done_is_counted_and_changes_nothing() {
    let mut j = journal();
    let begin = does(&mut j, began("b1", 4));
    let again = began("b1", 9);
    for (act, why) in [
        (again, Refusal::BegunAlready),
        (said("b0", "lost"), Refusal::NoSuchBatch),
        (ended("b0", "lost"), Refusal::NoSuchBatch),
        (Act::Retire { id: id("t"), retired: true }, Refusal::NoSuchThing),
        (crowd(10_001), Refusal::TooManyVessels { vessels: 10_001 }),
    ] {
        let e = does(&mut j, act);
        assert_eq!(j.state().ignored.get(&e.id).map(|i| i.why.clone()), Some(why.clone()));
        assert!(why.to_string().ends_with('.'), "{why}");
        does(&mut j, undo(&e.id));
        ignored(&j, &[]);
    }
    assert_eq!(j.state().batches.len(), 1);
    does(&mut j, said("b1", "kept"));
    does(&mut j, undo(&begin.id));
    assert!(j.state().batches.is_empty());
    ignored(&j, &[Refusal::NoSuchBatch]);
}

/// Nothing is done to candles whose wax is not solid, and nothing solid is said of a pour that is not over.
#[test]
fn finishing_comes_after_the_pour_and_says_when_it_is_closed() {
    let mut j = journal();
    does(&mut j, began("b", 4));
    let tick = |step, done| Act::Ticked { batch: id("b"), step, done };
    let refused = |j: &Journal| j.state().ignored.values().filter(|i| i.why == Refusal::NotSolid).count();
    does(&mut j, tick(Finish::Solid, true));
    does(&mut j, tick(Finish::Trimmed, true));
    assert_eq!(refused(&j), 2);
    does(&mut j, ended("b", "well"));
    does(&mut j, tick(Finish::Trimmed, true));
    assert_eq!(refused(&j), 3);
    let closed = |j: &Journal| j.state().batches.get(&id("b")).and_then(|b| b.closed);
    does(&mut j, tick(Finish::Solid, true));
    does(&mut j, tick(Finish::Trimmed, true));
    assert_eq!((refused(&j), closed(&j)), (3, None));
    let at = does(&mut j, tick(Finish::Closed, true)).at;
    assert_eq!(closed(&j), Some(at));
    does(&mut j, tick(Finish::Closed, false));
    assert_eq!(closed(&j), None);
}

#[test]
fn nobody_is_removed_who_is_not_here() {
    let mut j = journal();
    let gone = does(&mut j, Act::Forgotten { customer: id("nobody") });
    assert_eq!(j.state().ignored.get(&gone.id).map(|i| i.why.clone()), Some(Refusal::NoSuchThing));
}

#[test]
fn the_largest_batch_begins() {
    let mut j = journal();
    does(&mut j, crowd(10_000));
    assert_eq!((j.state().batches.len(), j.state().ignored.len()), (1, 0));
}

/// A plan that no planning makes.
fn crowd(vessels: u32) -> Act {
    let mut plan = plan(2);
    plan.vessels = vessels;
    Act::Began {
        batch: id("b"),
        formula: id("f"),
        version: id("e"),
        vessel: id("v"),
        day: None,
        plan: plan.into(),
    }
}

#[test]
fn hostile_counts_of_vessels_are_refused() {
    let mut all = plan(2);
    all.pours[0].vessels = u32::MAX;
    all.pours.push(all.pours[0].clone());
    let act = Act::Began {
        batch: id("b"),
        formula: id("f"),
        version: id("e"),
        vessel: id("v"),
        day: None,
        plan: all.into(),
    };
    let j = Journal::open(vec![entry("e", 1, act).to_line()], "here");
    ignored(&j, &[Refusal::TooManyVessels { vessels: 2 * u64::from(u32::MAX) }]);
}

#[test]
fn an_ingredient_is_known_by_its_name_and_the_latest_word_counts() {
    let mut j = journal();
    does(&mut j, ingredient("w1", "Meadow Wax ", 860));
    does(&mut j, ingredient("w2", "meadow wax", 870));
    let density =
        |j: &Journal| j.state().ingredient(" MEADOW WAX").and_then(|i| i.density).map(|d| d.in_base());
    assert_eq!(density(&j), Some(Exact::ratio(870, 1000)));
    does(&mut j, ingredient("w1", "Meadow wax", 862));
    assert_eq!(density(&j), Some(Exact::ratio(862, 1000)));
    // Put away, it gives way to one that is not.
    does(&mut j, Act::Retire { id: id("w1"), retired: true });
    assert_eq!(density(&j), Some(Exact::ratio(870, 1000)));
    assert!(j.state().ingredient("chalk wax").is_none());
    assert!(j.state().drop_mass("meadow wax").is_none() && j.state().bulk_density("meadow wax").is_none());
}

#[test]
fn what_fills_a_vessel_needs_the_density_of_each_wax_unless_it_is_a_weight() {
    let mut j = super::demo::workshop();
    let fill = |j: &Journal, vessel: &str| {
        let s = j.state();
        let formula = s.formulas.get(&id("demo-hedge")).unwrap().body().expect("it has a version");
        s.fill(
            s.vessels.get(&id(vessel)).unwrap().body().expect("it has a version"),
            formula,
            Voice::default(),
        )
    };
    // 1 ÷ (0.7 ÷ 0.862 + 0.3 ÷ 0.791) = 0.681842 ÷ 0.8123, worked out by hand: 0.839396775 to nine places.
    let formula = j.state().formulas.get(&id("demo-hedge")).unwrap().body().expect("it has a version");
    let (density, why) = j.state().wax_density(formula, Voice::default()).expect("both are known");
    assert_eq!(density.in_base(), Exact::ratio(839_396_775, 1_000_000_000));
    assert_eq!(why.values.len(), 2);
    assert!(fill(&j, "demo-tin").is_ok());
    let act = j
        .entries()
        .iter()
        .find(|e| e.act.subject() == Subject::Thing(&id("demo-wax-harbour")))
        .map(|e| e.id.clone());
    does(&mut j, undo(&act.expect("it is in the workshop")));
    let why = fill(&j, "demo-tin").expect_err("a density is not known").say(Voice::default());
    assert!(why.contains("Harbour firm wax"), "{why}");
    assert_eq!(
        fill(&j, "demo-jar").map(|(mass, _)| mass),
        Ok(Mass::of(Exact::ratio(72, 10), MassUnit::Ounce))
    );
}

#[test]
fn weighings_are_known_by_name() {
    let j = super::demo::workshop();
    // 0.43 g, 0.42 g and 0.45 g for 20 drops each.
    assert_eq!(j.state().drop_mass(" BRICK DYE").map(|m| m.in_base()), Some(Exact::ratio(130, 100 * 60)));
    assert!(j.state().bulk_density("hard flake").is_some() && j.state().bulk_density("brick dye").is_none());
}
