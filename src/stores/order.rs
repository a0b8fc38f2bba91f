//! How an ingredient is bought, while it is typed.

use super::{Draft, Lot, Offer, Supply, Way};
use crate::desk::{read_percent, say_percent};
use crate::quantity::{Currency, Exact, Money, Voice, read_count};

/// So many prices can be typed.
pub const OFFERS: usize = 3;

/// The texts as they were typed.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct SupplyDraft {
    pub lead_days: String,
    pub lead_spread: String,
    pub order_cost: String,
    pub keeping: String,
    pub way: Way,
    pub holds: String,
    /// From so many packs, and the price of each; an empty pair is none.
    pub offers: [(String, String); OFFERS],
}

impl SupplyDraft {
    pub fn of(supply: &Supply, currency: &Currency, voice: Voice) -> Self {
        let (way, holds) = Draft::pack_texts(supply.pack, voice);
        let mut offers: [(String, String); OFFERS] = Default::default();
        for (text, offer) in offers.iter_mut().zip(&supply.offers) {
            *text = (offer.from.to_string(), currency.show(offer.price, voice.locale));
        }
        Self {
            lead_days: supply.lead_days.to_string(),
            lead_spread: supply.lead_spread.to_string(),
            order_cost: currency.show(supply.order_cost, voice.locale),
            keeping: say_percent(supply.keeping, voice),
            way,
            holds,
            offers,
        }
    }

    /// As the last lot was bought.
    pub fn like(lot: &Lot, currency: &Currency, voice: Voice) -> Self {
        let (way, holds) = Draft::pack_texts(lot.bought.pack, voice);
        let each = lot.price.times(Exact::ratio(1, lot.bought.packs.max(1).into()));
        let mut offers: [(String, String); OFFERS] = Default::default();
        if let Some(first) = offers.first_mut() {
            *first = ("1".to_owned(), currency.show(each, voice.locale));
        }
        Self { keeping: "20 %".to_owned(), way, holds, offers, ..Self::default() }
    }

    /// # Errors
    /// Every sentence that says what is wrong.
    pub fn read(&self, currency: &Currency, voice: Voice) -> Result<Supply, Vec<String>> {
        let mut wrong = Vec::new();
        let count = |label: &str, text: &str, wrong: &mut Vec<String>| {
            let read = read_count(text, voice.locale);
            read.map_err(|e| wrong.push([label, ": ", &e.to_string()].concat())).unwrap_or_default()
        };
        let price = |label: &str, text: &str, wrong: &mut Vec<String>| {
            let read = currency.read(text, voice.locale);
            read.map_err(|e| wrong.push([label, ": ", &e.to_string()].concat())).unwrap_or(Money::ZERO)
        };
        // It may come on the same day, and always to the day.
        let days = |label: &str, text: &str, wrong: &mut Vec<String>| {
            if text.trim() == "0" { 0 } else { count(label, text, wrong) }
        };
        let lead_days = days("Days until it comes", &self.lead_days, &mut wrong);
        let lead_spread = days("Sooner or later by", &self.lead_spread, &mut wrong);
        let order_cost = price("What an order costs", &self.order_cost, &mut wrong);
        let keeping = read_percent(&self.keeping, voice)
            .map_err(|e| wrong.push(["Keeping it for a year: ", &e].concat()))
            .unwrap_or_default();
        let pack = Draft { way: self.way, holds: self.holds.clone(), ..Draft::default() }.pack(voice);
        let mut offers: Vec<Offer> = Vec::new();
        for (from, each) in self.offers.iter().filter(|(from, each)| !(from.is_empty() && each.is_empty())) {
            let from = count("From so many", from, &mut wrong);
            let price = price("Price of one", each, &mut wrong);
            if offers.last().is_some_and(|before| before.from >= from) {
                wrong.push(
                    "Prices: begin with the smallest number, each from more packs than the one before."
                        .to_owned(),
                );
            }
            offers.push(Offer { from, price });
        }
        match pack {
            Ok(pack) if wrong.is_empty() => {
                Ok(Supply { lead_days, lead_spread, order_cost, keeping, pack, offers })
            }
            pack => {
                wrong.extend(pack.err());
                Err(wrong)
            }
        }
    }
}
