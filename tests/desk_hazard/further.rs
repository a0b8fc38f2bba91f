//! The categories that only the GHS has. Limits of its Tables 3.1.1, 3.1.2, 3.2.3 and 4.1.3, from memory; each worked by hand.

use super::{ingredient, lines, names};
use potside::desk::hazard::{Mixed, Signal, further, mix, statements};
use potside::quantity::{Exact, Voice};

fn whole(text: &str) -> Mixed {
    mix(&[ingredient(Exact::whole(100), lines(text))], true)
}

/// Codes asked for elsewhere, beside the classes of the Union.
#[track_caller]
fn beyond(text: &str, codes: &[&str], union: &[&str]) {
    let mixed = whole(text);
    let (_, said) = mixed.further.statements();
    assert_eq!(said.iter().map(|(code, _)| *code).collect::<Vec<_>>(), codes, "{text}");
    assert_eq!(names(&mixed), union, "{text}");
    let reached = further(&mixed, Voice::default()).into_iter().filter(|f| f.reached);
    let mut reached: Vec<&str> = reached.map(|f| f.class.code).collect();
    reached.dedup();
    assert!(codes.iter().all(|code| reached.contains(code)), "{text}: {reached:?}");
}

#[test]
fn water() {
    // 10 × 2.5 = 25 is the second, 10 × 2.4 = 24 is not; 100 × 0.25 = 25 is the third.
    beyond("A; 2.5 %; Aquatic Acute 1 H400", &["H401"], &[]);
    beyond("A; 2.4 %; Aquatic Acute 1 H400", &["H402"], &[]);
    beyond("A; 0.25 %; Aquatic Acute 1 H400", &["H402"], &[]);
    beyond("A; 0.24 %; Aquatic Acute 1 H400", &[], &[]);
    // The M-factor: 10 × 10 × 0.25 = 25.
    beyond("A; 0.25 %; Aquatic Acute 1 H400 (M=10)", &["H401"], &[]);
    beyond("A; 25 %; Aquatic Acute 2 H401", &["H401"], &[]);
    beyond("A; 24 %; Aquatic acute, Category 2", &["H402"], &[]);
    beyond("A; 25 %; Aquatic Acute 3 H402", &["H402"], &[]);
    beyond("A; 24 %; Aquatic Acute 3 H402", &[], &[]);
    // 10 × 1 + 14.9 = 24.9, and with a tenth more 25.
    beyond("A; 1 %; Aquatic Acute 1 H400\nB; 14.9 %; Aquatic Acute 2 H401", &["H402"], &[]);
    beyond("A; 1 %; Aquatic Acute 1 H400\nB; 15 %; Aquatic Acute 2 H401", &["H401"], &[]);
    // What the Union classes is the same elsewhere.
    beyond("A; 25 %; Aquatic Acute 1 H400", &[], &["Aquatic Acute 1 (H400)"]);
}

/// The UN's worked example 4.1(a), 2012/25e, its acute part: 10 × 0.01 = 0.1, 10 × 10 × 0.01 + 1 = 2 and 100 × 10 × 0.01 + 10 × 1
/// = 20 % against 25 %, none of which is enough.
#[test]
fn a_published_example() {
    let text = "A; 0.01 %; Aquatic Acute 1 H400; Aquatic Chronic 1 H410; M=10\n\
                B; 1.0 %; Aquatic Acute 2 H401; Aquatic Chronic 2 H411\nC; 25.0 %; Aquatic Chronic 4 H413\nD; 73.99 %; not classified";
    beyond(text, &[], &["Aquatic Chronic 4 (H413)"]);
    let found = further(&whole(text), Voice::default());
    let said: Vec<(&str, &str)> = found.iter().map(|f| (f.class.code, f.said.as_str())).collect();
    assert_eq!(said, [("H401", "2.00 % in all, of 25.00 %"), ("H402", "20.00 % in all, of 25.00 %")]);
}

#[test]
fn skin() {
    beyond("A; 1 %; Skin Irrit. 2 H315", &["H316"], &[]);
    beyond("A; 0.9 %; Skin Irrit. 2 H315", &[], &[]);
    beyond("A; 10 %; Skin Irrit. 3 H316", &["H316"], &[]);
    beyond("A; 9.9 %; Skin Irrit. 3 H316", &[], &[]);
    beyond("A; 10 %; Skin Irrit. 2 H315", &[], &["Skin Irrit. 2 (H315)"]);
}

#[test]
fn swallowed_and_on_skin() {
    beyond("A; 100 %; ATE oral 3000 mg/kg", &["H303"], &[]);
    beyond("A; 100 %; ATE dermal 5000 mg/kg", &["H313"], &[]);
    beyond("A; 100 %; ATE oral 2000 mg/kg", &[], &["Acute Tox. 4 (H302)"]);
    // 100 ÷ (50 ÷ 2500) = 5000, and 100 ÷ (49 ÷ 2500) = 5102.
    beyond("A; 50 %; Acute Tox. 5 H303", &["H303"], &[]);
    beyond("A; 49 %; Acute Tox. 5 H303", &[], &[]);
    // In the Union 100 ÷ (50 ÷ 1500) = 3000; with the fifth category 100 ÷ (50 ÷ 1500 + 50 ÷ 2500) = 1875.
    beyond("A; 50 %; ATE oral 1500 mg/kg\nB; 50 %; Acute Tox. 5 (oral)", &["H302"], &[]);
    // What is breathed in has no fifth in numbers.
    beyond("A; 100 %; Acute Tox. 5 H333", &[], &[]);
}

#[test]
fn the_words_stand_apart_from_the_label_of_the_union() {
    let mixed = whole("A; 100 %; ATE oral 3000 mg/kg\nB; 3 %; Aquatic Acute 1 H400");
    let (signal, said) = mixed.further.statements();
    assert_eq!(signal, Signal::Warning);
    assert_eq!(said, [("H303", "May be harmful if swallowed."), ("H401", "Toxic to aquatic life.")]);
    assert!(statements(&mixed, false).is_empty());
    let why = further(&mixed, Voice::default());
    assert!(
        why.iter().any(|f| f.why.source.contains("GHS") && f.said.contains("up to 5000 counts")),
        "{why:?}"
    );
    assert!(why.iter().any(|f| f.class.code == "H401" && f.said.contains("30.00 % in all")), "{why:?}");
    // Of water alone there is no signal word.
    assert_eq!(whole("A; 3 %; Aquatic Acute 1 H400").further.statements().0, Signal::None);
}
