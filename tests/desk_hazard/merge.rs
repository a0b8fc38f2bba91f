//! One substance met on several lines, of one sheet or of several: what becomes of each thing that they say.

use super::{lines, names, whole};
use potside::desk::hazard::{Ingredient, Mixed, mix, remarks};
use potside::quantity::{Exact, Voice};

/// Two fragrances of these lines, half and half, in both orders.
#[track_caller]
fn both_ways(one: &str, two: &str, holds: impl Fn(&Mixed) -> bool) {
    let oil = |text: &str| Ingredient {
        name: "Oil".into(),
        percent: Exact::whole(50),
        sheet: Some(lines(text)),
        harmless: false,
    };
    for both in [[oil(one), oil(two)], [oil(two), oil(one)]] {
        let mixed = mix(&both, true);
        assert!(holds(&mixed), "{one} and {two}: {mixed:?}");
    }
}

fn told(mixed: &Mixed) -> Vec<(&str, &str, &str, Exact)> {
    mixed.substances.iter().map(|s| (s.name.as_str(), s.cas.as_str(), s.ec.as_str(), s.percent)).collect()
}

/// By number, and by name where one has no number. 0.6 % twice are more than 1 % (Annex I, Table 3.4.5).
#[test]
fn what_is_one_substance() {
    let (cas, ec) = ("78-70-6", "201-134-4");
    let one = [("Linalool", cas, "", Exact::ratio(6, 10))];
    both_ways("Linalool; 78-70-6; 0.6 %", "LINALOOL; 0.6 %", |m| {
        m.substances.len() == 1 && told(m)[0].1 == cas
    });
    both_ways("Linalool; 78-70-6; 0.6 %", "Linalol; 78-70-6; 0.6 %", |m| {
        told(m) == [("Linalol", cas, "", Exact::ratio(6, 10))]
    });
    both_ways("Linalool; 78-70-6; 0.6 %", "Linalool; 0.6 %", |m| told(m) == one);
    // By its EC number it is one with what has no CAS number, and has both then.
    both_ways("Linalool; 78-70-6; 201-134-4; 0.6 %", "Licareol; 201-134-4; 0.6 %", |m| {
        told(m) == [("Licareol", cas, ec, Exact::ratio(6, 10))]
    });
    // Two CAS numbers of one EC number: the first in order stands.
    both_ways("Linalool; 126-91-0; 201-134-4; 0.6 %", "Linalool; 78-70-6; 201-134-4; 0.6 %", |m| {
        told(m) == [("Linalool", "126-91-0", ec, Exact::ratio(6, 10))]
    });
    // One name for two numbers is two substances.
    both_ways("Linalool; 126-91-0; 0.6 %", "Linalool; 78-70-6; 0.6 %", |m| m.substances.len() == 2);
    let allergen = "Skin Sens. 1B H317";
    assert_eq!(
        names(&whole(&format!("Linalool; 78-70-6; 0.6 %; {allergen}\nlinalool; 0.6 %; {allergen}"))),
        ["Skin Sens. 1 (H317)"]
    );
}

#[test]
fn what_is_said_of_one_line_holds_for_both() {
    both_ways("A; 1 %; no data", "A; 1 %; not classified", |m| m.is_open() && m.substances[0].unknown);
    // 1 % of an acid that stands apart (Table 3.2.4): by adding up it were none.
    both_ways("A; 1 %; Skin Corr. 1 H314; pH 1", "A; 1 %; Skin Corr. 1 H314", |m| {
        names(m)[0] == "Skin Corr. 1 (H314)"
    });
    both_ways("A; 1 %; Flam. Liq. 3 H226", "A; 1 %; Flam. Liq. 3 H226; EUH066", |m| {
        let said = remarks(m, Voice::default()).join("\n");
        said.matches("H226").count() == 1 && said.contains("euh066")
    });
    both_ways("A; 1 %; Flam. Liq. 3 H226", "A; 1 %; H317", |m| {
        remarks(m, Voice::default()).join("\n").contains("H226")
    });
}

/// A limit for category 1 is none for category 2: 4 % are less than the one and more than the 3 % of Table 3.7.2.
#[test]
fn a_limit_is_of_its_category() {
    assert_eq!(names(&whole("A; 4 %; Repr. 1B H360 ≥ 5 %; Repr. 2 H361")), ["Repr. 2 (H361)"]);
    // 1, 1A and 1B are one there.
    assert_eq!(
        names(&whole("A; 0.6 %; Skin Sens. 1B H317; SCL Skin Sens. 1 H317 ≥ 0.5 %")),
        ["Skin Sens. 1 (H317)"]
    );
}

/// A class on the skin tells no form of one that is breathed in, which counts as dust: 50 % of 1.5 mg/L come to 3.
#[test]
fn a_route_is_no_form() {
    assert_eq!(
        names(&whole("A; 50 %; Acute Tox. 4 (dermal), H312; Acute Tox. 4, H332")),
        ["Acute Tox. 4 (H332)"]
    );
}
