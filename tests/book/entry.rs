//! One line of the journal: its format, its checksum, and everything that may befall it.

use super::sample::{began, entry, ingredient, said};
use potside::book::{Damage, Entry, FORMAT, Journal, LONGEST, crc32c};
use proptest::prelude::*;

/// RFC 3720, appendix B.4 (the digests there are written least byte first); "123456789" is the check value of
/// CRC-32/ISCSI in the catalogue of parametrised CRC algorithms.
#[test]
fn checksum_has_the_published_values() {
    let up: Vec<u8> = (0..32).collect();
    let down: Vec<u8> = (0..32).rev().collect();
    let mut read_command = [0_u8; 48];
    for (at, byte) in
        [(0, 0x01), (1, 0xc0), (16, 0x14), (22, 0x04), (27, 0x14), (31, 0x18), (32, 0x28), (40, 0x02)]
    {
        read_command[at] = byte;
    }
    let cases: [(&[u8], u32); 7] = [
        (&[0; 32], 0x8a91_36aa),
        (&[0xff; 32], 0x62a8_ab43),
        (&up, 0x46dd_794e),
        (&down, 0x113f_db5c),
        (&read_command, 0xd996_3a56),
        (b"123456789", 0xe306_9283),
        (b"", 0),
    ];
    for (bytes, sum) in cases {
        assert_eq!(crc32c(bytes), sum, "{bytes:x?}");
    }
}

fn line() -> String {
    entry("tablet-1-5c", 1, ingredient("wax-1", "Meadow wax ¾", 862)).to_line()
}

/// The line with another body and the checksum that belongs to it.
fn summed(body: &str) -> String {
    format!("{body},\"sum\":\"{:08x}\"}}", crc32c(body.as_bytes()))
}

/// A body is the line up to its checksum.
fn body(line: &str) -> &str {
    line.rsplit_once(",\"sum\"").map(|(body, _)| body).expect("every line has a checksum")
}

#[test]
fn a_line_is_read_back_as_it_was() {
    for act in [
        ingredient("w", "A \"quoted\"\n\u{0}name", 1),
        began("b", 8),
        said("b", "{\"v\":1,\"sum\":\"00000000\"}"),
    ] {
        let entry = entry("x", 7, act);
        let line = entry.to_line();
        assert!(!line.contains('\n'), "one line: {line}");
        assert!(line.starts_with(&format!("{{\"v\":{FORMAT},\"id\":\"x\",\"clock\":7,")), "{line}");
        assert_eq!(Entry::from_line(&line), Ok(entry));
        assert_eq!(summed(body(&line)), line);
    }
}

#[track_caller]
fn damage(line: &str, want: &Damage) {
    match (Entry::from_line(line), want) {
        (Err(Damage::Unknown { .. }), Damage::Unknown { .. }) => {}
        (got, want) => assert_eq!(got, Err(want.clone()), "{line:.200}"),
    }
}

#[test]
fn each_damage_is_told_from_the_others() {
    let unknown = Damage::Unknown { reason: String::new() };
    let good = line();
    let text = body(&good);
    for text in
        ["", "{", "null", "[]", "{}", "{\"v\":}", "{\"v\":x,", "hello", "{\"v\":-1,\"a\":1}", "{\"v\":01,"]
    {
        damage(text, &Damage::NotAnEntry);
    }
    damage(&summed("{\"v\":0,\"id\":\"a\""), &Damage::NotAnEntry);
    damage(&good[..good.len() - 1], &Damage::Checksum);
    damage(&good.to_uppercase().replace("\"V\"", "\"v\""), &Damage::Checksum);
    damage(&good.replace("862", "863"), &Damage::Checksum);
    damage(&summed(&text.replacen("\"v\":2", "\"v\":3", 1)), &Damage::Newer { format: 3 });
    // A newer format is told from a damaged number of the format.
    damage(&good.replacen("\"v\":2", "\"v\":3", 1), &Damage::Checksum);
    damage(&summed("{\"v\":2,\"id\":\"a\""), &unknown);
    damage(&summed(&text.replace("Ingredient", "Incantation")), &unknown);
    damage(&summed(&text.replace("\"tablet-1-5c\"", "\"../<script>\"")), &unknown);
    damage(&summed(&text.replace("\"tablet\"", "\"\"")), &unknown);
    damage(&summed(&text.replace("\"clock\":1,", "\"clock\":9007199254740993,")), &unknown);
    damage(&summed(&text.replace("\"clock\":1,", "\"clock\":-1,")), &unknown);
    // Up to 2^53 every reader of JSON has whole numbers exactly.
    let at = text.split_once("\"at\":").and_then(|(_, rest)| rest.split(',').next()).expect("it has a time");
    let timed = |new: &str| summed(&text.replace(&format!("\"at\":{at},"), &format!("\"at\":{new},")));
    assert!(Entry::from_line(&timed("9007199254740992")).is_ok());
    damage(&timed("9007199254740993"), &unknown);
    damage(&summed(&text.replace("\"clock\":1,", "\"clock\":1,\"clock\":2,")), &unknown);
    let deep = format!("{{\"v\":1,\"act\":{}{}", "[".repeat(200_000), "]".repeat(200_000));
    damage(&summed(&deep), &unknown);
    let long = summed(&format!("{{\"v\":1,\"id\":\"{}\"", "x".repeat(LONGEST)));
    damage(&long, &Damage::TooLong { bytes: long.len() });
}

#[test]
fn a_line_is_whole_whatever_it_says() {
    let good = line();
    for whole in [good.clone(), summed("{\"v\":9,\"what\":\"is to come\""), summed("nothing")] {
        assert!(Entry::is_whole(&whole), "{whole}");
    }
    for changed in [good.replace("862", "863"), good[..good.len() - 1].to_owned(), String::new()] {
        assert!(!Entry::is_whole(&changed), "{changed}");
    }
}

#[test]
fn the_longest_line_is_read() {
    let empty = entry("x", 7, said("b", "")).to_line().len();
    let longest = entry("x", 7, said("b", &"x".repeat(LONGEST - empty))).to_line();
    assert_eq!(longest.len(), LONGEST);
    assert!(Entry::from_line(&longest).is_ok());
    let longer = entry("x", 7, said("b", &"x".repeat(LONGEST - empty + 1))).to_line();
    damage(&longer, &Damage::TooLong { bytes: LONGEST + 1 });
}

#[test]
fn every_damage_has_a_sentence() {
    for d in [
        Damage::NotAnEntry,
        Damage::TooLong { bytes: 1_000_001 },
        Damage::Checksum,
        Damage::Unknown { reason: "no such act".to_owned() },
        Damage::SameId,
        Damage::Newer { format: 9 },
    ] {
        let sentence = d.to_string();
        assert!(sentence.len() > 20 && sentence.ends_with('.'), "{sentence}");
    }
}

#[test]
fn every_flip_of_a_bit_and_every_cut_is_detected() {
    let good = line();
    let bytes = good.as_bytes();
    for at in 0..bytes.len() {
        for bit in 0..8 {
            let mut flipped = bytes.to_vec();
            flipped[at] ^= 1 << bit;
            let Ok(text) = String::from_utf8(flipped) else { continue };
            assert!(Entry::from_line(&text).is_err(), "bit {bit} of byte {at}: {text}");
        }
        if let Some(cut) = good.get(..at) {
            assert!(Entry::from_line(cut).is_err(), "cut at {at}");
        }
    }
}

/// Takes whatever comes: nothing may panic.
fn open(lines: Vec<String>) {
    let count = lines.len();
    let journal = Journal::open(lines, "here");
    assert!(journal.entries().len() + journal.damaged().len() <= count);
    let _ = (journal.last_undoable(), journal.last_redoable(), journal.state().running());
    let _ = journal.state().find(&journal.state().finder(), "a");
}

/// Pieces of lines and of what looks like them.
const PIECES: [&str; 25] = [
    "{",
    "}",
    "[",
    "]",
    ",",
    ":",
    "\"",
    "\\",
    "{\"v\":1,",
    "{\"v\":2,",
    "{\"v\":3,",
    "\"id\":\"a\"",
    "\"clock\":1",
    "\"at\":1",
    "\"device\":\"d\"",
    "\"act\":{",
    "\"Undo\":{\"entry\":\"a\"}",
    "\"Retire\":{\"id\":\"a\",\"retired\":true}",
    "\"sum\":\"00000000\"}",
    "-1",
    "1e999",
    "null",
    "¾",
    "\u{0}",
    "\u{1f56f}",
];

#[test]
fn no_line_panics() {
    // SplitMix64 (Steele, Lea, Flood 2014): the same 100,000 lines every time.
    let mut state = 0_u64;
    let mut next = |below: usize| {
        state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) as usize % below
    };
    for n in 0..100_000 {
        let text: String = (0..next(16)).map(|_| PIECES[next(PIECES.len())]).collect();
        open(if n % 2 == 0 { vec![text] } else { vec![summed(&format!("{{\"v\":{},{text}", 1 + n % 3))] });
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1_000, ..ProptestConfig::default() })]

    /// Real lines with a piece put in place of another, and the checksum that makes them look whole.
    #[test]
    fn no_altered_line_panics(which in 0_usize..4, from in 0.0_f64..1.0, len in 0_usize..12, put in r#"[-0-9eE"{}\[\],:a-z/. ]{0,12}"#) {
        let acts = [ingredient("b", "w", 862), began("b", 3), said("b", "x"), super::sample::ended("b", "x")];
        let lines: Vec<String> =
            acts.into_iter().enumerate().map(|(i, act)| entry(&format!("e{i}"), i as u64, act).to_line()).collect();
        let mut altered = body(&lines[which]).to_owned();
        let at = (from * altered.len() as f64) as usize;
        let end = (at + len).min(altered.len());
        if altered.is_char_boundary(at) && altered.is_char_boundary(end) {
            altered.replace_range(at..end, &put);
        }
        let mut all = lines;
        all[which] = summed(&altered);
        open(all);
    }
}
