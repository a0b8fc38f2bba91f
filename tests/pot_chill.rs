//! What a cold part does to the pot, told before it goes in: sentences, cautions, when nothing is said.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{FIG, HARDENER, SOY, did, go_on};
use common::{Workshop, read};
use potside::bench::{PotBody, Stuff};
use potside::pot::{Air, Chill, Event, Run, StepKey, Target, Way};
use potside::quantity::{Exact, MassUnit, Quantity, Temperature, TemperatureUnit, Voice};

fn fahrenheit(n: i128) -> Temperature {
    Temperature::of(Exact::whole(n), TemperatureUnit::Fahrenheit)
}

fn us() -> Voice {
    Voice { mass: MassUnit::Ounce, temperature: TemperatureUnit::Fahrenheit, ..Voice::default() }
}

/// A run up to `key`, with a reading right before it.
fn up_to(workshop: &Workshop, key: StepKey, at: i128) -> Run {
    let mut run = Run::new(workshop.plan(Target::Vessels(4)).unwrap());
    go_on(&mut run, Some(key));
    run.take(Event::Read { temperature: fahrenheit(at), at: 2000, pour: None }).unwrap();
    run
}

fn chill(run: &Run, key: StepKey, voice: Voice) -> Option<Chill> {
    run.chill(key, 3000, Air::of(None, voice), None, voice)
}

const ADD_FIG: StepKey = StepKey::Add { pour: 0, line: FIG };

/// Where it stands in the order depends on its range.
fn add_fig(workshop: &Workshop) -> StepKey {
    let lines = &workshop.plan(Target::Vessels(4)).unwrap().pours[0].lines;
    let line = lines.iter().position(|l| l.name == "Fig leaf").unwrap();
    StepKey::Add { pour: 0, line: u32::try_from(line).unwrap() }
}

#[test]
fn the_fall_is_calorimetry() {
    let run = up_to(&Workshop::new(), ADD_FIG, 178);
    let said = chill(&run, ADD_FIG, us()).unwrap();
    // 2.15 oz = 60.95 g of oil (c 1.9) at 72 °F into 720 − 60.95 = 659.05 g, nearly all wax (c 2.225), at 178 °F:
    // fall = 106 · 115.8 / (115.8 + 1465) = 7.8 °F; by hand, wax 652 g, the rest (7 g at c 2.0) 14 J/K.
    assert_eq!(said.said, "Cold from the shelf this takes the pot from 178 °F to about 170 °F, 8 °F lower.");
    // For 175 °F after: 175 + 115.8 · (175 − 72) / 1465 = 183.1 °F before, above the 180 °F it may go in at.
    assert_eq!(
        said.caution.as_deref(),
        Some(
            "That is below its own range, 175–180 °F. The pot would have to be at 184 °F before, hotter than this part \
             may go in at: let the part come to a warm room first, or add it in small goes and warm the pot gently between."
        )
    );
    assert_eq!(said.why.relation, "pot − (pot − part) × what the part takes ÷ what both take");
    let names: Vec<String> = said.why.values.iter().map(|v| format!("{}: {}", v.name, v.shown)).collect();
    assert_eq!(
        names,
        [
            "pot: 178 °F",
            "part: 72 °F, assumed",
            "what the part takes, for one °C: 116 J",
            "what both take, for one °C: 1580 J"
        ]
    );
    // The same in °C: 178 °F = 81.1 °C, a room of 21 °C; fall = 60.1 · 115.8 / 1580.8 = 4.4 K.
    assert_eq!(
        chill(&run, ADD_FIG, Voice::default()).unwrap().said,
        "Cold from the shelf this takes the pot from 81.0 °C to about 76.5 °C, 4.5 °C lower."
    );
}

/// The pot itself gives of its heat (steel 450, aluminium 880 J/(kg·K): EN 12524), and a part that was
/// warmed takes less of it.
#[test]
fn the_pot_and_a_warm_part_soften_the_fall() {
    let with = |weight: &str, stuff: Stuff| {
        let mut w = Workshop::new();
        w.pot.as_mut().unwrap().body = Some(PotBody { weight: read(weight), stuff });
        up_to(&w, ADD_FIG, 178)
    };
    let said = |run: &Run, warm: Option<i128>| {
        run.chill(ADD_FIG, 3000, Air::of(None, us()), warm.map(fahrenheit), us()).unwrap()
    };
    // By hand: 106 · 115.8 / (115.8 + 1465 + 3000 · 0.45) = 4.19; with 1 kg of aluminium / (… + 880) = 4.99.
    let steel = said(&with("3 kg", Stuff::Steel), None);
    assert_eq!(steel.said, "Cold from the shelf this takes the pot from 178 °F to about 174 °F, 4 °F lower.");
    let last = steel.why.values.last().unwrap();
    assert_eq!((last.name.as_str(), last.shown.as_str()), ("of that the pot itself, for one °C", "1350 J"));
    assert!(steel.why.rounding.is_empty(), "{}", steel.why.rounding);
    // For 175 °F after: 175 + 115.8 · 103 / (1465 + 1350) = 179.2 °F before.
    assert_eq!(
        steel.caution.as_deref(),
        Some(
            "That is below its own range, 175–180 °F. Have the pot at 180 °F or a little more before it goes in."
        )
    );
    let aluminium = said(&with("1 kg", Stuff::Aluminium), None);
    assert!(aluminium.said.ends_with("173 °F, 5 °F lower."), "{}", aluminium.said);
    // An oil warmed to 120 °F: 58 · 115.8 / 1580.8 = 4.25; as warm as the pot it takes nothing.
    let plain = up_to(&Workshop::new(), ADD_FIG, 178);
    assert_eq!(
        said(&plain, Some(120)).said,
        "At 120 °F this takes the pot from 178 °F to about 174 °F, 4 °F lower."
    );
    assert_eq!(plain.chill(ADD_FIG, 3000, Air::of(None, us()), Some(fahrenheit(178)), us()), None);
    // Without its weight the why says that it is left out.
    assert!(said(&plain, None).why.rounding.contains("its weight is not known"));
}

#[test]
fn what_is_too_cold_afterwards_is_said() {
    let mut w = Workshop::new();
    // 168 − 7 = 161 °F, below the pour range of unwarmed vessels; back at it: 168 + 0.0790 · 96 = 175.6 °F before.
    let cases = [
        (
            "150 °F",
            "200 °F",
            168,
            "That is below the pour range, 168–175 °F. Have the pot at 176 °F or a little more before it goes in.",
        ),
        // 57 °C = 134.6 °F: what a soft paraffin begins to set at.
        (
            "100 °F",
            "200 °F",
            138,
            "At that some wax begins to set in the pot. Have the pot at 176 °F or a little more before it goes in.",
        ),
        // 175 + 8.1 = 183.1.
        (
            "175 °F",
            "190 °F",
            179,
            "That is below its own range, 175–190 °F. Have the pot at 184 °F or a little more before it goes in.",
        ),
    ];
    for (low, high, at, expected) in cases {
        w.formula.parts[0].add = potside::formula::TemperatureRange { low: read(low), high: read(high) };
        w.formula.parts[0].flash = None;
        let key = add_fig(&w);
        let run = up_to(&w, key, at);
        assert_eq!(chill(&run, key, us()).unwrap().caution.as_deref(), Some(expected));
    }
    // Up to the next half °C: 79.44 + 0.0790 · (79.44 − 21) = 84.06 °C before.
    w.formula.parts[0].add =
        potside::formula::TemperatureRange { low: read("175 °F"), high: read("190 °F") };
    let key = add_fig(&w);
    let said = chill(&up_to(&w, key, 178), key, Voice::default()).unwrap().caution.unwrap();
    assert!(said.contains("Have the pot at 84.5 °C or a little more"), "{said}");
    // Never as warm as its flash point.
    for (flash, allowed) in [("183 °F", false), ("184 °F", false), ("185 °F", true)] {
        w.formula.parts[0].flash = Some(read(flash));
        let said = chill(&up_to(&w, key, 179), key, us()).unwrap().caution.unwrap();
        let expected = if allowed { "Have the pot at 184 °F" } else { "hotter than this part may go in at" };
        assert!(said.contains(expected), "{flash}: {said}");
    }
    // Warm enough for both: nothing to be careful about.
    let run = up_to(&Workshop::new(), ADD_FIG, 185);
    assert_eq!(chill(&run, ADD_FIG, us()).unwrap().caution, None);
}

/// Too cold for the pour and for the part: the advice is good for both.
#[test]
fn it_is_to_be_warm_enough_for_all_it_is_too_cold_for() {
    let mut w = Workshop::new();
    w.formula.parts[0].add =
        potside::formula::TemperatureRange { low: read("170 °F"), high: read("200 °F") };
    let key = add_fig(&w);
    // 174 − 7.5 = 166.5 °F; at 168, the pour's, it is still below its own 170: 170 + 0.0790 · 98 = 177.7 °F before.
    let said = chill(&up_to(&w, key, 174), key, us()).unwrap().caution.unwrap();
    assert_eq!(
        said,
        "That is below the pour range, 168–175 °F. Have the pot at 178 °F or a little more before it goes in."
    );
}

/// What is in the pot already must not be heated to its flash point for what comes after it.
#[test]
fn never_as_warm_as_the_flash_point_of_what_is_in() {
    let mut w = Workshop::new();
    let mut cedar = w.formula.parts[0].clone();
    (cedar.name, cedar.basis) = ("Cedar".into(), potside::formula::Basis::OfWax(read("0.2 %")));
    cedar.add = potside::formula::TemperatureRange { low: read("178 °F"), high: read("190 °F") };
    w.formula.parts[0].add =
        potside::formula::TemperatureRange { low: read("175 °F"), high: read("190 °F") };
    w.formula.parts.push(cedar);
    let key = add_fig(&w);
    for (flash, allowed) in [("184 °F", false), ("185 °F", true)] {
        w.formula.parts.last_mut().unwrap().flash = Some(read(flash));
        let said = chill(&up_to(&w, key, 179), key, us()).unwrap().caution.unwrap();
        let expected = if allowed {
            "Have the pot at 184 °F or a little more before it goes in."
        } else {
            "The pot would have to be at 184 °F before, at or above the flash point of “Cedar”: let the part come to"
        };
        assert!(said.contains(expected), "{flash}: {said}");
    }
}

#[test]
fn nothing_is_said_where_nothing_is_known() {
    let w = Workshop::new();
    // No reading, one that is too old, one from before something else went in.
    let mut run = Run::new(w.plan(Target::Vessels(4)).unwrap());
    go_on(&mut run, Some(ADD_FIG));
    assert_eq!(chill(&run, ADD_FIG, us()), None);
    run.take(Event::Read { temperature: fahrenheit(178), at: 2000, pour: None }).unwrap();
    assert!(chill(&run, ADD_FIG, us()).is_some());
    assert_eq!(run.chill(ADD_FIG, 2000 + 5 * 60_000 + 1, Air::of(None, us()), None, us()), None);
    run.take(did(ADD_FIG, None, 2500)).unwrap();
    assert_eq!(chill(&run, StepKey::TopUp { pour: 0, line: FIG, round: 1 }, us()), None);
    // A few drops and a spoonful do not show.
    let hardener = StepKey::Add { pour: 0, line: HARDENER };
    let run = up_to(&w, hardener, 188);
    assert!(chill(&run, hardener, us()).is_some_and(|c| c.said.contains("1 °F lower")));
    let red = StepKey::Add { pour: 0, line: HARDENER + 1 };
    assert_eq!(chill(&up_to(&w, red, 183), red, us()), None);
    // Not melted yet; not something that goes in.
    let soy = StepKey::Wax { pour: 0, line: SOY };
    assert_eq!(chill(&up_to(&w, soy, 80), soy, us()), None);
    let gate = StepKey::Gate { pour: 0 };
    assert_eq!(chill(&up_to(&w, gate, 170), gate, us()), None);
}

#[test]
fn a_few_drops_do_not_make_it_another_pot() {
    let red = StepKey::Add { pour: 0, line: HARDENER + 1 };
    let mut run = up_to(&Workshop::new(), red, 178);
    for line in [HARDENER + 1, HARDENER + 2] {
        run.take(did(StepKey::Add { pour: 0, line }, None, 2100)).unwrap();
    }
    // 0.2 g in 650 g: what was read before tells of it still.
    assert!(chill(&run, ADD_FIG, us()).is_some());
}

#[test]
fn wax_that_is_added_has_to_melt() {
    let w = Workshop::new();
    let mut run = up_to(&w, ADD_FIG, 180);
    let planned = run.line(0, FIG).unwrap().dose.mass();
    run.take(did(ADD_FIG, Some(planned.times(Exact::ratio(11, 10))), 2100)).unwrap();
    run.take(Event::Mended { step: ADD_FIG, way: Way::Restore, at: 2200 }).unwrap();
    run.take(Event::Read { temperature: fahrenheit(180), at: 2300, pour: None }).unwrap();
    let key = run.now().unwrap().key;
    assert!(matches!(key, StepKey::TopUp { line: 0 | SOY, .. }), "{key:?}");
    let grams = run.now().unwrap().amount.unwrap().in_base().to_f64();
    let said = chill(&run, key, us()).unwrap();
    // By hand, of m g of flakes (c 2.225, 165 J/g to melt): (108 · 2.225 · m + 297 · m) / (1593 + 2.225 · m) °F, where
    // 297 is 165 J/g in J·°F/(g·K).
    let fall = (108.0 * 2.225 * grams + 297.0 * grams) / (1593.0 + 2.225 * grams);
    assert!(
        said.said.ends_with(&format!("to about {:.0} °F, {fall:.0} °F lower.", 180.0 - fall)),
        "{}",
        said.said
    );
    assert_eq!(
        said.why.relation,
        "pot − ((pot − part) × what the part takes + what melting takes) ÷ what both take"
    );
    let last = said.why.values.last().unwrap();
    assert_eq!((last.name.as_str(), &last.shown), ("what melting takes", &format!("{:.0} J", 165.0 * grams)));
}
