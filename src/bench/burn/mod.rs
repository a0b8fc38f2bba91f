//! Burn trials: one candle after another lit, watched, put out and weighed, and what that tells of its wick.

mod alight;
mod check;
mod compare;
mod course;
mod end;
mod judge;
mod late;
mod limits;
mod line;
mod near;
mod next;
mod photo;
mod picture;
mod pool;
mod rate;
mod say;
mod seen;
mod whole;

pub use check::TrialError;
pub use compare::{Compared, Told, compare, side_by_side};
pub use course::{Course, Session, course};
pub use end::suggestion;
pub use judge::{Finding, Outcome, judge, suggested};
pub use late::{lost, missed};
pub use limits::Limits;
pub use line::{Line, least_squares};
pub use near::{Near, across, weight};
pub use next::{Advice, PASSES, Place, Tried, advise};
pub use photo::{Shot, shots};
pub use picture::{burn_curve, pool_picture, wicks_picture};
pub use pool::{Full, Pool, last_full, pool, usual_full};
pub use rate::{Life, Rate, Trend, life, odd, rate, trend};
pub use say::{Reminder, burn_line, clock, reminders, tells, trim_first};
pub use seen::{Sighting, scales, sightings};
pub use whole::of_burn;

use crate::quantity::{Amount, Length, Mass, Share, Temperature};
use crate::text::same;
use crate::wire::{wire_enum, wire_struct};

/// One candle to be burned down, and what it is made of. Names are as typed, so that it stands without the formula.
#[derive(Clone, PartialEq, Debug)]
pub struct Trial {
    /// What the candle is marked with.
    pub name: String,
    /// Empty without one.
    pub fragrance: String,
    /// The fragrance's share of the wax.
    pub load: Option<Amount<Share>>,
    pub heavy: Heavy,
    pub wax: String,
    pub vessel: String,
    /// The vessel's inner diameter where the wax stands.
    pub diameter: Amount<Length>,
    /// The name of the series that the wick is of; empty where it is of none.
    pub series: String,
    /// The wick's size as it is called in the series.
    pub wick: String,
    /// Which of several like it, from 1.
    pub replicate: u32,
    /// The candle with its vessel before its first light.
    pub start: Amount<Mass>,
    /// Wax and fragrance in it.
    pub fill: Amount<Mass>,
}

wire_struct!(Trial {
    name, fragrance [skip], load [skip], heavy [default], wax, vessel, diameter, series [skip], wick, replicate, start, fill,
});

/// How heavy a fragrance is, as its maker or one's own nose says: what lingers and burns reluctantly is heavy.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Heavy {
    Light,
    #[default]
    Middle,
    Heavy,
}

wire_enum!(Heavy { Light, Middle, Heavy });

impl Heavy {
    pub const fn name(self) -> &'static str {
        match self {
            Self::Light => "light",
            Self::Middle => "middling",
            Self::Heavy => "heavy",
        }
    }

    /// −1, 0 or 1.
    pub fn rank(self) -> f64 {
        match self {
            Self::Light => -1.0,
            Self::Middle => 0.0,
            Self::Heavy => 1.0,
        }
    }
}

/// Something that was done with a candle on trial. Times are milliseconds since 1970.
#[derive(Clone, PartialEq, Debug)]
pub enum BurnEvent {
    Lit {
        at: u64,
        /// The candle with its vessel.
        mass: Amount<Mass>,
        trimmed: bool,
        /// Cold throw before lighting, 1 to 5.
        throw: Option<u32>,
    },
    Looked(Box<Look>),
    Out {
        at: u64,
        /// Where it was weighed at once.
        mass: Option<Amount<Mass>>,
        /// Nobody put it out.
        itself: bool,
    },
    /// After a burn, once it could be carried.
    Weighed {
        mass: Amount<Mass>,
        /// When that burn was lit. None for the one that ended last.
        lit: Option<u64>,
    },
    /// A whole burn, written down when it was over: its light, the looks, its end. One entry, so that it is taken back in
    /// one.
    Missed(Vec<BurnEvent>),
    /// A photo, by its name (see [`crate::photo`]).
    Pictured {
        at: u64,
        photo: String,
    },
    Closed {
        verdict: Verdict,
        note: String,
    },
}

wire_enum!(BurnEvent {
    Lit { at, mass, trimmed, throw [skip] },
    Looked(it),
    Out { at, mass [skip], itself },
    Weighed { mass, lit [skip] },
    Missed(it),
    Pictured { at, photo },
    Closed { verdict, note [default] },
});

/// What was seen of a burning candle. What was not looked at is none.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Look {
    /// Milliseconds since 1970.
    pub at: u64,
    /// The candle with its vessel, where it burns on the scale.
    pub mass: Option<Amount<Mass>>,
    /// Across the melted wax.
    pub pool: Option<Amount<Length>>,
    pub depth: Option<Amount<Length>>,
    /// From the wax to the tip.
    pub flame: Option<Amount<Length>>,
    /// Of the vessel outside, where it is hottest.
    pub outside: Option<Amount<Temperature>>,
    pub soot: Option<Grade>,
    pub mushroom: Option<Grade>,
    /// Wax left standing on the wall.
    pub hang_up: Option<Grade>,
    /// Hot throw, 1 to 5.
    pub throw: Option<u32>,
    pub note: String,
}

wire_struct!(Look {
    at, mass [skip], pool [skip], depth [skip], flame [skip], outside [skip], soot [skip], mushroom [skip], hang_up [skip],
    throw [skip], note [skip],
});

/// How much of something is seen.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Grade {
    None,
    Little,
    Much,
}

wire_enum!(Grade { None, Little, Much });

impl Grade {
    pub const fn name(self) -> &'static str {
        match self {
            Self::None => "none",
            Self::Little => "a little",
            Self::Much => "much",
        }
    }
}

/// The words for a throw of 1 to 5, cold or hot, two steps from the candle.
pub const THROWS: [&str; 5] = ["1 none", "2 faint", "3 clear close by", "4 fills the room", "5 too strong"];

/// What came of a trial.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Verdict {
    Passed,
    /// The wick is too small.
    Small,
    /// The wick is too large.
    Large,
    /// It failed for another reason, which tells nothing of the wick's size.
    Other,
}

wire_enum!(Verdict { Passed, Small, Large, Other });

impl Verdict {
    pub const fn name(self) -> &'static str {
        match self {
            Self::Passed => "passed",
            Self::Small => "wick too small",
            Self::Large => "wick too large",
            Self::Other => "failed for another reason",
        }
    }
}

/// A series of wicks as the workshop buys it: its own name, and the sizes from the smallest to the largest.
#[derive(Clone, PartialEq, Debug)]
pub struct WickSeries {
    pub name: String,
    pub sizes: Vec<String>,
}

wire_struct!(WickSeries { name, sizes });

impl WickSeries {
    /// Sizes typed one on a line or between commas, smallest first.
    pub fn read_sizes(text: &str) -> Vec<String> {
        let sizes = text.split(['\n', ',', ';']).map(str::trim).filter(|size| !size.is_empty());
        sizes.map(str::to_owned).collect()
    }

    /// Which size, from the smallest at 0, whatever the case.
    pub fn place(&self, size: &str) -> Option<usize> {
        self.sizes.iter().position(|own| same(own, size))
    }
}
