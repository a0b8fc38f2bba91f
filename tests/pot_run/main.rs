//! A plan being made: the order of work, overshoot, undo, the record.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

#[path = "../common/mod.rs"]
mod common;
mod missed;

use common::run::{FIG, SOY, TAB, did, go_on, refuses, run};
use common::{Workshop, g, read};
use potside::pot::{Dose, Event, Residue, Run, StepKey, Target, Way};
use potside::quantity::{Exact, Mass, Quantity, Share, Temperature, TemperatureUnit, Voice};
use potside::wire;
use proptest::prelude::*;

fn fahrenheit(n: i128) -> Temperature {
    Temperature::of(Exact::whole(n), TemperatureUnit::Fahrenheit)
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
    // The values of each why come to its result: by hand, 720 g of four vessels.
    let [went_in, filled, left] = run.record_whys(&record, Voice::default());
    let grams = |text: &str| text.split(' ').next().unwrap().parse::<f64>().unwrap();
    let sum: f64 = went_in.values.iter().map(|v| grams(&v.shown)).sum();
    assert!((sum - grams(&went_in.result)).abs() < 0.005, "{went_in:?}");
    let shown: Vec<&str> = filled.values.iter().map(|v| v.shown.as_str()).collect();
    assert_eq!((shown, filled.result.as_str()), (vec!["720.000 g", "0", "180.000 g"], "720.000 g"));
    let [a, b] = left.values.as_slice() else { panic!("{left:?}") };
    assert!((grams(&a.shown) - grams(&b.shown)).max(0.0) - grams(&left.result) < 0.002, "{left:?}");
    assert!(a.why.is_some() && b.why.is_some());
    // Steps were done with the amounts asked for; pieces and temperatures have none.
    assert!(record.lines.iter().filter(|l| !matches!(l.dose, Dose::Count { .. })).all(|l| l.known));
}

#[test]
fn the_record_says_what_was_typed_and_the_shares_of_what_went_in() {
    let mut run = run(4);
    let (soy, fig) = (StepKey::Wax { pour: 0, line: SOY }, StepKey::Add { pour: 0, line: FIG });
    run.take(did(soy, None, 1)).unwrap();
    go_on(&mut run, Some(fig));
    // A tenth more than asked.
    let weighed = run.now().unwrap().amount.unwrap().times(Exact::ratio(11, 10));
    run.take(did(fig, Some(weighed), 2000)).unwrap();
    let line = |run: &Run, index: u32| run.record(Voice::default()).lines.swap_remove(index as usize);
    // Soy was not weighed, the pieces have no weight.
    assert_eq!([SOY, FIG, TAB].map(|index| line(&run, index).known), [false, true, false]);
    let record = run.record(Voice::default());
    let [went_in, ..] = run.record_whys(&record, Voice::default());
    let soy_in = &went_in.values[SOY as usize];
    assert!(soy_in.name == "Soy" && soy_in.shown.ends_with(" g, as asked"), "{soy_in:?}");
    let wax: Mass = record.lines[..2].iter().map(|l| l.weighed).sum();
    for line in &record.lines {
        assert_eq!(line.of_wax, Share::base(line.weighed.over(wax).unwrap()));
        assert_eq!(line.of_whole, Share::base(line.weighed.over(record.made).unwrap()));
    }
    assert_eq!(line(&run, FIG).off, line(&run, FIG).planned.times(Exact::ratio(1, 10)));
    // A top-up that was not weighed makes the whole of it unknown.
    run.take(Event::Mended { step: fig, way: Way::Restore, at: 2001 }).unwrap();
    let coco = StepKey::TopUp { pour: 0, line: 0, round: 1 };
    assert!(line(&run, 0).known);
    run.take(did(coco, None, 2002)).unwrap();
    assert!(!line(&run, 0).known);
    // Nothing is in yet.
    let fresh = common::run::run(4);
    assert!(fresh.record(Voice::default()).lines.iter().all(|l| !l.known && l.weighed.is_zero()));
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
    refuses(
        &mut run,
        did(StepKey::Add { pour: 0, line: TAB }, None, 0),
        "“Set Wick tab” is done already. To change it, undo back to it and do it again.",
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
fn the_pour_range_waits_for_the_parts_but_not_for_the_pieces() {
    let mut run = run(2);
    let gate = StepKey::Gate { pour: 0 };
    let tab = StepKey::Add { pour: 0, line: TAB };
    while let Some(step) = run.steps().into_iter().find(|s| s.done.is_none() && s.key != tab) {
        if step.key == gate {
            break;
        }
        let title = run.shown_step(step.key, Voice::default()).unwrap().title;
        let name = if title.starts_with("Melt to") { "Melt the wax" } else { &title };
        let expected = format!("Not yet: “{name}” comes before “Bring it to the pour range”.");
        refuses(&mut run, did(gate, None, 0), &expected);
        run.take(did(step.key, step.amount, 1000)).unwrap();
    }
    run.take(did(gate, None, 2000)).unwrap();
    refuses(
        &mut run,
        did(StepKey::Fill { pour: 0, vessel: 0 }, None, 0),
        "Not yet: “Set Wick tab” comes before “Fill vessel 1”.",
    );
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
        Event::Read { temperature: fahrenheit(165), at: 9, pour: None },
        Event::Mended { step: fig, way: Way::Restore, at: 10 },
        Event::Said { text: "bubbles".into(), at: 11 },
    ];
    for event in events {
        let text = wire::write(&event);
        assert_eq!(wire::read::<Event>(&text).unwrap(), event, "{text}");
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
