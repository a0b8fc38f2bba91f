//! Things by their id. One for all kinds of things: only its last step differs from kind to kind.

use super::Id;

/// Things in the order of their ids. Finding one halves the list; what is new mostly goes to the end.
#[derive(Clone, PartialEq, Debug)]
pub struct Map<T> {
    ids: Vec<Id>,
    /// One for each id; in boxes, so that little is moved where one goes in between.
    things: Vec<Box<T>>,
}

impl<T> Default for Map<T> {
    fn default() -> Self {
        Self { ids: Vec::new(), things: Vec::new() }
    }
}

impl<T> Map<T> {
    pub fn len(&self) -> usize {
        self.ids.len()
    }

    pub fn is_empty(&self) -> bool {
        self.ids.is_empty()
    }

    pub fn get(&self, id: &Id) -> Option<&T> {
        self.at(self.ids.binary_search(id).ok()?)
    }

    pub fn get_mut(&mut self, id: &Id) -> Option<&mut T> {
        self.things.get_mut(self.ids.binary_search(id).ok()?).map(Box::as_mut)
    }

    pub fn contains_key(&self, id: &Id) -> bool {
        self.ids.binary_search(id).is_ok()
    }

    /// The thing at this place in the order of the ids.
    pub fn at(&self, place: usize) -> Option<&T> {
        self.things.get(place).map(Box::as_ref)
    }

    pub fn values(&self) -> impl Iterator<Item = &T> {
        self.things.iter().map(Box::as_ref)
    }

    pub fn into_values(self) -> impl Iterator<Item = T> {
        self.things.into_iter().map(|thing| *thing)
    }

    pub fn iter(&self) -> impl Iterator<Item = (&Id, &T)> {
        self.ids.iter().zip(self.values())
    }

    /// Puts a thing in, where there is none of this id yet.
    pub fn add(&mut self, id: &Id, thing: T) {
        // Read from where they are in order, each goes to the end.
        let last = self.ids.last().is_none_or(|last| last < id);
        if let Err(at) = if last { Err(self.ids.len()) } else { self.ids.binary_search(id) } {
            self.ids.insert(at, id.clone());
            self.things.insert(at, Box::new(thing));
        }
    }

    /// Keeps only the things that `good` holds of.
    pub fn retain(&mut self, good: impl Fn(&T) -> bool) {
        let mut kept = self.things.iter().map(|thing| good(thing));
        self.ids.retain(|_| kept.next().unwrap_or(false));
        self.things.retain(|thing| good(thing));
    }

    pub fn remove(&mut self, id: &Id) {
        if let Ok(at) = self.ids.binary_search(id) {
            self.ids.remove(at);
            self.things.remove(at);
        }
    }
}
