//! The demo workshop: every act of it is one the app would do, and it shows every kind of part.

use super::zones::{AUCKLAND, LOS_ANGELES};
use potside::bench::burn::{Told, compare, judge, life, rate, suggested, suggestion};
use potside::book::{Ending, Id, Journal, demo};
use potside::day::{Day, Zone};
use potside::formula::{Basis, check};
use potside::pot::StepKey;
use potside::quantity::{Amount, Exact, ShareUnit, TemperatureUnit, Voice};
use potside::shelf::Fit;
use potside::stores::Pack;

const NOW: u64 = 1_764_000_000_000;

pub(crate) fn workshop() -> Journal {
    let mut n = 0;
    let lines = demo("tablet", NOW, Zone::GREENWICH, || {
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
    let shelf = s.shelf(Day::of(NOW), Zone::GREENWICH);
    let orders: Vec<_> = shelf
        .orders
        .iter()
        .map(|o| (o.kept.id.0.as_str(), o.short(), o.shipment(shelf.today, Fit::Unfinished).len()))
        .collect();
    assert_eq!(orders, [("demo-order-shop", 0, 1), ("demo-order-market", 2, 0)]);
    assert!(j.entries().iter().all(|e| e.at <= NOW), "nothing is done in the future");
}

/// The days by Python's datetime, from the numbers in the table of the demo.
#[test]
fn the_stores_of_the_demo() {
    let j = workshop();
    let lots: Vec<String> = (0..15)
        .map(|n| {
            let lot =
                j.state().lots.get(&Id(format!("demo-lot-{n}"))).and_then(|k| k.body()).expect("it is there");
            let until = lot.best_before.map_or("keeps".to_owned(), |day| day.to_string());
            let pack = match lot.bought.pack {
                Pack::Pieces(pieces) => format!("{pieces} pieces"),
                Pack::Weight(weight) => format!("{} g", weight.value.in_base().round()),
                other => format!("{other:?}"),
            };
            let (got, price, packs) = (lot.got_on, lot.price.0, lot.bought.packs);
            let all = lot.amount.round();
            format!(
                "{} {}: {got} to {until}, {price} for {packs} of {pack}, {all} in all",
                lot.ingredient, lot.number
            )
        })
        .collect();
    assert_eq!(
        lots,
        [
            "Meadow soft wax MS-2210: 2025-10-17 to 2026-09-20, 4150 for 1 of 5000 g, 5000 in all",
            "Meadow soft wax MS-2304: 2025-11-12 to 2027-01-18, 8200 for 2 of 5000 g, 10000 in all",
            "Harbour firm wax HF-77: 2025-10-17 to 2027-04-08, 5400 for 1 of 5000 g, 5000 in all",
            "Light guard powder LG-9: 2025-10-17 to keeps, 1280 for 1 of 100 g, 100 in all",
            "Hard flake F-31: 2025-10-17 to keeps, 900 for 1 of 500 g, 500 in all",
            "Brick dye B-4: 2025-10-17 to keeps, 690 for 1 of 30 g, 30 in all",
            "Plum dye P-11: 2025-10-17 to keeps, 690 for 1 of 30 g, 30 in all",
            "Late orchard oil LO-118: 2025-10-17 to 2026-01-03, 3150 for 1 of 250 g, 250 in all",
            "Late orchard oil LO-121: 2025-11-14 to 2026-11-19, 5600 for 1 of 500 g, 500 in all",
            "Salt hedge oil SH-52: 2025-10-17 to 2026-06-12, 3900 for 1 of 250 g, 250 in all",
            "Cold larder oil CL-8: 2025-11-04 to 2026-10-20, 3600 for 1 of 250 g, 250 in all",
            "Wet slate oil WS-3: 2025-11-04 to 2026-10-20, 3300 for 1 of 250 g, 250 in all",
            "Shoulder jar J-0924: 2025-10-17 to keeps, 4320 for 3 of 12 pieces, 36 in all",
            "Low tin T-1107: 2025-10-17 to keeps, 2640 for 2 of 24 pieces, 48 in all",
            "Cotton 14 C14-6: 2025-10-17 to keeps, 800 for 1 of 50 pieces, 50 in all",
        ]
    );
}

/// Its days are those of the zone, for whoever reads it.
#[test]
fn the_days_of_the_demo() {
    let evening = 1_795_573_800_000;
    let lines = demo("tablet", evening, LOS_ANGELES, || 7).into_iter().map(|(_, line)| line).collect();
    let journal = Journal::open(lines, "tablet");
    let s = journal.state();
    assert_eq!(s.batches.len(), 2);
    for batch in s.batches.values() {
        assert_eq!(batch.begun_on(AUCKLAND), LOS_ANGELES.day(batch.began));
        assert_ne!(batch.begun_on(AUCKLAND), Day::of(batch.began));
    }
    let first = s.lots.values().filter_map(|k| k.body()).map(|lot| lot.got_on).min();
    assert_eq!(first, Some(Day(LOS_ANGELES.day(evening).0 - 38)));
    let wanted = s.orders.values().filter_map(|k| k.body()?.wanted).min();
    assert_eq!(wanted, Some(Day(LOS_ANGELES.day(evening).0 + 3)));
}

/// Each step is a minute after the one before, at the middle of its range in half degrees.
#[test]
fn the_pours_of_the_demo() {
    const DAY: u64 = 86_400_000;
    let j = workshop();
    let mut pours: Vec<String> = Vec::new();
    for batch in j.state().batches_shown() {
        let record = batch.run.record(Voice::default());
        for (number, step) in (1..).zip(&record.steps) {
            assert_eq!(step.at, batch.began + number * 60_000, "{}", step.title);
            assert!(step.missed.is_none(), "{}", step.title);
        }
        let (_, ended, note) = batch.ended.as_ref().expect("it is ended");
        assert_eq!(*ended, batch.began + (record.steps.len() as u64 + 1) * 60_000);
        let warm = record.steps.iter().filter_map(|step| {
            let at = Voice::default().amount(step.temperature?, TemperatureUnit::Celsius);
            Some([&step.title, " at ", &at].concat())
        });
        let days = (NOW - batch.began) / DAY;
        pours.push(format!("{days} days ago: {} {note}", warm.collect::<Vec<_>>().join(", ")));
    }
    assert_eq!(
        pours,
        [
            "9 days ago: Melt the wax at 93.3 °C, Add Light guard powder at 86.5 °C, Add Brick dye at 84.5 °C, Add Plum dye at \
             84.5 °C, Add Late orchard oil at 81.0 °C, Bring it to the pour range at 73.0 °C Shade as it should be.",
            "16 days ago: Melt the wax at 90.0 °C, Add Salt hedge oil at 80.0 °C, Bring it to the pour range at 72.0 °C Smooth \
             tops. Two tins had a small well; a little hot wax mended it."
        ]
    );
    let orders: Vec<_> = j
        .state()
        .orders
        .values()
        .filter_map(|k| Some((k.id.0.as_str(), NOW - k.latest()?.at, k.body()?.wanted?.to_string())))
        .collect();
    let expected = [("demo-order-market", "2025-12-12"), ("demo-order-shop", "2025-11-27")];
    assert_eq!(orders, expected.map(|(id, wanted)| (id, 2 * DAY, wanted.to_owned())));
    let first = j.state().formulas.values().filter_map(|k| k.latest()).map(|v| NOW - v.at);
    assert!(first.into_iter().all(|ago| ago == 30 * DAY));
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
        // What it was closed with is what the usual limits say: those that passed were burned to their end.
        let found = judge(trial, course, &s.limits, voice);
        let decided = match course.closed {
            Some((verdict, _)) => suggested(&found) == Some(verdict),
            None => suggestion(trial, course, &found, voice).starts_with("So far so good: about "),
        };
        assert!(decided, "{}: {found:?}", trial.name);
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
    let (series, advice) = s.next_wick(candles[0].0, voice).unwrap();
    assert_eq!((series.sizes[advice.size].as_str(), advice.passed), ("Cotton 12", 2));
    assert_eq!((advice.passed_burns, advice.burned_down), (19, 2));
    // Another share of fragrance is another candle, and a wick of another series another wick whatever its name.
    let mut other = candles[0].0.clone();
    other.load = Some(Amount::new(Exact::whole(3), ShareUnit::Percent));
    assert!(s.like(&other).is_empty());
    let mut other = candles[0].0.clone();
    other.series = "Flat".to_owned();
    let mut wicks: Vec<_> = s.like(&other).into_iter().map(|b| b.wick).collect();
    wicks.sort();
    let name = |size: &str| [&candles[0].0.series, " ", size].concat();
    assert_eq!(wicks, ["Cotton 10", "Cotton 12", "Cotton 14"].map(name));
}

#[test]
fn it_is_the_same_whoever_makes_it_and_apart_from_others() {
    let ids = |device: &str| -> Vec<String> {
        demo(device, NOW, Zone::GREENWICH, || 7).into_iter().map(|(id, _)| id).collect()
    };
    assert_eq!(ids("tablet"), ids("tablet"));
    assert!(ids("tablet").iter().all(|id| !ids("table").contains(id)));
}
