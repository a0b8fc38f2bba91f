//! What an act is about, whether it can be taken back, and which version it was made over.

use super::{Act, Id};

/// What an act is about: an act changes this and nothing else of the state.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Subject<'a> {
    Thing(&'a Id),
    Settings,
    /// Everything.
    Book,
    /// Nothing of it is changed.
    Nothing,
    /// Whatever the entry of this id is about.
    Entry(&'a Id),
}

impl Act {
    /// True for what cannot be taken back at all.
    pub const fn is_final(&self) -> bool {
        matches!(self, Self::Forgotten { .. })
    }

    /// True for what an undo takes back. A copy that was taken in is taken back by another act.
    pub const fn is_undoable(&self) -> bool {
        !matches!(self, Self::Forgotten { .. } | Self::Took { .. })
    }

    pub fn subject(&self) -> Subject<'_> {
        match self {
            Self::Formula { id, .. }
            | Self::Vessel { id, .. }
            | Self::Product { id, .. }
            | Self::Customer { id, .. }
            | Self::Forgotten { customer: id }
            | Self::Order { id, .. }
            | Self::Moved { id, .. }
            | Self::Ticked { batch: id, .. }
            | Self::Pinned { product: id, .. }
            | Self::Scale { id, .. }
            | Self::Pot { id, .. }
            | Self::Ingredient { id, .. }
            | Self::Safety { id, .. }
            | Self::Label { id, .. }
            | Self::Retire { id, .. }
            | Self::Choose { id, .. }
            | Self::Began { batch: id, .. }
            | Self::At { batch: id, .. }
            | Self::Ended { batch: id, .. }
            | Self::Lot { id, .. }
            | Self::AtLot { lot: id, .. }
            | Self::TakenFrom { batch: id, .. }
            | Self::Worked { batch: id, .. }
            | Self::Trial { id, .. }
            | Self::AtTrial { trial: id, .. }
            | Self::Wicks { id, .. } => Subject::Thing(id),
            Self::Settings(_) | Self::Rates(_) | Self::Limits(_) => Subject::Settings,
            Self::Replace(_) => Subject::Book,
            Self::Took { .. } => Subject::Nothing,
            Self::Undo { entry } => Subject::Entry(entry),
        }
    }

    /// Where it makes a version of a thing: the versions it was made over, none for the first. Two that were made over
    /// the same one were made beside each other.
    pub fn made_over(&self) -> Option<&[Id]> {
        match self {
            Self::Formula { over, .. }
            | Self::Vessel { over, .. }
            | Self::Scale { over, .. }
            | Self::Pot { over, .. }
            | Self::Ingredient { over, .. }
            | Self::Safety { over, .. }
            | Self::Lot { over, .. }
            | Self::Trial { over, .. }
            | Self::Wicks { over, .. }
            | Self::Product { over, .. }
            | Self::Customer { over, .. }
            | Self::Order { over, .. }
            | Self::Moved { over, .. }
            | Self::Label { over, .. } => Some(over.as_slice()),
            Self::Choose { among, .. } => Some(among),
            Self::Retire { .. }
            | Self::Settings(_)
            | Self::Began { .. }
            | Self::At { .. }
            | Self::Ended { .. }
            | Self::AtLot { .. }
            | Self::TakenFrom { .. }
            | Self::Worked { .. }
            | Self::Rates(_)
            | Self::AtTrial { .. }
            | Self::Limits(_)
            | Self::Forgotten { .. }
            | Self::Ticked { .. }
            | Self::Pinned { .. }
            | Self::Replace(_)
            | Self::Took { .. }
            | Self::Undo { .. } => None,
        }
    }
}
