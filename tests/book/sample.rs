//! Things to write into a book.

use potside::bench::Ingredient;
use potside::bench::burn::{BurnEvent, Heavy, Trial, Verdict};
use potside::book::{Act, Ending, Entry, Id, Journal};
use potside::day::Day;
use potside::formula::{Formula, PourRanges, Recipe, TemperatureRange, WaxShare};
use potside::pot::{Ask, Event, Plan, Residue, Target};
use potside::quantity::{
    Amount, Density, Exact, LengthUnit, Mass, MassUnit, Share, ShareUnit, Temperature, TemperatureUnit,
    Voice, Why,
};

pub(crate) fn id(text: &str) -> Id {
    Id(text.to_owned())
}

pub(crate) fn ingredient(thing: &str, name: &str, thousandths: i128) -> Act {
    let density = Some(Density::base(Exact::ratio(thousandths, 1000)));
    Act::Ingredient {
        id: id(thing),
        over: None,
        body: Ingredient { name: name.to_owned(), density, ..Ingredient::default() },
    }
}

fn fahrenheit(low: i128, high: i128) -> TemperatureRange {
    let at = |n| Amount::<Temperature>::new(Exact::whole(n), TemperatureUnit::Fahrenheit);
    TemperatureRange { low: at(low), high: at(high) }
}

/// Nothing was weighed.
struct Unweighed;

impl Recipe for Unweighed {
    fn drop_mass(&self, _: &str) -> Option<Mass> {
        None
    }
    fn bulk_density(&self, _: &str) -> Option<Density> {
        None
    }
}

/// Wax alone, 200 g a vessel.
pub(crate) fn plan(vessels: u32) -> Plan {
    let formula = Formula {
        name: "Plain meadow".to_owned(),
        wax: vec![WaxShare {
            name: "Meadow wax".to_owned(),
            share: Amount::new(Exact::whole(100), ShareUnit::Percent),
            flash: None,
        }],
        parts: vec![],
        usual: None,
        melt_to: Amount::new(Exact::whole(185), TemperatureUnit::Fahrenheit),
        pour: PourRanges { warmed: fahrenheit(160, 165), unwarmed: fahrenheit(165, 170) },
        vessels: vec![],
        cure_days: 10,
        note: String::new(),
    };
    potside::pot::plan(&Ask {
        formula: &formula,
        vessel: "Stout jar",
        wick: "C 14",
        fill: (Mass::base(Exact::whole(200)), Why::default()),
        target: Target::Vessels(vessels),
        residue: &Residue::None,
        warmed: false,
        scales: &[],
        pot: None,
        shade: 0,
        recipe: &Unweighed,
        tolerance: Share::base(Exact::ratio(2, 100)),
        voice: Voice::default(),
    })
    .expect("wax alone can be poured")
}

pub(crate) fn began(batch: &str, vessels: u32) -> Act {
    began_on(batch, vessels, None)
}

/// With the day of the workshop, where there is one.
pub(crate) fn began_on(batch: &str, vessels: u32, day: Option<Day>) -> Act {
    Act::Began {
        batch: id(batch),
        formula: id("f"),
        version: id("e"),
        vessel: id("v"),
        day,
        plan: plan(vessels).into(),
    }
}

pub(crate) fn said(batch: &str, text: &str) -> Act {
    Act::At { batch: id(batch), event: Event::Said { text: text.to_owned(), at: 1_764_000_000_000 } }
}

pub(crate) fn ended(batch: &str, note: &str) -> Act {
    Act::Ended { batch: id(batch), how: Ending::Poured, note: note.to_owned() }
}

/// A version of a candle on trial.
pub(crate) fn trial(candle: &str, over: Option<Id>, fragrance: &str) -> Act {
    let body = Box::new(Trial {
        name: candle.to_owned(),
        fragrance: fragrance.to_owned(),
        load: None,
        heavy: Heavy::Middle,
        wax: "Meadow wax".to_owned(),
        vessel: "Stout jar".to_owned(),
        diameter: Amount::new(Exact::whole(70), LengthUnit::Millimetre),
        series: "C".to_owned(),
        wick: "C 14".to_owned(),
        replicate: 1,
        start: grams(400),
        fill: grams(180),
    });
    Act::Trial { id: id(candle), over, body }
}

fn grams(n: i128) -> Amount<Mass> {
    Amount::new(Exact::whole(n), MassUnit::Gram)
}

pub(crate) fn burned(candle: &str, event: BurnEvent) -> Act {
    Act::AtTrial { trial: id(candle), event }
}

/// Lit, out, weighed, and judged.
pub(crate) fn burns(candle: &str) -> [Act; 4] {
    let hours = |n: u64| 1_764_000_000_000 + n * 3_600_000;
    [
        BurnEvent::Lit { at: hours(0), mass: grams(400), trimmed: true, throw: None },
        BurnEvent::Out { at: hours(3), mass: None, itself: false },
        BurnEvent::Weighed { mass: grams(385), lit: None },
        BurnEvent::Closed { verdict: Verdict::Passed, note: "even".to_owned() },
    ]
    .map(|event| burned(candle, event))
}

/// A photo of this name's first sign, taken as late as `hour`.
pub(crate) fn pictured(candle: &str, sign: &str, hour: u64) -> Act {
    let at = 1_764_000_000_000 + hour * 3_600_000;
    burned(candle, BurnEvent::Pictured { at, photo: sign.repeat(64) })
}

pub(crate) fn undo(entry: &Id) -> Act {
    Act::Undo { entry: entry.clone() }
}

/// Does an act in a journal, as a tab would, and gives its entry.
pub(crate) fn does(journal: &mut Journal, act: Act) -> Entry {
    let random = journal.entries().len() as u32 * 7919;
    let entry = journal.entry(act, 1_764_000_000_000, random);
    journal.take(entry.clone());
    entry
}

/// An entry from anywhere.
pub(crate) fn entry(name: &str, clock: u64, act: Act) -> Entry {
    Entry { id: id(name), clock, at: 1_764_000_000_000 + clock, device: "tablet".to_owned(), act }
}
