//! What stands on the screen at a step: notes, and how its amount came about.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{FIG, HARDENER, SOY, TAB, did, go_on};
use common::{Workshop, g, line, read};
use potside::pot::{Event, Run, StepKey, StepView, Target, Way};
use potside::quantity::{Exact, Voice, Why};

const ADD_FIG: StepKey = StepKey::Add { pour: 0, line: FIG };

fn shown(run: &Run, key: StepKey) -> StepView {
    run.shown_step(key, Voice::default()).unwrap()
}

fn notes(run: &Run, key: StepKey) -> Vec<String> {
    shown(run, key).notes.into_iter().map(|n| n.text).collect()
}

fn why(run: &Run, key: StepKey) -> Why {
    shown(run, key).why.unwrap()
}

/// What stands at a value of a why.
fn value(why: &Why, name: &str) -> String {
    why.values.iter().find(|v| v.name == name).unwrap().shown.clone()
}

#[test]
fn notes_stand_at_the_step_they_are_for() {
    let mut w = Workshop::new();
    w.formula.parts[0].note = "  Shake the bottle first. ".into();
    w.formula.parts[3].note = "Warm it in the hand.".into();
    // Blanks only are no note.
    w.formula.parts[4].note = " ".into();
    let mut run = Run::new(w.plan(Target::Vessels(14)).unwrap());
    assert_eq!(notes(&run, ADD_FIG), ["Shake the bottle first."]);
    // What the person wrote stands before what the plan has to say of the drops, which is told at the first colour.
    let red = notes(&run, StepKey::Add { pour: 0, line: 4 });
    assert_eq!((red.len(), red[0].as_str()), (2, "Warm it in the hand."));
    assert!(red[1].starts_with("Red 11 drops for 10.50, Blue 22 drops for 21.00:"), "{red:?}");
    assert!(notes(&run, StepKey::Add { pour: 0, line: 5 }).is_empty());
    assert!(notes(&run, StepKey::Wax { pour: 0, line: SOY }).is_empty());
    assert!(notes(&run, StepKey::Stir { pour: 0, line: FIG }).is_empty());
    // Of the pour as a whole where it is melted.
    assert_eq!(notes(&run, StepKey::Melt { pour: 0 }), [run.plan.pours[0].notes[0].text.clone()]);
    let gate = StepKey::Gate { pour: 0 };
    assert_eq!(notes(&run, gate), ["Have the vessels ready, with their wicks set, before it is there."]);
    std::rc::Rc::make_mut(&mut run.plan).warmed = true;
    assert_eq!(notes(&run, gate), ["Have the vessels warmed, with their wicks set, before it is there."]);
    assert_eq!(notes(&run, StepKey::Close)[1], "Cure for 14 days before burning or selling.");
    let mut cures = |days| {
        std::rc::Rc::make_mut(&mut run.plan).cure_days = days;
        notes(&run, StepKey::Close)[1].clone()
    };
    assert_eq!(cures(1), "Cure for 1 day before burning or selling.");
    assert_eq!(cures(0), "Let it cure before burning or selling. How long, this formula does not say.");
}

/// Weighing 150 g of wax too little puts the fragrance above its load: said before it goes in, with what keeps the share.
#[test]
fn a_fragrance_above_its_load_for_want_of_wax_is_said() {
    let mut w = Workshop::new();
    w.formula.parts[0].basis = potside::formula::Basis::OfWax(read("8 %"));
    w.formula.parts[0].highest = Some(read("10 %"));
    let short = |by: i128| {
        let mut run = Run::new(w.plan(Target::Vessels(4)).unwrap());
        let soy = StepKey::Wax { pour: 0, line: SOY };
        go_on(&mut run, Some(soy));
        let asked = run.now().unwrap().amount.unwrap();
        run.take(did(soy, Some(asked.less(g(by, 1))), 1)).unwrap();
        go_on(&mut run, Some(ADD_FIG));
        run
    };
    // 720 g hold 652.8 g of wax and 52.23 g of fragrance; of 502.8 g that is 10.39 %, and 8 % of them are 40.2 g.
    let run = short(150);
    let wax = (0..2).map(|n| run.record(Voice::default()).lines[n].weighed.in_base().to_f64()).sum::<f64>();
    let fig = line(&run.plan, "Fig leaf").dose.mass().in_base().to_f64();
    let said = notes(&run, ADD_FIG);
    assert_eq!(said.len(), 1, "{said:?}");
    let of_wax = format!("would be {:.2} % of it, above its highest load of 10 %.", 100.0 * fig / wax);
    assert!(said[0].starts_with("Less wax is in than planned: ") && said[0].contains(&of_wax), "{said:?}");
    assert!(said[0].contains(&format!(" {:.1} g (", 0.08 * wax)), "{said:?}");
    assert!(said[0].ends_with(" keeps the share that was planned."));
    assert!(shown(&run, ADD_FIG).notes[0].caution);
    // Within the load, or as planned, there is nothing to say.
    assert!(notes(&short(50), ADD_FIG).is_empty());
    assert!(notes(&short(0), ADD_FIG).is_empty());
    // Planned above it: the plan says so, the step only what the weighing adds.
    w.formula.parts[0].highest = Some(read("7 %"));
    let planned = Run::new(w.plan(Target::Vessels(4)).unwrap());
    assert!(notes(&planned, ADD_FIG).is_empty());
}

/// A wax has a flash point too.
#[test]
fn wax_at_its_flash_point_is_said_as_it_melts() {
    let mut w = Workshop::new();
    w.formula.wax[1].flash = Some(read("205 °F"));
    let mut run = Run::new(w.plan(Target::Vessels(4)).unwrap());
    let melt = StepKey::Melt { pour: 0 };
    let at = |text: &str| read::<potside::quantity::Temperature>(text).value;
    assert_eq!(run.miss(melt, at("206 °F"), Voice::default()), None);
    go_on(&mut run, Some(melt));
    assert_eq!(run.miss(melt, at("204 °F"), Voice::default()), None);
    let said = run.miss(melt, at("205 °F"), Voice::default()).unwrap();
    assert!(said.contains("at or above the flash point of “Soy”"), "{said}");
}

#[test]
fn a_step_says_its_pour_its_scale_and_its_minutes() {
    let run = common::run::run(4);
    let melt = shown(&run, StepKey::Melt { pour: 0 });
    assert_eq!((melt.pour, melt.scale, melt.minutes), (Some((1, 1)), None, 0));
    let soy = shown(&run, StepKey::Wax { pour: 0, line: SOY });
    assert_eq!((soy.scale.as_deref(), soy.minutes), (Some("Fine"), 0));
    assert_eq!(shown(&run, StepKey::Add { pour: 0, line: HARDENER }).scale, None);
    assert_eq!(
        (shown(&run, ADD_FIG).minutes, shown(&run, StepKey::Stir { pour: 0, line: FIG }).minutes),
        (0, 2)
    );
    let close = shown(&run, StepKey::Close);
    assert_eq!((close.pour, close.why), (None, None));
    assert_eq!(shown(&run, StepKey::Add { pour: 0, line: TAB }).title, "Set Wick tab in the vessels");
    assert_eq!(shown(&run, StepKey::Fill { pour: 0, vessel: 2 }).title, "Fill vessel 3 of 4");
    assert_eq!(run.shown_step(StepKey::Fill { pour: 0, vessel: 4 }, Voice::default()), None);
}

#[test]
fn an_amount_says_how_it_came_about() {
    let mut run = common::run::run(8);
    let fill = why(&run, StepKey::Fill { pour: 0, vessel: 0 });
    assert_eq!((fill.what.as_str(), fill.relation.as_str()), ("Fill", "the weight typed in"));
    assert_eq!(why(&run, ADD_FIG), line(&run.plan, "Fig leaf").why);
    assert_eq!(shown(&run, StepKey::Melt { pour: 0 }).why, None);

    // A quarter too much of the fragrance: the whole is to be 5/4 of the plan, and of each part a quarter more goes in.
    go_on(&mut run, Some(ADD_FIG));
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(ADD_FIG, Some(asked.times(Exact::ratio(5, 4))), 2000)).unwrap();
    run.take(Event::Mended { step: ADD_FIG, way: Way::Restore, at: 2001 }).unwrap();
    for (index, name) in [(0, "Coco"), (SOY, "Soy")] {
        let top_up = StepKey::TopUp { pour: 0, line: index, round: 1 };
        assert_eq!(
            notes(&run, top_up),
            ["Cold wax cools the pot: let it melt through and stir before you go on."]
        );
        let why = why(&run, top_up);
        let planned = line(&run.plan, name).dose.mass();
        assert_eq!(why.what, name);
        assert_eq!(why.result, Voice::default().mass(planned.times(Exact::ratio(1, 4))));
        assert_eq!(value(&why, "planned"), Voice::default().mass(planned));
        assert_eq!(value(&why, "what is in"), Voice::default().mass(planned));
        assert_eq!(value(&why, "the batch as made now against the plan"), "1.250");
    }
    let guard = StepKey::TopUp { pour: 0, line: 2, round: 1 };
    assert_eq!(notes(&run, guard), ["Stir it in before you go on."]);
    assert_eq!(why(&run, guard).what, "Sun guard");
}
