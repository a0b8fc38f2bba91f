//! Where the labels lie on their sheet.

use super::{Design, Sheet, micrometres};
use crate::quantity::{Exact, Voice, decimal};

/// The place of one label on the page, in micrometres.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Cell {
    pub x: i64,
    pub y: i64,
}

/// Why a sheet cannot be. [`SheetError::say`] is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum SheetError {
    NoName,
    NoLabels,
    /// More than a page can have.
    TooMany,
    NoSize,
    RoundIsNotSquare,
    /// Tenths of a millimetre that the labels need, and that the page has.
    TooWide {
        needs: i64,
        has: i64,
    },
    TooHigh {
        needs: i64,
        has: i64,
    },
    NothingOnIt,
}

impl SheetError {
    /// The sentence, in this person's decimal sign.
    pub fn say(&self, voice: Voice) -> String {
        let tenth = Exact::ratio(1, 10);
        let mm = |tenths: &i64| {
            [&decimal(Exact::whole((*tenths).into()) * tenth, tenth, voice.locale), " mm"].concat()
        };
        match self {
            Self::NoName => "Give the label a name, such as “front” or “underside”.".to_owned(),
            Self::NoLabels => "A sheet has at least one row and one column of labels.".to_owned(),
            Self::TooMany => "No sheet has more than 500 labels. Check rows and columns.".to_owned(),
            Self::NoSize => "Page and label must have a width and a height above zero.".to_owned(),
            Self::RoundIsNotSquare => {
                "A round label is as wide as it is high. Type its diameter twice.".to_owned()
            }
            Self::TooWide { needs, has } => {
                format!(
                    "The labels with their margins and gaps need {} of width, and the page has {}. Measure the sheet again.",
                    mm(needs),
                    mm(has)
                )
            }
            Self::TooHigh { needs, has } => {
                format!(
                    "The labels with their margins and gaps need {} of height, and the page has {}. Measure the sheet again.",
                    mm(needs),
                    mm(has)
                )
            }
            Self::NothingOnIt => "Nothing stands on the label yet. Choose at least one thing.".to_owned(),
        }
    }
}

/// The most labels of a page.
const MOST: u32 = 500;

impl Sheet {
    /// The places of the labels, row by row; no more than a page can have, whatever a copy from elsewhere says.
    pub fn cells(&self) -> Vec<Cell> {
        let um = |length: crate::quantity::Amount<crate::quantity::Length>| micrometres(length.value);
        let (left, top) = (um(self.left), um(self.top));
        let (step_x, step_y) = (um(self.width) + um(self.across), um(self.height) + um(self.down));
        let mut cells = Vec::new();
        for row in 0..i64::from(self.rows.min(MOST)) {
            for column in 0..i64::from(self.columns.min(MOST)) {
                cells.push(Cell { x: left + column * step_x, y: top + row * step_y });
            }
        }
        cells.truncate(MOST as usize);
        cells
    }

    fn errors(&self) -> Vec<SheetError> {
        let um = |length: crate::quantity::Amount<crate::quantity::Length>| micrometres(length.value);
        let (columns, rows) = (i64::from(self.columns), i64::from(self.rows));
        if columns == 0 || rows == 0 {
            return vec![SheetError::NoLabels];
        }
        if self.columns.saturating_mul(self.rows) > MOST {
            return vec![SheetError::TooMany];
        }
        let (width, height) = (um(self.width), um(self.height));
        if [width, height, um(self.page_width), um(self.page_height)].iter().any(|l| *l <= 0) {
            return vec![SheetError::NoSize];
        }
        let mut errors = Vec::new();
        if self.round && width != height {
            errors.push(SheetError::RoundIsNotSquare);
        }
        let wide = um(self.left) + columns * width + (columns - 1) * um(self.across);
        let high = um(self.top) + rows * height + (rows - 1) * um(self.down);
        let tenths = |um: i64| (um + 99) / 100;
        if wide > um(self.page_width) {
            errors.push(SheetError::TooWide { needs: tenths(wide), has: um(self.page_width) / 100 });
        }
        if high > um(self.page_height) {
            errors.push(SheetError::TooHigh { needs: tenths(high), has: um(self.page_height) / 100 });
        }
        errors
    }
}

impl Design {
    /// Looks it over.
    ///
    /// # Errors
    /// Everything that is wrong with it.
    pub fn check(&self) -> Result<(), Vec<SheetError>> {
        let mut errors = self.sheet.errors();
        if self.name.trim().is_empty() {
            errors.insert(0, SheetError::NoName);
        }
        if self.parts.is_empty() {
            errors.push(SheetError::NothingOnIt);
        }
        if errors.is_empty() { Ok(()) } else { Err(errors) }
    }
}
