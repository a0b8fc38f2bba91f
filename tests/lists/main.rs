//! Lists as text for a spreadsheet: held against another reader and writer of CSV, given out whole, taken in line by line.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used, clippy::panic)]

mod given;
mod taken;

use potside::book::{Journal, demo};
use potside::day::Zone;
use potside::lists::{CsvError, LARGEST, LISTS, MOST_CELLS, MOST_ROWS, read, take, write};
use potside::quantity::{Locale, Voice};
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

/// A program that separates cells by another sign does not keep quotation marks in the middle of one: what it then takes for
/// a cell is no formula either (OWASP, CSV Injection; from memory).
#[test]
fn no_part_of_a_cell_is_a_formula_for_those_who_separate_otherwise() {
    for (cell, wanted) in [
        ("a;=1+2", "a;'=1+2"),
        ("a,@x;b", "a,'@x;b"),
        ("a\t+A1,-A1", "a\t'+A1,'-A1"),
        ("a\n=1", "a\n'=1"),
        ("a;'=1", "a;''=1"),
        ("=1;=2", "'=1;'=2"),
        ("a;b, c", "a;b, c"),
        ("a\n\nb", "a\n\nb"),
        ("1,-5", "1,-5"),
    ] {
        for locale in [Locale::Point, Locale::Comma] {
            let text = write(&[vec![cell.to_owned(), "b".into()]], locale);
            assert!(text.contains(wanted), "{cell:?} as {text:?}");
            assert_eq!(rows(&text), [[cell, "b"]]);
        }
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
