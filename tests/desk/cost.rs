//! What a batch cost, and what a formula will cost.

use super::shared::{Shop, id, whole};
use potside::book::{Act, Ending};
use potside::day::Zone;
use potside::desk::{Cost, Item, Kind, Rates};
use potside::pot::{Event, StepKey};
use potside::quantity::{Exact, Mass, Money, Voice};
use proptest::prelude::*;

/// 12 an hour, 40 minutes a batch and 2 a candle; 1.50 a batch and 3 an hour of overhead; 0.25 a candle for packing.
fn rates() -> Rates {
    Rates {
        hour: Money(1200),
        batch_minutes: whole(40),
        candle_minutes: whole(2),
        overhead_batch: Money(150),
        overhead_hour: Money(300),
        packaging: Money(25),
        ..Rates::default()
    }
}

/// A pour of 4 done to its end, with 300 g of Coco from a lot of 1000 g for 20.00 and from one of 30.00.
fn poured() -> Shop {
    poured_but(&[])
}

/// The same with these vessels left empty.
fn poured_but(empty: &[u32]) -> Shop {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 1000, 2000);
    shop.lot("b", "Coco", 0, 1000, 3000);
    shop.act(0, Act::Rates(Box::new(rates())));
    shop.pour("p", 2, 300, &["a"]);
    let mut run = shop.state().batches.get(&id("p")).unwrap().run.clone();
    while let Some(step) = run.now() {
        let nothing = matches!(step.key, StepKey::Fill { vessel, .. } if empty.contains(&vessel));
        let weighed = if nothing { Some(Mass::ZERO) } else { step.amount };
        let event = Event::Did { step: step.key, weighed, temperature: None, at: super::shared::at(2) };
        run.take(event.clone()).unwrap();
        shop.act(2, Act::At { batch: id("p"), event });
    }
    shop.end("p", 2, Ending::Poured);
    shop
}

fn told(cost: &Cost) -> Vec<(Kind, &str, i64, i64)> {
    cost.items.iter().map(|i| (i.kind, i.name.as_str(), i.cost.0, i.average.0)).collect()
}

/// By hand: 300 g of the lot of 2.00 for 100 g is 6.00, by the average of both lots 7.50; 48 minutes at 12.00 are 9.60;
/// overhead 1.50 and 48 minutes at 3.00, 2.40; four at 0.25.
#[test]
fn a_batch_by_its_parts() {
    let mut shop = poured();
    let cost = shop.state().cost(&shop.ledger(), &id("p")).unwrap();
    assert_eq!(
        told(&cost),
        [
            (Kind::Material, "Coco", 600, 750),
            (Kind::Work, "Work", 960, 960),
            (Kind::Overhead, "Overhead", 390, 390),
            (Kind::Packaging, "Packaging", 100, 100),
        ]
    );
    assert_eq!((cost.total(), cost.average(), cost.candles), (Money(2050), Money(2200), 4));
    assert_eq!((cost.candle(), cost.dearest()), ((Money(512), 2), Money(513)));
    assert_eq!(cost.parts().into_iter().sum::<Money>(), Money(513));
    // The vessel and its wick are in no lot either, nor what finishes the candles.
    assert_eq!(cost.unpriced.len(), 9, "{:?}", cost.unpriced);
    assert!(["Soy", "Tumbler", "Cotton 12"].iter().all(|name| cost.unpriced.iter().any(|n| n == name)));
    assert!(!cost.unpriced.iter().any(|name| name == "Coco"));
    // 40 minutes of work are 8.00, of overhead 2.00, and 1.50 a batch.
    assert_eq!(cost.fixed, Money(1150));
    // A tenth more for Coco is 0.60 more; with a fifth of the candles lost, all of it a quarter more: 0.75.
    assert_eq!(cost.rise("Coco", Exact::ratio(1, 10)), Money(60));
    shop.act(3, Act::Rates(Box::new(Rates { loss: Exact::ratio(1, 5), ..rates() })));
    let lossy = shop.state().cost(&shop.ledger(), &id("p")).unwrap();
    // 20.50 ÷ 4 = 5.125, which goes to the even 5.12.
    assert_eq!(lossy.items.last().map(|i| (i.kind, i.cost)), Some((Kind::Loss, Money(512))));
    assert_eq!(lossy.rise("Coco", Exact::ratio(1, 10)), Money(75));
    // Said: 30 minutes.
    shop.act(3, Act::Rates(Box::new(rates())));
    shop.act(3, Act::Worked { batch: id("p"), minutes: 30 });
    assert_eq!(told(&shop.state().cost(&shop.ledger(), &id("p")).unwrap())[1].2, 600);
}

/// Two of four left empty: all of the wax is in two candles, which are what stands on the shelf.
#[test]
fn what_is_left_empty_is_no_candle() {
    let shop = poured_but(&[1, 3]);
    let state = shop.state();
    let batch = state.batches.get(&id("p")).unwrap();
    assert_eq!((batch.filled_vessels(), state.left_of(batch)), (2, 2));
    let cost = state.cost(&shop.ledger(), &id("p")).unwrap();
    assert_eq!(cost.candles, 2);
    // By hand: 40 minutes and 2 for each candle, 44, at 12.00 an hour; packing of two.
    assert_eq!(
        told(&cost),
        [
            (Kind::Material, "Coco", 600, 750),
            (Kind::Work, "Work", 880, 880),
            (Kind::Overhead, "Overhead", 370, 370),
            (Kind::Packaging, "Packaging", 50, 50),
        ]
    );
    assert_eq!(batch.ends(Ending::Poured), Ending::Poured);
    // Where all stay empty nothing was poured.
    let none = poured_but(&[0, 1, 2, 3]);
    let batch = none.state().batches.get(&id("p")).unwrap();
    assert_eq!((batch.ends(Ending::Poured), batch.poured_at()), (Ending::GivenUp, None));
    assert_eq!(none.state().cost(&none.ledger(), &id("p")), None);
}

#[test]
fn work_by_the_times_of_the_steps_leaves_out_waiting_and_pauses() {
    let mut shop = Shop::new();
    shop.act(0, Act::Rates(Box::new(Rates { timed: true, ..rates() })));
    shop.pour("p", 2, 300, &[]);
    // The first wax was weighed at once, the second after 4 minutes, the tabs set after one more; melting took 25; what comes
    // next took 6, and then 45.
    let start = super::shared::at(2);
    let mut run = shop.state().batches.get(&id("p")).unwrap().run.clone();
    for minutes in [4, 5, 30, 36, 81] {
        let step = run.now().unwrap();
        assert_eq!(matches!(step.key, StepKey::Melt { .. }), minutes == 30, "{minutes}: {:?}", step.key);
        let event = Event::Did {
            step: step.key,
            weighed: step.amount,
            temperature: None,
            at: start + minutes * 60_000,
        };
        run.take(event.clone()).unwrap();
        shop.act(2, Act::At { batch: id("p"), event });
    }
    let batch = shop.state().batches.get(&id("p")).unwrap();
    assert_eq!(batch.minutes(&shop.state().rates), whole(11));
    assert_eq!(shop.state().cost(&shop.ledger(), &id("p")), None, "nothing is filled");
}

/// The demo's Late Orchard: a candle of 4 costs more than one of 24, and the sentence says why.
#[test]
fn a_small_batch_is_dearer() {
    let lines = potside::book::demo("tablet", 1_764_000_000_000, Zone::GREENWICH, || 7);
    let mut journal = potside::book::Journal::open(lines.into_iter().map(|(_, l)| l).collect(), "tablet");
    let entry = journal.entry(Act::Rates(Box::new(rates())), 1_764_000_000_000, 99);
    journal.take(entry);
    let state = journal.state();
    let ledger = potside::stores::Ledger::of(state, Zone::GREENWICH);
    let voice = Voice::default();
    let of = |n| state.expected(&ledger, (&id("demo-orchard"), &id("demo-jar")), n, voice).unwrap();
    let (small, large) = (of(4), of(24));
    assert!(small.dearest() > large.dearest());
    assert!(small.items.iter().any(|i| i.name == "Late orchard oil"), "{:?}", small.unpriced);
    insta::assert_snapshot!(state.why_small(&small, &large, voice));
    insta::assert_debug_snapshot!((small.bars(&state.rates.currency, voice), large.candle()));
}

/// What finishes a candle is in its cost once, and not where the formula counts it already; where a batch is not finished it
/// is told that it is not in the sum.
#[test]
fn what_finishes_a_candle_is_in_its_cost_once() {
    let mut shop = poured();
    let product = |parts: &[&str]| potside::shelf::Product {
        name: "Fig".into(),
        formula: id("f"),
        vessel: id("v"),
        wick: "Cotton 12".into(),
        parts: parts.iter().map(|p| (*p).to_owned()).collect(),
        spare: 0,
        cure_days: None,
    };
    let body = product(&["Lid", "Wick tab", "lid "]);
    assert_eq!(body.finish(|part| part == "Wick tab"), ["Lid"]);
    shop.act(3, Act::Product { id: id("x"), over: None, body });
    let unpriced = |shop: &Shop| shop.state().cost(&shop.ledger(), &id("p")).unwrap().unpriced;
    assert_eq!(
        unpriced(&shop).iter().filter(|n| ["Lid", "Wick tab", "lid "].contains(&n.as_str())).count(),
        2
    );
    shop.lot("l", "Lid", 0, 100, 500);
    shop.from("p", 3, "Lid", &["l"]);
    assert!(unpriced(&shop).contains(&"Lid".to_owned()), "named, and not counted out");
}

/// Prices are kept in whole minor units: other decimals would make a hundred of one.
#[test]
fn decimals_stay_once_a_price_is_written_down() {
    let mut shop = Shop::new();
    let digits =
        |digits| Rates { currency: potside::quantity::Currency { symbol: "¥".into(), digits }, ..rates() };
    assert_eq!(shop.state().refuses(&digits(0)), None);
    shop.lot("free", "Coco", 0, 1000, 0);
    assert_eq!(shop.state().refuses(&digits(0)), None);
    shop.lot("a", "Coco", 0, 1000, 2000);
    assert_eq!(shop.state().refuses(&digits(2)), None);
    let why = shop.state().refuses(&digits(0)).unwrap();
    assert!(why.starts_with("Decimals: ") && why.ends_with("Leave it at 2."), "{why}");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_parts_add_up(costs in proptest::collection::vec(0..10_000_i64, 1..8), candles in 1..200_u32) {
        let items = costs.iter().map(|c| Item { kind: Kind::Material, name: String::new(), cost: Money(*c), average: Money(0) });
        let cost = Cost { items: items.collect(), candles, fixed: Money(0), unpriced: vec![] };
        let (each, more) = cost.candle();
        prop_assert!(more < candles);
        prop_assert_eq!(each.0 * i64::from(candles) + i64::from(more), cost.total().0);
        if cost.total() > Money::ZERO {
            prop_assert_eq!(cost.parts().into_iter().sum::<Money>(), cost.dearest());
        }
    }
}
