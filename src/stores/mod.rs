//! What is in the stores: lots as they were bought, what became of each, where it is, when to buy again.

mod chart;
mod draft;
mod errand;
mod gone;
mod ledger;
mod measured;
mod order;
mod pace;
mod play;
mod pool;
mod reserve;
mod source;
mod supply;
mod trace;

pub use chart::Chart;
pub use draft::{Draft, Way};
pub use errand::{Lack, Standing};
pub use gone::{Sent, Whereabouts};
pub use ledger::{Account, Holding, Ledger, Take};
pub use order::{OFFERS, SupplyDraft};
pub use pace::{Pace, Reorder};
pub use supply::{Buy, Offer, Supply};
pub use trace::{Origin, Reach};

use crate::day::Day;
use crate::quantity::{
    Amount, Density, Exact, Mass, MassUnit, Money, Quantity, Voice, Volume, decimal, read, read_count,
};
use crate::wire::{wire_enum, wire_struct};

/// Something bought together, from one lot of the supplier.
#[derive(Clone, PartialEq, Debug)]
pub struct Lot {
    /// By its name in the formulas; a vessel and a wick by theirs.
    pub ingredient: String,
    /// The supplier's lot number.
    pub number: String,
    pub supplier: String,
    pub got_on: Day,
    pub best_before: Option<Day>,
    /// Paid for all of it.
    pub price: Money,
    pub bought: Bought,
    /// All of it as it is used: grams, or pieces where it was bought by pieces.
    pub amount: Exact,
}

wire_struct!(Lot { ingredient, number, supplier [skip], got_on, best_before [skip], price, bought, amount });

/// So many packs, and what one holds: two of 10 lb, one of 1 gal, three of 12 pieces.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Bought {
    pub packs: u32,
    pub pack: Pack,
}

wire_struct!(Bought { packs, pack });

#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Pack {
    Weight(Amount<Mass>),
    Volume(Amount<Volume>),
    Pieces(u32),
}

wire_enum!(Pack { Weight(it), Volume(it), Pieces(it) });

impl Pack {
    /// What one holds as it is used, grams or pieces. None of a volume whose density is not known.
    pub fn holds(self, density: Option<Density>) -> Option<Exact> {
        match self {
            Self::Weight(mass) => Some(mass.value.in_base()),
            Self::Volume(volume) => Some(density?.mass_of(volume.value).in_base()),
            Self::Pieces(pieces) => Some(Exact::whole(pieces.into())),
        }
    }

    pub const fn measure(self) -> Measure {
        match self {
            Self::Weight(_) | Self::Volume(_) => Measure::Grams,
            Self::Pieces(_) => Measure::Pieces,
        }
    }

    pub fn say(self, voice: Voice) -> String {
        match self {
            Self::Weight(mass) => voice.typed(mass),
            Self::Volume(volume) => voice.typed(volume),
            Self::Pieces(pieces) => Measure::Pieces.say(Exact::whole(pieces.into()), voice),
        }
    }
}

/// From so many grams on a stock is told in kilograms or pounds.
const HEAVY: Exact = Exact::whole(1000);

/// What an amount in the stores counts.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Measure {
    #[default]
    Grams,
    Pieces,
}

impl Measure {
    /// An amount in words: `4.54 kg (10 lb)`, `12 pieces`.
    pub fn say(self, amount: Exact, voice: Voice) -> String {
        match self {
            Self::Grams => {
                let first = match voice.mass {
                    _ if amount.abs() < HEAVY => voice.mass,
                    MassUnit::Gram | MassUnit::Kilogram => MassUnit::Kilogram,
                    MassUnit::Ounce | MassUnit::Pound => MassUnit::Pound,
                };
                Voice { mass: first, ..voice }.both(Mass::from_base(amount))
            }
            Self::Pieces if amount == Exact::ONE => "1 piece".to_owned(),
            Self::Pieces => [&decimal(amount, Exact::ONE, voice.locale), " pieces"].concat(),
        }
    }

    /// True of two amounts that are told as the same in one of the units they are told in: who types what is shown of a
    /// stock means all of it.
    fn is_told_as(self, a: Exact, b: Exact, voice: Voice) -> bool {
        let (a, b) = (self.say(a, voice), self.say(b, voice));
        a.split(" (").zip(b.split(" (")).any(|(a, b)| a == b)
    }

    /// An amount as it is typed.
    ///
    /// # Errors
    /// The sentence that says what is wrong with it.
    pub fn read(self, text: &str, voice: Voice) -> Result<Exact, String> {
        let amount = match self {
            Self::Grams => read::<Mass>(text, voice.mass, voice.locale).map(|m| m.value.in_base()),
            // That none is left is a count too.
            Self::Pieces if text.trim() == "0" => Ok(Exact::ZERO),
            Self::Pieces => read_count(text, voice.locale).map(|n| Exact::whole(n.into())),
        };
        amount.map_err(|e| e.to_string())
    }
}

/// What happened to a lot after it was got.
#[derive(Clone, PartialEq, Debug)]
pub enum LotEvent {
    /// So much of it is really there, whatever the book says.
    Counted {
        left: Exact,
        reason: String,
    },
    WrittenOff {
        amount: Exact,
        reason: String,
    },
    /// Not to be used until it is released.
    Held {
        reason: String,
    },
    Released {
        reason: String,
    },
}

impl LotEvent {
    /// The event where `left` is what the book has of the lot. A count may say anything.
    ///
    /// # Errors
    /// Why it cannot be so.
    pub fn within(self, left: Exact, measure: Measure, voice: Voice) -> Result<Self, String> {
        match self {
            Self::WrittenOff { amount, .. } if amount.is_zero() => {
                Err("Type more than nothing to write off.".to_owned())
            }
            Self::WrittenOff { amount, reason }
                if amount > left && measure.is_told_as(amount, left, voice) =>
            {
                Ok(Self::WrittenOff { amount: left, reason })
            }
            Self::WrittenOff { amount, .. } if amount > left => Err([
                "By the book this is left: ",
                &measure.say(left, voice),
                ". No more than that is written off. If more was there, count what is there now.",
            ]
            .concat()),
            event => Ok(event),
        }
    }

    /// What was done and why: `Counted: 640 g. Two spoons were spilt.`
    pub fn say(&self, measure: Measure, voice: Voice) -> String {
        let (what, amount, reason) = match self {
            Self::Counted { left, reason } => ("Counted", Some(left), reason),
            Self::WrittenOff { amount, reason } => ("Written off", Some(amount), reason),
            Self::Held { reason } => ("Put on hold", None, reason),
            Self::Released { reason } => ("Released", None, reason),
        };
        let amount = amount.map(|a| [": ", &measure.say(*a, voice)].concat()).unwrap_or_default();
        let end = if reason.is_empty() { "." } else { ". " };
        [what, &amount, end, reason].concat()
    }
}

wire_enum!(LotEvent {
    Counted { left, reason },
    WrittenOff { amount, reason },
    Held { reason },
    Released { reason },
});

/// The lots that one part of a batch is taken from, in this order: from the next once one is used up. What is more than
/// the book has of them was in the last one all the same.
#[derive(Clone, PartialEq, Debug)]
pub struct Source {
    /// The name of the part in the plan.
    pub part: String,
    pub lots: Vec<crate::book::Id>,
}

wire_struct!(Source { part, lots });
