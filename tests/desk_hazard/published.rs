//! Published examples: worked ones of guidance and slides, and the tables of another law.

use super::{classed, ingredient, lines, names, whole};
use potside::desk::hazard::{Signal, mix, remarks, statements};
use potside::quantity::{Exact, Voice};

/// 29 CFR 1910.1200, Appendix A, Tables A.2.3 and A.3.3 (2024), their sums and note a: one that is corrosive to the skin and
/// damages the eyes counts once.
#[test]
fn skin_and_eyes_as_the_tables_of_another_law() {
    classed("A; 2.9 %; Skin Corr. 1 H314; Eye Dam. 1 H318", "Skin Irrit. 2 (H315); Eye Irrit. 2 (H319)");
    classed(
        "A; 1.5 %; Skin Corr. 1 H314\nB; 1.4 %; Eye Dam. 1 H318",
        "Skin Irrit. 2 (H315); Eye Irrit. 2 (H319)",
    );
    classed(
        "A; 1.5 %; Skin Corr. 1 H314\nB; 1.5 %; Eye Dam. 1 H318",
        "Skin Irrit. 2 (H315); Eye Dam. 1 (H318)",
    );
    // The step from 1 % to below 5 % (skin) and below 3 % (eyes) is that of ten times the strictest.
    classed("A; 1 %; Skin Corr. 1 H314", "Skin Irrit. 2 (H315); Eye Irrit. 2 (H319)");
    classed("A; 4.99 %; Skin Corr. 1 H314", "Skin Irrit. 2 (H315); Eye Dam. 1 (H318)");
    // 10 × 1 + 0 is enough; 1 % of an irritant alone is not; ten times what is below 1 % is not looked at.
    classed("A; 1 %; Eye Dam. 1 H318", "Eye Irrit. 2 (H319)");
    classed("A; 0.9 %; Eye Dam. 1 H318\nB; 9.9 %; Eye Irrit. 2 H319", "");
    classed("A; 9.9 %; Eye Irrit. 2 H319", "");
}

/// ECHA helpdesk slides, 2012 (reference values 4b.5): 0.8 % of an irritant is below the cut-off of 1 %.
#[test]
fn what_is_below_the_cut_off_does_not_count() {
    let twelve = |each: &str| {
        (0..12).map(|n| format!("A{n}; {each} %; Skin Irrit. 2 H315")).collect::<Vec<_>>().join("\n")
    };
    classed(&twelve("0.9"), "");
    classed(&twelve("1"), "Skin Irrit. 2 (H315)");
    classed("A; 0.8 %; Skin Irrit. 2 H315", "");
    classed("A; 1.8 %; Skin Irrit. 2 H315", "");
}

/// The UN's worked examples and those of the reference values, section 4b.
#[test]
fn published_examples() {
    // 3.1(d), 2008/23e: ATE 873 mg/kg by mouth; 6.6 mg/L as vapour, with 11 % unknown.
    let found = whole(
        "A; 26 %; ATE oral 2737; ATE vapour 11\nB; 23 %; ATE oral 4500; ATE vapour 19\n\
         C; 11 %; ATE oral > 5000; no data\nD; 40 %; ATE oral 400; ATE vapour 4",
    );
    let ates: Vec<(String, Option<u8>)> =
        found.acute.iter().map(|a| (Voice::default().number(a.ate), a.category)).collect();
    assert_eq!(ates, [("872.520".to_owned(), Some(4)), ("6.557".to_owned(), Some(3))]);
    assert_eq!(found.acute[1].unknown, Exact::whole(11));
    let said = statements(&found, false);
    assert_eq!(said.signal, Signal::Danger);
    assert_eq!(said.hazards.iter().map(|h| h.0).collect::<Vec<_>>(), ["H302", "H331"]);
    assert!(
        remarks(&found, Voice::default())
            .iter()
            .any(|r| r.starts_with("11.00 % of the mixture consists of ing"))
    );

    // 3.1(a), 2008/23e: 100 ÷ (16 ÷ 1600 + 4 ÷ 200 + 80 ÷ 3450) is 1880 mg/kg; of a range of doses its lower end.
    let found = whole("A; 16 %; LD50 oral 1600\nB; 4 %; LD50 oral 200\nC; 80 %; LD50 oral 3450");
    assert_eq!(
        (Voice::default().number(found.acute[0].ate).as_str(), found.acute[0].category),
        ("1880.109", Some(4))
    );
    assert_eq!(statements(&found, false).hazards.len(), 1);

    // 3.1(c), 2008/23e: 100 ÷ (4 ÷ 1737) is 43425 mg/kg, which is not classed; what is above 5000, or above 2000 without a
    // sign of harm, is left out.
    let found = whole(
        "A; 4 %; Acute Tox. 4 H302; LD50 oral 1737\nB; 5 %; LD50 oral > 5000\nC; 5 %; LD50 oral 5400\nD; 86 %; LD50 oral > 2000",
    );
    assert_eq!((found.acute[0].ate, found.acute[0].category), (Exact::whole(43425), None));
    assert!(found.classes.is_empty() && found.acute[0].unknown.is_zero());

    // 3.2.3.3(a), 2008/23e: an acid that adding up would only make an irritant.
    let acid = "A; 4 %; Skin Corr. 1 H314; pH 1.8\nB; 5 %; Skin Irrit. 2 H315\nC; 5 %; Skin Irrit. 3\nD; 86 %; no data";
    assert_eq!(names(&whole(acid))[0], "Skin Corr. 1 (H314)");
    assert_eq!(names(&whole(&acid.replace("; pH 1.8", "")))[0], "Skin Irrit. 2 (H315)");

    // 4.1(a), 2012/25e: 0.1, 2.0, 20 and 26.01 against 25.
    let water = "A; 0.01 %; Aquatic Acute 1 H400; Aquatic Chronic 1 H410; M=10\nB; 1.0 %; Aquatic Chronic 2 H411\n\
                 C; 25.0 %; Aquatic Chronic 4 H413\nD; 73.99 %; not classified";
    let found = whole(water);
    let sums: Vec<String> = found.sums.iter().map(|s| Voice::default().number(s.value)).collect();
    assert_eq!(sums, ["0.100", "0.100", "2.000", "20.000", "26.010"]);
    classed(water, "Aquatic Chronic 4 (H413)");

    // NZ EPA User Guide, Table 19.5: 100 × 0.05 + 1 = 6, and 10 × 6 + 5 = 65.
    let guide = "A; 0.05 %; Aquatic Chronic 1 H410; M=100\nB; 1 %; Aquatic Chronic 1 H410; M=1\n\
                 C; 5 %; Aquatic Chronic 2 H411\nD; 40 %; Aquatic Chronic 3 H412";
    let sums: Vec<String> = whole(guide).sums.iter().map(|s| Voice::default().number(s.value)).collect();
    assert_eq!(sums[..2], ["6.000", "65.000"]);
    classed(guide, "Aquatic Chronic 2 (H411)");

    // Dashöfer, 2014: a range counts at its upper end.
    assert_eq!(names(&whole("A; 3 - 7 %; Skin Corr. 1 H314"))[0], "Skin Corr. 1 (H314)");
    assert_eq!(names(&whole("A; 4 %; Skin Corr. 1 H314"))[0], "Skin Irrit. 2 (H315)");
}

/// The Guidance on the Application of the CLP Criteria, version 6.0 (January 2024), 3.1.5.3, as a public repository's tests give
/// its numbers. Example 11: most of it unknown, and a little of something very toxic counts below 1 %:
/// (100 − 92) ÷ (4 ÷ 125 + 3 ÷ 1500 + 0.2 ÷ 10) is 148.1 mg/kg. Example 12a: dust, 100 ÷ (6 ÷ 1.5 + 11 ÷ 0.6 + 40 ÷ 1.5) is
/// 2.04 mg/L.
#[test]
fn examples_of_the_guidance() {
    let found = whole(
        "A; 4 %; ATE oral 125\nB; 92 %; no data\nC; 3 %; ATE oral 1500\nD; 0.9 %; no data\nE; 0.2 %; ATE oral 10",
    );
    let acute = &found.acute[0];
    assert_eq!((Voice::default().number(acute.ate).as_str(), acute.category), ("148.148", Some(3)));
    assert_eq!(acute.unknown, Exact::whole(92));
    classed(
        "A; 4 %; ATE oral 125\nB; 92 %; no data\nC; 3 %; ATE oral 1500\nE; 0.2 %; ATE oral 10",
        "Acute Tox. 3 (H301)",
    );

    let found =
        whole("A; 6 %; ATE dust 1.5\nB; 11 %; ATE dust 0.6\nC; 40 %; ATE dust 1.5\nD; 43 %; not classified");
    let acute = &found.acute[0];
    assert_eq!((Voice::default().number(acute.ate).as_str(), acute.category), ("2.041", Some(4)));
}

/// Reference values 4b.7: through the share in the candle.
#[test]
fn a_fragrance_in_a_candle() {
    let candle = |percent, text: &str| mix(&[ingredient(Exact::whole(percent), lines(text))], true);
    let little = candle(6, "Linalool; 78-70-6; 12 %; Skin Sens. 1B H317");
    assert!(little.classes.is_empty());
    assert_eq!(
        statements(&little, false).further,
        ["EUH208: Contains Linalool. May produce an allergic reaction."]
    );
    let more = candle(
        10,
        "Linalool; 78-70-6; 12 %; Skin Sens. 1B H317\nCitral; 5392-40-5; 1.5 %; Skin Sens. 1B H317",
    );
    assert_eq!(names(&more), ["Skin Sens. 1 (H317)"]);
    let said = statements(&more, false);
    // Classed, so no EUH208: what would stand in it is named.
    assert_eq!((said.further.len(), said.contains), (0, vec!["Linalool".to_owned(), "Citral".to_owned()]));
    assert_eq!(names(&candle(8, "A; 1.25 %; Skin Sens. 1A H317")), ["Skin Sens. 1A (H317)"]);
    // The candle is solid, the fragrance is not.
    let oil = "A; 100 %; Asp. Tox. 1 H304";
    assert!(candle(100, oil).classes.is_empty());
    classed(oil, "Asp. Tox. 1 (H304)");
}
