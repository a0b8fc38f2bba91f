//! Too much of one part: kept, or restored by adding of the rest.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{FIG, HARDENER, SOY, did, go_on, keys, refuses, run};
use common::{Workshop, g, line};
use potside::pot::{Dose, Event, Mended, Run, StepKey, Target, Way, keep, restore};
use potside::quantity::{Exact, Mass, Voice};
use proptest::prelude::*;

#[test]
fn restored_in_the_middle_of_a_run() {
    let mut run = run(8);
    let fig = StepKey::Add { pour: 0, line: FIG };
    go_on(&mut run, Some(fig));
    let asked = run.now().unwrap().amount.unwrap();
    // A quarter too much: two vessels more.
    let weighed = asked.times(Exact::ratio(5, 4));
    run.take(did(fig, Some(weighed), 2000)).unwrap();
    let pending = run.pending(Voice::default()).unwrap();
    assert_eq!((pending.step, pending.over), (fig, weighed - asked));
    let restored = pending.restored.unwrap();
    assert_eq!(
        (restored.factor, restored.more_vessels, restored.over_pot),
        (Exact::ratio(5, 4), 2, Mass::ZERO)
    );
    // 152.37 g in (1440 − 121.90 − 11.98 − 0.38) ÷ 1.005 = 1299.2 g of wax.
    let index = pending.lines.iter().position(|l| l.name == "Fig leaf").unwrap();
    assert_eq!(Voice::default().share(pending.kept.of_wax[index]), "11.73 %");

    run.take(Event::Mended { step: fig, way: Way::Restore, at: 2001 }).unwrap();
    assert_eq!(run.pending(Voice::default()), None);
    let next = run.now().unwrap();
    assert_eq!(next.key, StepKey::TopUp { pour: 0, line: 0, round: 1 });
    let steps = keys(&run);
    let at = steps.iter().position(|k| *k == fig).unwrap();
    let top_ups = [0, 1, 2, 3, 4, 5].map(|line| StepKey::TopUp { pour: 0, line, round: 1 });
    assert_eq!(steps[at + 1..at + 7], top_ups);
    assert_eq!(steps[at + 7], StepKey::Stir { pour: 0, line: FIG });
    assert!(steps.contains(&StepKey::Fill { pour: 0, vessel: 9 }));
    let view = run.shown_step(next.key, Voice::default()).unwrap();
    assert_eq!(view.title, "Add more Coco");
    assert!(view.why.unwrap().relation.contains("what is in"));

    go_on(&mut run, None);
    let record = run.record(Voice::default());
    assert_eq!(record.vessels.len(), 10);
    for (made, planned) in record.lines.iter().zip(&run.plan.pours[0].lines) {
        let wanted = planned.dose.mass().times(Exact::ratio(5, 4));
        assert!(
            (made.weighed - wanted).in_base().abs() <= planned.dose.division().in_base(),
            "{}",
            made.name
        );
    }
}

#[test]
fn restored_before_the_rest_is_in() {
    let mut run = run(8);
    let soy = StepKey::Wax { pour: 0, line: SOY };
    let asked = run.steps().into_iter().find(|s| s.key == soy).unwrap().amount.unwrap();
    run.take(did(soy, Some(asked.times(Exact::ratio(11, 10))), 1)).unwrap();
    let pending = run.pending(Voice::default()).unwrap();
    assert!(pending.keep_notes.iter().any(|n| n.text.starts_with("Nothing is melted yet")));
    run.take(Event::Mended { step: soy, way: Way::Restore, at: 2 }).unwrap();
    // Nothing else is in: no top-up, larger amounts.
    assert!(!keys(&run).iter().any(|k| matches!(k, StepKey::TopUp { .. })));
    let fig = StepKey::Add { pour: 0, line: FIG };
    let now = run.steps().into_iter().find(|s| s.key == fig).unwrap().amount.unwrap();
    let planned = line(&run.plan, "Fig leaf").dose.mass();
    assert!((now - planned.times(Exact::ratio(11, 10))).in_base().abs() < Exact::ratio(1, 100));
    let hardener =
        run.steps().into_iter().find(|s| s.key == StepKey::Add { pour: 0, line: HARDENER }).unwrap();
    assert!(matches!(hardener.dose, Some(Dose::Spoon { eighths: 39 | 40, .. })));
    assert_eq!(
        run.shown_step(fig, Voice::default()).unwrap().why.unwrap().relation,
        "planned × the batch as made now against the plan"
    );
}

#[test]
fn a_top_up_that_is_over_itself() {
    let mut run = run(4);
    let fig = StepKey::Add { pour: 0, line: FIG };
    go_on(&mut run, Some(fig));
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(fig, Some(asked.times(Exact::ratio(6, 5))), 1)).unwrap();
    run.take(Event::Mended { step: fig, way: Way::Restore, at: 2 }).unwrap();
    let coco = StepKey::TopUp { pour: 0, line: 0, round: 1 };
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(coco, Some(asked.times(Exact::whole(3))), 3)).unwrap();
    assert_eq!(run.pending(Voice::default()).unwrap().step, coco);
    run.take(Event::Mended { step: coco, way: Way::Restore, at: 4 }).unwrap();
    // What the first round still asked for is in the second.
    let steps = keys(&run);
    assert!(!steps.contains(&StepKey::TopUp { pour: 0, line: SOY, round: 1 }));
    assert!(steps.contains(&StepKey::TopUp { pour: 0, line: SOY, round: 2 }));
    go_on(&mut run, None);
    let record = run.record(Voice::default());
    let factor = record.lines[0].weighed.over(record.lines[0].planned).unwrap();
    for made in &record.lines {
        let division = made.dose.division().in_base();
        assert!((made.weighed - made.planned.times(factor)).in_base().abs() <= division, "{}", made.name);
    }
}

#[test]
fn drops_of_unknown_mass_are_restored_too() {
    let mut plan = Workshop::new().plan(Target::Vessels(4)).unwrap();
    let red = plan.pours[0].lines.iter_mut().find(|l| l.name == "Red").unwrap();
    red.dose = Dose::Drops { drops: 3, mass: Mass::ZERO };
    let (fig, guard) = (StepKey::Add { pour: 0, line: FIG }, StepKey::Add { pour: 0, line: 2 });
    for (over, expected) in
        [(fig, StepKey::TopUp { pour: 0, line: 4, round: 1 }), (guard, StepKey::Add { pour: 0, line: 4 })]
    {
        let mut run = Run::new(plan.clone());
        go_on(&mut run, Some(over));
        let asked = run.now().unwrap().amount.unwrap();
        run.take(did(over, Some(asked.times(Exact::ratio(4, 3))), 1)).unwrap();
        run.take(Event::Mended { step: over, way: Way::Restore, at: 2 }).unwrap();
        let step = run.steps().into_iter().find(|s| s.key == expected).unwrap();
        // One more where three are in, four where none is.
        let drops = if over == fig { 1 } else { 4 };
        assert_eq!(step.dose, Some(Dose::Drops { drops, mass: Mass::ZERO }));
    }
}

#[test]
fn what_is_counted_twice_is_counted_in() {
    let mut plan = Workshop::new().plan(Target::Vessels(4)).unwrap();
    let lines = &mut plan.pours[0].lines;
    lines.iter_mut().find(|l| l.name == "Red").unwrap().dose = Dose::Drops { drops: 3, mass: Mass::ZERO };
    lines.iter_mut().find(|l| l.name == "Hardener").unwrap().dose =
        Dose::Spoon { eighths: 18, mass: Mass::ZERO };
    let fig = StepKey::Add { pour: 0, line: FIG };
    let mut run = Run::new(plan);
    go_on(&mut run, Some(fig));
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(fig, Some(asked.times(Exact::ratio(4, 3))), 1)).unwrap();
    run.take(Event::Mended { step: fig, way: Way::Restore, at: 2 }).unwrap();
    let dose = |run: &Run, line, round| {
        let key = StepKey::TopUp { pour: 0, line, round };
        run.steps().into_iter().find(|s| s.key == key).unwrap().dose.unwrap()
    };
    // 4/3 of 18 eighths are 24, of three drops four.
    assert_eq!(dose(&run, HARDENER, 1), Dose::Spoon { eighths: 6, mass: Mass::ZERO });
    assert_eq!(dose(&run, 4, 1), Dose::Drops { drops: 1, mass: Mass::ZERO });
    // Then six drops of blue in place of two, twelve in all where six were planned: everything twice.
    let blue = StepKey::TopUp { pour: 0, line: 5, round: 1 };
    go_on(&mut run, Some(blue));
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(blue, Some(asked.times(Exact::whole(3))), 3)).unwrap();
    run.take(Event::Mended { step: blue, way: Way::Restore, at: 4 }).unwrap();
    assert_eq!(dose(&run, HARDENER, 2), Dose::Spoon { eighths: 12, mass: Mass::ZERO });
    assert_eq!(dose(&run, 4, 2), Dose::Drops { drops: 2, mass: Mass::ZERO });
}

#[test]
fn kept_as_it_is() {
    let mut run = run(4);
    let fig = StepKey::Add { pour: 0, line: FIG };
    go_on(&mut run, Some(fig));
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(fig, Some(asked.times(Exact::ratio(6, 5))), 1)).unwrap();
    let steps = keys(&run);
    run.take(Event::Mended { step: fig, way: Way::Keep, at: 2 }).unwrap();
    assert_eq!(keys(&run), steps);
    assert_eq!(run.pending(Voice::default()), None);
    refuses(
        &mut run,
        Event::Mended { step: fig, way: Way::Restore, at: 3 },
        "It is settled already what to do about “Add Fig leaf”. Undo that first to choose again.",
    );
}

#[test]
fn nothing_is_restored_once_vessels_are_filled() {
    let mut run = run(4);
    let fig = StepKey::Add { pour: 0, line: FIG };
    go_on(&mut run, Some(fig));
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(fig, Some(asked.times(Exact::ratio(6, 5))), 1)).unwrap();
    go_on(&mut run, Some(StepKey::Fill { pour: 0, vessel: 1 }));
    assert_eq!(run.pending(Voice::default()).unwrap().restored, None);
    refuses(
        &mut run,
        Event::Mended { step: fig, way: Way::Restore, at: 3 },
        "Vessels are filled from this pot already, so it cannot be restored: they would not get what is added. Keep it, \
         and note it on the record.",
    );
}

/// Planned and actual in hundredths of a gram, and the division.
fn pot(lines: &[(i128, i128, i128)]) -> Vec<Mended> {
    let line = |(planned, actual, division): &(i128, i128, i128)| Mended {
        name: "part".into(),
        wax: false,
        planned: g(*planned, 100),
        actual: g(*actual, 100),
        division: g(*division, 100),
    };
    lines.iter().map(line).collect()
}

#[test]
fn keeping_and_restoring_by_hand() {
    // 900 + 100 planned; 110 of the second is in: 990 + 110 restores it.
    let lines = pot(&[(90_000, 90_000, 100), (10_000, 11_000, 10)]);
    let kept = keep(&lines);
    assert_eq!(kept.total, g(1010, 1));
    assert_eq!(kept.of_whole[1].in_base(), Exact::ratio(110, 1010));
    let restored = restore(&lines, g(40, 1), Some(g(1050, 1)), Voice::default()).unwrap();
    assert_eq!(restored.add, [g(90, 1), Mass::ZERO]);
    assert_eq!((restored.total, restored.over_pot, restored.more_vessels), (g(1100, 1), g(50, 1), 2));
    // 100 g more: rounding alone costs no vessel, so of 101 g one may be missing; of 110 g it is a tenth.
    let more = |fill| restore(&lines, g(fill, 10), None, Voice::default()).unwrap().more_vessels;
    assert_eq!([more(1000), more(1001), more(1010), more(1100)], [1, 1, 1, 0]);
    let coarse = pot(&[(100_000, 100_000, 500), (10_000, 10_200, 500), (10_000, 10_200, 100)]);
    // 24 g more in all, and divisions of 11 g together, of which nothing is promised.
    let more = |fill| restore(&coarse, g(fill, 1), None, Voice::default()).unwrap().more_vessels;
    assert_eq!([more(24), more(25), more(33)], [1, 0, 0]);
    assert_eq!(restore(&pot(&[(0, 500, 10)]), g(1, 1), None, Voice::default()), None);
    // Of two that are over alike the first is named.
    let mut lines = pot(&[(10_000, 11_000, 10), (10_000, 11_000, 10)]);
    lines[0].name = "Soy".into();
    let restored = restore(&lines, g(40, 1), None, Voice::default()).unwrap();
    assert_eq!(restored.why.values[0].name, "Soy in");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn restoring_brings_every_share_back_and_takes_nothing_out(
        lines in prop::collection::vec((1_i128..200_000, 0_i128..3, 60_i128..180, prop::sample::select(vec![1_i128, 10, 100])), 1..9),
    ) {
        // Not in yet, in as planned, or in at 60 to 180 %.
        let lines: Vec<_> = lines
            .into_iter()
            .map(|(planned, how, percent, division)| {
                let actual = match how { 0 => 0, 1 => planned, _ => planned * percent / 100 };
                (planned, actual, division)
            })
            .collect();
        let lines = pot(&lines);
        let restored = restore(&lines, g(180, 1), None, Voice::default()).unwrap();
        let planned: Mass = lines.iter().map(|l| l.planned).sum();
        let total: Mass = lines.iter().zip(&restored.add).map(|(l, a)| l.actual + *a).sum();
        prop_assert_eq!(total, restored.total);
        for (line, add) in lines.iter().zip(&restored.add) {
            prop_assert!(!add.in_base().is_negative());
            let off = (line.actual + *add - line.planned.times(restored.factor)).in_base().abs();
            prop_assert!(off < line.division.in_base());
            // So the share, taken of the new total, is within a division of the planned one, and what the total
            // itself is off by.
            let share = line.planned.over(planned).unwrap();
            let slack = line.division.in_base() + share * (total - planned.times(restored.factor)).in_base().abs();
            prop_assert!((line.actual + *add - total.times(share)).in_base().abs() <= slack);
        }
    }
}
