//! Planning the pours: which batches of what to pour today, for the orders that wait and the spare that is wished.
//!
//! Candles, days from today and supplies are whole numbers, so that a plan is proven and not merely close. Nothing here
//! knows the book: who asks makes a [`Problem`] of it.

mod ahead;
mod bound;
mod choice;
mod front;
mod join;
mod made;
mod model;
mod part;
mod prices;
mod round;
mod score;
mod search;
mod serve;
mod sum;
mod unit;
mod units;
mod why;

pub use part::Limits;
pub use score::{Goal, Measure, Score, order};
pub use search::Search;
pub use serve::MOST;

use crate::wire::{wire_enum, wire_struct};

/// What is asked. Indices of goods, lines and supplies are places in its lists.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Problem {
    pub goods: Vec<Good>,
    pub lines: Vec<Line>,
    /// What there is of each, in a unit of its own: micrograms, pieces.
    pub supplies: Vec<u64>,
    /// What counts first stands first; one left out follows in its usual place.
    pub goals: Vec<Goal>,
    /// In every plan, even where the supplies do not reach.
    pub pinned: Vec<Pin>,
}

wire_struct!(Problem { goods, lines, supplies, goals, pinned });

/// A product.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Good {
    /// Days from the pour until it ships: solid, cured, finished.
    pub takes: u32,
    /// Candles that are there: the day they are ready, and how many.
    pub stock: Vec<(u32, u32)>,
    /// Candles wished to stand ready beyond what is ordered.
    pub spare: u32,
    /// The batches it may be poured in. None: it is not poured, but for what is pinned.
    pub sizes: Vec<Size>,
    /// Goods of one colour and fragrance have the same number: no change between them.
    pub kind: u32,
    /// How dark the kind is: the light is poured before the dark.
    pub depth: u32,
}

wire_struct!(Good { takes, stock, spare, sizes, kind, depth });

/// A batch of so many candles, and what it takes of the supplies.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Size {
    pub number: u32,
    pub uses: Vec<(usize, u64)>,
}

wire_struct!(Size { number, uses });

/// Candles of one good that an order still wants.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Line {
    /// The order it stands in, for whoever asks.
    pub order: usize,
    pub good: usize,
    pub number: u32,
    /// The day it is to ship; a day gone by is today (0). None: whenever.
    pub wanted: Option<u32>,
    /// May go in parts; else it goes whole.
    pub in_parts: bool,
}

wire_struct!(Line { order, good, number, wanted, in_parts });

/// A pour the user holds on to, of a size that need not be among those of the good.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Pin {
    pub good: usize,
    pub size: Size,
}

wire_struct!(Pin { good, size });

/// The pours, in the order to pour them: light before dark, one kind together.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Plan {
    pub pours: Vec<Pour>,
    /// What becomes of each line.
    pub lines: Vec<Met>,
    pub score: Score,
    /// What a better plan could still reach; none: it is proven that no plan is better.
    pub gap: Option<Gap>,
    /// Supplies that the pinned pours lack, and how much.
    pub lacks: Vec<(usize, u64)>,
}

wire_struct!(Plan { pours, lines, score, gap, lacks });

impl Plan {
    /// No plan is better.
    pub fn closed(&self) -> bool {
        self.gap.is_none()
    }
}

/// How far a plan may be from the best: in all measures before this one no plan is better, in this one none goes below.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Gap {
    pub measure: Measure,
    pub least: u32,
}

wire_struct!(Gap { measure, least });

#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Pour {
    pub good: usize,
    pub number: u32,
    pub pinned: bool,
    /// The lines it is for, and how many candles.
    pub serves: Vec<(usize, u32)>,
    /// Candles for the wished spare.
    pub spare: u32,
    /// Candles beyond that.
    pub surplus: u32,
    /// What would be worse without this pour, all else being poured.
    pub without: Loss,
}

wire_struct!(Pour { good, number, pinned, serves, spare, surplus, without });

/// Candles more that are late, unmet, or short of the wished spare.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Loss {
    pub late: u32,
    pub unmet: u32,
    pub short: u32,
}

wire_struct!(Loss { late, unmet, short });

/// A line in the plan: candles on time, late, and not at all.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Met {
    pub on_time: u32,
    pub late: u32,
    pub unmet: u32,
    /// The day the last of it is there; none where none is.
    pub ready: Option<u32>,
    /// Of it from the pours of this plan.
    pub poured: u32,
    /// Why it is not all on time.
    pub miss: Option<Miss>,
}

wire_struct!(Met { on_time, late, unmet, ready, poured, miss });

#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Miss {
    /// What is poured today is ready on this day only, later than it is wanted.
    Date { ready: u32 },
    /// The smallest pour that would do, and what it lacks beside this plan.
    Supply { number: u32, lacks: Vec<(usize, u64)> },
    /// It is not poured in any size.
    Size,
    /// More is wanted of the good than is planned for at once.
    Most,
    /// It could be poured, but what counts more would be worse.
    Goals,
}

wire_enum!(Miss { Date { ready }, Supply { number, lacks }, Size, Most, Goals });
