//! What became of every gram and every coin.

use super::shared::{Shop, id, whole};
use potside::book::{Act, Ending, Journal};
use potside::day::Zone;
use potside::pot::StepKey;
use potside::quantity::{Exact, MassUnit, Money, Voice};
use potside::stores::{Account, Ledger, LotEvent, Measure};
use proptest::prelude::*;

fn counted(left: i128) -> LotEvent {
    LotEvent::Counted { left: whole(left), reason: "counted".into() }
}

fn written_off(amount: i128) -> LotEvent {
    LotEvent::WrittenOff { amount: whole(amount), reason: "spilt".into() }
}

/// The worked example of a textbook of accounting: 10 at 91; 15 at 106; 20 sold; 20 at 115, 10 at 119; 23 sold. First in,
/// first out costs 1970 and then 2600 and leaves 1420. The moving average is 100 and then 114: 2000, 2622, 1368.
#[test]
fn the_worked_example_of_a_textbook() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 10, 910);
    shop.lot("b", "Coco", 1, 15, 1590);
    shop.pour("p1", 2, 20, &["a", "b"]);
    shop.lot("c", "Coco", 3, 20, 2300);
    shop.lot("d", "Coco", 4, 10, 1190);
    shop.pour("p2", 5, 23, &["b", "c", "d"]);
    let ledger = shop.ledger();
    let account = ledger.account(" coco").expect("it is there");
    let sum = |batch: &str, of: fn(&potside::stores::Take) -> Money| -> i64 {
        account.takes.iter().filter(|t| t.batch == id(batch)).map(of).sum::<Money>().0
    };
    assert_eq!((sum("p1", |t| t.cost), sum("p2", |t| t.cost)), (1970, 2600));
    assert_eq!((sum("p1", |t| t.average), sum("p2", |t| t.average)), (2000, 2622));
    let left: Money = account.lots.iter().map(potside::stores::Holding::value).sum();
    assert_eq!((left, account.worth), (Money(1420), Money(1368)));
    assert_eq!(account.left(), whole(12));
}

#[track_caller]
fn stands(shop: &Shop, lot: &str, in_candles: i128, written_off: i128, unexplained: i128, left: i128) {
    let ledger = shop.ledger();
    let (_, held) = ledger.lot(&id(lot)).expect("it is in the stores");
    assert_eq!(
        [held.in_candles, held.written_off, held.unexplained, held.left],
        [in_candles, written_off, unexplained, left].map(whole),
        "{lot}"
    );
}

#[test]
fn a_lot_goes_down_as_it_is_used_written_off_and_counted() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 1000, 2000);
    stands(&shop, "a", 0, 0, 0, 1000);
    shop.pour("p", 1, 300, &["a"]);
    stands(&shop, "a", 300, 0, 0, 700);
    shop.event("a", 2, written_off(50));
    stands(&shop, "a", 300, 50, 0, 650);
    let wrong = shop.event("a", 3, counted(640));
    stands(&shop, "a", 300, 50, 10, 640);
    shop.act(4, Act::Undo { entry: wrong });
    stands(&shop, "a", 300, 50, 0, 650);
    shop.event("a", 5, counted(660));
    stands(&shop, "a", 300, 50, -10, 660);
}

/// A count may find that nothing is left; and no more is written off than there is, such as where the unit is another.
#[test]
fn what_is_counted_and_written_off_can_be() {
    let voice = Voice::default();
    let read = |measure: Measure, text: &str| measure.read(text, voice);
    assert_eq!([read(Measure::Pieces, " 0 "), read(Measure::Grams, "0")], [Ok(Exact::ZERO), Ok(Exact::ZERO)]);
    assert_eq!(read(Measure::Pieces, "12"), Ok(whole(12)));
    assert!(read(Measure::Pieces, "1.5").is_err() && read(Measure::Pieces, "-1").is_err());
    let refused = |event: LotEvent, left: i128| event.within(whole(left), Measure::Pieces, voice).err();
    assert_eq!(refused(written_off(12), 12), None);
    assert_eq!(
        refused(written_off(13), 12).as_deref(),
        Some(
            "By the book this is left: 12 pieces. No more than that is written off. If more was there, count what is there \
             now."
        )
    );
    assert!(refused(written_off(0), 12).is_some_and(|why| why.ends_with('.')));
    assert_eq!([refused(counted(0), 12), refused(counted(100), 12)], [None, None]);
}

/// What is left is told rounded. Who types that to write all of it off means all of it.
#[test]
fn all_that_is_shown_can_be_written_off() {
    for (mass, grams) in
        [(MassUnit::Gram, 817), (MassUnit::Gram, 12_346), (MassUnit::Ounce, 818), (MassUnit::Ounce, 4_531)]
    {
        let voice = Voice { mass, ..Voice::default() };
        for tenths in 0..10 {
            let left = whole(grams) + Exact::ratio(tenths, 10) + Exact::ratio(1, 300);
            let said = Measure::Grams.say(left, voice);
            for typed in said.trim_end_matches(')').split(" (") {
                let amount = Measure::Grams.read(typed, voice).unwrap();
                let event = LotEvent::WrittenOff { amount, reason: "stale".into() };
                let kept = event.within(left, Measure::Grams, voice);
                assert_eq!(
                    kept,
                    Ok(LotEvent::WrittenOff { amount: amount.min(left), reason: "stale".into() }),
                    "{said}"
                );
            }
            let more = LotEvent::WrittenOff { amount: left * Exact::ratio(102, 100), reason: String::new() };
            assert!(more.within(left, Measure::Grams, voice).is_err(), "{said}");
        }
    }
}

#[test]
fn what_is_more_than_the_book_has_was_in_the_last_lot_and_costs_nothing() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 100, 500);
    shop.lot("b", "Coco", 0, 100, 700);
    shop.pour("p", 1, 230, &["a", "b"]);
    stands(&shop, "a", 100, 0, 0, 0);
    stands(&shop, "b", 130, 0, -30, 0);
    let cost: i64 = shop.ledger().accounts[0].takes.iter().map(|t| t.cost.0).sum();
    assert_eq!(cost, 1200);
}

/// Counted wrong, and counted again: nothing was lost, and the candles cost what was paid for what is in them.
#[test]
fn what_a_count_finds_again_is_worth_what_it_was() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 1000, 2000);
    shop.event("a", 1, counted(100));
    let value = |shop: &Shop| (shop.ledger().accounts[0].lots[0].value(), shop.ledger().accounts[0].worth);
    assert_eq!(value(&shop), (Money(200), Money(200)));
    shop.event("a", 2, counted(1000));
    assert_eq!(value(&shop), (Money(2000), Money(2000)));
    shop.pour("p1", 3, 500, &["a"]);
    shop.pour("p2", 4, 500, &["a"]);
    stands(&shop, "a", 1000, 0, 0, 0);
    let costs: Vec<_> = shop.ledger().accounts[0].takes.iter().map(|t| (t.cost, t.average)).collect();
    assert_eq!(costs, [(Money(1000), Money(1000)); 2]);
    // Found beyond what was bought it cost nothing.
    shop.event("a", 5, counted(50));
    assert_eq!(value(&shop), (Money(0), Money(0)));
}

/// By hand: 150 g came of a lot of 100 g, so 1150 g cost 55.00; of that 150 g are 7.17, and what is left is the 1000 g of the
/// other lot.
#[test]
fn what_is_more_than_the_book_has_takes_nothing_of_the_worth_of_other_lots() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 100, 500);
    shop.lot("b", "Coco", 0, 1000, 5000);
    shop.pour("p", 1, 150, &["a"]);
    let ledger = shop.ledger();
    assert_eq!(
        (ledger.accounts[0].takes[0].cost, ledger.accounts[0].takes[0].average),
        (Money(500), Money(717))
    );
    assert_eq!((ledger.accounts[0].left(), ledger.accounts[0].worth), (whole(1000), Money(4783)));
}

#[test]
fn a_count_before_a_pour_that_comes_in_later_stays_a_count() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 1000, 2000);
    shop.event("a", 5, counted(600));
    // Done on day 3 on another tablet, heard of afterwards: the count had it already.
    shop.pour("p", 3, 300, &["a"]);
    stands(&shop, "a", 300, 0, 100, 600);
}

#[test]
fn what_a_stopped_pour_took_is_in_no_candle() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 1000, 2000);
    shop.pour("p", 1, 300, &["a"]);
    shop.end("p", 1, Ending::GivenUp);
    stands(&shop, "a", 0, 300, 0, 700);
}

#[test]
fn the_first_to_expire_is_used_first_and_one_on_hold_not_at_all() {
    let mut shop = Shop::new();
    for (lot, got, expires) in [("late", 0, Some(400)), ("none", 0, None), ("soon", 9, Some(90))] {
        let mut body = super::shared::grams_of("Coco", lot, got, 100, 100);
        body.best_before = expires.map(|d| potside::day::Day(super::shared::FIRST + d));
        shop.act(9, Act::Lot { id: id(lot), over: None, body });
    }
    let order = |shop: &Shop| -> Vec<String> {
        shop.ledger().accounts[0].usable().map(|h| h.id.to_string()).collect()
    };
    assert_eq!(order(&shop), ["soon", "late", "none"]);
    shop.event("soon", 10, LotEvent::Held { reason: "smells of solvent".into() });
    assert_eq!(order(&shop), ["late", "none"]);
    shop.event("soon", 11, LotEvent::Released { reason: "asked the supplier".into() });
    shop.event("late", 11, written_off(100));
    assert_eq!(order(&shop), ["soon", "none"]);
}

#[test]
fn drops_of_no_known_weight_are_told_all_the_same() {
    let mut shop = Shop::new();
    shop.lot("a", "Red", 0, 30, 500);
    shop.pour("p", 1, 300, &[]);
    shop.from("p", 1, "Red", &["a"]);
    for line in 0..8 {
        for step in
            [StepKey::Wax { pour: 0, line }, StepKey::Melt { pour: 0 }, StepKey::Add { pour: 0, line }]
        {
            let event = potside::pot::Event::Did {
                step,
                weighed: Some(potside::quantity::Mass::ZERO),
                temperature: None,
                at: super::shared::at(1),
            };
            if shop.state().batches.get(&id("p")).unwrap().run.clone().take(event.clone()).is_ok() {
                shop.act(1, Act::At { batch: id("p"), event });
            }
        }
    }
    let ledger = shop.ledger();
    let takes = &ledger.account("Red").unwrap().takes;
    assert_eq!(takes.iter().map(|t| (&t.lot, t.amount)).collect::<Vec<_>>(), [(&id("a"), Exact::ZERO)]);
}

/// What a person may do, in any order.
#[derive(Clone, Debug)]
pub(crate) enum Do {
    Lot { lot: usize, grams: i128, price: i64 },
    Pour { grams: i128, lots: Vec<usize>, stopped: bool },
    Count { lot: usize, left: i128 },
    Off { lot: usize, amount: i128 },
    Undo { entry: usize },
    From { batch: usize, lots: Vec<usize> },
}

const LOTS: [&str; 4] = ["a", "b", "c", "d"];

pub(crate) fn doing() -> impl Strategy<Value = (u32, Do)> {
    let lots = || proptest::collection::vec(0..LOTS.len(), 0..3);
    let what = prop_oneof![
        (0..LOTS.len(), 1..2000_i128, 0..5000_i64).prop_map(|(lot, grams, price)| Do::Lot {
            lot,
            grams,
            price
        }),
        (0..900_i128, lots(), any::<bool>()).prop_map(|(grams, lots, stopped)| Do::Pour {
            grams,
            lots,
            stopped
        }),
        (0..LOTS.len(), 0..2000_i128).prop_map(|(lot, left)| Do::Count { lot, left }),
        (0..LOTS.len(), 0..500_i128).prop_map(|(lot, amount)| Do::Off { lot, amount }),
        any::<usize>().prop_map(|entry| Do::Undo { entry }),
        (any::<usize>(), lots()).prop_map(|(batch, lots)| Do::From { batch, lots }),
    ];
    (0..60_u32, what)
}

pub(crate) fn does(shop: &mut Shop, day: u32, what: &Do, n: usize) {
    let names = |lots: &[usize]| lots.iter().map(|l| LOTS[*l]).collect::<Vec<_>>();
    match what {
        Do::Lot { lot, grams, price } => {
            let of = if *lot < 3 { "Coco" } else { "Soy" };
            shop.lot(LOTS[*lot], of, day, *grams, *price);
        }
        Do::Pour { grams, lots, stopped } => {
            let batch = format!("p{n}");
            shop.pour(&batch, day, *grams, &names(lots));
            if *stopped {
                shop.end(&batch, day, Ending::GivenUp);
            }
        }
        Do::Count { lot, left } => drop(shop.event(LOTS[*lot], day, counted(*left))),
        Do::Off { lot, amount } => drop(shop.event(LOTS[*lot], day, written_off(*amount))),
        Do::Undo { entry } => {
            let entries = shop.book.journal().entries();
            if let Some(entry) = entries.get(entry % entries.len().max(1)).map(|e| e.id.clone()) {
                shop.act(day, Act::Undo { entry });
            }
        }
        Do::From { batch, lots } => {
            let batches: Vec<_> = shop.state().batches.values().map(|b| b.id.to_string()).collect();
            if let Some(batch) = batches.get(batch % batches.len().max(1)) {
                shop.from(batch, day, "Coco", &names(lots));
            }
        }
    }
}

/// Nothing is lost and nothing comes from nowhere: neither grams nor coins.
fn is_whole(account: &Account) {
    for held in &account.lots {
        assert_eq!(held.in_candles + held.written_off + held.unexplained + held.left, held.lot.amount);
        assert!(!held.left.is_negative());
        let taken: Exact = account.takes.iter().filter(|t| t.lot == held.id).map(|t| t.amount).sum();
        assert!(taken >= held.in_candles && taken <= held.in_candles + held.written_off);
        let cost: Money = account.takes.iter().filter(|t| t.lot == held.id).map(|t| t.cost).sum();
        assert!(cost + held.value() <= held.lot.price && held.value() >= Money::ZERO);
        // Where nothing was written off and nothing is missing, to the last coin.
        if held.written_off.is_zero() && held.unexplained <= Exact::ZERO {
            assert_eq!(cost + held.value(), held.lot.price);
        }
    }
    let paid: Money = account.lots.iter().map(|h| h.lot.price).sum();
    let average: Money = account.takes.iter().map(|t| t.average).sum();
    assert!(average + account.worth <= paid);
    assert_eq!(account.stock.last().map(|(_, left)| *left), Some(account.left()));
    assert!(account.stock.is_sorted_by_key(|(at, _)| *at));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_gram_is_accounted_for_after_any_acts_undo_and_merge(all in proptest::collection::vec(doing(), 1..25)) {
        let mut shop = Shop::new();
        for (n, (day, what)) in all.iter().enumerate() {
            does(&mut shop, *day, what, n);
        }
        let ledger = shop.ledger();
        ledger.accounts.iter().for_each(is_whole);
        // What was weighed from lots that are in the book is in the takes, to the gram.
        for batch in shop.state().batches.values() {
            let of = |u: &potside::pot::Used| {
                // What is used after a lot was named, and before the next one was, is of that; before any, of the first.
                let named = batch.sources.iter().find(|(until, s)| u.at < *until && !s.lots.is_empty());
                u.name == "Coco" && named.is_some_and(|(_, s)| s.lots.iter().any(|l| ledger.lot(l).is_some()))
            };
            let used: Exact = batch.run.used().iter().filter(|u| of(u)).map(|u| u.mass.in_base()).sum();
            let taken: Exact = ledger.accounts.iter().flat_map(|a| &a.takes).filter(|t| t.batch == batch.id).map(|t| t.amount).sum();
            prop_assert_eq!(taken, used);
        }
        // The same entries in another order come to the same stores.
        let mut other = Journal::open(Vec::new(), "phone");
        for entry in shop.book.journal().entries().iter().rev() {
            other.take(entry.clone());
        }
        prop_assert_eq!(Ledger::of(other.state(), Zone::GREENWICH), ledger);
    }
}
