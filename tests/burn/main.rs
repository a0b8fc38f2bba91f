//! Burn trials: what they tell, which wick next, and how they are kept.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic)]

mod candle;
mod end;
mod kept;
mod late;
mod looks;
mod near;
mod next;
mod pictures;
mod rates;
mod seen;
mod strd;
mod tells;
mod whole;
