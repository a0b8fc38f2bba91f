//! Potside: making container candles in small batches, from the formula to the poured and recorded batch.
//!
//! The modules, in the order data flows:
//! - [`quantity`]: exact amounts: parse, convert, round, show; and how a number came about ([`quantity::Why`]).
//! - [`formula`]: what a candle is made of, and solving it for any target.
//! - [`vessel`]: how much wax a vessel takes.
//! - [`bench`]: what trials tell: drop mass, bulk density, scales, burns and wicks.
//! - [`pot`]: the plan of a pour: scaling, rounding, scales, drops, correction, the order of work.
//! - [`heat`]: mixing, the pot's cooling from readings, the vessel as it freezes.
//! - [`shelf`]: orders and what stands on the shelf: what is short, and when it can ship.
//! - [`stores`]: lots as bought, what became of each, where it is, when to buy again.
//! - [`desk`]: what a candle costs, and its price; what its label must say.
//! - [`book`]: what is kept: entries, the journal, its fold into today's state.
//! - [`photo`]: photos of candles on trial: small pictures, and what is proven of them.
//! - [`lists`]: every list as text for a spreadsheet, and two kinds of list read.
//! - [`wire`]: how what is kept is written as JSON and read back.
//! - [`day`], [`sort`], [`student`], [`text`]: days, the one sort, Student's t and the small letters that all of them use.
//! - `apart` (in the browser): modules fetched when they are first wanted.
//! - `keep` (in the browser): storage behind the trait that `book` defines.
//! - `dom` (in the browser): how a page is described, shown and followed.
//! - `rooms` (in the browser): the views.

pub mod bench;
pub mod book;
pub mod day;
pub mod desk;
pub mod formula;
pub mod heat;
pub mod lists;
pub mod photo;
pub mod pot;
pub mod quantity;
pub mod shelf;
pub mod sort;
pub mod stores;
pub mod student;
pub mod text;
pub mod vessel;
pub mod wire;

#[cfg(target_arch = "wasm32")]
pub mod apart;
#[cfg(target_arch = "wasm32")]
pub mod dom;
#[cfg(target_arch = "wasm32")]
pub mod keep;
#[cfg(target_arch = "wasm32")]
pub mod rooms;
