//! Which substances a label names (Article 18(3)(b), and Annex II, 2.8), and which of the names may be left off.

use super::whole;
use potside::desk::hazard::statements;

/// Names on the label, and those of them that may be left off.
#[track_caller]
fn named(text: &str, contains: &[&str], spare: &[&str]) {
    let said = statements(&whole(text), false);
    assert_eq!(
        (said.contains.as_slice(), said.spare.as_slice()),
        (own(contains).as_slice(), own(spare).as_slice()),
        "{text}"
    );
    let few = said.clone().with_few_names();
    assert!(few.contains.iter().all(|name| !spare.contains(&name.as_str())));
    assert_eq!(few.contains.len() + spare.len(), contains.len());
    assert_eq!(said.say_spare().is_some(), !spare.is_empty());
    // All else is said as before.
    assert_eq!((few.hazards, few.precautions, few.further), (said.hazards, said.precautions, said.further));
}

fn own(names: &[&str]) -> Vec<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

#[test]
fn a_hazard_asks_for_names_where_the_regulation_says_so() {
    for class in [
        "Skin Corr. 1 H314",
        "Eye Dam. 1 H318",
        "Muta. 2 H341",
        "Carc. 2 H351",
        "Repr. 2 H361",
        // Reproductive toxicity as well.
        "Lact. H362",
        "STOT SE 2 H371",
        "STOT SE 3 H336",
        "STOT RE 2 H373",
        "Asp. Tox. 1 H304",
        "Acute Tox. 4 H302",
        "Skin Sens. 1 H317",
        "Resp. Sens. 1 H334",
        "EUH380",
        "EUH430",
    ] {
        named(&format!("A; 90 %; {class}"), &["A"], &[]);
    }
    for class in [
        "Skin Irrit. 2 H315",
        "Eye Irrit. 2 H319",
        "Aquatic Acute 1 H400",
        "Aquatic Chronic 2 H411",
        "Ozone 1 H420",
    ] {
        named(&format!("A; 90 %; {class}"), &[], &[]);
    }
}

/// By hand: five bring the class, those that bring most of it stay.
#[test]
fn four_names_are_enough_of_one_class() {
    let five = "A; 10 %; STOT SE 3 H336\nB; 30 %; STOT SE 3 H336\nC; 8 %; STOT SE 3 H336\nD; 9 %; STOT SE 3 H336\nE; 11 %; STOT SE 3 H336";
    named(five, &["B", "E", "A", "D", "C"], &["C"]);
    // Four are no more than enough.
    named(&five.replace("\nC; 8 %; STOT SE 3 H336", ""), &["B", "E", "A", "D"], &[]);
    // What has the lower estimate brings more, though there is less of it: 10 ÷ 400 is more than 20 ÷ 1900.
    let acute = "A; 20 %; ATE oral 1900\nB; 20 %; ATE oral 1800\nC; 20 %; ATE oral 1700\nD; 20 %; ATE oral 1600\nE; 10 %; ATE oral 400";
    named(acute, &["E", "D", "C", "B", "A"], &["A"]);
}

/// By its own limit of 1 %, 3 % of A is as 30 %.
#[test]
fn a_limit_of_its_own_makes_a_name_count_more() {
    named("A; 3 %; STOT RE 1 H372; STOT RE 1 H372 >= 1 %\nB; 25 %; STOT RE 1 H372", &["A", "B"], &[]);
}

/// Each class keeps the one that brings the most of it, though that makes five.
#[test]
fn every_class_keeps_a_name() {
    let text = "A; 10 %; Eye Dam. 1 H318\nB; 12 %; Carc. 2 H351\nC; 13 %; Repr. 2 H361\nD; 20 %; STOT SE 3 H336\nE; 10 %; STOT RE 2 H373";
    named(text, &["A", "B", "C", "D", "E"], &[]);
    // A second of the same class may go, but none that is suspected of causing cancer.
    let more = format!("{text}\nF; 5 %; Eye Dam. 1 H318\nG; 2 %; Carc. 2 H351");
    named(&more, &["A", "F", "B", "G", "C", "D", "E"], &["F"]);
    // Where there is room, damage to the eyes (danger) has its second name before the organs (warning) have.
    let room = "G; 12 %; STOT RE 2 H373\nH; 11 %; STOT RE 2 H373\nC; 13 %; Repr. 2 H361\nA; 10 %; Eye Dam. 1 H318\nF; 5 %; Eye Dam. 1 H318";
    named(room, &["A", "F", "C", "G", "H"], &["H"]);
}

/// Annex II, 2.8: all sensitisers are named, however many; beside them each class keeps one.
#[test]
fn no_sensitiser_is_left_off() {
    let sensitisers: Vec<String> =
        ('P'..='U').map(|name| format!("{name}; 2 %; Skin Sens. 1 H317")).collect();
    let text = format!(
        "{}\nV; 0.2 %; Skin Sens. 1 H317\nA; 15 %; STOT SE 3 H336\nB; 14 %; STOT SE 3 H336",
        sensitisers.join("\n")
    );
    named(&text, &["P", "Q", "R", "S", "T", "U", "V", "A", "B"], &["B"]);
    // Not classed as a sensitiser: the line that names them stays whole.
    let little: Vec<String> = ('P'..='U').map(|name| format!("{name}; 0.5 %; Skin Sens. 1 H317")).collect();
    let said = statements(&whole(&little.join("\n")), false).with_few_names();
    assert_eq!(said.further, ["EUH208: Contains P, Q, R, S, T, U. May produce an allergic reaction."]);
}
