//! What a label says in each market, and that every result names its rule and the date of the text.

use crate::label::{ask, front, workshop};
use crate::sample::{entry, id};
use potside::book::{Act, Labelled, State};
use potside::desk::hazard::{SafetySheet, findings, further, mix};
use potside::desk::label::{Design, Face, Item, Market, Part, lay};
use potside::desk::net::{Panel, eu_height, us_height};
use potside::formula::Formula;
use potside::quantity::{Exact, Length, Mass, Voice};
use potside::vessel::Vessel;
use potside::wire::read;

const MARKETS: [Market; 3] = [Market::UnitedStates, Market::EuropeanUnion, Market::Both];

fn orchard(state: &State) -> Formula {
    state.formulas.get(&id("demo-orchard")).and_then(|k| k.body()).expect("it is in the demo").clone()
}

/// 70 mm wide and 80 mm high outside; so many grams.
fn jar(grams: u32) -> Vessel {
    let text = format!(
        r#"{{"name":"Jar","inside":{{"top":"64 mm","bottom":"64 mm","height":"77 mm"}},"wall":"3 mm","fill":{{"Weight":"{grams} g"}}}}"#
    );
    read(&text).expect("a vessel")
}

fn label(state: &State, market: Market, parts: &[Part], vessel: &Vessel, small: bool) -> (Labelled, Design) {
    let mut design = Design { parts: parts.to_vec(), ..front(state, market) };
    design.sheet.width = read("\"90 mm\"").expect("a length");
    design.sheet.height = read("\"90 mm\"").expect("a length");
    let formula = orchard(state);
    let label = state.label(&ask(&design, &formula, vessel, small), Face::default(), Voice::default());
    (label, design)
}

/// Every text on the label with its size in micrometres.
fn words(label: &Labelled, design: &Design) -> Vec<(String, i64)> {
    let laid = lay(&label.content, &design.sheet).expect("it fits");
    let one = |item: &Item| match item {
        Item::Words { text, size, .. } => Some((text.clone(), *size)),
        _ => None,
    };
    laid.items.iter().filter_map(one).collect()
}

/// Directive 76/211/EEC, Annex I, 3.1: 2, 3, 4 and 6 mm by the nominal quantity, on the figures; 16 CFR 500.21: an eighth of an
/// inch for 10.9 square inches, on the small letters; where both are asked for, the higher.
#[test]
fn units_order_and_heights_of_each_market() {
    let state = workshop();
    let panel =
        Panel::Round { diameter: Length::base(Exact::whole(70)), height: Length::base(Exact::whole(80)) };
    let face = Face::default();
    let of = |height: Length, part: i64| {
        let um = (height.in_base() * Exact::whole(1000)).ceil() as i64;
        (um * 1000 + part - 1) / part
    };
    for (grams, union, states) in [
        (50, "50 g", "Net wt. 1.76 oz (50 g)"),
        (200, "200 g", "Net wt. 7.05 oz (200 g)"),
        (201, "201 g", "Net wt. 7.09 oz (201 g)"),
        (1000, "1 kg", "Net wt. 2 lb 3.27 oz (1 kg)"),
        (1500, "1.5 kg", "Net wt. 3 lb 4.91 oz (1.5 kg)"),
    ] {
        let eu = of(eu_height(Mass::base(Exact::whole(grams.into()))), face.capital);
        let us = of(us_height(panel, false), face.small);
        let heights = [(Market::UnitedStates, us, states), (Market::EuropeanUnion, eu, union)];
        for (market, size, text) in heights.into_iter().chain([(Market::Both, us.max(eu), states)]) {
            let (label, design) = label(&state, market, &[Part::Net], &jar(grams), false);
            assert_eq!(label.declared.as_ref().expect("it is declared").text, text, "{market:?}");
            let found = words(&label, &design);
            let said: Vec<&str> = found.iter().map(|found| found.0.as_str()).collect();
            assert_eq!(said.join(" "), text, "{market:?}");
            assert!(found.iter().all(|found| found.1 == size), "{market:?} {grams} g: {found:?}, not {size}");
            // What is asked for is told with the market it is for.
            let told: Vec<&str> =
                label.letters.iter().map(|l| l.said.split(':').next().unwrap_or_default()).collect();
            let markets: &[&str] = match market {
                Market::UnitedStates => &["United States"],
                Market::EuropeanUnion => &["European Union"],
                Market::Both => &["United States", "European Union"],
            };
            assert_eq!(told, markets);
        }
    }
}

/// EUH lines, names that may be left off and the small package are the Union's. Where they are left off it is told.
#[test]
fn what_only_the_union_asks_stands_where_it_is_asked() {
    let state = workshop();
    for market in MARKETS {
        let (label, design) = label(&state, market, &[Part::Hazards], &jar(180), false);
        let text = words(&label, &design).into_iter().map(|w| w.0).collect::<Vec<_>>().join(" ");
        let line = "May produce an allergic reaction.";
        let off = label.remarks.iter().find(|r| r.starts_with("Left off, since only the European Union"));
        let of_states = label.remarks.iter().any(|r| r.contains("16 CFR 1500"));
        if market == Market::UnitedStates {
            assert!(!text.contains(line), "{text}");
            let off = off.expect("it is told");
            assert!(off.contains("EUH208: Contains ") && off.contains(line), "{off}");
            assert!(of_states);
        } else {
            assert!(text.contains(line) && off.is_none() && !of_states, "{text}");
        }
    }
}

/// Signal word, pictograms, hazard and precautionary statements are the same in every market, small package or not.
#[test]
fn no_hazard_is_left_off_in_any_market() {
    let mut state = workshop();
    let lines = "A; 60 %; Skin Sens. 1 H317; Aquatic Chronic 2 H411; Eye Irrit. 2 H319".to_owned();
    let body = SafetySheet { ingredient: "Late orchard oil".into(), lines, dated: String::new() };
    state.take(&entry("z", 900_000, Act::Safety { id: id("z"), over: None, body }));
    let drawn = |market, small| {
        let (label, design) = label(&state, market, &[Part::Hazards], &jar(60), small);
        let laid = lay(&label.content, &design.sheet).expect("it fits");
        (format!("{:?}", laid.items), label.may_be_small)
    };
    let (whole, may) = drawn(Market::EuropeanUnion, false);
    assert!(whole.contains("H317") || whole.contains("allergic skin reaction"), "{whole}");
    assert!(!may, "the jar holds more than 125 mL");
    for market in MARKETS {
        assert_eq!(drawn(market, false).0, whole);
        assert_eq!(drawn(market, true).0, whole);
    }
}

fn tin() -> Vessel {
    read(r#"{"name":"Tin","inside":{"top":"50 mm","bottom":"50 mm","height":"40 mm"},"wall":"1 mm","fill":{"Weight":"60 g"}}"#)
        .expect("a vessel")
}

#[test]
fn a_small_package_is_one_of_the_union() {
    let state = workshop();
    for market in MARKETS {
        let (label, _) = label(&state, market, &[Part::Hazards], &tin(), true);
        assert_eq!(label.may_be_small, market != Market::UnitedStates);
    }
}

#[test]
fn the_standard_of_the_market_is_named_with_its_edition() {
    let state = workshop();
    for market in MARKETS {
        let (label, _) = label(&state, market, &[Part::Fire], &jar(180), false);
        let said = label.remarks.iter().find(|r| r.starts_with("The fire-safety")).expect("it is said");
        assert_eq!(
            said.contains("ASTM F2058-07 (reapproved 2021)"),
            market != Market::EuropeanUnion,
            "{said}"
        );
        assert_eq!(said.contains("EN 15494:2019"), market != Market::UnitedStates, "{said}");
        assert!(said.contains("27 November 2026") && said.ends_with("Your copy decides."), "{said}");
    }
}

/// Without its wall a vessel has a smaller panel than it has: told where that could ask for higher letters.
#[test]
fn a_wall_that_is_not_measured_is_told_where_it_matters() {
    let state = workshop();
    let told = |inside: &str, wall: &str| {
        let text = format!(r#"{{"name":"V","inside":{inside},{wall}"fill":{{"Weight":"60 g"}}}}"#);
        let vessel: Vessel = read(&text).expect("a vessel");
        let (label, _) = label(&state, Market::UnitedStates, &[Part::Net], &vessel, false);
        label.remarks.iter().any(|r| r.starts_with("The wall of the vessel is not measured"))
    };
    // 0.4 · π · 50 · 50 mm² are 4.9 square inches.
    let edge = r#"{"top":"50 mm","bottom":"50 mm","height":"50 mm"}"#;
    let large = r#"{"top":"70 mm","bottom":"70 mm","height":"80 mm"}"#;
    assert!(told(edge, "") && !told(edge, r#""wall":"2 mm","#) && !told(large, ""));
}

/// A rule that anybody can look up, and when its text was read or which edition it is.
fn names_its_rule(source: &str) {
    let rules = ["CFR ", "Directive ", "Regulation ", "Handbook ", "ASTM ", "EN ", "GHS of "];
    assert!(rules.iter().any(|rule| source.contains(rule)), "no rule: {source}");
    assert!(source.contains("202"), "no date: {source}");
}

#[test]
fn every_result_names_its_rule_and_the_date_of_its_text() {
    let (state, voice) = (workshop(), Voice::default());
    let mut sources = Vec::new();
    let batch = state.finished()[0];
    let (formula, vessel) = state.made_of(batch).expect("it is in the book");
    for market in MARKETS {
        let design = front(&state, market);
        for tapers in [None, Some((2, Length::base(Exact::whole(254))))] {
            let mut asked = ask(&design, formula, vessel, false);
            (asked.batch, asked.tapers) = (Some(batch), tapers);
            let label = state.label(&asked, Face::default(), voice);
            sources.push(label.declared.as_ref().expect("it is declared").source.to_owned());
            sources.extend(label.tests.iter().map(|test| test.1.why.source.clone()));
            sources.extend(label.letters.iter().map(|asked| asked.why.source.clone()));
            let laid = lay(&label.content, &design.sheet);
            let place = laid.ok().and_then(|laid| label.placing(&laid, voice));
            sources.extend(place.map(|asked| asked.why.source));
        }
    }
    // Of the hazards: something of every kind, those that only the GHS has as well.
    let lines = "A; 60 %; Skin Irrit. 2 H315; Skin Sens. 1 H317; Eye Irrit. 2 H319; Acute Tox. 4 H302; Aquatic Acute 1 H400; \
Aquatic Chronic 1 H410; STOT RE 2 H373; Carc. 2 H351; Asp. Tox. 1 H304";
    for percent in [100, 8, 1] {
        let sheet = SafetySheet { ingredient: "Oil".into(), lines: lines.into(), dated: String::new() };
        let part = potside::desk::hazard::Ingredient {
            name: "Oil".into(),
            percent: Exact::whole(percent),
            sheet: Some(sheet.substances()),
            harmless: false,
        };
        let mixed = mix(&[part], true);
        sources.extend(findings(&mixed, voice).into_iter().map(|f| f.why.source));
        sources.extend(further(&mixed, voice).into_iter().map(|f| f.why.source));
    }
    assert!(sources.len() > 30, "{}", sources.len());
    sources.iter().for_each(|source| names_its_rule(source));
}
