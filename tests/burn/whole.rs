//! A whole burn taken back in one, and brought back in one.

use super::candle::{MINUTE, MORNING, good, lit, out, read, trial};
use potside::bench::burn::{BurnEvent, course, missed, of_burn};
use potside::book::{Act, Id, Journal};
use proptest::prelude::*;

const DAY: u64 = 1440 * MINUTE;

fn id(text: &str) -> Id {
    Id(text.to_owned())
}

fn does(journal: &mut Journal, act: Act) -> Id {
    let random = journal.entries().len() as u32 * 7919;
    let entry = journal.entry(act, MORNING, random);
    let id = entry.id.clone();
    journal.take(entry);
    id
}

fn burns(journal: &mut Journal, events: &[BurnEvent]) -> Vec<Id> {
    let at = |event: &BurnEvent| Act::AtTrial { trial: id("A1"), event: event.clone() };
    events.iter().map(|event| does(journal, at(event))).collect()
}

/// A burn of a day as it is tapped, with a look, weighed afterwards.
fn tapped(day: u64, before: f64, after: &str) -> [BurnEvent; 4] {
    let at = MORNING + day * DAY;
    [
        lit(at, before),
        BurnEvent::Looked(Box::new(good(at + 60 * MINUTE, 50.0))),
        BurnEvent::Out { at: at + 120 * MINUTE, mass: None, itself: false },
        BurnEvent::Weighed { mass: read(after), lit: None },
    ]
}

fn book() -> Journal {
    let mut j = Journal::open(vec![], "tablet");
    does(&mut j, Act::Trial { id: id("A1"), over: None, body: Box::new(trial("A1", "C 10")) });
    j
}

/// As the page does it: all entries of the burn, then all undos.
fn take_back(j: &mut Journal, day: u64) -> usize {
    let entries = j.state().entries_of_burn(&id("A1"), MORNING + day * DAY);
    let count = entries.len();
    entries.into_iter().for_each(|entry| drop(does(j, Act::Undo { entry })));
    count
}

fn bring_back(j: &mut Journal) {
    let Some(found) = j.unburnt(&id("A1")) else { panic!("none was taken back") };
    found.undos.into_iter().for_each(|entry| drop(does(j, Act::Undo { entry })));
}

#[test]
fn a_tapped_burn_amid_a_trial_is_taken_back_in_one_and_comes_back_in_one() {
    let mut j = book();
    let days = [tapped(0, 400.0, "388 g"), tapped(1, 388.0, "377 g"), tapped(2, 377.0, "366 g")];
    let entries: Vec<Vec<Id>> = days.iter().map(|day| burns(&mut j, day)).collect();
    // The weight of the second is put right later, by its light; its photo goes with it.
    let right = BurnEvent::Weighed { mass: read("376 g"), lit: Some(MORNING + DAY) };
    let photo = BurnEvent::Pictured { at: MORNING + DAY + 30 * MINUTE, photo: "p".to_owned() };
    let more = burns(&mut j, &[right, photo]);
    let whole = j.state().course_of(&id("A1"));
    assert_eq!(j.state().entries_of_burn(&id("A1"), MORNING + DAY), [&entries[1][..], &more].concat());
    assert_eq!(j.unburnt(&id("A1")), None);
    assert_eq!(take_back(&mut j, 1), 6);
    let left = j.state().course_of(&id("A1"));
    assert_eq!(left.sessions, [whole.sessions[0].clone(), whole.sessions[2].clone()]);
    // Two are taken back, one after the other: they come back the last first.
    assert_eq!(take_back(&mut j, 0), 4);
    assert_eq!(j.state().course_of(&id("A1")).sessions.len(), 1);
    assert_eq!(j.unburnt(&id("A1")).map(|u| u.burn), whole.sessions.first().cloned());
    // Opened again, and on another device, it is the same.
    let lines = || j.entries().iter().map(|e| e.to_line()).collect::<Vec<_>>();
    assert_eq!(Journal::open(lines(), "phone").unburnt(&id("A1")), j.unburnt(&id("A1")));
    bring_back(&mut j);
    assert_eq!(j.state().course_of(&id("A1")), left);
    bring_back(&mut j);
    assert_eq!(j.state().course_of(&id("A1")), whole);
    assert_eq!(j.unburnt(&id("A1")), None);
    assert_eq!(j.state().burns.get(&id("A1")).map(|b| b.events().len()), Some(14));
}

/// What was taken back for itself before stays away when the burn comes back; and of another candle nothing is touched.
#[test]
fn a_look_that_was_wrong_stays_away() {
    let mut j = book();
    does(&mut j, Act::Trial { id: id("A2"), over: None, body: Box::new(trial("A2", "C 10")) });
    let first = burns(&mut j, &tapped(0, 400.0, "388 g"));
    does(&mut j, Act::Undo { entry: first[1].clone() });
    does(&mut j, Act::AtTrial { trial: id("A2"), event: lit(MORNING, 400.0) });
    let before = j.state().clone();
    assert_eq!(take_back(&mut j, 0), 3);
    bring_back(&mut j);
    assert_eq!(j.state().burns, before.burns);
    assert!(j.state().course_of(&id("A1")).sessions[0].looks.is_empty());
    // A light alone that is taken back is no burn to bring back.
    let mut j = book();
    let light = burns(&mut j, &[lit(MORNING, 400.0)]);
    does(&mut j, Act::Undo { entry: light[0].clone() });
    assert_eq!(j.unburnt(&id("A1")), None);
}

/// A second tap for the same light, on a clock behind or ahead, goes with the burn: else it would burn on.
#[test]
fn a_second_tap_goes_with_its_burn() {
    for second in [MORNING - MINUTE, MORNING + MINUTE] {
        let events = [lit(MORNING, 400.0), lit(second, 400.0), out(MORNING + 120 * MINUTE, 390.0)];
        let whole = course(&events);
        assert_eq!(whole.sessions.len(), 1);
        let own = of_burn(events.iter().enumerate(), whole.sessions[0].lit);
        assert_eq!(own, [0, 1, 2], "{second}");
    }
    let burn = missed(lit(MORNING, 400.0), vec![], out(MORNING + 120 * MINUTE, 390.0));
    let twice = [burn.clone(), burn];
    assert_eq!(of_burn(twice.iter().enumerate(), MORNING), [0, 1]);
}

proptest! {
    // Without what is of a burn the others are as they were; no two burns share anything.
    #[test]
    fn what_is_of_a_burn_is_of_no_other(
        kinds in prop::collection::vec((0..4u8, any::<bool>(), any::<bool>()), 1..7), turn in 0..6usize
    ) {
        let mut events = Vec::new();
        for (day, (kind, late, photo)) in (0..).zip(&kinds) {
            let at = MORNING + day * DAY;
            let burn = tapped(day, 400.0 - day as f64, "380 g");
            match kind {
                0 => events.extend(burn),
                1 => events.extend(burn[..3].to_vec()),
                2 => events.extend([lit(at, 400.0), lit(at + MINUTE, 400.0), out(at + 90 * MINUTE, 390.0)]),
                _ => events.push(missed(lit(at, 400.0), vec![good(at + MINUTE, 40.0)], out(at + 90 * MINUTE, 390.0))),
            }
            if *photo {
                events.push(BurnEvent::Pictured { at: at + 2 * MINUTE, photo: "p".to_owned() });
            }
            if *late {
                events.push(BurnEvent::Weighed { mass: read("379 g"), lit: Some(MORNING + day * DAY) });
            }
        }
        let whole = course(&events).sessions;
        prop_assert_eq!(whole.len(), kinds.len());
        let gone = &whole[turn % whole.len()];
        let own = of_burn(events.iter().enumerate(), gone.lit);
        let left: Vec<&BurnEvent> =
            events.iter().enumerate().filter(|(at, _)| !own.contains(at)).map(|(_, event)| event).collect();
        let others: Vec<_> = whole.iter().filter(|s| s.lit != gone.lit).cloned().collect();
        prop_assert_eq!(course(left).sessions, others);
        let all: usize = whole.iter().map(|s| of_burn(events.iter().enumerate(), s.lit).len()).sum();
        prop_assert_eq!(all, events.len());
    }
}
