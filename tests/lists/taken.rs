//! Lists taken in, line by line.

use super::workshop;
use potside::book::{Act, Book, Id, Journal};
use potside::day::{Day, Zone};
use potside::lists::{Body, Found, List, TakeError, Taken, give, take, write};
use potside::quantity::{Locale, Voice};
use potside::shelf::{Customer, Move, Product, Reason};
use potside::stores::LotEvent;
use potside::vessel::FillRule;

/// What was given out of one book is taken in by an empty one, and is the same.
#[test]
fn vessels_and_ingredients_come_back() {
    let journal = workshop();
    let empty = potside::book::State::default();
    for locale in [Locale::Point, Locale::Comma] {
        let voice = Voice { locale, ..Voice::default() };
        let text = write(&give(List::Vessels, journal.state(), Zone::GREENWICH, voice), locale);
        let taken = take(List::Vessels, &text, &empty, voice).unwrap();
        let ours: Vec<_> = journal.state().vessels.values().filter_map(|k| k.body().cloned()).collect();
        let bodies: Vec<_> = taken.found.iter().map(|f| f.body.clone().unwrap()).collect();
        assert_eq!(bodies, ours.into_iter().map(Body::Vessel).collect::<Vec<_>>());
        assert!(taken.unknown.is_empty());
        assert!(taken.found.iter().all(|f| f.act(Id("x".into())).is_some()));
        let again = take(List::Vessels, &text, journal.state(), voice).unwrap();
        assert!(again.found.iter().all(|f| f.act(Id("x".into())).is_none()), "all are there already");
    }
    let text =
        write(&give(List::Ingredients, journal.state(), Zone::GREENWICH, Voice::default()), Locale::Point);
    let taken = take(List::Ingredients, &text, &empty, Voice::default()).unwrap();
    assert_eq!(taken.found.len(), journal.state().ingredients.len());
    assert!(taken.found.iter().all(|f| f.body.is_ok()), "{:?}", taken.found);
}

/// What is found in each line, or every sentence against it.
fn said(taken: &Taken) -> String {
    let line = |f: &Found| {
        let how = f.body.as_ref().map_or_else(|e| e.join(" "), |_| "good".into());
        format!("{} {}: {how}", f.line, f.name)
    };
    taken.found.iter().map(line).collect::<Vec<_>>().join("\n")
}

#[test]
fn each_line_says_what_is_wrong_with_it() {
    let text = "fill;Name;colour;Water temperature;water to the brim\n\
                180 g;Round jar;blue\n\
                90 %;Tall jar;;20 C;240 g\n\
                12 mm;Low tin\n\
                heavy;Odd jar\n\
                180 g;\n\
                200 g;ROUND JAR\n\
                5 g;Thimble;;;;;more\n";
    let taken = take(List::Vessels, text, &potside::book::State::default(), Voice::default()).unwrap();
    assert_eq!(taken.unknown, ["colour"]);
    let Ok(Body::Vessel(tall)) = &taken.found[1].body else { panic!("{:?}", taken.found[1]) };
    assert!(matches!(tall.fill, FillRule::Share(_)) && tall.water.is_some());
    insta::assert_snapshot!(said(&taken));
    let no_name = take(List::Ingredients, "a,b\n1,2", &potside::book::State::default(), Voice::default());
    insta::assert_snapshot!(no_name.unwrap_err());
    assert_eq!(
        take(List::Pours, "Name\nx", &potside::book::State::default(), Voice::default()),
        Err(TakeError::OnlyGiven)
    );
}

/// A book in which two candles are sold, “Fig” and “Plum, small”, and there is one customer, “North Shop”.
fn sells() -> Book {
    let mut book = Book::open(Vec::new(), "tablet");
    let product = |name: &str| Product {
        name: name.to_owned(),
        formula: Id("f".into()),
        vessel: Id("v".into()),
        wick: String::new(),
        parts: Vec::new(),
        spare: 0,
        cure_days: None,
    };
    for (id, name) in [("p1", "Fig"), ("p2", "Plum, small")] {
        book.act(Act::Product { id: Id(id.into()), over: None, body: product(name) }, 1, 1).unwrap();
    }
    let body = Customer { name: "North Shop".into(), ..Customer::default() };
    book.act(Act::Customer { id: Id("c".into()), over: None, body }, 1, 2).unwrap();
    book
}

/// Whoever goes by the list of the shelf does not sell what is on hold; and what is gone is not on it.
#[test]
fn what_is_on_hold_is_told_and_what_is_gone_is_not_on_the_shelf() {
    let mut journal = workshop();
    let does = |journal: &mut Journal, act: Act| {
        let entry = journal.entry(act, 1_764_000_000_000, 77 + u32::try_from(journal.len()).unwrap());
        journal.take(entry);
    };
    let named = |list: List, journal: &Journal| -> Vec<Vec<String>> {
        give(list, journal.state(), Zone::GREENWICH, Voice::default()).split_off(1)
    };
    let lots = &journal.state().lots;
    let lot = lots.values().find(|k| k.body().is_some_and(|l| l.number == "LO-118")).unwrap().id.clone();
    does(&mut journal, Act::AtLot { lot, event: LotEvent::Held { reason: "cloudy".into() } });
    let held = |rows: &[Vec<String>]| -> Vec<String> {
        rows.iter().filter(|row| row.last().unwrap() == "yes").map(|row| row[0].clone() + &row[1]).collect()
    };
    assert_eq!(held(&named(List::Shelf, &journal)), ["251115-BXXJ-RLate Orchard"]);
    assert_eq!(held(&named(List::Lots, &journal)), ["Late orchard oilLO-118"]);
    let salt = journal.state().batches.values().find(|b| b.filled_vessels() == 12).unwrap().id.clone();
    for (id, number, left) in [("m", 11, 2), ("n", 1, 1)] {
        let body =
            Move { batch: salt.clone(), number, reason: Reason::Gift, on: Day(20_400), note: String::new() };
        does(&mut journal, Act::Moved { id: Id(id.into()), over: None, body });
        assert_eq!(named(List::Shelf, &journal).len(), left);
    }
}

/// What was sent already, or was closed, is not ordered anew; and rows that cannot be of one order are not made one.
#[test]
fn what_is_done_of_an_order_is_not_taken_in_again() {
    let book = sells();
    let rows = |columns: &str, rows: &[&str]| {
        let text = [&[columns], rows].concat().join("\n");
        take(List::Orders, &text, book.state(), Voice::default()).unwrap()
    };
    let taken =
        rows("Candle,Number,Sent,Closed", &["Fig,4,0,", "Fig,4,4,", "Fig,4,1,", "Fig,4,x,", "Fig,4,,Yes"]);
    assert_eq!(
        said(&taken),
        "2 Fig: good\n3 Fig: All of it was sent already, so it is not taken in.\n4 Fig: 1 of these were sent already. Type \
         in “Number” what is still to be sent, and leave “Sent” empty.\n5 Fig: Sent: “x” is not a number. Type it like \
         8.\n6 Fig: It was closed: nothing more of it is to be sent, so it is not taken in."
    );
    // What is empty in a further row is as in the first; what is another is another order.
    let columns = "Candle,Number,Order,Customer,Wanted on,Note";
    let one = rows(
        columns,
        &["Fig,4,A,,,blue box", "\"Plum, small\",1,A,North Shop,2026-12-24,", "Fig,2,A,,,no card"],
    );
    let orders: Vec<_> = one.found.iter().map(|f| f.body.clone().unwrap()).collect();
    let [Body::Order(order)] = orders.as_slice() else { panic!("{orders:?}") };
    assert_eq!(order.lines.iter().map(|l| l.number).collect::<Vec<_>>(), [6, 1]);
    assert_eq!((order.note.as_str(), order.customer.clone()), ("blue box; no card", Some(Id("c".into()))));
    assert_eq!(order.wanted, Day::read("2026-12-24"));
    let other = rows(columns, &["Fig,4,A,,2026-12-24,", "Fig,4,A,,2026-12-25,"]);
    assert_eq!(
        said(&other),
        "2 Fig: good\n3 Fig: The order “A” stands further up for another customer or day. Give this one another name in \
         “Order”."
    );
}

/// Orders come in a row a candle; rows of one order are one. What cannot be is said by its line.
#[test]
fn orders_come_back() {
    let mut book = sells();
    let text = "Candle,Number,Order,Customer,Wanted on,In parts\r\n\
                fig,4,A,north shop,2026-12-24,yes\r\n\
                \"Plum, small\",6,A,north shop,2026-12-24,yes\r\n\
                Fig,1,,,,\r\n\
                Pear,2,B,,,\r\n\
                Fig,none,C,South Shop,soon,\r\n";
    let taken = take(List::Orders, text, book.state(), Voice::default()).unwrap();
    insta::assert_snapshot!(said(&taken));
    for (n, found) in (10..).zip(&taken.found) {
        if let Some(act) = found.act(Id(format!("o{n}"))) {
            book.act(act, 2, n).unwrap();
        }
    }
    let orders: Vec<Vec<u32>> = book
        .state()
        .orders
        .values()
        .map(|k| k.body().unwrap().lines.iter().map(|l| l.number).collect())
        .collect();
    assert_eq!(orders, [vec![4, 6], vec![1]]);
    assert_eq!(taken.doubled(), None);
    let twice = take(List::Orders, text, book.state(), Voice::default()).unwrap();
    assert_eq!(
        twice.doubled().unwrap(),
        "2 of these look as if they were here already: line 2, fig, Plum, small; line 4, Fig. What is taken in stands \
         beside what is here."
    );
    assert!(
        twice.found.iter().filter(|f| f.known).all(|f| f.act(Id("x".into())).is_some()),
        "nothing is blocked"
    );
    // Another number, another day, another customer, another note: another order.
    for (row, here) in [
        ("Fig,1,,,", true),
        ("Fig,2,,,", false),
        ("Fig,1,,2026-12-24,", false),
        ("Fig,1,North Shop,,", false),
        ("Fig,1,,,soon", false),
        ("Plum\\, small,1,,,", false),
    ] {
        let row = row.replace("Plum\\, small", "\"Plum, small\"");
        let text = format!("Candle,Number,Customer,Wanted on,Note\n{row}\n");
        let taken = take(List::Orders, &text, book.state(), Voice::default()).unwrap();
        assert_eq!(taken.doubled().is_some(), here, "{row}");
    }
    let many = take(
        List::Orders,
        &"Candle,Number\n".chars().chain("Fig,1\n".repeat(7).chars()).collect::<String>(),
        book.state(),
        Voice::default(),
    );
    let said = many.unwrap().doubled().unwrap();
    assert!(said.starts_with("7 of these look") && said.contains("line 6, Fig; and 2 more."), "{said}");
    // Given out and taken in again, they are the same.
    let again = write(&give(List::Orders, book.state(), Zone::GREENWICH, Voice::default()), Locale::Point);
    let again = take(List::Orders, &again, book.state(), Voice::default()).unwrap();
    assert!(again.found.iter().all(|f| f.known));
    let bodies: Vec<_> = again.found.into_iter().map(|f| f.body.unwrap()).collect();
    let kept: Vec<_> = book.state().orders.values().map(|k| Body::Order(k.body().unwrap().clone())).collect();
    assert_eq!(bodies, kept);
}
