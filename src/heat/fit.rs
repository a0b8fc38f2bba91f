//! Least squares for the cooling curve: damped Gauss–Newton in (excess, ln rate, room).

use super::cooling::{Odd, Reading, Room};
use super::error::HeatError;
use crate::student::student;

/// A fitted curve and the inverse of its normal matrix; the room's row is zero where the room is given.
#[derive(Clone)]
pub(crate) struct Fit {
    pub(crate) start: f64,
    pub(crate) excess: f64,
    log_rate: f64,
    pub(crate) room: f64,
    pub(crate) squares: f64,
    pub(crate) inverse: [[f64; 3]; 3],
    free_room: bool,
}

/// No room at a bench is colder.
const COLDEST_ROOM: f64 = -10.0;
/// Above this the room is not told by the readings, K.
const ROOM_SPREAD: f64 = 40.0;

impl Fit {
    pub(crate) fn rate(&self) -> f64 {
        self.log_rate.exp()
    }

    fn value(&self, t: f64) -> f64 {
        self.room + self.excess * (-self.rate() * t).exp()
    }

    fn slope(&self, t: f64) -> [f64; 3] {
        let k = self.rate();
        let fall = (-k * t).exp();
        [fall, -self.excess * k * t * fall, if self.free_room { 1.0 } else { 0.0 }]
    }

    fn sum(&self, readings: &[Reading]) -> f64 {
        readings.iter().map(|r| (r.celsius - self.value(r.seconds - self.start)).powi(2)).sum()
    }

    /// The reading whose externally studentised residual is past the level that one of all the readings would
    /// reach once in twenty times (Bonferroni); needs two readings more than the curve has parameters.
    pub(crate) fn stands_out(&self, readings: &[Reading], prior: f64, freedom: f64) -> Option<Odd> {
        let needed = if self.free_room { 5 } else { 4 };
        if readings.len() < needed {
            return None;
        }
        let limit = student(1.0 - 0.025 / readings.len() as f64, freedom as u32);
        let mut worst: Option<(f64, Odd)> = None;
        for (index, r) in readings.iter().enumerate() {
            let t = r.seconds - self.start;
            let error = r.celsius - self.value(t);
            let slope = self.slope(t);
            let lever: f64 = product(&self.inverse, slope).iter().zip(slope).map(|(a, b)| a * b).sum();
            let left = (1.0 - lever).max(1e-6);
            let others = ((self.squares + prior - error * error / left) / freedom).max(1e-9);
            let size = error.abs() / (others * left).sqrt();
            if size > limit && worst.is_none_or(|(w, _)| size > w) {
                worst = Some((size, Odd { index, above: error / left }));
            }
        }
        worst.map(|(_, odd)| odd)
    }
}

pub(crate) fn least_squares(readings: &[Reading], room: Room) -> Result<Fit, HeatError> {
    let coldest = readings.iter().map(|r| r.celsius).fold(f64::INFINITY, f64::min);
    if room == Room::Fitted && coldest - 1.0 <= COLDEST_ROOM {
        return Err(HeatError::BelowRoom { reading: coldest, room: COLDEST_ROOM });
    }
    let first = match room {
        Room::Known(t) => straight(readings, t, false).ok_or(HeatError::NotCooling)?,
        Room::Fitted => (0..12)
            .filter_map(|i| {
                let span = coldest - 1.0 - COLDEST_ROOM;
                straight(readings, COLDEST_ROOM + span * f64::from(i) / 11.0, true)
            })
            .min_by(|a, b| a.squares.total_cmp(&b.squares))
            .ok_or(HeatError::NotCooling)?,
    };
    let fit = descend(first, readings, coldest);
    if fit.free_room {
        let edge = fit.room <= COLDEST_ROOM + 0.01;
        let spread = fit.inverse[2][2].sqrt() * super::cooling::READING_ERROR;
        if edge || spread.is_nan() || spread > ROOM_SPREAD {
            return Err(HeatError::RoomNotTold);
        }
    }
    Ok(fit)
}

/// The first guess: a straight line through ln(T − room). None where it does not fall.
fn straight(readings: &[Reading], room: f64, free_room: bool) -> Option<Fit> {
    let start = readings.first()?.seconds;
    let (mut n, mut st, mut sy, mut stt, mut sty) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for r in readings {
        let (t, y) = (r.seconds - start, (r.celsius - room).max(1e-3).ln());
        n += 1.0;
        st += t;
        sy += y;
        stt += t * t;
        sty += t * y;
    }
    let rate = -(n * sty - st * sy) / (n * stt - st * st);
    // A fall slower than one part in a thousand an hour is no fall.
    if rate.is_nan() || rate < 3e-7 {
        return None;
    }
    let excess = ((sy + rate * st) / n).exp();
    let mut fit =
        Fit { start, excess, log_rate: rate.ln(), room, squares: 0.0, inverse: [[0.0; 3]; 3], free_room };
    fit.squares = fit.sum(readings);
    Some(fit)
}

/// Levenberg's damped steps; a step that leaves the bench or gains nothing is halved in effect by more damping.
fn descend(mut fit: Fit, readings: &[Reading], coldest: f64) -> Fit {
    let mut damping = 1e-3;
    for _ in 0..80 {
        let (normal, right) = normal_equations(&fit, readings);
        let mut damped = normal;
        damped[0][0] *= 1.0 + damping;
        damped[1][1] *= 1.0 + damping;
        damped[2][2] *= 1.0 + damping;
        let step = product(&inverse(&damped), right);
        let mut next = fit.clone();
        next.excess += step[0];
        next.log_rate += step[1].clamp(-1.0, 1.0);
        if fit.free_room {
            next.room = (fit.room + step[2]).clamp(COLDEST_ROOM, coldest - 0.1);
        }
        next.squares = next.sum(readings);
        if next.excess > 0.0 && next.squares <= fit.squares {
            let gained = fit.squares - next.squares;
            fit = next;
            damping = (damping * 0.2).max(1e-9);
            if gained <= 1e-13 * (1.0 + fit.squares) {
                break;
            }
        } else {
            damping *= 10.0;
            if damping > 1e9 {
                break;
            }
        }
    }
    let mut inverse = inverse(&normal_equations(&fit, readings).0);
    if !fit.free_room {
        inverse[2] = [0.0; 3];
    }
    fit.inverse = inverse;
    fit
}

fn normal_equations(fit: &Fit, readings: &[Reading]) -> ([[f64; 3]; 3], [f64; 3]) {
    let mut normal = [[0.0; 3]; 3];
    let mut right = [0.0; 3];
    for r in readings {
        let t = r.seconds - fit.start;
        let slope = fit.slope(t);
        let error = r.celsius - fit.value(t);
        for ((row, y), a) in normal.iter_mut().zip(&mut right).zip(slope) {
            *y += a * error;
            for (c, b) in row.iter_mut().zip(slope) {
                *c += a * b;
            }
        }
    }
    if !fit.free_room {
        normal[2][2] = 1.0;
    }
    (normal, right)
}

fn product(m: &[[f64; 3]; 3], v: [f64; 3]) -> [f64; 3] {
    m.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
}

/// The inverse by cofactors, of a symmetric matrix.
fn inverse(m: &[[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let [[a, b, c], [_, d, e], [_, _, f]] = *m;
    let (ca, cb, cc) = (d * f - e * e, c * e - b * f, b * e - c * d);
    let by = 1.0 / (a * ca + b * cb + c * cc);
    let (cd, ce, cf) = (a * f - c * c, b * c - a * e, a * d - b * b);
    [[ca * by, cb * by, cc * by], [cb * by, cd * by, ce * by], [cc * by, ce * by, cf * by]]
}
