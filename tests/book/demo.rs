//! The demo workshop: every act of it is one the app would do, and it shows every kind of part.

use potside::bench::burn::{Told, compare, judge, life, rate, suggested};
use potside::book::{Ending, Journal, demo};
use potside::day::Day;
use potside::formula::{Basis, check};
use potside::pot::StepKey;
use potside::quantity::Voice;
use potside::shelf::Fit;

const NOW: u64 = 1_764_000_000_000;

pub(crate) fn workshop() -> Journal {
    let mut n = 0;
    let lines = demo("tablet", NOW, || {
        n += 1;
        n
    });
    Journal::open(lines.into_iter().map(|(_, line)| line).collect(), "tablet")
}

#[test]
fn it_opens_whole() {
    let j = workshop();
    let s = j.state();
    assert_eq!((j.damaged().len(), s.ignored.len()), (0, 0));
    let things = [
        s.formulas.len(),
        s.vessels.len(),
        s.scales.len(),
        s.pots.len(),
        s.ingredients.len(),
        s.batches.len(),
    ];
    assert_eq!(things, [5, 4, 2, 2, 10, 2]);
    // Four jars stand there for six; twelve tins for eight, and they have cured.
    let shelf = s.shelf(Day::of(NOW));
    let orders: Vec<_> = shelf
        .orders
        .iter()
        .map(|o| (o.kept.id.0.as_str(), o.short(), o.shipment(shelf.today, Fit::Unfinished).len()))
        .collect();
    assert_eq!(orders, [("demo-order-shop", 0, 1), ("demo-order-market", 2, 0)]);
    assert!(j.entries().iter().all(|e| e.at <= NOW), "nothing is done in the future");
}

#[test]
fn every_formula_can_be_made_in_each_of_its_vessels() {
    let j = workshop();
    let s = j.state();
    let mut bases = std::collections::BTreeSet::new();
    for formula in s.formulas_shown().iter().filter_map(|k| k.body()) {
        assert_eq!(check(formula, s), Ok(vec![]), "{}", formula.name);
        assert!(!formula.vessels.is_empty(), "{}", formula.name);
        for fits in &formula.vessels {
            let vessel = s.vessels.get(&fits.vessel).and_then(|k| k.body()).expect("it is in the workshop");
            let (mass, _) = s.fill(vessel, formula, Voice::default()).expect("it can be filled");
            let grams = mass.in_base().to_f64();
            assert!((50.0..600.0).contains(&grams), "{} in {}: {grams} g", formula.name, vessel.name);
        }
        bases.extend(formula.parts.iter().map(|p| match p.basis {
            Basis::OfWax(_) => "wax",
            Basis::OfWhole(_) => "whole",
            Basis::PerWax { .. } => "per",
            Basis::Weight(_) => "weight",
            Basis::Spoon(_) => "spoon",
            Basis::Drops(_) => "drops",
            Basis::PerVessel(_) => "count",
        }));
    }
    assert_eq!(bases.len(), 7, "every basis is shown: {bases:?}");
    assert!(s.formulas_shown().iter().any(|k| k.body().is_some_and(|f| f.wax.len() == 2)));
}

#[test]
fn the_pours_of_the_past_are_finished() {
    let j = workshop();
    assert!(j.state().running().is_none());
    for batch in j.state().batches_shown() {
        assert!(matches!(batch.ended, Some((Ending::Poured, at, _)) if at > batch.began));
        assert!(batch.run.done(StepKey::Close).is_some() && batch.run.now().is_none());
        let version = j.state().formulas.get(&batch.formula).unwrap().version(&batch.version);
        assert_eq!(version.map(|(n, _)| n), Some(1));
    }
}

/// Grams an hour of a container candle: 4 to 8, `common practice, no source`. Each burn is of four hours at the most and after
/// an hour's rest, as the usual limits have it.
#[test]
fn its_candles_on_trial_tell_of_two_wicks_and_not_yet_of_a_third() {
    let j = workshop();
    let (s, voice) = (j.state(), Voice::default());
    let candles: Vec<_> =
        s.trials_shown().into_iter().map(|k| (k.body().unwrap(), s.course_of(&k.id))).collect();
    assert_eq!(candles.len(), 7);
    for (trial, course) in &candles {
        let rate = rate(course, voice).unwrap();
        assert!((4.0..8.0).contains(&rate.grams) && rate.half.unwrap() < 0.5, "{}: {rate:?}", trial.name);
        assert!(life(trial, &rate).unwrap().range.unwrap().1.is_some());
        let mut rested = NOW - 30 * 24 * 60 * 60_000;
        for burn in &course.sessions {
            let (out, itself) = burn.out.unwrap();
            assert!(burn.lit >= rested && out - burn.lit <= 240 * 60_000 && !itself && burn.trimmed);
            assert!(burn.looks.iter().all(|l| (burn.lit..out).contains(&l.at)));
            rested = out + 60 * 60_000;
            assert!(rested < NOW);
        }
        // What it was closed with is what the usual limits say.
        let found = suggested(&judge(trial, course, &s.limits, voice));
        assert!(course.closed.as_ref().is_none_or(|(verdict, _)| found == Some(*verdict)), "{}", trial.name);
    }
    let like = s.like(candles[0].0);
    let told = |a: usize, b: usize| {
        let [a, b] = [a, b].map(|w| like[w].candles.iter().map(|(t, c)| (t, c)).collect::<Vec<_>>());
        compare(&a, &b, voice).unwrap().told
    };
    let wicks: Vec<_> = like.iter().map(|b| (b.wick.as_str(), b.candles.len())).collect();
    assert_eq!(wicks, [("Cotton 10", 3), ("Cotton 12", 3), ("Cotton 14", 1)]);
    assert_eq!(told(0, 1), Told::Differs);
    assert!(matches!(told(1, 2), Told::NotYet { more: Some(_) }));
    let (series, advice) = s.next_wick(candles[0].0).unwrap();
    assert_eq!((series.sizes[advice.size].as_str(), advice.passed), ("Cotton 12", 2));
}

#[test]
fn it_is_the_same_whoever_makes_it_and_apart_from_others() {
    let ids =
        |device: &str| -> Vec<String> { demo(device, NOW, || 7).into_iter().map(|(id, _)| id).collect() };
    assert_eq!(ids("tablet"), ids("tablet"));
    assert!(ids("tablet").iter().all(|id| !ids("table").contains(id)));
}
