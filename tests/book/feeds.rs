//! What is weighed at the bench arrives where it is used: a drop and a spoon in the plan, water in the fill, a scale's
//! division in what is weighed, a wax's density in the fill, a cooling log in how a vessel freezes.

use super::wish::{id, wish, workshop};
use potside::bench::{DropTrial, DropWeighing, Scale, ScaleTrial, SpoonTrial};
use potside::book::{Act, Book, Fact, Settings};
use potside::pot::{Dose, Line, Plan};
use potside::quantity::{Amount, Density, Exact, Mass, Quantity, ShareUnit, Unit, Voice};

fn read<Q: Quantity>(text: &str) -> Amount<Q> {
    potside::quantity::read(text, Q::Unit::all()[0], Default::default()).unwrap()
}

fn learn(book: &mut Book, name: &str, fact: Fact) {
    let act = book.state().learn(name, fact, id("fresh"));
    does(book, act);
}

fn does(book: &mut Book, act: Act) {
    let random = book.journal().entries().len() as u32;
    book.act(act, 1_800_000_000_000, random).expect("done");
}

fn orchard(book: &Book) -> Plan {
    book.state().plan(&wish("demo-orchard", "demo-jar"), Voice::default()).expect("planned")
}

fn line(plan: &Plan, name: &str) -> Line {
    plan.pours[0].lines.iter().find(|l| l.name == name).expect("it is in the plan").clone()
}

#[test]
fn a_drop_weighed_anew_weighs_so_in_the_plan() {
    let mut book = workshop();
    let weigh = |book: &mut Book, twenty: &str| {
        let weighings = vec![DropWeighing { drops: 20, mass: read(twenty) }];
        learn(book, "brick DYE ", Fact::Drops(DropTrial { weighings, division: read("0.01 g") }));
        match line(&orchard(book), "Brick dye").dose {
            Dose::Drops { drops, mass } => (drops, mass),
            other => panic!("{other:?}"),
        }
    };
    // 20 drops of 0.4 g are 20 mg each: three of them 60 mg, and of 0.8 g twice that.
    let milligrams = |n| Mass::base(Exact::ratio(n, 1000));
    let (drops, mass) = weigh(&mut book, "0.4 g");
    assert_eq!(mass, milligrams(20 * i128::from(drops)));
    assert_eq!(weigh(&mut book, "0.8 g"), (drops, milligrams(40 * i128::from(drops))));
}

#[test]
fn spoons_weighed_anew_weigh_so_in_the_plan() {
    let mut book = workshop();
    let weigh = |book: &mut Book, five: &str| {
        let trial = SpoonTrial { spoon: read("1 tsp"), spoons: 5, mass: read(five), again: Vec::new() };
        learn(book, "Light guard powder", Fact::Spoons(trial));
        line(&orchard(book), "Light guard powder").exact
    };
    let (light, heavy) = (weigh(&mut book, "10 g"), weigh(&mut book, "20 g"));
    // ¾ teaspoon of 2 g a teaspoon for the usual batch of four, 4 g with the second.
    assert_eq!(light, Mass::base(Exact::ratio(3, 2)));
    assert_eq!(heavy, Mass::base(Exact::whole(3)));
}

#[test]
fn water_weighed_anew_and_another_density_change_the_fill() {
    let mut book = workshop();
    let pour = |book: &mut Book, grams: &str| {
        let kept = book.state().vessels.get(&id("demo-jar")).expect("there").clone();
        let mut body = kept.body().expect("a version").clone();
        body.water.as_mut().expect("by water").mass = read(grams);
        body.fill = potside::vessel::FillRule::Share(read("80 %"));
        does(book, Act::Vessel { id: kept.id.clone(), over: kept.latest().map(|v| v.entry.clone()), body });
        orchard(book).fill.in_base().to_f64()
    };
    let dense = |book: &mut Book, density: &str| {
        let density = Density::base(potside::quantity::read_number(density, Default::default()).unwrap());
        learn(book, "Meadow soft wax", Fact::Density(density));
    };
    dense(&mut book, "0.9");
    let small = pour(&mut book, "200 g");
    let large = pour(&mut book, "300 g");
    assert!((large / small - 1.5).abs() < 0.001, "{small} g, {large} g");
    // 80 % of 300 mL by 0.9 g/mL; water at 70 °F is 0.998 g/mL (Kell's table in tests/vessel.rs).
    assert!((large - 0.8 * 300.0 / 0.998 * 0.9).abs() < 0.1, "{large} g");
    dense(&mut book, "0.8");
    let light = pour(&mut book, "300 g");
    assert!((light / large - 8.0 / 9.0).abs() < 0.001, "{light} g");
}

#[test]
fn a_scales_division_is_that_of_what_is_weighed() {
    let mut book = workshop();
    for scale in ["demo-scale-large", "demo-scale-small"] {
        does(&mut book, Act::Retire { id: id(scale), retired: true });
    }
    let mut on = |division: &str| {
        let body = Scale {
            name: "Only".to_owned(),
            capacity: read("5 kg"),
            division: read(division),
            least: read("1 g"),
            trial: None,
        };
        let over = book.state().scales.get(&id("only")).and_then(|k| k.latest()).map(|v| v.entry.clone());
        does(&mut book, Act::Scale { id: id("only"), over, body });
        match line(&orchard(&book), "Meadow soft wax").dose {
            Dose::Weigh { mass, division, .. } => (mass, division),
            other => panic!("{other:?}"),
        }
    };
    for (text, step) in [("5 g", Exact::whole(5)), ("0.1 g", Exact::ratio(1, 10))] {
        let (mass, division) = on(text);
        assert_eq!(division, Mass::base(step));
        assert_eq!(mass.in_base() / step, Exact::whole((mass.in_base() / step).floor()), "{text}");
    }
    assert_ne!(on("5 g").0, on("0.1 g").0);
}

/// What a scale's trial tells of its smallest load decides what is weighed on it.
#[test]
fn a_scale_that_was_tried_weighs_nothing_it_is_not_good_for() {
    let mut book = workshop();
    for scale in ["demo-scale-large", "demo-scale-small"] {
        does(&mut book, Act::Retire { id: id(scale), retired: true });
    }
    let mut oil = |readings: &str| {
        let trial = ScaleTrial::read(readings, "", Voice::default()).unwrap();
        let (name, capacity, division) = ("Only".to_owned(), read("5 kg"), read("0.1 g"));
        let mut body = Scale { name, capacity, division, least: read("0.1 g"), trial };
        body.least = body.steady(Voice::default()).expect("it was tried").least;
        let over = book.state().scales.get(&id("only")).and_then(|k| k.latest()).map(|v| v.entry.clone());
        does(&mut book, Act::Scale { id: id("only"), over, body });
        matches!(line(&orchard(&book), "Late orchard oil").dose, Dose::Weigh { .. })
    };
    // About 60 g of it: from 8.2 g on where it shows the same each time, from 100 g on where it strays by 0.5 g.
    assert!(oil("100 g\n100 g\n100 g"));
    assert!(!oil("100 g\n100.5 g\n99.5 g"));
}

#[test]
fn a_cooling_log_and_a_density_reach_the_freezing() {
    let mut book = workshop();
    assert!((book.state().settings.air() - 1.0).abs() < 1e-12);
    // Air that takes more than the usual, and less, is kept as it was told.
    for (percent, air) in [(125, 1.25), (80, 0.8)] {
        let film = Some(Amount::new(Exact::whole(percent), ShareUnit::Percent));
        let log = Some("0 73.889 °C\n20 65.556 °C\n40 60.000 °C\n".to_owned());
        let settings = Settings { film, log, ..Settings::default() };
        assert_eq!(potside::wire::read::<Settings>(&potside::wire::write(&settings)).as_ref(), Ok(&settings));
        does(&mut book, Act::Settings(settings));
        assert!((book.state().settings.air() - air).abs() < 1e-12);
    }
    learn(&mut book, "Meadow soft wax", Fact::Density(Density::base(Exact::ratio(87, 100))));
    let known = book.state().densities();
    assert!(known.contains(&("Meadow soft wax", Density::base(Exact::ratio(87, 100)))), "{known:?}");
    // The place that it is put into is that of the liquid's density.
    assert_eq!(potside::bench::PROPERTIES[potside::bench::POURED].words, "Density, liquid at 80 °C");
}
