//! Each limit just below and at it.

use super::{classed, ingredient, lines, names, whole};
use potside::desk::hazard::{mix, statements};
use potside::quantity::Exact;

/// Reference values, section 4a. Each limit is tried just below and at it.
#[test]
fn limits_one_by_one() {
    let mut wrong = Vec::new();
    for (below, at, class, gives) in [
        // Skin, Table 3.2.3: corrosive 5 % (and 1 % for irritation), irritant 10 %; and 3.2.4. As 29 CFR 1910.1200, Appendix A,
        // Tables A.2.3 and A.2.4 (2024).
        ("4.99", "5", "Skin Corr. 1B H314", "Skin Corr. 1 (H314)"),
        ("9.99", "10", "Skin Irrit. 2 H315", "Skin Irrit. 2 (H315)"),
        ("0.99", "1", "Skin Corr. 1 H314; pH 1.9", "Skin Corr. 1 (H314)"),
        ("2.99", "3", "Skin Irrit. 2 H315; not additive", "Skin Irrit. 2 (H315)"),
        // Eyes, Table 3.3.3; as Table A.3.3 there.
        ("2.99", "3", "Eye Dam. 1 H318", "Eye Dam. 1 (H318)"),
        ("9.99", "10", "Eye Irrit. 2 H319", "Eye Irrit. 2 (H319)"),
        // Table 3.3.4; as Table A.3.4 there.
        ("0.99", "1", "Eye Dam. 1 H318; not additive", "Eye Dam. 1 (H318)"),
        ("2.99", "3", "Eye Irrit. 2 H319; not additive", "Eye Irrit. 2 (H319)"),
        // Allergy, Table 3.4.5.
        ("0.99", "1", "Skin Sens. 1 H317", "Skin Sens. 1 (H317)"),
        ("0.99", "1", "Skin Sens. 1B H317", "Skin Sens. 1 (H317)"),
        ("0.099", "0.1", "Skin Sens. 1A H317", "Skin Sens. 1A (H317)"),
        ("0.99", "1", "Resp. Sens. 1 H334", "Resp. Sens. 1 (H334)"),
        ("0.99", "1", "Resp. Sens. 1B H334", "Resp. Sens. 1 (H334)"),
        ("0.099", "0.1", "Resp. Sens. 1A H334", "Resp. Sens. 1A (H334)"),
        // CMR, Tables 3.5.2, 3.6.2 and 3.7.2; the same in TRGS 201 (2017), 2.2.5.
        ("0.099", "0.1", "Muta. 1A H340", "Muta. 1A (H340)"),
        ("0.099", "0.1", "Muta. 1B H340", "Muta. 1B (H340)"),
        ("0.99", "1", "Muta. 2 H341", "Muta. 2 (H341)"),
        ("0.099", "0.1", "Carc. 1A H350", "Carc. 1A (H350)"),
        ("0.099", "0.1", "Carc. 1B H350", "Carc. 1B (H350)"),
        ("0.99", "1", "Carc. 2 H351", "Carc. 2 (H351)"),
        ("0.299", "0.3", "Repr. 1A H360", "Repr. 1A (H360)"),
        ("0.299", "0.3", "Repr. 1B H360", "Repr. 1B (H360)"),
        ("2.99", "3", "Repr. 2 H361", "Repr. 2 (H361)"),
        ("0.299", "0.3", "Lact. H362", "Lact. (H362)"),
        // Organs, Tables 3.8.3 and 3.9.4 and 3.8.3.4.5; the same in TRGS 201 (2017), 2.2.6.
        ("9.99", "10", "STOT SE 1 H370", "STOT SE 1 (H370)"),
        ("0.99", "1", "STOT SE 1 H370", "STOT SE 2 (H371)"),
        ("9.99", "10", "STOT SE 2 H371", "STOT SE 2 (H371)"),
        ("9.99", "10", "STOT RE 1 H372", "STOT RE 1 (H372)"),
        ("0.99", "1", "STOT RE 1 H372", "STOT RE 2 (H373)"),
        ("9.99", "10", "STOT RE 2 H373", "STOT RE 2 (H373)"),
        ("19.99", "20", "STOT SE 3 H335", "STOT SE 3 (H335)"),
        ("19.99", "20", "STOT SE 3 H336", "STOT SE 3 (H336)"),
        // Aspiration, 3.10.3.3.1.2.
        ("9.99", "10", "Asp. Tox. 1 H304", "Asp. Tox. 1 (H304)"),
        // Water, Tables 4.1.1 and 4.1.2.
        ("24.99", "25", "Aquatic Acute 1 H400", "Aquatic Acute 1 (H400)"),
        ("2.49", "2.5", "Aquatic Acute 1 H400; M=10", "Aquatic Acute 1 (H400)"),
        ("24.99", "25", "Aquatic Chronic 4 H413", "Aquatic Chronic 4 (H413)"),
        // The ozone layer, Table 5.1.
        ("0.099", "0.1", "Ozone 1 H420", "Ozone 1 (H420)"),
        // Regulation (EU) 2023/707: Tables 3.11.2 and 4.2.2, 4.3.3.1 and 4.4.3.1.
        ("0.099", "0.1", "ED HH 1; EUH380", "ED HH 1 (EUH380)"),
        ("0.99", "1", "ED HH 2; EUH381", "ED HH 2 (EUH381)"),
        ("0.099", "0.1", "ED ENV 1; EUH430", "ED ENV 1 (EUH430)"),
        ("0.99", "1", "ED ENV 2; EUH431", "ED ENV 2 (EUH431)"),
        ("0.099", "0.1", "PBT; EUH440", "PBT (EUH440)"),
        ("0.099", "0.1", "vPvB; EUH441", "vPvB (EUH441)"),
        ("0.099", "0.1", "PMT; EUH450", "PMT (EUH450)"),
        ("0.099", "0.1", "vPvM; EUH451", "vPvM (EUH451)"),
    ] {
        for (share, reached) in [(below, false), (at, true)] {
            let found = names(&whole(&format!("A; {share} %; {class}")));
            if found.contains(&gives.to_owned()) != reached {
                wrong.push(format!("{share} % {class}: {found:?}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// One substance in two fragrances is one substance: its shares add up. Two sensitisers never do (Annex I, 3.4.3.3).
#[test]
fn several_fragrances_in_a_blend() {
    let four = Exact::whole(4);
    let blend = |one: &str, two: &str| {
        let wax = ingredient(Exact::whole(92), Vec::new());
        names(&mix(&[wax, ingredient(four, lines(one)), ingredient(four, lines(two))], true)).join("; ")
    };
    // 4 % × 15 % twice is 1.2 %, by either fragrance alone 0.6 %.
    let linalool = "Linalool; 78-70-6; 15 %; Skin Sens. 1B H317";
    assert_eq!(blend(linalool, linalool), "Skin Sens. 1 (H317)");
    assert_eq!(blend(linalool, "Other; 15 %"), "");
    assert_eq!(blend(linalool, "Limonene; 5989-27-5; 15 %; Skin Sens. 1B H317"), "");
    // Each M-factor stays with its class: twice 2.6 % × 10 is 52, and of chronic 5.2; by 10 it is Chronic 2.
    let both = "A; 65 %; Aquatic Acute 1 H400 (M=10); Aquatic Chronic 1 H410 (M=1)";
    assert_eq!(blend(both, both), "Aquatic Acute 1 (H400); Aquatic Chronic 2 (H411)");
    // What adds up does so over both: 4 % × 65 % twice is 5.2 % of 25 % ÷ M.
    let toxic = |name: &str| [name, "; 65 %; Aquatic Acute 1 H400; M=10"].concat();
    assert_eq!(blend(&toxic("A"), &toxic("B")), "Aquatic Acute 1 (H400)");
    assert_eq!(blend(&toxic("A"), "B; 1 %"), "Aquatic Acute 1 (H400)");
    let half = |name: &str| [name, "; 40 %; Aquatic Acute 1 H400; M=10"].concat();
    assert_eq!(
        (blend(&half("A"), "B; 1 %"), blend(&half("A"), &half("B"))),
        (String::new(), "Aquatic Acute 1 (H400)".to_owned())
    );
}

/// The steps between the categories: Tables 3.2.3, 3.3.3, 3.8.3, 3.9.4 and 4.1.2.
#[test]
fn a_stricter_class_in_a_small_share_gives_a_milder_one() {
    for (text, classes) in [
        ("A; 1 %; Skin Corr. 1 H314", "Skin Irrit. 2 (H315); Eye Irrit. 2 (H319)"),
        ("A; 0.99 %; Skin Corr. 1 H314", ""),
        ("A; 1 %; Eye Dam. 1 H318", "Eye Irrit. 2 (H319)"),
        ("A; 2.99 %; Eye Dam. 1 H318", "Eye Irrit. 2 (H319)"),
        ("A; 1 %; STOT SE 1 H370", "STOT SE 2 (H371)"),
        ("A; 10 %; STOT SE 1 H370", "STOT SE 1 (H370)"),
        ("A; 1 %; STOT RE 1 H372", "STOT RE 2 (H373)"),
        ("A; 25 %; Aquatic Chronic 1 H410", "Aquatic Chronic 1 (H410)"),
        ("A; 2.5 %; Aquatic Chronic 1 H410", "Aquatic Chronic 2 (H411)"),
        ("A; 0.25 %; Aquatic Chronic 1 H410", "Aquatic Chronic 3 (H412)"),
        ("A; 0.249 %; Aquatic Chronic 1 H410", ""),
        ("A; 25 %; Aquatic Chronic 2 H411", "Aquatic Chronic 2 (H411)"),
        ("A; 2.5 %; Aquatic Chronic 2 H411", "Aquatic Chronic 3 (H412)"),
        ("A; 25 %; Aquatic Chronic 3 H412", "Aquatic Chronic 3 (H412)"),
        // 0.1 % and 0.01 % are the least that counts, by the M-factor.
        ("A; 0.099 %; Aquatic Chronic 1 H410; M=1; B; 1 %", ""),
        ("A; 0.01 %; Aquatic Chronic 1 H410; M chronic 100", "Aquatic Chronic 3 (H412)"),
        ("A; 0.0009 %; Aquatic Chronic 1 H410; M chronic 100", ""),
    ] {
        let text = text.replace("; B; 1 %", "\nB; 1 %");
        classed(&text, classes);
    }
}

#[test]
fn irritants_add_up_and_sensitisers_never_do() {
    classed("A; 5 %; Skin Irrit. 2 H315\nB; 5 %; Skin Irrit. 2 H315", "Skin Irrit. 2 (H315)");
    classed("A; 0.9 %; Skin Sens. 1 H317\nB; 0.9 %; Skin Sens. 1B H317\nC; 0.9 %; H317", "");
    classed("A; 2 %; Eye Dam. 1 H318\nB; 1 %; Skin Corr. 1 H314", "Skin Irrit. 2 (H315); Eye Dam. 1 (H318)");
    classed("A; 10 %; STOT SE 3 H335\nB; 10 %; STOT SE 3 H336", "");
}

/// Table 3.4.6: 0.1 %, 0.01 % for 1A; and a tenth of a specific limit (Annex II, 2.10), where that is less.
#[test]
fn allergens_are_named_from_their_own_limit() {
    for (text, named) in [
        ("A; 0.099 %; Skin Sens. 1 H317", false),
        ("A; 0.1 %; Skin Sens. 1 H317", true),
        ("A; 0.0099 %; Skin Sens. 1A H317", false),
        ("A; 0.01 %; Skin Sens. 1A H317", true),
        ("A; 0.004 %; Skin Sens. 1 H317; Skin Sens. 1 H317 >= 0.05 %", false),
        ("A; 0.005 %; Skin Sens. 1 H317; Skin Sens. 1 H317 >= 0.05 %", true),
        ("A; 0.049 %; Skin Sens. 1 H317; Skin Sens. 1 H317 >= 0.5 %", false),
        ("A; 0.05 %; Skin Sens. 1 H317; Skin Sens. 1 H317 >= 0.5 %", true),
        ("A; 0.1 %; Skin Sens. 1 H317; Skin Sens. 1 H317 >= 5 %", true),
        ("A; 0.1 %; Resp. Sens. 1B H334", true),
    ] {
        assert_eq!(!statements(&whole(text), false).further.is_empty(), named, "{text}");
    }
}

#[test]
fn a_specific_limit_counts_instead_of_the_general_one() {
    classed("A; 0.5 %; Skin Sens. 1B H317; SCL Skin Sens. 1B ≥ 0.5 %", "Skin Sens. 1 (H317)");
    classed("A; 4 %; Skin Irrit. 2; H315: C ≥ 5 %", "");
    classed("A; 5 %; Skin Irrit. 2; H315: C ≥ 5 %", "Skin Irrit. 2 (H315)");
    // Half of its own limit and half of the general one make a whole (Guidance on CLP, additivity with specific limits).
    classed("A; 2.5 %; Skin Irrit. 2; H315: C ≥ 5 %\nB; 5 %; Skin Irrit. 2 H315", "Skin Irrit. 2 (H315)");
    classed("A; 12 %; Skin Irrit. 2; H315: 20 % ≤ C < 50 %", "");
    classed(
        "A; 1 %; Skin Corr. 1B; H314: C ≥ 10 %; Skin Irrit. 2; H315: 5 % ≤ C < 10 %",
        "Eye Irrit. 2 (H319)",
    );
}

/// Converted point values (Table 3.1.2) and bounds (Table 3.1.1).
#[test]
fn acute_toxicity_by_category() {
    for (text, classes) in [
        ("A; 25 %; Acute Tox. 4 H302", "Acute Tox. 4 (H302)"),
        ("A; 24.9 %; Acute Tox. 4 H302", ""),
        ("A; 5 %; Acute Tox. 3 H301", "Acute Tox. 4 (H302)"),
        ("A; 100 %; Acute Tox. 3 (dermal)", "Acute Tox. 3 (H311)"),
        ("A; 100 %; Acute Tox. 4 (vapour)", "Acute Tox. 4 (H332)"),
        ("A; 50 %; Acute Tox. 4 (vapour)", ""),
        ("A; 50 %; Acute Tox. 4 H332", "Acute Tox. 4 (H332)"),
        ("A; 25 %; Acute Tox. 4; H302; H312; ATE oral 1800", ""),
        // The point value of category 2 is the bound of category 1, so undiluted it comes out stricter.
        ("A; 100 %; Acute Tox. 2 H300", "Acute Tox. 1 (H300)"),
        ("A; 99 %; Acute Tox. 2 H300", "Acute Tox. 2 (H300)"),
        ("A; 100 %; ATE oral 2000", "Acute Tox. 4 (H302)"),
        ("A; 100 %; ATE oral 2001", ""),
    ] {
        // 50 % of 11 mg/L comes to 22 mg/L as vapour; 50 % of 1.5 mg/L to 3 mg/L as dust.
        classed(text, classes);
    }
}

/// Cut-offs of Annex I, Table 1.1: categories 1 to 3 count from 0.1 %. By hand: 0.5 % of 0.5 mg/kg (Table 3.1.2) comes to
/// 100 mg/kg, between 50 and 300.
#[test]
fn a_little_of_what_is_very_toxic_counts() {
    classed("A; 0.5 %; Acute Tox. 1 H300", "Acute Tox. 3 (H301)");
    classed("A; 0.09 %; Acute Tox. 1 H300", "");
}
