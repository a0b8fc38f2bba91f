//! What the person said of the pours of a product: the plan is made around it.

use super::Product;
use super::agenda::{Pick, Picks};
use crate::book::{Batch, Ending, Id, State};
use crate::day::Day;
use crate::wire::wire_struct;

/// Pours of a product that are held on to, and the day on which it is not poured.
///
/// It is kept in the book and not by the device: what is settled at the desk is poured beside the pot, and two books that
/// are merged have what was said of either's products.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Pins {
    /// How many candles each has.
    pub pours: Vec<u32>,
    /// It is not poured on this day; later it is planned again.
    pub not_on: Option<Day>,
}

wire_struct!(Pins { pours, not_on [skip] });

impl State {
    /// What is held on to and left out today. What was begun since it was said is held no more:
    /// each batch takes the pour off that is nearest in number. One that is given up gives it back.
    pub fn picks(&self, today: Day) -> Picks {
        let mut picks = Picks { goals: self.settings.goals.clone().unwrap_or_default(), ..Picks::default() };
        for (id, (said, pins)) in self.pins.iter() {
            let mut pours = pins.pours.clone();
            if let Some(product) = self.products.get(id).and_then(|kept| kept.body()) {
                for batch in self.batches.values().filter(|b| begun_since(product, b, *said)) {
                    let off = |n: &u32| n.abs_diff(batch.run.plan.vessels);
                    if let Some((at, _)) = pours.iter().enumerate().min_by_key(|(_, n)| off(n)) {
                        pours.remove(at);
                    }
                }
            }
            picks.pinned.extend(pours.into_iter().map(|number| Pick { product: id.clone(), number }));
            if pins.not_on == Some(today) {
                picks.dropped.push(id.clone());
            }
        }
        picks
    }

    /// What is to be kept of a product where `picks` changes.
    pub fn pins_of(picks: &Picks, product: &Id, today: Day) -> Pins {
        let of = picks.pinned.iter().filter(|pick| pick.product == *product);
        let not_on = picks.dropped.contains(product).then_some(today);
        Pins { pours: of.map(|pick| pick.number).collect(), not_on }
    }
}

fn begun_since(product: &Product, batch: &Batch, said: u64) -> bool {
    let given_up = matches!(batch.ended, Some((Ending::GivenUp, ..)));
    batch.began >= said && !given_up && product.is_of(batch)
}
