//! Which substances a label names, and which of the names may be left off.

use super::class::{Class, Group};
use super::mix::Mixed;
use super::rule::{Rule, Way};
use super::substance::Substance;
use crate::quantity::Exact;
use crate::sort;

/// So many names are enough, unless the hazards ask for more (Article 18(3), second subparagraph of (b); from memory).
const ENOUGH: usize = 4;

/// Sensitisers with the share from which on they are to be named (Table 3.4.6): 1 and 1B 0.1 %, 1A 0.01 %; with a specific
/// limit a tenth of that. Older texts have the tenth for limits below 0.1 % only, Annex II, 2.10 of today's for all; and
/// where the usual share is stricter, that stays.
pub(super) fn elicited(mixed: &Mixed) -> Vec<(&Substance, Exact)> {
    let tenth = Exact::ratio(1, 10);
    let from = |substance: &Substance, group: Group| {
        let own = substance.limit(group, 10).filter(|limit| !limit.is_zero()).map(|limit| limit * tenth);
        let usual = if substance.has(group, &[11]) { Exact::ratio(1, 100) } else { tenth };
        substance.has(group, &[10, 11, 12]).then(|| own.map_or(usual, |own| own.min(usual)))
    };
    let least = |substance| {
        [Group::SkinSens, Group::RespSens].into_iter().filter_map(|group| from(substance, group)).min()
    };
    mixed.substances.iter().filter_map(|substance| Some((substance, least(substance)?))).collect()
}

/// The names of those of which there is enough.
pub(super) fn allergens(mixed: &Mixed) -> Vec<String> {
    let enough = |(substance, from): &(&Substance, Exact)| substance.percent >= *from;
    elicited(mixed).into_iter().filter(enough).map(|(substance, _)| substance.name.clone()).collect()
}

/// Article 18(3)(b): for each class of the mixture that asks for names, the substances that it comes from, the one that
/// brings the most of it first. Irritation, and what harms water or the ozone layer, ask for none.
pub(super) fn identities(mixed: &Mixed) -> Vec<(Class, Vec<String>)> {
    let mut found = Vec::new();
    for acute in &mixed.acute {
        let brought =
            |(place, ate): &(usize, Exact)| Some((*place, mixed.substances.get(*place)?.percent / *ate));
        if let Some(class) = acute.class() {
            found.push((class, named(mixed, acute.parts.iter().filter_map(brought).collect())));
        }
    }
    for sum in mixed.sums.iter().filter(|sum| sum.is_reached()) {
        let Some(rule) = sum.of().filter(|rule| asks(rule)) else { continue };
        let Some(class) = mixed.classes.iter().find(|c| c.is(rule.group, rule.category)) else { continue };
        let each = matches!(rule.way, Way::Each | Way::Apart);
        let brought = |(place, weight): &(usize, Exact)| {
            let brought = mixed.substances.get(*place)?.percent * *weight;
            (!each || brought >= rule.limit).then_some((*place, brought))
        };
        found.push((*class, named(mixed, sum.parts.iter().filter_map(brought).collect())));
    }
    found
}

fn asks(rule: &Rule) -> bool {
    match rule.group {
        Group::Skin | Group::Eye => rule.category == 1,
        Group::Acute | Group::Chronic | Group::Ozone => false,
        _ => true,
    }
}

/// The names of substances, by how much of something they bring.
fn named(mixed: &Mixed, mut brought: Vec<(usize, Exact)>) -> Vec<String> {
    sort::by(&mut brought, |a, b| b.1.cmp(&a.1).then_with(|| a.0.cmp(&b.0)));
    brought.iter().filter_map(|(place, _)| mixed.substances.get(*place)).map(|s| s.name.clone()).collect()
}

/// Of the names those that may be left off. What stays: `always`, which are the sensitisers (Annex II, 2.8); all that bring
/// a class of mutagens, carcinogens or what harms reproduction, as the law before this one asked (in French: arrêté of 21
/// February 1990, Article 22, read on 27 November 2026); of each other class the one that brings the most; and where that
/// is less than enough, the next of each, those of the gravest class first. The choice within Article 18(3) is our own; it
/// is a proposal, for all names may stand.
pub(super) fn spare(all: &[String], always: &[String], by_hazard: &[(Class, Vec<String>)]) -> Vec<String> {
    let mut gravest: Vec<&(Class, Vec<String>)> = by_hazard.iter().collect();
    // Within one signal word the order of the regulation stays.
    sort::by(&mut gravest, |a, b| b.0.signal.cmp(&a.0.signal));
    let mut kept: Vec<&String> = always.iter().collect();
    let lasting = |class: Class| matches!(class.group, Group::Muta | Group::Carc | Group::Repr | Group::Lact);
    for (class, names) in &gravest {
        kept.extend(names.iter().take(if lasting(class) { names.len() } else { 1 }));
    }
    let most = by_hazard.iter().map(|(_, names)| names.len()).max().unwrap_or(0);
    for turn in 1..most {
        for name in gravest.iter().filter_map(|(_, names)| names.get(turn)) {
            let so_far = all.iter().filter(|name| kept.contains(name)).count();
            if so_far < ENOUGH {
                kept.push(name);
            }
        }
    }
    all.iter().filter(|name| !kept.contains(name)).cloned().collect()
}
