//! Formulas, vessels and batches found by words.

use super::sample::{began, does, ended, id};
use super::state::journal;
use potside::book::{Act, Found};

#[test]
fn words_find_formulas_vessels_and_batches() {
    let j = super::demo::workshop();
    let found = |words: &str| -> Vec<String> {
        let name = |f: &Found| match f {
            Found::Formula(k) => k.id.to_string(),
            Found::Vessel(k) => k.id.to_string(),
            Found::Batch(b) => format!("batch of {}", b.formula),
        };
        j.state().find(&j.state().finder(), words).iter().map(name).collect()
    };
    let cases: [(&str, &[&str]); 5] = [
        ("plum", &["demo-larder", "demo-orchard", "batch of demo-orchard"]),
        ("TUMBLER", &["demo-tumbler"]),
        ("salt firm", &["demo-hedge", "batch of demo-hedge"]),
        ("wet spots", &["demo-tumbler"]),
        ("no such thing", &[]),
    ];
    for (words, want) in cases {
        assert_eq!(found(words), want, "{words}");
    }
}

#[test]
fn a_word_finds_batches_by_what_was_poured() {
    let mut j = journal();
    does(&mut j, began("b1", 4));
    does(&mut j, ended("b1", "Sold at the harvest fair"));
    let count = |words: &str| j.state().find(&j.state().finder(), words).len();
    for (words, n) in [("stout", 1), ("MEADOW plain", 1), ("harvest stout", 1), ("harvest oak", 0), ("", 1)] {
        assert_eq!(count(words), n, "{words}");
    }
    assert!(
        matches!(j.state().find(&j.state().finder(), "stout")[..], [Found::Batch(b)] if b.id == id("b1"))
    );
}

/// Words of a plan and words of a batch alone are looked for apart; together they find what stands in either.
#[test]
fn words_are_found_whichever_part_of_a_batch_they_stand_in() {
    let mut j = journal();
    let mut all: Vec<(String, String)> = Vec::new();
    // More plans of one formula than are compared, some of them the same.
    for n in 0..150_u32 {
        let Act::Began { batch, formula, vessel, plan, .. } = began(&format!("n{n}"), 4) else { return };
        let mut plan = (*plan).clone();
        plan.wick = format!("Braid {}", n * 7 % 100);
        let version = id(["e", "e2"][n as usize % 2]);
        let texts = [&plan.formula, &plan.vessel, &plan.wick].map(String::clone);
        let parts = plan.pours.iter().flat_map(|p| &p.lines).map(|l| l.name.clone());
        let mut texts: Vec<String> = texts.into_iter().chain(parts).collect();
        let at = 1_764_000_000_000 + u64::from(n * 31 % 150) * 60_000;
        let entry =
            j.entry(Act::Began { batch, formula, version, vessel, day: None, plan: plan.into() }, at, n);
        j.take(entry);
        let note = format!("Sold at fair {}", n % 7);
        does(&mut j, ended(&format!("n{n}"), &note));
        let batch = j.state().batches.get(&id(&format!("n{n}"))).expect("it began");
        texts.extend([note, potside::shelf::batch_number(batch)]);
        all.push((format!("{at} n{n}"), texts.join("\n").to_lowercase()));
    }
    all.sort_by(|a, b| b.0.cmp(&a.0));
    let finder = j.state().finder();
    let number = all[3].1.lines().last().expect("it has one").to_owned();
    for words in [
        "",
        "braid",
        "braid 7",
        "fair 3",
        "braid 21 fair 0",
        "FAIR",
        "stout braid 9 sold",
        "x",
        "sold aat",
        &number,
    ] {
        let has = |text: &str| words.to_lowercase().split_whitespace().all(|w| text.contains(w));
        let want: Vec<&str> =
            all.iter().filter(|(_, text)| has(text)).map(|(name, _)| name.as_str()).collect();
        let name = |f: &Found| match f {
            Found::Batch(b) => format!("{} {}", b.began, b.id),
            other => panic!("{other:?}"),
        };
        assert_eq!(j.state().find(&finder, words).iter().map(name).collect::<Vec<_>>(), want, "{words}");
    }
}
