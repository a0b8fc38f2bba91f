//! A freezing and a cooling log in words.

use super::*;

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

proptest! {
    /// A log comes back from what is kept, in either unit, with a point and with a comma, as it was read to a tenth of a
    /// degree; also from a freezer.
    #[test]
    fn a_log_that_is_kept_comes_back(
        minutes in prop::collection::btree_set(0..6000_u32, 3..40),
        tenths in prop::collection::vec(-400..4000_i32, 40),
        fahrenheit in any::<bool>(),
        comma in any::<bool>(),
    ) {
        let temperature = if fahrenheit { TemperatureUnit::Fahrenheit } else { TemperatureUnit::Celsius };
        let locale = if comma { Locale::Comma } else { Locale::Point };
        let voice = Voice { temperature, locale, ..Voice::default() };
        let sign = if comma { "," } else { "." };
        let unit = if fahrenheit { "°F" } else { "°C" };
        let line = |(at, t): (&u32, &i32)| {
            let minus = if *t < 0 { "−" } else { "" };
            format!("{at} {minus}{}{sign}{} {unit}\n", t.abs() / 10, t.abs() % 10)
        };
        let text: String = minutes.iter().zip(&tenths).map(line).collect();
        let log = read_log(&text, voice).unwrap();
        prop_assert_eq!(write_log(&log, voice), text.clone());
        let hung = if comma { Hung::Wall } else { Hung::Middle };
        let (back, at) = kept_log(&keep_log(&log, hung)).unwrap();
        prop_assert_eq!(at, hung);
        prop_assert_eq!(write_log(&back, voice), text);
    }
}

#[test]
fn what_is_no_log_is_not_kept() {
    assert_eq!(
        keep_log(&read_log("0 165 °F\n20 150 °F\n40 60", Voice::default()).unwrap(), Hung::Wall),
        "wall\n0 73.889 °C\n20 65.556 °C\n40 60.000 °C\n"
    );
    for text in ["", "wall\n", "0 70.0 °C\n", "zero 70 °C\n1 60 °C\n2 50 °C"] {
        assert!(kept_log(text).is_none(), "{text:?}");
    }
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
