//! Net contents: what is declared, how high its letters stand, and whether a batch as filled would pass.
//!
//! An aid: local law and a qualified person decide.

mod declare;
mod handbook;
mod letters;
mod panel;
mod test;

pub(super) use declare::plain;
pub use declare::{
    Declaration, declare, declare_metric, declare_tapers, declare_tapers_metric, enforced, no_length,
    nothing, overstated,
};
pub use handbook::{us_mav, us_test};
pub use letters::{Asked, eu_letters, us_letters, us_place};
pub use panel::{Panel, eu_height, us_height};
pub use test::{Test, eu_test, eu_tne};
