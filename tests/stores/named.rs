//! Which lots a batch takes from: named on the way, chosen, on hold.

use super::common::{Workshop, read};
use super::shared::{Shop, at, id, whole};
use potside::bench::MeltingPot;
use potside::book::Act;
use potside::pot::{Event, StepKey, Target, Way};
use potside::quantity::Exact;
use potside::stores::LotEvent;

/// Each gram is of the lot that was named when it went in, whichever is named afterwards: a bad lot would else not be found in
/// the candles of the first of two pots.
#[test]
fn another_lot_named_on_the_way_changes_nothing_of_what_is_in() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 5000, 1000);
    shop.lot("b", "Coco", 1, 5000, 1000);
    shop.lot("c", "Coco", 1, 5000, 1000);
    let mut workshop = Workshop::new();
    workshop.pot = Some(MeltingPot { name: "Small".into(), capacity: read("500 g"), body: None });
    let plan = workshop.plan(Target::Vessels(4)).unwrap();
    assert_eq!(plan.pours.len(), 2);
    let (batch, formula, version, vessel) = (id("p"), id("f"), id("e"), id("v"));
    shop.act(2, Act::Began { batch, formula, version, vessel, day: None, plan: plan.into() });
    // Named and not used; then another before anything went in.
    shop.from("p", 2, "Coco", &["c"]);
    shop.from("p", 3, "Coco", &["a"]);
    shop.did("p", 3, StepKey::Wax { pour: 0, line: 0 }, Some(150));
    let back = |shop: &Shop| -> Vec<(String, Exact)> {
        shop.ledger().back(&id("p")).iter().map(|o| (o.holding.id.to_string(), o.amount)).collect()
    };
    shop.event("a", 4, LotEvent::Held { reason: "cloudy".into() });
    shop.from("p", 4, "Coco", &["b"]);
    assert_eq!(back(&shop), [("a".into(), whole(150))]);
    shop.did("p", 5, StepKey::Wax { pour: 1, line: 0 }, Some(100));
    assert_eq!(back(&shop), [("a".into(), whole(150)), ("b".into(), whole(100))]);
    assert!(shop.ledger().is_held(&id("p")), "what is in the first pot is of the lot on hold");
    assert_eq!(shop.state().held(), [(id("p"), id("a"))]);
}

/// Too much was weighed from one lot; what a restore adds is weighed from another.
#[test]
fn what_is_added_later_is_of_the_lot_named_then() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 5000, 1000);
    shop.lot("b", "Coco", 1, 5000, 1000);
    shop.pour("p", 2, 200, &["a"]);
    let next = |shop: &Shop| shop.state().batches.get(&id("p")).unwrap().run.now().unwrap();
    let soy = next(&shop);
    shop.did("p", 3, soy.key, Some(900));
    shop.act(
        3,
        Act::At { batch: id("p"), event: Event::Mended { step: soy.key, way: Way::Restore, at: at(3) } },
    );
    shop.from("p", 4, "Coco", &["b"]);
    let more = next(&shop).key;
    assert!(matches!(more, StepKey::TopUp { line: 0, .. }), "{more:?}");
    shop.did("p", 4, more, Some(190));
    let ledger = shop.ledger();
    let back: Vec<_> = ledger.back(&id("p")).iter().map(|o| (o.holding.id.clone(), o.amount)).collect();
    assert_eq!(back, [(id("a"), whole(200)), (id("b"), whole(190))]);
}

/// What the lot that was chosen lacks is of others, and it does not count among them again.
#[test]
fn a_chosen_lot_comes_first_and_the_others_hold_the_rest() {
    let mut shop = Shop::new();
    for (lot, grams) in [("a", 150), ("b", 5000)] {
        shop.lot(lot, "Coco", 0, grams, 100);
    }
    shop.begin("p", 1);
    let plan = &shop.state().batches.get(&id("p")).unwrap().run.plan;
    // It takes 194.9 g: 150 of the first, then 44.9 of the other.
    assert_eq!(shop.ledger().choose(plan, "Coco", &id("a")).lots, ["a", "b"].map(id));
}

/// Of two tablets one is an hour slow. What is said last, knowing what was said before, holds.
#[test]
fn a_hold_said_on_a_tablet_whose_clock_is_slow_holds() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 5000, 1000);
    shop.pour("p", 1, 200, &["a"]);
    shop.event("a", 2, LotEvent::Held { reason: "cloudy".into() });
    shop.event("a", 9, LotEvent::Released { reason: "it was the cold".into() });
    shop.event("a", 8, LotEvent::Held { reason: "cloudy again".into() });
    let ledger = shop.ledger();
    assert!(shop.state().on_hold(&id("a")) && ledger.is_held(&id("p")));
    assert_eq!(ledger.account("Coco").unwrap().usable_left(), Exact::ZERO);
    assert_eq!(shop.state().held(), [(id("p"), id("a"))]);
}

/// A lot of vessels that is put on hold blocks the filling, and the vessels filled before stay of it.
#[test]
fn a_hold_on_a_lot_of_vessels_blocks_the_filling() {
    let mut shop = Shop::new();
    for lot in ["good", "cracked"] {
        let pack = potside::stores::Pack::Pieces(36);
        let bought = potside::stores::Bought { packs: 1, pack };
        let body = super::shared::grams_of("Tumbler", lot, 0, 36, 4320);
        let body = potside::stores::Lot { bought, ..body };
        shop.act(0, Act::Lot { id: id(lot), over: None, body });
    }
    shop.begin("p", 1);
    shop.from("p", 1, "Tumbler", &["cracked"]);
    let next = |shop: &Shop| shop.state().batches.get(&id("p")).unwrap().run.now().unwrap().key;
    let held =
        |shop: &Shop| shop.state().held_at(shop.state().batches.get(&id("p")).unwrap(), next(shop)).len();
    while next(&shop) != (StepKey::Fill { pour: 0, vessel: 1 }) {
        let step = next(&shop);
        shop.did("p", 2, step, None);
    }
    assert_eq!(held(&shop), 0);
    shop.event("cracked", 3, LotEvent::Held { reason: "cracks".into() });
    assert_eq!(held(&shop), 1);
    let plan = shop.state().batches.get(&id("p")).unwrap().run.plan.clone();
    let chosen = shop.ledger().choose(&plan, "Tumbler", &id("good"));
    assert_eq!(chosen.lots, [id("good")]);
    shop.act(4, Act::TakenFrom { batch: id("p"), sources: vec![chosen] });
    assert_eq!(held(&shop), 0);
    while matches!(next(&shop), StepKey::Fill { .. }) {
        let step = next(&shop);
        shop.did("p", 5, step, None);
    }
    let ledger = shop.ledger();
    let back: Vec<_> = ledger.back(&id("p")).iter().map(|o| (o.holding.id.to_string(), o.amount)).collect();
    assert_eq!(back, [("cracked".into(), whole(1)), ("good".into(), whole(3))]);
}
