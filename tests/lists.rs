//! Lists as text for a spreadsheet: held against another reader and writer of CSV, given out whole, taken in line by line.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used)]

use potside::book::{Act, Book, Id, Journal, demo};
use potside::lists::{
    Body, CsvError, Found, LARGEST, LISTS, List, MOST_CELLS, MOST_ROWS, TakeError, Taken, give, read, take,
    write,
};
use potside::quantity::{Locale, Voice};
use potside::shelf::{Customer, Product};
use potside::vessel::FillRule;
use proptest::prelude::*;

fn workshop() -> Journal {
    let mut n = 0;
    let lines = demo("tablet", 1_764_000_000_000, || {
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
    for cell in ["=1+2", "+A1", "-A1", "@x", "\t=1", "\r=1", "--1", "+-1", "-1+cmd", "'=x", "''@x"] {
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
        rows_in in prop::collection::vec(prop::collection::vec("[=+@'\"a-c,;\t\r\n 0-9.-]{0,6}", 1..4), 1..5),
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
        let text = write(&give(*list, journal.state(), Voice::default()), Locale::Point);
        // The same for the other reader.
        assert_eq!(rows(&text), theirs(text.trim_start_matches('\u{feff}')), "{title}");
        let widths: Vec<_> = rows(&text).iter().map(Vec::len).collect();
        assert!(widths.windows(2).all(|w| w[0] == w[1]), "{file}: {widths:?}");
        all += &format!("{title} ({file}.csv)\n{}\n", text.trim_start_matches('\u{feff}').replace('\r', ""));
    }
    insta::assert_snapshot!(all);
}

/// What was given out of one book is taken in by an empty one, and is the same.
#[test]
fn vessels_and_ingredients_come_back() {
    let journal = workshop();
    let empty = potside::book::State::default();
    for locale in [Locale::Point, Locale::Comma] {
        let voice = Voice { locale, ..Voice::default() };
        let text = write(&give(List::Vessels, journal.state(), voice), locale);
        let taken = take(List::Vessels, &text, &empty, voice).unwrap();
        let ours: Vec<_> = journal.state().vessels.values().filter_map(|k| k.body().cloned()).collect();
        let bodies: Vec<_> = taken.found.iter().map(|f| f.body.clone().unwrap()).collect();
        assert_eq!(bodies, ours.into_iter().map(Body::Vessel).collect::<Vec<_>>());
        assert!(taken.unknown.is_empty());
        assert!(taken.found.iter().all(|f| f.act(Id("x".into())).is_some()));
        let again = take(List::Vessels, &text, journal.state(), voice).unwrap();
        assert!(again.found.iter().all(|f| f.act(Id("x".into())).is_none()), "all are there already");
    }
    let text = write(&give(List::Ingredients, journal.state(), Voice::default()), Locale::Point);
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

/// Orders come in a row a candle; rows of one order are one. What cannot be is said by its line.
#[test]
fn orders_come_back() {
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
    // Given out and taken in again, they are the same.
    let again = write(&give(List::Orders, book.state(), Voice::default()), Locale::Point);
    let again = take(List::Orders, &again, book.state(), Voice::default()).unwrap();
    let bodies: Vec<_> = again.found.into_iter().map(|f| f.body.unwrap()).collect();
    let kept: Vec<_> = book.state().orders.values().map(|k| Body::Order(k.body().unwrap().clone())).collect();
    assert_eq!(bodies, kept);
}
