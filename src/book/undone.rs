//! What counts and what does not: an undo is an entry like any other.

use super::{Act, Entry, Id, Journal};

impl Journal {
    /// An undo has an effect on an entry that stands before it, unless a later undo took it back; so one pass from the
    /// last entry to the first settles all of them, and no ring of undos can form.
    pub(super) fn mark_undone(&mut self) {
        let mut undone = vec![false; self.entries.len()];
        for (at, entry) in self.entries.iter().enumerate().rev() {
            if undone.get(at) != Some(&false) {
                continue;
            }
            match &entry.act {
                Act::Undo { entry: target } => {
                    if let Some(place) =
                        self.place(target).filter(|place| *place < at && self.is_undoable(*place))
                        && let Some(mark) = undone.get_mut(place)
                    {
                        *mark = true;
                    }
                }
                Act::Replace(replace) if replace.can_be() => {
                    for (mark, earlier) in undone.iter_mut().zip(self.entries.iter().take(at)) {
                        *mark |= replace.sets_aside(earlier);
                    }
                }
                _ => {}
            }
        }
        self.undone = undone;
    }

    /// False for a person's removal, which nothing takes back, and for what is taken back in another way.
    fn is_undoable(&self, place: usize) -> bool {
        self.entries.get(place).is_some_and(|e| e.act.is_undoable())
    }

    /// True where the entry counts: it is here and not undone.
    pub fn counts(&self, id: &Id) -> bool {
        self.place(id).is_some_and(|place| self.undone.get(place) == Some(&false))
    }

    /// The last thing done on this device that still counts: what "undo" takes back.
    pub fn last_undoable(&self) -> Option<&Entry> {
        self.own().find(|e| !matches!(e.act, Act::Undo { .. }) && e.act.is_undoable())
    }

    /// The undo that "redo" takes back: the last one on this device, if nothing else was done since.
    pub fn last_redoable(&self) -> Option<&Entry> {
        self.own()
            .map_while(|e| match &e.act {
                Act::Undo { entry } => Some((e, self.find(entry))),
                _ => None,
            })
            .find(|(_, target)| target.is_some_and(|t| !matches!(t.act, Act::Undo { .. })))
            .map(|(e, _)| e)
    }

    /// This device's entries that count, the last first.
    fn own(&self) -> impl Iterator<Item = &Entry> {
        let own = |(e, counts): (_, bool)| Some(e).filter(|e: &&Entry| counts && e.device == self.device());
        self.all().rev().filter_map(own)
    }
}
