//! Which wick next: a monotone model over size, vessel and fragrance, from all trials so far.
//!
//! The size that fits, as a number in the series, is taken to grow with the vessel's diameter and with the weight of the
//! fragrance: `fits = usual + by_mm × (diameter − 70 mm) + by_weight × weight`, both factors never negative. A size well
//! below it is too small, one well above it too large, one near it passes, each with the chance that the logistic curve
//! gives. What is not known is summed over: a grid of `usual` and of both factors, each point as likely as the trials make
//! it. Nothing of that depends on which candle is asked about, so a wider vessel or a heavier fragrance never gets a smaller
//! guess; and a wick that was too small for the candle asked about never makes a smaller one look better.
//! What was tried in a vessel or with a fragrance far from those asked about tells less, since the factors are not known
//! well; what differs otherwise is worth less (see [`super::Near`]).
//! That heavier fragrances need larger wicks of one series in one vessel is `common practice, no source`; the widths
//! below are our own choice.

use super::Verdict;

/// So many candles of one kind that passed are enough to settle on a wick: EN 15426:2018 takes the mean of three.
pub const PASSES: usize = 3;

/// Half as wide, in sizes, is what passes.
const WINDOW: f64 = 0.75;
/// How soft its edges are.
const SOFT: f64 = 0.35;
/// The grid: sizes apart, and how far it goes past the ends of the series.
const STEP: f64 = 0.25;
const PAST: f64 = 2.0;
/// How likely it is, before any trial, that what fits lies past the ends, beside one within.
const OUTSIDE: f64 = 0.3;
/// Sizes for each mm of diameter, and how likely before any trial; sizes for each step of the fragrance's weight.
const BY_MM: [(f64, f64); 5] = [(0.0, 1.0), (0.05, 1.0), (0.1, 1.0), (0.2, 0.5), (0.35, 0.25)];
const BY_WEIGHT: [f64; 3] = [0.0, 0.5, 1.0];
/// mm: the vessel whose fitting size may be any of the series before there is a trial.
const USUAL: f64 = 70.0;
/// A verdict goes wrong at the least this often.
const SLIP: f64 = 0.01;

/// What the model knows of a candle.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Place {
    /// mm across the vessel inside.
    pub across: f64,
    /// Of the fragrance: −1, 0 or 1; without one −2.
    pub weight: f64,
}

/// A trial that has ended, as seen from the candle that a wick is sought for.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Tried {
    /// Place in the series, the smallest at 0.
    pub size: usize,
    pub place: Place,
    /// The same fragrance, wax and vessel.
    pub same: bool,
    /// Of a trial of the same candle, 0 to 1.
    pub worth: f64,
    pub verdict: Verdict,
}

/// What to try.
#[derive(Clone, PartialEq, Debug)]
pub struct Advice {
    /// The size to try, by its place: what fits is as likely above it as below.
    pub size: usize,
    /// For each size the chances that it is too small, that it passes, and that it is too large.
    pub chances: Vec<(f64, f64, f64)>,
    /// Candles of this kind with this size that passed already.
    pub passed: usize,
    /// Candles likely to be burned until one passes; none of them where one has.
    pub search: f64,
    /// The chance that even the largest is too small, and that even the smallest is too large.
    pub beyond: (f64, f64),
    /// How many trials with other fragrances, waxes or vessels it leans on, and the nearest of them in words.
    pub lent: usize,
    pub nearest: Option<String>,
    /// Of those that passed: their burns in all, and how many were burned to their end.
    pub passed_burns: usize,
    pub burned_down: usize,
    /// Burns of one candle, as those of this kind were judged after. None before there is one.
    pub burns: Option<f64>,
}

/// None for a series without sizes, and where hundreds of trials contradict each other.
pub fn advise(sizes: usize, asked: Place, tried: &[Tried]) -> Option<Advice> {
    let cells = cells(sizes, asked, tried);
    let all: f64 = cells.iter().map(|(_, weight)| weight).sum();
    if all <= 0.0 {
        return None;
    }
    let mut chances = Vec::new();
    for size in 0..sizes {
        let mut sum = (0.0, 0.0, 0.0);
        for (fits, weight) in &cells {
            let (small, passes, large) = chance(size as f64 - fits);
            sum = (sum.0 + weight * small, sum.1 + weight * passes, sum.2 + weight * large);
        }
        chances.push((sum.0 / all, sum.1 / all, sum.2 / all));
    }
    let order = crate::sort::order(sizes, &|a, b| {
        let of = |place: usize| chances.get(place).map_or(0.0, |c| c.1);
        of(b).total_cmp(&of(a))
    });
    let size = middle(sizes, &cells, all);
    let passed = tried.iter().filter(|t| t.same && t.size == size && t.verdict == Verdict::Passed).count();
    let mut search = 0.0;
    for (fits, weight) in &cells {
        let mut without = 1.0;
        for size in &order {
            search += weight * without / all;
            without *= 1.0 - chance(*size as f64 - fits).1;
        }
    }
    let beyond = (chances.last()?.0, chances.first()?.2);
    let lent = tried.iter().filter(|t| !t.same && t.verdict != Verdict::Other).count();
    let search = if passed > 0 { 0.0 } else { search };
    let (nearest, passed_burns, burned_down, burns) = (None, 0, 0, None);
    Some(Advice { size, chances, passed, search, beyond, lent, nearest, passed_burns, burned_down, burns })
}

/// The size nearest to the middle of where the fitting one may be.
fn middle(sizes: usize, cells: &[(f64, f64)], all: f64) -> usize {
    let of = |place: usize| cells.get(place).copied().unwrap_or_default();
    let mut sum = 0.0;
    let order = crate::sort::order(cells.len(), &|a, b| of(a).0.total_cmp(&of(b).0));
    let at = order.into_iter().map(of).find(|(_, weight)| {
        sum += weight;
        2.0 * sum >= all
    });
    let middle = at.map_or(0.0, |(fits, _)| fits);
    ((middle - 0.5).ceil().max(0.0) as usize).min(sizes.saturating_sub(1))
}

/// Where the size that fits the candle asked about may be, and how likely each is.
fn cells(sizes: usize, asked: Place, tried: &[Tried]) -> Vec<(f64, f64)> {
    let steps = ((sizes as f64 + 2.0 * PAST - 1.0) / STEP) as u32;
    let mut cells = Vec::new();
    for usual in (0..=steps).map(|step| f64::from(step) * STEP - PAST) {
        let within = (-0.5..=sizes as f64 - 0.5).contains(&usual);
        for (by_mm, before) in BY_MM {
            for by_weight in BY_WEIGHT {
                let fits = |of: Place| usual + by_mm * (of.across - USUAL) + by_weight * of.weight;
                let mut likely = if within { before } else { OUTSIDE * before };
                for trial in tried {
                    let (small, passes, large) = chance(trial.size as f64 - fits(trial.place));
                    let seen = match trial.verdict {
                        Verdict::Passed => passes,
                        Verdict::Small => small,
                        Verdict::Large => large,
                        Verdict::Other => 1.0,
                    };
                    likely *= seen.max(SLIP).powf(trial.worth);
                }
                cells.push((fits(asked), likely));
            }
        }
    }
    cells
}

/// The chances that a size so far above the one that fits is too small, passes, is too large.
fn chance(above: f64) -> (f64, f64, f64) {
    let rise = |x: f64| 1.0 / (1.0 + (-x / SOFT).exp());
    let (small, large) = (rise(-above - WINDOW), rise(above - WINDOW));
    (small, (1.0 - small - large).max(0.0), large)
}
