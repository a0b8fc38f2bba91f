//! The QR code: the standard's own example, and a general-purpose decoder.

use potside::desk::code::{Code, QUIET, codewords_of};
use proptest::prelude::*;

/// ISO/IEC 18004, Annex I: "01234567" in version 1-M.
#[test]
fn the_example_of_the_standard() {
    let words = codewords_of("01234567").unwrap();
    let said: Vec<String> = words.iter().map(|w| format!("{w:02X}")).collect();
    assert_eq!(
        said.join(" "),
        "10 20 0C 56 61 80 EC 11 EC 11 EC 11 EC 11 EC 11 A5 24 D4 C1 ED 36 C7 87 2C 55"
    );
    assert_eq!(Code::of("01234567").unwrap().side, 21);
}

fn decoded(code: &Code) -> Option<String> {
    let scale = 4;
    let size = (code.side + 2 * QUIET) * scale;
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(size, size, |x, y| {
        let at = |n: usize| (n / scale).wrapping_sub(QUIET);
        if code.is_dark(at(y), at(x)) { 0 } else { 255 }
    });
    let grids = image.detect_grids();
    grids.first()?.decode().ok().map(|found| found.1)
}

#[test]
fn a_decoder_reads_every_version_and_mode() {
    for (text, side) in [
        ("01234567", 21),
        ("2611-03", 21),
        ("20261125-A", 21),
        ("Batch 12/b", 21),
        ("2026-11-25 QUIET ORCHARD 12", 25),
        ("batch of the twenty-fifth, 180 g", 29),
        ("batch of the twenty-fifth of November, poured warm", 33),
        ("Kerze für Jürgen №7", 25),
        ("a", 21),
    ] {
        let code = Code::of(text).unwrap();
        assert_eq!((code.side, decoded(&code).as_deref()), (side, Some(text)));
    }
    assert_eq!(Code::of(&"x".repeat(62)).map(|c| c.side), Some(33));
    assert_eq!(Code::of(&"x".repeat(63)), None);
}

/// The outline covers the dark modules and nothing else.
#[test]
fn the_outline_is_the_code() {
    let code = Code::of("2611-03").unwrap();
    let mut count = 0;
    for run in code.path().split('M').skip(1) {
        let (place, length) = run.split_once('h').unwrap();
        let (x, y) = place.split_once(' ').unwrap();
        let length: usize = length.split('v').next().unwrap().parse().unwrap();
        let (x, y): (usize, usize) = (x.parse().unwrap(), y.parse().unwrap());
        assert!((x..x + length).all(|column| code.is_dark(y, column)));
        count += length;
    }
    let dark = (0..code.side)
        .flat_map(|r| (0..code.side).map(move |c| (r, c)))
        .filter(|(r, c)| code.is_dark(*r, *c));
    assert_eq!(count, dark.count());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn what_is_written_is_read(text in "[0-9A-Za-z./ -]{1,40}") {
        let code = Code::of(&text).unwrap();
        prop_assert_eq!(decoded(&code), Some(text));
    }
}
