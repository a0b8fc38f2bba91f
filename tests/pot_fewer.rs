//! Fewer vessels filled than were planned: a glass that cracked, wax that ran out, a pot that is lost.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{FIG, TAB, did, go_on, keys, refuses, run};
use common::{Workshop, read};
use potside::pot::{Event, Run, StepKey, Target, Way};
use potside::quantity::{Exact, Mass, Voice};

const fn fill(vessel: u32) -> StepKey {
    StepKey::Fill { pour: 0, vessel }
}

fn empty(run: &mut Run, step: StepKey) {
    run.take(did(step, Some(Mass::ZERO), 5000)).unwrap();
}

/// Pots of two vessels and of one.
fn two() -> Run {
    let mut w = Workshop::new();
    w.pot.as_mut().unwrap().capacity = read("400 g");
    Run::new(w.plan(Target::Vessels(3)).unwrap())
}

fn pieces(run: &Run, name: &str) -> Exact {
    run.used().iter().filter(|u| u.name == name).map(|u| u.pieces).sum()
}

#[test]
fn a_cracked_glass_is_no_candle_and_the_pour_is_closed_all_the_same() {
    let mut run = run(4);
    go_on(&mut run, Some(fill(1)));
    empty(&mut run, fill(1));
    assert_eq!(run.now().unwrap().key, fill(2));
    assert_eq!((run.vessels(), run.planned_vessels()), (3, 4));
    // Still to be filled: two.
    assert_eq!(run.rest().last().unwrap(), &("Cotton 12", Mass::ZERO, Exact::whole(2)));
    go_on(&mut run, None);
    assert_eq!(run.now(), None);
    for name in ["Tumbler", "Cotton 12", "Wick tab"] {
        assert_eq!(pieces(&run, name), Exact::whole(3), "{name}");
    }
    assert_eq!(run.filled_at().len(), 3);
    let record = run.record(Voice::default());
    assert_eq!(record.vessels.iter().map(|v| v.vessel).collect::<Vec<_>>(), [1, 3, 4]);
    assert_eq!(record.empty, [(1, 2)]);
    assert_eq!(record.filled, run.plan.fill.times(Exact::whole(3)));
    assert_eq!(record.leftover, record.made - record.filled, "the fill of one vessel more than planned");
    assert!(run.rest().is_empty());
}

#[test]
fn what_leaving_vessels_empty_comes_to_is_said() {
    let mut run = run(4);
    go_on(&mut run, Some(fill(1)));
    let ways = run.leaving(fill(1), Voice::default());
    assert_eq!(ways[0].vessels, [fill(1)]);
    assert_eq!(ways[1].vessels, [fill(1), fill(2), fill(3)]);
    let made = run.record(Voice::default()).made;
    let stays = |candles: i128| Voice::default().both(made - run.plan.fill.times(Exact::whole(candles)));
    assert_eq!(
        ways[0].said,
        format!("Then 3 of 4 vessels are filled, and about {} stays in the pot.", stays(3))
    );
    assert_eq!(
        ways[1].said,
        format!("Then 1 of 4 vessels is filled, and about {} stays in the pot.", stays(1))
    );
    for vessel in ways[1].vessels.clone() {
        empty(&mut run, vessel);
    }
    assert_eq!(run.now().unwrap().key, StepKey::Close);
    assert_eq!(run.record(Voice::default()).leftover, made - run.plan.fill);
    let mut none = common::run::run(2);
    go_on(&mut none, Some(fill(0)));
    assert!(
        none.leaving(fill(0), Voice::default())[1].said.starts_with("Then no vessel is filled, and about ")
    );
    // At the last there is one way, at other steps none.
    let mut last = common::run::run(2);
    go_on(&mut last, Some(fill(1)));
    assert_eq!(last.leaving(fill(1), Voice::default()).len(), 1);
    assert_eq!(last.leaving(StepKey::Close, Voice::default()), []);
    // More was filled than went in, as far as the book knows: nothing stays.
    let mut over = common::run::run(2);
    go_on(&mut over, Some(fill(0)));
    over.take(did(fill(0), Some(over.record(Voice::default()).made), 0)).unwrap();
    assert_eq!(over.leaving(fill(1), Voice::default())[0].said, "Then 1 of 2 vessels is filled.");
}

/// Of two pots one is lost: nothing more is asked of it, and the other is poured and closed.
#[test]
fn a_lost_pot_is_given_up_and_the_other_goes_on() {
    let mut run = two();
    let all = keys(&run).len();
    go_on(&mut run, Some(StepKey::Add { pour: 0, line: FIG }));
    let asked = run.now().unwrap().amount.unwrap();
    // Past mending, and waiting to be settled.
    run.take(did(StepKey::Add { pour: 0, line: FIG }, Some(asked.times(Exact::whole(20))), 1)).unwrap();
    assert!(run.pending(Voice::default()).is_some());
    empty(&mut run, fill(0));
    assert!(run.pending(Voice::default()).is_some(), "one of its vessels may still be filled");
    empty(&mut run, fill(1));
    assert_eq!(run.pending(Voice::default()), None);
    assert_eq!(run.now().unwrap().key.pour(), Some(1));
    assert!(keys(&run).len() < all && !keys(&run).contains(&StepKey::Gate { pour: 0 }));
    assert!(
        run.rest()
            .iter()
            .all(|(name, mass, _)| *name != "Soy" || *mass == run.line(1, 1).unwrap().dose.mass())
    );
    go_on(&mut run, None);
    assert_eq!(run.filled_at().len(), 1);
    // What went into the lost pot is used up, its vessels and their wicks are not.
    assert!(run.used().iter().filter(|u| u.name == "Fig leaf").count() == 2);
    assert_eq!(pieces(&run, "Tumbler"), Exact::ONE);
    assert_eq!(pieces(&run, "Wick tab"), Exact::ONE);
}

/// What is poured has to come after all that it needs; only the empty vessel does not.
#[test]
fn a_vessel_is_filled_or_left_empty_once() {
    let mut run = run(2);
    refuses(&mut run, did(fill(0), None, 0), "Not yet: “Weigh Coco” comes before “Fill vessel 1”.");
    empty(&mut run, fill(0));
    let twice = "“Fill vessel 1” is done already. To change it, undo back to it and do it again.";
    refuses(&mut run, did(fill(0), Some(Mass::ZERO), 0), twice);
    refuses(&mut run, did(fill(2), Some(Mass::ZERO), 0), "That step is not part of this pour.");
    // No vessel is filled, so the pot can still be restored.
    let step = StepKey::Wax { pour: 0, line: 0 };
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(step, Some(asked.times(Exact::ratio(3, 2))), 0)).unwrap();
    run.take(Event::Mended { step, way: Way::Restore, at: 0 }).unwrap();
    assert_eq!((run.vessels(), run.planned_vessels()), (2, 3));
    assert_eq!(
        run.shown_step(StepKey::Add { pour: 0, line: TAB }, Voice::default()).unwrap().step.dose,
        Some(potside::pot::Dose::Count { pieces: 2 })
    );
}
