//! How long it takes from a pour until its candles can ship.

use super::{Finish, Product};
use crate::book::{Batch, State};
use crate::day::{Day, Zone};

/// The steps of it, in days: solid, then cured, then finished.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Lead {
    pub solid: u32,
    pub cure: u32,
    pub finish: u32,
}

/// Solid the day after the pour (common practice, no source), where the workshop does not say otherwise.
const SOLID: u32 = 1;

impl State {
    /// From a pour of a product until it can ship: with its own days of cure, or those of its formula today.
    pub fn lead(&self, product: &Product) -> Lead {
        let of_formula = || Some(self.formulas.get(&product.formula)?.body()?.cure_days);
        self.lead_of(product.cure_days.or_else(of_formula).unwrap_or_default())
    }

    /// The first day on which candles of a batch that was poured on this day have set and cured, for so many days or those of
    /// its formula. Once they are seen to be solid, the days for that are not waited for.
    pub fn ready_on(&self, batch: &Batch, poured: Day, cure_days: Option<u32>) -> Day {
        let lead = self.lead_of(cure_days.unwrap_or_else(|| batch.run.cure_days()));
        let solid = if batch.ticked.has(Finish::Solid) { 0 } else { lead.solid };
        Day(poured.0.saturating_add(solid).saturating_add(lead.cure))
    }

    /// The same by the days of cure of what they are sold as. None where no vessel was filled.
    pub fn sells_on(&self, batch: &Batch, zone: Zone) -> Option<Day> {
        let product = self.product_of(batch);
        Some(self.ready_on(batch, batch.poured_on(zone)?, product.and_then(|p| p.cure_days)))
    }

    /// The day that candles ready on such a day can ship: what is not finished is finished then, as was said while it was
    /// poured. Finished while it cures, it goes as soon as it is ready.
    pub(super) fn ships_on(&self, batch: &Batch, ready: Day, today: Day) -> Day {
        let finish = self.settings.finish_days.unwrap_or_default();
        if batch.ticked.is_whole() { ready } else { Day(ready.max(today).0.saturating_add(finish)) }
    }

    /// From a pour until it can ship, with so many days of cure.
    pub(super) fn lead_of(&self, cure: u32) -> Lead {
        Lead {
            solid: self.settings.solid_days.unwrap_or(SOLID),
            cure,
            finish: self.settings.finish_days.unwrap_or_default(),
        }
    }
}

fn days(n: u32) -> String {
    if n == 1 { "1 day".to_owned() } else { [&n.to_string(), " days"].concat() }
}

impl Lead {
    /// The day it can ship where it is poured on this one.
    pub fn from(self, poured: Day) -> Day {
        let sum = self.solid.saturating_add(self.cure).saturating_add(self.finish);
        Day(poured.0.saturating_add(sum))
    }

    /// `Poured today, solid tomorrow, 14 days of cure, 1 day to finish.`
    pub fn say(self) -> String {
        let mut said = vec!["Poured today".to_owned()];
        said.push(match self.solid {
            0 => "solid the same day".to_owned(),
            1 => "solid tomorrow".to_owned(),
            more => ["solid after ", &days(more)].concat(),
        });
        if self.cure > 0 {
            said.push([&days(self.cure), " of cure"].concat());
        }
        if self.finish > 0 {
            said.push([&days(self.finish), " to finish"].concat());
        }
        [&said.join(", "), "."].concat()
    }
}
