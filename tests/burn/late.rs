//! A burn that is written down when it is over, and weights that cannot be meant.

use super::candle::{MINUTE, MORNING, good, lit, out, read, trial};
use potside::bench::burn::{BurnEvent, course, lost, missed, shots, trend};
use potside::quantity::{Mass, Voice};
use std::slice::from_ref;

const HOUR: u64 = 60 * MINUTE;

fn weighed(grams: &str) -> BurnEvent {
    BurnEvent::Weighed { mass: read(grams), lit: None }
}

/// The burn of the second day, written down after that of the third: as if it had been written when it was.
#[test]
fn a_burn_written_down_late_stands_where_it_was() {
    let of = trial("A1", "C 10");
    let burn = |day: u64, before: f64, after: f64| {
        let at = MORNING + day * 24 * HOUR;
        [lit(at, before), BurnEvent::Looked(Box::new(good(at + HOUR, 50.0))), out(at + 2 * HOUR, after)]
    };
    let (one, two, three) = (burn(0, 400.0, 388.0), burn(1, 388.0, 377.0), burn(2, 377.0, 366.5));
    let in_time = course([&one[..], &two, &three].concat().iter());
    let late = course([&one[..], &three, &two].concat().iter());
    assert_eq!(late, in_time);
    assert_eq!(late.sessions.len(), 3);
    assert_eq!(trend(&of, &late), trend(&of, &in_time));
    // What is weighed afterwards is the candle after its last burn, not after the one written last.
    let open = [
        lit(MORNING + 72 * HOUR, 366.5),
        BurnEvent::Out { at: MORNING + 74 * HOUR, mass: None, itself: false },
    ];
    let events = [&one[..], &three, &open, &two, &[weighed("355 g")]].concat();
    let found = course(events.iter());
    let after: Vec<f64> = found.sessions.iter().filter_map(|s| Some(s.after?.in_base().to_f64())).collect();
    assert_eq!(after, [388.0, 377.0, 366.5, 355.0]);
}

/// Written down in one it is the same as step by step, whatever the order of its looks; the same burn written down twice
/// counts once. Its weight, and that of any burn before the last, is written down or put right later.
#[test]
fn a_burn_written_down_in_one() {
    let day = 24 * HOUR;
    let look = |minutes: u64, pool: f64| good(MORNING + day + minutes * MINUTE, pool);
    let end = BurnEvent::Out { at: MORNING + day + 2 * HOUR, mass: None, itself: false };
    let whole = missed(lit(MORNING + day, 388.0), vec![look(110, 60.0), look(50, 45.0)], end);
    let first = [lit(MORNING, 400.0), out(MORNING + 2 * HOUR, 388.0)];
    let third = [lit(MORNING + 2 * day, 377.0), out(MORNING + 2 * day + 2 * HOUR, 366.0)];
    let at = |grams: &str, lit| BurnEvent::Weighed { mass: read(grams), lit };
    let steps = [
        lit(MORNING + day, 388.0),
        BurnEvent::Looked(Box::new(look(50, 45.0))),
        BurnEvent::Looked(Box::new(look(110, 60.0))),
        out(MORNING + day + 2 * HOUR, 377.0),
    ];
    let second = Some(MORNING + day);
    let in_steps = course([&first[..], &steps, &third].concat().iter());
    for more in [
        vec![whole.clone(), at("377 g", second)],
        vec![whole.clone(), at("370 g", second), at("377 g", second), at("1 g", Some(MORNING + 5))],
        vec![whole.clone(), at("377 g", second), whole.clone()],
    ] {
        assert_eq!(course([&first[..], &third, &more].concat().iter()), in_steps);
    }
    // While it burns again, too: the burn that is on is not touched.
    let on = [&first[..], &[whole, lit(MORNING + 3 * day, 366.0), at("377 g", second)]].concat();
    let found = course(on.iter());
    assert_eq!(found.sessions[1].after, Some(read::<Mass>("377 g").value));
    assert_eq!(found.burning().map(|s| (s.lit, s.after)), Some((MORNING + 3 * day, None)));
    assert!(found.missed(MORNING + day, MORNING + day + HOUR, MORNING + 5 * day).is_err());
}

/// It is written down on one device while the candle burns on another: each end goes with its own light.
#[test]
fn an_earlier_burn_does_not_put_out_one_that_is_on() {
    let now = lit(MORNING + 24 * HOUR, 390.0);
    let before = [lit(MORNING, 400.0), out(MORNING + 2 * HOUR, 390.0)];
    for events in [
        [&before[..], from_ref(&now)].concat(),
        [from_ref(&now), &before[..]].concat(),
        [&before[..1], from_ref(&now), &before[1..]].concat(),
    ] {
        let mut found = course(events.iter());
        // Where the light of now stands between, it is taken for a second tap: the earlier burn is whole all the same.
        let first = found.sessions.remove(0);
        assert_eq!(first.out, Some((MORNING + 2 * HOUR, false)));
        assert_eq!(first.after, Some(read::<Mass>("390 g").value));
        if let Some(on) = found.burning() {
            assert_eq!((on.lit, found.sessions.len()), (MORNING + 24 * HOUR, 1));
        } else {
            assert_eq!(events[1], now);
        }
    }
    // A second tap for the same light, on a clock a minute behind, is none; the candle can be lit again after.
    let twice = [now.clone(), lit(MORNING + 24 * HOUR - MINUTE, 390.0), out(MORNING + 26 * HOUR, 380.0)];
    let found = course(twice.iter());
    assert_eq!((found.sessions.len(), found.burning()), (1, None));
    let again = [&twice[..], &[weighed("380.5 g"), lit(MORNING + 30 * HOUR, 380.0)]].concat();
    let found = course(again.iter());
    assert_eq!((found.sessions.len(), found.burning().map(|s| s.lit)), (2, Some(MORNING + 30 * HOUR)));
    assert_eq!(found.sessions[0].after, Some(read::<Mass>("380.5 g").value));
}

#[test]
fn a_photo_is_of_the_burn_it_was_taken_in() {
    let photo = |at| BurnEvent::Pictured { at, photo: "p".to_owned() };
    let second =
        [lit(MORNING + 24 * HOUR, 390.0), photo(MORNING + 25 * HOUR), out(MORNING + 26 * HOUR, 380.0)];
    let first = [lit(MORNING, 400.0), out(MORNING + 2 * HOUR, 390.0)];
    let events = [&second[..], &[photo(MORNING + 27 * HOUR)], &first].concat();
    let said: Vec<String> = shots(events.iter().map(|e| ((), e))).into_iter().map(|(_, s)| s.said).collect();
    assert_eq!(said, ["Burn 2, after 60 min", "After burn 2"]);
}

#[test]
fn a_time_that_cannot_be_is_refused() {
    let known =
        course(&[lit(MORNING, 400.0), out(MORNING + 2 * HOUR, 390.0), lit(MORNING + 10 * HOUR, 390.0)]);
    let now = MORNING + 100 * HOUR;
    let why = |lit: u64, out: u64| known.missed(MORNING + lit * MINUTE, MORNING + out * MINUTE, now).err();
    assert_eq!(why(120, 600), None);
    assert!(why(300, 300).is_some_and(|w| w.starts_with("It ended before")));
    assert!(why(119, 200).is_some_and(|w| w.starts_with("Another burn")));
    assert!(why(500, 601).is_some_and(|w| w.starts_with("Another burn")));
    // The one that is on has no end yet.
    assert!(why(3000, 3100).is_some_and(|w| w.starts_with("Another burn")));
    let none = course(&[]);
    assert_eq!(none.missed(now - 48 * HOUR, now, now), Ok(()));
    assert!(none.missed(now - 48 * HOUR - 1, now, now).is_err_and(|w| w.contains("two days")));
    assert!(none.missed(now - HOUR, now + 1, now).is_err_and(|w| w.contains("still to come")));
}

/// A jar of 400 g with 180 g of wax in it shows from 220 g to 400 g, give or take 5 g.
#[test]
fn a_weight_of_another_candle_is_refused() {
    let (of, voice) = (trial("A1", "C 10"), Voice::default());
    for fine in ["405 g", "215 g", "14 oz"] {
        assert_eq!(of.shows(read(fine), voice), Ok(()), "{fine}");
    }
    assert!(
        of.shows(read("405.1 g"), voice).is_err_and(|w| w.contains("405.1 g is more than the whole candle"))
    );
    assert!(of.shows(read("39.5 g"), voice).is_err_and(|w| w.contains("there was 180 g")));
    assert!(of.shows(read("214.9 g"), voice).is_err());
    // A pool of a jar of 70 mm, read a tenth too wide at the most.
    assert_eq!((of.holds(read("77 mm"), voice), of.holds(read("2.75 in"), voice)), (Ok(()), Ok(())));
    let wide = of.holds(read("700 mm"), voice).unwrap_err();
    assert_eq!(
        wide,
        "700 mm is wider than the vessel inside, 70 mm. Measure it again, or put the candle right."
    );
    assert!(of.holds(read("77.1 mm"), voice).is_err());
    let before = read::<Mass>("390 g").value;
    assert_eq!(lost(before, read("395 g"), voice), Ok(()));
    assert!(
        lost(before, read("395.1 g"), voice).is_err_and(|w| w.contains("more than before the burn, 390.0 g"))
    );
}
