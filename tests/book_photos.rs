//! Photos in the book and its backups: named by entries, kept beside it, brought by a copy once they have proven themselves.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic)]

use potside::bench::burn::{BurnEvent, Heavy, Trial};
use potside::book::{
    Act, Book, Copy, FailingStore, Fault, Id, Journal, LARGEST_COPY, Seal, Store, StoreError, Stray, backup,
    backup_with, crc32c, leave_unsaid, overdue, read_copy, strays,
};
use potside::photo::{Photo, PhotoError, name, pack, to_base64};
use potside::quantity::{Amount, Quantity, Unit};
use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

const MORNING: u64 = 1_764_748_800_000;
const MINUTE: u64 = 60_000;

fn read<Q: Quantity>(text: &str) -> Amount<Q> {
    potside::quantity::read(text, Q::Unit::all()[0], Default::default()).unwrap()
}

/// The smallest make-up of a grey JPEG, told from others by its only byte of picture.
fn photo(of: u8) -> Photo {
    let frame = b"\xFF\xC0\0\x0B\x08\0\x10\0\x10\x01\x01\x11\0";
    let picture =
        [b"\xFF\xD8".as_slice(), frame, b"\xFF\xDA\0\x08\x01\x01\0\0\x3F\0", &[of], b"\xFF\xD9"].concat();
    let (name, jpeg) = pack(&picture).unwrap();
    Photo { name, jpeg }
}

fn does(journal: &mut Journal, act: Act) -> (Id, String) {
    let random = journal.entries().len() as u32 + 1;
    let entry = journal.entry(act, MORNING, random);
    let (id, line) = (entry.id.clone(), entry.to_line());
    journal.take(entry);
    (id, line)
}

fn at(event: BurnEvent) -> Act {
    Act::AtTrial { trial: Id("a1".to_owned()), event }
}

fn pictured(minute: u64, photo: &Photo) -> Act {
    at(BurnEvent::Pictured { at: MORNING + minute * MINUTE, photo: photo.name.clone() })
}

/// A book with a candle that was pictured at these minutes, and its lines.
fn book(device: &str, photos: &[(u64, &Photo)]) -> (Journal, Vec<String>) {
    let mut journal = Journal::open(Vec::new(), device);
    let trial = Trial {
        name: "A1".to_owned(),
        fragrance: "Apple".to_owned(),
        load: None,
        heavy: Heavy::Middle,
        wax: "Plain wax".to_owned(),
        vessel: "Straight jar".to_owned(),
        diameter: read("70 mm"),
        series: String::new(),
        wick: "C 10".to_owned(),
        replicate: 1,
        start: read("400 g"),
        fill: read("180 g"),
    };
    let body = Box::new(trial);
    let mut lines = vec![does(&mut journal, Act::Trial { id: Id("a1".to_owned()), over: None, body }).1];
    lines.extend(photos.iter().map(|(minute, photo)| does(&mut journal, pictured(*minute, photo)).1));
    (journal, lines)
}

#[test]
fn a_photo_stands_where_it_was_taken_in_the_candles_life() {
    let all = [1, 2, 3, 4].map(photo);
    let (mut j, _) = book("tablet", &[(0, &all[0])]);
    does(&mut j, at(BurnEvent::Lit { at: MORNING, mass: read("400 g"), trimmed: true, throw: None }));
    does(&mut j, pictured(65, &all[1]));
    does(&mut j, at(BurnEvent::Out { at: MORNING + 90 * MINUTE, mass: None, itself: false }));
    does(&mut j, pictured(91, &all[2]));
    does(
        &mut j,
        at(BurnEvent::Lit { at: MORNING + 200 * MINUTE, mass: read("395 g"), trimmed: true, throw: None }),
    );
    let (last, _) = does(&mut j, pictured(202, &all[3]));
    let told = |j: &Journal| {
        let shots = j.state().shots_of(&Id("a1".to_owned()));
        shots.into_iter().map(|(_, shot)| (shot.photo, shot.said)).collect::<Vec<_>>()
    };
    let said = ["Burn 2, after 2 min", "After burn 1", "Burn 1, after 65 min", "Before its first burn"];
    let wanted: Vec<_> = all.iter().rev().map(|p| p.name.clone()).zip(said.map(str::to_owned)).collect();
    assert_eq!(told(&j), wanted);
    // A photo changes nothing else of the candle, and is undone by itself; its bytes stay wanted.
    assert_eq!(j.state().course_of(&Id("a1".to_owned())).sessions.len(), 2);
    does(&mut j, Act::Undo { entry: last });
    assert_eq!(told(&j), wanted[1..]);
    assert_eq!(j.photos(), [3, 2, 1, 0].map(|n: usize| all[n].name.as_str()));
    // What is no name is none, and one name counts once.
    does(&mut j, at(BurnEvent::Pictured { at: MORNING, photo: "../../x".to_owned() }));
    does(&mut j, pictured(300, &all[0]));
    assert_eq!(j.photos(), [0, 3, 2, 1].map(|n: usize| all[n].name.as_str()));
}

fn copied(text: &str, journal: &Journal) -> Copy {
    read_copy(text, journal).unwrap()
}

#[test]
fn a_backup_brings_its_photos_to_another_device() {
    let all = [1, 2].map(photo);
    let (_, lines) = book("tablet", &[(1, &all[0]), (2, &all[1])]);
    let (text, left) = backup_with(&lines, &all, "tablet", 5);
    assert_eq!(left, 0);
    for text in [text.clone(), text.replace('\n', "\r\n")] {
        let copy = copied(&text, &Journal::default());
        let mut photos = copy.photos.clone();
        photos.sort_by_key(|p| p.name != all[0].name);
        assert_eq!(photos, all);
        assert_eq!((copy.fresh.len(), copy.seal, copy.no_photos.len()), (3, Seal::Whole, 0));
        assert!(copy.replace.is_some());
    }
    // To a book that has the entries already: the photos may be lacking all the same.
    let here = Journal::open(lines.clone(), "tablet");
    let copy = copied(&text, &here);
    assert_eq!((copy.fresh.len(), copy.photos.len()), (0, 2));
    // Without photos it is the file that it ever was.
    assert_eq!(backup_with(&lines, &[], "tablet", 5), (backup(&lines, "tablet", 5), 0));
    assert!(!backup(&lines, "tablet", 5).contains("photos"));
}

/// The file as somebody else would have sealed it.
fn resealed(text: &str) -> String {
    let (body, _) = text.rsplit_once(",\"sum\":").unwrap();
    format!("{body},\"sum\":\"{:08x}\"}}\n", crc32c(body.as_bytes()))
}

#[test]
fn what_is_wrong_with_a_photo_is_said_with_its_line() {
    let all = [1, 2, 3].map(photo);
    let (_, lines) = book("tablet", &[(1, &all[0]), (2, &all[1])]);
    let svg = b"<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>";
    let foreign = Photo { name: name(svg), jpeg: to_base64(svg) };
    let false_name = Photo { name: all[0].name.clone(), jpeg: all[1].jpeg.clone() };
    let long = Photo { name: all[0].name.clone(), jpeg: "A".repeat(60_000) };
    let given = [all[1].clone(), false_name, foreign, long, all[2].clone(), all[1].clone()];
    let (text, _) = backup_with(&lines, &given, "tablet", 5);
    let copy = copied(&text, &Journal::default());
    // The third is whole, but nothing names it.
    assert_eq!(copy.photos, [all[1].clone()]);
    let first = text.lines().position(|l| l.contains(&all[1].jpeg)).unwrap() + 1;
    let wrong = [PhotoError::Damaged, PhotoError::Foreign, PhotoError::Damaged];
    let wrong: Vec<_> = wrong.into_iter().zip(first + 1..).map(|(why, line)| (line, why)).collect();
    assert_eq!(copy.no_photos, wrong);
    assert_eq!(copy.fresh.len(), 3);
    // No photo at all, and a list without an end.
    for odd in ["null", "{}", "{\"name\":1}", "[[[["] {
        let broken = text.replace(&potside::wire::write(&all[1]), odd);
        let copy = copied(&resealed(&broken), &Journal::default());
        assert_eq!((copy.photos.len(), copy.fresh.len(), copy.no_photos.len()), (0, 3, 5), "{odd}");
    }
    // Cut off anywhere: what was whole is brought, and the file is known to be cut.
    for end in
        (first - 2..text.lines().count()).map(|n| text.lines().take(n).map(|l| l.len() + 1).sum::<usize>())
    {
        let copy = copied(&text[..end - 1], &Journal::default());
        assert_eq!((copy.seal, copy.fresh.len()), (Seal::Broken, 3), "cut at {end}");
        assert!(copy.replace.is_none() && copy.photos.len() <= 1);
    }
}

#[test]
fn photos_fill_a_file_that_can_still_be_opened() {
    let large = Photo { name: photo(2).name, jpeg: "A".repeat(LARGEST_COPY as usize - 1_500) };
    let all = [photo(1), large, photo(3)];
    let (text, left) = backup_with(&book("tablet", &[]).1, &all, "tablet", 5);
    // What comes after one for which there is no room is earlier: it is left out too.
    assert_eq!((left, text.contains(&all[0].jpeg), text.contains(&all[2].name)), (2, true, false));
    assert!((text.len() as u64) < LARGEST_COPY);
}

fn at_once<T>(future: impl Future<Output = T>) -> T {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("it waits"),
    }
}

const DAY: u64 = 24 * 60 * MINUTE;

/// A photo of which the entry was not stored before the device died stands there unnamed: it is a stray, and goes after a
/// day. Where the entry was stored, though nobody was told so, the photo stays.
#[test]
fn a_photo_whose_entry_never_came_goes_after_a_day() {
    for (fault, goes) in [
        (Fault::Refused(StoreError::Full), true),
        (Fault::Torn { kept: 0 }, true),
        (Fault::Torn { kept: 1 }, false),
        (Fault::KeptUnsaid, false),
    ] {
        let (_, lines) = book("tablet", &[]);
        let store = FailingStore::at([(2, fault.clone())]);
        let pairs: Vec<_> = lines.iter().map(|l| (l.clone(), l.clone())).collect();
        at_once(store.append(&pairs)).unwrap();
        let mut open = Book::open(lines, "tablet");
        open.act(pictured(1, &photo(7)), MORNING, 7).unwrap();
        let sent = open.to_store().unwrap();
        assert!(at_once(store.append(&sent)).is_err(), "{fault:?}");
        // The next opening, and one a day later.
        let lines = at_once(store.load()).unwrap();
        let named: Vec<String> = Journal::open(lines.clone(), "tablet").photos();
        let stored = || vec![photo(7).name];
        let found = strays(&[], stored(), &named, MORNING);
        assert_eq!(found.len(), usize::from(goes), "{fault:?}");
        let later = strays(&found, stored(), &named, MORNING + DAY);
        assert_eq!(overdue(&later, MORNING + DAY - 1), Vec::<String>::new());
        let mut over = overdue(&later, MORNING + DAY);
        leave_unsaid(&mut over, &lines);
        assert_eq!(over, if goes { stored() } else { Vec::new() }, "{fault:?}");
    }
}

/// What any stored line speaks of stays, whatever the book makes of that line; and a clock that was set back makes a stray
/// wait for longer.
#[test]
fn no_photo_goes_that_a_line_speaks_of() {
    let all = [1, 2, 3].map(photo);
    let (mut j, mut lines) = book("tablet", &[(1, &all[0])]);
    let (undone, line) = does(&mut j, pictured(2, &all[1]));
    lines.extend([line, does(&mut j, Act::Undo { entry: undone }).1]);
    let damaged = lines[1].replace("\"sum\":\"", "\"sum\":\"x");
    let newer = lines[1].replacen("{\"v\":2", "{\"v\":99", 1).replace("Pictured", "Painted");
    for line in [&lines[1], &lines[2], &damaged, &newer] {
        let mut over: Vec<String> = all.iter().map(|p| p.name.clone()).collect();
        leave_unsaid(&mut over, std::slice::from_ref(line));
        assert_eq!(over.len(), 2, "{line}");
        assert!(over.contains(&all[2].name));
    }
    let stray = |since| Stray { name: all[2].name.clone(), since };
    let found = strays(&[stray(MORNING + 9 * DAY), stray(5)], vec![all[2].name.clone()], &[], MORNING);
    assert_eq!(found, [stray(MORNING)]);
    assert!(overdue(&found, MORNING + DAY - 1).is_empty() && overdue(&found, MORNING + DAY).len() == 1);
    // One that is named meanwhile, or gone, is none.
    assert!(strays(&found, vec![all[2].name.clone()], &[all[2].name.clone()], MORNING).is_empty());
    assert!(strays(&found, Vec::new(), &[], MORNING).is_empty());
}

/// Photos of as many bytes as there may be come with a copy, several of them.
#[test]
fn the_largest_photos_are_brought() {
    let largest = |of: u8| {
        let frame = b"\xFF\xC0\0\x0B\x08\0\x10\0\x10\x01\x01\x11\0";
        let head = [b"\xFF\xD8".as_slice(), frame, b"\xFF\xDA\0\x08\x01\x01\0\0\x3F\0"].concat();
        let scan = vec![of; potside::photo::MOST_BYTES - head.len() - 2];
        let (name, jpeg) = pack(&[head, scan, b"\xFF\xD9".to_vec()].concat()).unwrap();
        Photo { name, jpeg }
    };
    let mut all = [1, 2, 3, 4, 5].map(largest);
    all.sort_by(|a, b| a.name.cmp(&b.name));
    let (_, lines) = book("tablet", &[0, 1, 2, 3, 4].map(|n| (n as u64, &all[n])));
    let (text, left) = backup_with(&lines, &all, "tablet", MORNING);
    let copy = read_copy(&text, &Journal::default()).unwrap();
    assert_eq!((left, copy.photos, copy.no_photos), (0, all.to_vec(), vec![]));
}
