//! Words, signs and remarks of a line: what is read, what is passed over, and what is asked for. Our own cases.

use super::{classed, figures, reads};
use potside::desk::hazard::read_lines;
use potside::quantity::Locale;

#[track_caller]
fn asks(text: &str, words: &str) {
    let line = ["A; 5 %; ", text].concat();
    let (found, errors) = read_lines(&line, Locale::Point);
    let said = errors.first().map(ToString::to_string).unwrap_or_default();
    assert!(found.is_empty() && said.contains(words), "{line}: {said} {found:?}");
}

#[test]
fn columns_of_no_meaning_here_are_passed_over() {
    for column in [
        "Index 603-235-00-2",
        "603-235-00-2",
        "Note C",
        "GHS07",
        "Dgr",
        "Wng",
        "REACH registered",
        "*",
        "-",
        "not applicable",
    ] {
        reads(&format!("A; 5 %; {column}; H317"), "5", &["Skin Sens. 1 (H317)"]);
    }
    // A word with dashes is no number.
    asks("some-odd-long-word", "is not known here");
    // Signs for spaces that do not break.
    reads("A; 5\u{a0}%; Skin\u{a0}Irrit.\u{a0}2\u{a0}H315", "5", &["Skin Irrit. 2 (H315)"]);
}

/// A number or a note in the same column does not hide a class, and a class does not hide a number.
#[test]
fn a_class_is_not_passed_over_for_what_stands_beside_it() {
    let (unknown, number) = ("is not known here", "has a number that is neither the concentration nor");
    for (text, words) in [
        ("GHS07 H317", unknown),
        ("GHS07, GHS09, Wng, H317, H411", unknown),
        ("Dgr; Note A H317", unknown),
        ("Note A, Skin Sens. 1 H317", unknown),
        ("Index 603-235-00-2 H317", unknown),
        ("H317 603-235-00-2", number),
        ("H317 78-70-6", number),
        ("Skin Irrit. 2 78-70-6", unknown),
        ("Skin Irrit. 2 201-134-4", unknown),
        ("Skin irritation, Category 2 78-70-6", unknown),
        ("H317 01-2119474016-42-XXXX", unknown),
        ("Skin Irrit. 2, 01-2119474016-42-XXXX", unknown),
    ] {
        asks(text, words);
    }
    reads("A; 5 %; GHS07; GHS09; Wng; H317", "5", &["Skin Sens. 1 (H317)"]);
    reads(
        "A; CAS No. 78-70-6; EC-No. 201-134-4; REACH No. 01-2119474016-42-XXXX; 5 %; H317",
        "5",
        &["Skin Sens. 1 (H317)"],
    );
}

/// Annex I, 3.2.3.3.4: 2 and below, 11.5 and above. 4 % of what is corrosive are not 5, but by themselves more than 1 (Tables
/// 3.2.3 and 3.2.4).
#[test]
fn only_an_extreme_ph_stands_apart() {
    for (ph, apart) in [
        ("2", true),
        ("2.1", false),
        ("7", false),
        ("11.4", false),
        ("11.5", true),
        ("13", true),
        ("0", true),
    ] {
        let found = classed(&format!("A; 4 %; Skin Corr. 1 H314; pH {ph}"), 100);
        assert_eq!(found.contains(&"Skin Corr. 1 (H314)".to_owned()), apart, "{ph}: {found:?}");
    }
}

/// The digits times 1 to 6, modulo 11: 2 + 6 × 3 is 20, which leaves 9; 2 + 6 × 5 is 32, which leaves 10, and no number is given
/// out then.
#[test]
fn check_digits_of_nine_and_ten() {
    let (found, errors) = read_lines("A; 200-003-9; 5 %", Locale::Point);
    assert_eq!((found.len(), errors.len(), found.first().map(|s| s.ec.as_str())), (1, 0, Some("200-003-9")));
    asks("200-005-0", "is no EC number: none with these digits is given out");
    asks("200-005-9", "is no EC number: none with these digits is given out");
    asks("200-003-8", "it would end in 9");
}

/// Where only spaces part the columns, the names of the numbers are no words of a class.
#[test]
fn numbers_with_their_names() {
    for line in [
        "Linalool 78-70-6 EC-No 201-134-4 5 % H317",
        "Linalool 78-70-6 EC-No.: 201-134-4 5 % H317",
        "Linalool 78-70-6 EC No.: 201-134-4 5 % H317",
        "Linalool 201-134-4 CAS-No 78-70-6 5 % H317",
        "Linalool CAS: 78-70-6 EC: 201-134-4 REACH No.: 01-2119474016-42-XXXX 5 % H317",
    ] {
        let (found, errors) = read_lines(line, Locale::Point);
        assert!(errors.is_empty(), "{line}: {errors:?}");
        let one = found.first().cloned().unwrap_or_default();
        assert_eq!(
            (one.name.as_str(), one.cas.as_str(), one.ec.as_str()),
            ("Linalool", "78-70-6", "201-134-4"),
            "{line}"
        );
        reads(line, "5", &["Skin Sens. 1 (H317)"]);
    }
}

/// Letters between dashes are a name, though as long as a number.
#[test]
fn a_name_may_look_like_a_number() {
    reads("cis-ab-3; 5 %; H317", "5", &["Skin Sens. 1 (H317)"]);
    let (_, errors) = read_lines("78-70-6; 5 %; H317", Locale::Point);
    assert!(errors.iter().any(|e| e.to_string().contains("No name")), "{errors:?}");
}

#[test]
fn concentrations_at_their_edges() {
    reads("A; 5 - 5 %", "5", &[]);
    reads("A; 10-20", "20", &[]);
    reads("A; 100 %", "100", &[]);
    reads("A; > 100 %", "100", &[]);
    for (share, words) in [
        ("> 105 %", "is more than 100 %"),
        ("100.1 %", "is more than 100 %"),
        ("5 parts", "is not a concentration"),
        ("parts", "is not known here"),
    ] {
        let (found, errors) = read_lines(&format!("A; {share}"), Locale::Point);
        let said = errors.first().map(ToString::to_string).unwrap_or_default();
        assert!(found.is_empty() && said.contains(words), "{share}: {said}");
    }
}

#[test]
fn an_estimate_is_of_the_statement_before_it() {
    figures("A; 5 %; Acute Tox. 4, H312 (ATE = 1500 mg/kg bw)", &["ATE on skin: 1500 mg/kg"]);
    figures(
        "A; 5 %; Acute Tox. 4, H302 (ATE = 400 mg/kg bw); Acute Tox. 4, H312 (ATE = 1500 mg/kg bw)",
        &["ATE swallowed: 400 mg/kg", "ATE on skin: 1500 mg/kg"],
    );
    figures(
        "A; 5 %; Acute Tox. 4 H302, ATE oral 500, ATE dermal 1100 mg/kg bodyweight",
        &["ATE swallowed: 500 mg/kg", "ATE on skin: 1100 mg/kg"],
    );
    // Of both it is not known which.
    asks("Acute Tox. 4, H302, H312 (ATE = 400 mg/kg bw)", "acute toxicity estimate");
    // The letters within a word are no estimate.
    figures("A; 5 %; STOT RE 2, H373 (prostate)", &["STOT RE: prostate"]);
    for text in ["ATE oral 500 mg/kg g/kg", "ATE oral about 500", "ATE oral max 500 mg/kg"] {
        asks(text, "acute toxicity estimate");
    }
}

/// Who tells a limit for a class has the class, also where others are told.
#[test]
fn a_limit_beside_other_classes_tells_its_own() {
    reads(
        "A; 5 %; Skin Irrit. 2 H315; Skin Sens. 1B H317 ≥ 0.5 %",
        "5",
        &["Skin Irrit. 2 (H315)", "Skin Sens. 1B (H317)"],
    );
}

/// Names of classes as the GHS and the titles of Annex I print them, in further ways.
#[test]
fn further_classes_in_full() {
    for (text, class) in [
        ("Hazardous to the ozone layer, Category 1", "Ozone 1 (H420)"),
        ("Hazardous to the ozone layer", "Ozone 1 (H420)"),
        ("Endocrine disruption for human health, Category 1", "ED HH 1 (EUH380)"),
        ("Endocrine disruption for the environment, Category 2", "ED ENV 2 (EUH431)"),
        ("Reproductive toxicity, effects on or via lactation", "Lact. (H362)"),
        (
            "Specific target organ toxicity - single exposure, narcotic effects, Category 3",
            "STOT SE 3 (H336)",
        ),
        (
            "Specific target organ toxicity - single exposure, respiratory tract irritation, Category 3",
            "STOT SE 3 (H335)",
        ),
        ("Eye irritation", "Eye Irrit. 2 (H319)"),
        ("Skin irritation", "Skin Irrit. 2 (H315)"),
        ("Skin corrosion", "Skin Corr. 1 (H314)"),
        ("Corrosive to metals, Category 1", ""),
        ("Corrosive to metals", ""),
    ] {
        let classes: Vec<&str> = Some(class).filter(|c| !c.is_empty()).into_iter().collect();
        reads(&["A; 5 %; ", text].concat(), "5", &classes);
    }
    // A route belongs to the class that comes after it, where that has begun.
    reads(
        "A; 5 %; Acute toxicity, Category 4, dermal, Acute toxicity, oral, Category 3",
        "5",
        &["Acute Tox. 4 (H312)", "Acute Tox. 3 (H301)"],
    );
    // The limit stands behind its number as well as before it.
    figures("A; 5 %; Skin sensitisation, Category 1B: 1 % ≤ C", &["Skin Sens. 1B from 1 %"]);
}

#[test]
fn what_is_not_clear_in_full_is_asked_for() {
    for text in [
        "Skin/eye irritation, Category 2",
        "Hazard, Category 2",
        "Toxicity, oral, Category 4",
        "Acute effects, oral, Category 4",
        "Skin irritation, Category 2, aquatic hazard",
        "Skin irritation nonsense, Category 2, H315",
        "Specific target organ toxicity - repeated exposure, Category 2, nonsense",
        "Hazard Category 9 H315",
        // Nothing of it is dropped: a route without a class may be a second class.
        "Acute toxicity, oral, Category 3, dermal",
        "Skin irritation, Category 2, oral",
        "Skin Irrit. 2 H315, nonsense",
        "STOT RE 2 H373 (see section 11)",
    ] {
        asks(text, "is not known here");
    }
    asks(
        "Specific target organ toxicity - single exposure, nervous system, Category 3",
        "can mean several things",
    );
}
