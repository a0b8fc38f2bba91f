//! What the label shows, what would drop a class, and what is told beside it.

use super::{ingredient, lines, whole};
use potside::desk::hazard::{Ingredient, Signal, drops, findings, mix, remarks, statements};
use potside::quantity::{Exact, Voice};

#[track_caller]
fn shows(text: &str, pictograms: &[u8], signal: Signal, codes: &[&str]) {
    let said = statements(&whole(text), false);
    let found: Vec<&str> = said.hazards.iter().map(|h| h.0).collect();
    assert_eq!(
        (said.pictograms.as_slice(), said.signal, found.as_slice()),
        (pictograms, signal, codes),
        "{text}"
    );
    let most = if codes.contains(&"H314") { 7 } else { 6 };
    assert!(said.precautions.len() <= most && said.hazards.iter().all(|h| !h.1.is_empty()), "{said:?}");
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

/// Annex I, Tables 3.1.3, 3.3.5, 3.4.7, 3.6.3, 3.8.4, 3.9.5, 3.10.2 and 4.1.4, and transcriptions of 3.2.5, 3.5.3 and 3.7.3,
/// of each what the app has; P101 and P102 are for all that is sold to anybody. Of nine for H314 six stay, and what is worn.
#[test]
fn which_precaution_stands_with_which_hazard() {
    for (text, codes) in [
        ("A; 90 %; Acute Tox. 4 H302", "P101 P102 P301+P312 P501"),
        ("A; 5 %; Skin Corr. 1B H314", "P102 P280 P301+P330+P331 P303+P361+P353 P305+P351+P338 P310 P501"),
        ("A; 20 %; Skin Irrit. 2 H315", "P101 P102 P280 P302+P352 P332+P313"),
        ("A; 1 %; Muta. 2 H341", "P101 P102 P201 P280 P308+P313 P501"),
        ("A; 3 %; Repr. 2 H361", "P101 P102 P201 P280 P308+P313 P501"),
        ("A; 0.3 %; Lact. H362", "P101 P102 P201 P308+P313"),
        ("A; 20 %; Eye Dam. 1 H318", "P101 P102 P280 P305+P351+P338 P310"),
        ("A; 20 %; Resp. Sens. 1 H334", "P101 P102 P261 P304+P340 P342+P311 P501"),
        ("A; 1 %; Carc. 2 H351", "P101 P102 P201 P280 P308+P313 P501"),
        ("A; 20 %; STOT SE 2 H371", "P101 P102 P308+P311 P501"),
        ("A; 20 %; STOT SE 3 H336", "P101 P102 P261 P271 P304+P340 P501"),
        ("A; 20 %; STOT RE 2 H373", "P101 P102 P314 P501"),
        ("A; 20 %; Asp. Tox. 1 H304", "P101 P102 P301+P310 P331 P501"),
        ("A; 30 %; Aquatic Chronic 2 H411", "P101 P102 P273 P391 P501"),
        ("A; 30 %; Aquatic Chronic 3 H412", "P101 P102 P273 P501"),
    ] {
        let said = statements(&whole(text), false).precautions;
        assert_eq!(said.iter().map(|p| p.0).collect::<Vec<_>>().join(" "), codes, "{text}");
    }
}

/// Annex IV, P280 (from memory): the equipment that fits the hazard is named, of several each once.
#[test]
fn what_is_worn_fits_the_hazards() {
    const EYES: &str = "Wear eye protection/face protection.";
    const HANDS: &str = "Wear protective gloves.";
    const BOTH: &str = "Wear protective gloves/eye protection/face protection.";
    const ALL: &str = "Wear protective gloves/protective clothing/eye protection/face protection.";
    const SKIN: &str = "Wear protective gloves/protective clothing.";
    for (text, words) in [
        ("A; 20 %; Eye Dam. 1 H318", EYES),
        ("A; 20 %; Eye Irrit. 2 H319", EYES),
        ("A; 20 %; Eye Irrit. 2 H319; STOT SE 3 H335", EYES),
        ("A; 20 %; Skin Irrit. 2 H315", HANDS),
        ("A; 20 %; Skin Sens. 1 H317", HANDS),
        ("A; 1 %; Muta. 2 H341", HANDS),
        ("A; 3 %; Repr. 1B H360", HANDS),
        ("A; 20 %; Skin Irrit. 2 H315; Eye Irrit. 2 H319", BOTH),
        ("A; 1 %; Carc. 2 H351\nB; 20 %; Eye Dam. 1 H318", BOTH),
        ("A; 90 %; Acute Tox. 4 H312", SKIN),
        ("A; 90 %; Acute Tox. 4 H312; Eye Dam. 1 H318", ALL),
        ("A; 5 %; Skin Corr. 1B H314", ALL),
        ("A; 30 %; Skin Corr. 1B H314; Skin Sens. 1 H317; Acute Tox. 4 H302; STOT SE 3 H335", ALL),
    ] {
        let said = statements(&whole(text), false).precautions;
        assert_eq!(said.iter().find(|p| p.0 == "P280").map(|p| p.1), Some(words), "{text}");
    }
    // No statement stands without its words.
    let six = statements(&whole("A; 5 %; Skin Corr. 1B H314"), false).precautions;
    assert!(six.iter().all(|p| !p.1.is_empty()), "{six:?}");
    // In a small package irritation asks for none, so its gloves are not named either.
    let small = statements(&whole("A; 20 %; Skin Irrit. 2 H315\nB; 20 %; Eye Dam. 1 H318"), true).precautions;
    assert_eq!(small.iter().find(|p| p.0 == "P280").map(|p| p.1), Some(EYES));
}

/// Annex I, 1.5.2.1: up to 125 mL; an allergen stays.
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

/// Table 4.1.2: 25 % and, by ten times them, 2.5 %. A milder class of the same hazard is without the stricter one.
#[test]
fn a_milder_class_is_without_the_stricter() {
    let of = |percent| {
        let oil = ingredient(Exact::whole(percent), lines("A; 100 %; Aquatic Chronic 1 H410; M=1"));
        let found = drops(&[oil], 0, true);
        found.iter().map(|d| (d.class.name, d.most)).collect::<Vec<_>>()
    };
    assert_eq!(of(30), [("Aquatic Chronic 1", Some(Exact::ratio(2499, 100)))]);
    assert_eq!(of(20), [("Aquatic Chronic 2", Some(Exact::ratio(249, 100)))]);
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

/// Tables 4.1.1 and 4.1.2 ask for it of Acute 1 and Chronic 1 only.
#[test]
fn an_m_factor_left_out_is_named() {
    let said = |text: &str| remarks(&whole(text), Voice::default()).join("\n");
    let (both, acute) = ("Aquatic Acute 1 H400; Aquatic Chronic 1 H410", "Aquatic Acute 1 H400");
    let text =
        format!("A; 1 %; {both}\nB; 0.9 %; {acute}\nC; 0.8 %; {both}; M acute 10\nD; 0.7 %; {both}; M=1");
    let named = "M-factor not typed in: A (acute and chronic), B (acute), C (chronic). It is reckoned as 1; ";
    assert!(said(&text).contains(named), "{}", said(&text));
    for text in
        ["A; 1 %; Aquatic Acute 1 H400; M=10", "A; 1 %; Aquatic Chronic 2 H411", "A; 1 %; Skin Sens. 1 H317"]
    {
        assert!(!said(text).contains("M-factor"), "{text}: {}", said(text));
    }
}

/// Annex I, 3.10.3.3.1.2: what is classed has a kinematic viscosity. The line of the sum tells so of a candle, and does not
/// call it reached.
#[test]
fn a_solid_is_not_classed_for_aspiration_and_is_told_so() {
    let oil = || ingredient(Exact::whole(100), lines("A; 12 %; Asp. Tox. 1 H304"));
    let told = |solid| findings(&mix(&[oil()], solid), Voice::default()).remove(0);
    let (solid, liquid) = (told(true), told(false));
    assert_eq!((solid.reached, solid.exempt, liquid.reached, liquid.exempt), (false, true, true, false));
    let words = "12.00 % in all, of 10.00 %";
    assert!(solid.said.starts_with(words) && solid.said.ends_with("and a candle is solid"), "{solid:?}");
    assert_eq!(liquid.said, words);
    assert!(
        !solid.why.rounding.contains("reached") && solid.why.rounding.contains("20.5 mm²/s"),
        "{solid:?}"
    );
    assert!(liquid.why.rounding.ends_with(": reached"), "{liquid:?}");
    // Nothing else is told so.
    let skin = ingredient(Exact::whole(100), lines("A; 12 %; Skin Irrit. 2 H315"));
    let skin = findings(&mix(&[skin], true), Voice::default()).remove(0);
    assert_eq!((skin.reached, skin.exempt, skin.said.as_str()), (true, false, words));
}

/// An M-factor could bring what is not classed yet, so until it is typed in the label is not complete; where the strictest class
/// is reached already, nothing more can come.
#[test]
fn an_m_factor_left_out_leaves_the_label_open() {
    let (acute, chronic) = ("Aquatic Acute 1 H400", "Aquatic Chronic 1 H410");
    for (text, open) in [
        (format!("A; 1 %; {acute}"), true),
        (format!("A; 1 %; {chronic}"), true),
        (format!("A; 1 %; {acute}; M=1"), false),
        (format!("A; 25 %; {acute}"), false),
        (format!("A; 25 %; {acute}; {chronic}; M acute 1"), false),
        (format!("A; 24 %; {acute}; {chronic}; M acute 10"), true),
        ("A; 1 %; Aquatic Chronic 2 H411".to_owned(), false),
    ] {
        assert_eq!(whole(&text).is_open(), open, "{text}");
    }
}

/// What is just below a limit is not shown as if it were at it.
#[test]
fn a_sum_is_shown_to_as_many_places_as_tell_it_from_its_limit() {
    for (text, words) in [
        ("A; 0.0999 %; Skin Sens. 1A H317", "0.0999 % at most, of 0.10 %"),
        ("A; 0.1 %; Skin Sens. 1A H317", "0.10 % at most, of 0.10 %"),
        ("A; 9.99999 %; Skin Irrit. 2 H315", "9.99999 % in all, of 10.00 %"),
        ("A; 9.99 %; Skin Irrit. 2 H315", "9.99 % in all, of 10.00 %"),
        ("A; 100 %; ATE oral 2000.0001", "ATE 2000.0001 mg/kg, swallowed: up to 2000 counts"),
        ("A; 100 %; ATE oral 2000", "ATE 2000.000 mg/kg, swallowed: up to 2000 counts"),
    ] {
        let found = findings(&whole(text), Voice::default());
        let said: Vec<String> = found.iter().map(|f| f.said.replace('\u{202f}', "")).collect();
        assert!(said.iter().any(|said| said == words), "{text}: {said:?}");
        let first = words.split(['%', 'm']).next().unwrap_or_default().trim_start_matches("ATE ").trim();
        let whys: Vec<String> = found.iter().map(|f| f.why.result.replace('\u{202f}', "")).collect();
        assert!(whys.iter().any(|why| why.starts_with(first)), "{text}: {whys:?}");
    }
}

/// Table 3.4.6 and Annex II, 2.10, by hand: from 0.1 % on, of 1A from 0.01 % on, with a limit of its own from a tenth of that on.
#[test]
fn allergens_say_why_they_are_named() {
    let text = "A; 0.5 %; Skin Sens. 1 H317\nB; 0.0099 %; Skin Sens. 1A H317\nC; 0.09 %; Skin Sens. 1B H317; SCL Skin Sens. 1B >= 0.5 %\n\
                D; 0.0999 %; Resp. Sens. 1 H334\nE; 5 %; Skin Irrit. 2 H315";
    let told = |text: &str| findings(&whole(text), Voice::default()).pop().expect("it is told");
    let found = told(text);
    assert_eq!(
        (found.title.as_str(), found.said.as_str(), found.reached),
        ("Allergens to be named (EUH208)", "2 of 4", true)
    );
    let values: Vec<(&str, &str)> =
        found.why.values.iter().map(|v| (v.name.as_str(), v.shown.as_str())).collect();
    assert_eq!(
        values,
        [
            ("A", "0.50 %, from 0.10 %: named"),
            ("D", "0.0999 %, from 0.10 %: not named"),
            ("C", "0.090 %, from 0.050 %: named"),
            ("B", "0.0099 %, from 0.010 %: not named"),
        ]
    );
    assert!(found.why.source.contains("Table 3.4.6") && found.why.source.contains("2.10"), "{found:?}");
    assert_eq!(
        statements(&whole(text), false).further,
        ["EUH208: Contains A, C. May produce an allergic reaction."]
    );
    // Classed for it, it needs no EUH208.
    let classed = told("A; 1 %; Skin Sens. 1 H317");
    assert_eq!((classed.title.as_str(), classed.said.as_str()), ("Allergens to be named", "1 of 1"));
    let none = told("A; 0.01 %; Skin Sens. 1 H317");
    assert_eq!((none.reached, none.said.as_str()), (false, "0 of 1"));
    // Where nothing in it is an allergen, nothing is told of them.
    assert!(
        findings(&whole("E; 5 %; Skin Irrit. 2 H315"), Voice::default())
            .iter()
            .all(|f| f.title == f.class.say())
    );
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
