//! Choices of the workshop, the same on every device.

use crate::pot::{MOST_VESSELS, Residue};
use crate::quantity::{Amount, Exact, Quantity, Share, ShareUnit, Voice};
use crate::shelf::planning::Goal;
use crate::wire::wire_struct;

/// Choices of the workshop.
#[derive(Clone, PartialEq, Debug)]
pub struct Settings {
    pub residue: Residue,
    /// How far a dose may be off before the person is told.
    pub tolerance: Amount<Share>,
    /// The share of the usual that this workshop's air takes of a vessel's heat, from a cooling log; none where no log
    /// told.
    pub film: Option<Amount<Share>>,
    /// The readings of that log, as [`crate::bench::keep_log`] writes them; none where they were not kept.
    pub log: Option<String>,
    /// Days from the pour until the wax is solid; none: the usual.
    pub solid_days: Option<u32>,
    /// Days that finishing a batch takes; none: it is done on the day.
    pub finish_days: Option<u32>,
    /// How many candles a batch has, the smallest first; none: the usual sizes.
    pub batches: Option<Vec<u32>>,
    /// What counts most in planning the pours stands first; none: the usual order.
    pub goals: Option<Vec<Goal>>,
}

wire_struct!(Settings { residue, tolerance, film, log [skip], solid_days [skip], finish_days [skip], batches [skip], goals [skip] });

impl Default for Settings {
    fn default() -> Self {
        Self {
            residue: Residue::None,
            tolerance: Amount::new(Exact::whole(2), ShareUnit::Percent),
            film: None,
            log: None,
            solid_days: None,
            finish_days: None,
            batches: None,
            goals: None,
        }
    }
}

/// The widest tolerance, in percent: beyond it a wrong dose would pass unseen (our own choice).
const WIDEST: Exact = Exact::whole(20);
/// The narrowest, in percent: below it no scale is fine enough (our own choice).
const NARROWEST: Exact = Exact::ratio(1, 10);

/// The most days until the wax is solid, or to finish (our own choice).
const LONGEST: u32 = 60;

/// The smallest and the usual batches, where the workshop does not say (common practice, no source).
const BATCHES: [u32; 4] = [4, 8, 16, 24];
/// More sizes than this are not looked through.
const MOST_SIZES: usize = 8;

impl Settings {
    /// The sizes of batch the pours are planned in.
    pub fn sizes(&self) -> &[u32] {
        self.batches.as_deref().unwrap_or(&BATCHES)
    }

    /// How many times the usual heat this workshop's air takes of a vessel; 1 where no log told.
    pub fn air(&self) -> f64 {
        self.film.map_or(1.0, |film| 0.01 * film.value.to(ShareUnit::Percent).to_f64())
    }

    /// Looks them over.
    ///
    /// # Errors
    /// The sentence that says why they cannot be.
    pub fn check(&self, voice: Voice) -> Result<(), String> {
        let [narrowest, widest] = [NARROWEST, WIDEST].map(|n| Amount::new(n, ShareUnit::Percent));
        let tolerance: Share = self.tolerance.value;
        let days = self.solid_days.max(self.finish_days).unwrap_or_default();
        if days > LONGEST {
            return Err([
                "Type at most ",
                &LONGEST.to_string(),
                " days until the wax is solid, or to finish.",
            ]
            .concat());
        }
        let sizes = self.sizes();
        if sizes.is_empty() || sizes.len() > MOST_SIZES || sizes.iter().any(|n| *n == 0 || *n > MOST_VESSELS)
        {
            return Err(format!(
                "Type one to {MOST_SIZES} sizes of batch, each of 1 to {MOST_VESSELS} candles, like 4, 8, 16, 24."
            ));
        }
        if (narrowest.value..=widest.value).contains(&tolerance) {
            return Ok(());
        }
        let typed = voice.typed(self.tolerance);
        let range = [&voice.typed(narrowest), " to ", &voice.typed(widest)].concat();
        Err(if tolerance < narrowest.value {
            format!(
                "A tolerance of {typed} is finer than any scale here weighs. Type one of {range}; 2 % is usual."
            )
        } else {
            format!("A tolerance of {typed} would let a wrong dose pass. Type one of {range}; 2 % is usual.")
        })
    }
}
