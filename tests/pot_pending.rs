//! Too much of a part: when it is asked about, and what is to be read about each way.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{FIG, SOY, did, go_on};
use common::{Workshop, g, line, read};
use potside::pot::{Dose, Event, Note, Pending, Run, StepKey, Target, Way};
use potside::quantity::{Amount, Exact, Mass, ShareUnit, Voice};

const ADD_FIG: StepKey = StepKey::Add { pour: 0, line: FIG };
const RED: StepKey = StepKey::Add { pour: 0, line: 4 };

/// A run in which `step` was weighed at `weighed`, of what it asks for; all before it as asked.
fn weighed(mut run: Run, step: StepKey, weighed: impl FnOnce(Mass) -> Mass) -> Run {
    go_on(&mut run, Some(step));
    let asked = run.now().unwrap().amount.unwrap();
    run.take(did(step, Some(weighed(asked)), 2000)).unwrap();
    run
}

/// The same where it is `num/den` of what it asks for, and what is said of it.
fn times(run: Run, num: i128, den: i128) -> Pending {
    weighed(run, ADD_FIG, |asked| asked.times(Exact::ratio(num, den))).pending(Voice::default()).unwrap()
}

fn texts(notes: &[Note]) -> Vec<&str> {
    notes.iter().map(|n| n.text.as_str()).collect()
}

#[test]
fn what_is_within_the_tolerance_or_one_division_is_not_asked_about() {
    let asks = |step, over: fn(Mass) -> Mass| {
        weighed(common::run::run(4), step, |asked| asked + over(asked)).pending(Voice::default()).is_some()
    };
    // 61 g on a scale of 0.01 g: two per cent, and a hundredth of a gram more.
    assert!(!asks(ADD_FIG, |asked| asked.times(Exact::ratio(2, 100))));
    assert!(asks(ADD_FIG, |asked| asked.times(Exact::ratio(2, 100)) + g(1, 100)));
    // Three drops of 21 mg: a fourth is a third too much, but there is no less than one.
    assert!(!asks(RED, |_| g(21, 1000)));
    assert!(asks(RED, |_| g(22, 1000)));
}

#[test]
fn before_the_melt_it_can_be_taken_out() {
    let soy = StepKey::Wax { pour: 0, line: SOY };
    let mut run = weighed(common::run::run(4), soy, |asked| asked.times(Exact::ratio(11, 10)));
    let said = "Nothing is melted yet: you can also take the excess out, undo this step and weigh it again.";
    let of = |run: &Run| run.overshoot(soy, Voice::default()).unwrap();
    assert_eq!(texts(&of(&run).keep_notes), [said]);
    run.take(did(StepKey::Melt { pour: 0 }, None, 2001)).unwrap();
    assert!(of(&run).keep_notes.is_empty());
}

#[test]
fn what_restoring_takes_is_said() {
    let notes = |num, den| times(common::run::run(8), num, den).restore_notes;
    // A fortieth of eight vessels fills none, an eighth one, a quarter two.
    assert_eq!(texts(&notes(41, 40)), ["It fills no vessel more: what is over stays in the pot."]);
    assert_eq!(texts(&notes(9, 8)), ["It fills one vessel more: have one ready, with its wick."]);
    assert_eq!(texts(&notes(5, 4)), ["It fills 2 vessels more: have them ready, with their wicks."]);
    // 1440 g of 1500 g: 1800 g are 300 g too much.
    let mut w = Workshop::new();
    w.pot.as_mut().unwrap().capacity = read("1500 g");
    let pending = times(Run::new(w.plan(Target::Vessels(8)).unwrap()), 5, 4);
    let over = pending.restored.unwrap().over_pot;
    assert!((over - g(300, 1)).in_base().abs() < Exact::ONE);
    let first = &pending.restore_notes[0];
    let said =
        format!("That is {} more than “Jug” holds. Do not add it all here", Voice::default().both(over));
    assert!(first.caution && first.text.starts_with(&said), "{}", first.text);
}

#[test]
fn a_load_above_the_highest_is_said() {
    let highest = |limit: Option<Exact>| {
        let mut plan = Workshop::new().plan(Target::Vessels(4)).unwrap();
        plan.pours[0].lines[FIG as usize].highest =
            limit.map(|share| Amount::new(share * Exact::whole(100), ShareUnit::Percent));
        times(Run::new(plan), 6, 5)
    };
    let free = highest(None);
    assert!(free.keep_notes.is_empty());
    let at = free.lines.iter().position(|l| l.name == "Fig leaf").unwrap();
    let of_wax = free.kept.of_wax[at].in_base();
    // 73.14 g in (720 − 60.95 − 5.99 − 0.19) ÷ 1.005 = 649.6 g of wax, and in 732.2 g of the whole.
    assert!((of_wax - Exact::ratio(7314, 64_960)).abs() < Exact::ratio(1, 1000));
    let said = &highest(Some(Exact::ratio(1, 10))).keep_notes;
    assert!(said[0].caution);
    assert_eq!(
        said[0].text,
        "“Fig leaf” would be 11.26 % of the wax (9.99 % of the whole), above its highest load of 10 %. Too much can weep, \
         smoke and burn too high."
    );
    // At it is not above it.
    assert!(highest(Some(of_wax)).keep_notes.is_empty());
}

/// A quarter too much of the fragrance is restored; of the first wax that is added for it, half as much again goes in.
#[test]
fn what_is_still_to_be_topped_up_counts_as_in() {
    let mut run = weighed(common::run::run(8), ADD_FIG, |asked| asked.times(Exact::ratio(5, 4)));
    run.take(Event::Mended { step: ADD_FIG, way: Way::Restore, at: 2001 }).unwrap();
    let coco = StepKey::TopUp { pour: 0, line: 0, round: 1 };
    let run = weighed(run, coco, |asked| asked.times(Exact::ratio(3, 2)));
    let kept = run.overshoot(coco, Voice::default()).unwrap().kept;
    // By hand: 5/4 of 1440 g, and an eighth of the wax that was planned.
    let planned = line(&run.plan, "Coco").dose.mass();
    let expected = g(1800, 1) + planned.times(Exact::ratio(1, 8));
    assert!((kept.total - expected).in_base().abs() < Exact::ONE, "{:?}", kept.total);
}

/// Drops and spoons are counted at the pot: so is too much of them, and what restoring takes.
#[test]
fn drops_and_spoons_are_typed_and_told_as_they_are_counted() {
    let voice = Voice::default();
    let run = common::run::run(8);
    let (red, hardener) = (line(&run.plan, "Red").dose.clone(), line(&run.plan, "Hardener").dose.clone());
    // Six drops of 21 mg for eight vessels.
    assert_eq!(red.tell(red.mass(), voice), "6 drops (0.13 g)");
    assert_eq!(red.read("7", voice), Ok(g(147, 1000)));
    assert_eq!(red.read("7 drops", voice), Ok(g(147, 1000)));
    assert_eq!(red.read("0.2 g", voice), Ok(g(2, 10)));
    // ¾ tbsp for four is 1½ tbsp for eight: 22.18 mL of 0.54 g/mL, 11.977 g.
    assert_eq!(red.asks(), ("How many drops went in", "14"));
    assert_eq!(hardener.asks(), ("How much went in", "1 1/2 tsp"));
    assert!(red.is_counted() && hardener.is_counted() && !line(&run.plan, "Coco").dose.is_counted());
    let tablespoon = hardener.mass().times(Exact::ratio(2, 3));
    assert_eq!(hardener.tell(hardener.mass(), voice), "1½ tbsp (12.0 g)");
    for text in ["1 tbsp", "3 tsp", "3"] {
        assert_eq!(hardener.read(text, voice), Ok(tablespoon), "{text}");
    }
    assert_eq!(hardener.read("8 g", voice), Ok(g(8, 1)));
    for (dose, text, sentence) in [
        (&red, "7.5", "“7.5” is not a whole number. Type one, like 8."),
        (&red, "0", "A number must be above zero. Type a larger number."),
        (&red, "1 tsp", "“1 tsp” is a volume, and a weight is wanted here. Use g, kg, oz or lb."),
        (&hardener, "6 drops", "“drops” in “6 drops” is not a unit of weight here. Use g, kg, oz or lb."),
        (&hardener, "", "No measure yet: type a number."),
    ] {
        assert_eq!(dose.read(text, voice).unwrap_err().to_string(), sentence);
    }
    let over = weighed(run, RED, |_| red.read("8", voice).unwrap()).pending(voice).unwrap();
    assert_eq!(over.said, ["6 drops (0.13 g)", "8 drops (0.17 g)", "2 drops"]);
    // A third too much: of the other colour, twelve drops planned, sixteen; of the wax that is in, a third more.
    let adds: Vec<String> = over
        .adds
        .iter()
        .map(|a| format!("{} {} {}{}", a.name, a.said.number, a.said.unit, if a.more { " more" } else { "" }))
        .collect();
    assert!(adds.contains(&"Blue 16 drops".to_owned()), "{adds:?}");
    // 30 % of 1299.2 g of wax, a third of it.
    assert_eq!(adds[0], "Coco 129.93 g more");
    assert!(adds.iter().any(|a| a == "Hardener ½ tbsp more"), "{adds:?}");
    let why = &over.kept_why;
    assert_eq!(why.values.last().unwrap().shown, why.result);
    assert!(why.values.iter().any(|v| v.name == "Red" && v.shown == "0.168 g"), "{why:?}");
    assert!(why.values.iter().any(|v| v.name == "Blue" && v.shown.ends_with("g, as planned")), "{why:?}");
}

/// What a drop weighs is not known: a weight that is typed is kept, and is not too much of nothing.
#[test]
fn what_is_not_known_is_not_too_much() {
    let mut plan = Workshop::new().plan(Target::Vessels(4)).unwrap();
    let red = plan.pours[0].lines.iter_mut().find(|l| l.name == "Red").unwrap();
    red.dose = Dose::Drops { drops: 3, mass: Mass::ZERO };
    assert_eq!(red.dose.asks().0, "It weighed");
    assert_eq!(Dose::Spoon { eighths: 3, mass: Mass::ZERO }.asks().0, "It weighed");
    let run = weighed(Run::new(plan), RED, |_| g(7, 100));
    assert_eq!(run.pending(Voice::default()), None);
    assert!(run.used().iter().any(|u| u.name == "Red" && u.mass == g(7, 100)));
}

#[test]
fn what_is_many_times_too_much_is_doubted_and_no_batch_is_made_ten_times_as_large() {
    let of = |num, den| times(common::run::run(4), num, den);
    let doubt = |p: &Pending| p.doubt.as_ref().map(|n| n.text.clone());
    assert_eq!(doubt(&of(199, 100)), None);
    let twice = of(2, 1);
    assert_eq!(
        doubt(&twice).as_deref(),
        Some("That is 2 times what was asked, or more. If it was typed wrongly, undo it and type it again.")
    );
    assert!(twice.restored.is_some() && twice.no_way_back.is_none());
    // Nine times and a half is the last that can be put right, if the pots and the wax are there.
    assert!(of(19, 2).restored.is_some());
    let eleven = of(11, 1);
    assert!(eleven.restored.is_none() && eleven.adds.is_empty() && eleven.restore_notes.is_empty());
    let said = eleven.no_way_back.unwrap();
    assert!(said.starts_with("It would take ") && said.contains("too much to put right"), "{said}");
    // It can still be kept, or undone.
    assert!(eleven.kept.total > Mass::ZERO);
}
