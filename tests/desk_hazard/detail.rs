//! What a sheet says beside a category: letters of H360 and H361 (Annex III of Regulation (EC) No 1272/2008 and Annex I, 3.7.4.1), organs and
//! the way into the body of H370 to H373 (Annex III). Words of the statements from memory.

use super::{ingredient, lines, whole};
use potside::desk::hazard::{mix, statements};
use potside::quantity::{Exact, Voice};

#[track_caller]
fn says(text: &str, code: &str, words: &str) {
    let said = statements(&whole(text), false);
    let found: Vec<_> =
        said.hazards.iter().filter(|h| h.0.starts_with("H36") || h.0.starts_with("H37")).collect();
    assert_eq!(found, [&(code, words.to_owned())], "{text}");
}

const FERTILITY: &str = "May damage fertility.";
const CHILD: &str = "May damage the unborn child.";
const EITHER: &str = "May damage fertility or the unborn child.";

#[test]
fn letters_of_one_substance_stay() {
    for (letters, words) in [
        ("H360F", FERTILITY),
        ("H360D", CHILD),
        ("H360", EITHER),
        ("H360FD", "May damage fertility. May damage the unborn child."),
        ("H360Fd", "May damage fertility. Suspected of damaging the unborn child."),
        ("H360Df", "May damage the unborn child. Suspected of damaging fertility."),
    ] {
        says(&format!("A; 0.3 %; Repr. 1B {letters}"), letters, words);
        says(&format!("A; 0.3 %; Toxic to reproduction, Category 1A; {letters}: {words}"), letters, words);
    }
    for (letters, words) in [
        ("H361f", "Suspected of damaging fertility."),
        ("H361d", "Suspected of damaging the unborn child."),
        ("H361fd", "Suspected of damaging fertility. Suspected of damaging the unborn child."),
        ("H361", "Suspected of damaging fertility or the unborn child."),
    ] {
        says(&format!("A; 3 %; Repr. 2 {letters}"), letters, words);
    }
    // Where a sheet has small letters only, the stricter is meant.
    says("A; 1 %; repr. 1b h360fd", "H360FD", "May damage fertility. May damage the unborn child.");
    // A limit of its own has the letter, too.
    says("A; 0.05 %; Repr. 1B; H360D: C ≥ 0.03 %", "H360D", CHILD);
}

#[test]
fn letters_of_several_substances_are_put_together() {
    for (one, two, code) in [
        ("1 %; Repr. 1B H360F", "1 %; Repr. 1A H360D", "H360FD"),
        ("1 %; Repr. 1B H360F", "3 %; Repr. 2 H361d", "H360Fd"),
        ("1 %; Repr. 1B H360D", "3 %; Repr. 2 H361f", "H360Df"),
        ("1 %; Repr. 1B H360D", "3 %; Repr. 2 H361d", "H360D"),
        ("1 %; Repr. 1B H360F", "1 %; Repr. 1B H360F", "H360F"),
        ("1 %; Repr. 1A H360F", "1 %; Repr. 1B H360F", "H360F"),
        ("1 %; Repr. 1B H360Fd", "3 %; Repr. 2 H361d", "H360Fd"),
        ("3 %; Repr. 2 H361f", "3 %; Repr. 2 H361d", "H361fd"),
        // One that has none may do either.
        ("1 %; Repr. 1B H360F", "1 %; Repr. 1B H360", "H360"),
        ("1 %; Repr. 1B H360F", "3 %; Repr. 2 H361", "H360Fd"),
        ("3 %; Repr. 2 H361f", "3 %; Repr. 2 H361", "H361"),
        // Of which there is too little, nothing is said: 0.3 % and 3 % (Table 3.7.2).
        ("1 %; Repr. 1B H360F", "0.29 %; Repr. 1B H360D", "H360F"),
        ("1 %; Repr. 1B H360F", "2.9 %; Repr. 2 H361d", "H360F"),
        ("0.2 %; Repr. 1B H360F", "3 %; Repr. 2 H361d", "H361d"),
    ] {
        for (first, second) in [(one, two), (two, one)] {
            let text = format!("A; {first}\nB; {second}");
            let said = statements(&whole(&text), false).hazards;
            assert_eq!(said.iter().map(|h| h.0).collect::<Vec<_>>(), [code], "{text}");
        }
    }
    // Two sheets of one substance, one without a letter.
    says("A; 1 %; Repr. 1B H360F\nA; 1 %; Repr. 1B H360", "H360", EITHER);
    says("A; 1 %; Repr. 1B H360F\nA; 1 %; Repr. 1B H360D", "H360FD", &[FERTILITY, " ", CHILD].concat());
}

/// What a letter asks for beside the statement is what the class does.
#[test]
fn letters_change_no_pictogram_and_no_precaution() {
    let [plain, letters] =
        ["H360", "H360FD"].map(|code| statements(&whole(&format!("A; 1 %; Repr. 1B {code}")), false));
    assert_eq!(
        (plain.pictograms, plain.signal, plain.precautions),
        (letters.pictograms, letters.signal, letters.precautions)
    );
}

const LONG: &str = " through prolonged or repeated exposure";

#[test]
fn organs_and_ways_of_one_substance_stay() {
    for (text, code, words) in [
        (
            "STOT RE 2, H373 (thyroid, kidneys)",
            "H373",
            ["May cause damage to organs (kidneys, thyroid)", LONG, "."],
        ),
        (
            "STOT RE 1 H372 (liver) (oral)",
            "H372",
            ["Causes damage to organs (liver)", LONG, " if swallowed."],
        ),
        ("STOT RE 1 (liver and lungs); H372", "H372", ["Causes damage to organs (liver, lungs)", LONG, "."]),
        (
            "Specific target organ toxicity (repeated exposure), Oral (Category 2), Liver, H373",
            "H373",
            ["May cause damage to organs (liver)", LONG, " if swallowed."],
        ),
        ("STOT RE 2 (teeth), H373", "H373", ["May cause damage to organs (teeth)", LONG, "."]),
        (
            "STOT SE 1, H370 (central nervous system, optic nerve) (inhalation)",
            "H370",
            ["Causes damage to organs (central nervous system, optic nerve)", "", " if inhaled."],
        ),
        ("STOT SE 1 (optic nerve); H370", "H370", ["Causes damage to organs (optic nerve)", "", "."]),
        ("STOT RE 2 H373 (liver, gut)", "H373", ["May cause damage to organs (gut, liver)", LONG, "."]),
        ("STOT RE 2 H373 (inhalation, vapour)", "H373", ["May cause damage to organs", LONG, " if inhaled."]),
        // What is no organ's name and stands in no brackets is not taken for one.
        ("STOT RE 2, H373, all of it", "H373", ["May cause damage to organs", LONG, "."]),
        ("STOT SE 2 H371 (dermal)", "H371", ["May cause damage to organs", "", " in contact with skin."]),
        ("STOT SE 2 H371", "H371", ["May cause damage to organs", "", "."]),
    ] {
        says(&format!("A; 20 %; {text}"), code, &words.concat());
    }
    // Organs and ways of other classes are not theirs.
    let plain = ["May cause damage to organs", LONG, "."].concat();
    for text in [
        "Acute Tox. 4 (oral) H302, STOT RE 2 H373",
        "STOT RE 2 H373, Acute Tox. 4 (oral) H302",
        "STOT SE 3, H335 (respiratory tract); STOT RE 2 H373",
        "STOT RE 2 H373; STOT SE 3, H336 (nervous system)",
        "STOT RE 2 H373 (oral, dermal, inhalation)",
        "STOT RE 2 H373 (repeated exposure)",
    ] {
        says_of(&format!("A; 19 %; {text}"), "H373", &plain);
    }
}

/// What irritates brings no organs, and category 3 has statements of its own.
#[test]
fn other_classes_take_no_organs_away_and_add_none() {
    let liver = ["May cause damage to organs (liver)", LONG, "."].concat();
    says_of("A; 20 %; STOT RE 2 H373 (liver)\nB; 20 %; Skin Irrit. 2 H315", "H373", &liver);
    says_of(
        "A; 20 %; STOT SE 1 H370; STOT SE 3 (narcotic effects), H336",
        "H370",
        "Causes damage to organs.",
    );
}

/// Among others.
#[track_caller]
fn says_of(text: &str, code: &str, words: &str) {
    let said = statements(&whole(text), false).hazards;
    assert!(said.contains(&(code, words.to_owned())), "{text}: {said:?}");
}

#[test]
fn organs_of_several_substances_are_put_together() {
    let may = |organs: &str, way: &str| ["May cause damage to organs", organs, LONG, way, "."].concat();
    let of = |one: &str, two: &str, words: &str| {
        for (first, second) in [(one, two), (two, one)] {
            says(&format!("A; {first}\nB; {second}"), "H373", words);
        }
    };
    let liver = "20 %; STOT RE 2 H373 (liver) (oral)";
    of(
        liver,
        "20 %; STOT RE 2 H373 (kidneys) (inhalation)",
        &may(" (kidneys, liver)", " if swallowed or if inhaled"),
    );
    of(liver, "20 %; STOT RE 2 H373 (kidneys)", &may(" (kidneys, liver)", ""));
    of(liver, "20 %; STOT RE 2 H373 (liver) (oral)", &may(" (liver)", " if swallowed"));
    // Those that are known are not all.
    of(liver, "20 %; STOT RE 2 H373 (oral)", &may("", " if swallowed"));
    of(liver, "20 %; STOT RE 2 H373", &may("", ""));
    // Of 9 % nothing is said (Table 3.9.4: 10 %); of what would be of category 1 from 1 % on.
    of(liver, "9 %; STOT RE 2 H373 (kidneys)", &may(" (liver)", " if swallowed"));
    of(liver, "1 %; STOT RE 1 H372 (kidneys) (oral)", &may(" (kidneys, liver)", " if swallowed"));
    // Through a share of the candle as well.
    let oil = ingredient(Exact::whole(10), lines("A; 15 %; STOT RE 1 H372 (liver)"));
    let said = statements(&mix(&[oil], true), false).hazards;
    assert_eq!(said, [("H373", may(" (liver)", ""))]);
}

/// What was read of it can be compared with the sheet.
#[test]
fn what_was_read_is_shown() {
    let shown = |text: &str| lines(text).remove(0).figures(Voice::default());
    assert_eq!(
        shown("A; 5 %; STOT RE 2 H373 (liver) (oral); Repr. 1B H360Fd"),
        ["STOT RE: liver, if swallowed", "H360Fd"]
    );
    assert_eq!(
        shown("A; 5 %; STOT SE 1 H370 (optic nerve); Repr. 2 H361f"),
        ["STOT SE: optic nerve", "H361f"]
    );
    assert_eq!(shown("A; 5 %; STOT RE 2 H373; Repr. 1B H360"), Vec::<String>::new());
}

/// What sheets write in brackets beside a class and is no organ (our own cases): a note of Annex VI, whose word the class is,
/// that nothing more is known.
#[test]
fn a_note_beside_a_class_is_no_organ() {
    let words = "May cause damage to organs through prolonged or repeated exposure.";
    for note in [
        "Note H",
        "self-classification",
        "self classification",
        "harmonised",
        "harmonized classification",
        "supplier's classification",
        "no data",
        "not known",
        "unknown",
        "all",
        "Annex VI",
        "minimum classification",
    ] {
        says(&format!("A; 20 %; STOT RE 2 H373 ({note})"), "H373", words);
        let with = "May cause damage to organs (liver) through prolonged or repeated exposure.";
        says(&format!("A; 20 %; STOT RE 2 H373 (liver) ({note})"), "H373", with);
    }
}
