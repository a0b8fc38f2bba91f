//! A plan being made: the order of work, overshoot, undo, the record.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::{Workshop, g, line, read};
use potside::pot::{Dose, Event, Mended, Residue, Run, RunError, StepKey, Target, Way, keep, restore};
use potside::quantity::{Exact, Mass, Quantity, Temperature, TemperatureUnit, Voice};
use potside::wire;
use proptest::prelude::*;

fn run(vessels: u32) -> Run {
    Run::new(Workshop::new().plan(Target::Vessels(vessels)).unwrap())
}

fn fahrenheit(n: i128) -> Temperature {
    Temperature::of(Exact::whole(n), TemperatureUnit::Fahrenheit)
}

fn did(step: StepKey, weighed: Option<Mass>, at: u64) -> Event {
    Event::Did { step, weighed, temperature: None, at }
}

/// Line numbers of the workshop's plan.
const SOY: u32 = 1;
const HARDENER: u32 = 3;
const FIG: u32 = 6;
const TAB: u32 = 7;

/// Does the steps in their order as asked, until `stop` is next or nothing is left.
fn go_on(run: &mut Run, stop: Option<StepKey>) {
    while let Some(step) = run.now().filter(|s| Some(s.key) != stop) {
        run.take(did(step.key, step.amount, 1000)).unwrap();
    }
}

fn keys(run: &Run) -> Vec<StepKey> {
    run.steps().into_iter().map(|s| s.key).collect()
}

#[test]
fn the_steps_in_their_order() {
    let mut w = Workshop::new();
    w.pot.as_mut().unwrap().capacity = read("400 g");
    let run = Run::new(w.plan(Target::Vessels(3)).unwrap());
    let shown: Vec<String> = run
        .steps()
        .iter()
        .map(|s| {
            let view = run.shown_step(s.key, Voice::default()).unwrap();
            let wants = view.wants.map(|w| w.say(Voice::default())).unwrap_or_default();
            format!("{:?} {} [{}] {:?}", view.pour, view.title, wants, view.scale)
        })
        .collect();
    insta::assert_snapshot!(shown.join("\n"));
}

#[test]
fn from_the_first_wax_to_the_close() {
    let mut run = run(4);
    go_on(&mut run, None);
    assert!(run.steps().iter().all(|s| s.done.is_some()));
    assert_eq!(run.now(), None);
    let record = run.record(Voice::default());
    assert_eq!(record.vessels.len(), 4);
    assert_eq!(record.filled, g(720, 1));
    assert_eq!(record.made, run.plan.pours[0].total);
    assert_eq!(record.leftover, record.made.less(record.filled));
    assert!(record.lines.iter().all(|l| l.off.is_zero()));
    // Steps were done with the amounts asked for; pieces and temperatures have none.
    assert!(record.lines.iter().filter(|l| !matches!(l.dose, Dose::Count { .. })).all(|l| l.known));
}

#[track_caller]
fn refuses(run: &mut Run, event: Event, expected: &str) {
    let before = run.clone();
    let error: RunError = run.take(event).unwrap_err();
    assert_eq!(error.to_string(), expected);
    assert_eq!(*run, before);
}

#[test]
fn what_would_hurt_is_refused() {
    let mut run = run(2);
    let fig = StepKey::Add { pour: 0, line: FIG };
    let vessel = StepKey::Fill { pour: 0, vessel: 0 };
    refuses(&mut run, did(fig, None, 0), "Not yet: “Melt the wax” comes before “Add Fig leaf”.");
    refuses(
        &mut run,
        did(StepKey::Melt { pour: 0 }, None, 0),
        "Not yet: “Weigh Coco” comes before “Melt the wax”.",
    );
    refuses(&mut run, did(vessel, None, 0), "Not yet: “Weigh Coco” comes before “Fill vessel 1”.");
    refuses(&mut run, did(StepKey::Close, None, 0), "Not yet: “Weigh Coco” comes before “Close the record”.");
    for nowhere in [
        StepKey::Fill { pour: 0, vessel: 2 },
        StepKey::Add { pour: 0, line: SOY },
        StepKey::Wax { pour: 0, line: FIG },
        StepKey::Wax { pour: 1, line: 0 },
        StepKey::Stir { pour: 0, line: TAB },
        StepKey::TopUp { pour: 0, line: SOY, round: 1 },
        StepKey::TopUp { pour: 0, line: SOY, round: 0 },
    ] {
        refuses(&mut run, did(nowhere, None, 0), "That step is not part of this pour.");
    }
    // Waxes among themselves, pieces whenever one likes.
    run.take(did(StepKey::Wax { pour: 0, line: SOY }, None, 1)).unwrap();
    run.take(did(StepKey::Add { pour: 0, line: TAB }, None, 1)).unwrap();
    refuses(
        &mut run,
        did(StepKey::Wax { pour: 0, line: SOY }, None, 0),
        "“Weigh Soy” is done already. To change it, undo back to it and do it again.",
    );
    go_on(&mut run, Some(StepKey::Gate { pour: 0 }));
    refuses(
        &mut run,
        did(vessel, None, 0),
        "Not yet: “Bring it to the pour range” comes before “Fill vessel 1”.",
    );
    let keep = |step| Event::Mended { step, way: Way::Keep, at: 0 };
    refuses(
        &mut run,
        keep(fig),
        "What was weighed at “Add Fig leaf” is not over what was asked, so there is nothing to put right.",
    );
}

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

/// A step done at a temperature in °F, and what is said about it.
#[track_caller]
fn missed(run: &Run, step: StepKey, at: i128, expected: Option<&str>) {
    let voice = Voice { temperature: TemperatureUnit::Fahrenheit, ..Voice::default() };
    let said = run.miss(step, fahrenheit(at), voice);
    assert_eq!(said.is_some(), expected.is_some(), "{said:?}");
    if let (Some(said), Some(expected)) = (said, expected) {
        assert!(said.contains(expected), "{said}");
    }
}

#[test]
fn a_missed_range_says_what_it_means() {
    // What it means: common practice, no source. Ranges: common practice, no source.
    let run = run(4);
    let fig = StepKey::Add { pour: 0, line: FIG };
    missed(&run, fig, 175, None);
    missed(&run, fig, 180, None);
    missed(&run, fig, 174, Some("174 °F is cooler than the 175–180 °F wanted. Fragrance added too cool"));
    missed(&run, fig, 181, Some("loses more to the air, and comes nearer its flash point"));
    missed(&run, fig, 200, Some("at or above the flash point of “Fig leaf”"));
    missed(&run, StepKey::Melt { pour: 0 }, 199, Some("go on heating"));
    missed(&run, StepKey::Melt { pour: 0 }, 205, None);
    missed(&run, StepKey::Melt { pour: 0 }, 270, Some("above 130 °C (266 °F)"));
    missed(&run, StepKey::Gate { pour: 0 }, 160, Some("rough tops and lines"));
    missed(&run, StepKey::Gate { pour: 0 }, 176, Some("sinkholes and wet spots"));
    missed(&run, StepKey::Add { pour: 0, line: TAB }, 40, None);
}

#[test]
fn a_missed_step_can_still_be_done() {
    let mut run = run(1);
    let melt = StepKey::Melt { pour: 0 };
    go_on(&mut run, Some(melt));
    run.take(Event::Did { step: melt, weighed: None, temperature: Some(fahrenheit(150)), at: 5 }).unwrap();
    assert!(run.misses(melt, Voice::default()).is_some());
    go_on(&mut run, None);
    let record = run.record(Voice::default());
    let step = record.steps.iter().find(|s| s.key == melt).unwrap();
    assert_eq!((step.at, step.temperature), (5, Some(fahrenheit(150))));
    assert!(step.missed.is_some());
}

#[test]
fn stirring_is_timed_from_what_went_in_last() {
    let mut run = run(4);
    let (fig, stir) = (StepKey::Add { pour: 0, line: FIG }, StepKey::Stir { pour: 0, line: FIG });
    go_on(&mut run, Some(fig));
    assert_eq!(run.stir_left(stir, 0), None);
    run.take(did(fig, None, 10_000)).unwrap();
    assert_eq!(run.stir_left(stir, 10_000), Some(120_000));
    assert_eq!(run.stir_left(stir, 70_000), Some(60_000));
    assert_eq!(run.stir_left(stir, 999_000), Some(0));
}

#[test]
fn the_usual_cautions_stand_at_their_steps() {
    let run = run(2);
    let cautions = |step| run.shown_step(step, Voice::default()).unwrap().cautions.join(" ");
    assert!(
        cautions(StepKey::Melt { pour: 0 })
            .contains("Never leave a melter, and keep a thermometer in it always.")
    );
    assert!(cautions(StepKey::Melt { pour: 0 }).contains("Never put water on burning wax"));
    let fig = cautions(StepKey::Add { pour: 0, line: FIG });
    assert!(fig.contains("Gloves on and fresh air") && fig.contains("safety data sheet"));
    assert!(fig.contains("flash point is 93.3 °C"));
    assert!(cautions(StepKey::Fill { pour: 0, vessel: 0 }).contains("burns"));
    assert!(cautions(StepKey::Close).contains("Burn-test every combination"));
    assert_eq!(cautions(StepKey::Add { pour: 0, line: TAB }), "");
}

#[test]
fn events_are_kept_as_they_are() {
    let fig = StepKey::TopUp { pour: 1, line: 2, round: 3 };
    let events = [
        Event::Did { step: fig, weighed: Some(g(61, 3)), temperature: Some(fahrenheit(178)), at: 7 },
        did(StepKey::Close, None, 8),
        Event::Read { temperature: fahrenheit(165), at: 9 },
        Event::Mended { step: fig, way: Way::Restore, at: 10 },
        Event::Said { text: "bubbles".into(), at: 11 },
    ];
    for event in events {
        let text = wire::write(&event);
        assert_eq!(wire::read::<Event>(&text).unwrap(), event, "{text}");
    }
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
    assert_eq!(restore(&pot(&[(0, 500, 10)]), g(1, 1), None, Voice::default()), None);
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

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn any_prefix_of_a_run_is_that_run(
        choices in prop::collection::vec((0_usize..40, 90_i128..140, any::<bool>()), 1..60),
        cut in 0_usize..60,
    ) {
        let mut w = Workshop::new();
        w.residue = Residue::OfFilled(read("3 %"));
        w.pot.as_mut().unwrap().capacity = read("500 g");
        let plan = w.plan(Target::Vessels(5)).unwrap();
        let mut run = Run::new(plan.clone());
        let mut states = vec![run.clone()];
        for (pick, percent, way) in choices {
            let way = if way { Way::Restore } else { Way::Keep };
            let event = match run.pending(Voice::default()) {
                Some(pending) if pick % 2 == 0 => Event::Mended { step: pending.step, way, at: 1 },
                _ => {
                    let open: Vec<_> = run.steps().into_iter().filter(|s| s.done.is_none()).collect();
                    let Some(step) = open.get(pick % open.len().max(1)) else { break };
                    did(step.key, step.amount.map(|m| m.times(Exact::ratio(percent, 100))), 1)
                }
            };
            if run.take(event).is_ok() {
                states.push(run.clone());
            }
            for step in run.steps() {
                prop_assert!(step.amount.is_none_or(|m| !m.in_base().is_negative()));
                prop_assert!(run.shown_step(step.key, Voice::default()).is_some());
            }
        }
        let cut = cut.min(states.len() - 1);
        let mut again = Run::new(plan);
        for event in &run.events()[..cut] {
            again.take(event.clone()).unwrap();
        }
        prop_assert_eq!(&again, &states[cut]);
    }
}
