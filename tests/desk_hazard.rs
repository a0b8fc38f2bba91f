//! Hazards of a mixture: the limits of Annex I to Regulation (EC) No 1272/2008 one by one, published worked examples,
//! and what must hold whatever the lines.

use potside::desk::hazard::{
    Ingredient, Mixed, Signal, Substance, drops, findings, mix, read_lines, remarks, statements,
};
use potside::quantity::{Exact, Locale, Voice};
use proptest::prelude::*;

#[track_caller]
fn lines(text: &str) -> Vec<Substance> {
    let (substances, errors) = read_lines(text, Locale::Point);
    assert!(errors.is_empty(), "{text:?}: {errors:?}");
    substances
}

fn ingredient(percent: Exact, sheet: Vec<Substance>) -> Ingredient {
    Ingredient { name: "Fragrance".into(), percent, sheet: Some(sheet), harmless: false }
}

#[track_caller]
fn whole(text: &str) -> Mixed {
    mix(&[ingredient(Exact::whole(100), lines(text))], false)
}

fn names(mixed: &Mixed) -> Vec<String> {
    mixed.classes.iter().map(|class| class.say()).collect()
}

/// What the lines, taken as the whole mixture, are classed as: `Skin Irrit. 2 (H315)`, parted by `; `.
#[track_caller]
fn classed(text: &str, classes: &str) {
    assert_eq!(names(&whole(text)).join("; "), classes, "{text}");
}

/// Reference values, section 4a. Each limit is tried just below and at it.
#[test]
fn limits_one_by_one() {
    for (below, at, class, gives) in [
        // Skin, Table 3.2.3: corrosive 5 % (and 1 % for irritation), irritant 10 %.
        ("4.99", "5", "Skin Corr. 1B H314", "Skin Corr. 1 (H314)"),
        ("9.99", "10", "Skin Irrit. 2 H315", "Skin Irrit. 2 (H315)"),
        ("0.99", "1", "Skin Corr. 1 H314; pH 1.9", "Skin Corr. 1 (H314)"),
        ("2.99", "3", "Skin Irrit. 2 H315; not additive", "Skin Irrit. 2 (H315)"),
        // Eyes, Table 3.3.3 (from memory).
        ("2.99", "3", "Eye Dam. 1 H318", "Eye Dam. 1 (H318)"),
        ("9.99", "10", "Eye Irrit. 2 H319", "Eye Irrit. 2 (H319)"),
        // Allergy, Table 3.4.5 (from memory for the skin).
        ("0.99", "1", "Skin Sens. 1 H317", "Skin Sens. 1 (H317)"),
        ("0.99", "1", "Skin Sens. 1B H317", "Skin Sens. 1 (H317)"),
        ("0.099", "0.1", "Skin Sens. 1A H317", "Skin Sens. 1A (H317)"),
        ("0.99", "1", "Resp. Sens. 1 H334", "Resp. Sens. 1 (H334)"),
        ("0.099", "0.1", "Resp. Sens. 1A H334", "Resp. Sens. 1A (H334)"),
        // CMR, Tables 3.5.2, 3.6.2 and 3.7.2 (from memory).
        ("0.099", "0.1", "Muta. 1B H340", "Muta. 1B (H340)"),
        ("0.99", "1", "Muta. 2 H341", "Muta. 2 (H341)"),
        ("0.099", "0.1", "Carc. 1A H350", "Carc. 1A (H350)"),
        ("0.99", "1", "Carc. 2 H351", "Carc. 2 (H351)"),
        ("0.299", "0.3", "Repr. 1B H360", "Repr. 1B (H360)"),
        ("2.99", "3", "Repr. 2 H361", "Repr. 2 (H361)"),
        ("0.299", "0.3", "Lact. H362", "Lact. (H362)"),
        // Organs, Tables 3.8.2 and 3.9.4 and 3.8.3.4.5 (from memory).
        ("9.99", "10", "STOT SE 2 H371", "STOT SE 2 (H371)"),
        ("9.99", "10", "STOT RE 2 H373", "STOT RE 2 (H373)"),
        ("19.99", "20", "STOT SE 3 H335", "STOT SE 3 (H335)"),
        ("19.99", "20", "STOT SE 3 H336", "STOT SE 3 (H336)"),
        // Aspiration, 3.10.3.3.1.1.
        ("9.99", "10", "Asp. Tox. 1 H304", "Asp. Tox. 1 (H304)"),
        // Water, Tables 4.1.1 and 4.1.2.
        ("24.99", "25", "Aquatic Acute 1 H400", "Aquatic Acute 1 (H400)"),
        ("2.49", "2.5", "Aquatic Acute 1 H400; M=10", "Aquatic Acute 1 (H400)"),
        ("24.99", "25", "Aquatic Chronic 4 H413", "Aquatic Chronic 4 (H413)"),
        // Regulation (EU) 2023/707 (from memory).
        ("0.099", "0.1", "ED HH 1; EUH380", "ED HH 1 (EUH380)"),
        ("0.099", "0.1", "vPvB; EUH441", "vPvB (EUH441)"),
    ] {
        let less = names(&whole(&format!("A; {below} %; {class}")));
        assert!(!less.contains(&gives.to_owned()), "{below} % {class}: {less:?}");
        let found = names(&whole(&format!("A; {at} %; {class}")));
        assert!(found.contains(&gives.to_owned()), "{at} % {class}: {found:?}");
    }
}

/// The steps between the categories: Tables 3.2.3, 3.3.3, 3.8.2, 3.9.4 and 4.1.2.
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

/// Table 3.4.6 (from memory): 0.1 %, 0.01 % for 1A, a tenth of a specific limit below 0.1 %.
#[test]
fn allergens_are_named_from_their_own_limit() {
    for (text, named) in [
        ("A; 0.099 %; Skin Sens. 1 H317", false),
        ("A; 0.1 %; Skin Sens. 1 H317", true),
        ("A; 0.0099 %; Skin Sens. 1A H317", false),
        ("A; 0.01 %; Skin Sens. 1A H317", true),
        ("A; 0.004 %; Skin Sens. 1 H317; Skin Sens. 1 H317 >= 0.05 %", false),
        ("A; 0.005 %; Skin Sens. 1 H317; Skin Sens. 1 H317 >= 0.05 %", true),
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

/// Converted point values (Table 3.1.2, from memory) and bounds (Table 3.1.1).
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

#[track_caller]
fn shows(text: &str, pictograms: &[u8], signal: Signal, codes: &[&str]) {
    let said = statements(&whole(text), false);
    let found: Vec<&str> = said.hazards.iter().map(|h| h.0).collect();
    assert_eq!(
        (said.pictograms.as_slice(), said.signal, found.as_slice()),
        (pictograms, signal, codes),
        "{text}"
    );
    assert!(said.precautions.len() <= 6 && said.hazards.iter().all(|h| !h.1.is_empty()), "{said:?}");
}

/// Articles 20, 26 and 27 and Annex III (reference values 4c).
#[test]
fn what_the_label_shows_by_precedence() {
    let (none, warning, danger) = (Signal::None, Signal::Warning, Signal::Danger);
    shows("A; 20 %; Skin Irrit. 2 H315", &[7], warning, &["H315"]);
    // Corrosion takes the mark away where it stands for skin or eyes only.
    shows("A; 20 %; Skin Irrit. 2 H315; Eye Dam. 1 H318", &[5], danger, &["H315", "H318"]);
    shows("A; 20 %; Skin Sens. 1 H317; Eye Dam. 1 H318", &[5, 7], danger, &["H318", "H317"]);
    shows("A; 30 %; Acute Tox. 4 H302; Eye Dam. 1 H318", &[5, 7], danger, &["H302", "H318"]);
    shows("A; 90 %; Acute Tox. 3 H301; Skin Sens. 1 H317", &[6], danger, &["H301", "H317"]);
    shows(
        "A; 20 %; Resp. Sens. 1 H334; Skin Sens. 1 H317; Skin Irrit. 2 H315",
        &[8],
        danger,
        &["H315", "H334", "H317"],
    );
    shows("A; 20 %; Skin Corr. 1B H314", &[5], danger, &["H314"]);
    shows("A; 30 %; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", &[9], warning, &["H410"]);
    shows("A; 30 %; Aquatic Acute 1 H400; Aquatic Chronic 3 H412", &[9], warning, &["H400", "H412"]);
    shows("A; 30 %; Aquatic Chronic 2 H411", &[9], none, &["H411"]);
    shows("A; 30 %; Aquatic Chronic 3 H412", &[], none, &["H412"]);
}

/// Annex I, 1.5.2.1 (from memory): up to 125 mL; an allergen stays.
#[test]
fn a_small_package_may_leave_out() {
    let text = "A; 30 %; Skin Irrit. 2 H315; Aquatic Chronic 2 H411";
    let small = statements(&whole(text), true);
    assert_eq!((small.hazards.len(), small.precautions.len(), small.pictograms), (0, 0, vec![7, 9]));
    let allergen = statements(&whole("A; 30 %; Skin Sens. 1 H317; Aquatic Chronic 3 H412"), true);
    assert_eq!(allergen.hazards.iter().map(|h| h.0).collect::<Vec<_>>(), ["H317", "H412"]);
    assert!(!allergen.precautions.is_empty() && allergen.precautions.iter().all(|p| p.0 != "P273"));
}

#[test]
fn the_share_that_drops_a_class() {
    let sheet = lines("Linalool; 12 %; Skin Sens. 1B H317\nLimonene; 20 %; Aquatic Chronic 1 H410");
    let found = drops(&[ingredient(Exact::whole(10), sheet)], 0, true);
    let said: Vec<_> = found.iter().map(|d| (d.class.name, d.most)).collect();
    // 1 ÷ 12 % = 8.333 %; 20 % × 1.25 % = 0.25 %.
    assert_eq!(
        said,
        [
            ("Skin Sens. 1", Some(Exact::ratio(833, 100))),
            // 10 % × 20 % × 100 = 200 ≥ 25 gives Chronic 3, and × 10 = 20 is below 25.
            ("Aquatic Chronic 3", Some(Exact::ratio(124, 100))),
        ]
    );
}

#[test]
fn what_is_unknown_is_named() {
    let mixed = mix(
        &[
            Ingredient { name: "Fig leaf".into(), percent: Exact::whole(8), sheet: None, harmless: false },
            Ingredient { name: "Plain wax".into(), percent: Exact::whole(92), sheet: None, harmless: true },
        ],
        true,
    );
    let said = remarks(&mixed, Voice::default()).join("\n");
    assert!(said.contains("no safety data for Fig leaf") && said.contains("typed in: Plain wax"), "{said}");
}

#[test]
fn every_sum_says_how_it_came_about() {
    let found =
        findings(&whole("A; 3 %; Skin Irrit. 2 H315\nB; 4.5 %; Skin Irrit. 2 H315"), Voice::default());
    let one = &found[0];
    assert_eq!((one.reached, one.said.as_str()), (false, "7.50 % in all, of 10.00 %"));
    let values: Vec<(&str, &str)> =
        one.why.values.iter().map(|v| (v.name.as_str(), v.shown.as_str())).collect();
    assert_eq!(values, [("B", "4.50 %"), ("A", "3.00 %")]);
    assert!(one.why.source.contains("Table 3.2.3") && one.why.source.contains("2026"));
}

const CLASSES: [&str; 14] = [
    "Skin Irrit. 2 H315",
    "Skin Corr. 1B H314",
    "Skin Corr. 1 H314; pH 1",
    "Eye Dam. 1 H318",
    "Eye Irrit. 2 H319",
    "Skin Sens. 1B H317",
    "Skin Sens. 1A H317; SCL Skin Sens. 1A >= 0.01 %",
    "Acute Tox. 4 H302; Asp. Tox. 1 H304",
    "Acute Tox. 3 H331",
    "ATE dermal 700; STOT SE 3 H336",
    "Aquatic Acute 1 H400; Aquatic Chronic 1 H410; M=10",
    "Aquatic Chronic 2 H411",
    "Carc. 2 H351; STOT RE 1 H372",
    "no data",
];

fn recipe() -> impl Strategy<Value = Vec<(usize, u32)>> {
    // Which substance it is (by name), its classes go with it, and hundredths of a percent.
    prop::collection::vec((0usize..14, 1u32..900), 1..12)
}

fn sheet(recipe: &[(usize, u32)]) -> Vec<Substance> {
    let line = |(of, share): &(usize, u32)| {
        format!(
            "S{of}; {}.{:02} %; {}",
            share / 100,
            share % 100,
            CLASSES.get(*of).copied().unwrap_or_default()
        )
    };
    lines(&recipe.iter().map(line).collect::<Vec<_>>().join("\n"))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn more_of_a_substance_never_lowers_a_class(recipe in recipe(), at in any::<prop::sample::Index>(), more in 1u32..3000, solid in any::<bool>()) {
        let before = mix(&[ingredient(Exact::whole(100), sheet(&recipe))], solid);
        let mut richer = recipe.clone();
        let at = at.index(richer.len());
        richer[at].1 = (richer[at].1 + more).min(9999);
        let after = mix(&[ingredient(Exact::whole(100), sheet(&richer))], solid);
        for class in &before.classes {
            prop_assert!(
                after.classes.iter().any(|c| c.group_is(class) && c.rank() <= class.rank()),
                "{:?} has {:?}, {:?} has {:?}", recipe, names(&before), richer, names(&after)
            );
        }
    }

    #[test]
    fn order_and_splitting_of_lines_do_not_matter(recipe in recipe(), turn in any::<prop::sample::Index>(), part in 1u32..100) {
        let whole = mix(&[ingredient(Exact::whole(50), sheet(&recipe))], true);
        let mut other = recipe.clone();
        let turn = turn.index(other.len());
        other.rotate_left(turn);
        let (of, share) = other[0];
        if share > part {
            other[0].1 = share - part;
            other.push((of, part));
        }
        let split = mix(&[ingredient(Exact::whole(50), sheet(&other))], true);
        prop_assert_eq!(&names(&whole), &names(&split));
        prop_assert_eq!(statements(&whole, false), statements(&split, false));
        // Two fragrances that share the substances are one blend.
        let (left, right) = other.split_at(other.len() / 2);
        let two = mix(&[ingredient(Exact::whole(50), sheet(left)), ingredient(Exact::whole(50), sheet(right))], true);
        prop_assert_eq!(names(&whole), names(&two));
    }

    #[test]
    fn any_text_is_read_without_harm(text in "(?s).{0,200}") {
        read_lines(&text, Locale::Comma);
    }

    #[test]
    fn anything_that_looks_like_a_line_is_read_without_harm(text in "A[;|] ?[0-9hHmM.,<>=%≥ -]{0,20}(ATE|SCL|M=|Skin Sens. 1|H31[0-9]|oral|[(;:]){0,6}[0-9 .%>]{0,8}") {
        let (found, _) = read_lines(&text, Locale::Point);
        mix(&[ingredient(Exact::whole(10), found)], true);
    }
}
