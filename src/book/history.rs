//! Who did what, when and on which device; what it changed; and what takes it back.

use super::tell::{Difference, differences, words};
use super::{Act, Entry, Id, Journal, Subject};
use crate::pot::{Event, StepKey};
use crate::quantity::Voice;
use crate::stores::LotEvent;

/// One thing that was done.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Done {
    pub entry: Id,
    /// What it was done to; none for the workshop's choices.
    pub thing: Option<Id>,
    /// What that is called today.
    pub name: String,
    /// Milliseconds since 1970, by the clock of the device.
    pub at: u64,
    pub device: String,
    /// `Changed`, `Put away`, `Thermometer read` …
    pub what: String,
    /// What it changed: before and after; of what is no change, what it says.
    pub changes: Vec<Difference>,
    /// True where it is in an earlier book, which was replaced by a copy.
    pub earlier: bool,
    /// Where it counts as not done: the undo that made it so.
    pub undone: Option<Undone>,
    /// Why it changes nothing.
    pub refused: Option<String>,
    /// No undo takes it back.
    pub no_undo: bool,
}

/// Who took it back. Undoing this entry brings it back.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Undone {
    pub entry: Id,
    pub at: u64,
    pub device: String,
}

impl Done {
    /// The act that takes it back, or brings it back where it was; none where no undo does.
    pub fn turn(&self) -> Option<Act> {
        let entry = self.undone.as_ref().map_or(&self.entry, |undone| &undone.entry).clone();
        (!self.no_undo).then_some(Act::Undo { entry })
    }
}

impl Journal {
    /// What was done to a thing, or everything, the last first; at most so many.
    pub fn done(&self, to: Option<&Id>, most: usize, voice: Voice) -> Vec<Done> {
        let wanted = |e: &&Entry| match e.act.subject() {
            Subject::Entry(_) => false,
            Subject::Thing(thing) => to.is_none_or(|to| to == thing),
            Subject::Settings | Subject::Book | Subject::Nothing => to.is_none(),
        };
        self.entries().iter().rev().filter(wanted).take(most).map(|e| self.one_done(e, voice)).collect()
    }

    fn one_done(&self, entry: &Entry, voice: Voice) -> Done {
        let thing = match entry.act.subject() {
            Subject::Thing(thing) => Some(thing),
            _ => None,
        };
        let before = self.before(entry);
        let now = self.told(entry);
        let changes = match (entry.act.made_over(), before) {
            (None, _) if matches!(entry.act, Act::Replace(_) | Act::Took { .. }) => Vec::new(),
            (None, _) => differences(&[Vec::new(), now]),
            (Some(_), Some(before)) => differences(&[self.told(before), now]),
            // The first version changes nothing: it is all new.
            (Some(_), None) => Vec::new(),
        };
        let undone = self.undoer(&entry.id).filter(|_| !self.counts(&entry.id));
        Done {
            entry: entry.id.clone(),
            thing: thing.cloned(),
            name: thing.and_then(|id| self.state().name(id)).unwrap_or_default().to_owned(),
            at: entry.at,
            device: entry.device.clone(),
            what: self.what(entry, before.is_none(), voice),
            changes,
            earlier: undone.is_none() && !self.counts(&entry.id) && self.replaced_by(entry).is_some(),
            undone: undone.map(|e| Undone { entry: e.id.clone(), at: e.at, device: e.device.clone() }),
            refused: self.state().ignored.get(&entry.id).map(|ignored| ignored.why.to_string()),
            no_undo: !entry.act.is_undoable(),
        }
    }

    /// The version that this one was made over; where it names none, the one before it.
    fn before(&self, entry: &Entry) -> Option<&Entry> {
        let over = entry.act.made_over()?;
        let named = match &entry.act {
            Act::Choose { .. } => over.last(),
            _ => over.first(),
        };
        let same = |e: &&Entry| {
            e.place() < entry.place() && e.act.subject() == entry.act.subject() && e.act.made_over().is_some()
        };
        let named = named.and_then(|id| self.find(id)).filter(same);
        named.or_else(|| self.entries().iter().rev().filter(same).find(|e| self.counts(&e.id)))
    }

    /// The undo of this entry that counts.
    fn undoer(&self, id: &Id) -> Option<&Entry> {
        let undoes = |e: &&Entry| matches!(&e.act, Act::Undo { entry } if entry == id);
        self.entries().iter().rev().filter(undoes).find(|e| self.counts(&e.id))
    }

    fn what(&self, entry: &Entry, first: bool, voice: Voice) -> String {
        let plain = |text: &str| text.to_owned();
        match &entry.act {
            Act::Choose { .. } => plain("Chosen among versions made beside each other"),
            Act::Retire { retired: true, .. } => plain("Put away"),
            Act::Retire { retired: false, .. } => plain("Taken out again"),
            Act::Settings(_) => plain("The workshop's rules set"),
            Act::Rates(_) => plain("Costs of work set"),
            Act::Limits(_) => plain("Limits of trials set"),
            Act::Replace(_) if self.took_before(entry).is_some() => plain("A copy taken back"),
            Act::Replace(_) => plain("The book replaced by a copy"),
            Act::Took { .. } => plain("A copy taken in; the Desk can take it back"),
            Act::Forgotten { .. } => plain("Removed from the book for good"),
            Act::Pinned { .. } => plain("The plan of its pours changed"),
            Act::Ticked { .. } => plain("A step of finishing"),
            Act::AtTrial { .. } => plain("Looked at in the burn trial"),
            Act::Began { .. } => plain("The pour began"),
            Act::Ended { .. } => plain("The pour ended"),
            Act::Worked { .. } => plain("Time of work written down"),
            Act::TakenFrom { .. } => plain("Lots written down"),
            Act::At { batch, event } => self.at_pot(batch, event, voice),
            Act::AtLot { event, .. } => plain(match event {
                LotEvent::Counted { .. } => "Counted",
                LotEvent::WrittenOff { .. } => "Written off",
                LotEvent::Held { .. } => "Held back",
                LotEvent::Released { .. } => "Released",
            }),
            _ if entry.act.made_over().is_none() => plain("Done"),
            _ if first => plain("Written down"),
            _ => plain("Changed"),
        }
    }

    fn at_pot(&self, batch: &Id, event: &Event, voice: Voice) -> String {
        let run = self.state().batches.get(batch).map(|b| &b.run);
        let (what, step) = match event {
            Event::Did { step: step @ StepKey::Fill { .. }, .. } if event.filled().is_none() => {
                ("Left empty: ", step)
            }
            Event::Did { step, .. } => ("Step done: ", step),
            Event::Mended { step, .. } => ("Put right: ", step),
            Event::Read { temperature, pour, .. } => {
                let read = voice.amount(*temperature, voice.temperature);
                let pour = pour.map_or_else(String::new, |pour| format!(", pour {}", pour.saturating_add(1)));
                return ["Thermometer read: ", &read, &pour].concat();
            }
            Event::Said { text, .. } => return ["Note: ", text].concat(),
        };
        let line = step.pour().zip(step.line()).and_then(|(pour, line)| run?.line(pour, line));
        let kind = crate::wire::write(step);
        let kind = kind.split('"').nth(1).map(words).unwrap_or_default();
        match line {
            Some(line) => [what, &kind, ", ", &line.name].concat(),
            None => [what, &kind].concat(),
        }
    }
}
