//! Finished pours and when they have cured; what an ingredient is learnt; who uses it; what a plan takes in all.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic)]

mod common;

use common::{Workshop, read};
use potside::bench::{DropTrial, DropWeighing, Ingredient};
use potside::book::{Act, Ending, Fact, Id, Journal, Settings};
use potside::day::{Day, Zone};
use potside::pot::{Event, StepKey, Target};
use potside::quantity::{Density, Exact, Voice};

const DAY: u64 = 86_400_000;
/// An afternoon of 2025.
const POURED: u64 = 1_764_770_400_000;

fn id(text: &str) -> Id {
    Id(text.to_owned())
}

/// A book, and the clock to write in it.
struct Book(Journal, u64);

impl Book {
    fn new() -> Self {
        Self(Journal::open(Vec::new(), "tablet"), POURED)
    }

    fn act(&mut self, act: Act) -> Id {
        self.1 += 1;
        let entry = self.0.entry(act, self.1, 7);
        let id = entry.id.clone();
        self.0.take(entry);
        id
    }

    fn begin(&mut self, batch: &str, cure_days: u32) {
        let mut plan = Workshop::new().plan(Target::Vessels(4)).unwrap();
        plan.cure_days = cure_days;
        let (batch, formula, version, vessel) = (id(batch), id("f"), id("v"), id("t"));
        self.act(Act::Began { batch, formula, version, vessel, day: None, plan: plan.into() });
    }

    fn did(&mut self, batch: &str, step: StepKey, at: u64) -> Id {
        let event = Event::Did { step, weighed: None, temperature: None, at };
        self.act(Act::At { batch: id(batch), event })
    }

    /// Does everything up to the vessels, then fills as many as there are times.
    fn pour(&mut self, batch: &str, times: &[u64]) -> Option<Id> {
        loop {
            let now = self.0.state().batches.get(&id(batch)).unwrap().run.now()?.key;
            if matches!(now, StepKey::Fill { .. }) {
                break;
            }
            self.did(batch, now, POURED - DAY);
        }
        let mut last = None;
        for (vessel, at) in (0..).zip(times) {
            last = Some(self.did(batch, StepKey::Fill { pour: 0, vessel }, *at));
        }
        assert!(self.0.state().ignored.is_empty(), "{:?}", self.0.state().ignored);
        last
    }

    fn end(&mut self, batch: &str, how: Ending) {
        self.act(Act::Ended { batch: id(batch), how, note: String::new() });
    }

    fn ready(&self, batch: &str, cure_days: Option<u32>) -> Option<Day> {
        let state = self.0.state();
        let batch = state.batches.get(&id(batch)).unwrap();
        Some(state.ready_on(batch, batch.poured_on(Zone::GREENWICH)?, cure_days))
    }

    fn finished(&self) -> Vec<&str> {
        self.0.state().finished().into_iter().map(|b| b.id.0.as_str()).collect()
    }
}

/// Solid after a day (common practice, no source) or as the workshop says, then the days of cure.
#[test]
fn cure_is_counted_from_the_last_vessel_filled() {
    let after = |days: u64| Some(Day::of(POURED + days * DAY));
    let mut book = Book::new();
    book.begin("a", 14);
    assert_eq!(book.ready("a", None), None);
    book.pour("a", &[POURED - 60_000, POURED]);
    book.end("a", Ending::Poured);
    let batch = book.0.state().batches.get(&id("a")).unwrap();
    assert_eq!((batch.filled_vessels(), batch.poured_at()), (2, Some(POURED)));
    assert_eq!(book.ready("a", None), after(15));
    assert_eq!(book.ready("a", Some(0)), after(1));
    let settings = Settings { solid_days: Some(0), ..Settings::default() };
    book.act(Act::Settings(settings));
    assert_eq!(book.ready("a", None), after(14));
    assert_eq!(book.ready("a", Some(0)), after(0));
}

#[test]
fn only_batches_with_vessels_poured_stand_on_the_shelf() {
    let mut book = Book::new();
    for name in ["early", "late", "given-up", "empty", "running"] {
        book.begin(name, 7);
    }
    book.pour("late", &[POURED + 5]);
    for name in ["early", "given-up", "running"] {
        book.pour(name, &[POURED]);
    }
    for name in ["early", "late", "empty"] {
        book.end(name, Ending::Poured);
    }
    book.end("given-up", Ending::GivenUp);
    assert_eq!(book.finished(), ["late", "early"]);
}

#[test]
fn an_undone_vessel_does_not_count() {
    let mut book = Book::new();
    book.begin("a", 7);
    let last = book.pour("a", &[POURED, POURED + 20]).unwrap();
    book.act(Act::Undo { entry: last });
    let batch = book.0.state().batches.get(&id("a")).unwrap();
    assert_eq!((batch.filled_vessels(), batch.poured_at()), (1, Some(POURED)));
}

fn drops(mass: &str) -> DropTrial {
    DropTrial { weighings: vec![DropWeighing { drops: 20, mass: read(mass) }], division: read("0.01 g") }
}

fn density(hundredths: i128) -> Density {
    Density::base(Exact::ratio(hundredths, 100))
}

fn learn(book: &mut Book, name: &str, fact: Fact) -> Id {
    let act = book.0.state().learn(name, fact, id("fresh"));
    let Act::Ingredient { id, .. } = &act else { panic!("{act:?}") };
    let id = id.clone();
    book.act(act);
    id
}

#[test]
fn what_is_learnt_keeps_what_was_known() {
    let mut book = Book::new();
    assert_eq!(learn(&mut book, " Red ", Fact::Drops(drops("0.42 g"))), id("fresh"));
    let first = book.1;
    assert_eq!(learn(&mut book, "red", Fact::Density(density(95))), id("fresh"));
    let second = book.1;
    let state = book.0.state();
    let expected = Ingredient {
        name: "Red".to_owned(),
        density: Some(density(95)),
        drops: Some(drops("0.42 g")),
        ..Ingredient::default()
    };
    assert_eq!(state.ingredient("RED"), Some(&expected));
    let kept = state.ingredients.get(&id("fresh")).unwrap();
    assert_eq!(kept.versions.len(), 2);
    assert_eq!(kept.versions[1].over.as_ref(), Some(&kept.versions[0].entry));
    // Each fact has its own date.
    assert_eq!((kept.since(|i| i.drops.clone()), kept.since(|i| i.density)), (Some(first), Some(second)));
}

// Two tablets may each have named the same ingredient: what one knows is not lost to what the other learns.
#[test]
fn two_ingredients_of_one_name_are_learnt_as_one() {
    let mut book = Book::new();
    let one = Ingredient { name: "Red".into(), drops: Some(drops("0.42 g")), ..Ingredient::default() };
    let other = Ingredient { name: "red ".into(), density: Some(density(90)), ..Ingredient::default() };
    book.act(Act::Ingredient { id: id("one"), over: None, body: one });
    book.act(Act::Ingredient { id: id("other"), over: None, body: other });
    assert_eq!(learn(&mut book, "Red", Fact::Density(density(91))), id("other"));
    let known = book.0.state().ingredient("Red").unwrap();
    assert_eq!((known.density, known.drops.clone()), (Some(density(91)), Some(drops("0.42 g"))));
}

#[test]
fn every_ingredient_is_listed_once_with_the_formulas_that_use_it() {
    let mut book = Book::new();
    let formula = Workshop::new().formula;
    for (name, wax) in [("one", "Soy"), ("two", "soy ")] {
        let mut body = formula.clone();
        body.name = name.into();
        body.wax[1].name = wax.into();
        book.act(Act::Formula { id: id(name), over: None, body });
    }
    learn(&mut book, "Stearin", Fact::Density(density(85)));
    let uses = book.0.state().uses();
    let names: Vec<_> = uses.iter().map(|u| (u.name.as_str(), u.formulas.len())).collect();
    // Pieces are not weighed, so the wick tab is not among them.
    let expected = [
        ("Blue", 2),
        ("Coco", 2),
        ("Fig leaf", 2),
        ("Hardener", 2),
        ("Red", 2),
        ("Soy", 2),
        ("Stearin", 0),
        ("Sun guard", 2),
    ];
    assert_eq!(names, expected);
    book.act(Act::Retire { id: id("two"), retired: true });
    assert_eq!(book.0.state().uses()[0].formulas, [(id("one"), "one".to_owned())]);
}

#[test]
fn needs_add_up_over_all_pots() {
    // 40 vessels of 180 g are two pots of 4 kg.
    let plan = Workshop::new().plan(Target::Vessels(40)).unwrap();
    assert_eq!(plan.pours.len(), 2);
    let needs = plan.needs();
    assert_eq!(needs.len(), plan.pours[0].lines.len());
    assert_eq!(
        needs.iter().map(|n| n.mass).sum::<potside::quantity::Mass>(),
        plan.pours.iter().map(|p| p.total).sum()
    );
    let say = |name: &str| needs.iter().find(|n| n.name == name).unwrap().say(Voice::default());
    // 3 and 6 drops for 4 vessels; one drop weighs 21 mg. 2.15 oz for 4 is 21.5 oz for 40.
    assert_eq!(say("Red"), "30 drops, 0.63 g");
    assert_eq!(say("Blue"), "60 drops, 1.3 g");
    assert_eq!(say("Fig leaf"), "609.5 g (21.50 oz)");
    assert_eq!(say("Wick tab"), "40 pieces");
    // ¾ tbsp for 4 is 7½ tbsp for 40 (common practice, no source).
    assert_eq!(say("Hardener"), "7½ tbsp, 59.9 g");
    let over = |left: &str| plan.leaves("Red", read::<potside::quantity::Mass>(left).value);
    assert_eq!(over("1 g"), common::g(37, 100));
    assert_eq!(over("0.5 g"), potside::quantity::Mass::ZERO);
}
