//! A bundle of ended batches and judged trials, and everything else of a book, as bytes: kept beside the journal so that a
//! book of many years opens at once. The journal is what counts: a bundle is made from it, never added to, and thrown away
//! where it is not whole or does not fit what is stored. One of another build of the app is renewed from its entries: what
//! they come to may be read otherwise now.

mod binding;
mod code;
mod pack;
mod renew;
mod tie;
mod tied;

pub use renew::Renewing;
pub use tie::Tying;

use super::{Act, Bundle, Entry, FORMAT, Id};
use crate::wire;
use code::{Reader, get_leaves, join, seal};
use std::ops::Range;
use std::rc::Rc;

/// What every bundle begins with. Another number for another way to write it.
const HEAD: &[u8] = b"potside bundle 4\n";
// What is in it are acts of this format, which are read as they stand: with another format it needs another number.
const _: () = assert!(FORMAT == 2);

/// A bundle that was read: what to give [`super::Journal::open_tied`].
pub struct Read {
    pub bundle: Rc<dyn Bundle>,
    /// What is not tied up.
    pub entries: Vec<Entry>,
    /// How many lines the storage had.
    pub lines: usize,
}

struct Tied {
    bytes: Vec<u8>,
    texts: String,
    ends: Range<usize>,
    records: Range<usize>,
    places: Range<usize>,
    marks: Range<usize>,
    /// The number of each shape among the texts, and the leaves of the first of it.
    models: Vec<(u64, Vec<u64>)>,
    times: (u64, u64),
    /// How many of the places are those of batches.
    batches: usize,
}

/// What was found in the bytes of a bundle.
pub enum Found {
    Read(Read),
    /// It is of another build.
    Old(Box<Renewing>),
}

/// Reads a bundle of this build. None where it is of another, or not whole to the last bit.
pub fn read(bytes: Vec<u8>, build: &str) -> Option<Read> {
    match find(bytes, build)? {
        Found::Read(read) => Some(read),
        Found::Old(_) => None,
    }
}

/// Reads a bundle. None where it is not whole to the last bit.
pub fn find(mut bytes: Vec<u8>, build: &str) -> Option<Found> {
    let body = bytes.strip_prefix(HEAD)?;
    let (sum, body) = body.split_first_chunk::<8>()?;
    if u64::from_le_bytes(*sum) != seal(body) {
        return None;
    }
    let mut at = HEAD.len() + 8 + 8 * 4;
    let mut parts: [Range<usize>; 8] = Default::default();
    for (part, size) in parts.iter_mut().zip(body.chunks_exact(4)) {
        let size = u32::from_le_bytes(size.try_into().ok()?) as usize;
        *part = at..at.checked_add(size)?;
        at = part.end;
    }
    let [head, ends, models, records, places, marks, rest, texts] = parts;
    if at != bytes.len() {
        return None;
    }
    let texts = String::from_utf8(bytes.split_off(texts.start)).ok()?;
    let mut tied =
        Tied { bytes, texts, ends, records, places, marks, models: Vec::new(), times: (0, 0), batches: 0 };
    let mut reader = Reader::new(tied.bytes.get(head)?);
    let of = reader.get();
    let lines = reader.get() as usize;
    tied.times = (reader.get(), reader.get());
    tied.batches = reader.get() as usize;
    let old = tied.text(of)? != build;
    let mut reader = Reader::new(tied.bytes.get(models)?);
    let mut models = Vec::new();
    for _ in 0..reader.count() {
        let shape = reader.get();
        models.push((shape, (0..reader.count()).map(|_| reader.get()).collect()));
    }
    tied.models = models;
    let entries = tied.all_of(&mut Reader::new(tied.bytes.get(rest)?))?;
    Some(if old {
        Found::Old(Box::new(Renewing::begin(tied, entries, lines)))
    } else {
        Found::Read(Read { bundle: Rc::new(tied), entries, lines })
    })
}

/// The id that an entry is given.
fn id(device: &str, clock: u64, random: u64) -> String {
    format!("{device}-{clock:x}-{random:x}")
}

impl Tied {
    fn four(&self, part: &Range<usize>, place: usize) -> Option<usize> {
        let bytes = self.bytes.get(part.clone())?.get(place.checked_mul(4)?..)?.first_chunk::<4>()?;
        Some(u32::from_le_bytes(*bytes) as usize)
    }

    /// From the end of the one before to its own.
    fn span(&self, ends: &Range<usize>, place: usize) -> Option<Range<usize>> {
        let from = place.checked_sub(1).map_or(Some(0), |before| self.four(ends, before))?;
        Some(from..self.four(ends, place)?)
    }

    fn text(&self, number: u64) -> Option<&str> {
        let span = self.span(&self.ends, usize::try_from(number).ok()?)?;
        self.texts.get(span)
    }

    fn said(&self, reader: &mut Reader) -> &str {
        self.text(reader.get()).unwrap_or_default()
    }

    /// Ids are kept as they stand in JSON.
    fn id(&self, reader: &mut Reader) -> Id {
        let said = self.said(reader);
        Id(said.get(1..said.len().saturating_sub(1)).unwrap_or_default().to_owned())
    }

    /// The reader at the last clock of a batch or trial and the number of its entries.
    fn whole(&self, place: usize) -> Reader<'_> {
        let span = self.span(&self.places, place).unwrap_or_default();
        Reader::new(self.bytes.get(self.records.clone()).and_then(|r| r.get(span)).unwrap_or_default())
    }

    /// The reader at what is asked of it.
    fn record(&self, place: usize) -> Reader<'_> {
        let mut reader = self.whole(place);
        reader.skip(2);
        reader
    }

    /// The reader at what is told of a run.
    fn run(&self, place: usize) -> Reader<'_> {
        let mut reader = self.record(place);
        reader.skip(13);
        let numbers = reader.count();
        reader.skip(numbers);
        for _ in 0..reader.count() {
            reader.get();
            let numbers = reader.count();
            reader.skip(numbers);
        }
        reader
    }

    /// The reader at the entries of a batch or trial, in two lists.
    fn at_entries(&self, place: usize) -> Reader<'_> {
        if place >= self.batches {
            let mut reader = self.record(place);
            reader.skip(3);
            return reader;
        }
        let mut reader = self.run(place);
        reader.skip(3);
        let numbers = reader.count();
        reader.skip(numbers);
        let numbers = reader.count() * 4;
        reader.skip(numbers);
        reader
    }

    fn all_of(&self, reader: &mut Reader) -> Option<Vec<Entry>> {
        let (mut entries, mut last) = (Vec::new(), (0, 0));
        for _ in 0..reader.count() {
            entries.push(self.entry(reader, &mut last)?);
        }
        (!reader.short).then_some(entries)
    }

    fn entry(&self, reader: &mut Reader, last: &mut (u64, u64)) -> Option<Entry> {
        let device = self.text(reader.get())?;
        *last = (reader.step(last.0), reader.step(last.1));
        let (clock, at) = *last;
        let own = reader.get();
        let id = if own & 1 == 0 { id(device, clock, own >> 1) } else { self.text(own >> 1)?.to_owned() };
        let (shape, model) = self.models.get(reader.get() as usize)?;
        let leaves = get_leaves(reader, model);
        let json = join(self.text(*shape)?, leaves, |number| self.text(number))?;
        let act: Act = wire::read(&json).ok()?;
        Some(Entry { id: Id(id), clock, at, device: device.to_owned(), act })
    }
}
