//! What is asked for at the pot, as it stands in the fields.

use crate::book::{Batch, Id, VesselOffer, Wish};
use crate::dom::*;
use crate::keep::Which;
use crate::pot::{Outline, Plan, Residue, Target};
use crate::quantity::{Mass, Share, ShareUnit};
use crate::rooms::parts::Typed;
use crate::rooms::workshop::Workshop;
use crate::shelf::agenda::Item;
use leptos::prelude::Owner;
use std::cell::Cell;

const NO_VESSEL: &str = "No vessel in the book yet. Add the one you pour into.";

/// What sets the size of the batch.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum By {
    Vessels,
    Total,
    Left,
}

#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Stays {
    Nothing,
    Each,
    OfFilled,
}

/// The fields; copied freely.
#[derive(Clone, Copy)]
pub(super) struct Asked {
    pub(super) formula: Value<String>,
    /// The key of an offer, see [`key`].
    pub(super) vessel: Value<String>,
    /// The vessel that is chosen: looked up once for every number that is typed.
    pub(super) offer: Derived<Option<VesselOffer>>,
    /// Typed where the formula does not name the vessel.
    pub(super) wick: Typed,
    pub(super) by: Value<By>,
    pub(super) vessels: Typed,
    pub(super) total: Typed,
    pub(super) ingredient: Value<String>,
    pub(super) left: Typed,
    pub(super) warmed: Value<bool>,
    /// Empty: one pour, whatever its size.
    pub(super) pot: Value<String>,
    /// Which choice of whole drops is taken, as a number; the nearest where there is none of it.
    pub(super) shade: Value<String>,
    pub(super) stays: Value<Stays>,
    pub(super) stays_each: Typed,
    pub(super) stays_share: Typed,
}

/// Tells apart the offers of one vessel with different wicks.
pub(super) fn key(offer: &VesselOffer) -> String {
    format!("{}/{}", offer.vessel, offer.wick.as_deref().unwrap_or_default())
}

fn offers(shop: Workshop, formula: Value<String>) -> Vec<VesselOffer> {
    shop.state(|s| s.vessels_for(&Id(formula.get())))
}

thread_local! {
    /// What was filled in last, and in which workshop; it outlives the room while another one is looked at.
    static KEPT: Cell<Option<(Which, Asked)>> = const { Cell::new(None) };
}

impl Asked {
    /// As it was left, in the same workshop; otherwise a new one.
    pub(super) fn kept(shop: Workshop) -> Self {
        let which = untrack(|| shop.which());
        if let Some((_, asked)) = KEPT.get().filter(|k| k.0 == which) {
            return asked;
        }
        // Of the outermost owner, so that leaving the room does not take it away.
        let mut owner = Owner::current();
        while let Some(outer) = owner.as_ref().and_then(Owner::parent) {
            owner = Some(outer);
        }
        let asked = owner.unwrap_or_default().with(|| Self::new(shop));
        KEPT.set(Some((which, asked)));
        asked
    }

    /// The next one begins anew.
    pub(super) fn forget() {
        KEPT.set(None);
    }

    /// Filled in as the last pour was, or with the first of everything.
    fn new(shop: Workshop) -> Self {
        shop.state_untracked(|s| {
            let (stays, each, share) = match &s.settings.residue {
                Residue::None => (Stays::Nothing, None, None),
                Residue::Each(mass) => (Stays::Each, Some(*mass), None),
                Residue::OfFilled(share) => (Stays::OfFilled, None, Some(*share)),
            };
            let (formula, vessel) = (Value::default(), Value::default());
            let asked = Self {
                formula,
                vessel,
                offer: Derived::new(move || {
                    let chosen = vessel.get();
                    offers(shop, formula).into_iter().find(|o| key(o) == chosen)
                }),
                wick: Typed::new(""),
                by: Value::new(By::Vessels),
                vessels: Typed::new("1"),
                total: Typed::new(""),
                ingredient: Value::default(),
                left: Typed::new(""),
                warmed: Value::new(false),
                pot: Value::default(),
                shade: Value::new("0".to_owned()),
                stays: Value::new(stays),
                stays_each: Typed::amount::<Mass>(each),
                stays_share: Typed::amount::<Share>(share),
            };
            let last = s.batches_shown().first().map(|b| (b.run.plan.warmed, s.again(b).pot));
            if let Some((warmed, pot)) = last {
                asked.warmed.set(warmed);
                asked.pot.set(pot.map(|p| p.0).unwrap_or_default());
            } else if let [only] = s.pots_shown().as_slice() {
                asked.pot.set(only.id.0.clone());
            }
            if let Some(first) = s.formulas_shown().first() {
                asked.choose(shop, &first.id);
            }
            asked
        })
    }

    /// A formula with its first vessel and the batch it is usually made in.
    pub(super) fn choose(self, shop: Workshop, formula: &Id) {
        self.formula.set(formula.0.clone());
        self.shade.set("0".to_owned());
        shop.state_untracked(|s| {
            let body = s.formulas.get(formula).and_then(|k| k.body());
            if let Some(usual) = body.and_then(|f| f.usual.as_ref()) {
                self.vessels.text.set(usual.vessels.to_string());
            }
            let wax = body.and_then(|f| f.wax.first()).map(|w| w.name.clone());
            self.ingredient.set(wax.unwrap_or_default());
            self.vessel.set(s.vessels_for(formula).first().map(key).unwrap_or_default());
        });
    }

    /// So many of this vessel.
    pub(super) fn fill(self, shop: Workshop, vessel: &Id, count: &str) {
        let offers = untrack(|| self.offers(shop));
        if let Some(offer) = offers.iter().find(|o| o.vessel == *vessel) {
            self.vessel.set(key(offer));
        }
        self.by.set(By::Vessels);
        self.vessels.text.set(count.to_owned());
    }

    /// So many of a formula in a vessel with its wick, in the smallest pot that holds them all.
    pub(super) fn of(self, shop: Workshop, item: &Item, number: u32) {
        self.choose(shop, &Id(item.formula.0.clone()));
        let offers = untrack(|| self.offers(shop)).into_iter().filter(|o| o.vessel == item.vessel);
        let offer = offers.max_by_key(|o| o.wick.as_ref() == Some(&item.wick));
        self.vessel.set(offer.as_ref().map(key).unwrap_or_default());
        self.wick.text.set(item.wick.clone());
        self.by.set(By::Vessels);
        self.vessels.text.set(number.to_string());
        self.pot.set(String::new());
        if let Ok((plan, _)) = untrack(|| self.outline(shop)) {
            let pot = shop.state_untracked(|s| s.pot_for(&plan));
            self.pot.set(pot.map(|p| p.0).unwrap_or_default());
        }
    }

    /// As this batch was asked for.
    pub(super) fn again(self, shop: Workshop, batch: &Batch) {
        shop.state_untracked(|s| {
            let wish = s.again(batch);
            self.choose(shop, &wish.formula);
            let offer = s
                .vessels_for(&wish.formula)
                .into_iter()
                .filter(|o| o.vessel == wish.vessel)
                .max_by_key(|o| o.wick.as_ref() == Some(&wish.wick));
            self.vessel.set(offer.as_ref().map(key).unwrap_or_default());
            self.wick.text.set(wish.wick);
            self.by.set(By::Vessels);
            self.vessels.text.set(batch.run.plan.vessels.to_string());
            self.warmed.set(wish.warmed);
            self.pot.set(wish.pot.map(|p| p.0).unwrap_or_default());
        });
    }

    pub(super) fn offers(self, shop: Workshop) -> Vec<VesselOffer> {
        offers(shop, self.formula)
    }

    /// The first vessel where none is chosen, as where the first one was added since.
    pub(super) fn some_vessel(self, shop: Workshop) {
        if self.offer.with_untracked(Option::is_none) {
            let offers = untrack(|| self.offers(shop));
            self.vessel.set(offers.first().map(key).unwrap_or_default());
        }
    }

    fn target(self, shop: Workshop) -> Result<Target, String> {
        let mass = |typed: Typed| typed.read::<Mass>(shop.mass_unit()).map_err(|e| e.to_string());
        match self.by.get() {
            By::Vessels => self.vessels.count().map(Target::Vessels).map_err(|e| e.to_string()),
            By::Total => mass(self.total).map(Target::Total),
            By::Left => Ok(Target::Left { ingredient: self.ingredient.get(), mass: mass(self.left)? }),
        }
    }

    pub(super) fn residue(self, shop: Workshop) -> Result<Residue, String> {
        match self.stays.get() {
            Stays::Nothing => Ok(Residue::None),
            Stays::Each => {
                self.stays_each.read(shop.mass_unit()).map(Residue::Each).map_err(|e| e.to_string())
            }
            Stays::OfFilled => {
                self.stays_share.read(ShareUnit::Percent).map(Residue::OfFilled).map_err(|e| e.to_string())
            }
        }
    }

    fn wish(self, shop: Workshop) -> Result<Wish, String> {
        let none = || if self.offers(shop).is_empty() { NO_VESSEL } else { "Choose a vessel first." };
        let offer = self.offer.get().ok_or_else(none)?;
        Ok(Wish {
            formula: Id(self.formula.get()),
            vessel: offer.vessel,
            wick: offer.wick.unwrap_or_else(|| self.wick.get()),
            target: self.target(shop)?,
            residue: self.residue(shop)?,
            warmed: self.warmed.get(),
            pot: Some(self.pot.get()).filter(|p| !p.is_empty()).map(Id),
            shade: self.shade.get().parse().unwrap_or_default(),
        })
    }

    /// The plan for what stands in the fields in outline with the choices of whole drops in words, or the sentence that
    /// says why there is none.
    pub(super) fn outline(self, shop: Workshop) -> Result<(Outline, Vec<String>), String> {
        let wish = self.wish(shop)?;
        shop.state(|s| s.outline(&wish, shop.voice())).map_err(|e| e.say(shop.voice()))
    }

    /// The plan itself, with how everything in it came about.
    pub(super) fn plan(self, shop: Workshop) -> Result<Plan, String> {
        let wish = self.wish(shop)?;
        shop.state(|s| s.plan(&wish, shop.voice())).map_err(|e| e.say(shop.voice()))
    }
}
