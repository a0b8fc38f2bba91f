//! What a run has used up and what is still to go in, for the stores.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{FIG, HARDENER, TAB, did, go_on, run};
use common::{Workshop, read};
use potside::pot::{Dose, Event, Run, StepKey, Target, Way};
use potside::quantity::{Exact, Mass, Voice};

const ADD_FIG: StepKey = StepKey::Add { pour: 0, line: FIG };

fn rest(run: &Run) -> Vec<&str> {
    run.rest().iter().map(|(name, ..)| *name).collect()
}

#[test]
fn what_is_in_is_used_and_the_rest_is_still_to_go_in() {
    let mut run = run(4);
    assert!(run.used().is_empty());
    let all = [
        "Coco",
        "Soy",
        "Sun guard",
        "Hardener",
        "Red",
        "Blue",
        "Fig leaf",
        "Wick tab",
        "Tumbler",
        "Cotton 12",
    ];
    assert_eq!(rest(&run), all);
    let of = |name: &str, from: &[(&str, Mass, Exact)]| from.iter().find(|r| r.0 == name).map(|r| (r.1, r.2));
    assert_eq!(of("Wick tab", &run.rest()), Some((Mass::ZERO, Exact::whole(4))));
    assert_eq!(of("Soy", &run.rest()), Some((run.line(0, 1).unwrap().dose.mass(), Exact::ZERO)));
    assert_eq!(of("Tumbler", &run.rest()), Some((Mass::ZERO, Exact::whole(4))));

    // Up to the fragrance; of it a tenth more than asked.
    go_on(&mut run, Some(ADD_FIG));
    let asked = run.now().unwrap().amount.unwrap();
    let weighed = asked.times(Exact::ratio(11, 10));
    run.take(did(ADD_FIG, Some(weighed), 7000)).unwrap();
    let used = run.used();
    let names: Vec<&str> = used.iter().map(|u| u.name).collect();
    assert_eq!(names, all[..8]);
    assert_eq!((used[6].mass, used[6].pieces, used[6].at), (weighed, Exact::ZERO, 7000));
    assert_eq!((used[7].mass, used[7].pieces, used[7].at), (Mass::ZERO, Exact::whole(4), 1000));
    assert_eq!(rest(&run), ["Tumbler", "Cotton 12"]);

    // What a restore asks for is still to go in.
    run.take(Event::Mended { step: ADD_FIG, way: Way::Restore, at: 7001 }).unwrap();
    let more = run.rest();
    assert_eq!(more[0].0, "Coco");
    let planned = run.line(0, 0).unwrap().dose.mass();
    assert!((more[0].1 - planned.times(Exact::ratio(1, 10))).in_base().abs() < Exact::ratio(1, 50));
    // Of 18 eighths of a teaspoon a tenth is two.
    assert_eq!(
        of("Hardener", &more).unwrap().0,
        run.line(0, HARDENER).unwrap().dose.mass().times(Exact::ratio(1, 9))
    );
}

/// A vessel more takes its tab too, whether the others have theirs already or not.
#[test]
fn a_vessel_more_has_its_pieces() {
    let tabs =
        |run: &Run| run.used().iter().filter(|u| u.name == "Wick tab").map(|u| u.pieces).sum::<Exact>();
    let over = |step: StepKey| {
        let mut run = run(4);
        go_on(&mut run, Some(step));
        let asked = run.now().unwrap().amount.unwrap();
        run.take(did(step, Some(asked.times(Exact::ratio(5, 4))), 7000)).unwrap();
        run.take(Event::Mended { step, way: Way::Restore, at: 7001 }).unwrap();
        assert_eq!(run.vessels(), 5);
        run
    };
    assert_eq!(tabs(&over(ADD_FIG)), Exact::whole(5));
    let mut early = over(StepKey::Wax { pour: 0, line: 1 });
    assert_eq!(tabs(&early), Exact::ZERO);
    let set = StepKey::Add { pour: 0, line: TAB };
    let shown = early.shown_step(set, Voice::default()).unwrap();
    assert_eq!(shown.step.dose, Some(Dose::Count { pieces: 5 }));
    assert_eq!(shown.why.unwrap().relation, "pieces in each vessel × vessels");
    assert!(early.rest().contains(&("Wick tab", Mass::ZERO, Exact::whole(5))));
    go_on(&mut early, None);
    assert_eq!(tabs(&early), Exact::whole(5));
}

#[test]
fn vessels_and_wicks_are_used_as_they_are_filled() {
    let mut w = Workshop::new();
    w.pot.as_mut().unwrap().capacity = read("400 g");
    // Pots of two vessels and of one.
    let mut run = Run::new(w.plan(Target::Vessels(3)).unwrap());
    assert_eq!(run.vessels(), 3);
    go_on(&mut run, Some(StepKey::Fill { pour: 0, vessel: 1 }));
    run.take(did(StepKey::Fill { pour: 0, vessel: 1 }, None, 9000)).unwrap();
    let used = run.used();
    let filled: Vec<_> = used.iter().rev().take(2).map(|u| (u.name, u.mass, u.pieces, u.at)).collect();
    let two = Exact::whole(2);
    assert_eq!(filled, [("Cotton 12", Mass::ZERO, two, 9000), ("Tumbler", Mass::ZERO, two, 9000)]);
    assert_eq!(run.rest().last().unwrap(), &("Cotton 12", Mass::ZERO, Exact::ONE));
    go_on(&mut run, None);
    assert!(run.rest().is_empty());
}

/// A wick that the formula counts among its parts is used once: as many as are set, and not one more for each vessel.
#[test]
fn a_wick_counted_among_the_parts_is_used_once() {
    let mut workshop = Workshop::new();
    workshop.formula.parts.iter_mut().find(|p| p.name == "Wick tab").unwrap().name = "cotton 12 ".into();
    let plan = workshop.plan(Target::Vessels(4)).unwrap();
    assert_eq!(plan.own(), ["Tumbler"]);
    let mut run = Run::new(plan);
    let wicks = |all: Vec<(&str, Exact)>| -> Vec<Exact> {
        all.into_iter()
            .filter(|(name, _)| name.trim().eq_ignore_ascii_case("cotton 12"))
            .map(|(_, n)| n)
            .collect()
    };
    assert_eq!(wicks(run.rest().into_iter().map(|(name, _, n)| (name, n)).collect()), [Exact::whole(4)]);
    go_on(&mut run, None);
    assert_eq!(wicks(run.used().iter().map(|u| (u.name, u.pieces)).collect()), [Exact::whole(4)]);
}
