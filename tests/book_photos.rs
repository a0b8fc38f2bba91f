//! Photos in the book and its backups: named by entries, kept beside it, brought by a copy once they have proven themselves.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use potside::bench::burn::{BurnEvent, Heavy, Trial};
use potside::book::{Act, Copy, Id, Journal, LARGEST_COPY, Seal, backup, backup_with, crc32c, read_copy};
use potside::photo::{Photo, PhotoError, name, pack, to_base64};
use potside::quantity::{Amount, Quantity, Unit};

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
