//! What the entries of one thing come to. Where they are tied up in a bundle it is made when it is first looked at.

use super::{Bundle, State};
use std::cell::OnceCell;
use std::rc::Rc;

/// It is found in what the entries of one thing fold to.
pub(super) trait Made {
    fn made(state: State) -> Self;
}

fn untied<T: Made>(bundle: &dyn Bundle, place: usize) -> Box<T> {
    let mut state = State::default();
    bundle.entries(place).iter().for_each(|entry| state.take(entry));
    Box::new(T::made(state))
}

#[derive(Clone)]
pub(super) enum Lazy<T> {
    Here(Box<T>),
    /// At a place of a bundle; once it was looked at, also here.
    Tied(OnceCell<Box<T>>, Rc<dyn Bundle>, usize),
}

impl<T: Made> Lazy<T> {
    pub(super) fn here(made: T) -> Self {
        Self::Here(Box::new(made))
    }

    pub(super) const fn tied(bundle: Rc<dyn Bundle>, place: usize) -> Self {
        Self::Tied(OnceCell::new(), bundle, place)
    }

    /// Where it is tied up, so that what many things are asked need not untie them.
    pub(super) fn bundle(&self) -> Option<(&dyn Bundle, usize)> {
        match self {
            Self::Here(_) => None,
            Self::Tied(_, bundle, place) => Some((bundle.as_ref(), *place)),
        }
    }

    pub(super) fn get(&self) -> &T {
        match self {
            Self::Here(made) => made,
            Self::Tied(made, bundle, place) => made.get_or_init(|| untied(bundle.as_ref(), *place)),
        }
    }

    /// It to be changed: then it is no longer as it was tied up.
    pub(super) fn change(&mut self) -> &mut T {
        if let Self::Tied(made, bundle, place) = self {
            *self = Self::Here(made.take().unwrap_or_else(|| untied(bundle.as_ref(), *place)));
        }
        match self {
            Self::Here(made) => made,
            Self::Tied(..) => unreachable!("it is here now"),
        }
    }
}
