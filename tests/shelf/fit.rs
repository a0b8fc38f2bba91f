//! What is fit to be sent: not what a lot on hold is in, not what is not finished; and how long it takes from a pour.

use super::shared::{FIRST, Shop, id, shipped};
use potside::book::{Act, Id, Settings};
use potside::day::{Day, Zone};
use potside::pot::StepKey;
use potside::quantity::{Exact, Voice};
use potside::shelf::{FINISHES, Finish, Fit, Lead, Order, OrderDraft, OrderLine, When};
use potside::stores::Ledger;

fn settings(solid_days: Option<u32>, finish_days: Option<u32>) -> Act {
    Act::Settings(Settings { solid_days, finish_days, ..Settings::default() })
}

/// Of two batches the first has a lot in it that is put on hold.
#[test]
fn what_a_lot_on_hold_is_in_is_kept_for_nobody() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, Some(1));
    shop.grams("L-1", "Soy", 9_000);
    shop.pour("bad", 0, 4);
    shop.from("bad", "Soy", "L-1");
    shop.pour("good", 1, 2);
    for batch in ["bad", "good"] {
        shop.finish(batch, 2);
    }
    shop.order("o", "Fig", 4, Some(30), false);
    let today = Day(FIRST + 5);
    let number = |shop: &Shop| -> i64 {
        let shelf = shop.state().shelf(today, Zone::GREENWICH);
        shelf.orders[0].shipment(today, Fit::Unfinished).iter().map(|m| i64::from(m.number)).sum()
    };
    assert_eq!(number(&shop), 4);
    let held = shop.hold("L-1", 4, true);
    {
        let shelf = shop.state().shelf(today, Zone::GREENWICH);
        let line = &shelf.orders[0].lines[0];
        let kept: Vec<_> = line.kept.iter().map(|s| (s.batch.id.0.as_str(), s.number)).collect();
        assert_eq!((kept, line.short), (vec![("good", 2)], 2));
        let why: Vec<_> = line.held.iter().map(|(b, lots)| (b.id.0.as_str(), lots.clone())).collect();
        assert_eq!(why, [("bad", vec![id("L-1")])]);
        let stock = &shelf.stocks[0];
        assert_eq!((stock.left(), stock.held(), stock.free()), (6, 4, 0));
        assert_eq!(number(&shop), 0, "an order goes whole");
    }
    // What was sent before is told, not undone.
    shop.moved(4, "bad", 1, shipped("o", "Fig"));
    let shelf = shop.state().shelf(today, Zone::GREENWICH);
    assert_eq!((shelf.orders[0].lines[0].sent, shelf.stocks[0].held()), (1, 3));
    shop.hold("L-1", 5, false);
    assert_eq!(number(&shop), 3);
    shop.hold("L-1", 6, true);
    assert_eq!(number(&shop), 0);
    shop.act(6, Act::Undo { entry: held });
    assert_eq!(number(&shop), 0, "the second hold stands");
}

#[test]
fn a_step_waits_while_its_lot_is_on_hold() {
    let mut shop = Shop::new();
    shop.grams("L-1", "Soy", 9_000);
    shop.grams("L-2", "Soy", 9_000);
    shop.pour("b", 0, 4);
    shop.from("b", "Soy", "L-1");
    let held = |shop: &Shop, step| {
        let held: Vec<Id> = shop
            .state()
            .held_at(shop.state().batches.get(&id("b")).unwrap(), step)
            .into_iter()
            .cloned()
            .collect();
        held
    };
    // Soy is the second wax of the workshop's formula.
    let (coco, soy) = (StepKey::Wax { pour: 0, line: 0 }, StepKey::Wax { pour: 0, line: 1 });
    assert!(held(&shop, soy).is_empty());
    shop.hold("L-1", 0, true);
    assert_eq!(held(&shop, soy), [id("L-1")]);
    assert!(held(&shop, coco).is_empty() && held(&shop, StepKey::Stir { pour: 0, line: 1 }).is_empty());
    assert!(held(&shop, StepKey::Melt { pour: 0 }).is_empty());
    shop.from("b", "Soy", "L-2");
    assert!(held(&shop, soy).is_empty());
}

#[test]
fn what_is_not_finished_goes_only_by_an_own_choice() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, Some(0));
    shop.pour("whole", 0, 2);
    shop.finish("whole", 1);
    shop.pour("open", 0, 2);
    let today = Day(FIRST + 5);
    let sent = |shop: &Shop, fit| {
        let shelf = shop.state().shelf(today, Zone::GREENWICH);
        let moves = shelf.orders[0].shipment(today, fit);
        moves.iter().map(|m| (m.batch.0.clone(), m.number)).collect::<Vec<_>>()
    };
    let of = |batch: &str, number| (batch.to_owned(), number);
    shop.order("o", "Fig", 3, None, true);
    assert_eq!(sent(&shop, Fit::Finished).iter().map(|(b, _)| b.as_str()).collect::<Vec<_>>(), ["whole"]);
    assert_eq!(sent(&shop, Fit::Unfinished).iter().map(|(_, n)| n).sum::<u32>(), 3);
    {
        let shelf = shop.state().shelf(today, Zone::GREENWICH);
        let open = shelf.orders[0].unfinished();
        assert_eq!(open.iter().map(|b| b.id.0.as_str()).collect::<Vec<_>>(), ["open"]);
        assert_eq!(open[0].ticked.missing().len(), FINISHES.len());
    }
    shop.order("o", "Fig", 3, None, false);
    assert_eq!(sent(&shop, Fit::Finished), [], "it goes whole, and one of three is not finished");
    shop.finish("open", 5);
    assert_eq!(sent(&shop, Fit::Finished).iter().map(|(_, n)| n).sum::<u32>(), 3);
    shop.act(5, Act::Ticked { batch: id("open"), step: Finish::CautionLabel, done: false });
    assert_eq!(sent(&shop, Fit::Finished), []);
    let missing = shop.state().batches.get(&id("open")).unwrap().ticked.missing();
    assert_eq!(missing, ["Caution label on"]);
    shop.order("o", "Fig", 2, None, false);
    assert!([vec![of("whole", 2)], Vec::new()].contains(&sent(&shop, Fit::Finished)));
}

/// Pour + solid + cure + finishing, by hand.
#[test]
fn the_days_until_it_ships_add_up() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, Some(14));
    shop.order("o", "Fig", 1, None, false);
    let today = Day(FIRST + 20);
    let when = |shop: &Shop| shop.state().shelf(today, Zone::GREENWICH).orders[0].when();
    assert_eq!(when(&shop), When::IfPoured(Day(FIRST + 35)), "solid on the next day where nothing is said");
    shop.act(0, settings(Some(2), Some(1)));
    assert_eq!(when(&shop), When::IfPoured(Day(FIRST + 37)));
    let shelf = shop.state().shelf(today, Zone::GREENWICH);
    let lead = shelf.orders[0].lines[0].lead;
    assert_eq!(lead, Lead { solid: 2, cure: 14, finish: 1 });
    assert_eq!(lead.say(), "Poured today, solid after 2 days, 14 days of cure, 1 day to finish.");
    assert_eq!(Lead { solid: 1, cure: 0, finish: 0 }.say(), "Poured today, solid tomorrow.");
    // Poured and cured, it still has to be finished; then it can go.
    shop.pour("b", 0, 1);
    assert_eq!(when(&shop), When::On(Day(FIRST + 21)));
    shop.finish("b", 20);
    assert_eq!(when(&shop), When::On(today));
}

/// A batch page and the list given out say the day by which the candle is sold as ready, not that of its formula (14 days).
#[test]
fn a_batch_is_ready_when_what_it_is_sold_as_is() {
    let mut shop = Shop::new();
    shop.pour("b", 0, 4);
    let ready =
        |shop: &Shop| shop.state().sells_on(shop.state().batches.get(&id("b")).unwrap(), Zone::GREENWICH);
    assert_eq!(ready(&shop), Some(Day(FIRST + 15)), "no candle to sell is named");
    shop.product("Fig", 0, Some(21));
    assert_eq!(ready(&shop), Some(Day(FIRST + 22)));
    let stands = shop.state().shelf(Day(FIRST), Zone::GREENWICH).stocks[0].stands[0].ready;
    assert_eq!(ready(&shop), Some(stands), "as on the Shelf");
    let rows =
        potside::lists::give(potside::lists::List::Shelf, shop.state(), Zone::GREENWICH, Voice::default());
    assert!(rows[1].contains(&stands.to_string()), "{rows:?}");
}

/// Changing an order, to be sent on another day for example, loses nothing that stands in it: no candle that is sold no
/// more, and none of two lines of one candle, as a list that was taken in may have them.
#[test]
fn an_order_that_is_changed_keeps_what_is_sold_no_more() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, None);
    shop.product("Old", 0, None);
    let line = |product: &str, number| OrderLine { product: id(product), number };
    let body = Order {
        customer: None,
        lines: vec![line("Fig", 2), line("Old", 3), line("Fig", 1)],
        wanted: None,
        in_parts: false,
        note: String::new(),
        closed: false,
    };
    shop.act(0, Act::Order { id: id("o"), over: None, body: body.clone() });
    shop.act(1, Act::Retire { id: id("Old"), retired: true });
    let draft = OrderDraft::of(&body);
    let rows = draft.rows(shop.state());
    let told: Vec<_> = rows.iter().map(|(id, _, number)| (id.as_str(), number.as_str())).collect();
    assert_eq!(told, [("Fig", "3"), ("Old", "3")]);
    let lines = rows.into_iter().map(|(id, _, number)| (id, number)).collect();
    let again = OrderDraft { lines, ..draft }.read(shop.state(), Default::default()).unwrap();
    assert_eq!(again.lines, [line("Fig", 3), line("Old", 3)]);
    // A new order is not of it.
    assert_eq!(OrderDraft::default().rows(shop.state()).len(), 1);
}

/// Four candles with a lid and a box each: ten lids and three boxes are there.
#[test]
fn what_finishes_a_candle_is_counted_out_of_the_stores() {
    let mut shop = Shop::new();
    shop.pieces("lids", "Lid", 10);
    shop.pieces("boxes", "Box", 3);
    shop.grams("ribbon", "Ribbon", 500);
    shop.pieces("tabs", "Wick tab", 50);
    let parts = ["lid", "Box", "Ribbon", "Wick tab", "unknown"];
    shop.product_of("Fig", &parts);
    shop.pour("b", 0, 4);
    let left = |shop: &Shop, lot: &str| {
        let ledger = Ledger::of(shop.state(), Zone::GREENWICH);
        let (_, holding) = ledger.lot(&id(lot)).unwrap();
        let whole = holding.in_candles + holding.written_off + holding.unexplained + holding.left;
        assert_eq!(whole, holding.lot.amount, "every piece is somewhere");
        (holding.left, holding.in_candles)
    };
    let of = |left, gone| (Exact::whole(left), Exact::whole(gone));
    let ledger = Ledger::of(shop.state(), Zone::GREENWICH);
    let batch = shop.state().batches.get(&id("b")).unwrap();
    let (sources, told) = ledger.finishing(shop.state(), batch, Day(FIRST), Voice::default());
    // Not what is weighed, not what the pour has taken already, not what the stores do not know.
    assert_eq!(sources.iter().map(|s| s.part.as_str()).collect::<Vec<_>>(), ["lid", "Box"]);
    let told: Vec<&str> = told.iter().map(|n| n.text.as_str()).collect();
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].starts_with("“Box”: this takes 4 pieces, and 3 pieces can be used"), "{told:?}");
    shop.act(1, Act::TakenFrom { batch: id("b"), sources });
    assert_eq!(left(&shop, "lids"), of(10, 0), "before the last step");
    shop.finish("b", 2);
    assert_eq!((left(&shop, "lids"), left(&shop, "boxes")), (of(6, 4), of(0, 4)));
    // Counted and traced like all that is in a candle.
    shop.hold("lids", 3, true);
    assert_eq!(shop.state().held(), [(id("b"), id("lids"))]);
    shop.act(4, Act::Ticked { batch: id("b"), step: Finish::Closed, done: false });
    assert_eq!(left(&shop, "lids"), of(10, 0));
    assert!(shop.state().held().is_empty());
}

/// Going through some batches only tells the same as going through all of them.
#[test]
fn what_is_held_is_what_the_whole_ledger_says() {
    let mut shop = Shop::new();
    for (lot, grams) in [("a", 600), ("b", 9_000), ("c", 9_000)] {
        shop.grams(lot, "Soy", grams);
    }
    shop.grams("x", "Coco", 9_000);
    // 504 g of Soy each: the second takes what is left of “a”, then “b”; the fourth names nothing held.
    for (n, lots) in [&["a"][..], &["a", "b"], &["b", "a"], &["c"], &["x", "a"]].into_iter().enumerate() {
        let batch = format!("p{n}");
        shop.pour(&batch, 1, 4);
        let lots = lots.iter().map(|l| id(l)).collect();
        let sources = vec![potside::stores::Source { part: "Soy".to_owned(), lots }];
        shop.act(1, Act::TakenFrom { batch: id(&batch), sources });
    }
    for (lot, held) in [("b", true), ("a", true), ("x", true), ("b", false), ("a", false), ("c", true)] {
        shop.hold(lot, 2, held);
        let whole = Ledger::of(shop.state(), Zone::GREENWICH);
        let whole: Vec<_> = whole.held().into_iter().map(|(b, l)| (b.clone(), l.clone())).collect();
        assert_eq!(shop.state().held(), whole, "{lot} {held}");
        assert!(!whole.is_empty(), "{lot} {held}");
    }
}
