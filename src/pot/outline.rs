//! A plan without how its measures came about: what is shown while someone types.

use super::plan::planned;
use super::{Ask, Note, Plan, PlanError};
use std::ops::Deref;

/// A plan of which neither the pours nor their lines say how they came about, which takes most of the time. What is kept
/// is a [`Plan`], and this cannot be taken for one.
#[derive(Clone, PartialEq, Debug)]
pub struct Outline(Plan);

impl Outline {
    /// With one more thing to be told of the whole.
    pub(crate) fn with(mut self, note: Option<Note>) -> Self {
        self.0.notes.extend(note);
        self
    }
}

impl Deref for Outline {
    type Target = Plan;
    fn deref(&self) -> &Plan {
        &self.0
    }
}

/// The same plan in outline, with the choices of whole drops as [`super::shades`] says them: the formula is solved once
/// for both.
///
/// # Errors
/// As [`super::plan`].
pub fn outline(ask: &Ask) -> Result<(Outline, Vec<String>), PlanError> {
    planned(ask, None).map(|(plan, choices)| (Outline(plan), choices))
}
