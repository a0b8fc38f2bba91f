//! What is tied up so far, and in the end the bundle of it.

use super::HEAD;
use super::code::{mark, put, seal};
use super::pack::Pack;
use crate::book::{Act, Entry, Id};
use std::collections::HashMap;

pub(super) struct Binding {
    /// How many entries each batch and trial had that is tied up.
    pub(super) tied: HashMap<Id, usize>,
    /// How many of these are batches.
    pub(super) batches: usize,
    pack: Pack,
    records: Vec<u8>,
    ends: Vec<u8>,
    marks: Vec<(u64, u32)>,
    times: (u64, u64),
}

impl Default for Binding {
    fn default() -> Self {
        Self {
            tied: HashMap::new(),
            batches: 0,
            pack: Pack::default(),
            records: Vec::new(),
            ends: Vec::new(),
            marks: Vec::new(),
            times: (u64::MAX, 0),
        }
    }
}

impl Binding {
    /// How far its entries go, what is asked of it, and they: its versions in one list, what happened to it in another, since
    /// the first is read at each opening.
    pub(super) fn record(
        &mut self,
        thing: &Id,
        entries: &[&Entry],
        of: impl FnOnce(&mut Pack, &mut Vec<u8>),
    ) {
        put(&mut self.records, entries.last().map_or(0, |e| e.clock));
        put(&mut self.records, entries.len() as u64);
        of(&mut self.pack, &mut self.records);
        let place = self.tied.len() as u32;
        self.tied.insert(thing.clone(), entries.len());
        let (events, versions): (Vec<&Entry>, Vec<&Entry>) =
            entries.iter().partition(|e| matches!(e.act, Act::AtTrial { .. }));
        self.pack.list(&mut self.records, &versions);
        self.pack.list(&mut self.records, &events);
        for entry in entries {
            self.marks.push((mark(&entry.id.0), place));
            self.times = (self.times.0.min(entry.at), self.times.1.max(entry.at));
        }
        self.ends.extend((self.records.len() as u32).to_le_bytes());
    }

    /// The bundle, with what is not tied up, for this build of the app and a storage of so many lines. None where something
    /// would not come out as it was.
    pub(super) fn finish(mut self, rest: &[&Entry], build: &str, lines: usize) -> Option<Vec<u8>> {
        let mut others = Vec::new();
        self.pack.list(&mut others, rest);
        let mut models = Vec::new();
        put(&mut models, self.pack.models.len() as u64);
        for (shape, leaves) in &self.pack.models {
            put(&mut models, *shape);
            put(&mut models, leaves.len() as u64);
            leaves.iter().for_each(|leaf| put(&mut models, *leaf));
        }
        self.marks.sort_unstable();
        let mut marks = Vec::with_capacity(self.marks.len() * 12);
        for (mark, place) in &self.marks {
            marks.extend(mark.to_le_bytes());
            marks.extend(place.to_le_bytes());
        }
        let mut head = Vec::new();
        put(&mut head, self.pack.texts.number(build));
        put(&mut head, lines as u64);
        put(&mut head, self.times.0);
        put(&mut head, self.times.1);
        put(&mut head, self.batches as u64);
        let (text_ends, text) = self.pack.texts.bytes();
        let parts: [&[u8]; 8] =
            [&head, &text_ends, &models, &self.records, &self.ends, &marks, &others, text.as_bytes()];
        // In one place from the beginning: it is the largest thing there is on a small device.
        let sizes = parts.map(<[u8]>::len);
        let mut whole = Vec::with_capacity(HEAD.len() + 8 + 4 * sizes.len() + sizes.iter().sum::<usize>());
        whole.extend_from_slice(HEAD);
        whole.extend([0; 8]);
        sizes.iter().for_each(|size| whole.extend((*size as u32).to_le_bytes()));
        parts.iter().for_each(|part| whole.extend_from_slice(part));
        let (front, body) = whole.split_at_mut_checked(HEAD.len() + 8)?;
        *front.last_chunk_mut()? = seal(body).to_le_bytes();
        (!self.pack.failed && whole.len() < u32::MAX as usize).then_some(whole)
    }
}
