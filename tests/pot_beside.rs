//! Two pots heated side by side: each has its own readings, curve and gates, and one turns from one to the other.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{FIG, did, refuses};
use common::{Workshop, read};
use potside::pot::{Air, Beside, Event, Foretold, Run, StepKey, Target};
use potside::quantity::{Exact, Quantity, Temperature, TemperatureUnit, Voice};

/// Pots of two vessels and of one.
fn two() -> Run {
    let mut w = Workshop::new();
    w.pot.as_mut().unwrap().capacity = read("400 g");
    Run::new(w.plan(Target::Vessels(3)).unwrap())
}

fn voice() -> Voice {
    Voice { temperature: TemperatureUnit::Fahrenheit, ..Voice::default() }
}

fn air() -> Air {
    Air::of(None, voice())
}

fn clock(at: u64) -> String {
    at.to_string()
}

fn fahrenheit(degrees: i128) -> Temperature {
    Temperature::of(Exact::whole(degrees), TemperatureUnit::Fahrenheit)
}

fn reads(run: &mut Run, pour: Option<u32>, degrees: i128, minutes: u64) {
    let at = minutes * 60_000;
    run.take(Event::Read { temperature: fahrenheit(degrees), at, pour }).unwrap();
}

/// Everything of a pour up to a step of it.
fn up_to(run: &mut Run, stop: StepKey) {
    let pour = stop.pour().unwrap();
    while let Some(step) = run.now_in(pour).filter(|s| s.key != stop) {
        run.take(did(step.key, None, 0)).unwrap();
    }
}

fn fig(pour: u32) -> StepKey {
    StepKey::Add { pour, line: FIG }
}

fn told(run: &Run, pour: u32, minutes: u64) -> Option<Foretold> {
    run.foretold(pour, minutes * 60_000, air(), voice(), clock)
}

fn beside(run: &Run, here: u32, minutes: u64) -> Vec<Beside> {
    run.beside(here, minutes * 60_000, air(), voice(), clock)
}

#[test]
fn a_reading_tells_of_its_own_pot_alone() {
    let mut run = two();
    up_to(&mut run, fig(0));
    up_to(&mut run, fig(1));
    // The pots take turns under the thermometer; the second is hotter and is told of by its own.
    for (minutes, first, second) in [(0, 190, 200), (4, 186, 195), (8, 182, 190)] {
        reads(&mut run, Some(0), first, minutes);
        reads(&mut run, Some(1), second, minutes + 1);
    }
    assert_eq!(run.last_reading(0), Some((480_000, fahrenheit(182))));
    assert_eq!(run.last_reading(1), Some((540_000, fahrenheit(190))));
    assert_eq!(
        (run.pot_at(0, 600_000), run.pot_at(1, 600_000)),
        (Some(fahrenheit(182)), Some(fahrenheit(190)))
    );
    // As if each were alone.
    for (pour, temperatures) in [(0, [190, 186, 182]), (1, [200, 195, 190])] {
        let mut alone = two();
        up_to(&mut alone, fig(pour));
        for (turn, temperature) in (0..).zip(temperatures) {
            reads(&mut alone, Some(pour), temperature, 4 * turn + u64::from(pour));
        }
        assert_eq!(told(&run, pour, 10), told(&alone, pour, 10), "pour {pour}");
        assert!(told(&run, pour, 10).unwrap().notes.is_empty(), "pour {pour}: the readings fit");
    }
    assert_ne!(told(&run, 0, 10), told(&run, 1, 10));
    // What goes into one cools that one.
    run.take(did(fig(1), None, 660_000)).unwrap();
    assert_eq!((run.pot_at(0, 660_000), run.pot_at(1, 660_000)), (Some(fahrenheit(182)), None));
    assert!(told(&run, 0, 11).is_some() && told(&run, 1, 11).is_none());
}

/// As the books before were read: a reading that does not say of which pot it is tells of the one that one is at, until
/// something goes into any of them.
#[test]
fn a_reading_from_before_tells_what_it_told() {
    let mut run = two();
    up_to(&mut run, fig(0));
    up_to(&mut run, fig(1));
    for (minutes, temperature) in [(0, 190), (4, 186)] {
        reads(&mut run, None, temperature, minutes);
    }
    assert_eq!(run.last_reading(0), run.last_reading(1));
    assert!(told(&run, 0, 5).is_some_and(|told| told.chart.is_some()));
    assert_eq!(told(&run, 0, 5).unwrap().gates, told(&run, 1, 5).unwrap().gates);
    run.take(did(fig(0), None, 300_000)).unwrap();
    assert_eq!((run.pot_at(0, 300_000), run.pot_at(1, 300_000)), (None, None));
    // One with its pour stands by itself among them.
    reads(&mut run, Some(1), 180, 6);
    assert_eq!((run.pot_at(0, 360_000), run.pot_at(1, 360_000)), (None, Some(fahrenheit(180))));
}

#[test]
fn the_temperature_of_a_step_is_that_of_its_own_pot() {
    let mut run = two();
    up_to(&mut run, fig(0));
    up_to(&mut run, fig(1));
    reads(&mut run, Some(1), 177, 1);
    assert_eq!(run.chill(fig(0), 60_000, air(), None, voice()), None);
    assert!(run.chill(fig(1), 60_000, air(), None, voice()).is_some());
    let readings = run.record(voice()).readings;
    assert_eq!(
        readings.iter().map(|r| (r.pour, r.temperature)).collect::<Vec<_>>(),
        [(Some(2), fahrenheit(177))]
    );
    assert_eq!((run.read_in(fig(1)), run.read_in(StepKey::Close)), (Some(1), None));
    // Where there is only one pot, nobody has to say which.
    let one = common::run::run(3);
    assert_eq!(one.read_in(fig(0)), None);
}

#[test]
fn one_turns_from_pot_to_pot_and_all_are_closed_together() {
    let mut run = two();
    assert_eq!(run.last_pour(), 0);
    let title = |pots: &[Beside]| pots.iter().map(|pot| (pot.pour, pot.title.clone())).collect::<Vec<_>>();
    assert_eq!(title(&beside(&run, 0, 0)), [(1, "Pour 2: Weigh Coco".to_owned())]);
    up_to(&mut run, fig(1));
    assert_eq!(run.last_pour(), 1);
    assert_eq!(title(&beside(&run, 1, 0)), [(0, "Pour 1: Weigh Coco".to_owned())]);
    assert_eq!(title(&beside(&run, 0, 0)), [(1, "Pour 2: Add Fig leaf".to_owned())]);
    reads(&mut run, Some(0), 190, 0);
    assert_eq!(run.last_pour(), 0, "a reading is work at a pot too");
    run.take(Event::Said { text: "spilt".into(), at: 1 }).unwrap();
    assert_eq!(run.last_pour(), 0);
    // One pot filled, its vessels are not asked for again; the other comes next.
    up_to(&mut run, StepKey::Fill { pour: 1, vessel: 0 });
    run.take(did(StepKey::Fill { pour: 1, vessel: 0 }, None, 9)).unwrap();
    assert_eq!(run.now_in(1).unwrap().key.pour(), Some(0));
    assert_eq!(beside(&run, 0, 0), []);
    refuses(&mut run, did(StepKey::Close, None, 9), "Not yet: “Weigh Coco” comes before “Close the record”.");
    while let Some(step) = run.now_in(run.last_pour()) {
        run.take(did(step.key, None, 10)).unwrap();
    }
    assert!(run.done(StepKey::Close).is_some());
}

/// The other pot is heard of while one is at this one.
#[test]
fn the_other_pot_is_told_of() {
    let mut run = two();
    let stir = StepKey::Stir { pour: 1, line: FIG };
    up_to(&mut run, fig(0));
    up_to(&mut run, fig(1));
    for (minutes, temperature) in [(0, 190), (4, 186)] {
        reads(&mut run, Some(1), temperature, minutes);
    }
    let pots = beside(&run, 0, 5);
    let own = told(&run, 1, 5).unwrap();
    assert_eq!(
        (pots[0].when.as_deref(), &pots[0].soon),
        (own.gates[0].when.split("; too cool").next(), &own.soon)
    );
    let soon = (0..40 * 60).find_map(|s| run.beside(0, s * 1000, air(), voice(), clock)[0].soon.clone());
    assert_eq!(soon.as_deref(), Some("Nearly at 180 °F: add Fig leaf."));
    run.take(did(fig(1), None, 0)).unwrap();
    assert_eq!(run.now_in(1).unwrap().key, stir);
    let minutes = u64::from(run.line(1, FIG).unwrap().stir_minutes);
    assert_eq!(beside(&run, 0, minutes)[0].soon.as_deref(), Some("Stirred long enough."));
    assert_eq!(run.beside(0, minutes * 60_000 - 1, air(), voice(), clock)[0].soon, None);
}

/// More pours than pots: only what is begun, and one more.
#[test]
fn of_many_pours_only_the_next_is_offered() {
    let mut w = Workshop::new();
    w.pot.as_mut().unwrap().capacity = read("200 g");
    let mut run = Run::new(w.plan(Target::Vessels(4)).unwrap());
    assert_eq!(run.plan.pours.len(), 4);
    let pours = |run: &Run, here| beside(run, here, 0).iter().map(|pot| pot.pour).collect::<Vec<_>>();
    assert_eq!(pours(&run, 0), [1]);
    assert_eq!(pours(&run, 1), [0]);
    reads(&mut run, Some(0), 190, 0);
    assert_eq!(pours(&run, 1), [0, 2]);
    up_to(&mut run, fig(1));
    assert_eq!(pours(&run, 0), [1, 2]);
}
