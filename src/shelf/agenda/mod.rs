//! What to pour next: the book as the planner is asked about it, and its plan told in sentences.

mod build;
mod chart;
mod gather;
mod lack;
mod say;
mod size;

pub use chart::{Row, Rows};
pub use gather::Batches;
pub use say::Days;
pub use size::Takes;

use super::planning::{Goal, Problem};
use crate::book::Id;
use crate::day::Day;
use crate::stores::Measure;

/// What the person holds on to while the rest is planned.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Picks {
    /// What counts first stands first; empty: the usual order.
    pub goals: Vec<Goal>,
    /// A product, and how many of it are poured in any case.
    pub pinned: Vec<Pick>,
    /// Products that are not poured today.
    pub dropped: Vec<Id>,
}

#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Pick {
    pub product: Id,
    pub number: u32,
}

/// What is asked of the planner, with what its numbers are called.
#[derive(Clone, PartialEq, Debug)]
pub struct Agenda {
    pub today: Day,
    pub problem: Problem,
    /// One for each good of the problem.
    pub items: Vec<Item>,
    /// One for each line.
    pub wants: Vec<Want>,
    /// One for each supply.
    pub stuffs: Vec<Stuff>,
    /// What cannot be held on to, and why.
    pub refused: Vec<(Pick, String)>,
}

/// A product that can be poured.
#[derive(Clone, PartialEq, Debug)]
pub struct Item {
    pub product: Id,
    pub name: String,
    pub formula: Id,
    pub vessel: Id,
    pub wick: String,
    /// Why some size of batch, or every one, is left out; one sentence each.
    pub without: Vec<String>,
    /// What it takes and the book has no lot of.
    pub unknown: Vec<String>,
    /// Not poured today, as the person says.
    pub dropped: bool,
}

/// A line of an order that waits.
#[derive(Clone, PartialEq, Debug)]
pub struct Want {
    pub order: Id,
    /// Who ordered; none where nobody is named.
    pub name: Option<String>,
    pub wanted: Option<Day>,
}

/// Something of the stores.
#[derive(Clone, PartialEq, Debug)]
pub struct Stuff {
    pub name: String,
    pub measure: Measure,
}
