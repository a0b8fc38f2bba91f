//! From a lot to its batches and back.

use super::ledger::{does, doing};
use super::shared::{Shop, id, whole};
use potside::book::{Act, Ending, Id};
use potside::pot::StepKey;
use potside::quantity::{Exact, Voice};
use potside::shelf::{Move, Reason};
use potside::stores::LotEvent;
use proptest::prelude::*;

#[test]
fn from_a_lot_to_its_batches_and_from_a_batch_to_its_lots() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 500, 1000);
    shop.lot("b", "Coco", 1, 500, 1000);
    shop.pour("p1", 2, 400, &["a", "b"]);
    shop.pour("p2", 3, 400, &["a", "b"]);
    shop.pour("p3", 4, 100, &[]);
    let ledger = shop.ledger();
    let forward = |lot: &str| -> Vec<(String, Exact)> {
        let reached = ledger.forward(shop.state(), &id(lot));
        reached.iter().map(|r| (r.batch.id.to_string(), r.amount)).collect()
    };
    assert_eq!(forward("a"), [("p1".into(), whole(400)), ("p2".into(), whole(100))]);
    assert_eq!(forward("b"), [("p2".into(), whole(300))]);
    assert_eq!(forward("c"), []);
    let back: Vec<_> = ledger.back(&id("p2")).iter().map(|o| (o.holding.id.clone(), o.amount)).collect();
    assert_eq!(back, [(id("a"), whole(100)), (id("b"), whole(300))]);
    assert_eq!(ledger.back(&id("p3")), []);
    let batch = |name: &str| shop.state().batches.get(&id(name)).unwrap();
    assert_eq!(batch("p3").untraced(&ledger), ["Coco"]);
    assert_eq!(batch("p1").untraced(&ledger), Vec::<&str>::new());
    // A lot that is in the book no more tells nothing.
    shop.pour("p4", 4, 100, &["gone"]);
    let ledger = shop.ledger();
    assert_eq!(shop.state().batches.get(&id("p4")).unwrap().untraced(&ledger), ["Coco"]);
}

/// Of two lots that a part was taken from one turns out to be of something else, and is put right: both are found from the
/// candles still, and what was weighed is of the one that is of that part.
#[test]
fn a_lot_that_is_put_right_to_be_of_another_ingredient_is_still_found() {
    for wrong in ["a", "b"] {
        let mut shop = Shop::new();
        shop.lot("a", "Coco", 0, 300, 300);
        shop.lot("b", "Coco", 0, 900, 1000);
        shop.pour("p", 1, 400, &["a", "b"]);
        let other = if wrong == "a" { "b" } else { "a" };
        let body = super::shared::grams_of("Palm", wrong, 0, 900, 1000);
        shop.act(2, Act::Lot { id: id(wrong), over: None, body });
        let ledger = shop.ledger();
        let reached = |lot: &str| -> Vec<Exact> {
            ledger.forward(shop.state(), &id(lot)).iter().map(|r| r.amount).collect()
        };
        assert_eq!((reached(wrong), reached(other)), (vec![Exact::ZERO], vec![whole(400)]), "{wrong}");
        assert_eq!(ledger.account("Palm").unwrap().left(), whole(900));
        assert_eq!(ledger.back(&id("p")).len(), 2);
        shop.event(wrong, 3, LotEvent::Held { reason: "not what it says".into() });
        assert!(shop.ledger().is_held(&id("p")));
        assert_eq!(shop.state().held(), [(id("p"), id(wrong))]);
    }
}

/// The same of a pour that has it still to take: what it will take is set aside where it will be taken from.
#[test]
fn what_is_set_aside_is_of_the_lot_it_will_be_taken_from() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 300, 300);
    shop.lot("b", "Coco", 0, 900, 1000);
    shop.begin("p", 1);
    shop.from("p", 1, "Coco", &["a", "b"]);
    let body = super::shared::grams_of("Palm", "a", 0, 300, 300);
    shop.act(2, Act::Lot { id: id("a"), over: None, body });
    let ledger = shop.ledger();
    let reserved = |name: &str| ledger.account(name).unwrap().reserved();
    assert!(reserved("Palm").is_zero() && reserved("Coco") > whole(100));
}

#[test]
fn a_hold_marks_the_candles_and_is_not_used_in_the_next_pour() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 5000, 1000);
    shop.lot("b", "Coco", 1, 100, 1000);
    shop.pour("p1", 2, 400, &["a"]);
    shop.pour("p2", 2, 50, &["b"]);
    let plan = shop.state().batches.get(&id("p1")).unwrap().run.plan.clone();
    let sources = |shop: &Shop| {
        let (sources, notes) =
            shop.ledger().sources(&plan, potside::day::Day(super::shared::FIRST), Voice::default());
        let lots: Vec<String> = sources.iter().flat_map(|s| &s.lots).map(Id::to_string).collect();
        (lots, notes.into_iter().map(|n| n.text).collect::<Vec<_>>())
    };
    assert_eq!(sources(&shop), (vec!["a".to_owned()], vec![]));
    shop.event("a", 3, LotEvent::Held { reason: "cloudy".into() });
    let ledger = shop.ledger();
    assert!(ledger.is_held(&id("p1")) && !ledger.is_held(&id("p2")));
    assert_eq!(
        sources(&shop),
        (
            vec!["b".to_owned()],
            vec![
                "Lot a of “Coco” is on hold, so it is not used. Release it in the Stores, or use another.".to_owned(),
                "“Coco”: this takes 194.9 g (6.87 oz), and 50.0 g (1.76 oz) can be used of what is in the stores. Get more, \
                 count what is there, or pour fewer."
                    .to_owned(),
            ]
        )
    );
    shop.event("a", 4, LotEvent::Released { reason: "it was the cold".into() });
    assert!(shop.ledger().held().is_empty());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn forward_and_back_are_inverse(all in proptest::collection::vec(doing(), 1..25)) {
        let mut shop = Shop::new();
        for (n, (day, what)) in all.iter().enumerate() {
            does(&mut shop, *day, what, n);
        }
        let ledger = shop.ledger();
        let mut forward: Vec<(Id, Id, Exact)> = Vec::new();
        for holding in ledger.accounts.iter().flat_map(|a| &a.lots) {
            let reached = ledger.forward(shop.state(), &holding.id);
            forward.extend(reached.into_iter().map(|r| (holding.id.clone(), r.batch.id.clone(), r.amount)));
        }
        let mut back: Vec<(Id, Id, Exact)> = Vec::new();
        for batch in shop.state().batches.values() {
            let origins = ledger.back(&batch.id);
            back.extend(origins.into_iter().map(|o| (o.holding.id.clone(), batch.id.clone(), o.amount)));
        }
        forward.sort();
        back.sort();
        prop_assert_eq!(forward, back);
    }
}

/// From a lot to everybody who may have a candle: those it was sent to, who got one as a gift or a sample; of one who is
/// removed only the candles are told. And every candle is somewhere.
#[test]
fn from_a_lot_to_whoever_has_the_candles() {
    use potside::shelf::{Buys, Customer, Move, Order, OrderLine, Reason};
    use potside::stores::Whereabouts;
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 5000, 1000);
    shop.pour("p1", 2, 400, &["a"]);
    shop.pour("p2", 3, 400, &[]);
    let customer = |name: &str| Customer {
        name: name.into(),
        buys: Buys::Retail,
        contact: "12 Mill Lane".into(),
        removed: false,
    };
    for (of, name) in [("c1", "Ada"), ("c2", "Bo")] {
        shop.act(4, Act::Customer { id: id(of), over: None, body: customer(name) });
        let lines = vec![OrderLine { product: id("x"), number: 2 }];
        let body = Order {
            customer: Some(id(of)),
            lines,
            wanted: None,
            in_parts: false,
            note: String::new(),
            closed: false,
        };
        shop.act(4, Act::Order { id: id(&format!("o-{of}")), over: None, body });
    }
    let for_order = |order: &str| Reason::Shipped { order: id(order), product: id("x") };
    for (of, batch, number, reason, day) in [
        ("m1", "p1", 2, for_order("o-c2"), 9),
        ("m2", "p1", 3, for_order("o-c1"), 8),
        ("m3", "p2", 2, for_order("o-c1"), 8),
        ("m4", "p1", 4, Reason::Gift, 7),
        ("m5", "p1", 5, Reason::Sample, 10),
        ("m6", "p1", 1, Reason::Broken, 7),
        ("m7", "p1", 3, Reason::Missing, 7),
        ("m8", "p1", 1, Reason::Found, 8),
        ("m9", "p1", 2, Reason::Returned, 11),
        ("m10", "p2", 2, Reason::Gift, 8),
    ] {
        let on = potside::day::Day(super::shared::FIRST + day);
        let body = Move { batch: id(batch), number, reason, on, note: String::new() };
        shop.act(day, Act::Moved { id: id(of), over: None, body });
    }
    let told = |shop: &Shop| -> Vec<(u32, Option<String>, Option<String>)> {
        let ledger = shop.ledger();
        let reached = ledger.forward(shop.state(), &id("a"));
        let sent = shop.state().sent_of(&reached);
        let one = |s: &potside::stores::Sent| {
            (s.moved.number, s.order.map(|o| o.0.to_string()), s.customer.map(|c| c.name.clone()))
        };
        sent.iter().map(one).collect()
    };
    let ada = (3, Some("o-c1".to_owned()), Some("Ada".to_owned()));
    let bo = (2, Some("o-c2".to_owned()), Some("Bo".to_owned()));
    assert_eq!(told(&shop), [(4, None, None), ada, bo, (5, None, None)]);
    let ledger = shop.ledger();
    let reached = ledger.forward(shop.state(), &id("a"));
    let all = shop.state().whereabouts(&reached);
    // Nothing was filled of these pours: 14 with somebody, 2 came back, 3 gone, so 15 are to be counted.
    assert_eq!(all, Whereabouts { filled: 0, apart: 0, out: 14, back: 2, gone: 3, here: -15 });
    assert_eq!(all.here, reached.iter().map(|r| shop.state().left_of(r.batch)).sum::<i64>());
    shop.act(12, Act::Forgotten { customer: id("c2") });
    assert_ne!(told(&shop)[2].2.as_deref(), Some("Bo"));
    assert_eq!(told(&shop).len(), 4);
}

#[test]
fn a_lot_past_its_day_is_told_before_it_is_poured() {
    let mut shop = Shop::new();
    let mut body = super::shared::grams_of("Coco", "a", 0, 5000, 1000);
    body.best_before = Some(potside::day::Day(super::shared::FIRST + 10));
    shop.act(0, Act::Lot { id: id("a"), over: None, body });
    shop.pour("p1", 2, 400, &["a"]);
    let plan = shop.state().batches.get(&id("p1")).unwrap().run.plan.clone();
    let notes = |day: u32| {
        shop.ledger().sources(&plan, potside::day::Day(super::shared::FIRST + day), Voice::default()).1
    };
    assert_eq!(notes(10), []);
    let told = notes(11);
    assert!(
        told[0].caution && told[0].text.starts_with("Lot a of “Coco” is past its best-before day."),
        "{told:?}"
    );
}

/// Two were filled before a pour was stopped: a recall finds them, and does not say that they stand on the shelf.
#[test]
fn candles_of_a_stopped_pour_are_told_and_not_on_the_shelf() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 5000, 1000);
    shop.begin("p", 1);
    shop.from("p", 1, "Coco", &["a"]);
    let next = |shop: &Shop| shop.state().batches.get(&id("p")).unwrap().run.now().unwrap().key;
    while next(&shop) != (StepKey::Fill { pour: 0, vessel: 2 }) {
        let step = next(&shop);
        shop.did("p", 2, step, None);
    }
    let told = |shop: &Shop| {
        let ledger = shop.ledger();
        let all = shop.state().whereabouts(&ledger.forward(shop.state(), &id("a")));
        (all.filled, all.apart, all.here)
    };
    assert_eq!(told(&shop), (2, 2, 0));
    let stopped = shop.act(3, Act::Ended { batch: id("p"), how: Ending::GivenUp, note: String::new() });
    assert_eq!(told(&shop), (2, 2, 0));
    shop.act(4, Act::Undo { entry: stopped });
    shop.end("p", 5, Ending::Poured);
    assert_eq!(told(&shop), (2, 0, 2));
}

/// A pour that was over is gone on with after two of its candles were sent: those went, and the others are apart again.
#[test]
fn candles_that_were_sent_before_a_pour_is_gone_on_with_are_counted_once() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 5000, 1000);
    shop.begin("p", 1);
    shop.from("p", 1, "Coco", &["a"]);
    let next = |shop: &Shop| shop.state().batches.get(&id("p")).unwrap().run.now().unwrap().key;
    while next(&shop) != (StepKey::Fill { pour: 0, vessel: 3 }) {
        let step = next(&shop);
        shop.did("p", 2, step, None);
    }
    let over = shop.act(3, Act::Ended { batch: id("p"), how: Ending::Poured, note: String::new() });
    for (number, reason, moved) in [(2, Reason::Gift, "m1"), (1, Reason::Broken, "m2")] {
        let body = Move {
            batch: id("p"),
            number,
            reason,
            on: potside::day::Day(super::shared::FIRST),
            note: String::new(),
        };
        shop.act(4, Act::Moved { id: id(moved), over: None, body });
    }
    let told = |shop: &Shop| {
        let ledger = shop.ledger();
        let all = shop.state().whereabouts(&ledger.forward(shop.state(), &id("a")));
        (all.filled, all.apart, all.out, all.gone, all.here)
    };
    assert_eq!(told(&shop), (3, 0, 2, 1, 0));
    shop.act(5, Act::Undo { entry: over });
    assert_eq!(told(&shop), (3, 0, 2, 1, 0));
}
