//! Fewer vessels filled than were planned: a glass that cracked, wax that ran out.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{did, go_on, run};
use potside::pot::{Run, StepKey};
use potside::quantity::{Exact, Mass, Voice};

const fn fill(vessel: u32) -> StepKey {
    StepKey::Fill { pour: 0, vessel }
}

fn empty(run: &mut Run, step: StepKey) {
    run.take(did(step, Some(Mass::ZERO), 5000)).unwrap();
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
