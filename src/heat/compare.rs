//! Two set-ups side by side, and many on a map.

use super::freezing::{Freezing, freeze};
use super::said::Fixed;
use super::setup::{Detail, Setup};
use std::fmt;

/// One result of a freezing.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Measure {
    Skin,
    Moving,
    Solid,
    Trimming,
    Room,
    /// Greatest cooling rate 2 mm from the wall.
    WallRate,
    /// Share closed in under the skin.
    Enclosed,
    /// Grams to keep back.
    KeepBack,
}

impl Measure {
    pub const ALL: [Self; 8] = [
        Self::Skin,
        Self::Moving,
        Self::Solid,
        Self::Trimming,
        Self::Room,
        Self::WallRate,
        Self::Enclosed,
        Self::KeepBack,
    ];

    /// Seconds, K/s, a share or grams; none where it does not come.
    pub fn of(self, f: &Freezing) -> Option<f64> {
        match self {
            Self::Skin => f.skin,
            Self::Moving => f.moving,
            Self::Solid => f.solid,
            Self::Trimming => f.trimming,
            Self::Room => f.room,
            Self::WallRate => Some(f.wall_rate),
            Self::Enclosed => f.enclosed,
            Self::KeepBack => Some(f.contraction.keep_back),
        }
    }
}

/// How the second of two set-ups differs from the first in one result. `Display` is the sentence.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Difference {
    pub measure: Measure,
    pub first: Option<f64>,
    pub second: Option<f64>,
}

/// Below this share two results are called the same: the grid does not tell them apart.
const SAME: f64 = 0.02;

/// Every result of two freezings, the second against the first.
pub fn compare(first: &Freezing, second: &Freezing) -> Vec<Difference> {
    Measure::ALL
        .iter()
        .map(|m| Difference { measure: *m, first: m.of(first), second: m.of(second) })
        .collect()
}

impl fmt::Display for Difference {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let what = match self.measure {
            Measure::Skin => "The skin closes",
            Measure::Moving => "It can be moved",
            Measure::Solid => "It is solid",
            Measure::Trimming => "The wick can be trimmed",
            Measure::Room => "It is at room temperature",
            Measure::WallRate => "The wax by the wall cools",
            Measure::Enclosed => "Wax shut in under the skin:",
            Measure::KeepBack => "Wax to keep back:",
        };
        let (Some(a), Some(b)) = (self.first, self.second) else {
            return match (self.first, self.second) {
                (Some(_), None) => write!(f, "{what} only in the first, in the time shown."),
                (None, Some(_)) => write!(f, "{what} only in the second, in the time shown."),
                _ => write!(f, "{what} in neither, in the time shown."),
            };
        };
        let part = if a.abs() > 1e-12 { b / a - 1.0 } else { 0.0 };
        let same = part.abs() < SAME;
        match self.measure {
            Measure::WallRate if same => write!(f, "{what} as fast: the same pull on the glass."),
            Measure::WallRate if part < 0.0 => {
                write!(
                    f,
                    "{what} {} % slower at its fastest: less risk of wet spots.",
                    Fixed(-100.0 * part, 0)
                )
            }
            Measure::WallRate => {
                write!(
                    f,
                    "{what} {} % faster at its fastest: more risk of wet spots.",
                    Fixed(100.0 * part, 0)
                )
            }
            Measure::Enclosed if (b - a).abs() < SAME => write!(f, "{what} the same."),
            Measure::Enclosed => {
                let risk = if b < a { "less" } else { "more" };
                write!(
                    f,
                    "{what} {} % against {} %: {risk} risk of sinkholes.",
                    Fixed(100.0 * b, 0),
                    Fixed(100.0 * a, 0)
                )
            }
            Measure::KeepBack if same => write!(f, "{what} the same, {b} g.", b = Fixed(b, 1)),
            Measure::KeepBack => write!(f, "{what} {b} g against {a} g.", b = Fixed(b, 1), a = Fixed(a, 1)),
            _ if same => write!(f, "{what} at the same time."),
            _ => {
                let minutes = (b - a) / 60.0;
                let later = if minutes > 0.0 { "later" } else { "sooner" };
                let minutes = minutes.abs().round().max(1.0);
                if minutes < 120.0 {
                    write!(f, "{what} {minutes} min {later}.", minutes = Fixed(minutes, 0))
                } else {
                    let hours = (minutes / 60.0).floor();
                    write!(
                        f,
                        "{what} {hours} h {} min {later}.",
                        Fixed(minutes - 60.0 * hours, 0),
                        hours = Fixed(hours, 0)
                    )
                }
            }
        }
    }
}

/// One result over pour temperatures (columns) and vessel temperatures (rows), °C, on the coarse grid.
///
/// `each` is given column, row and value as they come, and stops the map by returning false. A set-up that is refused
/// (a pour below the melting range) has no value.
pub fn map(
    setup: &Setup,
    pours: &[f64],
    vessels: &[f64],
    measure: Measure,
    mut each: impl FnMut(usize, usize, Option<f64>) -> bool,
) {
    for (row, vessel) in vessels.iter().enumerate() {
        for (column, pour) in pours.iter().enumerate() {
            let one = Setup { pour: *pour, vessel: *vessel, ..*setup };
            let value = freeze(&one, &Detail::COARSE).ok().and_then(|f| measure.of(&f));
            if !each(column, row, value) {
                return;
            }
        }
    }
}
