//! Looking over what is typed of a trial.

use super::{Trial, WickSeries};
use crate::quantity::{Amount, Exact, Length, Mass, Quantity, Voice};

/// Why a trial or a series of wicks cannot be used as it stands. [`TrialError::say`] is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum TrialError {
    NoName,
    /// Another candle that is not judged yet has it.
    MarkTwice {
        name: String,
    },
    NoVessel,
    NoWax,
    NoWick,
    NoDiameter {
        diameter: Amount<Length>,
    },
    NoFill,
    FillAboveStart {
        fill: Amount<Mass>,
        start: Amount<Mass>,
    },
    NotInSeries {
        wick: String,
        series: String,
    },
    SeriesNoName,
    SeriesTwice {
        name: String,
    },
    OneSize,
    SizeTwice {
        size: String,
    },
}

impl TrialError {
    /// The sentence, in this person's units and decimal sign.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::NoName => {
                "This candle has no mark yet. Write one on it and type it here, like “A1”.".to_owned()
            }
            Self::MarkTwice { name } => format!(
                "Another candle on trial is marked “{name}”. Mark this one differently, so that they are not mixed up."
            ),
            Self::NoVessel => "Name the vessel: a wick suits one vessel and not the next.".to_owned(),
            Self::NoWax => "Name the wax, as your formulas call it.".to_owned(),
            Self::NoWick => "Name the wick by its size, as it stands on the bag.".to_owned(),
            Self::NoDiameter { diameter } => format!(
                "An inner diameter of {} is that of no vessel. Measure across the inside, where the wax stands.",
                voice.typed(*diameter)
            ),
            Self::NoFill => "The wax in it weighs nothing. Type what was poured into this vessel.".to_owned(),
            Self::FillAboveStart { fill, start } => format!(
                "The wax, {}, weighs more than the whole candle, {}. Weigh the candle with its vessel and check both.",
                voice.typed(*fill),
                voice.typed(*start)
            ),
            Self::NotInSeries { wick, series } => format!(
                "“{wick}” is no size of the series “{series}”. Choose one of its sizes, or add it to the series."
            ),
            Self::SeriesNoName => "This series has no name yet. Give it one you will know it by.".to_owned(),
            Self::SeriesTwice { name } => {
                format!(
                    "There is a series “{name}” already. Add the sizes to that one, or name this one otherwise."
                )
            }
            Self::OneSize => {
                "A series has at least two sizes. Type them from the smallest to the largest.".to_owned()
            }
            Self::SizeTwice { size } => format!("The size “{size}” stands there twice. Leave one out."),
        }
    }
}

/// Widths of container candles, mm: a tea light is narrower than most, a large bowl wider (our own choice).
const LEAST: Exact = Exact::whole(15);
const MOST: Exact = Exact::whole(400);

impl Trial {
    /// Looks the trial over; `series` is the one it names, where the book has it.
    ///
    /// # Errors
    /// Every reason why it would tell nothing.
    pub fn check(&self, series: Option<&WickSeries>) -> Result<(), Vec<TrialError>> {
        let blank = |text: &str| text.trim().is_empty();
        let across = self.diameter.value.to_base();
        let unlisted = series.is_some_and(|s| s.place(&self.wick).is_none());
        let unlike = || TrialError::NotInSeries { wick: self.wick.clone(), series: self.series.clone() };
        let wrong = [
            blank(&self.name).then_some(TrialError::NoName),
            blank(&self.vessel).then_some(TrialError::NoVessel),
            blank(&self.wax).then_some(TrialError::NoWax),
            blank(&self.wick).then_some(TrialError::NoWick),
            (unlisted && !blank(&self.wick)).then(unlike),
            (across < LEAST || across > MOST).then_some(TrialError::NoDiameter { diameter: self.diameter }),
            (self.fill.value <= Mass::ZERO).then_some(TrialError::NoFill),
            (self.fill.value > self.start.value)
                .then_some(TrialError::FillAboveStart { fill: self.fill, start: self.start }),
        ];
        none_of(wrong.into_iter().flatten().collect())
    }
}

impl WickSeries {
    /// Looks the series over.
    ///
    /// # Errors
    /// Every reason why no size can be chosen from it.
    pub fn check(&self) -> Result<(), Vec<TrialError>> {
        let mut wrong = Vec::new();
        if self.name.trim().is_empty() {
            wrong.push(TrialError::SeriesNoName);
        }
        if self.sizes.len() < 2 {
            wrong.push(TrialError::OneSize);
        }
        for (place, size) in self.sizes.iter().enumerate() {
            if self.place(size) != Some(place) {
                wrong.push(TrialError::SizeTwice { size: size.clone() });
            }
        }
        none_of(wrong)
    }
}

fn none_of(wrong: Vec<TrialError>) -> Result<(), Vec<TrialError>> {
    if wrong.is_empty() { Ok(()) } else { Err(wrong) }
}
