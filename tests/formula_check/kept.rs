//! How a formula is kept, and every sentence about it.

use super::plain;
use crate::formula_shared::*;
use potside::formula::{
    Basis, Caution, Doing, Formula, FormulaError, Moment, PartKind, TemperatureRange, VesselWick,
    usual_cautions,
};
use potside::quantity::{Locale, Voice};
use potside::wire::{self, Wire};

fn whole() -> Formula {
    let mut written = plain();
    written.wax[0].flash = Some(f("420"));
    written.parts[0].highest = Some(percent("10"));
    written.parts[0].note = "Shake first".into();
    written
        .parts
        .insert(0, part("Hardener", PartKind::Additive, Basis::Spoon(tbsp("3/4")), range("186", "190")));
    written.parts.insert(1, part("Red", PartKind::Dye, Basis::Drops(3), range("182", "186")));
    written.parts.insert(
        2,
        part("Oil", PartKind::Other, Basis::PerWax { amount: oz("0.5"), wax: lb("1") }, range("181", "185")),
    );
    written.parts.push(part("Wick", PartKind::Other, Basis::PerVessel(1), range("70", "80")));
    written.vessels =
        vec![VesselWick { vessel: potside::book::Id("k3f9q2-1a".into()), wick: "Cotton 8".into() }];
    written.note = "For the autumn market".into();
    written
}

/// As it is kept, laid out over lines.
fn pretty(value: &impl Wire) -> String {
    let value: serde_json::Value = serde_json::from_str(&wire::write(value)).unwrap();
    serde_json::to_string_pretty(&value).unwrap()
}

#[test]
fn a_formula_is_kept_as_one_would_read_it() {
    let text = pretty(&whole());
    insta::assert_snapshot!(text);
    assert_eq!(wire::read::<Formula>(&text).unwrap(), whole());
}

// What was not yet asked for when a formula was kept is filled in.
#[test]
fn a_short_formula_opens() {
    let range = |low: &str| format!(r#"{{"low":"{low} °F","high":"180 °F"}}"#);
    let text = format!(
        r#"{{"name":"Plain","wax":[{{"name":"Soft","share":"100 %"}}],
            "parts":[{{"name":"Fig","kind":"Fragrance","basis":{{"OfWax":"8 %"}},"add":{}}}],
            "melt_to":"200 °F","pour":{{"warmed":{},"unwarmed":{}}}}}"#,
        range("175"),
        range("160"),
        range("165")
    );
    let opened: Formula = wire::read(&text).unwrap();
    assert_eq!((opened.usual, opened.cure_days, opened.vessels.len()), (None, 0, 0));
    assert_eq!(opened.parts[0].basis, Basis::OfWax(percent("8")));
    assert_eq!(opened.parts[0].add, TemperatureRange { low: f("175"), high: f("180") });
}

#[test]
fn every_sentence_reads_well() {
    use FormulaError::*;
    let part = || "Fig & cedar".to_owned();
    let errors = [
        NoName,
        NoWax,
        WaxNoName { place: 2 },
        PartNoName { place: 1 },
        Twice { name: part() },
        WaxShare { name: "Hard wax".into() },
        Blend { adds_to: percent("99.5").value },
        NoAmount { part: part() },
        PerNoWax { part: part() },
        NoUsual { part: part() },
        EmptyUsual,
        Full { adds_to: percent("104").value, largest: part() },
        UpsideDown { doing: Doing::Adding(part()), range: Box::new(range("180", "175")) },
        NothingToMake,
        NotInIt { name: "Rose".into() },
        NotWeighed { name: "Red".into() },
    ];
    let cautions = [
        Caution::Load {
            part: part(),
            of_wax: percent("12").value,
            of_whole: percent("75/7").value,
            highest: percent("10"),
        },
        Caution::LoadTogether { of_wax: percent("11").value, part: part(), highest: percent("10") },
        Caution::Flash { of: part(), doing: Doing::PouringWarmed, at: f("190"), flash: f("185") },
        Caution::FlashUnknown { part: part() },
        Caution::Hot { doing: Doing::Melting, at: f("300") },
        Caution::Order { first: "Stabiliser".into(), then: part() },
        Caution::PourAboveAdd { doing: Doing::PouringUnwarmed, low: f("181"), part: part(), high: f("180") },
        Caution::AboveMelt { doing: Doing::Adding(part()), low: f("175"), melt_to: f("174") },
        Caution::SpoonUnweighed { part: "Hardener".into(), measure: tbsp("3/4") },
        Caution::DropsUnweighed { part: "Red".into() },
    ];
    let said = errors.iter().map(|e| e.say(Voice::default())).chain(cautions.iter().map(ToString::to_string));
    insta::assert_snapshot!(said.collect::<Vec<_>>().join("\n"));
    let comma = Voice { locale: Locale::Comma, ..Voice::default() };
    assert!(errors[6].say(comma).starts_with("The wax blend adds up to 99,5 %, not 100 %."));
    assert!(errors[11].say(comma).contains("come to 104,00 % of it"), "{}", errors[11].say(comma));
    let halves = UpsideDown { doing: Doing::Melting, range: Box::new(range("180.5", "175.5")) };
    assert!(halves.say(comma).contains("from 180,5 °F down to 175,5 °F"), "{}", halves.say(comma));
    let lowered =
        Caution::LoadTogether { of_wax: percent("11.5").value, part: part(), highest: percent("10.5") };
    assert!(lowered.say(comma).contains("11,50 % of the wax") && lowered.say(comma).contains("10,5 %"));
}

#[test]
fn whys_carry_relation_values_and_result() {
    let solved = solve(&whole(), oz("16").value);
    let whys: Vec<_> = solved.waxes.iter().chain(&solved.parts).map(|p| p.why.clone()).collect();
    insta::assert_snapshot!(pretty(&whys));
}

// The list is the project's design, "Cautions": each stands at the step where it can hurt.
#[test]
fn the_usual_cautions_stand_at_their_step() {
    let at = |moment, words: &str| {
        let found = usual_cautions(moment).iter().any(|c| c.to_lowercase().contains(words));
        assert!(found, "“{words}” at {moment:?}");
    };
    at(Moment::Melting, "hot wax burns");
    at(Moment::Melting, "never leave a melter");
    at(Moment::Melting, "a thermometer");
    at(Moment::Melting, "never put water on burning wax");
    at(Moment::Adding(PartKind::Fragrance), "know the flash point");
    at(Moment::Adding(PartKind::Fragrance), "gloves on and air");
    at(Moment::Adding(PartKind::Fragrance), "safety data sheet");
    at(Moment::Adding(PartKind::Dye), "safety data sheet");
    at(Moment::Pouring, "hot wax burns");
    at(Moment::Finishing, "burn-test every combination");
}
