//! Lists as text for a spreadsheet: held against another reader and writer of CSV, given out whole, taken in line by line.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used, clippy::panic)]

use potside::bench::burn::{BurnEvent, Grade, Heavy, Look, Trial, Verdict, WickSeries, missed};
use potside::book::{Act, Book, Id, Journal, demo};
use potside::day::{Day, Zone};
use potside::desk::hazard::SafetySheet;
use potside::lists::{
    Body, CsvError, Found, LARGEST, LISTS, List, MOST_CELLS, MOST_ROWS, TakeError, Taken, give, read, take,
    write,
};
use potside::quantity::{Amount, Exact, LengthUnit, Locale, MassUnit, Money, Voice};
use potside::shelf::{Customer, Move, Product, Reason};
use potside::stores::{Bought, Lot, LotEvent, Pack};
use potside::vessel::FillRule;
use proptest::prelude::*;

fn workshop() -> Journal {
    let mut n = 0;
    let lines = demo("tablet", 1_764_000_000_000, Zone::GREENWICH, || {
        n += 1;
        n
    });
    Journal::open(lines.into_iter().map(|(_, line)| line).collect(), "tablet")
}

fn rows(text: &str) -> Vec<Vec<String>> {
    read(text).unwrap().into_iter().map(|(_, row)| row).collect()
}

/// What the `csv` crate makes of it, without rows of empty cells.
fn theirs(text: &str) -> Vec<Vec<String>> {
    let reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).from_reader(text.as_bytes());
    let rows = reader.into_records().map(|r| r.unwrap().iter().map(str::to_owned).collect::<Vec<_>>());
    rows.filter(|row| row.iter().any(|cell| !cell.trim().is_empty())).collect()
}

#[track_caller]
fn agrees(text: &str) {
    assert_eq!(rows(text), theirs(text), "{text:?}");
}

/// RFC 4180, section 2: its examples and rules.
#[test]
fn the_examples_of_the_standard() {
    for text in [
        "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
        "aaa,bbb,ccc\r\nzzz,yyy,xxx",
        "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
        "\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx",
        "\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx",
        "\"aaa\",\"b\"\"bb\",\"ccc\"",
    ] {
        agrees(text);
    }
    assert_eq!(rows("\"aaa\",\"b\"\"bb\",\"ccc\""), [["aaa", "b\"bb", "ccc"]]);
}

#[test]
fn what_spreadsheets_write_is_read() {
    let wanted = [["a", "b"], ["1,5", "x"]];
    assert_eq!(rows("a;b\n1,5;x\n"), wanted, "semicolons");
    assert_eq!(rows("\u{feff}a\tb\r1,5\tx"), wanted, "tabs, a mark at the head, old line ends");
    assert_eq!(rows("a,b\r\n\r\n,\r\n\"1,5\",x"), wanted, "empty rows");
    let lines: Vec<_> = read("a,b\n\n\"x\ny\",2\nz,3").unwrap().into_iter().map(|(line, _)| line).collect();
    assert_eq!(lines, [1, 3, 5], "the line on which each row begins");
}

#[test]
fn what_is_no_list_is_refused_in_a_sentence() {
    let open = read("a,b\nc,\"d\ne").unwrap_err();
    assert_eq!(open, CsvError::Open { line: 2 });
    let all = [
        read("").unwrap_err(),
        read(" \n,,\n").unwrap_err(),
        read(&"x".repeat(LARGEST + 1)).unwrap_err(),
        read(&"x\n".repeat(MOST_ROWS + 1)).unwrap_err(),
        read(&",x".repeat(MOST_CELLS)).unwrap_err(),
        open,
    ];
    insta::assert_snapshot!(all.map(|e| e.to_string()).join("\n"));
}

/// What a spreadsheet would run is text there, and comes back as it was.
#[test]
fn no_cell_is_a_formula() {
    for cell in [
        "=1+2", "+A1", "-A1", "@x", "\t=1", "\r=1", "--1", "+-1", "-1+cmd", "'=x", "''@x", "\n=1", "＝1+2",
        "＋1", "－1", "＠x", "'＝x",
    ] {
        let text = write(&[vec![cell.to_owned(), "b".into()]], Locale::Point);
        let bare = text.trim_start_matches(['\u{feff}', '"']);
        assert!(bare.starts_with('\''), "{cell:?} as {text:?}");
        assert_eq!(rows(&text), [[cell, "b"]]);
    }
    for cell in ["-5", "+3.25", "-1,5", "5 - 3", "a=b", "'tis", "—"] {
        let text = write(&[vec![cell.to_owned(), "b".into()]], Locale::Comma);
        assert!(
            !text.contains("''") && (cell.starts_with('\'') || !text.contains('\'')),
            "{cell:?} as {text:?}"
        );
        assert_eq!(rows(&text), [[cell, "b"]]);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3_000))]

    #[test]
    fn what_is_written_is_read(
        rows_in in prop::collection::vec(prop::collection::vec("[=+@＝＋－＠'\"a-c,;\t\r\n 0-9.-]{0,6}", 1..4), 1..5),
        comma in any::<bool>(),
    ) {
        let text = write(&rows_in, if comma { Locale::Comma } else { Locale::Point });
        let kept: Vec<_> =
            rows_in.into_iter().filter(|row| row.iter().any(|cell| !cell.trim().is_empty())).collect();
        prop_assert_eq!(read(&text).map(|r| r.into_iter().map(|(_, row)| row).collect::<Vec<_>>()).unwrap_or_default(), kept);
    }

    #[test]
    fn others_read_the_same(
        text in r#"([a-c ]{0,3}|"([a-c,\n ]|""){0,4}")((,|\r?\n)([a-c ]{0,3}|"([a-c,\n]|""){0,4}")){0,8}"#,
    ) {
        let ours = read(&text).map(|r| r.into_iter().map(|(_, row)| row).collect::<Vec<_>>());
        prop_assert_eq!(ours.unwrap_or_default(), theirs(&text));
    }

    #[test]
    fn no_text_stops_it(text in any::<String>(), list in 0..LISTS.len()) {
        let state = potside::book::State::default();
        let _ = take(LISTS[list].0, &text, &state, Voice::default());
    }
}

/// Every list of the demo workshop, whole.
#[test]
fn every_list_given_out() {
    let journal = workshop();
    let mut all = String::new();
    for (list, title, file) in LISTS {
        let text = write(&give(*list, journal.state(), Zone::GREENWICH, Voice::default()), Locale::Point);
        // The same for the other reader.
        assert_eq!(rows(&text), theirs(text.trim_start_matches('\u{feff}')), "{title}");
        let widths: Vec<_> = rows(&text).iter().map(Vec::len).collect();
        assert!(widths.windows(2).all(|w| w[0] == w[1]), "{file}: {widths:?}");
        all += &format!("{title} ({file}.csv)\n{}\n", text.trim_start_matches('\u{feff}').replace('\r', ""));
    }
    insta::assert_snapshot!(all);
}

/// What the demo has none of: a lot counted, written off, held and released; a trial with all that can happen to it; what
/// was put away. Nothing of it is a formula to a spreadsheet.
#[test]
fn what_was_seen_and_counted() {
    let mut book = Book::open(Vec::new(), "tablet");
    let id = |id: &str| Id(id.into());
    let gram = |n: i128| Amount::new(Exact::whole(n), MassUnit::Gram);
    let at = |minutes: u64| 1_764_000_000_000 + minutes * 60_000;
    let lot = Lot {
        ingredient: "=Soft wax".into(),
        number: "-7/A".into(),
        supplier: String::new(),
        got_on: Day::of(at(0)),
        best_before: None,
        price: Money(2_000),
        bought: Bought { packs: 1, pack: Pack::Weight(gram(5_000)) },
        amount: Exact::whole(5_000),
    };
    let why = |reason: &str| reason.to_owned();
    let trial = Trial {
        name: "@A1".into(),
        fragrance: String::new(),
        load: None,
        heavy: Heavy::default(),
        wax: "Soft wax".into(),
        vessel: "Jar".into(),
        diameter: Amount::new(Exact::whole(70), LengthUnit::Millimetre),
        series: String::new(),
        wick: "8".into(),
        replicate: 1,
        start: gram(400),
        fill: gram(180),
    };
    let happened = |event| Act::AtTrial { trial: Id("t".into()), event };
    let to_lot = |event| Act::AtLot { lot: Id("l".into()), event };
    let acts = vec![
        Act::Lot { id: id("l"), over: None, body: lot },
        to_lot(LotEvent::Counted { left: Exact::whole(4_900), reason: why("+two spoons were spilt") }),
        to_lot(LotEvent::WrittenOff { amount: Exact::whole(100), reason: why("burnt") }),
        to_lot(LotEvent::Held { reason: why("smells of smoke") }),
        to_lot(LotEvent::Released { reason: why("it was the room") }),
        Act::Trial { id: id("t"), over: None, body: Box::new(trial) },
        happened(BurnEvent::Lit { at: at(0), mass: gram(400), trimmed: false, throw: Some(2) }),
        happened(BurnEvent::Looked(Box::new(Look {
            at: at(61),
            soot: Some(Grade::Little),
            note: "=flickers".into(),
            ..Look::default()
        }))),
        happened(BurnEvent::Out { at: at(240), mass: None, itself: true }),
        happened(BurnEvent::Weighed { mass: gram(380), lit: None }),
        happened(missed(
            BurnEvent::Lit { at: at(1500), mass: gram(380), trimmed: true, throw: None },
            vec![Look { at: at(1600), soot: Some(Grade::None), ..Look::default() }],
            BurnEvent::Out { at: at(1620), mass: None, itself: false },
        )),
        happened(BurnEvent::Weighed { mass: gram(372), lit: Some(at(1500)) }),
        happened(BurnEvent::Closed { verdict: Verdict::Small, note: "drowned".into() }),
        Act::Retire { id: id("t"), retired: true },
        Act::Wicks {
            id: id("w"),
            over: None,
            body: WickSeries { name: "Cotton".into(), sizes: vec!["-8".into(), "-10, thick".into()] },
        },
        Act::Retire { id: id("w"), retired: true },
        Act::Safety {
            id: id("s"),
            over: None,
            body: SafetySheet {
                ingredient: "Fig".into(),
                lines: "# from the sheet\n\n＝x; 5 %; Skin Sens. 1 H317\n".into(),
                dated: "2025".into(),
            },
        },
    ];
    for (n, act) in (1..).zip(acts) {
        book.act(act, at(u64::from(n)), n).unwrap();
    }
    let mut all = String::new();
    for list in [List::LotEvents, List::Seen, List::Wicks, List::Safety, List::Labels] {
        let text = write(&give(list, book.state(), Zone::GREENWICH, Voice::default()), Locale::Point);
        for cell in theirs(text.trim_start_matches('\u{feff}')).iter().flatten() {
            assert!(!cell.starts_with(['=', '@', '+', '＝']), "{cell}");
        }
        all += text.trim_start_matches('\u{feff}');
    }
    insta::assert_snapshot!(all.replace('\r', ""));
    // Thirteen hours ahead it was the next morning.
    let ahead = Zone(|at| at + 13 * 3_600_000);
    let seen = give(List::Seen, book.state(), ahead, Voice::default());
    assert_eq!(seen[1][1..3], ["2025-11-25", "05:00"]);
    let lots = give(List::LotEvents, book.state(), ahead, Voice::default());
    assert_eq!(lots[1][2], "2025-11-25");
}

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
