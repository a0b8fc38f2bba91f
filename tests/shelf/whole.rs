//! Every gram and every candle is accounted for: any sequence of lots, pours, mends, orders, shipments, breakage, returns,
//! counts and undos on two tablets whose books are then merged. What is expected is added up by `tally` from the entries.

use super::agenda;
use super::common::Workshop;
use super::shared::{FIRST, Shop, at, id, shipped};
use super::tally::{Tally, comes};
use potside::book::{Act, Batch, Book, Ending, Id, State};
use potside::day::{Day, Zone};
use potside::pot::{Event, StepKey, Target, Way};
use potside::quantity::{Amount, Exact, Mass, MassUnit, Money, Voice};
use potside::shelf::{Fit, Move, Order, OrderLine, Reason};
use potside::stores::{Bought, Ledger, Lot, LotEvent, Pack, Source};
use proptest::prelude::*;

const LOTS: [(&str, &str); 6] = [
    ("coco-1", "Coco"),
    ("coco-2", "Coco"),
    ("soy-1", "Soy"),
    ("figs", "Fig leaf"),
    ("cups", "Tumbler"),
    ("lids", "Lid"),
];

/// What is done, and two numbers that say how.
type Do = (u8, u16, u16);

fn day(n: usize) -> u32 {
    20 + n as u32
}

/// The one of so many that a number picks.
fn pick<T: Clone>(all: &[T], n: u16) -> Option<T> {
    all.get(usize::from(n) % all.len().max(1)).cloned()
}

fn ids<'a>(all: impl Iterator<Item = &'a Id>) -> Vec<Id> {
    all.cloned().collect()
}

fn lot(n: u16, amount: u16) -> Act {
    let (lot, of) = LOTS[usize::from(n) % LOTS.len()];
    let pieces = ["Tumbler", "Lid"].contains(&of);
    let (pack, amount) = if pieces {
        (Pack::Pieces(u32::from(amount % 20) + 1), Exact::whole((amount % 20 + 1).into()))
    } else {
        let grams = Exact::whole((amount % 1500).into());
        (Pack::Weight(Amount::new(grams, MassUnit::Gram)), grams)
    };
    let body = Lot {
        ingredient: of.into(),
        number: lot.into(),
        supplier: String::new(),
        got_on: Day(FIRST),
        best_before: None,
        price: Money(1000),
        bought: Bought { packs: 1, pack },
        amount,
    };
    Act::Lot { id: id(lot), over: None, body }
}

fn sources(n: u16) -> Vec<Source> {
    let coco = if n.is_multiple_of(2) { vec!["coco-1", "coco-2"] } else { vec!["coco-2"] };
    let all = [
        ("Coco", coco),
        ("Soy", vec!["soy-1"]),
        ("Fig leaf", vec!["figs"]),
        ("Tumbler", vec!["cups"]),
        ("Lid", vec!["lids"]),
    ];
    let chosen = all.into_iter().enumerate().filter(|(at, _)| n >> at & 3 != 3);
    chosen
        .map(|(_, (part, lots))| Source { part: part.into(), lots: lots.into_iter().map(id).collect() })
        .collect()
}

/// Goes on with a pour: every third weighing is half as much again, and is then kept or put right.
fn go_on(shop: &mut Shop, batch: &Id, when: u32, (steps, how): (u16, u16)) {
    for n in 0..steps {
        let run = &shop.state().batches.get(batch).unwrap().run;
        let event = if let Some(pending) = run.pending(Voice::default()) {
            let way = if how.is_multiple_of(2) { Way::Keep } else { Way::Restore };
            Event::Mended { step: pending.step, way, at: at(when) }
        } else {
            let Some(step) = run.now().filter(|s| s.key != StepKey::Close) else { return };
            let over = if n.wrapping_add(how).is_multiple_of(3) { Exact::ratio(3, 2) } else { Exact::ONE };
            let weighed =
                step.key.goes_in().then(|| Mass::base(step.amount.unwrap_or(Mass::ZERO).in_base() * over));
            Event::Did { step: step.key, weighed, temperature: None, at: at(when) }
        };
        shop.act(when, Act::At { batch: batch.clone(), event });
    }
}

fn moved(shop: &mut Shop, tablet: &str, n: usize, (number, reason): (u32, Reason), batch: Id) {
    let body = Move { batch, number, reason, on: Day(FIRST + day(n)), note: String::new() };
    shop.act(day(n), Act::Moved { id: id(&format!("{tablet}-m{n}")), over: None, body });
}

fn does(shop: &mut Shop, tablet: &str, n: usize, (what, a, b): Do) {
    let when = day(n);
    let batches = ids(shop.state().batches.values().map(|b| &b.id));
    let orders = ids(shop.state().orders.values().map(|k| &k.id));
    let on = ids(shop.state().pours_on().into_iter().map(|b| &b.id));
    let small = u32::from(a % 3) + 1;
    match what {
        0 | 1 => {
            let batch = format!("{tablet}-{n}");
            let plan = std::rc::Rc::new(Workshop::new().plan(Target::Vessels(u32::from(a % 5) + 1)).unwrap());
            let (formula, version, vessel) = (id("f"), id("e"), id("v"));
            shop.act(when, Act::Began { batch: id(&batch), formula, version, vessel, day: None, plan });
            shop.act(when, Act::TakenFrom { batch: id(&batch), sources: sources(b) });
        }
        2..=4 => {
            if let Some(batch) = pick(&on, a) {
                go_on(shop, &batch, when, (b % 60, a));
                if b % 60 > 15 {
                    let how = if a.is_multiple_of(5) { Ending::GivenUp } else { Ending::Poured };
                    shop.act(when, Act::Ended { batch, how, note: String::new() });
                }
            }
        }
        5 | 6 => drop(shop.act(when, lot(a, b))),
        7 => {
            let reason = "looked".to_owned();
            let event = match b % 4 {
                0 => LotEvent::Counted { left: Exact::whole((b % 700).into()), reason },
                1 => LotEvent::WrittenOff { amount: Exact::whole((b % 300).into()), reason },
                2 => LotEvent::Held { reason },
                _ => LotEvent::Released { reason },
            };
            shop.act(when, Act::AtLot { lot: id(LOTS[usize::from(a) % LOTS.len()].0), event });
        }
        8 => {
            if let Some(batch) = pick(&batches, a) {
                shop.act(when, Act::TakenFrom { batch, sources: sources(b) });
            }
        }
        9 | 10 => {
            let known = pick(&orders, b).filter(|_| a.is_multiple_of(4));
            let body = Order {
                customer: None,
                lines: vec![OrderLine { product: id("Fig"), number: small * 2 }],
                wanted: None,
                in_parts: b.is_multiple_of(2),
                note: String::new(),
                closed: known.is_some() && b.is_multiple_of(3),
            };
            let order = known.unwrap_or_else(|| id(&format!("{tablet}-o{n}")));
            shop.act(when, Act::Order { id: order, over: None, body });
        }
        // All that may go of an order, as its page sends it; or any number, as when two send at once.
        11 | 12 => {
            let today = Day(FIRST + when);
            let shelf = shop.state().shelf(today, Zone::GREENWICH);
            let all: Vec<_> = shelf.orders.iter().map(|o| o.shipment(today, Fit::Unfinished)).collect();
            for (at, body) in pick(&all, a).unwrap_or_default().into_iter().enumerate() {
                shop.act(when, Act::Moved { id: id(&format!("{tablet}-s{n}-{at}")), over: None, body });
            }
        }
        13 => {
            if let (Some(batch), Some(order)) = (pick(&batches, a), pick(&orders, b)) {
                moved(shop, tablet, n, (small, shipped(&order.0, "Fig")), batch);
            }
        }
        14 | 15 => {
            let reasons = [Reason::Broken, Reason::Sample, Reason::Gift, Reason::Returned];
            if let Some(batch) = pick(&batches, a) {
                moved(shop, tablet, n, (small, reasons[usize::from(b % 4)].clone()), batch);
            }
        }
        16 => {
            if let Some(batch) = pick(&batches, a) {
                let left = shop.state().left_of(shop.state().batches.get(&batch).unwrap());
                if let Some(counted) = Move::counted(left, u32::from(b % 6)) {
                    moved(shop, tablet, n, counted, batch);
                }
            }
        }
        17 => {
            if let Some(batch) = pick(&batches, a) {
                shop.finish(&batch.0, when);
            }
        }
        18 => {
            let moves = ids(shop.state().moves.values().map(|k| &k.id));
            if let Some(id) = pick(&moves, a) {
                shop.act(when, Act::Retire { id, retired: b % 3 > 0 });
            }
        }
        _ => {
            let entries: Vec<Id> =
                shop.book.journal().entries().iter().skip(12).map(|e| e.id.clone()).collect();
            if let Some(entry) = pick(&entries, a.wrapping_mul(31).wrapping_add(b)) {
                shop.act(when, Act::Undo { entry });
            }
        }
    }
}

/// Grams and pieces: of each lot, and of each batch.
fn stores_are_whole(state: &State, tally: &Tally) {
    let ledger = Ledger::of(state, Zone::GREENWICH);
    for held in ledger.accounts.iter().flat_map(|a| &a.lots) {
        assert_eq!(held.in_candles + held.written_off + held.unexplained + held.left, held.lot.amount);
        assert!(!held.left.is_negative() && !held.reserved.is_negative() && held.reserved <= held.left);
    }
    for (batch, of) in tally.batches.iter().filter(|(_, of)| of.plan.is_some()) {
        for part in of.lots.keys() {
            let takes = ledger.account(part).into_iter().flat_map(|a| &a.takes).filter(|t| t.batch == *batch);
            let used = of.used(part, |lot| ledger.lot(lot).is_some());
            assert_eq!(takes.map(|t| t.amount).sum::<Exact>(), used, "{part} of {batch}");
        }
    }
}

/// Candles: of each batch, over all, for each order; of those being poured none twice.
fn candles_are_whole(state: &State, tally: &Tally) {
    let shelf = state.shelf(Day(FIRST + 200), Zone::GREENWICH);
    let stock = &shelf.stocks[0];
    let stands = || stock.stands.iter().chain(&shelf.loose);
    for batch in tally.batches.keys() {
        let there: i64 = stands().filter(|s| s.batch.id == *batch).map(|s| s.left).sum();
        assert_eq!(there, tally.left(batch), "{batch}");
    }
    let batches: Vec<&Batch> = state.batches.values().collect();
    for (batch, left) in batches.iter().zip(state.left_of_each(&batches)) {
        assert_eq!(left, state.left_of(batch), "{}", batch.id);
    }
    let poured = |b: &Id| tally.batches[b].ended == Some(Ending::Poured) && tally.batches[b].filled > 0;
    let all = tally.batches.keys().filter(|b| poured(b));
    let filled: i64 = all.clone().map(|b| tally.batches[b].filled).sum();
    let went: i64 =
        all.clone().map(|b| tally.went(Some(b), |r| !comes(r)) - tally.went(Some(b), comes)).sum();
    assert_eq!(filled, stands().map(|s| s.left).sum::<i64>() + went);
    let lines = || shelf.orders.iter().flat_map(|o| &o.lines);
    let kept: i64 = lines().flat_map(|l| &l.kept).map(|s| s.number).sum();
    assert_eq!(stock.free() + kept, stock.left() - stock.held());
    let coming: i64 = lines().flat_map(|l| &l.coming).map(|s| s.number).sum();
    let good: i64 = stock.coming.iter().filter(|s| s.held.is_empty()).map(|s| s.left).sum();
    assert_eq!(stock.coming.iter().map(|s| s.free).sum::<i64>() + coming, good);
    assert_eq!((stock.ordered, stock.poured), (kept + stock.short, coming));
    for open in &shelf.orders {
        for line in &open.lines {
            let sent = tally.went(None, |r| *r == shipped(&open.kept.id.0, "Fig"));
            let kept: i64 = line.kept.iter().map(|s| s.number).sum();
            assert_eq!((line.sent, sent + kept + line.short), (sent, line.number.max(sent)));
            assert!(line.coming.iter().map(|s| s.number).sum::<i64>() <= line.short);
        }
    }
    // Below zero only where more went, for a reason that stands there, than was filled.
    for stand in stands().filter(|s| s.left < 0) {
        assert!(tally.went(Some(&stand.batch.id), |r| !comes(r)) > tally.batches[&stand.batch.id].filled);
    }
}

fn what() -> impl Strategy<Value = Do> {
    (0..21_u8, any::<u16>(), any::<u16>())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_gram_and_every_candle_is_accounted_for(
        first in prop::collection::vec(what(), 0..20),
        one in prop::collection::vec(what(), 0..20),
        two in prop::collection::vec(what(), 0..20),
        after in prop::collection::vec(what(), 0..6),
    ) {
        let mut tablet = agenda::shop();
        tablet.product_of("Fig", &["Lid"]);
        (0..).zip(&first).for_each(|(n, what)| does(&mut tablet, "tablet", n, *what));
        let mut phone = tablet.on("phone");
        (20..).zip(&one).for_each(|(n, what)| does(&mut tablet, "tablet", n, *what));
        (20..).zip(&two).for_each(|(n, what)| does(&mut phone, "phone", n, *what));
        // Merged either way the two are alike, and go on alike.
        let (mut here, mut there) = (tablet.on("tablet"), phone.on("phone"));
        let lines = |book: &Book| book.journal().entries().iter().map(|e| e.to_line()).collect::<Vec<_>>();
        lines(&phone.book).into_iter().for_each(|line| here.book.hear(line));
        lines(&tablet.book).into_iter().for_each(|line| there.book.hear(line));
        prop_assert_eq!(here.state(), there.state());
        (40..).zip(&after).for_each(|(n, what)| does(&mut here, "tablet", n, *what));
        for shop in [&tablet, &phone, &here] {
            let tally = Tally::of(shop.book.journal());
            stores_are_whole(shop.state(), &tally);
            candles_are_whole(shop.state(), &tally);
        }
    }
}
