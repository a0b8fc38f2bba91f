//! From a vessel of the book to how it freezes, and back to words and pictures.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use potside::bench::{
    Hung, PROPERTIES, Properties, Scene, SceneError, Start, Stuff, Sweep, differences, duration,
    fitted as fitted_words, log_chart, moment, read_log, reckoned, results, said,
};
use potside::heat::{
    Base, Colours, Detail, Freezing, Job, Measure, Reading, Setup, Wax, compare, freeze, job, lay_over, map,
    paint, reckon,
};
use potside::quantity::{Locale, Temperature, TemperatureUnit, Voice, read};
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
    let why = Scene { properties, ..scene() }.setup().unwrap_err().to_string();
    assert!(why.starts_with("The heat of melting is -1000 J/kg"), "{why}");
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
    let why = |scene: Scene| scene.setup().unwrap_err().to_string();
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
}

#[test]
fn beside_the_page_it_is_the_same() {
    let setup = scene().setup().unwrap();
    let whole = freeze(&setup, &Detail::FINE).unwrap();
    let back = Freezing::of_numbers(&reckon(&job(&setup, &Job::Freeze))).unwrap();
    for measure in Measure::ALL {
        let (a, b) = (measure.of(&whole), measure.of(&back));
        assert_eq!(a.map(|x| x as f32), b.map(|x| x as f32), "{measure:?}");
    }
    assert_eq!(whole.picture.seconds, back.picture.seconds);
    for at in 0..whole.picture.seconds.len() {
        assert_eq!(whole.picture.celsius(at), back.picture.celsius(at));
        assert_eq!(whole.picture.solid(at), back.picture.solid(at));
    }
    assert_eq!(whole.picture.wax_layers, back.picture.wax_layers);

    let pours = vec![45.0, 60.0, 80.0];
    let mut expected = Vec::new();
    map(&setup, &pours, &[40.0], Measure::WallRate, |_, _, v| {
        expected.push(v.map(|v| v as f32));
        true
    });
    let row = reckon(&job(&setup, &Job::Row { measure: Measure::WallRate, vessel: 40.0, pours }));
    let row: Vec<Option<f32>> = row.into_iter().map(|v| (!v.is_nan()).then_some(v)).collect();
    assert_eq!(row, expected);
    assert_eq!(row[0], None, "45 °C is below where this wax is melted");

    // A log made by the same wax in a workshop whose air takes a quarter more.
    let probe = (0.0, 0.03);
    let quick = Scene { factor: 1.25, ..scene() }.setup().unwrap();
    let trace = freeze(&quick, &Detail { probe: Some(probe), ..Detail::FINE }).unwrap().trace;
    let log: Vec<Reading> =
        trace.iter().step_by(12).map(|&(seconds, celsius)| Reading { seconds, celsius }).collect();
    let fitted = reckon(&job(&setup, &Job::LayOver { probe, log: log.clone() }));
    let (direct, reckoned) = lay_over(&setup, &log, probe).unwrap();
    assert_eq!(fitted[..2], [direct.factor as f32, direct.residual as f32]);
    assert_eq!(fitted.len(), 2 + log.len());
    for ((said, exact), read) in fitted[2..].iter().zip(&reckoned).zip(&log) {
        assert_eq!(*said, *exact as f32);
        near(*exact, read.celsius, 1.0);
    }
    near(f64::from(fitted[0]), 1.25, 0.03);
}

#[test]
fn nonsense_is_answered_with_nothing() {
    assert_eq!(reckon(&[]), [0.0; 0]);
    let setup = scene().setup().unwrap();
    let mut cut = job(&setup, &Job::Freeze);
    cut.pop();
    assert_eq!(reckon(&cut), [0.0; 0]);
    assert_eq!(Freezing::of_numbers(&[]), None);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn any_numbers_are_survived(numbers in prop::collection::vec(prop::num::f64::ANY, 0..40), back in prop::collection::vec(prop::num::f32::ANY, 0..60)) {
        let _ = reckon(&numbers);
        let _ = Freezing::of_numbers(&back);
    }
}

#[test]
fn told_in_words() {
    let f = freeze(&scene().setup().unwrap(), &Detail::FINE).unwrap();
    let voice = Voice::default();
    let told = results(&f, voice);
    assert_eq!(told.len(), 10);
    // Closed in under the skin, about the middle of 63 mm: where a sinkhole would open.
    let (_, last) = told.iter().find(|(what, _)| *what == "Sets last").unwrap();
    let deep: f64 = last.strip_suffix(" mm below the top, in the middle").unwrap().parse().unwrap();
    assert!((15.0..48.0).contains(&deep), "{last}");
    let shrinks = &told.last().unwrap().1;
    assert_eq!(*shrinks, format!("{:.1} %", 100.0 * f.contraction.total()));
    assert!(told.iter().all(|(what, how)| !what.is_empty() && !how.is_empty()), "{told:?}");
    let fahrenheit = Voice { temperature: TemperatureUnit::Fahrenheit, ..voice };
    // 0.1 K/s is 6 K a minute, and 10.8 °F.
    assert_eq!(said(Measure::WallRate, 0.1, voice), "6.0 °C a minute");
    assert_eq!(said(Measure::WallRate, 0.1, fahrenheit), "10.8 °F a minute");
    assert_eq!(said(Measure::Enclosed, 0.424, voice), "42 %");
    assert_eq!(said(Measure::KeepBack, 12.34, voice), "12.3 g (0.44 oz)");
    for (seconds, words) in [
        (0.0, "0 min"),
        (89.0, "1 min"),
        (5_940.0, "99 min"),
        (6_000.0, "1 h 40 min"),
        (7_800.0, "2 h 10 min"),
    ] {
        assert_eq!(duration(seconds), words);
    }
    assert!(moment(&f, 0.0, voice).ends_with(" 0 % solid."), "{}", moment(&f, 0.0, voice));
    assert!(moment(&f, 43_200.0, voice).ends_with(" 100 % solid."));
    assert_eq!(moment(&f, 0.0, voice).split(',').next(), Some("Middle 75 °C"));
    let apart = differences(&compare(&f, &f), voice);
    assert_eq!(apart.len(), Measure::ALL.len());
    assert!(
        apart.iter().any(|s| s.starts_with("Wax to keep back: ") && s.contains(" oz) against ")),
        "{apart:?}"
    );
}

/// The why of a freezing has the values that the set-up has, and its densities come to the shrinking.
#[test]
fn how_a_freezing_came_about() {
    let setup = scene().setup().unwrap();
    let f = freeze(&setup, &Detail::FINE).unwrap();
    let why = reckoned(&setup, &f, Voice::default());
    let value = |why: &potside::quantity::Why, name: &str| {
        why.values.iter().find(|v| v.name == name).unwrap_or_else(|| panic!("{name}")).clone()
    };
    assert_eq!(value(&why, "inside, across").shown, "74.0 mm");
    assert_eq!(value(&why, "melting range").shown, "34 °C to 48 °C");
    assert_eq!(value(&why, "heat of melting").shown, "130 kJ/kg");
    assert_eq!(value(&why, "film at the side").shown, format!("{:.1} W/(m²·K)", setup.film.side));
    assert!(value(&why, "film at the top").why.unwrap().source.contains("McAdams"));
    assert_eq!(why.result, ["solid after ", &duration(f.solid.unwrap())].concat());
    let shrinking = *value(&why, "shrinks by").why.unwrap();
    let density =
        |name: &str| value(&shrinking, name).shown.strip_suffix(" g/mL").unwrap().parse::<f64>().unwrap();
    let share = 1.0 - density("density as poured") / density("density when cold");
    near(share, f.contraction.total(), 1e-3);
    let keep: f64 = shrinking.values.last().unwrap().shown.strip_suffix(" g").unwrap().parse().unwrap();
    near(keep, f.contraction.keep_back, 0.06);
}

#[test]
fn a_log_is_read_line_by_line() {
    let celsius = Voice::default();
    let fahrenheit = Voice { temperature: TemperatureUnit::Fahrenheit, ..celsius };
    let log = read_log("0 165\n\n20\t150 °F\n40; 60 C\n", fahrenheit).unwrap();
    assert_eq!(log.len(), 3);
    // 165 °F is 73.89 °C (NIST SP 811, B.8: (t − 32) ÷ 1.8).
    near(log[0].celsius, 73.888_888_888, 1e-6);
    assert_eq!((log[1].seconds, log[2].seconds, log[2].celsius), (1200.0, 2400.0, 60.0));
    for (text, part) in [
        ("", "at least three readings"),
        ("0 70\n20 60", "at least three readings"),
        ("70\n20 60\n30 50", "Line 1: type the minutes"),
        ("0 70\nx 60\n30 50", "Line 2: "),
        ("0 70\n\n10 hot\n30 50", "Line 3: "),
        ("0 70\n20 60\n20 50", "Line 3: the minutes have to go up"),
    ] {
        let why = read_log(text, celsius).unwrap_err();
        assert!(why.contains(part), "{text:?}: {why}");
    }
    let long: String = (0..501).map(|i| format!("{i} 50\n")).collect();
    assert!(read_log(&long, celsius).unwrap_err().contains("Type every tenth"));
    let setup = scene().setup().unwrap();
    assert_eq!(Hung::Middle.at(&setup), (0.0, 0.0315));
    near(Hung::Wall.at(&setup).0, 0.027, 1e-12);
}

#[test]
fn what_a_log_told_adds_to_what_was_in_use() {
    let (words, film) = fitted_words(1.25, 0.8, None, Voice::default());
    assert_eq!(
        words,
        "Your air takes 125 % of the heat that is reckoned for a usual one. What is left between the two is 0.8 °C on average."
    );
    let again = fitted_words(
        0.8,
        0.5,
        Some(film),
        Voice { temperature: TemperatureUnit::Fahrenheit, ..Voice::default() },
    );
    assert!(again.0.starts_with("Your air takes 100 % ") && again.0.contains(" 0.9 °F "), "{}", again.0);
}

const COLOURS: Colours = Colours {
    scale: [[0, 0, 255], [0, 0, 200], [0, 200, 0], [200, 0, 0], [255, 0, 0]],
    front: [1, 2, 3],
    from: 21.0,
    to: 75.0,
};

fn painted(at: usize, width: usize, height: usize) -> Vec<u8> {
    let f = freeze(&scene().setup().unwrap(), &Detail::FINE).unwrap();
    let mut pixels = vec![9; 4 * width * height];
    paint(&f.picture, at, &COLOURS, width, height, &mut pixels);
    pixels
}

#[test]
fn the_picture_is_the_vessel() {
    let (width, height) = (120, 100);
    let pixels = painted(0, width, height);
    let at = |x: usize, y: usize| <[u8; 4]>::try_from(&pixels[4 * (y * width + x)..][..4]).unwrap();
    // 81 mm high in all on 100 pixels; 80 mm wide: 99 pixels, in the middle.
    assert_eq!(at(60, 60)[..3], [255, 0, 0], "hot wax in the middle");
    assert!(at(60, 60)[3] < 255, "liquid is drawn clearer");
    assert_eq!(at(60, 2)[3], 0, "air above the wax");
    assert_eq!(at(12, 50), [0, 0, 255, 255], "the wall is as cold as the room");
    assert_eq!(at(2, 50)[3], 0, "nothing beside the vessel");
    for y in 0..height {
        for x in 0..width / 2 {
            assert_eq!(at(x, y), at(width - 1 - x, y), "both halves are the same");
        }
    }
    // Half way through there is a line between solid and liquid, and it is one pixel wide.
    let half = painted(30, width, height);
    let line = half.as_chunks::<4>().0.iter().filter(|p| p[..3] == COLOURS.front).count();
    assert!((40..600).contains(&line), "{line}");
    let cold = painted(usize::MAX, width, height);
    assert!(cold.iter().all(|p| *p == 0), "no such picture, no pixel");
    paint(&Default::default(), 0, &COLOURS, 0, 0, &mut []);
}

#[test]
fn the_map_finds_its_least() {
    let over = Sweep::over(&scene().setup().unwrap());
    assert_eq!((over.pours.len(), over.vessels.len()), (20, 20));
    near(over.pours[0], 49.0, 1e-9);
    near(over.pours[19], 95.0, 1e-9);
    near(over.vessels[0], 21.0, 1e-9);
    assert_eq!(over.least(&[]), None);
    let rows = vec![vec![f32::NAN, 5.0, 4.0], vec![3.0, 9.0, 7.0]];
    let (pour, vessel, least, most) = over.least(&rows).unwrap();
    assert_eq!((pour, vessel, least, most), (over.pours[0], over.vessels[1], 3.0, 9.0));
    assert_eq!(over.at(0.0, 1.0), Some((over.pours[0], over.vessels[0])));
    assert_eq!(over.at(1.0, 0.0), Some((over.pours[19], over.vessels[19])));
    let mut pixels = vec![7; 4 * 3 * 2];
    Sweep::paint(&rows, [[0, 0, 0], [60, 120, 240]], 3, 2, &mut pixels);
    // The first row is the lowest line.
    assert_eq!(pixels[..4], [0, 0, 0, 255]);
    assert_eq!(pixels[4..8], [60, 120, 240, 255]);
    assert_eq!(pixels[12..16], [0, 0, 0, 0], "nothing where there is no value");
    assert_eq!(pixels[16..20], [20, 40, 80, 255]);
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
