//! Every candle is accounted for, whatever is done.

use super::shared::{FIRST, Shop, shipped};
use potside::book::{Act, Journal};
use potside::day::{Day, Zone};
use potside::quantity::Exact;
use potside::shelf::{Fit, Move, Reason};
use potside::stores::Reach;
use proptest::prelude::*;

#[derive(Clone, Debug)]
enum Done {
    Pour(u32),
    Order(u32, bool),
    Send(u32),
    Other(u32, u8),
    Undo(usize),
}

fn done() -> impl Strategy<Value = Done> {
    prop_oneof![
        (1_u32..6).prop_map(Done::Pour),
        (1_u32..8, any::<bool>()).prop_map(|(n, p)| Done::Order(n, p)),
        (1_u32..4).prop_map(Done::Send),
        (1_u32..3, 0_u8..5).prop_map(|(n, r)| Done::Other(n, r)),
        (0_usize..20).prop_map(Done::Undo),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Every candle is accounted for after any sequence of pours, orders, shipments and undos: what is there and what
    /// went is what was filled; nothing is kept for two; and it is all the same whichever way two halves of the book meet.
    #[test]
    fn every_candle_is_accounted_for(all in prop::collection::vec(done(), 1..14)) {
        let mut shop = Shop::new();
        shop.product("Fig", 3, Some(2));
        let mut entries = Vec::new();
        let (mut batches, mut orders) = (0, 0_usize);
        for (day, what) in (0..).zip(all) {
            match what {
                Done::Pour(n) => {
                    batches += 1;
                    shop.pour(&format!("b{batches}"), day, n);
                }
                Done::Order(n, in_parts) => {
                    orders += 1;
                    shop.order(&format!("o{orders}"), "Fig", n, Some(day + 9), in_parts);
                }
                Done::Send(n) if batches > 0 && orders > 0 => {
                    entries.push(shop.moved(day, &format!("b{batches}"), n, shipped(&format!("o{orders}"), "Fig")));
                }
                Done::Other(n, r) if batches > 0 => {
                    let reasons = [Reason::Broken, Reason::Sample, Reason::Gift, Reason::Found, Reason::Returned];
                    entries.push(shop.moved(day, &format!("b{batches}"), n, reasons[usize::from(r)].clone()));
                }
                Done::Undo(n) => {
                    if let Some(entry) = entries.get(n) {
                        shop.act(day, Act::Undo { entry: entry.clone() });
                    }
                }
                Done::Send(_) | Done::Other(..) => {}
            }
        }
        let state = shop.state();
        let shelf = state.shelf(Day(FIRST + 40), Zone::GREENWICH);
        let filled: i64 = state.batches.values().map(|b| b.filled_vessels() as i64).sum();
        let went: i64 = state.moves.values().filter_map(|k| k.body()).map(Move::adds).sum();
        let left: i64 = state.batches.values().map(|b| state.left_of(b)).sum();
        prop_assert_eq!(left, filled + went);
        let reached: Vec<Reach> = state.batches.values().map(|batch| Reach { batch, amount: Exact::ZERO }).collect();
        let all = state.whereabouts(&reached);
        prop_assert_eq!((all.filled, all.here), (filled, left));
        let told: i64 = state.sent_of(&reached).iter().map(|s| i64::from(s.moved.number)).sum();
        prop_assert_eq!(all.out, told);
        prop_assert_eq!(state.past_orders(&shelf.orders).len() + shelf.orders.len(), orders);
        let stock = &shelf.stocks[0];
        prop_assert_eq!(stock.stands.iter().map(|s| s.left).sum::<i64>(), left);
        let kept: i64 = shelf.orders.iter().flat_map(|o| &o.lines).flat_map(|l| &l.kept).map(|s| s.number).sum();
        prop_assert_eq!(stock.free() + kept, stock.left());
        prop_assert_eq!(stock.ordered, kept + stock.short);
        for line in shelf.orders.iter().flat_map(|o| &o.lines) {
            prop_assert!(line.may_go(true, Fit::Unfinished) <= line.number - line.sent && line.may_go(false, Fit::Unfinished) <= line.may_go(true, Fit::Unfinished));
            prop_assert_eq!(line.sent + line.kept.iter().map(|s| s.number).sum::<i64>() + line.short, line.number.max(line.sent));
        }
        // Two tablets: one has the even entries, one the odd ones.
        let entries = shop.book.journal().entries();
        let half = |odd: usize| entries.iter().skip(odd).step_by(2).cloned();
        for (a, b) in [(0, 1), (1, 0)] {
            let mut journal = Journal::open(Vec::new(), "other");
            half(a).for_each(|e| journal.take(e));
            half(b).for_each(|e| journal.take(e));
            prop_assert_eq!(journal.state(), state);
        }
    }
}
