//! The mass of one drop, from N drops weighed.

use super::DropTrial;
use crate::quantity::{Exact, Mass, Share, Voice, Why};

/// What a drop trial tells.
#[derive(Clone, PartialEq, Debug)]
pub struct DropMass {
    pub mean: Mass,
    /// Standard error of the mean: the reading of the scale and, from the second weighing on, the scatter.
    pub error: Mass,
    /// How often they were weighed: once tells nothing of how far drops stray.
    pub weighings: usize,
    /// How many more drops, weighed in one go, would bring the standard error to 5 % of the mean (zero where it is).
    pub more_for_5_percent: u32,
    pub why: Why,
}

impl DropMass {
    /// What it means, in sentences: `One drop weighs 20.9 mg ± 1.2 mg (5.7 %). …`
    pub fn say(&self, voice: Voice) -> String {
        let error = self.error.over(self.mean).unwrap_or(Exact::ZERO);
        let good = match self.more_for_5_percent {
            0 if self.weighings < 2 => {
                "So well the scale tells it; weigh as many again: that tells how far your drops stray."
                    .to_owned()
            }
            0 => "That is good to 5 %.".to_owned(),
            1 => "1 more drop, weighed on its own, makes it good to 5 %.".to_owned(),
            more => format!("{more} more drops, weighed in one go, make it good to 5 %."),
        };
        format!(
            "One drop weighs {} ± {} ({}). {good}",
            voice.milligrams(self.mean),
            voice.milligrams(self.error),
            voice.share(Share::base(error)),
        )
    }
}

/// How good the mean is to be: its standard error at most this share of it.
pub(super) const GOOD: f64 = 0.05;

/// The drops that were counted, and what they weighed.
fn counted(trial: &DropTrial) -> (i128, Mass) {
    let weighed = || trial.weighings.iter().filter(|w| w.drops > 0 && w.mass.value > Mass::ZERO);
    (weighed().map(|w| i128::from(w.drops)).sum(), weighed().map(|w| w.mass.value).sum())
}

/// The mean alone, as [`drop_mass`] has it: how it came about takes far longer to say.
pub fn mean_drop(trial: &DropTrial) -> Option<Mass> {
    let (drops, mass) = counted(trial);
    mass.in_base().checked_div(Exact::whole(drops)).map(Mass::base)
}

/// The mean, exact, and how good it is. None where no drops were counted or they weighed nothing.
///
/// One weighing is two readings (tare and load), each good to division ÷ √12 (GUM F.2.2.1), so its reading part is
/// √2 × division ÷ √12. The scatter of drops comes from weighings of `N` drops each: s² = Σ N (mean − m)² ÷ (k − 1).
/// Both are joined as the root of the sum of squares.
pub fn drop_mass(trial: &DropTrial, voice: Voice) -> Option<DropMass> {
    let weighed = || trial.weighings.iter().filter(|w| w.drops > 0 && w.mass.value > Mass::ZERO);
    let (drops, mass) = counted(trial);
    let mean = mass.in_base().checked_div(Exact::whole(drops))?;
    let weighings = weighed().count();
    let (k, n, m) = (weighings as f64, drops as f64, mean.to_f64());
    let squares: f64 = weighed()
        .map(|w| {
            let one = w.mass.value.in_base().to_f64() / f64::from(w.drops);
            f64::from(w.drops) * (one - m).powi(2)
        })
        .sum();
    let scatter = if k > 1.0 { squares / (k - 1.0) } else { 0.0 };
    let division = trial.division.value.in_base().to_f64();
    let reading = division.powi(2) / 6.0;
    let error = (k * reading / n.powi(2) + scatter / n).sqrt();
    let wanted = GOOD * m;
    let more = if error <= wanted {
        0.0
    } else {
        (needed(scatter, (k + 1.0) * reading, wanted) - n).ceil().max(1.0)
    };
    let mean = Mass::base(mean);
    let error = Mass::base(Exact::near(error)?);
    let more_for_5_percent = more as u32;
    let how = Why::new("Standard error", "√(k × 2 × division² ÷ 12 ÷ N² + s² ÷ N)", voice.milligrams(error))
        .with("weighings k", weighings.to_string())
        .with("drops N", drops.to_string())
        .with("division of the scale", voice.typed(trial.division))
        .with(
            "scatter of one drop s",
            match Exact::near(scatter.sqrt()) {
                Some(s) if k > 1.0 => voice.milligrams(Mass::base(s)),
                _ => "not known from one weighing: weigh again to see it".to_owned(),
            },
        )
        .from("GUM F.2.2.1 for the reading");
    let why = Why::new("Mass of one drop", "all that was weighed ÷ all drops", voice.milligrams(mean))
        .with("weighed", voice.mass(mass))
        .with("drops", drops.to_string())
        .with_why("standard error", voice.milligrams(error), how);
    Some(DropMass { mean, error, weighings, more_for_5_percent, why })
}

/// The drops N at which √(reading ÷ N² + scatter ÷ N) is `wanted`.
pub(super) fn needed(scatter: f64, reading: f64, wanted: f64) -> f64 {
    let square = wanted.powi(2);
    (scatter + (scatter.powi(2) + 4.0 * square * reading).sqrt()) / (2.0 * square)
}
