//! The batches that planning asks of, reckoned one after the other: all at once they take so long that a key would wait.

use super::{Picks, Takes};
use crate::book::{Id, Kept, Map, State};
use crate::quantity::Voice;

/// A batch as it would be poured, or the sentence that says why it cannot be.
type Reckoned = Result<Takes, String>;

/// Batches, reckoned or to be reckoned. They are of the book and the picks they were begun with: after a change of
/// either they are begun anew.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Batches {
    /// Still to be reckoned: products, and how many candles of each. The last is next.
    left: Vec<(Id, u32)>,
    reckoned: Map<Vec<(u32, Reckoned)>>,
}

impl Batches {
    /// None where it is not reckoned.
    pub(super) fn get(&self, product: &Id, number: u32) -> Option<&Reckoned> {
        let of = self.reckoned.get(product)?.iter();
        of.clone().find(|(known, _)| *known == number).map(|(_, batch)| batch)
    }
}

impl State {
    /// What is to be reckoned before the planner is asked: each usual size of what is sold, and what is held on to.
    pub fn batches(&self, picks: &Picks) -> Batches {
        let mut left = Vec::new();
        for kept in self.products_shown() {
            left.extend(self.settings.sizes().iter().map(|number| (kept.id.clone(), *number)));
        }
        left.extend(picks.pinned.iter().map(|pick| (pick.product.clone(), pick.number)));
        left.reverse();
        Batches { left, reckoned: Map::default() }
    }

    /// Reckons the next batch; false where none is left.
    pub fn reckon(&self, batches: &mut Batches, voice: Voice) -> bool {
        let Some((product, number)) = batches.left.pop() else { return false };
        let body = self.products.get(&product).and_then(Kept::body);
        if let (Some(body), None) = (body, batches.get(&product, number)) {
            let batch = (number, self.takes(body, number, voice));
            match batches.reckoned.get_mut(&product) {
                Some(of) => of.push(batch),
                None => batches.reckoned.add(&product, vec![batch]),
            }
        }
        true
    }
}
