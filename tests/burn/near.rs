//! Which trials of other candles a guess leans on, and how much.

use super::candle::{MINUTE, MORNING, lit, out, read, trial};
use super::kept::{at, does, id, series};
use potside::bench::burn::{Advice, BurnEvent, Heavy, Near, Place, Trial, Tried, Verdict, advise};
use potside::book::{Act, Journal};
use potside::quantity::Voice;

fn near(asked: &Trial, tried: &Trial) -> (f64, f64) {
    let Near { worth, away } = Near::of(asked, tried, false);
    (worth, away)
}

/// By hand, from the widths that the module chose: another candle is worth half; another wax halves it once more, and so do
/// four percent of the wax between the shares. To say which is nearest, another fragrance counts half a step, and 10 mm of
/// width or a step of weight a whole one.
#[test]
fn what_a_trial_of_another_candle_is_worth() {
    let here = trial("x", "C 10");
    let with = |change: fn(&mut Trial)| {
        let mut other = here.clone();
        change(&mut other);
        near(&here, &other)
    };
    assert_eq!(Near::of(&here, &here, true), Near { worth: 1.0, away: 0.0 });
    assert_eq!(with(|t| t.wax = " plain WAX ".into()), (0.5, 0.0));
    assert_eq!(with(|t| t.wax = "Other".into()), (0.25, 1.0));
    assert_eq!(with(|t| t.fragrance = "Quince".into()), (0.5, 0.5));
    assert_eq!(with(|t| t.load = Some(read("12 %"))), (0.25, 1.0));
    assert_eq!(with(|t| t.load = Some(read("0 %"))), (0.125, 2.0));
    assert_eq!(with(|t| t.load = None), (0.25, 1.0));
    assert_eq!(with(|t| t.diameter = read("85 mm")), (0.5, 1.5));
    assert_eq!(with(|t| t.heavy = Heavy::Light), (0.5, 1.0));
    assert_eq!(with(|t| t.fragrance = String::new()), (0.5, 2.5));
    let plain = Trial { load: None, ..here.clone() };
    assert_eq!(near(&plain, &plain).0, 0.5);
}

/// A book with these candles, each burned once, to what weight, and what came of it.
fn book(all: &[(Trial, f64, Verdict)]) -> Journal {
    let mut j = Journal::open(vec![], "tablet");
    does(&mut j, Act::Wicks { id: id("w"), over: None, body: series() });
    for (trial, last, verdict) in all {
        does(&mut j, Act::Trial { id: id(&trial.name), over: None, body: Box::new(trial.clone()) });
        let closed = BurnEvent::Closed { verdict: *verdict, note: String::new() };
        for event in [lit(MORNING, 400.0), out(MORNING + 60 * MINUTE, *last), closed] {
            does(&mut j, at(&trial.name, event));
        }
    }
    j
}

fn advice(all: &[(Trial, f64, Verdict)], asked: &Trial) -> Advice {
    book(all).state().next_wick(asked, Voice::default()).unwrap().1
}

/// How wide and heavy the candles of a series were goes into the advice, and what they are worth; one without a fragrance is
/// lighter than any.
#[test]
fn wicks_of_other_candles_tell_by_their_width_and_weight() {
    let from = |asked: (f64, f64), tried: (f64, f64), same: bool| {
        let place = |(across, weight)| Place { across, weight };
        let worth = if same { 1.0 } else { 0.5 };
        let tried = Tried { size: 1, place: place(tried), same, worth, verdict: Verdict::Small };
        advise(4, place(asked), &[tried]).unwrap().chances
    };
    let here = Trial { heavy: Heavy::Light, ..trial("x", "C 10") };
    let wide = |fragrance: &str, heavy: Heavy| Trial {
        diameter: read("85 mm"),
        fragrance: fragrance.to_owned(),
        heavy,
        ..trial("O1", "C 10")
    };
    let advice = |tried: Trial, asked: &Trial| advice(&[(tried, 395.0, Verdict::Small)], asked).chances;
    let light = (70.0, -1.0);
    assert_eq!(advice(wide("Apple", Heavy::Heavy), &here), from(light, (85.0, 1.0), true));
    assert_eq!(advice(wide("Quince", Heavy::Middle), &here), from(light, (85.0, 0.0), false));
    assert_eq!(advice(wide("", Heavy::Heavy), &here), from(light, (85.0, -2.0), false));
    assert_eq!(advice(here, &wide("", Heavy::Heavy)), from((85.0, -2.0), light, false));
}

/// The nearest is named, with what makes it near; one that failed for another reason is not leaned on.
#[test]
fn the_guess_says_which_trial_is_nearest() {
    let far = Trial { fragrance: "Quince".into(), diameter: read("95 mm"), ..trial("Q1", "C 14") };
    let close = Trial { fragrance: "Pear".into(), diameter: read("2 7/8 in"), ..trial("P1", "C 12") };
    let other = Trial { fragrance: "Plum".into(), ..trial("O1", "C 8") };
    let all = [
        (far.clone(), 395.0, Verdict::Passed),
        (close, 395.0, Verdict::Passed),
        (other, 395.0, Verdict::Other),
    ];
    let asked = trial("x", "");
    let found = advice(&all, &asked);
    assert_eq!(found.lent, 2);
    let journal = book(&all);
    let (series, advice) = journal.state().next_wick(&asked, Voice::default()).unwrap();
    let said = advice.say(series, Voice::default());
    let leans = "It leans on 2 trials of other candles: the less alike, the less it counts. Nearest: P1, Pear at 8 % in the \
                 2.875 in vessel Straight jar, C 12: passed.";
    assert!(said.iter().any(|s| s == leans), "{said:?}");
    let journal = book(&[(Trial { fragrance: String::new(), load: None, ..far }, 395.0, Verdict::Small)]);
    let (series, advice) = journal.state().next_wick(&asked, Voice::default()).unwrap();
    let said = advice.say(series, Voice::default());
    let leans = "It leans on 1 trial of another candle: the less alike, the less it counts. Nearest: Q1, no fragrance in the \
                 95 mm vessel Straight jar, C 14: wick too small.";
    assert!(said.iter().any(|s| s == leans), "{said:?}");
}

/// Burns of the candles that passed with the size advised are counted, and those that were burned to their end: the jar weighs
/// 220 g without its wax, and 238 g are a tenth of it.
#[test]
fn what_passed_is_counted_in_burns() {
    let passed = |name: &str, last: f64| (trial(name, "C 12"), last, Verdict::Passed);
    let j = book(&[passed("C1", 395.0), passed("C2", 238.0), passed("C3", 239.0)]);
    let (series, advice) = j.state().next_wick(&trial("x", "C 8"), Voice::default()).unwrap();
    assert_eq!((advice.passed, advice.passed_burns, advice.burned_down), (3, 3, 1));
    assert!(
        advice.say(series, Voice::default())[0]
            .starts_with("C 12: passed by you in 3 candles, on 3 burns; 1 of them")
    );
}
