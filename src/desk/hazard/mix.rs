//! A mixture's classes from its substances.

use super::acute::{Acute, OF_GHS, OF_UNION, acute};
use super::class::{Class, Group, class};
use super::rule::{FURTHER, RULES, Rule, Term, Way};
use super::substance::Substance;
use crate::quantity::Exact;
use crate::sort;

/// Something in the mixture.
#[derive(Clone, PartialEq, Debug)]
pub struct Ingredient {
    pub name: String,
    /// Percent of the whole; zero where it is not known how much of it is in.
    pub percent: Exact,
    /// What its safety data sheet says; none where there is none.
    pub sheet: Option<Vec<Substance>>,
    /// Without a sheet it is taken to have no hazards, as wax.
    pub harmless: bool,
}

/// One limit and what stands against it.
#[derive(Clone, PartialEq, Debug)]
pub struct Sum {
    pub(super) rule: usize,
    /// Percent, weighted.
    pub value: Exact,
    /// What counts: the place of the substance, and how many times it counts.
    pub(super) parts: Vec<(usize, Exact)>,
    /// The mixture is not classed for it, however much there is: a solid, for aspiration.
    pub exempt: bool,
}

/// A mixture, classified.
#[derive(Clone, PartialEq, Debug)]
pub struct Mixed {
    /// Each once, with its percent of the whole, the largest first.
    pub substances: Vec<Substance>,
    /// Every limit against which something stands.
    pub sums: Vec<Sum>,
    pub acute: Vec<Acute>,
    /// The strictest class of each group, in the order of the regulation.
    pub classes: Vec<Class>,
    /// What it comes to by the categories that only the GHS has, where it has no class of the Union for that hazard.
    pub further: Further,
    /// Ingredients of which there is no safety data sheet: those that may hurt, then those taken to be harmless.
    pub no_sheet: [Vec<String>; 2],
    /// Ingredients that may hurt and of which it is not known how much is in.
    pub no_share: Vec<String>,
}

/// The categories that only the GHS has, and what stands against their limits.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Further {
    pub classes: Vec<Class>,
    pub(super) acute: Vec<Acute>,
    pub(super) sums: Vec<Sum>,
}

impl Mixed {
    /// True where something may hurt and it is not known what it is, how much of it is in or how many times it counts: then
    /// no hazard found is not none there.
    pub fn is_open(&self) -> bool {
        !self.no_share.is_empty()
            || self.substances.iter().any(|substance| substance.unknown)
            || [Group::Acute, Group::Chronic].into_iter().any(|group| self.may_be_worse(group))
    }

    /// True where an M-factor that is not typed in could bring a stricter class for water.
    fn may_be_worse(&self, group: Group) -> bool {
        self.classes.iter().all(|class| !class.is(group, 1))
            && self.substances.iter().any(|substance| substance.lacks_m(group))
    }
}

impl Sum {
    pub(super) fn of(&self) -> Option<&'static Rule> {
        RULES.iter().chain(FURTHER).nth(self.rule)
    }
    pub fn is_reached(&self) -> bool {
        !self.exempt && self.of().is_some_and(|rule| self.value >= rule.limit)
    }
}

/// Classifies a mixture. A solid one is not classified for aspiration: it cannot be breathed into the lungs as a liquid.
pub fn mix(ingredients: &[Ingredient], solid: bool) -> Mixed {
    let mut substances = Vec::new();
    let mut no_sheet = [Vec::new(), Vec::new()];
    let mut no_share = Vec::new();
    let hundred = Exact::whole(100);
    for ingredient in ingredients {
        if ingredient.percent.is_zero() && (ingredient.sheet.is_some() || !ingredient.harmless) {
            no_share.push(ingredient.name.clone());
        }
        let Some(sheet) = &ingredient.sheet else {
            let [open, harmless] = &mut no_sheet;
            let list = if ingredient.harmless { harmless } else { open };
            list.push(ingredient.name.clone());
            if !ingredient.harmless {
                let (name, percent) = (ingredient.name.clone(), ingredient.percent);
                add(&mut substances, Substance { name, percent, unknown: true, ..Substance::default() });
            }
            continue;
        };
        for substance in sheet {
            let percent = substance.percent * ingredient.percent / hundred;
            add(&mut substances, Substance { percent, ..substance.clone() });
        }
    }
    sort::by(&mut substances, |a, b| b.percent.cmp(&a.percent).then_with(|| a.name.cmp(&b.name)));
    let mut sums = Vec::new();
    let mut classes: Vec<Class> = Vec::new();
    let by_route = acute(&substances, OF_UNION);
    for acute in &by_route {
        let Some(found) = acute.class() else { continue };
        // What is breathed in has three forms: the strictest counts.
        match classes.iter_mut().find(|c| c.group == found.group) {
            Some(known) if known.category > found.category => *known = found,
            Some(_) => {}
            None => classes.push(found),
        }
    }
    for (at, rule) in RULES.iter().enumerate() {
        let exempt = solid && rule.group == Group::Aspiration;
        let sum = Sum { exempt, ..sum(at, rule, &substances) };
        if sum.is_reached() && classes.iter().all(|c| c.group != rule.group) {
            classes.extend(class(rule.group, rule.category));
        }
        if !sum.parts.is_empty() {
            sums.push(sum);
        }
    }
    let further = further(&substances, &classes);
    Mixed { substances, sums, acute: by_route, classes, further, no_sheet, no_share }
}

fn further(substances: &[Substance], classes: &[Class]) -> Further {
    let mut further = Further::default();
    let classed = |group: Group| classes.iter().any(|c| c.group == group);
    for acute in acute(substances, OF_GHS) {
        if !classed(acute.group()) {
            further.classes.extend(acute.class());
            further.acute.push(acute);
        }
    }
    for (at, rule) in (RULES.len()..).zip(FURTHER).filter(|(_, rule)| !classed(rule.group)) {
        let sum = sum(at, rule, substances);
        if sum.is_reached() && further.classes.iter().all(|c| c.group != rule.group) {
            further.classes.extend(class(rule.group, rule.category));
        }
        if !sum.parts.is_empty() {
            further.sums.push(sum);
        }
    }
    further
}

/// Puts a substance to those there are; the same one, also by way of this one, becomes one.
fn add(substances: &mut Vec<Substance>, mut fresh: Substance) {
    while let Some(at) = substances.iter().position(|s| s.is_same(&fresh)) {
        let known = substances.swap_remove(at);
        fresh.take(known);
    }
    substances.push(fresh);
}

fn sum(at: usize, rule: &Rule, substances: &[Substance]) -> Sum {
    let mut sum = Sum { rule: at, value: Exact::ZERO, parts: Vec::new(), exempt: false };
    for (place, substance) in substances.iter().enumerate() {
        if rule.way == Way::Apart && !substance.apart {
            continue;
        }
        let Some(term) = rule.terms.iter().find(|t| substance.has(t.group, t.categories)) else { continue };
        let Some(weight) = weight(rule, term, substance) else { continue };
        let counts = substance.percent * weight;
        sum.value = if rule.way == Way::Each || rule.way == Way::Apart {
            sum.value.max(counts)
        } else {
            sum.value + counts
        };
        sum.parts.push((place, weight));
    }
    sum
}

/// How many times a substance counts; none where there is too little of it to count.
fn weight(rule: &Rule, term: &Term, substance: &Substance) -> Option<Exact> {
    let very_toxic = matches!(term.group, Group::Acute | Group::Chronic) && term.categories.contains(&1);
    let m = if very_toxic { substance.m_factor(term.group) } else { Exact::ONE };
    let own = substance.limit(rule.group, rule.category).filter(|limit| !limit.is_zero());
    let mut cut = Exact::ratio(term.cut, 10) / m;
    if let Some(own) = own {
        cut = cut.min(own);
    }
    if substance.percent < cut || substance.percent.is_zero() {
        return None;
    }
    Some(match own {
        Some(own) => rule.limit / own,
        None if rule.way == Way::SumM => Exact::whole(term.weight) * m,
        None => Exact::whole(term.weight),
    })
}

impl Substance {
    /// True for what is very toxic to water and has no M-factor.
    pub(super) fn lacks_m(&self, group: Group) -> bool {
        let [acute, chronic] = self.m;
        let given = if group == Group::Acute { acute } else { chronic };
        given.is_none() && self.has(group, &[1])
    }

    /// The M-factor, 1 where none is given.
    pub(super) fn m_factor(&self, group: Group) -> Exact {
        let [acute, chronic] = self.m;
        let given = if group == Group::Acute { acute } else { chronic };
        given.filter(|m| *m >= Exact::ONE).unwrap_or(Exact::ONE)
    }
}
