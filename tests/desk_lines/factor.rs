//! M-factors that stand beside a class, each with its own. Our own cases.

use super::{classed, figures, reads};

#[test]
fn the_class_before_it_tells_which_it_is() {
    let own = ["M acute 1", "M chronic 10"];
    for line in [
        "A; 10 %; Aquatic Acute 1 H400 (M=1), Aquatic Chronic 1 H410 (M=10)",
        "A; 10 %; Aquatic Acute 1 (M=1), Aquatic Chronic 1 (M=10)",
        "A; 10 %; H400 (M=1), H410 (M=10)",
        "A; 10 %; Aquatic Chronic 1 H410 (M=10), Aquatic Acute 1 H400 (M=1)",
        "A; 10 %; Aquatic Chronic 1 H410 [M=10]; Aquatic Acute 1 H400, M: 1",
    ] {
        figures(line, &own);
        // 25 % of it: acute 2.5, chronic 10 × 2.5 = 25 (Tables 4.1.1 and 4.1.2).
        assert_eq!(classed(line, 25), ["Aquatic Chronic 1 (H410)"], "{line}");
    }
}

/// What it says itself counts before the class that stands before it.
#[test]
fn a_factor_that_tells_which_it_is_needs_no_class() {
    figures("A; 10 %; Aquatic Chronic 1 H410; Aquatic Acute 1 H400 (M chronic 10)", &["M chronic 10"]);
    figures("A; 10 %; Aquatic Acute 1 H400; Aquatic Chronic 1 H410 (M acute 10)", &["M acute 10"]);
    // After both, it is of both.
    figures("A; 10 %; Aquatic Acute 1 H400, Aquatic Chronic 1 H410, M=10", &["M acute 10", "M chronic 10"]);
}

#[test]
fn what_follows_a_factor_is_read() {
    reads(
        "A; 20 %; Aquatic Acute 1 H400 (M=10), Skin Irrit. 2 H315",
        "20",
        &["Aquatic Acute 1 (H400)", "Skin Irrit. 2 (H315)"],
    );
    reads("A; 20 %; Aquatic Acute 1 H400 (M=10)", "20", &["Aquatic Acute 1 (H400)"]);
}
