//! A substance of a safety data sheet, and the same one met again.

use super::class::{Class, Group};
use super::detail::Detail;
use crate::quantity::Exact;
use crate::text;

/// Routes of acute toxicity, with three forms of what is breathed in.
pub(super) const ROUTES: usize = 5;

/// A dose: none where it is known not to be toxic by this route.
pub(super) type Dose = Option<Exact>;

/// One line of section 3.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Substance {
    pub name: String,
    /// Empty where not given, as `ec`.
    pub cas: String,
    pub ec: String,
    /// The upper end of its range, in percent of the ingredient (in a mixture: of the mixture).
    pub percent: Exact,
    pub classes: Vec<Class>,
    /// M-factors, acute and chronic, where given.
    pub(super) m: [Option<Exact>; 2],
    /// Specific concentration limits in percent, by the class they give.
    pub(super) limits: Vec<(Group, u8, Exact)>,
    /// Acute toxicity estimates by route: mg/kg by mouth and skin; ppm, mg/L, mg/L as gas, vapour, dust or mist.
    pub(super) doses: [Option<Dose>; ROUTES],
    /// The form in which a class of what is breathed in counts, as a place in `doses`.
    pub(super) breathed: Option<usize>,
    /// What its sheet says of its classes beside their categories.
    pub(super) detail: Detail,
    /// Some of its hazards are not known.
    pub unknown: bool,
    /// Adding up does not apply: an acid, a base.
    pub apart: bool,
    /// Classes and remarks that are not carried into the candle.
    pub noted: Vec<String>,
}

/// Of two words on one route the stricter.
pub(super) fn stricter(a: Option<Dose>, b: Option<Dose>) -> Option<Dose> {
    match (a, b) {
        (Some(Some(a)), Some(Some(b))) => Some(Some(a.min(b))),
        // Known to be toxic outweighs known not to be.
        (Some(Some(a)), _) | (_, Some(Some(a))) => Some(Some(a)),
        (a, b) => a.or(b),
    }
}

impl Substance {
    /// True where both are one substance: by CAS number, by EC number, or by name where one has no number.
    pub(super) fn is_same(&self, other: &Self) -> bool {
        let by = |a: &str, b: &str| !a.is_empty() && a == b;
        by(&self.cas, &other.cas)
            || by(&self.ec, &other.ec)
            || (self.cas.is_empty() || other.cas.is_empty()) && text::same(&self.name, &other.name)
    }

    /// Takes in what another line says of the same substance: shares add up, of all else the stricter word counts.
    pub(super) fn take(&mut self, other: Self) {
        self.percent = self.percent + other.percent;
        if other.name < self.name {
            self.name = other.name;
        }
        for (mine, theirs) in [(&mut self.cas, other.cas), (&mut self.ec, other.ec)] {
            if mine.is_empty() || !theirs.is_empty() && theirs < *mine {
                *mine = theirs;
            }
        }
        for class in other.classes {
            if !self.classes.contains(&class) {
                self.classes.push(class);
            }
        }
        self.m = [0, 1].map(|at| self.m.get(at).copied().flatten().max(other.m.get(at).copied().flatten()));
        self.limits.extend(other.limits);
        for (mine, theirs) in self.doses.iter_mut().zip(other.doses) {
            *mine = stricter(*mine, theirs);
        }
        self.breathed = self.breathed.max(other.breathed);
        self.detail.take(&other.detail);
        self.unknown |= other.unknown;
        self.apart |= other.apart;
        for noted in other.noted {
            if !self.noted.contains(&noted) {
                self.noted.push(noted);
            }
        }
    }

    pub(super) fn has(&self, group: Group, categories: &[u8]) -> bool {
        self.classes.iter().any(|class| class.group == group && categories.contains(&class.category))
    }

    /// The lowest specific limit for a class of a mixture. 1, 1A and 1B are one here.
    pub(super) fn limit(&self, group: Group, category: u8) -> Option<Exact> {
        let meant = |of: u8| of == category || (of >= 10 && category >= 10);
        self.limits.iter().filter(|(g, c, _)| *g == group && meant(*c)).map(|(.., limit)| *limit).min()
    }
}
