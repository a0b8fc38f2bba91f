//! Why something at the pot is refused, and what a step is called.

use super::StepKey;
use std::fmt;

/// A step with what it takes to name it. `Display` is the name: written out only where it is read, which is not where it is
/// refused.
#[derive(Clone, PartialEq, Debug)]
pub struct Named {
    pub(super) step: StepKey,
    /// The wax or part it is about; empty where it is about none.
    pub(super) line: String,
    /// Pieces to be set in the vessels.
    pub(super) counted: bool,
}

impl fmt::Display for Named {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let line = &self.line;
        match self.step {
            StepKey::Wax { .. } => write!(f, "Weigh {line}"),
            StepKey::Melt { .. } => f.write_str("Melt the wax"),
            StepKey::Add { .. } if self.counted => write!(f, "Set {line}"),
            StepKey::Add { .. } => write!(f, "Add {line}"),
            StepKey::Stir { .. } => write!(f, "Stir in {line}"),
            StepKey::TopUp { .. } => write!(f, "Add more {line}"),
            StepKey::Gate { .. } => f.write_str("Bring it to the pour range"),
            StepKey::Fill { vessel, .. } => write!(f, "Fill vessel {}", vessel.saturating_add(1)),
            StepKey::Close => f.write_str("Close the record"),
        }
    }
}

/// Why an event is refused. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum RunError {
    NoSuchStep,
    AlreadyDone {
        step: Named,
    },
    /// Something else has to come first.
    NotYet {
        step: Named,
        first: Named,
    },
    /// There is nothing to keep or restore.
    NotOver {
        step: Named,
    },
    MendedAlready {
        step: Named,
    },
    /// Vessels are filled already: what is added now would not reach them.
    Poured,
    Closed,
}

impl fmt::Display for RunError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchStep => f.write_str("That step is not part of this pour."),
            Self::AlreadyDone { step } => {
                write!(f, "“{step}” is done already. To change it, undo back to it and do it again.")
            }
            Self::NotYet { step, first } => write!(f, "Not yet: “{first}” comes before “{step}”."),
            Self::NotOver { step } => {
                write!(f, "What was weighed at “{step}” is not over what was asked, so there is nothing to put right.")
            }
            Self::MendedAlready { step } => {
                write!(f, "It is settled already what to do about “{step}”. Undo that first to choose again.")
            }
            Self::Poured => f.write_str(
                "Vessels are filled from this pot already, so it cannot be restored: they would not get what is added. \
                 Keep it, and note it on the record.",
            ),
            Self::Closed => f.write_str("This pour is closed. Undo the close to change it."),
        }
    }
}

impl std::error::Error for RunError {}
