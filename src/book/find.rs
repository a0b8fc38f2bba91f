//! Finding formulas, vessels and batches by words.

use super::lookup::in_order;
use super::{Batch, Kept, Map, State};
use crate::formula::Formula;
use crate::pot::Plan;
use crate::vessel::Vessel;
use crate::{sort, text};

/// Something a word was found in.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Found<'a> {
    Formula(&'a Kept<Formula>),
    Vessel(&'a Kept<Vessel>),
    Batch(&'a Batch),
}

/// What is known of the batches before any word is: made once in a state, since years of them are looked through at each key.
#[derive(Clone, PartialEq, Eq, Default, Debug)]
pub struct Finder {
    /// The latest begun first.
    batches: Vec<Line>,
    /// What is said of each batch alone, one after the other: reading it where it was put takes longer than looking at it.
    own: String,
    /// The words of all plans, each by the place of a batch that has them: the same ones stand in very many.
    plans: Vec<usize>,
}

/// A batch.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
struct Line {
    /// Its place among all.
    place: usize,
    /// The place of its plan's words among those of all plans.
    plan: usize,
    /// Where what is said of it alone ends.
    end: usize,
}

/// So many plans of one version of a formula are compared with another (our own choice: vessels times wicks are fewer).
const COMPARED: usize = 60;

impl Batch {
    /// What it can be found by of its plan, and the rest: its number, and what was said of it.
    fn words(&self) -> (&str, &str) {
        text::cut(&self.words, self.planned)
    }
}

impl State {
    pub fn finder(&self) -> Finder {
        let mut places: Vec<usize> = (0..self.batches.len()).rev().collect();
        let began = |place: &usize| self.batches.at(*place).map(|b| (b.began, &b.id));
        sort::by(&mut places, |a, b| began(b).cmp(&began(a)));
        let mut finder = Finder::default();
        // The plans of each version of a formula.
        let mut made: Map<Vec<usize>> = Map::default();
        for place in places {
            let Some(batch) = self.batches.at(place) else { continue };
            made.add(&batch.version, Vec::new());
            let Some(made) = made.get_mut(&batch.version) else { continue };
            let same = |plan: &&usize| {
                let other = finder.plans.get(**plan).and_then(|place| self.batches.at(*place));
                other.is_some_and(|other| other.words().0 == batch.words().0)
            };
            let known = made.iter().rev().take(COMPARED).find(same).copied();
            let plan = known.unwrap_or_else(|| {
                made.push(finder.plans.len());
                finder.plans.push(place);
                finder.plans.len() - 1
            });
            finder.own.push_str(batch.words().1);
            finder.batches.push(Line { place, plan, end: finder.own.len() });
        }
        finder
    }

    /// Formulas and vessels, also those put away, and batches in which every one of the words stands.
    pub fn find(&self, finder: &Finder, words: &str) -> Vec<Found<'_>> {
        let words: Vec<String> = words.split_whitespace().map(text::lower).collect();
        let holds = |texts: &[&str]| {
            let text = text::lower(&texts.join("\n"));
            words.iter().all(|w| text.contains(w.as_str()))
        };
        let formula = |f: &Formula| {
            let mut texts = vec![f.name.as_str(), &f.note];
            texts.extend(f.wax.iter().map(|w| w.name.as_str()));
            for part in &f.parts {
                texts.extend([part.name.as_str(), &part.note]);
            }
            holds(&texts)
        };
        let mut found = Vec::new();
        for kept in in_order(&self.formulas, |f| &f.name, true) {
            if kept.body().is_some_and(formula) {
                found.push(Found::Formula(kept));
            }
        }
        for kept in in_order(&self.vessels, |v| &v.name, true) {
            if kept.body().is_some_and(|v| holds(&[&v.name, &v.note])) {
                found.push(Found::Vessel(kept));
            }
        }
        let lacks = |place: &usize| {
            let plan = self.batches.at(*place).map_or("", |batch| batch.words().0);
            words.iter().map(String::as_str).filter(|w| !plan.contains(w)).collect::<Vec<_>>()
        };
        // Of the words of each plan those that do not stand in it: they have to stand in the rest.
        let lacking: Vec<Vec<&str>> = finder.plans.iter().map(lacks).collect();
        let mut from = 0;
        for Line { place, plan, end } in &finder.batches {
            let own = finder.own.get(from..*end).unwrap_or_default();
            from = *end;
            if lacking.get(*plan).is_some_and(|lacking| lacking.iter().all(|word| stands(word, own))) {
                found.extend(self.batches.at(*place).map(Found::Batch));
            }
        }
        found
    }
}

/// True where a word stands in a short text. That of the standard library prepares itself for long ones first.
fn stands(word: &str, text: &str) -> bool {
    let Some((first, rest)) = word.as_bytes().split_first() else { return true };
    let mut left = text.as_bytes();
    while let Some(at) = left.iter().position(|sign| sign == first) {
        left = left.get(at + 1..).unwrap_or_default();
        if left.starts_with(rest) {
            return true;
        }
    }
    false
}

/// What a pour can be found by, in small letters.
pub(super) fn words(plan: &Plan) -> String {
    let mut texts = vec![plan.formula.as_str(), &plan.vessel, &plan.wick];
    for pour in &plan.pours {
        texts.extend(pour.lines.iter().map(|l| l.name.as_str()));
    }
    text::lower(&texts.join("\n"))
}
