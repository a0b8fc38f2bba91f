//! From the entries to the state: all of them, or those about one thing anew.

use super::{Act, Entry, Journal, State, Subject};

impl Journal {
    pub(super) fn fold(&mut self) {
        self.leave_one_line_of_each();
        let people = self.newly_removed(&self.entries);
        self.remove_people(people);
        self.arrange();
        let mut state = State::default();
        for (entry, counts) in self.all() {
            if counts {
                self.apply(&mut state, entry);
            }
        }
        self.state = state;
    }

    /// What an entry is about in the end: an undo is about what the entry it undoes is about.
    pub(super) fn about<'a>(&'a self, mut entry: &'a Entry) -> Option<Subject<'a>> {
        loop {
            match entry.act.subject() {
                Subject::Entry(target) => entry = self.find(target).filter(|t| t.place() < entry.place())?,
                subject => return Some(subject),
            }
        }
    }

    /// Folds anew what `entry` is about, and only that: no act changes anything else.
    pub(super) fn refold(&self, state: State, entry: &Entry) -> State {
        match self.about(entry) {
            Some(subject) => self.refold_of(state, subject),
            None => state,
        }
    }

    pub(super) fn refold_of(&self, mut state: State, subject: Subject) -> State {
        state.forget(subject);
        for (e, counts) in self.all() {
            if counts && (subject == Subject::Book || e.act.subject() == subject) {
                self.apply(&mut state, e);
            }
        }
        state
    }

    /// Takes an entry into the state. A choice is a version that says again what the chosen one says.
    fn apply(&self, state: &mut State, entry: &Entry) {
        match self.counted(entry) {
            Some(act) if matches!(entry.act, Act::Choose { .. }) => state.take(&Entry {
                id: entry.id.clone(),
                clock: entry.clock,
                at: entry.at,
                device: entry.device.clone(),
                act: act.clone(),
            }),
            _ => state.take(entry),
        }
    }

    /// The act that an entry counts as: its own, or of a choice that of the version chosen. None for a choice of what
    /// is not here before it, or does not count.
    pub(super) fn counted<'a>(&'a self, entry: &'a Entry) -> Option<&'a Act> {
        let mut last = entry;
        while let Act::Choose { chosen, .. } = &last.act {
            last = self.find(chosen).filter(|e| {
                e.place() < last.place()
                    && self.counts(chosen)
                    && e.act.made_over().is_some()
                    && e.act.subject() == last.act.subject()
            })?;
        }
        Some(&last.act)
    }
}
