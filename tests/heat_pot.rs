//! Mixing at the pot, and the pot's cooling foretold from readings.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use potside::heat::{Cooling, HeatError, Portion, Pot, READING_ERROR, Reading, Room, Until, cooling, mix};
use proptest::prelude::*;

fn portion(grams: f64, celsius: f64, specific_heat: f64) -> Portion {
    Portion { grams, celsius, specific_heat, melting: 0.0 }
}

/// Readings every `step` minutes on a curve, each moved by `noise`.
fn readings(room: f64, excess: f64, tau: f64, minutes: &[f64], noise: impl Fn(usize) -> f64) -> Vec<Reading> {
    let on = |m: f64| room + excess * (-m * 60.0 / tau).exp();
    minutes
        .iter()
        .enumerate()
        .map(|(i, m)| Reading { seconds: 1000.0 + m * 60.0, celsius: on(*m) + noise(i) })
        .collect()
}

/// Numbers that look random and are the same every time: the sum of twelve uniform ones less six.
struct Noise(u64);
impl Noise {
    fn next(&mut self) -> f64 {
        let mut one = || {
            self.0 = self.0.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
            (self.0 >> 33) as f64 / (1u64 << 31) as f64
        };
        (0..12).map(|_| one()).sum::<f64>() - 6.0
    }
}

#[track_caller]
fn near(value: f64, expected: f64, within: f64) {
    assert!((value - expected).abs() <= within, "{value} is not {expected} ± {within}");
}

#[test]
fn mixing_is_calorimetry() {
    // 454 g at 75 °C (c 2.2) with 36 g at 20 °C (c 2.0): 71.30 °C, computed from Σmc·T / Σmc.
    let m = mix(portion(454.0, 75.0, 2.2), None, portion(36.0, 20.0, 2.0)).unwrap();
    near(m.after, 71.30, 0.005);
    near(m.fall, 3.70, 0.005);
    // By hand: a pot of 800 g of aluminium (c 0.9) holds 720 J/K more: fall = 55·72/(998.8 + 720 + 72).
    let pot = Pot { grams: 800.0, specific_heat: 0.9 };
    let m = mix(portion(454.0, 75.0, 2.2), Some(pot), portion(36.0, 20.0, 2.0)).unwrap();
    near(m.fall, 55.0 * 72.0 / 1790.8, 1e-9);
    // Told backwards: the pot that must be at 71 °C after has to be at this before.
    let before = m.before(71.0).unwrap();
    let again = mix(portion(454.0, before, 2.2), Some(pot), portion(36.0, 20.0, 2.0)).unwrap();
    near(again.after, 71.0, 1e-9);
    // By hand, 50 g of flakes (c 2.2, melting takes 165 J/g) at 20 °C into 500 g at 80 °C:
    // (50·2.2·60 + 50·165) / (550·2.2) = 14850 / 1210 = 12.27 K.
    let flakes = Portion { melting: 165.0, ..portion(50.0, 20.0, 2.2) };
    let m = mix(portion(500.0, 80.0, 2.2), None, flakes).unwrap();
    near(m.fall, 12.2727, 1e-4);
    near(mix(portion(500.0, m.before(70.0).unwrap(), 2.2), None, flakes).unwrap().after, 70.0, 1e-9);
    // Nothing added, nothing changed, to the last bit.
    assert_eq!(mix(portion(454.0, 75.1, 2.2), None, portion(0.0, 20.0, 2.0)).unwrap().after, 75.1);
}

#[test]
fn mixing_refuses_with_a_sentence() {
    let good = portion(454.0, 75.0, 2.2);
    let cases = [
        (mix(portion(-1.0, 75.0, 2.2), None, good), "The weight is -1 g"),
        (mix(portion(f64::NAN, 75.0, 2.2), None, good), "The weight is not a number"),
        (mix(good, None, portion(10.0, 20.0, 0.0)), "The specific heat is 0"),
        (mix(portion(0.0, 75.0, 2.2), None, portion(0.0, 20.0, 2.0)), "nothing to mix"),
        (mix(portion(1.0, 400.0, 2.2), None, good), "The temperature is 400"),
    ];
    for (result, part) in cases {
        let text = result.unwrap_err().to_string();
        assert!(text.contains(part), "{text}");
    }
}

#[test]
fn a_clean_curve_is_found_again() {
    // θ = exp(−hAt/(mc)): 0.2 kg wax (c 2200) with 0.25 kg glass (c 750), A 0.025290 m², h 10, air 20 °C:
    // τ 2481.2 s, 70 → 60 °C in 553.7 s (computed from the lumped formula).
    let tau = (0.2 * 2200.0 + 0.25 * 750.0) / (10.0 * 0.025290);
    near(tau, 2481.2, 0.1);
    let r = readings(20.0, 50.0, tau, &[0.0, 5.0, 15.0, 30.0, 60.0, 90.0], |_| 0.0);
    for room in [Room::Known(20.0), Room::Fitted] {
        let c = cooling(&r, room).unwrap();
        near(c.room, 20.0, 1e-3);
        near(c.half(), tau * 2f64.ln(), 0.2);
        assert!((c.room_spread() > 0.0) == (room == Room::Fitted));
        assert!(c.fits && c.odd.is_none() && c.residual < 1e-4);
        let Until::Within { soonest, likely, latest } = c.until(60.0, 1000.0) else { panic!("not within") };
        near(likely, 553.7, 0.1);
        assert!(soonest < likely && latest.is_none_or(|l| l > likely));
    }
}

#[test]
fn two_readings_are_enough_and_more_are_better() {
    let width = |n: usize| {
        let r = readings(21.0, 64.0, 3000.0, &[0.0, 3.0, 6.0, 9.0, 12.0, 15.0][..n], |_| 0.0);
        let c = cooling(&r, Room::Known(21.0)).unwrap();
        let now = r[n - 1].seconds;
        match c.until(57.0, now) {
            Until::Within { soonest, latest: Some(latest), .. } => latest - soonest,
            other => panic!("{other:?}"),
        }
    };
    let widths: Vec<f64> = [3, 4, 6].map(width).into();
    assert!(widths[0] > widths[1] && widths[1] > widths[2], "{widths:?}");
    let two = cooling(&readings(21.0, 64.0, 3000.0, &[0.0, 10.0], |_| 0.0), Room::Known(21.0)).unwrap();
    assert!(matches!(two.until(57.0, 1600.0), Until::Within { .. }));
    assert_eq!(two.until(84.0, 1600.0), Until::Past);
    assert_eq!(two.until(20.0, 1600.0), Until::Never);
    // Two readings a fall of only 1 °C apart: the latest time is not known, and said to be so.
    let close = cooling(&readings(21.0, 64.0, 3000.0, &[0.0, 0.8], |_| 0.0), Room::Known(21.0)).unwrap();
    assert!(matches!(close.until(60.0, 1060.0), Until::Within { latest: None, .. }));
}

/// How often the true time of a gate lies in the range, over many noisy series.
fn coverage(room: Room, minutes: &[f64], gate: f64) -> f64 {
    let mut noise = Noise(7);
    let (mut held, mut told) = (0.0, 0.0);
    for _ in 0..600 {
        let scatter: Vec<f64> = minutes.iter().map(|_| READING_ERROR * noise.next()).collect();
        let r = readings(22.0, 60.0, 2800.0, minutes, |i| scatter.get(i).copied().unwrap_or(0.0));
        let Ok(c) = cooling(&r, room) else { continue };
        let last = r.iter().map(|r| r.seconds).fold(0.0, f64::max);
        let truth = 2800.0 * (60.0f64 / (gate - 22.0)).ln() - (last - 1000.0);
        if let Until::Within { soonest, latest, .. } = c.until(gate, last) {
            told += 1.0;
            held += f64::from(soonest <= truth && latest.is_none_or(|l| truth <= l));
        }
    }
    assert!(told > 300.0);
    held / told
}

#[test]
fn the_range_holds_as_often_as_it_says() {
    for minutes in [&[0.0, 5.0][..], &[0.0, 3.0, 6.0, 9.0], &[0.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0]] {
        let share = coverage(Room::Known(22.0), minutes, 58.0);
        assert!((0.92..=1.0).contains(&share), "{} readings: {share}", minutes.len());
    }
    let share = coverage(Room::Fitted, &[0.0, 4.0, 8.0, 12.0, 16.0, 20.0, 24.0, 28.0], 48.0);
    assert!((0.90..=1.0).contains(&share), "room fitted: {share}");
}

#[test]
fn the_reading_that_stands_out_is_named() {
    let minutes = [0.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0];
    for (odd, off) in [(3, 4.0), (5, -4.0), (0, 5.0), (6, 5.0)] {
        let r =
            readings(21.0, 62.0, 2500.0, &minutes, |i| if i == odd { off } else { 0.1 * (i as f64).sin() });
        let c = cooling(&r, Room::Known(21.0)).unwrap();
        let found = c.odd.unwrap_or_else(|| panic!("reading {odd} not found"));
        assert_eq!(found.index, odd);
        near(found.above, off, 0.6);
        assert!(!c.fits);
        let words = if off > 0.0 { "warmer" } else { "colder" };
        assert!(found.to_string().contains(words) && found.to_string().contains(&format!("{}", odd + 1)));
    }
    let mut noise = Noise(3);
    let alarms = (0..200)
        .filter(|_| {
            let s: Vec<f64> = minutes.iter().map(|_| READING_ERROR * noise.next()).collect();
            !cooling(&readings(21.0, 62.0, 2500.0, &minutes, |i| s[i]), Room::Known(21.0)).unwrap().fits
        })
        .count();
    assert!(alarms <= 24, "{alarms} false alarms in 200 honest series");
}

#[test]
fn a_heater_left_on_does_not_fit() {
    // Falling, then held: no cooling curve.
    let held = [85.0, 80.0, 75.0, 75.0, 75.5, 76.0, 76.0, 76.0];
    let r: Vec<Reading> =
        held.iter().enumerate().map(|(i, t)| Reading { seconds: 180.0 * i as f64, celsius: *t }).collect();
    assert!(!cooling(&r, Room::Known(20.0)).unwrap().fits);
}

#[test]
fn bad_readings_get_a_sentence() {
    let r = |list: &[(f64, f64)]| -> Vec<Reading> {
        list.iter().map(|(seconds, celsius)| Reading { seconds: *seconds, celsius: *celsius }).collect()
    };
    let ask = |list: &[(f64, f64)], room| -> Result<Cooling, HeatError> { cooling(&r(list), room) };
    let known = Room::Known(20.0);
    let cases = [
        (ask(&[], known), "0 readings so far"),
        (ask(&[(0.0, 80.0)], known), "1 readings so far"),
        (ask(&[(0.0, 80.0), (60.0, 78.0)], Room::Fitted), "2 readings so far"),
        (ask(&[(0.0, 80.0), (0.0, 78.0)], known), "same time"),
        (ask(&[(90.0, 80.0), (60.0, 78.0)], known), "same time"),
        (ask(&[(0.0, 80.0), (60.0, 80.0)], known), "do not fall"),
        (ask(&[(0.0, 80.0), (60.0, 81.0)], known), "do not fall"),
        (ask(&[(0.0, 80.0), (60.0, 19.0)], known), "not above the room"),
        (ask(&[(0.0, 80.0), (60.0, 0.0), (120.0, -20.0)], Room::Fitted), "not above the room's -10.0"),
        (ask(&[(0.0, 80.0), (60.0, f64::NAN)], known), "not a number"),
        (ask(&[(0.0, f64::INFINITY), (60.0, 70.0)], known), "not a number"),
        (ask(&[(0.0, 80.0), (60.0, 70.0)], Room::Known(90.0)), "The room temperature is 90"),
        // A dead straight fall: any room would do.
        (ask(&[(0.0, 80.0), (60.0, 79.0), (120.0, 78.0)], Room::Fitted), "do not yet tell how warm"),
    ];
    for (result, part) in cases {
        let text = result.map(|c| format!("{c:?}")).unwrap_err().to_string();
        assert!(text.contains(part), "{text}");
    }
}

proptest! {
    #[test]
    fn mixing_lies_between_and_keeps_the_heat(
        a in (0.1f64..5000.0, 10.0f64..120.0, 0.3f64..4.0), b in (0.1f64..5000.0, 10.0f64..120.0, 0.3f64..4.0),
    ) {
        let (x, y) = (portion(a.0, a.1, a.2), portion(b.0, b.1, b.2));
        let m = mix(x, None, y).unwrap();
        prop_assert!(m.after >= a.1.min(b.1) - 1e-9 && m.after <= a.1.max(b.1) + 1e-9);
        let (before, after) = (a.0 * a.1 * a.2 + b.0 * b.1 * b.2, m.heat_capacity * m.after);
        prop_assert!((before - after).abs() <= 1e-9 * before);
    }

    #[test]
    fn any_falling_series_gives_finite_times_in_order(
        room in 5.0f64..30.0, excess in 30.0f64..90.0, tau in 300.0f64..20000.0,
        falls in prop::collection::vec((60.0f64..600.0, -0.6f64..0.6), 2..9), gate in 32.0f64..60.0,
    ) {
        let mut seconds = 0.0;
        let r: Vec<Reading> = falls.iter().map(|(step, off)| {
            seconds += step;
            Reading { seconds, celsius: room + excess * (-seconds / tau).exp() + off }
        }).collect();
        if let Ok(c) = cooling(&r, Room::Known(room)) {
            let b = c.at(seconds + 300.0);
            prop_assert!(b.low.is_finite() && b.low <= b.likely && b.likely <= b.high && b.high.is_finite());
            prop_assert!(c.at(seconds + 600.0).likely <= b.likely);
            if let Until::Within { soonest, likely, latest } = c.until(gate, seconds) {
                prop_assert!(soonest >= 0.0 && soonest <= likely && likely.is_finite());
                prop_assert!(latest.is_none_or(|l| l >= likely && l.is_finite()));
            }
        }
    }
}
