//! What happened to a candle on trial. Of one that is judged, and tied up in a bundle, it is untied when it is first looked at.

use super::lazy::{Lazy, Made};
use super::{Bundle, Id, State};
use crate::bench::burn::{BurnEvent, Course, Verdict, course};
use std::fmt;
use std::rc::Rc;

/// What happened to a candle, with the entry that says so, in order.
#[derive(Clone)]
pub struct Burns(Lazy<Vec<(Id, BurnEvent)>>);

impl Made for Vec<(Id, BurnEvent)> {
    fn made(state: State) -> Self {
        state.burns.into_values().next().map(|mut b| std::mem::take(b.0.change())).unwrap_or_default()
    }
}

impl Default for Burns {
    fn default() -> Self {
        Self(Lazy::here(Vec::new()))
    }
}

impl Burns {
    /// Those of the candle at this place of a bundle.
    pub(super) const fn tied(bundle: Rc<dyn Bundle>, place: usize) -> Self {
        Self(Lazy::tied(bundle, place))
    }

    pub(super) fn add(&mut self, entry: &Id, event: &BurnEvent) {
        self.0.change().push((entry.clone(), event.clone()));
    }

    pub fn events(&self) -> &[(Id, BurnEvent)] {
        self.0.get()
    }

    pub fn course(&self) -> Course {
        course(self.events().iter().map(|(_, event)| event))
    }

    pub fn verdict(&self) -> Option<Verdict> {
        match self.0.bundle() {
            Some((bundle, place)) => bundle.verdict(place),
            None => self.course().closed.map(|(verdict, _)| verdict),
        }
    }

    /// True while it burns. A candle that is tied up is out.
    pub fn burning(&self) -> bool {
        self.0.bundle().is_none() && self.course().burning().is_some()
    }
}

impl PartialEq for Burns {
    fn eq(&self, other: &Self) -> bool {
        self.events() == other.events()
    }
}

impl fmt::Debug for Burns {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.events().fmt(f)
    }
}
