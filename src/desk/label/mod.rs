//! Labels: the sheet they come on, what stands on one, and where.
//!
//! Lengths inside are whole micrometres, so that what is drawn is true to size without a rounding on the way.

mod block;
mod content;
mod foot;
mod lay;
mod picture;
mod sheet;
mod width;

pub use content::{Content, FIRE, lettering};
pub use lay::{Item, Laid, Overflow, lay};
pub use picture::{Picture, Stroke};
pub use sheet::{Cell, SheetError};
pub use width::{Face, width};

use crate::quantity::{Amount, Length};
use crate::wire::{wire_enum, wire_struct};

/// A label of the workshop: the sheet it is printed on and what stands on it.
#[derive(Clone, PartialEq, Debug)]
pub struct Design {
    pub name: String,
    pub sheet: Sheet,
    pub parts: Vec<Part>,
    pub market: Market,
    /// Who makes the candle, and where: name and address.
    pub maker: String,
    /// With which edition of which standard the person compared the fire-safety part; empty where they did not yet.
    pub compared: String,
}

wire_struct!(Design { name, sheet, parts, market, maker [default], compared [skip] });

impl Design {
    /// Whether the fire-safety part was compared with a standard, where it stands on the label.
    pub fn compared(&self) -> Option<String> {
        let said = self.compared.trim();
        self.parts.contains(&Part::Fire).then(|| {
            if said.is_empty() {
                "Nobody has compared the fire safety with a copy of the standard yet. Do, and write down which one: “Change the \
sheet or what stands on it”."
                    .to_owned()
            } else {
                ["Fire safety compared by you with: ", said, "."].concat()
            }
        })
    }
}

/// A sheet of labels.
#[derive(Clone, PartialEq, Debug)]
pub struct Sheet {
    pub page_width: Amount<Length>,
    pub page_height: Amount<Length>,
    /// Of one label; a round one has its diameter twice.
    pub width: Amount<Length>,
    pub height: Amount<Length>,
    pub round: bool,
    pub columns: u32,
    pub rows: u32,
    /// From the edges of the page to the first label.
    pub left: Amount<Length>,
    pub top: Amount<Length>,
    /// Between labels.
    pub across: Amount<Length>,
    pub down: Amount<Length>,
}

wire_struct!(Sheet { page_width, page_height, width, height, round, columns, rows, left, top, across, down });

/// What can stand on a label.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Part {
    Name,
    Fire,
    Hazards,
    Batch,
    Maker,
    Net,
}

wire_enum!(Part { Name, Fire, Hazards, Batch, Maker, Net });

impl Part {
    pub const ALL: [Self; 6] = [Self::Name, Self::Fire, Self::Hazards, Self::Batch, Self::Maker, Self::Net];

    pub const fn name(self) -> &'static str {
        match self {
            Self::Name => "Name of the candle",
            Self::Fire => "Fire safety",
            Self::Hazards => "Hazards",
            Self::Batch => "Batch, date and QR code",
            Self::Maker => "Who makes it",
            Self::Net => "Net contents",
        }
    }
}

/// Whose rules the label follows: net contents, what only one of them asks of the hazards, and the standard for fire safety.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Market {
    UnitedStates,
    EuropeanUnion,
    Both,
}

wire_enum!(Market { UnitedStates, EuropeanUnion, Both });

/// Beyond ten metres there are no labels, and no sums of them.
const FAR: i128 = 10_000_000;

/// A length in whole micrometres.
pub(crate) fn micrometres(length: Length) -> i64 {
    (length.in_base() * crate::quantity::Exact::whole(1000)).round().clamp(-FAR, FAR) as i64
}
