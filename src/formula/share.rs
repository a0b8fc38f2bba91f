//! What each part takes of the wax and of the whole, and the two conventions for saying it.

use super::{Basis, Formula, FormulaError, Part, Recipe, Unweighed};
use crate::quantity::{Exact, Mass, Share, Voice, Why};

/// `of_wax` as a share of the whole, where nothing else but the wax is in it: a ÷ (1 + a), so 8 % of the wax is 7.41 %.
pub fn wax_to_whole(of_wax: Share) -> Share {
    Share::base(of_wax.in_base() / (Exact::ONE + of_wax.in_base()))
}

/// `of_whole` as a share of the wax, where nothing else is in it: b ÷ (1 − b). None where no wax is left.
pub fn whole_to_wax(of_whole: Share) -> Option<Share> {
    let rest = Exact::ONE - of_whole.in_base();
    (rest > Exact::ZERO).then(|| Share::base(of_whole.in_base() / rest))
}

/// One share said in the other convention, both ways round, where nothing else is in the wax.
pub fn conventions(share: Share, voice: Voice) -> Vec<(String, Why)> {
    let said = voice.share(share);
    let one = |from: &str, to: &str, relation: &str, result: Share| {
        let result = voice.share(result);
        let why = Why::new(format!("{said} of the {from} as a share of the {to}"), relation, &result)
            .with(format!("share of the {from}"), said.clone());
        (format!("{said} of the {from} = {result} of the {to}"), why)
    };
    let of_wax = one("wax", "whole", "share ÷ (1 + share)", wax_to_whole(share));
    let of_whole = whole_to_wax(share).map(|s| one("whole", "wax", "share ÷ (1 − share)", s));
    std::iter::once(of_wax).chain(of_whole).collect()
}

/// A part takes `by_wax` grams for each gram of wax and `by_whole` for each gram of the whole.
pub(super) struct Rate {
    pub(super) by_wax: Exact,
    pub(super) by_whole: Exact,
    pub(super) unweighed: Option<Unweighed>,
}

impl Rate {
    /// `usual` is the total the amounts of one batch were written for.
    fn of(part: &Part, usual: Mass, recipe: &dyn Recipe) -> Self {
        let none = Self { by_wax: Exact::ZERO, by_whole: Exact::ZERO, unweighed: None };
        let batch = |mass: Mass| mass.over(usual).unwrap_or(Exact::ZERO);
        match &part.basis {
            Basis::OfWax(share) => Self { by_wax: share.value.in_base(), ..none },
            Basis::PerWax { amount, wax } => {
                Self { by_wax: amount.value.over(wax.value).unwrap_or(Exact::ZERO), ..none }
            }
            Basis::OfWhole(share) => Self { by_whole: share.value.in_base(), ..none },
            Basis::Weight(mass) => Self { by_whole: batch(mass.value), ..none },
            Basis::Spoon(volume) => match recipe.bulk_density(&part.name) {
                Some(density) => Self { by_whole: batch(density.mass_of(volume.value)), ..none },
                None => Self { unweighed: Some(Unweighed::Spoon), ..none },
            },
            Basis::Drops(drops) => match recipe.drop_mass(&part.name) {
                Some(mass) => Self { by_whole: batch(mass.times(Exact::whole((*drops).into()))), ..none },
                None => Self { unweighed: Some(Unweighed::Drops), ..none },
            },
            Basis::PerVessel(_) => none,
        }
    }
}

/// The rates of all parts in the formula's order.
pub(super) struct Rates {
    pub(super) parts: Vec<Rate>,
    pub(super) by_wax: Exact,
    pub(super) by_whole: Exact,
}

impl Rates {
    /// # Errors
    /// Where the parts by the whole leave no room for wax.
    pub(super) fn of(formula: &Formula, usual: Mass, recipe: &dyn Recipe) -> Result<Self, FormulaError> {
        let parts: Vec<Rate> = formula.parts.iter().map(|part| Rate::of(part, usual, recipe)).collect();
        let sum = |of: fn(&Rate) -> Exact| parts.iter().map(of).fold(Exact::ZERO, |a, b| a + b);
        let (by_wax, by_whole) = (sum(|r| r.by_wax), sum(|r| r.by_whole));
        if by_whole >= Exact::ONE {
            let largest = formula.parts.iter().zip(&parts).max_by_key(|(_, rate)| rate.by_whole);
            let largest = largest.map(|(part, _)| part.name.clone()).unwrap_or_default();
            return Err(FormulaError::Full { adds_to: Share::base(by_whole), largest });
        }
        Ok(Self { parts, by_wax, by_whole })
    }

    /// The share of the whole that is wax: (1 − Σ by the whole) ÷ (1 + Σ by the wax), above zero.
    pub(super) fn wax(&self) -> Exact {
        (Exact::ONE - self.by_whole) / (Exact::ONE + self.by_wax)
    }
}
