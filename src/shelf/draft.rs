//! Products and orders while they are typed.

use super::{Order, OrderLine, Product};
use crate::book::{Id, Kept, State};
use crate::day::Day;
use crate::quantity::{Locale, read_count};

/// The texts as they were typed.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct ProductDraft {
    pub name: String,
    pub formula: String,
    pub vessel: String,
    pub wick: String,
    /// One to a line, or with commas between.
    pub parts: String,
    pub spare: String,
    pub cure_days: String,
}

/// A whole number where nothing typed, or 0, is none.
fn count(what: &str, text: &str, locale: Locale, wrong: &mut Vec<String>) -> u32 {
    if matches!(text.trim(), "" | "0") {
        return 0;
    }
    read_count(text, locale).unwrap_or_else(|e| {
        wrong.push([what, ": ", &e.to_string()].concat());
        0
    })
}

impl ProductDraft {
    /// What a batch made; nothing yet where there is none.
    pub fn like(state: &State, batch: &Id) -> Self {
        state.batches.get(batch).map_or_else(Self::default, |batch| Self {
            formula: batch.formula.0.clone(),
            vessel: batch.vessel.0.clone(),
            wick: batch.run.plan.wick.clone(),
            ..Self::default()
        })
    }

    pub fn of(product: &Product) -> Self {
        Self {
            name: product.name.clone(),
            formula: product.formula.0.clone(),
            vessel: product.vessel.0.clone(),
            wick: product.wick.clone(),
            parts: product.parts.join(", "),
            spare: product.spare.to_string(),
            cure_days: product.cure_days.map(|d| d.to_string()).unwrap_or_default(),
        }
    }

    /// # Errors
    /// Every sentence against it.
    pub fn read(&self, state: &State, locale: Locale) -> Result<Product, Vec<String>> {
        let mut wrong = Vec::new();
        let (formula, vessel) = (Id(self.formula.clone()), Id(self.vessel.clone()));
        if !state.formulas.contains_key(&formula) {
            wrong.push("Choose the formula it is made of.".to_owned());
        }
        if !state.vessels.contains_key(&vessel) {
            wrong.push("Choose the vessel it comes in.".to_owned());
        }
        let spare = count("To have in store", &self.spare, locale, &mut wrong);
        let cure = count("Days until it ships", &self.cure_days, locale, &mut wrong);
        let parts = self.parts.split([',', '\n']).map(str::trim).filter(|p| !p.is_empty());
        let name = match self.name.trim() {
            "" => {
                let formula = state.formulas.get(&formula).and_then(|k| k.body()).map(|f| f.name.as_str());
                let vessel = state.vessels.get(&vessel).and_then(|k| k.body()).map(|v| v.name.as_str());
                [formula.unwrap_or_default(), ", ", vessel.unwrap_or_default()].concat()
            }
            name => name.to_owned(),
        };
        if !wrong.is_empty() {
            return Err(wrong);
        }
        Ok(Product {
            name,
            formula,
            vessel,
            wick: self.wick.trim().to_owned(),
            parts: parts.map(str::to_owned).collect(),
            spare,
            cure_days: (!self.cure_days.trim().is_empty()).then_some(cure),
        })
    }
}

/// The texts as they were typed.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct OrderDraft {
    /// An id, or empty.
    pub customer: String,
    /// Products and how many of each; those without a number are left out.
    pub lines: Vec<(String, String)>,
    pub wanted: String,
    pub in_parts: bool,
    pub note: String,
}

impl OrderDraft {
    pub fn of(order: &Order) -> Self {
        let mut lines: Vec<(String, u32)> = Vec::new();
        for line in &order.lines {
            match lines.iter_mut().find(|(product, _)| *product == line.product.0) {
                Some((_, number)) => *number = number.saturating_add(line.number),
                None => lines.push((line.product.0.clone(), line.number)),
            }
        }
        Self {
            customer: order.customer.as_ref().map(|c| c.0.clone()).unwrap_or_default(),
            lines: lines.into_iter().map(|(product, number)| (product, number.to_string())).collect(),
            wanted: order.wanted.map(|d| d.to_string()).unwrap_or_default(),
            in_parts: order.in_parts,
            note: order.note.clone(),
        }
    }

    /// What may stand in it: each candle's id, its name, and how many are ordered. What is sold no more stays in an order
    /// that has it.
    pub fn rows(&self, state: &State) -> Vec<(String, String, String)> {
        let ordered = |id: &Id| self.lines.iter().find(|(product, _)| *product == id.0);
        let mut kept = state.products_shown();
        let shown = |id: &Id| state.products.get(id).is_some_and(|k| !k.retired);
        let gone = self.lines.iter().map(|(product, _)| Id(product.clone())).filter(|id| !shown(id));
        kept.extend(gone.filter_map(|id| state.products.get(&id)));
        let row = |k: &Kept<Product>| {
            let number = ordered(&k.id).map(|(_, number)| number.clone());
            Some((k.id.0.clone(), k.body()?.name.clone(), number.unwrap_or_default()))
        };
        kept.into_iter().filter_map(row).collect()
    }

    /// # Errors
    /// Every sentence against it.
    pub fn read(&self, state: &State, locale: Locale) -> Result<Order, Vec<String>> {
        let mut wrong = Vec::new();
        let mut lines: Vec<OrderLine> = Vec::new();
        for (product, number) in &self.lines {
            let product = Id(product.clone());
            let Some(name) = state.products.get(&product).and_then(|k| k.body()).map(|p| &p.name) else {
                continue;
            };
            let number = count(name, number, locale, &mut wrong);
            match lines.iter_mut().find(|l| l.product == product) {
                Some(line) => line.number = line.number.saturating_add(number),
                None if number > 0 => lines.push(OrderLine { product, number }),
                None => {}
            }
        }
        if lines.is_empty() && wrong.is_empty() {
            wrong.push("Say how many of which candle are ordered.".to_owned());
        }
        let wanted = match self.wanted.trim() {
            "" => None,
            text => {
                let day = Day::read(text);
                if day.is_none() {
                    wrong.push(["“", text, "” is not a day. Type it like 2026-12-24."].concat());
                }
                day
            }
        };
        if !wrong.is_empty() {
            return Err(wrong);
        }
        Ok(Order {
            customer: Some(self.customer.clone()).filter(|c| !c.is_empty()).map(Id),
            lines,
            wanted,
            in_parts: self.in_parts,
            note: self.note.trim().to_owned(),
            closed: false,
        })
    }
}
