//! A class of acute toxicity beside an estimate: of two words that do not agree the stricter counts, whichever it is.
//! Bounds and point values of Annex I, Tables 3.1.1 and 3.1.2.

use super::{lines, names, whole};
use potside::desk::hazard::{Ingredient, mix, remarks};
use potside::quantity::{Exact, Voice};

#[track_caller]
fn counts(text: &str, classes: &str, at_odds: Option<&str>) {
    let mixed = whole(text);
    assert_eq!(names(&mixed).join("; "), classes, "{text}");
    let said = remarks(&mixed, Voice::default()).join("\n");
    let told = said.lines().find(|line| line.contains("do not agree"));
    assert_eq!(told.is_some(), at_odds.is_some(), "{text}: {said}");
    if let (Some(told), Some(at_odds)) = (told, at_odds) {
        assert!(told.contains(at_odds) && told.contains("The stricter of the two counts"), "{told}");
    }
}

#[test]
fn an_estimate_does_not_cancel_a_stricter_class() {
    let (oral, skin) = (Some("A: Acute Tox. 3 (H301)."), Some("A: Acute Tox. 3 (H311)."));
    counts("A; 100 %; Acute Tox. 3 H301; LD50 oral > 2000", "Acute Tox. 3 (H301)", oral);
    counts("A; 100 %; LD50 oral > 5000 mg/kg; Acute Tox. 3 H301", "Acute Tox. 3 (H301)", oral);
    counts("A; 100 %; Acute Tox. 3 H311; ATE dermal 1900", "Acute Tox. 3 (H311)", skin);
    // The point value of category 3 is 100 mg/kg: 5 % of it come to 2000, 4.99 % to 2004.
    counts("A; 5 %; Acute Tox. 3 H301; ATE oral 1900", "Acute Tox. 4 (H302)", oral);
    counts("A; 4.99 %; Acute Tox. 3 H301; ATE oral 1900", "", oral);
    // The bound of the category is within it.
    counts("A; 100 %; Acute Tox. 3 H301; ATE oral 300", "Acute Tox. 3 (H301)", None);
    counts("A; 100 %; Acute Tox. 3 H301; ATE oral 300.01", "Acute Tox. 3 (H301)", oral);
}

/// Table 3.1.1, note a: what is known of the dose says it more finely than the category does.
#[test]
fn within_its_class_an_estimate_counts() {
    counts("A; 25 %; Acute Tox. 4 H302; ATE oral 1800", "", None);
    counts("A; 20 %; Acute Tox. 4 H302; ATE oral 400", "Acute Tox. 4 (H302)", None);
    // A point value that is typed beside its class is that class, though it is the bound of the one before.
    counts("A; 50 %; Acute Tox. 2 H300; ATE oral 5", "Acute Tox. 2 (H300)", None);
}

#[test]
fn an_estimate_that_is_stricter_than_its_class_counts() {
    let at_odds = Some("A: Acute Tox. 4 (H302).");
    counts("A; 100 %; Acute Tox. 4 H302; ATE oral 299", "Acute Tox. 3 (H301)", at_odds);
    counts("A; 100 %; Acute Tox. 4 H302; ATE oral 300", "Acute Tox. 3 (H301)", None);
}

/// What is breathed in has three forms. An estimate says the class where it is as strict, in whichever form, unless the
/// class tells its own.
#[test]
fn forms_of_what_is_breathed_in() {
    let at_odds = Some("A: Acute Tox. 3 (H331).");
    counts("A; 100 %; Acute Tox. 3 H331; LC50 vapour 5", "Acute Tox. 3 (H331)", None);
    // As dust 20 % of 0.5 mg/L would come to 2.5; as vapour 20 % of 5 come to 25.
    counts("A; 20 %; Acute Tox. 3 H331; LC50 vapour 5", "", None);
    counts("A; 99 %; Acute Tox. 3 H331; ATE gas > 20000", "Acute Tox. 3 (H331)", at_odds);
    counts("A; 99 %; Acute Tox. 3 H331; LC50 dust > 5", "Acute Tox. 3 (H331)", at_odds);
    counts("A; 99 %; Acute Tox. 3 (vapour) H331; LC50 vapour > 20", "Acute Tox. 3 (H331)", at_odds);
    // The class is of the vapour; what is known of dust does not say it. 20 % of 3 mg/L come to 15.
    counts("A; 20 %; Acute Tox. 3 (vapour) H331; LC50 dust 4.9", "Acute Tox. 4 (H332)", None);
}

/// Two sheets of one substance: the class of one is not outdone by the estimate of the other, in whatever order.
#[test]
fn two_sheets_of_one_substance() {
    let of = |text: &str| Ingredient {
        name: "Oil".into(),
        percent: Exact::whole(50),
        sheet: Some(lines(text)),
        harmless: false,
    };
    let (class, dose) = (of("A; 100 %; Acute Tox. 3 H301"), of("A; 100 %; ATE oral 1900"));
    for both in [[class.clone(), dose.clone()], [dose, class]] {
        assert_eq!(names(&mix(&both, true)), ["Acute Tox. 3 (H301)"]);
    }
}

/// What only the GHS has is no reason to disbelieve “more than 2000”.
#[test]
fn the_fifth_category_agrees_with_more_than_two_thousand() {
    counts("A; 100 %; Acute Tox. 5 H303; LD50 oral > 2000", "", None);
    let mixed = whole("A; 100 %; Acute Tox. 5 H303; LD50 oral > 2000");
    assert_eq!(mixed.further.statements().1, [("H303", "May be harmful if swallowed.")]);
}
