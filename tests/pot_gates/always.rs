//! What holds whatever is read, and however late it is.

use crate::shared::{START, at, before_fig, clock, fahrenheit, points, read, us};
use potside::pot::{Air, HIGH, WIDE};
use proptest::prelude::*;

/// The numbers in a sentence of times, in their order.
fn numbers(when: &str) -> Vec<u32> {
    when.split(|c: char| !c.is_ascii_digit()).filter_map(|n| n.parse().ok()).collect()
}

/// All coordinates of a path lie in the picture.
fn inside(path: &str) -> bool {
    points(path).iter().all(|(x, y)| (0..=WIDE).contains(x) && (0..=HIGH).contains(y))
}

proptest! {
    #[test]
    fn whatever_is_read_the_times_are_in_order(
        readings in prop::collection::vec((0u64..2000, -400i128..4000), 0..12),
        now in 0u64..40_000, room in prop::option::of(-300i128..2000),
    ) {
        let mut run = before_fig(&[]);
        let mut seconds = 0;
        for (pause, tenths) in &readings {
            seconds += pause;
            read(&mut run, seconds, *tenths);
        }
        let air = Air::of(room.map(fahrenheit), us());
        let Some(told) = run.foretold(0, START + now * 1000, air, us(), clock) else {
            prop_assert!(readings.is_empty());
            return Ok(());
        };
        for gate in &told.gates {
            prop_assert!(!gate.when.contains("NaN") && !gate.when.contains('-'), "{}", gate.when);
            for part in gate.when.split(';') {
                let mut numbers = numbers(part);
                if part.contains("about") {
                    // The likeliest stands first, between the others.
                    let likely = numbers.remove(0);
                    prop_assert!(numbers[0] <= likely + 1 && numbers.get(1).is_none_or(|last| likely <= *last));
                }
                prop_assert!(numbers.len() <= 2 && numbers.is_sorted(), "{}", gate.when);
                prop_assert!(numbers.iter().all(|n| *n <= 600));
            }
        }
        if let Some(chart) = told.chart {
            prop_assert!(inside(&chart.curve) && inside(&chart.band), "{chart:?}");
            prop_assert!(inside(&chart.at.replace('V', "L0 ")));
            prop_assert!(chart.dots.iter().all(|(x, y, _)| (0..=WIDE).contains(x) && (0..=HIGH).contains(y)));
            prop_assert!(chart.strips.iter().all(|(top, high)| *top >= 0 && *high >= 1 && top + high <= HIGH));
            let mut lines: Vec<(bool, i32)> = chart.words.iter().map(|w| (w.y > HIGH - 24, w.y)).collect();
            lines.retain(|(foot, _)| !foot);
            prop_assert!(lines.windows(2).all(|w| w[1].1 - w[0].1 >= 18), "{lines:?}");
        }
    }

    #[test]
    fn a_later_clock_never_puts_a_gate_further_off(second in 240u64..1500, more in 1u64..300) {
        let run = before_fig(&[(0, 1880), (4, 1840), (8, 1801)]);
        let when = |second| at(&run, second).unwrap().gates[1].when.clone();
        let (a, b) = (when(second), when(second + more));
        let last = |w: &str| numbers(w).last().copied().unwrap_or(0);
        prop_assert!(last(&b) <= last(&a), "{a} then {b}");
    }
}
