//! A book of format 2 with every kind of act there was when it was frozen: it opens for ever and says what it said.
//! `v2.json` was looked over against what was typed in; it is not made anew when a test fails.

use super::fixture::kept;
use potside::book::{Done, Entry, Id, Journal, Kept, Map, State};
use potside::quantity::Voice;
use potside::wire::{Wire, write};
use serde_json::{Value, json};
use std::collections::BTreeSet;

const V2: &str = include_str!("../fixtures/v2.journal");

/// Every kind of act that is in the fixture.
const KINDS: [&str; 30] = [
    "At",
    "AtLot",
    "AtTrial",
    "Began",
    "Choose",
    "Customer",
    "Ended",
    "Forgotten",
    "Formula",
    "Ingredient",
    "Label",
    "Limits",
    "Lot",
    "Moved",
    "Order",
    "Pot",
    "Product",
    "Rates",
    "Replace",
    "Retire",
    "Safety",
    "Scale",
    "Settings",
    "TakenFrom",
    "Ticked",
    "Trial",
    "Undo",
    "Vessel",
    "Wicks",
    "Worked",
];

fn value(it: &impl Wire) -> Value {
    serde_json::from_str(&write(it)).expect("what is written is JSON")
}

/// Today's version of each, whether it is put away, and how many versions there are.
fn things<T: Wire>(all: &Map<Kept<T>>) -> Value {
    let one = |(id, k): (&Id, &Kept<T>)| {
        let body = k.body().map_or(Value::Null, value);
        (id.0.clone(), json!({ "body": body, "retired": k.retired, "versions": k.versions.len() }))
    };
    Value::Object(all.iter().map(one).collect())
}

fn tell(journal: &Journal) -> Value {
    let s: &State = journal.state();
    let batch = |(id, b): (&Id, &potside::book::Batch)| {
        let sources: Vec<Value> =
            b.sources.iter().filter(|(until, _)| *until == u64::MAX).map(|(_, s)| value(s)).collect();
        let events: Vec<Value> = b.run.events().iter().map(value).collect();
        let told = json!({
            "formula": b.formula.0, "vessel": b.vessel.0, "version": b.version.0, "began": b.began,
            "poured": b.poured_at(), "filled": b.filled_vessels(), "ended": format!("{:?}", b.ended),
            "sources": sources, "minutes": b.minutes, "events": events,
        });
        (id.0.clone(), told)
    };
    let lots: Vec<Value> = s.lot_events.iter().map(|(id, all)| json!([id.0, all.len()])).collect();
    let burns = s.burns.iter().map(|(id, all)| {
        let events: Vec<Value> = all.events().iter().map(|(_, event)| value(event)).collect();
        (id.0.clone(), Value::Array(events))
    });
    let undone: Vec<&str> =
        journal.entries().iter().filter(|e| !journal.counts(&e.id)).map(|e| e.id.0.as_str()).collect();
    json!({
        "formulas": things(&s.formulas), "vessels": things(&s.vessels), "scales": things(&s.scales),
        "pots": things(&s.pots), "ingredients": things(&s.ingredients), "safety": things(&s.safety),
        "labels": things(&s.labels), "lots": things(&s.lots), "trials": things(&s.trials),
        "wicks": things(&s.wicks), "products": things(&s.products), "customers": things(&s.customers),
        "orders": things(&s.orders), "moves": things(&s.moves), "settings": value(&s.settings),
        "rates": value(&s.rates), "limits": value(&s.limits), "lot_events": lots,
        "burns": Value::Object(burns.collect()), "batches": Value::Object(s.batches.iter().map(batch).collect()),
        "undone": undone, "ignored": s.ignored.len(), "forks": journal.forks().len(),
        "earlier": journal.earlier().iter().map(|e| e.entries).collect::<Vec<_>>(),
    })
}

#[test]
fn a_book_of_format_2_opens_and_says_what_it_said() {
    let journal = Journal::open(V2.lines().map(str::to_owned).collect(), "k3f9q2mw");
    assert_eq!(journal.damaged(), []);
    let told = tell(&journal);
    let old: Value = serde_json::from_str(include_str!("../fixtures/v2.json")).expect("it is JSON");
    for (kind, old) in old.as_object().expect("kinds") {
        assert!(kept(old, &told[kind]), "{kind}: {} is not as {old}", told[kind]);
    }
}

#[test]
fn nothing_of_an_entry_of_format_2_is_lost_on_reading() {
    let mut kinds = BTreeSet::new();
    for line in V2.lines() {
        let entry = Entry::from_line(line).expect("the fixture is whole");
        let old: Value = serde_json::from_str(line).expect("it is JSON");
        assert_eq!(old["v"], 2);
        assert!(kept(&old["act"], &value(&entry.act)), "{line}");
        kinds.extend(old["act"].as_object().expect("an act").keys().cloned());
    }
    assert_eq!(kinds.iter().map(String::as_str).collect::<Vec<_>>(), KINDS);
}

/// Each thing done on a line: what it was, to what, what it changed, and what came of it.
fn history(done: &[Done]) -> String {
    let mut text = String::new();
    for d in done {
        let values = |all: &[Option<String>]| {
            all.iter().map(|v| v.as_deref().unwrap_or("–")).collect::<Vec<_>>().join(" → ")
        };
        let changes: Vec<String> =
            d.changes.iter().map(|c| format!("{}: {}", c.of, values(&c.values))).collect();
        text += &format!("{} | {} | {}", d.what, d.name, changes.join("; "));
        for (holds, word) in [
            (d.undone.is_some(), "undone"),
            (d.earlier, "in an earlier book"),
            (d.no_undo, "for good"),
            (d.refused.is_some(), "refused"),
        ] {
            text += if holds { " | " } else { "" };
            text += if holds { word } else { "" };
        }
        text += "\n";
    }
    text
}

/// Looked over against the acts in `v2.journal`, the last first.
#[test]
fn the_history_of_a_book_of_format_2_in_words() {
    let journal = Journal::open(V2.lines().map(str::to_owned).collect(), "k3f9q2mw");
    insta::assert_snapshot!(history(&journal.done(None, 999, Voice::default())));
}
