//! Acute toxicity: the estimate of the mixture from those of its substances (Annex I, 3.1.3.6).

use super::class::{Class, Group, class};
use super::substance::{Dose, ROUTES, Substance, stricter};
use crate::quantity::Exact;

/// One route, or one form of what is breathed in.
pub(super) struct Route {
    pub(super) name: &'static str,
    pub(super) unit: &'static str,
    pub(super) group: Group,
    /// Upper bounds of categories 1 to 4, as thousandths (Table 3.1.1), and of 5, which only the GHS has: 0 where it has
    /// none in numbers.
    bounds: [i128; 5],
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
    pub(super) fn class(&self) -> Option<Class> {
        self.category.and_then(|category| class(self.group(), category))
    }
    pub(super) fn group(&self) -> Group {
        self.of().map_or(Group::Oral, |route| route.group)
    }
}

impl Substance {
    /// Its estimate by a route, by the categories up to `last`. Of a class and an estimate that do not agree the stricter
    /// counts; within the class the estimate does, which says it more finely. None where nothing is known.
    fn dose(&self, at: usize, route: &Route, last: u8) -> Option<Dose> {
        let given = self.given(at).map(|dose| dose.filter(|ate| *ate <= Exact::whole(route.most)));
        let breathed = route.group == Group::Inhaled;
        // A class of what is breathed in counts in one form, and not beside an estimate of another that says it.
        let its_own = !breathed || at == self.breathed.unwrap_or(DUST);
        let by_class =
            self.acute_class(route.group).filter(|c| its_own && *c <= last && !self.is_said(*c, route.group));
        if let Some(point) = by_class.and_then(|category| route.point(category)) {
            return stricter(given, Some(Some(point)));
        }
        let spoken = breathed && (2..ROUTES).any(|form| self.given(form).is_some());
        let known = !self.unknown || its_own && (spoken || self.acute_class(route.group).is_some());
        given.or_else(|| known.then_some(None))
    }

    fn given(&self, at: usize) -> Option<Dose> {
        self.doses.get(at).copied().flatten()
    }

    /// Its strictest category by one way into the body.
    fn acute_class(&self, group: Group) -> Option<u8> {
        self.classes.iter().filter(|class| class.group == group).map(|class| class.category).min()
    }

    /// The estimates that are of a class of this group: of what is breathed in those of its form, where one is told.
    fn beside(&self, group: Group) -> impl Iterator<Item = (&'static Route, Dose)> {
        let form = self.breathed.filter(|_| group == Group::Inhaled);
        let of =
            move |(at, route): &(usize, &Route)| route.group == group && form.is_none_or(|form| form == *at);
        TABLE.iter().enumerate().filter(of).filter_map(|(at, route)| Some((route, self.given(at)?)))
    }

    /// True where an estimate is at least as strict as the category.
    fn is_said(&self, category: u8, group: Group) -> bool {
        self.beside(group)
            .any(|(route, dose)| dose.zip(route.bound(category)).is_some_and(|(ate, most)| ate <= most))
    }

    /// Classes that an estimate beside them does not agree with.
    pub(super) fn at_odds(&self) -> Vec<Class> {
        let mut found = Vec::new();
        for group in [Group::Oral, Group::Dermal, Group::Inhaled] {
            let Some(category) = self.acute_class(group).filter(|c| *c <= OF_UNION) else { continue };
            // The point values stand for their categories, and those of 2 are the bounds of 1.
            let below = |(route, dose): (&Route, Dose)| {
                dose.zip(route.bound(category.saturating_sub(1))).is_some_and(|(ate, least)| ate < least)
            };
            let spoken = self.beside(group).next().is_some();
            if spoken && !self.is_said(category, group) || self.beside(group).any(below) {
                found.extend(class(group, category));
            }
        }
        found
    }
}

impl Route {
    /// The upper bound of a category; none where it has none in numbers.
    pub(super) fn bound(&self, category: u8) -> Option<Exact> {
        number(&self.bounds, category)
    }
    fn point(&self, category: u8) -> Option<Exact> {
        number(&self.points, category)
    }
}

fn number(of: &[i128; 5], category: u8) -> Option<Exact> {
    let thousandths = of.get(usize::from(category.checked_sub(1)?)).filter(|n| **n > 0)?;
    Some(Exact::ratio(*thousandths, 1000))
}

/// Every route by which something in it is toxic or not known, by the categories up to `last`.
pub(super) fn acute(substances: &[Substance], last: u8) -> Vec<Acute> {
    let (hundred, tenth) = (Exact::whole(100), Exact::ratio(1, 10));
    let mut found = Vec::new();
    for (at, route) in TABLE.iter().enumerate() {
        let (mut unknown, mut over, mut parts) = (Exact::ZERO, Exact::ZERO, Vec::new());
        for (place, substance) in substances.iter().enumerate() {
            match substance.dose(at, route, last) {
                // Of what is below 1 % the unknown does not count (3.1.3.3, relevant ingredients); it is named all the same.
                None if substance.percent >= Exact::ONE => unknown = unknown + substance.percent,
                None => {}
                Some(Some(ate)) if ate > Exact::ZERO => {
                    // Cut-offs of Table 1.1: categories 1 to 3 count from 0.1 %, the others from 1 %.
                    let strict = route.bound(3).is_some_and(|bound| ate <= bound);
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
        let category = (1..=last).find(|category| route.bound(*category).is_some_and(|bound| ate <= bound));
        found.push(Acute { route: at, ate, unknown, category, parts });
    }
    found
}
