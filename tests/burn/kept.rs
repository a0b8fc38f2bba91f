//! Trials in the book: kept as they are, undone one by one, found by their like.

use super::candle::{MINUTE, MORNING, good, lit, out, read, trial};
use potside::bench::burn::{
    BurnEvent, Limits, Place, Trial, TrialError, Verdict, WickSeries, advise, missed,
};
use potside::book::{Act, Id, Journal, Known, Refusal, demo};
use potside::day::Zone;
use potside::quantity::{Locale, Voice};
use potside::wire::{read as read_json, write};

pub(super) fn id(text: &str) -> Id {
    Id(text.to_owned())
}

pub(super) fn series() -> WickSeries {
    WickSeries { name: "Cotton".to_owned(), sizes: WickSeries::read_sizes("C 8, C 10\nC 12; C 14\n\n") }
}

pub(super) fn does(journal: &mut Journal, act: Act) -> Id {
    let random = journal.entries().len() as u32 * 7919;
    let entry = journal.entry(act, MORNING, random);
    assert_eq!(read_json::<Act>(&write(&entry.act)).as_ref(), Ok(&entry.act));
    let id = entry.id.clone();
    journal.take(entry);
    id
}

pub(super) fn at(trial: &str, event: BurnEvent) -> Act {
    Act::AtTrial { trial: id(trial), event }
}

fn begin(journal: &mut Journal, name: &str, wick: &str) {
    does(journal, Act::Trial { id: id(name), over: None, body: Box::new(trial(name, wick)) });
}

#[test]
fn a_burn_is_kept_and_undone_step_by_step() {
    let mut j = Journal::open(vec![], "tablet");
    does(&mut j, Act::Wicks { id: id("w"), over: None, body: series() });
    assert_eq!(j.state().series(" cotton").unwrap().sizes, ["C 8", "C 10", "C 12", "C 14"]);
    assert_eq!(series().place("c 12 "), Some(2));
    begin(&mut j, "A1", "C 10");
    does(&mut j, at("A1", lit(MORNING, 400.0)));
    let looked = does(&mut j, at("A1", BurnEvent::Looked(Box::new(good(MORNING + 60 * MINUTE, 50.0)))));
    assert_eq!(j.state().last_done(&id("A1")), Some(&looked));
    let ended = does(&mut j, at("A1", out(MORNING + 90 * MINUTE, 391.0)));
    assert!(j.state().course_of(&id("A1")).burning().is_none());
    does(&mut j, Act::Undo { entry: ended });
    let course = j.state().course_of(&id("A1"));
    assert_eq!(course.burning().map(|s| s.looks.len()), Some(1));
    let closed = BurnEvent::Closed { verdict: Verdict::Small, note: "went out".to_owned() };
    does(&mut j, at("A1", closed));
    assert_eq!(j.state().course_of(&id("A1")).closed.map(|(v, _)| v), Some(Verdict::Small));
    let stray = does(&mut j, at("A9", lit(MORNING, 1.0)));
    assert_eq!(j.state().ignored.get(&stray).map(|i| i.why.clone()), Some(Refusal::NoSuchThing));
    // The whole book read again says the same.
    let lines = j.entries().iter().map(|e| e.to_line()).collect();
    assert_eq!(Journal::open(lines, "tablet").state(), j.state());
}

/// A burn that was written down late is one entry: taken back in one, and brought back in one.
#[test]
fn a_burn_written_down_late_is_taken_back_in_one() {
    let mut j = Journal::open(vec![], "tablet");
    begin(&mut j, "A1", "C 10");
    does(&mut j, at("A1", lit(MORNING + 600 * MINUTE, 390.0)));
    does(&mut j, at("A1", out(MORNING + 720 * MINUTE, 380.0)));
    let before = j.state().clone();
    let light = BurnEvent::Lit { at: MORNING, mass: read("400 g"), trimmed: false, throw: Some(2) };
    let looks = vec![good(MORNING + 50 * MINUTE, 50.0), good(MORNING + 100 * MINUTE, 60.0)];
    let burn = missed(light, looks, out(MORNING + 120 * MINUTE, 390.0));
    let entry = does(&mut j, at("A1", burn));
    let after = j.state().course_of(&id("A1"));
    assert_eq!((after.sessions.len(), after.sessions[0].looks.len()), (2, 2));
    assert_eq!(j.state().entries_of_burn(&id("A1"), MORNING), std::slice::from_ref(&entry));
    assert_eq!(j.state().entries_of_burn(&id("A1"), MORNING + 600 * MINUTE).len(), 2);
    let undo = does(&mut j, Act::Undo { entry });
    assert_eq!(j.state().burns, before.burns);
    does(&mut j, Act::Undo { entry: undo });
    assert_eq!(j.state().course_of(&id("A1")), after);
}

/// What is due is told of every candle that burns, with its mark, the last that came due; of none that is out.
#[test]
fn what_is_due_is_told_of_those_that_burn() {
    let mut j = Journal::open(vec![], "tablet");
    let due = |j: &Journal, minutes: u64| j.state().burning_due(MORNING + minutes * MINUTE);
    begin(&mut j, "A1", "C 10");
    begin(&mut j, "A2", "C 10");
    begin(&mut j, "A3", "C 10");
    assert_eq!(due(&j, 0), None);
    does(&mut j, at("A1", lit(MORNING, 400.0)));
    does(&mut j, at("A2", lit(MORNING + 30 * MINUTE, 400.0)));
    does(&mut j, at("A3", lit(MORNING, 400.0)));
    let ended = does(&mut j, at("A3", out(MORNING + 10 * MINUTE, 399.0)));
    assert_eq!(due(&j, 100), Some(vec![]));
    // 70 mm at an hour an inch are 165 minutes; a burn of 240 is the longest.
    assert_eq!(due(&j, 190), Some(vec!["A1: Full pool expected: measure across the melted wax.".to_owned()]));
    let over = "It has burned as long as it should: put it out.";
    assert_eq!(due(&j, 300), Some(vec![["A1: ", over].concat(), ["A2: ", over].concat()]));
    does(&mut j, Act::Undo { entry: ended });
    assert_eq!(due(&j, 300).map(|all| all.len()), Some(3));
    does(&mut j, Act::Retire { id: id("A1"), retired: true });
    assert_eq!(due(&j, 300).map(|all| all.len()), Some(2));
}

#[test]
fn a_candle_that_was_put_out_a_while_ago() {
    let events = [lit(MORNING, 400.0), BurnEvent::Looked(Box::new(good(MORNING + 60 * MINUTE, 50.0)))];
    let course = potside::bench::burn::course(&events);
    let session = course.burning().unwrap();
    let now = MORNING + 200 * MINUTE;
    assert_eq!(session.out_ago(now, 80), Ok(MORNING + 120 * MINUTE));
    assert_eq!(session.out_ago(now, 140), Ok(MORNING + 60 * MINUTE));
    for (minutes, why) in [(141, "looked at burning"), (200, "not lit yet"), (u32::MAX, "not lit yet")] {
        assert!(session.out_ago(now, minutes).unwrap_err().contains(why), "{minutes}");
    }
}

#[test]
fn limits_are_the_workshops_own() {
    let mut j = Journal::open(vec![], "tablet");
    assert_eq!(j.state().limits, Limits::default());
    let own = Limits { flame: read("2 in"), longest: 180, ..Limits::default() };
    let said = does(&mut j, Act::Limits(Box::new(own.clone())));
    assert_eq!(j.state().limits, own);
    does(&mut j, Act::Undo { entry: said });
    assert_eq!(j.state().limits, Limits::default());
}

#[test]
fn candles_are_like_but_for_the_wick_and_tell_of_the_next() {
    let mut j = Journal::open(vec![], "tablet");
    does(&mut j, Act::Wicks { id: id("w"), over: None, body: series() });
    for (name, wick, verdict) in
        [("B1", "C 14", Verdict::Large), ("A1", "C 8", Verdict::Small), ("A2", "c 8", Verdict::Small)]
    {
        begin(&mut j, name, wick);
        does(&mut j, at(name, BurnEvent::Closed { verdict, note: String::new() }));
    }
    let other = Trial { vessel: "Low tin".to_owned(), ..trial("T1", "C 8") };
    does(&mut j, Act::Trial { id: id("T1"), over: None, body: Box::new(other) });
    let like = j.state().like(&trial("x", "C 10"));
    let names: Vec<(&str, usize)> = like.iter().map(|b| (b.wick.as_str(), b.candles.len())).collect();
    assert_eq!(names, [("C 8", 2), ("C 14", 1)]);
    let (_, advice) = j.state().next_wick(&trial("x", "C 10"), Voice::default()).unwrap();
    assert!([1, 2].contains(&advice.size), "{advice:?}");
    // Of those that were burned the burns are counted: one of two burns and one of one; A1 was closed without.
    assert_eq!(advice.burns, None);
    for (name, burns) in [("A2", 2), ("B1", 1)] {
        for n in 0..burns {
            does(&mut j, at(name, lit(MORNING + n * 1000 * MINUTE, 400.0)));
            does(&mut j, at(name, out(MORNING + n * 1000 * MINUTE + 60 * MINUTE, 396.0)));
        }
    }
    assert_eq!(j.state().next_wick(&trial("x", "C 10"), Voice::default()).unwrap().1.burns, Some(1.5));
    assert_eq!(
        j.state()
            .next_wick(&Trial { wax: "Other".into(), ..trial("x", "C 10") }, Voice::default())
            .unwrap()
            .1
            .burns,
        None
    );
    does(&mut j, Act::Retire { id: id("B1"), retired: true });
    assert_eq!(j.state().like(&trial("x", "C 10")).len(), 1);
    assert!(
        j.state()
            .next_wick(&Trial { series: "Paper".to_owned(), ..trial("x", "1") }, Voice::default())
            .is_none()
    );
}

/// A series that is renamed keeps its candles: those of the old name tell of those of the new.
#[test]
fn candles_stay_with_a_series_that_is_renamed() {
    let mut j = Journal::open(vec![], "tablet");
    let first = does(&mut j, Act::Wicks { id: id("w"), over: None, body: series() });
    begin(&mut j, "A1", "C 8");
    does(&mut j, at("A1", BurnEvent::Closed { verdict: Verdict::Small, note: String::new() }));
    let before = j.state().next_wick(&trial("x", "C 8"), Voice::default()).unwrap().1;
    let body = WickSeries { name: "Flat cotton".to_owned(), ..series() };
    does(&mut j, Act::Wicks { id: id("w"), over: Some(first), body });
    let new = Trial { series: "flat cotton".to_owned(), ..trial("A2", "C 8") };
    does(&mut j, Act::Trial { id: id("A2"), over: None, body: Box::new(new.clone()) });
    for asked in [&new, &trial("x", "C 8")] {
        assert_eq!(
            j.state().next_wick(asked, Voice::default()).map(|(s, a)| (s.name.as_str(), a)),
            Some(("Flat cotton", before.clone()))
        );
        let like = j.state().like(asked);
        assert_eq!((like.len(), like[0].wick.as_str(), like[0].candles.len()), (1, "C 8", 2));
    }
    // Another series that takes the old name has it from then on.
    does(&mut j, Act::Wicks { id: id("v"), over: None, body: series() });
    assert_eq!(j.state().series("cotton").map(|s| s.name.as_str()), Some("Cotton"));
    let here = Place { across: 70.0, weight: 0.0 };
    assert_eq!(
        j.state().next_wick(&new, Voice::default()).unwrap().1.chances,
        advise(4, here, &[]).unwrap().chances
    );
}

/// 7.2 oz are 204.1 g, as an ounce is 28.349523125 g (the international pound of 1959).
#[test]
fn what_the_book_knows_of_a_candle_is_there_to_begin_with() {
    let lines = demo("demo", MORNING, Zone::GREENWICH, || 7).into_iter().map(|(_, line)| line).collect();
    let j = Journal::open(lines, "tablet");
    let known = |formula: &str| j.state().known_of(&id(formula), Default::default());
    let orchard = Known {
        fragrance: "Late orchard oil".to_owned(),
        load: Some(read("8 %")),
        wax: "Meadow soft wax".to_owned(),
        vessel: "Shoulder jar".to_owned(),
        diameter: None,
        wick: "Cotton 14".to_owned(),
        fill: Some(read("204.1 g")),
    };
    assert_eq!(known("demo-orchard"), Some(orchard));
    // A share of the whole is not one of the wax.
    let hedge = known("demo-hedge").unwrap();
    assert_eq!((hedge.fragrance.as_str(), hedge.load), ("Salt hedge oil", None));
    assert_eq!(hedge.wax, "Meadow soft wax, Harbour firm wax");
    assert_eq!(known("gone"), None);
}

#[test]
fn what_is_typed_is_looked_over() {
    let bad = Trial {
        name: " ".to_owned(),
        vessel: String::new(),
        wax: String::new(),
        diameter: read("7 mm"),
        fill: read("500 g"),
        ..trial("", "C 99")
    };
    let wrong = bad.check(Some(&series())).unwrap_err();
    assert_eq!(
        wrong,
        [
            TrialError::NoName,
            TrialError::NoVessel,
            TrialError::NoWax,
            TrialError::NotInSeries { wick: "C 99".to_owned(), series: "Cotton".to_owned() },
            TrialError::NoDiameter { diameter: read("7 mm") },
            TrialError::FillAboveStart { fill: read("500 g"), start: read("400 g") },
        ]
    );
    assert!(wrong.iter().all(|w| w.say(Voice::default()).ends_with('.')));
    let comma = Voice { locale: Locale::Comma, ..Voice::default() };
    let heavy = TrialError::FillAboveStart { fill: read("500.5 g"), start: read("400.25 g") };
    assert!(heavy.say(comma).starts_with("The wax, 500,5 g, weighs more than the whole candle, 400,25 g."));
    assert_eq!(trial("A1", "C 10").check(Some(&series())), Ok(()));
    assert_eq!(trial("A1", "C 99").check(None), Ok(()));
    // Two candles that are on trial at once have two marks; once the first is judged, its mark is free.
    let mut j = Journal::open(vec![], "tablet");
    begin(&mut j, "A1", "C 10");
    let mark = |j: &Journal, own: Option<&Id>| j.state().check_trial(own, &trial(" a1", "C 10"));
    assert_eq!(mark(&j, None), Err(vec![TrialError::MarkTwice { name: " a1".to_owned() }]));
    assert_eq!(mark(&j, Some(&id("A1"))), Ok(()));
    does(&mut j, at("A1", BurnEvent::Closed { verdict: Verdict::Other, note: String::new() }));
    assert_eq!(mark(&j, None), Ok(()));
    does(&mut j, Act::Wicks { id: id("w"), over: None, body: series() });
    assert_eq!(j.state().check_series(Some(&id("w")), &series()), Ok(()));
    let again = TrialError::SeriesTwice { name: "Cotton".to_owned() };
    assert!(again.say(Voice::default()).ends_with('.'));
    assert_eq!(j.state().check_series(None, &series()), Err(vec![again]));
    let twice = WickSeries { name: String::new(), sizes: vec!["1".to_owned(), "1".to_owned()] };
    assert_eq!(
        twice.check().unwrap_err(),
        [TrialError::SeriesNoName, TrialError::SizeTwice { size: "1".to_owned() }]
    );
}
