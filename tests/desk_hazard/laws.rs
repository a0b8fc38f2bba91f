//! What must hold whatever the lines.

use super::{ingredient, lines, names};
use potside::desk::hazard::{Substance, mix, read_lines, statements};
use potside::quantity::{Exact, Locale};
use proptest::prelude::*;

const CLASSES: [&str; 20] = [
    "Skin Irrit. 2 H315",
    "Skin Corr. 1B H314",
    "Skin Corr. 1 H314; pH 1",
    "Eye Dam. 1 H318",
    "Eye Irrit. 2 H319",
    "Skin Sens. 1B H317",
    "Skin Sens. 1A H317; SCL Skin Sens. 1A >= 0.01 %",
    "Acute Tox. 4 H302; Asp. Tox. 1 H304",
    "Acute Tox. 3 H331",
    "ATE dermal 700; STOT SE 3 H336",
    "Aquatic Acute 1 H400 (M=10); Aquatic Chronic 1 H410 (M=1)",
    "Aquatic Chronic 2 H411",
    "Carc. 2 H351; STOT RE 1 H372",
    "Aquatic Acute 2 H401",
    "Skin Irrit. 3 H316",
    "Acute Tox. 5 H303",
    "no data",
    "Repr. 1B H360Fd; STOT RE 1 H372 (liver) (oral)",
    "Repr. 2 H361d; STOT SE 1 H370",
    "STOT RE 2 H373 (kidneys); Repr. 1A H360D",
];

fn recipe() -> impl Strategy<Value = Vec<(usize, u32)>> {
    // Which substance it is (by name), its classes go with it, and hundredths of a percent.
    prop::collection::vec((0usize..20, 1u32..900), 1..12)
}

fn sheet(recipe: &[(usize, u32)]) -> Vec<Substance> {
    let line = |(of, share): &(usize, u32)| {
        format!(
            "S{of}; {}.{:02} %; {}",
            share / 100,
            share % 100,
            CLASSES.get(*of).copied().unwrap_or_default()
        )
    };
    lines(&recipe.iter().map(line).collect::<Vec<_>>().join("\n"))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn more_of_a_substance_never_lowers_a_class(recipe in recipe(), at in any::<prop::sample::Index>(), more in 1u32..3000, solid in any::<bool>()) {
        let before = mix(&[ingredient(Exact::whole(100), sheet(&recipe))], solid);
        let mut richer = recipe.clone();
        let at = at.index(richer.len());
        richer[at].1 = (richer[at].1 + more).min(9999);
        let after = mix(&[ingredient(Exact::whole(100), sheet(&richer))], solid);
        for class in before.classes.iter().chain(&before.further.classes) {
            prop_assert!(
                after.classes.iter().chain(&after.further.classes).any(|c| c.group_is(class) && c.rank() <= class.rank()),
                "{:?} has {:?}, {:?} has {:?}", recipe, names(&before), richer, names(&after)
            );
        }
    }

    #[test]
    fn order_and_splitting_of_lines_do_not_matter(recipe in recipe(), turn in any::<prop::sample::Index>(), part in 1u32..100) {
        let whole = mix(&[ingredient(Exact::whole(50), sheet(&recipe))], true);
        let mut other = recipe.clone();
        let turn = turn.index(other.len());
        other.rotate_left(turn);
        let (of, share) = other[0];
        if share > part {
            other[0].1 = share - part;
            other.push((of, part));
        }
        let split = mix(&[ingredient(Exact::whole(50), sheet(&other))], true);
        prop_assert_eq!(&names(&whole), &names(&split));
        prop_assert_eq!(statements(&whole, false), statements(&split, false));
        // Whatever may be left off, an allergen stays, and so does a name for every class that asks for one.
        let said = statements(&whole, false);
        let few = said.clone().with_few_names().contains;
        prop_assert!(said.spare.is_empty() || few.len() >= 4, "{:?}", said);
        prop_assert!(few.is_empty() == said.contains.is_empty() && said.spare.iter().all(|n| n != "S5" && n != "S6"), "{:?}", said);
        // Two fragrances that share the substances are one blend.
        let (left, right) = other.split_at(other.len() / 2);
        let two = mix(&[ingredient(Exact::whole(50), sheet(left)), ingredient(Exact::whole(50), sheet(right))], true);
        prop_assert_eq!(names(&whole), names(&two));
    }

    #[test]
    fn any_text_is_read_without_harm(text in "(?s).{0,200}") {
        read_lines(&text, Locale::Comma);
    }

    #[test]
    fn anything_that_looks_like_a_line_is_read_without_harm(text in "A[;|] ?[0-9hHmM.,<>=%≥ -]{0,20}(ATE|SCL|M=|Skin Sens. 1|H31[0-9]|oral|[(;:]| Category [1-4]B?|Acute toxicity|, LD50 |aquatic hazard| long|mg/kg){0,6}[0-9 .%>]{0,8}") {
        let (found, _) = read_lines(&text, Locale::Point);
        mix(&[ingredient(Exact::whole(10), found)], true);
    }
}
