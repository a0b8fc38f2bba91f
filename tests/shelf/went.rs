//! What went twice, and what cannot have gone or come back.

use super::shared::{FIRST, Shop, id, shipped};
use potside::book::{Act, read_copy};
use potside::day::Day;
use potside::shelf::{Move, Reason};

/// One tablet sends an order, and the other, which does not know of it, sends it too: both stand there when their books are
/// one, and that is told where the copy is taken in and on the order, until one of them is taken back.
#[test]
fn an_order_that_two_devices_have_sent_is_told() {
    let mut tablet = Shop::new();
    tablet.product("Fig", 0, None);
    tablet.pour("b", 0, 12);
    tablet.finish("b", 1);
    tablet.order("o", "Fig", 4, None, false);
    let mut phone = tablet.on("phone");
    let first = tablet.moved(20, "b", 4, shipped("o", "Fig"));
    assert_eq!(tablet.state().say_beyond(&id("o")), None);
    phone.moved(20, "b", 4, shipped("o", "Fig"));
    let brings = |from: &Shop, to: &Shop| {
        let text: String = from.book.journal().entries().iter().map(|e| e.to_line() + "\n").collect();
        read_copy(&text, to.book.journal()).unwrap()
    };
    let copy = brings(&phone, &tablet);
    assert_eq!(copy.resent, ["an order: 8 × Fig sent, 4 ordered"]);
    assert!(copy.say_resent().is_some_and(|said| said.contains("an order: 8 × Fig sent, 4 ordered.")));
    tablet.book.take_in(copy.fresh).unwrap();
    let said = tablet.state().say_beyond(&id("o")).unwrap();
    assert!(said.starts_with("more stands as sent than is ordered: 8 × Fig sent, 4 ordered. "), "{said}");
    assert_eq!(tablet.state().left_of(tablet.state().batches.get(&id("b")).unwrap()), 4);
    // What is known to be so is not told of a copy that brings something else.
    phone.moved(21, "b", 1, Reason::Gift);
    let again = brings(&phone, &tablet);
    assert_eq!((again.fresh.len(), again.resent), (1, vec![]));
    // Taken back, all is well; and each device sending a part of it is well too.
    let moved = tablet.state().moves.values().find(|m| m.versions[0].entry == first).unwrap().id.clone();
    tablet.act(22, Act::Retire { id: moved, retired: true });
    assert_eq!(tablet.state().say_beyond(&id("o")), None);
    tablet.order("p", "Fig", 4, None, true);
    for (shop, number) in [(&mut tablet, 1), (&mut phone, 3)] {
        shop.moved(23, "b", number, shipped("p", "Fig"));
    }
    let copy = brings(&phone, &tablet);
    assert_eq!(copy.resent, Vec::<String>::new());
}

/// No more goes than there is, and no more comes back than went out; a count may say anything.
#[test]
fn what_went_and_came_back_can_be() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, None);
    shop.pour("b", 0, 4);
    shop.order("o", "Fig", 2, None, false);
    let refused = |shop: &Shop, number: u32, reason: Reason| {
        let body = Move { batch: id("b"), number, reason, on: Day(FIRST), note: String::new() };
        shop.state().refuses_move(&body).unwrap_or_default()
    };
    assert_eq!(refused(&shop, 4, Reason::Gift), "");
    assert_eq!(refused(&shop, 5, Reason::Broken), "Left: 4 candles. Count them, if that is not so.");
    assert!(refused(&shop, 1, Reason::Returned).starts_with("0 candles went out of this batch"));
    shop.moved(20, "b", 2, shipped("o", "Fig"));
    let broken = shop.moved(20, "b", 1, Reason::Broken);
    assert_eq!(refused(&shop, 2, Reason::Returned), "");
    assert!(
        refused(&shop, 3, Reason::Returned).starts_with("2 candles went out of this batch and did not come")
    );
    shop.moved(21, "b", 1, Reason::Returned);
    assert!(refused(&shop, 2, Reason::Returned).starts_with("1 candle went out"));
    assert_eq!([refused(&shop, 9, Reason::Found), refused(&shop, 9, Reason::Missing)], ["", ""]);
    assert_eq!(refused(&shop, 3, Reason::Sample), "Left: 2 candles. Count them, if that is not so.");
    shop.act(22, Act::Undo { entry: broken });
    assert_eq!(refused(&shop, 3, Reason::Sample), "");
}
