//! Versions made beside each other, on two devices or in two tabs: neither was made over the other. Both are kept; the
//! person chooses. All of it is derived from the entries, so it is the same whichever way books were merged.

use super::tell::{Difference, Said, differences, said};
use super::{Act, Entry, Id, Journal, Map, Subject};
use crate::wire::{self, Json};

/// A thing with more than one version that none was made over.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Fork {
    pub thing: Id,
    /// When the version was written that they have in common, milliseconds since 1970, as far as it is here.
    pub since: Option<u64>,
    /// Oldest first: the last one counts as today's until one is chosen.
    pub tips: Vec<Tip>,
    /// What they do not agree on; the values in the order of the tips.
    pub differs: Vec<Difference>,
}

/// One of the versions beside each other.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Tip {
    pub entry: Id,
    /// Milliseconds since 1970.
    pub at: u64,
    pub device: String,
}

/// So far back, and among so many, it is looked for what a version was made over (our own choice: no hand makes more).
const MOST: usize = 100;

impl Fork {
    /// The act that makes the version of `chosen` today's, of all that are shown here.
    pub fn choose(&self, chosen: &Id) -> Act {
        let among = self.tips.iter().map(|tip| tip.entry.clone()).collect();
        Act::Choose { id: self.thing.clone(), chosen: chosen.clone(), among }
    }
}

impl Journal {
    /// The versions of this thing that were made beside each other and say different things.
    pub fn fork(&self, thing: &Id) -> Option<Fork> {
        let tips = self.tips(Some(thing));
        self.fork_of(thing, tips.get(thing)?)
    }

    /// Every thing that has such versions.
    pub fn forks(&self) -> Vec<Fork> {
        self.tips(None).iter().filter_map(|(thing, tips)| self.fork_of(thing, tips)).collect()
    }

    fn fork_of(&self, thing: &Id, tips: &[&Entry]) -> Option<Fork> {
        if tips.len() < 2 {
            return None;
        }
        let told: Vec<Vec<Said>> = tips.iter().map(|tip| self.told(tip)).collect();
        let differs = differences(&told);
        if differs.is_empty() {
            return None;
        }
        let common = tips.iter().filter_map(|tip| self.find(tip.act.made_over()?.first()?));
        let tip = |tip: &&Entry| Tip { entry: tip.id.clone(), at: tip.at, device: tip.device.clone() };
        Some(Fork {
            thing: thing.clone(),
            since: common.min_by(|a, b| a.place().cmp(&b.place())).map(|e| e.at),
            tips: tips.iter().map(tip).collect(),
            differs,
        })
    }

    /// The versions that no other was made over, by thing; of one thing only, or of all.
    fn tips(&self, of: Option<&Id>) -> Map<Vec<&Entry>> {
        let mut all: Map<Vec<&Entry>> = Map::default();
        for (entry, counts) in self.all() {
            let (true, Some(over), Subject::Thing(thing)) =
                (counts, entry.act.made_over(), entry.act.subject())
            else {
                continue;
            };
            if of.is_some_and(|of| of != thing) || self.counted(entry).is_none() {
                continue;
            }
            all.add(thing, Vec::new());
            let Some(tips) = all.get_mut(thing) else { continue };
            let (known, gone) = self.over(entry, over, thing);
            if !known.is_empty() {
                tips.retain(|tip| !known.contains(&&tip.id));
            } else {
                // It names none that is here, or that still counts: then it was made over the one before it. Not over one
                // that names the same: that was made beside it.
                let looked_at = tips.len().saturating_sub(MOST);
                if let Some(at) = tips.iter().skip(looked_at).rposition(|tip| !self.stems(tip, &gone)) {
                    tips.remove(looked_at + at);
                }
            }
            tips.push(entry);
        }
        all
    }

    /// The versions that one was made over: of one that was taken back, those it was made over itself, and so on. And those
    /// on the way that are not here or do not count.
    fn over<'a>(&'a self, entry: &Entry, over: &'a [Id], thing: &Id) -> (Vec<&'a Id>, Vec<&'a Id>) {
        let (mut known, mut gone, mut next) = (Vec::new(), Vec::new(), Vec::new());
        next.extend(over.iter().map(|id| (entry.place(), id)));
        for _ in 0..over.len() + MOST {
            let Some((after, id)) = next.pop() else { break };
            let found = self.find(id).filter(|e| e.act.subject() == Subject::Thing(thing));
            match found {
                Some(_) if self.counts(id) => known.push(id),
                Some(e) if e.place() < after && !gone.contains(&id) => {
                    gone.push(id);
                    let over = e.act.made_over().unwrap_or_default();
                    next.extend(over.iter().take(MOST).map(|id| (e.place(), id)));
                }
                _ => gone.push(id),
            }
        }
        (known, gone)
    }

    /// True where this version was made over one of these, or over one that was, and so on.
    fn stems<'a>(&'a self, mut version: &'a Entry, from: &[&Id]) -> bool {
        for _ in 0..MOST {
            let Some(over) = version.act.made_over() else { return false };
            if over.iter().any(|id| from.contains(&id)) {
                return true;
            }
            let before = over.first().and_then(|id| self.find(id)).filter(|e| e.place() < version.place());
            let Some(before) = before else { return false };
            version = before;
        }
        false
    }

    /// What an entry says of its thing, field by field, as written.
    pub(super) fn told(&self, entry: &Entry) -> Vec<Said> {
        let Some(act) = self.counted(entry) else { return Vec::new() };
        let text = wire::write(act);
        let names = |text: &str| self.state().name(&Id(text.to_owned())).map(str::to_owned);
        let Some(json) = Json::parse(&text) else { return Vec::new() };
        let (kind, held) = json.kind();
        let Json::Object(fields) = held else { return said(held, &names) };
        match fields.iter().find(|(name, _)| name == "body") {
            Some((_, body)) => said(body, &names),
            // A plan is a book of its own; ids name what the entry is about.
            None => {
                let about = ["plan", "batch", "id", "lot", "trial", "version"];
                let mut all = Vec::new();
                // What happened at the pot is told in words of its own.
                let fields =
                    fields.iter().filter(|(name, _)| !about.contains(&name.as_ref()) && kind != "At");
                for (name, value) in fields {
                    all.extend(said(value, &names).into_iter().map(|(of, value)| {
                        let name = super::tell::words(name);
                        (if of.is_empty() { name } else { [&name, ", ", &of].concat() }, value)
                    }));
                }
                all
            }
        }
    }
}
