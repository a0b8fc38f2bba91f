//! The pot as it cools: Newton's law fitted to readings, and when each gate comes.

use super::error::{HeatError, within};
use super::said::Fixed;
use crate::student::student;

/// One look at the thermometer: seconds on any clock that runs through, and °C.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Reading {
    pub seconds: f64,
    pub celsius: f64,
}

/// The room the pot stands in.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Room {
    /// Read from a thermometer, °C.
    Known(f64),
    /// Found from the readings; needs three of them, and a curve that bends.
    Fitted,
}

/// What a pot thermometer in stirred wax is good to, in K (one standard deviation): a division and the stirring.
/// `common practice, no source`
pub const READING_ERROR: f64 = 0.5;
/// How many readings the figure above is worth against what the readings themselves say.
const PRIOR: f64 = 4.0;
/// Of the band and of every range.
const CONFIDENCE: f64 = 0.975;
/// Past this multiple of [`READING_ERROR`], root mean square, the readings do not follow one curve.
const MISFIT: f64 = 3.0;

/// The fitted curve `room + excess·exp(−rate·t)`, t from the first reading.
#[derive(Clone, PartialEq, Debug)]
pub struct Cooling {
    start: f64,
    /// K above the room at the first reading.
    excess: f64,
    /// Per second.
    rate: f64,
    /// °C, as given or as found.
    pub room: f64,
    /// Covariance of (excess, ln rate, room).
    cov: [[f64; 3]; 3],
    quantile: f64,
    /// Root mean square of what the curve misses the readings by, K.
    pub residual: f64,
    /// The reading that stands out, where one does.
    pub odd: Option<Odd>,
    /// Whether the readings follow one cooling curve at all.
    pub fits: bool,
}

/// A reading that stands out from what all the others say.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Odd {
    /// Its place in the list as given.
    pub index: usize,
    /// K above what the others say; below zero where it is colder.
    pub above: f64,
}

impl std::fmt::Display for Odd {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let n = self.index + 1;
        if self.above > 0.0 {
            let k = self.above;
            write!(
                f,
                "Reading {n} is {k} °C warmer than the others say. Was the heater on, or was it misread? Stir and read again.",
                k = Fixed(k, 1)
            )
        } else {
            let k = -self.above;
            write!(
                f,
                "Reading {n} is {k} °C colder than the others say. Was it stirred late, or misread? Stir and read again.",
                k = Fixed(k, 1)
            )
        }
    }
}

/// The curve at one time, °C: the likeliest, and the range that holds 19 times out of 20.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Band {
    pub low: f64,
    pub likely: f64,
    pub high: f64,
}

/// When a temperature is reached, in seconds from the moment asked about.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Until {
    /// Already at or below it.
    Past,
    /// Between `soonest` and `latest`, 19 times out of 20. `latest` is none where it may never come.
    Within { soonest: f64, likely: f64, latest: Option<f64> },
    /// The room itself is warmer.
    Never,
}

impl Cooling {
    /// The curve with its 95 % band at `seconds` on the readings' clock.
    ///
    /// With the room given the band is reckoned in ln(T − room), where the law is a straight line: so it never
    /// reaches below the room, and where the fall is not yet sure its upper edge does not come down at all.
    pub fn at(&self, seconds: f64) -> Band {
        let t = seconds - self.start;
        let fall = (-self.rate * t).exp();
        let over = self.excess * fall;
        let likely = self.room + over;
        if self.room_spread() > 0.0 {
            let half = self.quantile * self.spread([fall, -over * self.rate * t, 1.0]);
            return Band { low: likely - half, likely, high: likely + half };
        }
        let half = self.quantile * self.spread([1.0 / self.excess, -self.rate * t, 0.0]);
        Band { low: self.room + over * (-half).exp(), likely, high: self.room + over * half.min(50.0).exp() }
    }

    /// When the pot comes down to `celsius`, counted from `now` (seconds on the readings' clock).
    ///
    /// The range is where the band meets the temperature: the earliest time its lower edge does, the latest its
    /// upper edge does.
    pub fn until(&self, celsius: f64, now: f64) -> Until {
        if celsius <= self.room {
            return Until::Never;
        }
        let likely = self.start + (self.excess / (celsius - self.room)).ln() / self.rate;
        if likely <= now {
            return Until::Past;
        }
        let reach = likely - now;
        let soonest = bisect(now, likely, |t| self.at(t).low > celsius);
        let far = likely + 20.0 * reach + 20.0 / self.rate;
        let latest =
            (self.at(far).high <= celsius).then(|| bisect(likely, far, |t| self.at(t).high > celsius));
        Until::Within { soonest: soonest - now, likely: reach, latest: latest.map(|t| t - now) }
    }

    /// How long the pot takes to come half way to the room, s.
    pub fn half(&self) -> f64 {
        std::f64::consts::LN_2 / self.rate
    }

    /// How well the room is known, K, one standard deviation; zero where it was given.
    pub fn room_spread(&self) -> f64 {
        self.spread([0.0, 0.0, 1.0])
    }

    fn spread(&self, slope: [f64; 3]) -> f64 {
        let mut sum = 0.0;
        for (row, a) in self.cov.iter().zip(slope) {
            for (c, b) in row.iter().zip(slope) {
                sum += a * c * b;
            }
        }
        sum.max(0.0).sqrt()
    }
}

/// Where `before` turns from true to false between two times.
fn bisect(mut low: f64, mut high: f64, before: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..60 {
        let mid = 0.5 * (low + high);
        if before(mid) { low = mid } else { high = mid }
    }
    0.5 * (low + high)
}

/// Fits Newton's law of cooling to the readings by least squares.
///
/// The scatter is that of the readings together with [`READING_ERROR`] counted as `PRIOR` readings: with two
/// readings the range is what the thermometer allows, with many it is what they show. The fit is a maximum-likelihood
/// one in (excess, ln rate, room), the covariance the usual linearised one.
///
/// # Errors
/// With fewer than two readings (three where the room is to be found), times that do not run forward, readings that
/// do not fall or lie below the room, and a room the readings do not tell.
pub fn cooling(readings: &[Reading], room: Room) -> Result<Cooling, HeatError> {
    let free: usize = if room == Room::Fitted { 3 } else { 2 };
    if readings.len() < free {
        return Err(HeatError::TooFewReadings { have: readings.len(), need: free });
    }
    for r in readings {
        within("temperature", r.celsius, -30.0, 300.0, "°C")?;
        within("time", r.seconds.abs(), 0.0, 1e12, "s")?;
    }
    for (a, b) in readings.iter().zip(readings.iter().skip(1)) {
        if b.seconds - a.seconds < 1.0 {
            return Err(HeatError::SameTime { minutes: b.seconds / 60.0 });
        }
    }
    if let Room::Known(t) = room {
        within("room temperature", t, -30.0, 60.0, "°C")?;
        if let Some(r) = readings.iter().find(|r| r.celsius <= t) {
            return Err(HeatError::BelowRoom { reading: r.celsius, room: t });
        }
    }
    let fit = super::fit::least_squares(readings, room)?;
    let count = readings.len() as f64;
    let freedom = count - free as f64 + PRIOR;
    let prior = PRIOR * READING_ERROR * READING_ERROR;
    let variance = (fit.squares + prior) / freedom;
    let residual = (fit.squares / count).sqrt();
    let odd = fit.stands_out(readings, prior, freedom - 1.0);
    let cooling = Cooling {
        start: fit.start,
        excess: fit.excess,
        rate: fit.rate(),
        room: fit.room,
        cov: fit.inverse.map(|row| row.map(|c| c * variance)),
        quantile: student(CONFIDENCE, freedom as u32),
        residual,
        odd,
        fits: odd.is_none() && residual <= MISFIT * READING_ERROR,
    };
    Ok(cooling)
}
