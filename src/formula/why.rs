//! How the amounts of a solved formula came about.

use super::check::usual_total;
use super::share::Rates;
use super::{Basis, Formula, Makes, Part, Recipe, WaxShare};
use crate::quantity::{Exact, Mass, Share, Voice, Why};

/// All that the whys of one solution draw on.
pub(super) struct Telling<'a> {
    formula: &'a Formula,
    makes: Makes,
    wax: Mass,
    voice: Voice,
    recipe: &'a dyn Recipe,
    /// The total in words, and how all wax came about: nearly every line says them, and each number takes its time.
    total: String,
    all_wax: Why,
}

impl<'a> Telling<'a> {
    pub(super) fn of(
        formula: &'a Formula,
        makes: Makes,
        rates: &Rates,
        recipe: &'a dyn Recipe,
        voice: Voice,
    ) -> Self {
        let wax = makes.total.times(rates.wax());
        let total = voice.mass(makes.total);
        let all_wax = Why::new(
            "All wax",
            "total × (1 − parts measured by the whole) ÷ (1 + parts measured by the wax)",
            voice.mass(wax),
        )
        .with("total", &total)
        .with("parts measured by the whole", voice.share(Share::base(rates.by_whole)))
        .with("parts measured by the wax", voice.share(Share::base(rates.by_wax)));
        Self { formula, makes, wax, voice, recipe, total, all_wax }
    }

    pub(super) fn all_wax(&self) -> Why {
        self.all_wax.clone()
    }

    fn by_wax(&self, why: Why) -> Why {
        why.with_why("all wax", &self.all_wax.result, self.all_wax())
    }

    pub(super) fn one_wax(&self, wax: &WaxShare, mass: Mass) -> Why {
        self.by_wax(
            Why::new(&wax.name, "share of the blend × all wax", self.voice.mass(mass))
                .with("share of the blend", self.voice.typed(wax.share)),
        )
    }

    /// This batch against the usual one.
    fn scale(&self) -> Exact {
        let usual = usual_total(self.formula, self.makes.usual_residue);
        usual.and_then(|u| self.makes.total.over(u)).unwrap_or(Exact::ZERO)
    }

    /// The two values that scale what is written for the usual batch.
    fn scaled(&self, why: Why) -> Why {
        let why = why.with("total", &self.total);
        let (Some(usual), Some(total)) =
            (&self.formula.usual, usual_total(self.formula, self.makes.usual_residue))
        else {
            return why;
        };
        let total = self.voice.mass(total);
        let how = Why::new("Usual total", "vessels × fill + what stays in the pot", &total)
            .with("vessels", usual.vessels.to_string())
            .with("fill", self.voice.typed(usual.fill))
            .with("what stays in the pot", self.voice.mass(self.makes.usual_residue));
        why.with_why("usual total", total, how)
    }

    /// A mass with both conventions of saying its share.
    fn both(&self, mass: Mass) -> String {
        let share = |whole: Mass| self.voice.share(Share::base(mass.over(whole).unwrap_or(Exact::ZERO)));
        let (of_wax, of_whole) = (share(self.wax), share(self.makes.total));
        format!("{} = {of_wax} of the wax = {of_whole} of the whole", self.voice.mass(mass))
    }

    pub(super) fn part(&self, part: &Part, mass: Mass) -> Why {
        let voice = self.voice;
        let result = self.both(mass);
        match &part.basis {
            Basis::OfWax(share) => self.by_wax(
                Why::new(&part.name, "share of the wax × all wax", result)
                    .with("share of the wax", voice.typed(*share)),
            ),
            Basis::PerWax { amount, wax } => self.by_wax(
                Why::new(&part.name, "amount ÷ the wax it is for × all wax", result)
                    .with("amount", voice.typed(*amount))
                    .with("the wax it is for", voice.typed(*wax)),
            ),
            Basis::OfWhole(share) => Why::new(&part.name, "share of the whole × total", result)
                .with("share of the whole", voice.typed(*share))
                .with("total", &self.total),
            Basis::Weight(written) => self.scaled(
                Why::new(&part.name, "amount in the usual batch × total ÷ usual total", result)
                    .with("amount in the usual batch", voice.typed(*written)),
            ),
            Basis::Spoon(written) => {
                let why = match self.recipe.bulk_density(&part.name) {
                    Some(density) => {
                        let relation = "measure in the usual batch × bulk density × total ÷ usual total";
                        Why::new(&part.name, relation, result).with("bulk density", voice.density(density))
                    }
                    None => {
                        let now = voice.amount(written.value.times(self.scale()), written.unit);
                        Why::new(&part.name, "measure in the usual batch × total ÷ usual total", now)
                    }
                };
                self.scaled(why.with("measure in the usual batch", voice.typed(*written)))
            }
            Basis::Drops(written) => {
                let why = match self.recipe.drop_mass(&part.name) {
                    Some(drop) => {
                        let relation = "drops in the usual batch × mass of one drop × total ÷ usual total";
                        Why::new(&part.name, relation, result)
                            .with("mass of one drop", voice.milligrams(drop))
                    }
                    None => {
                        let now = Exact::whole((*written).into()) * self.scale();
                        let now = format!("{} drops", voice.number(now));
                        Why::new(&part.name, "drops in the usual batch × total ÷ usual total", now)
                    }
                };
                self.scaled(why.with("drops in the usual batch", written.to_string()))
            }
            Basis::PerVessel(pieces) => Why::new(
                &part.name,
                "pieces in each vessel; not part of the pour",
                format!("{pieces} in each vessel"),
            ),
        }
    }
}
