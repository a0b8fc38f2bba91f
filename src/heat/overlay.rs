//! A measured cooling log laid over the curve.

use super::cooling::Reading;
use super::error::{HeatError, within};
use super::freezing::freeze;
use super::setup::{Detail, Film, Setup};

/// The factor on every film coefficient that lays the freezing over a log.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Fitted {
    pub factor: f64,
    /// Root mean square of what is left between the two, K.
    pub residual: f64,
}

/// Factors looked through.
const FACTORS: (f64, f64) = (0.25, 4.0);

/// Fits one factor on the film coefficients to a measured cooling log, for that workshop: seconds from the pour and
/// °C, at `probe` (m from the axis, m above the inside of the base). With it what is then reckoned for each reading.
///
/// # Errors
/// As [`Setup::check`], where there are fewer than three readings, and where no factor from ¼ to 4 fits better than
/// the ends of that range do.
pub fn lay_over(setup: &Setup, log: &[Reading], probe: (f64, f64)) -> Result<(Fitted, Vec<f64>), HeatError> {
    setup.check()?;
    if log.len() < 3 {
        return Err(HeatError::TooFewReadings { have: log.len(), need: 3 });
    }
    let mut last: f64 = 60.0;
    for r in log {
        within_log(r)?;
        last = last.max(r.seconds);
    }
    let detail = Detail { probe: Some(probe), seconds: last + 1.0, frames: 0, ..Detail::FINE };
    let reckoned = |x: f64| -> Result<Vec<f64>, HeatError> {
        let (by, film) = (x.exp(), setup.film);
        let film = Film { side: by * film.side, top: by * film.top, bottom: by * film.bottom };
        let f = freeze(&Setup { film, ..*setup }, &detail)?;
        Ok(log.iter().map(|r| at(&f.trace, r.seconds)).collect())
    };
    let apart = |reckoned: &[f64]| {
        let sum: f64 = log.iter().zip(reckoned).map(|(r, celsius)| (celsius - r.celsius).powi(2)).sum();
        (sum / log.len() as f64).sqrt()
    };
    let miss = |x: f64| Ok(apart(&reckoned(x)?));
    // The golden section: the miss has one dip, since every temperature falls as the factor grows.
    let (mut low, mut high) = (FACTORS.0.ln(), FACTORS.1.ln());
    let golden = 0.5 * (5f64.sqrt() - 1.0);
    let (mut a, mut b) = (high - golden * (high - low), low + golden * (high - low));
    let (mut at_a, mut at_b) = (miss(a)?, miss(b)?);
    for _ in 0..18 {
        if at_a < at_b {
            (high, b, at_b) = (b, a, at_a);
            a = high - golden * (high - low);
            at_a = miss(a)?;
        } else {
            (low, a, at_a) = (a, b, at_b);
            b = low + golden * (high - low);
            at_b = miss(b)?;
        }
    }
    let x = 0.5 * (low + high);
    if x - FACTORS.0.ln() < 0.01 || FACTORS.1.ln() - x < 0.01 {
        return Err(HeatError::LogDoesNotFit);
    }
    let reckoned = reckoned(x)?;
    Ok((Fitted { factor: x.exp(), residual: apart(&reckoned) }, reckoned))
}

fn within_log(r: &Reading) -> Result<(), HeatError> {
    within("time after the pour", r.seconds / 3600.0, 0.0, 48.0, "h")?;
    within("temperature", r.celsius, -40.0, 250.0, "°C")?;
    Ok(())
}

/// Straight between the points of a trace; its last value past the end.
fn at(trace: &[(f64, f64)], seconds: f64) -> f64 {
    let after = trace.partition_point(|p| p.0 < seconds);
    let last = trace.last().map_or(0.0, |p| p.1);
    let (Some(&(t, y)), Some(&(s, x))) = (trace.get(after), trace.get(after.saturating_sub(1))) else {
        return last;
    };
    if t > s { x + (y - x) * (seconds - s) / (t - s) } else { y }
}
