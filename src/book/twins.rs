//! Several entries of one id: one of them stays, the same on every device; the others are set aside. Of lines that were set
//! aside each is kept once.

use super::{Damage, Entry, Journal};
use crate::sort;
use std::cmp::Ordering;

impl Journal {
    /// Of lines set aside that are the same the first stays.
    pub(super) fn leave_one_line_of_each(&mut self) {
        let line = |at: usize| self.damaged.get(at).map(|(line, _)| line);
        let order = sort::order(self.damaged.len(), &|a, b| line(a).cmp(&line(b)));
        let mut more = vec![false; order.len()];
        for (a, b) in order.iter().zip(order.iter().skip(1)) {
            if let Some(more) = more.get_mut(*b) {
                *more = line(*a) == line(*b);
            }
        }
        let mut more = more.into_iter();
        self.damaged.retain(|_| more.next() != Some(true));
    }

    /// Of several entries of one id the first by [`first`] stays; the others are set aside.
    pub(super) fn leave_one_of_each(&mut self) {
        let mut kept: Option<&Entry> = None;
        let mut more = vec![false; self.entries.len()];
        let mut aside = Vec::new();
        for at in &self.by_id {
            let (Some(entry), Some(more)) = (self.entries.get(*at), more.get_mut(*at)) else { continue };
            match kept.filter(|k| k.id == entry.id) {
                Some(kept) => {
                    *more = true;
                    if !entry.is_same(kept) {
                        aside.push(entry.to_line());
                    }
                }
                None => kept = Some(entry),
            }
        }
        if more.contains(&true) {
            let mut more = more.into_iter();
            self.entries.retain(|_| more.next() != Some(true));
            self.index();
        }
        for line in aside {
            self.set_aside(line, Damage::SameId);
        }
    }

    /// Two entries of one id: the first by [`first`] stays, the other is set aside.
    pub(super) fn settle(&mut self, entry: Entry) {
        let Some(at) = self.place(&entry.id) else { return };
        if self.entries.get(at).is_some_and(|mine| first(mine, &entry).is_le()) {
            return self.set_aside(entry.to_line(), Damage::SameId);
        }
        let mine = self.entries.remove(at);
        self.set_aside(mine.to_line(), Damage::SameId);
        self.index();
        self.mark_undone();
        let state = std::mem::take(&mut self.state);
        self.state = self.refold(state, &mine);
        self.take(entry);
    }
}

/// Which of two entries of one id stays: the same one on every device.
pub(super) fn first(a: &Entry, b: &Entry) -> Ordering {
    a.clock.cmp(&b.clock).then_with(|| a.to_line().cmp(&b.to_line()))
}
