//! What of a file is left out, however much of it there is.

/// So many lines are named one by one (our own choice: more than anybody reads).
pub const MOST_NAMED: usize = 1_000;

/// Lines that are left out, by their number from 1, each with the reason; past [`MOST_NAMED`] they are only counted, so that
/// a file of nothing but junk takes no more room than itself.
#[derive(Clone, PartialEq, Debug)]
pub(super) struct LeftOut<T> {
    pub(super) named: Vec<(usize, T)>,
    pub(super) more: usize,
}

impl<T> Default for LeftOut<T> {
    fn default() -> Self {
        Self { named: Vec::new(), more: 0 }
    }
}

impl<T> LeftOut<T> {
    pub(super) fn add(&mut self, place: usize, why: T) {
        if self.named.len() < MOST_NAMED {
            self.named.push((place, why));
        } else {
            self.more += 1;
        }
    }
}
