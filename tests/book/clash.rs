//! What was set here and in a copy, each without knowing of the other: shown, so that nothing is lost unseen.

use super::sample::{began, burned, ended, id, ingredient, trial};
use potside::bench::Scale;
use potside::bench::burn::{BurnEvent, Limits, Verdict};
use potside::book::{Act, Clash, Journal, Settings, read_copy};
use potside::day::{Day, Zone};
use potside::quantity::{Amount, Exact, MassUnit, Money, ShareUnit};
use potside::shelf::{Finish, Pins};
use potside::stores::{Bought, Ledger, Lot, LotEvent, Pack, Source};
use proptest::prelude::*;

const AT: u64 = 1_764_770_400_000;

fn settings(percent: i128) -> Act {
    let tolerance = Amount::new(Exact::whole(percent), ShareUnit::Percent);
    Act::Settings(Settings { tolerance, ..Settings::default() })
}

fn worked(minutes: u32) -> Act {
    Act::Worked { batch: id("batch"), minutes }
}

/// The first of these lots for a part.
fn from(part: &str, lot: &str) -> Act {
    let source = Source { part: part.to_owned(), lots: vec![id(lot)] };
    Act::TakenFrom { batch: id("batch"), sources: vec![source] }
}

/// A kilogram of wax.
fn received(lot: &str) -> Act {
    let pack = Pack::Weight(Amount::new(Exact::whole(1), MassUnit::Kilogram));
    let body = Lot {
        ingredient: "Meadow wax".to_owned(),
        number: "7".to_owned(),
        supplier: String::new(),
        got_on: Day(20_000),
        best_before: None,
        price: Money::ZERO,
        bought: Bought { packs: 1, pack },
        amount: Exact::whole(1000),
    };
    Act::Lot { id: id(lot), over: None, body }
}

/// A device's book, and what it has written.
struct Device {
    journal: Journal,
}

impl Device {
    fn new(name: &str) -> Self {
        Self { journal: Journal::open(Vec::new(), name) }
    }

    fn does(&mut self, act: Act) {
        let entry = self.journal.entry(act, AT, 7);
        self.journal.take(entry);
    }

    fn copy(&self) -> String {
        self.journal.entries().iter().map(|e| e.to_line() + "\n").collect()
    }

    fn sees(&self, other: &Self) -> Vec<Clash> {
        read_copy(&other.copy(), &self.journal).unwrap().clashes
    }

    fn takes(&mut self, other: &Self) {
        let copy = read_copy(&other.copy(), &self.journal).unwrap();
        copy.fresh.into_iter().for_each(|(entry, _)| self.journal.take(entry));
    }
}

#[test]
fn rules_set_on_both_devices_are_both_shown() {
    let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
    tablet.does(settings(2));
    table.takes(&tablet);
    // What one knows of is no clash, whichever way it goes.
    table.does(settings(3));
    assert_eq!(tablet.sees(&table), []);
    assert_eq!(table.sees(&tablet), []);
    // Now the tablet sets them too, without having seen that.
    tablet.does(settings(4));
    let seen = tablet.sees(&table);
    assert_eq!(seen.len(), 1, "{seen:?}");
    assert_eq!((seen[0].what, seen[0].name.as_str()), ("The workshop’s rules", ""));
    assert_eq!((seen[0].here.device.as_str(), seen[0].copy.device.as_str()), ("tablet", "table"));
    let values: Vec<_> = seen[0].differs.iter().map(|d| (d.of.as_str(), d.values.clone())).collect();
    let said = |words: &str| Some(words.to_owned());
    assert_eq!(values, [("tolerance", vec![said("4 %"), said("3 %")])]);
    // The other device sees the same the other way round, and the one that stands is the same.
    let other = table.sees(&tablet);
    assert_eq!(other.len(), 1);
    assert_eq!(other[0].stands, !seen[0].stands);
    assert_eq!((&other[0].here, &other[0].copy), (&seen[0].copy, &seen[0].here));
    tablet.takes(&table);
    let stands = if seen[0].stands { 4 } else { 3 };
    assert_eq!(
        tablet.journal.state().settings.tolerance,
        Amount::new(Exact::whole(stands), ShareUnit::Percent)
    );
    // Set anew once both are known, nothing is open any more.
    tablet.does(settings(5));
    assert_eq!(table.sees(&tablet), []);
}

#[test]
fn what_is_the_same_or_about_another_thing_is_no_clash() {
    let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
    tablet.does(settings(4));
    table.does(settings(4));
    tablet.does(Act::Rates(Box::default()));
    assert_eq!(tablet.sees(&table), []);
    assert_eq!(table.sees(&tablet), []);
}

#[test]
fn a_thing_put_away_in_one_place_alone_is_named() {
    let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
    let mass = |grams| Amount::new(Exact::whole(grams), MassUnit::Gram);
    let body = Scale {
        name: "Bench scale".to_owned(),
        capacity: mass(5000),
        division: mass(1),
        least: mass(20),
        trial: None,
    };
    let id = id("scale");
    tablet.does(Act::Scale { id: id.clone(), over: None, body });
    table.takes(&tablet);
    tablet.does(Act::Retire { id: id.clone(), retired: true });
    assert_eq!(table.sees(&tablet), []);
    table.does(Act::Retire { id: id.clone(), retired: true });
    assert_eq!(table.sees(&tablet), [], "both agree");
    table.does(Act::Retire { id, retired: false });
    let seen = table.sees(&tablet);
    assert_eq!(seen.len(), 1, "{seen:?}");
    assert_eq!((seen[0].what, seen[0].name.as_str()), ("Put away", "Bench scale"));
    assert!(seen[0].stands);
}

/// Put away on one device and changed on the other: it would be put away with the change, which nobody would see.
#[test]
fn a_thing_put_away_here_and_changed_there_is_named() {
    let change = |thousandths| ingredient("wax", "Meadow wax", thousandths);
    let away = |retired| Act::Retire { id: id("wax"), retired };
    let said = |clashes: Vec<Clash>| {
        let one = |c: Clash| {
            assert_eq!(c.differs.len(), 1);
            (c.what, c.name, c.stands, c.differs[0].values.clone().into_iter().flatten().collect::<Vec<_>>())
        };
        clashes.into_iter().map(one).collect::<Vec<_>>()
    };
    let name = || "Meadow wax".to_owned();
    let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
    tablet.does(change(860));
    table.takes(&tablet);
    tablet.does(change(861));
    tablet.does(away(true));
    assert_eq!(said(table.sees(&tablet)), [], "one device alone did both");
    table.does(change(862));
    let values = |here: &str, there: &str| vec![here.to_owned(), there.to_owned()];
    let what = "Put away, and changed";
    assert_eq!(said(tablet.sees(&table)), [(what, name(), true, values("put away", "changed"))]);
    assert_eq!(said(table.sees(&tablet)), [(what, name(), false, values("changed", "put away"))]);
    let mut both = Device::new("desk");
    both.takes(&tablet);
    both.takes(&table);
    assert!(both.journal.state().ingredients.get(&id("wax")).is_some_and(|k| k.retired));
    // Taken out again it is not hidden; and both may put it away.
    tablet.does(away(false));
    assert_eq!(said(table.sees(&tablet)), []);
    tablet.does(away(true));
    table.does(away(true));
    assert_eq!(said(table.sees(&tablet)), []);
}

#[test]
fn whatever_has_no_versions_to_choose_from_is_shown() {
    let rates = |timed| Act::Rates(Box::new(potside::desk::Rates { timed, ..Default::default() }));
    let limits = |full| Act::Limits(Box::new(Limits { full, ..Default::default() }));
    let pinned = |n| Act::Pinned { product: id("jar"), body: Pins { pours: vec![n], ..Pins::default() } };
    let ticked = |done| Act::Ticked { batch: id("batch"), step: Finish::Trimmed, done };
    let cases = [
        ("Costs of work", rates(true), rates(false)),
        ("Limits of trials", limits(60), limits(90)),
        ("How the pour ended", ended("batch", "even"), ended("batch", "a wet spot")),
        ("Time of work", worked(10), worked(20)),
        ("Lots taken from", from("Meadow wax", "lot-1"), from("Meadow wax", "lot-2")),
        ("The plan of its pours", pinned(4), pinned(8)),
        ("Wicks trimmed to ¼ in (6 mm)", ticked(true), ticked(false)),
    ];
    let lot = |event| Act::AtLot { lot: id("lot"), event };
    let counted = |left| lot(LotEvent::Counted { left: Exact::whole(left), reason: String::new() });
    let reason = || "it smells burnt".to_owned();
    let closed = |verdict| burned("candle", BurnEvent::Closed { verdict, note: String::new() });
    let events = [
        ("What was counted", counted(400), counted(700)),
        (
            "On hold",
            lot(LotEvent::Held { reason: reason() }),
            lot(LotEvent::Released { reason: String::new() }),
        ),
        ("On hold", lot(LotEvent::Held { reason: reason() }), lot(LotEvent::Held { reason: String::new() })),
        ("What came of the trial", closed(Verdict::Passed), closed(Verdict::Small)),
    ];
    for (what, one, other) in cases.into_iter().chain(events) {
        let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
        let solid = Act::Ticked { batch: id("batch"), step: Finish::Solid, done: true };
        let things = [received("lot"), trial("candle", None, "Late pear")];
        [began("batch", 4), ended("batch", ""), solid]
            .into_iter()
            .chain(things)
            .for_each(|act| tablet.does(act));
        table.takes(&tablet);
        tablet.does(one);
        table.does(other);
        let seen = tablet.sees(&table);
        assert_eq!(seen.iter().map(|c| c.what).collect::<Vec<_>>(), [what]);
    }
}

#[test]
fn lots_of_other_parts_take_the_place_of_nothing() {
    let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
    tablet.does(began("batch", 4));
    table.takes(&tablet);
    tablet.does(from("Meadow wax", "lot-1"));
    table.does(from("Orchard oil", "lot-2"));
    assert_eq!(tablet.sees(&table), []);
}

#[test]
fn what_is_taken_back_or_refused_is_no_clash() {
    let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
    tablet.does(settings(4));
    let mine = tablet.journal.entries()[0].id.clone();
    tablet.does(Act::Undo { entry: mine });
    table.does(settings(5));
    assert_eq!(tablet.sees(&table), []);
    // A pour that is in neither book: nothing took effect, so nothing is lost.
    tablet.does(worked(10));
    table.does(worked(20));
    assert_eq!(tablet.sees(&table), []);
}

/// What was used since is reckoned by the clocks, so of two counts the one that is later by them stands, on both devices.
#[test]
fn of_two_counts_the_later_by_the_clocks_stands() {
    let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
    tablet.does(received("lot"));
    table.takes(&tablet);
    let counted = |journal: &mut Journal, left: i128, at: u64| {
        let event = LotEvent::Counted { left: Exact::whole(left), reason: String::new() };
        let entry = journal.entry(Act::AtLot { lot: id("lot"), event }, at, 9);
        journal.take(entry);
    };
    counted(&mut tablet.journal, 400, AT + 1_000);
    table.does(worked(1));
    counted(&mut table.journal, 700, AT + 500);
    let (here, there) = (tablet.sees(&table), table.sees(&tablet));
    assert_eq!((here[0].what, here[0].stands, there[0].stands), ("What was counted", true, false));
    tablet.takes(&table);
    let ledger = Ledger::of(tablet.journal.state(), Zone::GREENWICH);
    assert_eq!(ledger.lot(&id("lot")).map(|(_, holding)| holding.left), Some(Exact::whole(400)));
}

proptest! {
    /// Whatever two devices set and pass on to each other: where the rules that one has are not those that stand once
    /// both are together, and it set them without the other's, a clash says so with both.
    #[test]
    fn no_rule_is_dropped_unseen(steps in prop::collection::vec((0_u8..4, 1_i128..9), 1..24)) {
        let (mut tablet, mut table) = (Device::new("tablet"), Device::new("table"));
        for (what, percent) in steps {
            match what {
                0 => tablet.does(settings(percent)),
                1 => table.does(settings(percent)),
                2 if !table.journal.entries().is_empty() => tablet.takes(&table),
                3 if !tablet.journal.entries().is_empty() => table.takes(&tablet),
                _ => {}
            }
        }
        prop_assume!(!table.journal.entries().is_empty());
        let last = |of: &Device, but: &Device| {
            of.journal.entries().iter().rev().find(|e| but.journal.find(&e.id).is_none()).map(|e| e.act.clone())
        };
        let (mine, theirs) = (last(&tablet, &table), last(&table, &tablet));
        let seen = tablet.sees(&table);
        match (mine, theirs) {
            (Some(Act::Settings(mine)), Some(Act::Settings(theirs))) if mine != theirs => {
                prop_assert_eq!(seen.len(), 1);
                let shown = |s: &Settings| Some(potside::wire::write(&s.tolerance).trim_matches('"').to_owned());
                prop_assert_eq!(&seen[0].differs[0].values, &vec![shown(&mine), shown(&theirs)]);
                tablet.takes(&table);
                let stands = if seen[0].stands { mine } else { theirs };
                prop_assert_eq!(&tablet.journal.state().settings, &stands);
            }
            _ => prop_assert_eq!(seen, []),
        }
    }
}
