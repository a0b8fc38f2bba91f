//! What a whole plan takes of everything, over all its pots.

use super::said::spoons;
use super::{Dose, Plan};
use crate::quantity::{Mass, Voice, Why};
use crate::text::same;

/// One wax or part, all pots together.
#[derive(Clone, PartialEq, Debug)]
pub struct Need {
    pub name: String,
    pub mass: Mass,
    pub drops: u32,
    /// Eighths of a US teaspoon.
    pub eighths: u32,
    pub pieces: u32,
}

impl Need {
    /// As one measures it: `61.0 g (2.15 oz)`, `14 drops, 0.29 g`, `1 tbsp, 8.0 g`, `8 pieces`.
    pub fn say(&self, voice: Voice) -> String {
        let many = |n: u32, one: &str, more: &str| format!("{n} {}", if n == 1 { one } else { more });
        let beside = |measure: String| {
            if self.mass.is_zero() {
                measure
            } else {
                format!("{measure}, {}", voice.amount(self.mass, voice.mass))
            }
        };
        if self.pieces > 0 {
            many(self.pieces, "piece", "pieces")
        } else if self.drops > 0 {
            beside(many(self.drops, "drop", "drops"))
        } else if self.eighths > 0 {
            let (number, unit) = spoons(self.eighths, voice);
            beside([&number, unit].join(" "))
        } else {
            voice.both(self.mass)
        }
    }
}

impl Plan {
    /// How a value came about that the whole batch came from: "fill", "what stays in the pot".
    pub fn why_of(&self, name: &str) -> Option<Why> {
        let value = self.why.values.iter().find(|v| v.name == name)?;
        value.why.as_deref().cloned()
    }

    /// What all pots take together, in the order of the first pot.
    pub fn needs(&self) -> Vec<Need> {
        let mut needs: Vec<Need> = Vec::new();
        for line in self.pours.iter().flat_map(|p| &p.lines) {
            let at = needs.iter().position(|n| n.name == line.name).unwrap_or(needs.len());
            if at == needs.len() {
                needs.push(Need {
                    name: line.name.clone(),
                    mass: Mass::ZERO,
                    drops: 0,
                    eighths: 0,
                    pieces: 0,
                });
            }
            let Some(need) = needs.get_mut(at) else { continue };
            need.mass = need.mass + line.dose.mass();
            match line.dose {
                Dose::Drops { drops, .. } => need.drops += drops,
                Dose::Spoon { eighths, .. } => need.eighths += eighths,
                Dose::Count { pieces } => need.pieces += pieces,
                Dose::Weigh { .. } | Dose::Unweighable { .. } => {}
            }
        }
        needs
    }

    /// The vessel and its wick, one to each candle. Not what is counted among the parts: there it is told how many.
    pub fn own(&self) -> Vec<&String> {
        let lines = || self.pours.iter().flat_map(|pour| &pour.lines);
        let counted =
            |name: &str| lines().any(|l| matches!(l.dose, Dose::Count { .. }) && same(&l.name, name));
        [&self.vessel, &self.wick].into_iter().filter(|name| !name.is_empty() && !counted(name)).collect()
    }

    /// True of what a pour of it uses by itself: a wax or part, the vessel, the wick.
    pub fn takes(&self, name: &str) -> bool {
        let lines = self.pours.iter().flat_map(|pour| &pour.lines).map(|line| &line.name);
        lines.chain([&self.vessel, &self.wick]).any(|own| same(own, name))
    }

    /// What is over of `left` of an ingredient once the plan has taken what it needs of it.
    pub fn leaves(&self, ingredient: &str, left: Mass) -> Mass {
        left.less(self.needs().into_iter().filter(|n| same(&n.name, ingredient)).map(|n| n.mass).sum())
    }
}
