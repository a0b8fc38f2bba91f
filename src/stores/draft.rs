//! A lot while it is typed.

use super::{Bought, Lot, Pack};
use crate::day::Day;
use crate::quantity::{
    Currency, Density, Exact, Mass, Quantity, Voice, Volume, VolumeUnit, read, read_count,
};

/// How a lot was bought.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Way {
    #[default]
    Weight,
    Volume,
    Pieces,
}

/// The texts as they were typed.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Draft {
    pub ingredient: String,
    pub number: String,
    pub supplier: String,
    pub got_on: String,
    pub best_before: String,
    pub price: String,
    pub packs: String,
    pub way: Way,
    /// What one pack holds.
    pub holds: String,
    /// What one pack weighs, where it was bought by volume and the density is not known.
    pub weighs: String,
}

impl Lot {
    /// What one pack of it held, grams or pieces.
    fn each(&self) -> Exact {
        self.amount / Exact::whole(self.bought.packs.max(1).into())
    }
}

impl Draft {
    /// A lot as it would be typed, to be changed.
    pub fn of(lot: &Lot, currency: &Currency, voice: Voice) -> Self {
        let (way, holds) = Self::pack_texts(lot.bought.pack, voice);
        Self {
            ingredient: lot.ingredient.clone(),
            number: lot.number.clone(),
            supplier: lot.supplier.clone(),
            got_on: lot.got_on.to_string(),
            best_before: lot.best_before.map(|d| d.to_string()).unwrap_or_default(),
            price: currency.show(lot.price, voice.locale),
            packs: lot.bought.packs.to_string(),
            way,
            holds,
            weighs: Self::weighs(lot, voice),
        }
    }

    /// What one pack of a lot weighs, as it is shown; empty where it was not bought by volume.
    fn weighs(lot: &Lot, voice: Voice) -> String {
        match lot.bought.pack {
            Pack::Volume(_) => voice.amount(Mass::from_base(lot.each()), voice.mass),
            Pack::Weight(_) | Pack::Pieces(_) => String::new(),
        }
    }

    /// A pack as it would be typed.
    pub(super) fn pack_texts(pack: Pack, voice: Voice) -> (Way, String) {
        match pack {
            Pack::Weight(mass) => (Way::Weight, voice.typed(mass)),
            Pack::Volume(volume) => (Way::Volume, voice.typed(volume)),
            Pack::Pieces(pieces) => (Way::Pieces, pieces.to_string()),
        }
    }

    /// What one pack holds.
    ///
    /// # Errors
    /// The sentence that says what is wrong with it.
    pub fn pack(&self, voice: Voice) -> Result<Pack, String> {
        let told = |e: crate::quantity::AmountError| format!("One pack holds: {e}");
        let nothing = "One pack holds: type more than nothing.";
        let (pack, empty) = match self.way {
            Way::Weight => {
                let mass = read::<Mass>(&self.holds, voice.mass, voice.locale).map_err(told)?;
                (Pack::Weight(mass), mass.value.is_zero())
            }
            Way::Volume => {
                let volume = read::<Volume>(&self.holds, VolumeUnit::Litre, voice.locale).map_err(told)?;
                (Pack::Volume(volume), volume.value.is_zero())
            }
            Way::Pieces => {
                let pieces = read_count(&self.holds, voice.locale).map_err(told)?;
                (Pack::Pieces(pieces), pieces == 0)
            }
        };
        if empty { Err(nothing.to_owned()) } else { Ok(pack) }
    }

    /// The lot. `density` is what is known of the ingredient's.
    ///
    /// # Errors
    /// Every sentence that says what is wrong.
    pub fn read(
        &self,
        currency: &Currency,
        density: Option<Density>,
        voice: Voice,
    ) -> Result<Lot, Vec<String>> {
        self.read_over(None, currency, density, voice)
    }

    /// The same where it puts a lot right: what one pack weighs is what it weighed to the last digit, and not what is shown of
    /// that, unless another weight is typed.
    ///
    /// # Errors
    /// As [`Draft::read`].
    pub fn read_over(
        &self,
        lot: Option<&Lot>,
        currency: &Currency,
        density: Option<Density>,
        voice: Voice,
    ) -> Result<Lot, Vec<String>> {
        let mut wrong = Vec::new();
        let mut note = |text: Option<String>| wrong.extend(text);
        if self.ingredient.trim().is_empty() {
            note(Some("What it is: type its name as it stands in the formulas.".to_owned()));
        }
        if self.number.trim().is_empty() {
            note(Some(
                "Lot number: copy it from the label. Where there is none, make one up and write it on."
                    .to_owned(),
            ));
        }
        let got_on = Day::read(&self.got_on);
        if got_on.is_none() {
            note(Some("Got on: choose the day it came.".to_owned()));
        }
        let best_before = Day::read(&self.best_before);
        if best_before.is_none() && !self.best_before.trim().is_empty() {
            note(Some("Best before: choose a day, or leave it empty.".to_owned()));
        }
        let price = currency.read(&self.price, voice.locale);
        note(price.as_ref().err().map(|e| format!("Price of all of it: {e}")));
        let packs = read_count(&self.packs, voice.locale);
        note(packs.as_ref().err().map(|e| format!("How many packs: {e}")));
        let packs = packs.unwrap_or(1).max(1);
        let pack = self.pack(voice);
        note(pack.as_ref().err().cloned());
        let weighed = self.weighed(density, voice);
        note(weighed.as_ref().err().cloned());
        let (Some(got_on), Ok(price), Ok(pack), Ok(density), true) =
            (got_on, price, pack, weighed, wrong.is_empty())
        else {
            return Err(wrong);
        };
        let same = lot.filter(|l| self.way == Way::Volume && self.weighs == Self::weighs(l, voice));
        let each = match same.filter(|_| !self.weighs.trim().is_empty()) {
            Some(lot) => lot.each(),
            None => pack.holds(density).unwrap_or_default(),
        };
        Ok(Lot {
            ingredient: self.ingredient.trim().to_owned(),
            number: self.number.trim().to_owned(),
            supplier: self.supplier.trim().to_owned(),
            got_on,
            best_before,
            price,
            bought: Bought { packs, pack },
            amount: each * Exact::whole(packs.into()),
        })
    }

    /// The density to weigh a volume by: from what one pack weighs, or else the one that is known.
    fn weighed(&self, density: Option<Density>, voice: Voice) -> Result<Option<Density>, String> {
        if self.way != Way::Volume {
            return Ok(None);
        }
        if self.weighs.trim().is_empty() {
            return density.map(Some).ok_or_else(|| {
                "One pack weighs: type it, since the weight of this by volume is not known. It stands on the label as net weight."
                    .to_owned()
            });
        }
        let mass = read::<Mass>(&self.weighs, voice.mass, voice.locale);
        let mass = mass.map_err(|e| format!("One pack weighs: {e}"))?.value;
        let Ok(Pack::Volume(volume)) = self.pack(voice) else { return Ok(None) };
        Ok(Density::from(mass, volume.value))
    }
}
