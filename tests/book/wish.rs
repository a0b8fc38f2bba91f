//! What is wished for at the pot, in terms of the book.

use potside::bench::Ingredient;
use potside::book::{Act, Book, Id, State, Wish, WishError, demo};
use potside::day::Zone;
use potside::pot::{Dose, Residue, Target};
use potside::quantity::{Amount, Density, Exact, LengthUnit, Locale, MassUnit, Voice};
use potside::vessel::VesselError;

pub(crate) fn workshop() -> Book {
    let lines = demo("demo", 1_800_000_000_000, Zone::GREENWICH, || 7);
    Book::open(lines.into_iter().map(|(_, line)| line).collect(), "test")
}

pub(crate) fn id(text: &str) -> Id {
    Id(text.to_owned())
}

pub(crate) fn wish(formula: &str, vessel: &str) -> Wish {
    Wish {
        formula: id(formula),
        vessel: id(vessel),
        wick: "Cotton 14".to_owned(),
        target: Target::Vessels(4),
        residue: Residue::None,
        warmed: true,
        pot: None,
        shade: 0,
    }
}

#[track_caller]
fn refused(state: &State, wish: &Wish, expected: &str) {
    assert_eq!(state.plan(wish, Voice::default()).unwrap_err().say(Voice::default()), expected);
}

#[test]
fn a_wish_becomes_a_plan_with_the_names_of_the_book() {
    let book = workshop();
    let plan = book.state().plan(&wish("demo-orchard", "demo-jar"), Voice::default()).unwrap();
    let formula = book.state().formulas.get(&id("demo-orchard")).unwrap().body().unwrap();
    let vessel = book.state().vessels.get(&id("demo-jar")).unwrap().body().unwrap();
    assert_eq!((&plan.formula, &plan.vessel, plan.vessels), (&formula.name, &vessel.name, 4));
    assert_eq!((plan.wick.as_str(), plan.pot, plan.warmed), ("Cotton 14", None, true));
}

/// Whichever choice of drops is taken, its drops are in the plan and its words in the note.
#[test]
fn another_choice_of_drops_can_be_taken() {
    let book = workshop();
    let orchard =
        |vessels, shade| Wish { target: Target::Vessels(vessels), shade, ..wish("demo-orchard", "demo-jar") };
    let voice = Voice::default();
    let shades = |vessels| book.state().shades(&orchard(vessels, 0), voice).unwrap();
    // 3 and 6 drops for 4 vessels: `common practice, no source`.
    assert_eq!(shades(4), [""; 0], "exact as it is");
    let all = shades(3);
    assert_eq!(all.len(), 3);
    for (taken, words) in all.iter().enumerate() {
        let plan = book.state().plan(&orchard(3, taken), voice).unwrap();
        let mut drops = Vec::new();
        for line in &plan.pours[0].lines {
            if let Dose::Drops { drops: n, .. } = line.dose {
                drops.push(n);
                assert!(words.contains(&format!("{} {n} drop", line.name)), "{taken}: {words}");
            }
        }
        assert_eq!(drops.len(), 2);
    }
    let first = |shade| book.state().plan(&orchard(3, shade), voice).unwrap();
    assert_ne!(first(0), first(1));
    assert_eq!(first(0), first(9), "no such choice: the nearest");
}

#[test]
fn what_is_not_in_the_book_is_named() {
    let book = workshop();
    let state = book.state();
    refused(state, &wish("gone", "demo-jar"), "Choose a formula first.");
    refused(state, &wish("demo-orchard", "gone"), "Choose a vessel first.");
    let pot = Wish { pot: Some(id("gone")), ..wish("demo-orchard", "demo-jar") };
    refused(state, &pot, "That pot is not in this book any more. Choose another one.");
    let none = Wish { target: Target::Vessels(0), ..wish("demo-orchard", "demo-jar") };
    refused(state, &none, "That fills no vessel. Ask for at least one.");
    // Through all of them with the sign of who reads it.
    let mm = |tenths| Amount::new(Exact::ratio(tenths, 10), LengthUnit::Millimetre);
    let fill = VesselError::Headspace { headspace: mm(105), height: mm(100) };
    let why = WishError::Vessel { name: "Low tin".into(), why: fill };
    let comma = Voice { locale: Locale::Comma, ..Voice::default() };
    assert!(why.say(comma).starts_with("“Low tin”: A headspace of 10,5 mm leaves nothing"), "{why:?}");
}

#[test]
fn the_vessels_of_the_formula_come_first_with_their_wicks() {
    let book = workshop();
    let named = &book.state().formulas.get(&id("demo-orchard")).unwrap().body().unwrap().vessels;
    let offers = book.state().vessels_for(&id("demo-orchard"));
    for (offer, named) in offers.iter().zip(named) {
        assert_eq!((&offer.vessel, offer.wick.as_ref()), (&named.vessel, Some(&named.wick)));
    }
    for offer in &offers {
        assert_eq!(book.state().name(&offer.vessel), Some(offer.name.as_str()));
    }
    assert!(offers[named.len()..].iter().all(|o| o.wick.is_none()));
    let mut all: Vec<_> = offers.iter().map(|o| &o.vessel).collect();
    all.sort();
    let mut shown: Vec<_> = book.state().vessels_shown().into_iter().map(|k| &k.id).collect();
    shown.sort();
    assert_eq!(all, shown, "every vessel in use, each once");
}

#[test]
fn a_batch_is_made_again_as_it_was() {
    let book = workshop();
    let state = book.state();
    let batch = state.batches_shown()[0];
    let plan = state.plan(&state.again(batch), Voice::default()).unwrap();
    let before = &batch.run.plan;
    assert_eq!((&plan.vessel, &plan.wick, plan.vessels), (&before.vessel, &before.wick, before.vessels));
    assert_eq!((&plan.pot, plan.warmed, plan.total), (&before.pot, before.warmed, before.total));
}

/// Poured again it is today's formula: told where that is not the one of then.
#[test]
fn a_formula_changed_since_is_told() {
    let mut book = workshop();
    let batch = book.state().batches_shown()[0].clone();
    assert!(!book.state().changed_since(&batch));
    let formula = book.state().formulas.get(&batch.formula).unwrap().body().unwrap().clone();
    let write = |book: &mut Book, body| {
        book.act(Act::Formula { id: batch.formula.clone(), over: None, body }, 1, 1).unwrap();
    };
    let mut other = formula.clone();
    other.cure_days += 1;
    write(&mut book, other);
    assert!(book.state().changed_since(&batch));
    // Changed back it is the same.
    write(&mut book, formula);
    assert!(!book.state().changed_since(&batch));
}

/// 7.2 oz of wax in a jar of 9.6 oz of water; typed as 9 oz it would run over.
#[test]
fn a_plan_tells_that_a_fill_would_run_over() {
    let mut book = workshop();
    let over = |book: &Book| {
        let plan = book.state().plan(&wish("demo-orchard", "demo-jar"), Voice::default()).unwrap();
        plan.notes.iter().filter(|n| n.caution && n.text.contains("it would run over")).count()
    };
    assert_eq!(over(&book), 0);
    let mut jar = book.state().vessels.get(&id("demo-jar")).unwrap().body().unwrap().clone();
    jar.fill = potside::vessel::FillRule::Weight(Amount::new(Exact::whole(9), MassUnit::Ounce));
    book.act(Act::Vessel { id: id("demo-jar"), over: None, body: jar }, 1, 1).unwrap();
    assert_eq!(over(&book), 1);
}

#[test]
fn what_can_run_short_is_weighed_or_dropped_not_counted() {
    let book = workshop();
    // This formula also has a label for each vessel, which is counted.
    let names = book.state().ingredients_of(&id("demo-plain"));
    assert_eq!(names, ["Meadow soft wax", "Harbour firm wax", "Hard flake"]);
    assert!(book.state().ingredients_of(&id("gone")).is_empty());
}

/// Waxes are offered for waxes and the rest for parts; one name in two spellings is offered once.
#[test]
fn names_are_offered_where_they_belong_and_once() {
    let mut book = workshop();
    let known = |id: &str, name: &str, density| Act::Ingredient {
        id: Id(id.to_owned()),
        over: None,
        body: Ingredient { name: name.to_owned(), density, ..Ingredient::default() },
    };
    let dense = Some(Density::base(Exact::ratio(9, 10)));
    for act in [
        known("a", "meadow SOFT wax", dense),
        known("b", "Bench wax", dense),
        known("c", "PLUM dye", None),
        known("d", "Bench powder", None),
    ] {
        book.act(act, 1, 1).unwrap();
    }
    let holds = |names: &[String], name: &str| names.iter().filter(|n| n.to_lowercase() == name).count();
    let (waxes, parts) = (book.state().wax_names(), book.state().part_names());
    for (name, in_waxes, in_parts) in
        [("meadow soft wax", 1, 0), ("bench wax", 1, 0), ("plum dye", 0, 1), ("bench powder", 0, 1)]
    {
        assert_eq!((holds(&waxes, name), holds(&parts, name)), (in_waxes, in_parts), "{name}");
    }
    let measured = book.state().measured_names();
    assert_eq!((holds(&measured, "bench wax"), holds(&measured, "bench powder")), (1, 0));
    // The dye is known by its drops alone, the flake by its spoons alone.
    assert_eq!((holds(&measured, "brick dye"), holds(&measured, "hard flake")), (1, 1));
}

/// What the form asks for in one go is what the plan and the choices are, asked for one by one.
#[test]
fn a_plan_comes_with_its_choices_of_drops() {
    let book = workshop();
    let voice = Voice::default();
    for vessels in 1..=24 {
        let asked = Wish { target: Target::Vessels(vessels), ..wish("demo-orchard", "demo-jar") };
        let state = book.state();
        let (outline, choices) = state.outline(&asked, voice).unwrap();
        let plan = state.plan(&asked, voice).unwrap();
        assert_eq!(outline.needs(), plan.needs());
        assert_eq!((&outline.why, choices), (&plan.why, state.shades(&asked, voice).unwrap()));
    }
    let nothing = Wish { target: Target::Vessels(0), ..wish("demo-orchard", "demo-jar") };
    assert_eq!(
        book.state().outline(&nothing, voice).unwrap_err(),
        book.state().plan(&nothing, voice).unwrap_err()
    );
}
