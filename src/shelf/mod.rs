//! Orders and what stands on the shelf: what is sold, to whom, what of it is there, what is short and when it can ship.

pub mod agenda;
mod coming;
mod draft;
mod finish;
mod lead;
mod number;
mod open;
mod past;
mod pins;
pub mod planning;
mod sent;
mod shipment;
mod stock;
mod went;

pub use draft::{OrderDraft, ProductDraft};
pub use finish::{FINISHES, Finish, Ticked};
pub use lead::Lead;
pub use number::{as_batch_number, batch_number, check_sign, is_batch_number};
pub use open::{Open, OpenLine, Share, When};
pub use past::Past;
pub use pins::{Pins, Taken};
pub use sent::{Beyond, Sent};
pub use shipment::Fit;
pub use stock::{Shelf, Stand, Stock};
use went::candles;

use crate::book::Id;
use crate::day::Day;
use crate::wire::{wire_enum, wire_struct};

/// What is sold: a formula in a vessel with its wick, and what finishes it.
#[derive(Clone, PartialEq, Debug)]
pub struct Product {
    pub name: String,
    pub formula: Id,
    pub vessel: Id,
    pub wick: String,
    /// What else goes on or around each: sticker, lid, labels, box.
    pub parts: Vec<String>,
    /// Candles wished to stand ready beyond what is ordered.
    pub spare: u32,
    /// Days from the pour until it may ship; none: those of the formula.
    pub cure_days: Option<u32>,
}

wire_struct!(Product { name, formula, vessel, wick, parts, spare, cure_days [skip] });

/// How somebody buys.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Buys {
    #[default]
    Retail,
    Wholesale,
    PrivateLabel,
}

wire_enum!(Buys { Retail, Wholesale, PrivateLabel });

/// Somebody who orders.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Customer {
    pub name: String,
    pub buys: Buys,
    /// Address, telephone: whatever is needed to send it.
    pub contact: String,
    /// They asked to be removed: what was written here was taken out for good.
    pub removed: bool,
}

wire_struct!(Customer { name, buys, contact, removed [skip] });

impl Customer {
    /// What is left of somebody who asked to be removed.
    pub fn nobody() -> Self {
        Self { name: "Removed".to_owned(), removed: true, ..Self::default() }
    }
}

/// An order.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Order {
    /// None: nobody is named.
    pub customer: Option<Id>,
    pub lines: Vec<OrderLine>,
    pub wanted: Option<Day>,
    /// A line may go out in parts; else it goes whole.
    pub in_parts: bool,
    pub note: String,
    /// Nothing more is to be sent, whatever is missing.
    pub closed: bool,
}

wire_struct!(Order { customer [skip], lines, wanted [skip], in_parts, note, closed });

#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OrderLine {
    pub product: Id,
    pub number: u32,
}

wire_struct!(OrderLine { product, number });

/// Candles of a batch that went, or came back.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Move {
    pub batch: Id,
    pub number: u32,
    pub reason: Reason,
    pub on: Day,
    pub note: String,
}

wire_struct!(Move { batch, number, reason, on, note });

#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Reason {
    /// Sent to whoever ordered it.
    Shipped {
        order: Id,
        product: Id,
    },
    Broken,
    Sample,
    Gift,
    /// Counted, and so many less, or more, were there than the book says.
    Missing,
    Found,
    Returned,
}

wire_enum!(Reason {
    Shipped { order, product },
    Broken,
    Sample,
    Gift,
    Missing,
    Found,
    Returned,
});

impl Move {
    /// So many were counted where the book says `left`: how many are missing or found, none where it agrees.
    pub fn counted(left: i64, counted: u32) -> Option<(u32, Reason)> {
        let off = i64::from(counted) - left;
        let number = u32::try_from(off.unsigned_abs()).unwrap_or(u32::MAX);
        (off != 0).then_some((number, if off < 0 { Reason::Missing } else { Reason::Found }))
    }

    /// What it adds to the batch's candles on the shelf.
    pub fn adds(&self) -> i64 {
        let number = i64::from(self.number);
        if matches!(self.reason, Reason::Found | Reason::Returned) { number } else { -number }
    }
}
