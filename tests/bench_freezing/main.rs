//! From a vessel of the book to how it freezes, and back to words and pictures.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod beside;
mod seen;
mod told;

use potside::bench::{
    Hung, PROPERTIES, Properties, Scene, SceneError, Start, Stuff, Sweep, differences, duration,
    fitted as fitted_words, keep_log, kept_log, log_chart, moment, read_log, reckoned, results, said,
    write_log,
};
use potside::heat::{
    Base, Colours, Detail, Freezing, Job, Measure, Reading, Setup, Wax, compare, freeze, job, lay_over, map,
    paint, reckon,
};
use potside::quantity::{LengthUnit, Locale, Temperature, TemperatureUnit, Voice, read};
use potside::vessel::Vessel;
use potside::wire;
use proptest::prelude::*;

fn celsius(text: &str) -> Temperature {
    read::<Temperature>(text, TemperatureUnit::Celsius, Locale::Point).unwrap().value
}

/// A tumbler, slightly tapered, with straight fill to 12 mm below the rim.
fn tumbler(fill: &str) -> Vessel {
    let text = [
        r#"{"name":"Tumbler","inside":{"top":"76 mm","bottom":"72 mm","height":"75 mm"},"fill":"#,
        fill,
        r#","wall":"3 mm"}"#,
    ];
    wire::read(&text.concat()).unwrap()
}

fn scene() -> Scene {
    Scene {
        vessel: tumbler(r#"{"Headspace":"12 mm"}"#),
        stuff: Stuff::Glass,
        vegetable: true,
        melting: None,
        properties: Properties::default(),
        pour: celsius("75"),
        start: Start::AsTheRoom,
        room: celsius("21"),
        base: Base::Wood,
        covered: false,
        tray: false,
        draught: false,
        factor: 1.0,
    }
}

fn near(a: f64, b: f64, within: f64) {
    assert!((a - b).abs() <= within, "{a} is not {b}");
}

#[test]
fn a_vessel_of_the_book_becomes_a_set_up() {
    let s = scene().setup().unwrap();
    // By hand: mean width 74 mm, 75 − 12 = 63 mm of wax, a base twice the wall.
    near(s.shape.radius, 0.037, 1e-12);
    near(s.shape.fill, 0.063, 1e-12);
    near(s.shape.rim, 0.012, 1e-12);
    near(s.shape.wall, 0.003, 1e-12);
    near(s.shape.base, 0.006, 1e-12);
    assert_eq!((s.room, s.vessel, s.pour), (21.0, 21.0, 75.0));
    let share = Scene { vessel: tumbler(r#"{"Share":"80 %"}"#), ..scene() }.setup().unwrap();
    near(share.shape.fill, 0.060, 1e-12);
    // 200 g at the liquid's own density: 200 g ÷ (ρ π r²).
    let weight = Scene { vessel: tumbler(r#"{"Weight":"200 g"}"#), ..scene() }.setup().unwrap();
    near(weight.mass(), 0.2, 1e-9);
    let tin = Scene { stuff: Stuff::Steel, ..scene() }.setup().unwrap();
    near(tin.shape.base, 0.003, 1e-12);
}

#[test]
fn each_circumstance_does_what_the_trade_says() {
    // common practice, no source
    let solid = |scene: Scene| {
        let f = freeze(&scene.setup().unwrap(), &Detail { frames: 0, ..Detail::FINE }).unwrap();
        f.solid.unwrap()
    };
    let plain = solid(scene());
    let warmed = Scene { start: Start::At(celsius("60")), ..scene() };
    assert!(solid(warmed) > plain, "a warmed vessel freezes later");
    let oven = Scene { start: Start::Oven(celsius("90"), 10), ..scene() };
    let at = oven.setup().unwrap().vessel;
    assert!(at > 30.0 && at < 90.0, "{at}");
    assert!(solid(Scene { draught: true, ..scene() }) < plain, "moving air speeds it");
    assert!(solid(Scene { covered: true, ..scene() }) > plain, "a cover slows it");
    assert!(solid(Scene { tray: true, ..scene() }) > plain, "neighbours slow it");
    assert!(solid(Scene { room: celsius("15"), ..scene() }) < plain, "a cold room speeds it");
    assert!(solid(Scene { factor: 1.5, ..scene() }) < plain);
    assert!(solid(Scene { vegetable: false, ..scene() }) < plain, "paraffin is solid first");
    let melting = Some((celsius("40"), celsius("50")));
    assert!(solid(Scene { melting, ..scene() }) < plain, "what is solid sooner on the way down");
}

/// Typed as the usual is, a property changes nothing; typed a tenth larger, each changes the wax in its own place.
#[test]
fn what_is_typed_of_a_wax_takes_the_place_of_the_usual() {
    let usual = scene().setup().unwrap().wax;
    let numbers = |w: &Wax| {
        [
            w.latent,
            w.heat_solid,
            w.heat_liquid,
            w.conduct_solid,
            w.conduct_liquid,
            w.density_liquid,
            w.density_solid,
        ]
    };
    for (at, property) in PROPERTIES.iter().enumerate() {
        let said = property.usual(true, Voice::default());
        let value: f64 = said.split(' ').next().unwrap().parse().unwrap();
        for (factor, changed) in [(1.0, 0), (1.05, 1)] {
            let mut properties = Properties::default();
            properties[at] = Some(value * factor);
            let wax = Scene { properties, ..scene() }.setup().unwrap().wax;
            let unlike =
                numbers(&usual).into_iter().zip(numbers(&wax)).map(|(a, b)| (a - b).abs() > 1e-9 * a);
            let unlike: Vec<bool> = unlike.collect();
            assert_eq!(unlike.iter().filter(|u| **u).count(), changed, "{}: {said}", property.words);
            assert_eq!(unlike[at], changed == 1, "{}: {said}", property.words);
        }
    }
    let mut properties = Properties::default();
    properties[0] = Some(-1.0);
    let why = Scene { properties, ..scene() }.setup().unwrap_err().say(Voice::default());
    assert!(why.starts_with("The heat of melting is −1000 J/kg"), "{why}");
}

#[test]
fn a_log_is_drawn_over_its_curve() {
    let log = [(0.0, 75.0), (600.0, 60.0), (1200.0, 50.0)];
    let log: Vec<_> = log.into_iter().map(|(seconds, celsius)| Reading { seconds, celsius }).collect();
    let chart = log_chart(&log, &[75.0, 62.0, 49.0], Voice::default()).unwrap();
    // By hand: 480 across 1200 s; from 76 °C at the top to 48 °C at 216.
    assert_eq!(chart.dots, [(0, 8, false), (240, 123, false), (480, 201, false)]);
    assert_eq!(chart.curve, "M0 8L240 108L480 208");
    // The warmest at the right under the top, the coldest at the left above the foot, the times below it.
    let words: Vec<_> = chart.words.iter().map(|w| (w.x, w.y, w.anchor, w.text.as_str())).collect();
    assert_eq!(
        words,
        [
            (480, 18, "end", "75 °C"),
            (0, 210, "start", "49 °C"),
            (0, 235, "start", "the pour"),
            (480, 235, "end", "20 min")
        ]
    );
    assert_eq!(log_chart(&[], &[], Voice::default()), None);
    // One moment only, or one temperature.
    let log = |seconds, celsius| [Reading { seconds: 0.0, celsius: 75.0 }, Reading { seconds, celsius }];
    assert_eq!(log_chart(&log(0.0, 60.0), &[], Voice::default()), None);
    assert_eq!(log_chart(&log(600.0, 75.0), &[], Voice::default()), None);
    assert!(log_chart(&log(600.0, 60.0), &[], Voice::default()).is_some());
}

#[test]
fn what_cannot_be_gets_a_sentence() {
    let why = |scene: Scene| scene.setup().unwrap_err().say(Voice::default());
    let bare: Vessel = wire::read(r#"{"name":"Jar","fill":{"Weight":"200 g"},"wall":"3 mm"}"#).unwrap();
    assert_eq!(Scene { vessel: bare, ..scene() }.setup().unwrap_err(), SceneError::NoInside);
    let mut thin = tumbler(r#"{"Share":"80 %"}"#);
    thin.wall = None;
    assert!(why(Scene { vessel: thin, ..scene() }).contains("thickness of its wall"));
    let over = tumbler(r#"{"Headspace":"80 mm"}"#);
    assert_eq!(Scene { vessel: over, ..scene() }.setup().unwrap_err(), SceneError::NoRoom);
    assert!(why(Scene { pour: celsius("40"), ..scene() }).contains("not wholly melted"));
    assert!(why(Scene { room: celsius("39"), ..scene() }).contains("never sets"));
    let swapped = Some((celsius("55"), celsius("45")));
    assert!(why(Scene { melting: swapped, ..scene() }).contains("Swap the two"));

    // In the degrees and with the sign of who reads it: 0 °C is 32 °F, 40 °C is 104 °F (NIST SP 811, B.8).
    let voice = Voice { temperature: TemperatureUnit::Fahrenheit, locale: Locale::Comma, ..Voice::default() };
    let said = |scene: Scene| scene.setup().unwrap_err().say(voice);
    let cold = said(Scene { pour: celsius("40"), ..scene() });
    assert!(cold.starts_with("At 104,0 °F this wax is not wholly melted"), "{cold}");
    let warm = said(Scene { room: celsius("39"), ..scene() });
    assert!(warm.starts_with("In a room of 102,2 °F"), "{warm}");
    let swap = said(Scene { melting: swapped, ..scene() });
    assert!(swap.contains("melted at 113,0 °F and still solid at 131,0 °F"), "{swap}");
    let room = said(Scene { room: celsius("-50"), ..scene() });
    assert!(room.contains("has to be between −40,0 °F and 212,0 °F"), "{room}");
    let mut thick = tumbler(r#"{"Share":"80 %"}"#);
    thick.wall = Some(read("60.5 mm", LengthUnit::Millimetre, Locale::Point).unwrap());
    let wall = said(Scene { vessel: thick, ..scene() });
    assert!(wall.contains("is 60,5 mm; it has to be between 0 and 50 mm."), "{wall}");
    for sentence in [cold, warm, swap, room] {
        assert!(!sentence.contains("°C"), "{sentence}");
    }
}

/// The set-up goes through the numbers unchanged.
#[test]
fn every_property_goes_along() {
    let setup: Setup = scene().setup().unwrap();
    let numbers = job(&setup, &Job::Freeze);
    let bits = |job: &[f64]| reckon(job).into_iter().map(f32::to_bits).collect::<Vec<_>>();
    for (at, number) in numbers.iter().enumerate().take(numbers.len() - 1) {
        // What the wall radiates is in the film already.
        if at == 19 {
            continue;
        }
        let mut other = numbers.clone();
        other[at] = number * 1.02 + 1e-6;
        assert!(bits(&other) != bits(&numbers), "number {at} makes no difference");
    }
}
