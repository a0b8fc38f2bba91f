//! Nothing is lost, nothing is there twice, and what is short is said.

use super::shared::{FIRST, Shop, id, shipped};
use potside::book::{Act, Refusal};
use potside::day::{Day, Zone};
use potside::shelf::{
    Customer, FINISHES, Finish, Fit, Order, OrderLine, Reason, When, as_batch_number, batch_number,
    check_sign, is_batch_number,
};

/// An order for 4 with 3 on the shelf is short 1: `common practice, no source`.
#[test]
fn an_order_for_four_with_three_there_is_short_one() {
    let mut shop = Shop::new();
    shop.product("Fig", 2, None);
    shop.pour("b", 0, 3);
    shop.order("o", "Fig", 4, Some(30), false);
    let shelf = shop.state().shelf(Day(FIRST + 20), Zone::GREENWICH);
    let line = &shelf.orders[0].lines[0];
    assert_eq!(
        (line.short, line.ready, line.may_go(false, Fit::Unfinished), line.may_go(true, Fit::Unfinished)),
        (1, 3, 0, 3)
    );
    // Poured on the 20th and cured 14 days, as its formula says where it was poured.
    assert_eq!(shelf.orders[0].when(), When::IfPoured(Day(FIRST + 21)), "the formula is not in this book");
    let stock = &shelf.stocks[0];
    assert_eq!((stock.left(), stock.free(), stock.ordered, stock.short), (3, 0, 4, 1));
    assert_eq!(stock.spare_missing(), 2);
}

#[test]
fn what_is_ready_first_goes_to_what_is_wanted_first() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, Some(10));
    shop.pour("late", 6, 4);
    shop.pour("early", 0, 4);
    shop.order("second", "Fig", 4, Some(20), false);
    shop.order("first", "Fig", 2, Some(12), false);
    shop.order("whenever", "Fig", 3, None, false);
    let shelf = shop.state().shelf(Day(FIRST + 11), Zone::GREENWICH);
    let said: Vec<_> = shelf
        .orders
        .iter()
        .map(|o| {
            let kept: Vec<_> = o.lines[0].kept.iter().map(|s| (s.batch.id.0.as_str(), s.number)).collect();
            (o.kept.id.0.as_str(), kept, o.lines[0].short, o.when(), o.is_late())
        })
        .collect();
    let on = |d: u32| When::On(Day(FIRST + d));
    assert_eq!(
        said,
        [
            ("first", vec![("early", 2)], 0, on(11), false),
            ("second", vec![("early", 2), ("late", 2)], 0, on(17), false),
            ("whenever", vec![("late", 2)], 1, When::IfPoured(Day(FIRST + 22)), false),
        ]
    );
    let shelf = shop.state().shelf(Day(FIRST + 17), Zone::GREENWICH);
    assert_eq!(shelf.orders[0].lines[0].may_go(false, Fit::Unfinished), 2);
    assert!(shelf.orders[0].is_late(), "wanted on the 12th and still here on the 17th");
}

#[test]
fn what_is_sent_is_gone_and_comes_back() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, Some(1));
    shop.pour("b", 0, 6);
    shop.order("o", "Fig", 4, None, true);
    let part = shop.moved(3, "b", 3, shipped("o", "Fig"));
    shop.moved(3, "b", 1, Reason::Broken);
    let left = |shop: &Shop| {
        let shelf = shop.state().shelf(Day(FIRST + 5), Zone::GREENWICH);
        (shelf.stocks[0].left(), shelf.stocks[0].free(), shelf.orders.len())
    };
    assert_eq!(left(&shop), (2, 1, 1));
    shop.moved(4, "b", 1, shipped("o", "Fig"));
    assert_eq!(left(&shop), (1, 1, 0), "the order is done");
    shop.moved(5, "b", 2, Reason::Returned);
    assert_eq!(left(&shop), (3, 3, 0));
    shop.act(6, Act::Undo { entry: part });
    assert_eq!(left(&shop), (6, 3, 1), "not sent after all");
    shop.moved(7, "b", 9, Reason::Missing);
    let shelf = shop.state().shelf(Day(FIRST + 8), Zone::GREENWICH);
    assert_eq!((shelf.stocks[0].left(), shelf.stocks[0].stands[0].left), (0, -3), "said, not hidden");
}

/// Of lines asked about together, each has what went for it and nothing of what went for others.
#[test]
fn what_was_sent_is_told_for_each_line() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, Some(1));
    shop.product("Rose", 0, Some(1));
    shop.pour("b", 0, 20);
    for (day, number, order, product) in
        [(1, 2, "o", "Fig"), (2, 3, "p", "Fig"), (3, 4, "o", "Rose"), (4, 5, "o", "Fig")]
    {
        shop.moved(day, "b", number, shipped(order, product));
    }
    let undone = shop.moved(5, "b", 1, shipped("p", "Fig"));
    shop.act(6, Act::Undo { entry: undone });
    let (o, p, fig, rose) = (id("o"), id("p"), id("Fig"), id("Rose"));
    let lines = [(&o, &rose), (&p, &fig), (&o, &fig), (&o, &fig), (&p, &rose)];
    let sent = shop.state().sent(lines.into_iter());
    assert_eq!(lines.map(|(order, product)| sent.of(order, product)), [4, 3, 7, 7, 0]);
    assert_eq!(shop.state().sent([].into_iter()).of(&o, &fig), 0, "it was not asked about");
}

/// An order that is sent is found again, the one sent last first; one that was closed too.
#[test]
fn what_is_sent_or_closed_is_found_again() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, Some(1));
    shop.pour("b", 0, 9);
    for name in ["first", "second", "shut", "open"] {
        shop.order(name, "Fig", 2, None, true);
    }
    shop.moved(5, "b", 2, shipped("first", "Fig"));
    shop.moved(3, "b", 1, shipped("second", "Fig"));
    shop.moved(7, "b", 1, shipped("second", "Fig"));
    shop.moved(8, "b", 1, shipped("open", "Fig"));
    let kept = shop.state().orders.get(&id("shut")).unwrap().latest().cloned().unwrap();
    let body = Order { closed: true, ..kept.body };
    shop.act(9, Act::Order { id: id("shut"), over: Some(kept.entry), body });
    let shelf = shop.state().shelf(Day(FIRST + 10), Zone::GREENWICH);
    let past: Vec<_> = shop
        .state()
        .past_orders(&shelf.orders)
        .iter()
        .map(|p| (p.kept.id.to_string(), p.last.map(|d| d.0 - FIRST)))
        .collect();
    let wanted = [("second", Some(7)), ("first", Some(5)), ("shut", None)];
    assert_eq!(past, wanted.map(|(name, day)| (name.to_owned(), day)));
}

#[test]
fn finishing_waits_for_the_wax() {
    let mut shop = Shop::new();
    shop.pour("b", 0, 2);
    let tick = |step, done| Act::Ticked { batch: id("b"), step, done };
    let refused = shop.act(0, tick(Finish::CautionLabel, true));
    assert_eq!(shop.state().ignored.get(&refused).unwrap().why, Refusal::NotSolid);
    for (step, _) in FINISHES {
        shop.act(1, tick(step, true));
    }
    assert!(shop.state().batches.get(&id("b")).unwrap().ticked.is_whole());
    let liquid = shop.act(2, tick(Finish::Solid, false));
    assert!(shop.state().ignored.contains_key(&liquid), "it does not melt again");
    shop.act(2, tick(Finish::Closed, false));
    assert!(!shop.state().batches.get(&id("b")).unwrap().ticked.is_whole());
}

#[test]
fn a_person_can_be_forgotten_and_the_trace_stays() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, None);
    let body = Customer { name: "R. Example".into(), contact: "1 Long Lane".into(), ..Customer::default() };
    shop.act(0, Act::Customer { id: id("c"), over: None, body });
    let order = Order {
        customer: Some(id("c")),
        lines: vec![OrderLine { product: id("Fig"), number: 1 }],
        wanted: None,
        in_parts: false,
        note: String::new(),
        closed: false,
    };
    shop.act(0, Act::Order { id: id("o"), over: None, body: order });
    shop.act(1, Act::Forgotten { customer: id("c") });
    let state = shop.state();
    assert!(!format!("{state:?}").contains("Example") && !format!("{state:?}").contains("Long Lane"));
    assert_eq!(state.orders.get(&id("o")).unwrap().body().unwrap().customer, Some(id("c")));
    assert!(state.customers_shown().is_empty());
}

/// ISO/IEC 7064 MOD 37,36 as it is used: the GRid standard's example A1-2425G-ABC1234002-M, and the ISAN standard's
/// 0000-0000-D07A-0090-Q-0000-0000-X; both stand in the tests of the library python-stdnum.
#[test]
fn the_check_sign_is_the_standards() {
    assert_eq!(check_sign("A12425GABC1234002"), Some('M'));
    assert_eq!(check_sign("00000000D07A0090"), Some('Q'));
    assert_eq!(check_sign("00000000D07A009000000000"), Some('X'));
    assert_eq!(check_sign("a"), None);
}

#[test]
fn a_batch_number_is_read_back_and_one_slip_is_seen() {
    let mut shop = Shop::new();
    shop.pour("b", 0, 1);
    shop.pour("c", 0, 1);
    let number = |batch: &str| batch_number(shop.state().batches.get(&id(batch)).unwrap());
    let first = number("b");
    assert!(first.starts_with("250101-") && first.len() == 13, "{first}");
    assert_ne!(first, number("c"));
    assert!(is_batch_number(&first) && is_batch_number(&first.to_lowercase().replace('-', " ")));
    // As it is typed by whoever reads it off a label, to be looked for; a slip is told from any other word.
    let loose = first.to_lowercase().replace('-', "");
    assert_eq!(as_batch_number(&loose), Some((first.clone(), true)));
    assert_eq!(as_batch_number(&first.replace("250101", "250102")).map(|found| found.1), Some(false));
    for word in ["", "250101", "Quiet orchard", "orchardjar1", "25010é-AAAA-A", "250101-7KQM-44"] {
        assert_eq!(as_batch_number(word), None, "{word}");
    }
    assert_eq!(shop.state().find(&shop.state().finder(), &as_batch_number(&loose).unwrap().0).len(), 1);
    let signs: Vec<char> = first.chars().collect();
    for at in 0..signs.len() {
        for other in "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ".chars() {
            let mut slip = signs.clone();
            slip[at] = other;
            let slip: String = slip.into_iter().collect();
            assert_eq!(is_batch_number(&slip), slip == first, "{slip}");
        }
    }
}
