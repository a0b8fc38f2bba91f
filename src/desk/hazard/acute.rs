//! Acute toxicity: the estimate of the mixture from those of its substances (Annex I, 3.1.3.6).

use super::class::{Class, Group, class};
use super::substance::{Dose, ROUTES, Substance};
use crate::quantity::Exact;

/// One route, or one form of what is breathed in.
pub(super) struct Route {
    pub(super) name: &'static str,
    pub(super) unit: &'static str,
    pub(super) group: Group,
    /// Upper bounds of categories 1 to 4, as thousandths (Table 3.1.1), and of 5, which only the GHS has: 0 where it has
    /// none in numbers.
    pub(super) bounds: [i128; 5],
    /// What a category stands for where there is no estimate, as thousandths (Table 3.1.2; compared, with Table 3.1.1, on
    /// 26 November 2026; those of category 5 from memory).
    points: [i128; 5],
    /// An estimate above this, in whole units, is taken as not toxic. By mouth and skin the GHS goes to 5000, which can
    /// only be stricter than the EU.
    most: i128,
}

pub(super) const TABLE: [Route; ROUTES] = [
    route(
        "swallowed",
        "mg/kg",
        Group::Oral,
        [5_000, 50_000, 300_000, 2_000_000, 5_000_000],
        [500, 5_000, 100_000, 500_000, 2_500_000],
        5000,
    ),
    route(
        "on skin",
        "mg/kg",
        Group::Dermal,
        [50_000, 200_000, 1_000_000, 2_000_000, 5_000_000],
        [5_000, 50_000, 300_000, 1_100_000, 2_500_000],
        5000,
    ),
    route(
        "breathed in as gas",
        "ppm",
        Group::Inhaled,
        [100_000, 500_000, 2_500_000, 20_000_000, 0],
        [10_000, 100_000, 700_000, 4_500_000, 0],
        20_000,
    ),
    route(
        "breathed in as vapour",
        "mg/L",
        Group::Inhaled,
        [500, 2_000, 10_000, 20_000, 0],
        [50, 500, 3_000, 11_000, 0],
        20,
    ),
    route(
        "breathed in as dust or mist",
        "mg/L",
        Group::Inhaled,
        [50, 500, 1_000, 5_000, 0],
        [5, 50, 500, 1_500, 0],
        5,
    ),
];

const fn route(
    name: &'static str,
    unit: &'static str,
    group: Group,
    bounds: [i128; 5],
    points: [i128; 5],
    most: i128,
) -> Route {
    Route { name, unit, group, bounds, points, most }
}

/// How many categories the Union has, and how many the GHS.
pub(super) const OF_UNION: u8 = 4;
pub(super) const OF_GHS: u8 = 5;

/// The form that counts where a sheet does not say which: the strictest.
const DUST: usize = 4;

/// What a mixture comes to by one route.
#[derive(Clone, PartialEq, Debug)]
pub struct Acute {
    pub(super) route: usize,
    /// The estimate of the mixture, in the unit of the route.
    pub ate: Exact,
    /// Percent of which nothing is known by this route.
    pub unknown: Exact,
    pub category: Option<u8>,
    /// What counts, and its estimate.
    pub(super) parts: Vec<(usize, Exact)>,
}

impl Acute {
    pub(super) fn of(&self) -> Option<&'static Route> {
        TABLE.get(self.route)
    }
    /// True for what the GHS has a fifth category of.
    pub(super) fn has_fifth(&self) -> bool {
        self.of().and_then(|route| route.bounds.last()).is_some_and(|bound| *bound > 0)
    }
    pub(super) fn class(&self) -> Option<Class> {
        self.category.and_then(|category| class(self.group(), category))
    }
    pub(super) fn group(&self) -> Group {
        self.of().map_or(Group::Oral, |route| route.group)
    }
}

impl Substance {
    /// Its estimate by a route, from its class up to this category where none is given. None where nothing is known.
    fn dose(&self, at: usize, route: &Route, last: u8) -> Option<Dose> {
        let given = self.doses.get(at).copied().flatten();
        if let Some(dose) = given {
            return Some(dose.filter(|ate| *ate <= Exact::whole(route.most)));
        }
        let breathed = route.group == Group::Inhaled;
        if breathed && at != self.breathed.unwrap_or(DUST) {
            // Known in another form.
            return (!self.unknown).then_some(None);
        }
        let spoken = breathed && self.doses.iter().skip(2).any(Option::is_some);
        let strictest =
            self.classes.iter().filter(|class| class.group == route.group).map(|c| c.category).min();
        match strictest {
            Some(category) if !spoken => {
                let point = route.points.get(usize::from(category).saturating_sub(1));
                let counts = point.filter(|p| **p > 0 && category <= last);
                Some(counts.map(|p| Exact::ratio(*p, 1000)))
            }
            _ if spoken => Some(None),
            _ => (!self.unknown).then_some(None),
        }
    }
}

/// Every route by which something in it is toxic or not known, by the categories up to `last`.
pub(super) fn acute(substances: &[Substance], last: u8) -> Vec<Acute> {
    let (hundred, tenth) = (Exact::whole(100), Exact::ratio(1, 10));
    let mut found = Vec::new();
    for (at, route) in TABLE.iter().enumerate() {
        let (mut unknown, mut over, mut parts) = (Exact::ZERO, Exact::ZERO, Vec::new());
        for (place, substance) in substances.iter().enumerate() {
            match substance.dose(at, route, last) {
                None => unknown = unknown + substance.percent,
                Some(Some(ate)) if ate > Exact::ZERO => {
                    // Cut-offs of Table 1.1: categories 1 to 3 count from 0.1 %, the others from 1 %.
                    let strict = route.bounds.get(2).is_some_and(|b| ate <= Exact::ratio(*b, 1000));
                    if substance.percent >= if strict { tenth } else { Exact::ONE } {
                        over = over + substance.percent / ate;
                        parts.push((place, ate));
                    }
                }
                Some(_) => {}
            }
        }
        if over.is_zero() {
            continue;
        }
        let known = if unknown > Exact::whole(10) { hundred - unknown } else { hundred };
        let ate = known.max(Exact::ZERO) / over;
        let within = |bound: &i128| ate <= Exact::ratio(*bound, 1000);
        let category =
            (1..=last).zip(&route.bounds).find(|(_, bound)| within(bound)).map(|(category, _)| category);
        found.push(Acute { route: at, ate, unknown, category, parts });
    }
    found
}
