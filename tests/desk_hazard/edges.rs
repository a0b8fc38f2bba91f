//! Where a rule takes one side or the other: cases worked out by hand with Annex I to Regulation (EC) No 1272/2008.

use super::{ingredient, lines, names, whole};
use potside::desk::hazard::{Ingredient, Mixed, findings, mix, remarks, statements};
use potside::quantity::{Exact, Voice};

/// By each route that something in it is toxic by: its name in the sum, the estimate, and how much of it is not known.
fn routes(mixed: &Mixed) -> Vec<(String, Exact)> {
    let shown = |ate| Voice::default().number(ate).replace('\u{202f}', "");
    mixed.acute.iter().map(|acute| (shown(acute.ate), acute.unknown)).collect()
}

fn is(ate: &str, unknown: i128) -> (String, Exact) {
    (ate.to_owned(), Exact::whole(unknown))
}

/// 3.1.3.6.2.3: what is not known is taken off only where it is more than 10 %.
#[test]
fn ten_percent_unknown_are_not_taken_off() {
    // 100 ÷ (90 ÷ 1800) = 2000; without the 11 %, 89 ÷ (89 ÷ 1800) = 1800.
    assert_eq!(routes(&whole("A; 10 %; no data\nB; 90 %; ATE oral 1800")), [is("2000.000", 10)]);
    assert_eq!(routes(&whole("A; 11 %; no data\nB; 89 %; ATE oral 1800")), [is("1800.000", 11)]);
}

/// What is known by one route is known by no other; a form of what is breathed in that is known tells of the usual one.
#[test]
fn what_is_known_of_a_substance_that_is_not_known_in_full() {
    let oral = "\nB; 80 %; ATE oral 1000";
    // 80 ÷ (80 ÷ 1000) = 1000.
    assert_eq!(routes(&whole(&["A; 20 %; LC50 vapour > 20; no data", oral].concat())), [is("1000.000", 20)]);
    assert_eq!(routes(&whole(&["A; 20 %; no data", oral].concat())), [is("1000.000", 20)]);
    // A category that only the GHS has, and “more than 2000”, are known: 100 ÷ (80 ÷ 1000) = 1250.
    assert_eq!(routes(&whole(&["A; 20 %; Acute Tox. 5 H303; no data", oral].concat())), [is("1250.000", 0)]);
    assert_eq!(routes(&whole(&["A; 20 %; LD50 oral > 2000; no data", oral].concat())), [is("1250.000", 0)]);
    // 100 ÷ (80 ÷ 2) = 2.5.
    let dust = "\nB; 80 %; ATE dust 2";
    assert_eq!(routes(&whole(&["A; 20 %; LC50 vapour > 20; no data", dust].concat())), [is("2.500", 0)]);
    assert_eq!(routes(&whole(&["A; 20 %; no data", dust].concat())), [is("2.000", 20)]);
}

/// Tables 3.1.1: as vapour 2 to 10 mg/L is category 3 and 10 to 20 category 4, as dust 0.5 to 1 and 1 to 5.
#[test]
fn of_the_forms_of_what_is_breathed_in_the_strictest_counts() {
    for text in ["A; 100 %; ATE vapour 15; ATE dust 0.9", "A; 100 %; ATE vapour 5; ATE dust 4"] {
        assert_eq!(names(&whole(text)), ["Acute Tox. 3 (H331)"], "{text}");
    }
    assert_eq!(names(&whole("A; 100 %; ATE vapour 15; ATE dust 4")), ["Acute Tox. 4 (H332)"]);
}

/// Table 1.1 and 4.1.3.1: an M-factor brings forward only what is very toxic to water.
#[test]
fn an_m_factor_is_for_what_is_very_toxic_to_water() {
    // The 0.5 % are below the 1 % from which on they count: 4.6 % are not 5 %, and ten times them irritate.
    let skin = "A; 0.5 %; Skin Corr. 1 H314; Aquatic Chronic 1 H410; M=10\nB; 4.6 %; Skin Corr. 1 H314";
    assert_eq!(names(&whole(skin))[0], "Skin Irrit. 2 (H315)");
    let water = "A; 0.5 %; Aquatic Chronic 2 H411; M=10\nB; 24.6 %; Aquatic Chronic 2 H411";
    assert_eq!(names(&whole(water)), ["Aquatic Chronic 3 (H412)"]);
}

/// Which formula was taken, and what is not known, stand under Why.
#[test]
fn an_estimate_says_what_was_taken_off() {
    for (percent, relation) in [(10, "100 ÷ Σ (% ÷ ATE)"), (11, "(100 − % unknown) ÷ Σ (% ÷ ATE)")] {
        let found = findings(
            &whole(&format!("A; {percent} %; no data\nB; {} %; ATE oral 1800", 100 - percent)),
            Voice::default(),
        );
        assert_eq!(found[0].why.relation, relation);
        let unknown = found[0].why.values.iter().find(|v| v.name == "unknown by this route");
        assert_eq!(unknown.map(|v| v.shown.clone()), Some(format!("{percent}.00 %")));
    }
    let known = findings(&whole("B; 90 %; ATE oral 1800"), Voice::default());
    assert!(known[0].why.values.iter().all(|v| v.name != "unknown by this route"), "{known:?}");
}

/// Where there is nothing to be read with the result, nothing is said.
#[test]
fn nothing_is_said_of_what_is_known_and_harmless() {
    let mixed = whole("A; 5 %; Skin Irrit. 2 H315");
    assert_eq!(remarks(&mixed, Voice::default()), Vec::<String>::new());
    assert!(statements(&mixed, false).is_empty());
    assert!(!statements(&whole("A; 10 %; Skin Irrit. 2 H315"), false).is_empty());
    // A line that names an allergen is something to bear.
    assert!(!statements(&whole("A; 0.5 %; Skin Sens. 1 H317"), false).is_empty());
}

fn part(name: &str, percent: i128, sheet: Option<&str>, harmless: bool) -> Ingredient {
    Ingredient { name: name.to_owned(), percent: Exact::whole(percent), sheet: sheet.map(lines), harmless }
}

/// What may hurt and has no sheet is a substance of which nothing is known, as much as there is of it.
#[test]
fn a_fragrance_without_a_sheet_is_not_known() {
    let mixed = mix(&[part("Fig leaf", 8, None, false), part("Plain wax", 92, None, true)], true);
    let found: Vec<_> = mixed.substances.iter().map(|s| (s.name.as_str(), s.percent, s.unknown)).collect();
    assert_eq!(found, [("Fig leaf", Exact::whole(8), true)]);
    assert!(mixed.is_open());
    assert!(!mix(&[part("Plain wax", 92, None, true)], true).is_open());
}

/// Of what may hurt a share of zero is one that is not known; without data, wax is taken to do no harm.
#[test]
fn a_share_that_is_not_known_leaves_it_open() {
    let sheet = Some("A; 50 %; Skin Irrit. 2 H315");
    for (one, open) in [
        (part("Oil", 0, sheet, false), true),
        (part("Oil", 0, None, false), true),
        (part("Wax", 0, sheet, true), true),
        (part("Wax", 0, None, true), false),
        (part("Oil", 1, sheet, false), false),
    ] {
        let named = one.name.clone();
        let mixed = mix(&[one], true);
        assert_eq!(mixed.no_share, if open { vec![named] } else { vec![] });
        assert_eq!(mixed.is_open(), open);
        let said = remarks(&mixed, Voice::default()).join("\n");
        assert_eq!(said.contains("does not tell how much"), open, "{said}");
    }
    let known = ingredient(Exact::whole(50), lines("A; 50 %; Skin Irrit. 2 H315"));
    assert!(mix(&[known, part("Oil", 0, sheet, false)], true).is_open());
}
