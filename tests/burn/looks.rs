//! What is seen of a burn: the pool, limits kept or not, reminders, and the picture of wicks.

use super::candle::{MINUTE, MORNING, good, lit, out, read, trial};
use super::tells::{each, near};
use potside::bench::burn::{
    BurnEvent, Full, Grade, Limits, Look, Outcome, Verdict, course, judge, last_full, pool, reminders,
    suggested, usual_full, wicks_picture,
};
use potside::pot::HIGH;
use potside::quantity::Voice;

/// 30 mm after 30 min and 42.43 mm after an hour grow with the root of time: 67.9 mm (97 % of 70) after 2 h 34 min, by hand
/// (67.9 ÷ 30)² × 30 min = 153.7 min.
#[test]
fn a_pool_is_foretold_and_reached() {
    let of = trial("A1", "C 10");
    let look =
        |minutes: u64, across: f64| BurnEvent::Looked(Box::new(good(MORNING + minutes * MINUTE, across)));
    let full = |looks: &[BurnEvent]| {
        let events: Vec<BurnEvent> = [lit(MORNING, 400.0)].iter().chain(looks).cloned().collect();
        pool(&of, &course(&events).sessions[0]).full
    };
    assert_eq!(full(&[look(30, 30.0)]), Full::NotTold);
    let Full::Foretold { at } = full(&[look(30, 30.0), look(60, 42.4264)]) else { panic!("it is foretold") };
    near(at / 60.0, 153.7, 1e-3, "minutes");
    assert_eq!(full(&[look(60, 40.0), look(120, 40.5)]), Full::Never);
    assert_eq!(full(&[look(60, 50.0), look(120, 69.0)]), Full::Reached { after: 3600.0, by: 7200.0 });
    assert_eq!(full(&[look(60, 50.0), look(120, 69.0)]).say(), "Full pool between 60 min and 2 h 0 min.");
    near(usual_full(&of), 70.0 / 25.4 * 3600.0, 1e-12, "an hour an inch");
}

/// A burn with one look that tells nothing leaves what the burn before it told.
#[test]
fn the_latest_burn_that_tells_of_a_full_pool_counts() {
    let of = trial("A1", "C 10");
    let look =
        |minutes: u64, across: f64| BurnEvent::Looked(Box::new(good(MORNING + minutes * MINUTE, across)));
    let last = |events: &[BurnEvent]| last_full(&of, &course(events));
    let first = [lit(MORNING, 400.0), look(60, 50.0), look(120, 69.0), out(MORNING + 130 * MINUTE, 390.0)];
    let second = [lit(MORNING + 1000 * MINUTE, 390.0), look(1060, 50.0), out(MORNING + 1100 * MINUTE, 385.0)];
    let told = Some(Full::Reached { after: 3600.0, by: 7200.0 });
    assert_eq!((last(&first), last(&[&first[..], &second].concat())), (told, told));
    assert_eq!((last(&second), last(&[])), (Some(Full::NotTold), None));
}

fn seen(look: Look) -> (Vec<Outcome>, Option<Verdict>) {
    let events = [lit(MORNING, 400.0), BurnEvent::Looked(Box::new(look)), out(MORNING + 240 * MINUTE, 230.0)];
    let found = judge(&trial("A1", "C 10"), &course(&events), &Limits::default(), Voice::default());
    (found.iter().map(|f| f.outcome).collect(), suggested(&found))
}

/// Each limit by itself, at the limit and just past it.
#[test]
fn limits_are_kept_or_not() {
    let at = MORNING + 200 * MINUTE;
    let all = good(at, 69.0);
    assert_eq!(seen(all.clone()), (vec![Outcome::Kept; 9], Some(Verdict::Passed)));
    type Change = fn(&mut Look);
    let cases: [(usize, Change, Change, Verdict); 7] = [
        (0, |l| l.flame = Some(read("75 mm")), |l| l.flame = Some(read("75.1 mm")), Verdict::Large),
        (1, |l| l.depth = Some(read("0.5 in")), |l| l.depth = Some(read("13 mm")), Verdict::Large),
        (2, |l| l.outside = Some(read("60 °C")), |l| l.outside = Some(read("141 °F")), Verdict::Large),
        (3, |l| l.soot = Some(Grade::Little), |l| l.soot = Some(Grade::Much), Verdict::Large),
        (4, |l| l.mushroom = Some(Grade::Little), |l| l.mushroom = Some(Grade::Much), Verdict::Large),
        (5, |l| l.hang_up = Some(Grade::Little), |l| l.hang_up = Some(Grade::Much), Verdict::Small),
        (
            6,
            |l| l.pool = Some(read("68 mm")),
            |l| (l.pool, l.at) = (Some(read("60 mm")), MORNING + 240 * MINUTE),
            Verdict::Small,
        ),
    ];
    for (place, just, past, verdict) in cases {
        let mut look = all.clone();
        just(&mut look);
        assert_eq!(seen(look.clone()), (vec![Outcome::Kept; 9], Some(Verdict::Passed)), "{place}");
        past(&mut look);
        let (outcomes, suggested) = seen(look);
        assert_eq!((outcomes[place], suggested), (Outcome::Broken(verdict), Some(verdict)), "{place}");
        assert_eq!(outcomes.iter().filter(|o| **o == Outcome::Kept).count(), 8, "{place}");
    }
    assert_eq!(seen(Look { soot: None, ..all.clone() }).1, None);
    assert_eq!(seen(Look { soot: Some(Grade::Much), hang_up: Some(Grade::Much), ..all }).1, None);
}

#[test]
fn one_that_goes_out_by_itself_has_too_small_a_wick() {
    let events = [
        lit(MORNING, 400.0),
        BurnEvent::Out { at: MORNING + 20 * MINUTE, mass: Some(read("398 g")), itself: true },
    ];
    let found = judge(&trial("A1", "C 10"), &course(&events), &Limits::default(), Voice::default());
    assert_eq!(suggested(&found), Some(Verdict::Small));
    assert_eq!(
        (found[7].what, found[7].seen.as_str()),
        ("Stays alight", "went out by itself in 1 of 1 burns, with wax left")
    );
    let said = |events: &[BurnEvent]| {
        let found = judge(&trial("A1", "C 10"), &course(events), &Limits::default(), Voice::default());
        (found[7].outcome, found[7].seen.clone())
    };
    let once = [lit(MORNING, 400.0), out(MORNING + 240 * MINUTE, 380.0)];
    let twice =
        [once.clone(), [lit(MORNING + 600 * MINUTE, 380.0), out(MORNING + 840 * MINUTE, 360.0)]].concat();
    assert_eq!(said(&[]), (Outcome::NotSeen, String::new()));
    assert_eq!(said(&once), (Outcome::Kept, "in its one burn".to_owned()));
    assert_eq!(said(&twice), (Outcome::Kept, "in all 2 burns".to_owned()));
}

/// A jar of 70 mm is due after 2 h 45 min; a burn ends after 4 h and is told a quarter of an hour before; an hour's rest.
#[test]
fn reminders_come_in_time() {
    let of = trial("A1", "C 10");
    let due = |events: &[BurnEvent], minutes: u64| -> Vec<(u64, bool)> {
        let all = reminders(&of, &course(events), &Limits::default(), MORNING + minutes * MINUTE);
        all.iter().map(|r| ((r.at - MORNING) / MINUTE, r.due)).collect()
    };
    let burning = [lit(MORNING, 400.0)];
    assert_eq!(due(&burning, 10), [(165, false), (225, false)]);
    assert_eq!(due(&burning, 230), [(165, true), (225, true)]);
    assert_eq!(due(&burning, 240), [(165, true), (240, true)]);
    let full = [lit(MORNING, 400.0), BurnEvent::Looked(Box::new(good(MORNING + 90 * MINUTE, 69.0)))];
    assert_eq!(due(&full, 100), [(225, false)]);
    let rests = [lit(MORNING, 400.0), out(MORNING + 240 * MINUTE, 380.0)];
    assert_eq!(due(&rests, 250), [(300, false)]);
    assert_eq!(due(&rests, 300), [(300, true)]);
    assert!(due(&[], 0).is_empty());
    // Of one that is judged nothing more is asked.
    let closed = BurnEvent::Closed { verdict: Verdict::Passed, note: String::new() };
    assert!(due(&[rests[0].clone(), rests[1].clone(), closed], 300).is_empty());
}

/// Words stand clear of the dots and bars of every wick, and all is within the picture, whatever the number of wicks.
#[test]
fn the_picture_of_wicks_keeps_its_words_apart() {
    let sets: Vec<_> = ["C 8", "C 10", "C 12", "C 14", "C 16", "C 18"].into_iter().zip(2..).collect();
    let candles: Vec<_> = sets.iter().map(|(_, n)| each(&vec![f64::from(*n) * 2.0; *n as usize])).collect();
    for number in 2..=sets.len() {
        let of = |k: usize| (sets[k].0, candles[k].iter().map(|(t, c)| (t, c)).collect::<Vec<_>>());
        let chart = wicks_picture(&(0..number).map(of).collect::<Vec<_>>(), Voice::default()).unwrap();
        let shown = number.min(5);
        assert_eq!(chart.dots.len(), shown);
        let words: Vec<_> = chart.words.iter().filter(|w| w.text.contains("candles")).collect();
        assert_eq!(words.len(), shown);
        assert_eq!(words[0].text, "C 8, 2.00 g an hour, 2 candles");
        for (place, (dot, words)) in chart.dots.iter().zip(&words).enumerate() {
            // A dot is 5 to each side, a line of words as high as 21 on a phone.
            assert!(words.y + 5 < dot.1 - 5 && words.y >= 16, "{number}: {dot:?} {words:?}");
            let before = if place == 0 { 0 } else { chart.dots[place - 1].1 + 5 };
            assert!(words.y - 16 >= before && dot.1 + 5 <= HIGH - 16, "{number}: {dot:?} {words:?}");
        }
    }
}
