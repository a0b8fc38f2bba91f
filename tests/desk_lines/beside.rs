//! A number beside a class: only what is written as a limit is one. Our own cases.

use super::{classed, figures, reads};
use potside::desk::hazard::read_lines;
use potside::quantity::Locale;

/// A table whose column of concentrations was pasted behind the classes as well. By Annex I, Table 3.4.5, 1 % of a
/// sensitiser counts; read as limits, 10 % or 20 % would let it pass.
#[test]
fn a_concentration_that_is_repeated_is_no_limit() {
    for beside in
        ["10-20 %", "10 - 20 %", "(10 - 20 %)", "10 - < 20 %", "≥ 10 - < 20 %", "≥10 – ≤20%", "10-20"]
    {
        let line = format!("A; 10-20 %; Skin Sens. 1B H317 {beside}");
        figures(&line, &[]);
        reads(&line, "20", &["Skin Sens. 1B (H317)"]);
        assert_eq!(classed(&line, 5), ["Skin Sens. 1 (H317)"], "{line}");
        // So it is before the concentration itself is told.
        figures(&format!("A; Skin Sens. 1B H317 {beside}; 10-20 %"), &[]);
    }
    for (share, beside) in
        [("≤ 20 %", "≤ 20 %"), ("< 20 %", "20 %"), ("20 %", "20 %"), ("20 %", "≤ 20 %"), ("2.5 %", "2.5")]
    {
        figures(&format!("A; {share}; Skin Sens. 1B H317 {beside}"), &[]);
    }
    figures("A; 10-20 %; Skin Corr. 1 C H314 10 - 20 %", &[]);
    // A small number is that of a note.
    figures("A; 10-20 %; Skin Sens. 1B H317 (1)", &[]);
}

#[test]
fn what_is_written_as_a_limit_is_one() {
    let limit = ["Skin Sens. 1B from 10 %"];
    for beside in [
        "≥ 10 %",
        "> 10 %",
        ">= 10",
        ": C ≥ 10 %",
        "C ≥ 10 %",
        "10 % ≤ C",
        "10 % ≤ C < 20 %",
        "20 % > C ≥ 10 %",
    ] {
        figures(&format!("A; 10-20 %; Skin Sens. 1B H317 {beside}"), &limit);
    }
    figures("A; 10 - 20 %; SCL Skin Sens. 1B H317 10 - 20 %", &limit);
    figures("A; 10 %; Skin Sens. 1B H317 SCL: 10 %", &limit);
    figures("A; 10 %; Skin Sens. 1B H317 ≥ 10 %", &limit);
    figures("A; ≥ 10 %; Skin Sens. 1B H317: C ≥ 10 %", &limit);
    figures("A; ≥ 10 %; Skin sensitisation, Category 1B: C ≥ 10 %", &limit);
}

/// What is neither, or could be both, is asked for: none of it is read as a laxer limit, and none is passed over.
#[test]
fn what_is_not_clear_is_asked_for() {
    for (share, beside) in [
        ("10 - 20 %", "5 - 10 %"),
        ("10 - 20 %", "10 %"),
        ("10 - 20 %", "20 %"),
        ("10 - 20 %", "< 20 %"),
        ("10 - 20 %", "≥ 5 - < 10 %"),
        ("10 - 20 %", "5 - 10"),
        ("10 - 20 %", "0.5"),
        ("10 %", "6 %"),
        // Of what is open above, both may be meant.
        ("≥ 0.1 %", "≥ 0.1 %"),
        ("balance", "50 %"),
    ] {
        let line = format!("A; {share}; Skin Sens. 1B H317 {beside}");
        let (found, errors) = read_lines(&line, Locale::Point);
        let said = errors.first().map(ToString::to_string).unwrap_or_default();
        let words = "has a number that is neither the concentration nor written clearly as a limit.";
        assert!(found.is_empty() && said.contains(words) && said.contains(beside), "{line}: {said}");
    }
    let (found, errors) = read_lines("A; ≥ 10 %; Skin Corr. 1C ≥ 10 %", Locale::Point);
    assert!(found.is_empty() && errors.len() == 1, "the C of 1C is not that of C ≥ 10 %: {found:?}");
    // Of two limits in one part neither is read: before, the last was that of both classes, and 5 % of what irritates none.
    for text in [
        "Skin Irrit. 2 H315: 1 % ≤ C < 5 %, Skin Corr. 1B H314: C ≥ 5 %",
        "Skin Corr. 1B H314: C ≥ 5 %, Skin Irrit. 2 H315: 1 % ≤ C < 5 %",
        "Skin Irrit. 2 H315 ≥ 1 %, Skin Corr. 1B H314",
        "Skin Irrit. 2 ≥ 1 %, Skin Corr. 1B ≥ 5 %",
    ] {
        let (found, errors) = read_lines(&format!("A; 20 %; {text}"), Locale::Point);
        let said = errors.first().map(ToString::to_string).unwrap_or_default();
        assert!(found.is_empty() && said.contains("is not a specific limit"), "{text}: {said} {found:?}");
    }
    // An upper end is no limit from which on a class holds.
    for beside in ["C < 10 %", "C ≤ 10 %", "10 % > C", "C > 0 %"] {
        let line = format!("A; 10 - 20 %; Skin Irrit. 2 H315 {beside} %");
        let (found, errors) = read_lines(&line, Locale::Point);
        let said = errors.first().map(ToString::to_string).unwrap_or_default();
        assert!(found.is_empty() && said.contains("is not a specific limit"), "{line}: {said}");
    }
}

/// The letters SCL are a word of their own: an organ that has them in it makes no limit of a concentration. With a limit
/// of 10 % instead of the usual 1 % for category 2 (Table 3.9.3), 5 % would let the class go.
#[test]
fn an_organ_with_the_letters_of_a_limit_in_it_is_none() {
    for organ in ["muscles", "skeletal muscle", "sclera"] {
        for line in [
            format!("A; 10-20 %; STOT RE 2 ({organ}) H373 10 - 20 %"),
            format!("A; 10-20 %; STOT RE 2 ({organ}) H373 (10 - 20 %)"),
        ] {
            reads(&line, "20", &["STOT RE 2 (H373)"]);
            figures(&line, &[&["STOT RE: ", organ].concat()]);
        }
    }
}
