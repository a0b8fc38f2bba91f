//! What was seen of a burn, said again in words, and held against limits that are the user's own.

use super::candle::{MINUTE, MORNING, good, lit, out, read, trial};
use potside::bench::burn::{
    BurnEvent, Grade, Limits, Look, Outcome, Sighting, Verdict, course, judge, scales, sightings, suggested,
};
use potside::quantity::{Locale, Voice};

fn said(events: &[BurnEvent], voice: Voice) -> Vec<(String, String, String)> {
    let all = sightings(&course(events).sessions[0], voice);
    all.into_iter().map(|Sighting { when, said, note }| (when, said, note)).collect()
}

/// Each thing that can be typed of a burn is said, in its words and on its scale; what was not looked at is not.
#[test]
fn everything_that_was_seen_is_said() {
    let light = BurnEvent::Lit { at: MORNING, mass: read("400 g"), trimmed: false, throw: Some(1) };
    let all = Look {
        mass: Some(read("14 oz")),
        throw: Some(4),
        note: "Leans.".to_owned(),
        pool: Some(read("2.5 in")),
        hang_up: Some(Grade::Much),
        ..good(MORNING + 90 * MINUTE, 50.0)
    };
    let one = Look { at: MORNING + 150 * MINUTE, throw: Some(5), ..Look::default() };
    let none = Look { at: MORNING + 160 * MINUTE, note: "Moved it.".to_owned(), ..Look::default() };
    let looks = [all, one, none].map(|look| BurnEvent::Looked(Box::new(look)));
    let events = [&[light][..], &looks].concat();
    let want = |when: &str, said: &str, note: &str| (when.to_owned(), said.to_owned(), note.to_owned());
    assert_eq!(
        said(&events, Voice::default()),
        [
            want("Before the light", "Cold throw 1 of 5, none. The wick was not trimmed.", ""),
            want(
                "After 90 min",
                "Pool across 2.5 in; pool deep 8 mm; flame 30 mm; vessel outside 48 °C; weight 14 oz; soot none; mushroom on the \
                 wick a little; wax left on the wall much; hot throw 4 of 5, fills the room.",
                "Leans."
            ),
            want("After 2 h 30 min", "Hot throw 5 of 5, too strong.", ""),
            want("After 2 h 40 min", "", "Moved it."),
        ]
    );
    let comma = Voice { locale: Locale::Comma, ..Voice::default() };
    assert!(said(&events, comma)[1].1.starts_with("Pool across 2,5 in;"));
    assert_eq!(said(&[lit(MORNING, 400.0), out(MORNING + MINUTE, 399.0)], Voice::default()), []);
    // From another device there may come anything.
    let odd = BurnEvent::Looked(Box::new(Look { at: MORNING, throw: Some(0), ..Look::default() }));
    assert_eq!(said(&[lit(MORNING, 400.0), odd], Voice::default())[0].1, "Hot throw 0 of 5.");
    for words in ["1 none", "3 clear close by", "5 too strong", "two steps away", "a little"] {
        assert!(scales().contains(words), "{words}");
    }
}

/// What passes by the usual limits fails by the user's own, each by itself, and the other way round.
#[test]
fn limits_of_ones_own_decide() {
    let seen = Look {
        outside: Some(read("55 °C")),
        soot: Some(Grade::Little),
        ..good(MORNING + 200 * MINUTE, 69.0)
    };
    let seen = Look { hang_up: Some(Grade::Little), ..seen };
    let events = [lit(MORNING, 400.0), BurnEvent::Looked(Box::new(seen)), out(MORNING + 240 * MINUTE, 230.0)];
    let held = |limits: &Limits| {
        let found = judge(&trial("A1", "C 10"), &course(&events), limits, Voice::default());
        let broken = found.iter().filter(|f| matches!(f.outcome, Outcome::Broken(_)));
        let broken: Vec<_> = broken.map(|f| [f.what, ": ", &f.seen, ", ", &f.limit].concat()).collect();
        (broken.join("; "), suggested(&found))
    };
    let usual = Limits::default();
    assert_eq!(held(&usual), (String::new(), Some(Verdict::Passed)));
    type Change = fn(&mut Limits);
    let own: [(Change, &str, Verdict); 7] = [
        (|l| l.flame = read("29 mm"), "Flame height: 30.0 mm, at most 29.0 mm", Verdict::Large),
        (|l| l.depth = read("7 mm"), "Depth of the melt pool: 8.0 mm, at most 7.0 mm", Verdict::Large),
        (|l| l.outside = read("54 °C"), "Vessel outside: 55.0 °C, at most 54.0 °C", Verdict::Large),
        (|l| l.soot = Grade::None, "Soot: a little, at most none", Verdict::Large),
        (|l| l.mushroom = Grade::None, "Mushrooming: a little, at most none", Verdict::Large),
        (|l| l.hang_up = Grade::None, "Wax left on the wall: a little, at most none", Verdict::Small),
        (|l| l.full = 180, "Full melt pool: only after 3 h 20 min, within 3 h 0 min", Verdict::Small),
    ];
    for (change, said, verdict) in own {
        let mut limits = usual.clone();
        change(&mut limits);
        assert_eq!(held(&limits), (said.to_owned(), Some(verdict)));
    }
    // Hotter, and more put up with, than is usual.
    let hot =
        Look { outside: Some(read("66 °C")), soot: Some(Grade::Much), ..good(MORNING + 200 * MINUTE, 69.0) };
    let events = [lit(MORNING, 400.0), BurnEvent::Looked(Box::new(hot)), out(MORNING + 240 * MINUTE, 230.0)];
    let found =
        |limits: &Limits| suggested(&judge(&trial("A1", "C 10"), &course(&events), limits, Voice::default()));
    assert_eq!(found(&usual), Some(Verdict::Large));
    let own = Limits { outside: read("70 °C"), soot: Grade::Much, ..usual };
    assert_eq!(found(&own), Some(Verdict::Passed));
}
