//! The times as they are told: of which gates, how closely, and how early.

use crate::common::run::{go_on, run};
use crate::shared::{START, at, before_fig, clock, notes, read, us};
use potside::pot::{Air, Run, StepKey};
use potside::quantity::{TemperatureUnit, Voice};

#[test]
fn the_first_readings() {
    assert_eq!(at(&before_fig(&[]), 0), None);
    let told = at(&before_fig(&[(0, 1880)]), 0).unwrap();
    assert_eq!(notes(&told), ["Read it once more in a few minutes: then the times are told."]);
    assert!(told.gates.is_empty() && told.chart.is_none());
    assert_eq!(told.room, "Room 72 °F, assumed");
    let told = at(&before_fig(&[(0, 1880), (4, 1840)]), 240).unwrap();
    assert_eq!(told.room, "Room 72 °F, assumed");
    assert!(told.notes.is_empty() && told.soon.is_none());
    let lines: Vec<String> =
        told.gates.iter().map(|g| format!("{}, {}: {}", g.name, g.range, g.when)).collect();
    // Newton's law by hand, 72 °F: k = ln(116/112)/4 = 0.008773 a minute; 180 °F after ln(112/108)/k = 4.15 min, 175 °F
    // after ln(112/103)/k = 9.55 min, 168 °F after ln(112/96)/k = 17.57 min. Each lies in its range.
    assert_eq!(
        lines,
        [
            "Add Fig leaf, 175–180 °F: in about 4 min (0 to 52); too cool in about 10 min (3 to 99)",
            "Pour, 168–175 °F: in about 10 min (3 to 99); too cool in about 18 min (8 to 168)"
        ]
    );
}

/// With the values that stand there one comes to the likely times.
#[test]
fn how_the_times_came_about() {
    let why = at(&before_fig(&[(0, 1880), (4, 1840)]), 240).unwrap().why.unwrap();
    let value = |name: &str| {
        let found = why.values.iter().find(|v| v.name.starts_with(name)).unwrap();
        found.shown.split(' ').next().unwrap().parse::<f64>().unwrap()
    };
    // ln 2 / 0.008773 a minute.
    assert_eq!(value("half time"), 79.0);
    assert_eq!(value("readings"), 2.0);
    let minutes = value("half time") * ((value("pot now") - value("room")) / (175.0 - value("room"))).log2();
    assert!((minutes - 9.55).abs() < 0.05, "{minutes}");
    let last = why.values.last().unwrap();
    assert_eq!((last.name.as_str(), &last.shown[..15]), ("Pour, 168–175 °F", "in about 10 min"));
    assert!(why.source.starts_with("Newton's law"));
    // A degree Celsius is 1.8 °F: the readings are as far from the curve in either.
    let run = before_fig(&[(0, 1880), (4, 1815), (8, 1790), (12, 1720)]);
    let missed = |voice: Voice| {
        let why = run.foretold(0, START + 720_000, Air::of(None, voice), voice, clock).unwrap().why.unwrap();
        let found = why.values.iter().find(|v| v.name.starts_with("what the curve misses")).unwrap();
        let (number, unit) = found.shown.split_once(' ').unwrap();
        (number.parse::<f64>().unwrap(), unit.to_owned())
    };
    let celsius = Voice { temperature: TemperatureUnit::Celsius, ..us() };
    let ((f, in_f), (c, in_c)) = (missed(us()), missed(celsius));
    assert_eq!((in_f.as_str(), in_c.as_str()), ("°F", "°C"));
    assert!(c >= 0.5 && (f - 1.8 * c).abs() < 0.15, "{f} °F, {c} °C");
    // Without a curve there is nothing to ask about.
    assert_eq!(at(&before_fig(&[(0, 1880)]), 0).unwrap().why, None);
}

/// The likely time is that of Newton's law, to the second: the sound comes half a minute before.
#[test]
fn half_a_minute_before_each_gate() {
    let run = before_fig(&[(0, 1880), (4, 1840)]);
    // 180 °F: 240 + 60·ln(112/108)/0.00877293 = 488.7 s after the first reading; 175 °F: 812.9 s; 168 °F: 1294.3 s.
    for (second, expected) in [
        (458, None),
        (459, Some("Nearly at 180 °F: add Fig leaf.")),
        (488, Some("Nearly at 180 °F: add Fig leaf.")),
        (490, None),
        (782, None),
        (783, Some("Nearly down to 175 °F: add Fig leaf now.")),
        (814, None),
        (1264, None),
        (1265, Some("Nearly down to 168 °F: pour now.")),
    ] {
        assert_eq!(at(&run, second).unwrap().soon.as_deref(), expected, "at {second} s");
    }
    let whens = |second| at(&run, second).unwrap().gates.into_iter().map(|g| g.when).collect::<Vec<_>>();
    assert!(whens(600)[0].starts_with("now; too cool "));
    assert_eq!(whens(1300), ["too cool: warm the pot"; 2]);
}

/// Soonest and latest as the fit has them (`tests/heat_pot.rs`), in whole minutes that hold them.
#[test]
fn a_time_is_told_as_closely_as_it_is_known() {
    let when = |run: &Run, second| at(run, second).unwrap().gates[0].when.clone();
    // Of three readings, 180 °F comes after 392 to 663 s, 175 °F after 640 to 1163 s.
    let three = before_fig(&[(0, 1880), (4, 1840), (8, 1801)]);
    for (second, expected) in [
        (143, "in 4 to 9 min; too cool in 8 to 17 min"),
        // As far apart as twice the sooner and four, and a minute more.
        (213, "in 2 to 8 min; too cool in 7 to 16 min"),
        (273, "in about 4 min (1 to 7); too cool in 6 to 15 min"),
        (303, "in 1 to 6 min; too cool in about 8 min (5 to 15)"),
        (333, "in about 3 min (0 to 6); too cool in 5 to 14 min"),
    ] {
        assert_eq!(when(&three, second), expected, "at {second} s");
    }
    // Of ten readings on 72 + 128·exp(−0.03·t), t in minutes, 180 °F comes after 329 to 351 s, 175 °F after 434 to 465 s.
    let mut ten = before_fig(&[]);
    for (index, tenths) in
        [2000, 1975, 1950, 1925, 1902, 1878, 1855, 1833, 1811, 1789].into_iter().enumerate()
    {
        read(&mut ten, 40 * index as u64, tenths);
    }
    for (second, expected) in [
        (30, "in 4 to 6 min; too cool in 6 to 7 min"),
        (269, "in 1 to 2 min; too cool in 2 to 4 min"),
        (270, "within 2 min; too cool in 2 to 3 min"),
        (290, "within 2 min; too cool in 2 to 3 min"),
        (291, "within a minute; too cool in 2 to 3 min"),
        (340, "now; too cool in 1 to 2 min"),
        (390, "now; too cool within a minute"),
        (435, "too cool: warm the pot"),
    ] {
        assert_eq!(when(&ten, second), expected, "at {second} s");
    }
    // On 72 + 116·exp(−k·t) that falls half a degree in an hour, 180 °F comes after ln(116/108)/k = 16.5 hours.
    assert_eq!(when(&before_fig(&[(0, 1880), (60, 1875)]), 3600), "in many hours; too cool in many hours");
}

#[test]
fn parts_of_one_range_are_one_gate() {
    let names = |line| {
        let mut run = run(4);
        go_on(&mut run, Some(StepKey::Add { pour: 0, line }));
        read(&mut run, 0, 1950);
        read(&mut run, 240, 1900);
        at(&run, 240).unwrap().gates.into_iter().map(|g| g.name).collect::<Vec<_>>()
    };
    // Red and Blue at 180–185 °F; the hardener at 185–190 °F, Sun guard at 186–190 °F. Two are told ahead.
    assert_eq!(names(4), ["Add Red, Blue", "Add Fig leaf", "Pour"]);
    assert_eq!(names(2), ["Add Sun guard", "Add Hardener", "Pour"]);
}
