//! A candle burned to its end, one that goes out before it, and one whose end nobody saw yet. The jar of 180 g weighs 400 g
//! full and 220 g empty; at its end it has no more than a tenth of its wax, 18 g: it weighs 238 g or less (our own choice).

use super::candle::{MINUTE, MORNING, good, lit, out, read, trial};
use potside::bench::burn::{
    BurnEvent, Finding, Limits, Look, Outcome, Trial, Verdict, course, judge, suggested, suggestion,
};
use potside::quantity::Voice;

fn found(of: &Trial, events: &[BurnEvent]) -> (Vec<Finding>, String) {
    let course = course(events);
    let found = judge(of, &course, &Limits::default(), Voice::default());
    let said = suggestion(of, &course, &found, Voice::default());
    (found, said)
}

fn row<'a>(found: &'a [Finding], what: &str) -> (Outcome, &'a str) {
    let row = found.iter().find(|f| f.what == what).unwrap();
    (row.outcome, &row.seen)
}

/// It burned at so many grams and went out by itself; weighed or not after it.
fn alone(day: u64, before: f64, after: Option<&str>) -> [BurnEvent; 3] {
    let at = MORNING + day * 1440 * MINUTE;
    let look = BurnEvent::Looked(Box::new(good(at + 200 * MINUTE, 69.0)));
    let gone = BurnEvent::Out { at: at + 240 * MINUTE, mass: after.map(read), itself: true };
    [lit(at, before), look, gone]
}

#[test]
fn a_candle_that_goes_out_for_want_of_wax_asks_for_no_larger_wick() {
    let of = trial("A1", "C 10");
    let (spent, said) = found(&of, &alone(0, 240.0, Some("222 g")));
    assert_eq!(row(&spent, "Stays alight"), (Outcome::Kept, "until its wax was spent"));
    assert_eq!(row(&spent, "Burned to its end"), (Outcome::Kept, "1 % of its wax left"));
    assert_eq!(suggested(&spent), Some(Verdict::Passed));
    assert_eq!(said, "By your limits: passed. You decide.");
    // At the tenth, and just above it.
    let verdict = |after: &str| suggested(&found(&of, &alone(0, 260.0, Some(after))).0);
    assert_eq!(verdict("238 g"), Some(Verdict::Passed));
    assert_eq!(verdict("238.1 g"), Some(Verdict::Small));
    // As rounded it would be the limit, and yet not kept.
    let above = found(&of, &alone(0, 260.0, Some("238.1 g"))).0;
    assert_eq!(
        row(&above, "Burned to its end"),
        (Outcome::NotYet, "a little more than 10 % of its wax left")
    );
    // Out early once, and at its end later: the wick is too small all the same.
    let twice = [alone(0, 400.0, Some("380 g")), alone(1, 380.0, Some("222 g"))].concat();
    let (both, _) = found(&of, &twice);
    assert_eq!(row(&both, "Stays alight").1, "went out by itself in 1 of 2 burns, with wax left");
    assert_eq!(suggested(&both), Some(Verdict::Small));
}

/// Neither too small nor passed.
#[test]
fn where_the_wax_left_is_not_known_going_out_tells_nothing() {
    let weigh = "went out by itself; weigh it, to tell whether its wax was spent";
    let check = |of: &Trial, events: &[BurnEvent], told: &str| {
        let (found, said) = found(of, events);
        assert_eq!(row(&found, "Stays alight"), (Outcome::NotYet, told));
        assert_eq!((suggested(&found), said.as_str()), (None, "Your limits do not decide it yet. You may."));
    };
    let of = trial("A1", "C 10");
    check(&of, &alone(0, 400.0, None), weigh);
    // No fill; and weights that are not those of a candle with this fill: to weigh it once more tells nothing.
    let odd =
        "went out by itself; its weights do not fit its wax, so it cannot be told whether that was spent";
    check(&Trial { fill: read("0 g"), ..of.clone() }, &alone(0, 400.0, Some("222 g")), odd);
    check(&of, &alone(0, 400.0, Some("200 g")), odd);
    check(&of, &alone(0, 400.0, Some("420 g")), odd);
    // Known by the light of the next burn, or by having been at its end at its own.
    let next = [&alone(0, 400.0, None)[..], &[lit(MORNING + 1440 * MINUTE, 390.0)]].concat();
    assert_eq!(suggested(&found(&of, &next).0), Some(Verdict::Small));
    let last = found(&of, &alone(0, 230.0, None)).0;
    assert_eq!(row(&last, "Stays alight"), (Outcome::Kept, "until its wax was spent"));
    // Or by its weight when it was looked at last: it can only have lost more since.
    let [light, look, gone] = alone(0, 260.0, None);
    let BurnEvent::Looked(look) = look else { panic!("it is a look") };
    let weighed = BurnEvent::Looked(Box::new(Look { mass: Some(read("230 g")), ..*look }));
    let seen = found(&of, &[light, weighed, gone]).0;
    assert_eq!(row(&seen, "Burned to its end").0, Outcome::Kept);
    assert_eq!(row(&seen, "Stays alight"), (Outcome::Kept, "until its wax was spent"));
}

/// By hand: 20 g in one burn leave 160 g, of which 142 g to the tenth: 7.1 burns more, so 8. After 140 g in seven burns 22 g
/// more are one burn and a bit: 2.
#[test]
fn one_good_burn_is_no_pass() {
    let of = trial("A1", "C 10");
    let burns = |days: u64| -> Vec<BurnEvent> {
        let burn = |day: u64| {
            let (at, mass) = (MORNING + day * 1440 * MINUTE, 400.0 - 20.0 * day as f64);
            let look = BurnEvent::Looked(Box::new(good(at + 200 * MINUTE, 69.0)));
            [lit(at, mass), look, out(at + 240 * MINUTE, mass - 20.0)]
        };
        (0..days).flat_map(burn).collect()
    };
    let after = |days: u64| {
        let (found, said) = found(&of, &burns(days));
        (suggested(&found), said)
    };
    let (none, said) = after(1);
    assert_eq!(none, None);
    assert_eq!(
        said,
        "So far so good: about 8 more burns to its end. It counts as passed only once its wax is spent: a wick that is \
         right at the top may not be so near the bottom. You may decide sooner."
    );
    let (none, said) = after(7);
    assert!(none.is_none() && said.starts_with("So far so good: about 2 more burns to its end."), "{said}");
    let (none, said) = after(8);
    assert!(none.is_none() && said.starts_with("So far so good: about 1 more burn to its end."), "{said}");
    assert_eq!(after(9), (Some(Verdict::Passed), "By your limits: passed. You decide.".to_owned()));
    // Wrong is wrong before the end; and what was not looked at is not good so far.
    let mut large = burns(1);
    large.insert(
        2,
        BurnEvent::Looked(Box::new(Look {
            flame: Some(read("90 mm")),
            ..good(MORNING + 210 * MINUTE, 69.0)
        })),
    );
    assert_eq!(suggested(&found(&of, &large).0), Some(Verdict::Large));
    let unseen = [lit(MORNING, 400.0), out(MORNING + 240 * MINUTE, 380.0)];
    assert_eq!(found(&of, &unseen).1, "Your limits do not decide it yet. You may.");
    let (none, _) = found(&of, &[]);
    assert_eq!(row(&none, "Burned to its end"), (Outcome::NotSeen, ""));
}
