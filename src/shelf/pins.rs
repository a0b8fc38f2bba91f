//! What the person said of the pours of a product: the plan is made around it.

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
    /// Those that were being poured when this was said: one that is given up is held on to again.
    pub on: Vec<Taken>,
}

wire_struct!(Pins { pours, not_on [skip], on [skip] });

/// A pour that was held on to, and the batch that is it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Taken {
    pub batch: Id,
    pub number: u32,
}

wire_struct!(Taken { batch, number });

impl State {
    /// What is held on to and left out today. What was begun since it was said is held no more:
    /// each batch takes the pour off that is nearest in number. One that is given up gives it back.
    pub fn picks(&self, today: Day) -> Picks {
        let mut picks = Picks { goals: self.settings.goals.clone().unwrap_or_default(), ..Picks::default() };
        for (id, (said, pins)) in self.pins.iter() {
            let (pours, _) = self.held_of(id, *said, pins);
            picks.pinned.extend(pours.into_iter().map(|number| Pick { product: id.clone(), number }));
            if pins.not_on == Some(today) {
                picks.dropped.push(id.clone());
            }
        }
        picks
    }

    /// What of the pins of a product is held on to still, and what of it is being poured.
    fn held_of(&self, id: &Id, said: u64, pins: &Pins) -> (Vec<u32>, Vec<Taken>) {
        let (mut pours, mut on) = (pins.pours.clone(), Vec::new());
        for taken in &pins.on {
            match self.batches.get(&taken.batch) {
                Some(batch) if batch.ended.is_none() => on.push(taken.clone()),
                Some(batch) if !given_up(batch) => {}
                _ => pours.push(taken.number),
            }
        }
        let Some(product) = self.products.get(id).and_then(|kept| kept.body()) else { return (pours, on) };
        let counted = |b: &Batch| pins.on.iter().any(|taken| taken.batch == b.id);
        let begun = |b: &&Batch| b.began >= said && !given_up(b) && product.is_of(b) && !counted(b);
        for batch in self.batches.values().filter(begun) {
            let off = |n: &u32| n.abs_diff(batch.run.plan.vessels);
            if let Some((at, _)) = pours.iter().enumerate().min_by_key(|(_, n)| off(n)) {
                let number = pours.remove(at);
                if batch.ended.is_none() {
                    on.push(Taken { batch: batch.id.clone(), number });
                }
            }
        }
        (pours, on)
    }

    /// What is to be kept of a product where `picks` changes.
    pub fn pins_of(&self, picks: &Picks, product: &Id, today: Day) -> Pins {
        let of = picks.pinned.iter().filter(|pick| pick.product == *product);
        let not_on = picks.dropped.contains(product).then_some(today);
        let on = self.pins.get(product).map(|(said, pins)| self.held_of(product, *said, pins).1);
        Pins { pours: of.map(|pick| pick.number).collect(), not_on, on: on.unwrap_or_default() }
    }
}

fn given_up(batch: &Batch) -> bool {
    matches!(batch.ended, Some((Ending::GivenUp, ..)))
}
