//! What all pots of a plan take together.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::{Workshop, g, read};
use potside::pot::{Need, Plan, Target};
use potside::quantity::{Exact, Mass, Voice};

/// Seven vessels in pots of four and three.
fn plan() -> Plan {
    let mut w = Workshop::new();
    w.pot.as_mut().unwrap().capacity = read("800 g");
    let plan = w.plan(Target::Vessels(7)).unwrap();
    assert_eq!(plan.pours.iter().map(|p| p.vessels).collect::<Vec<_>>(), [4, 3]);
    plan
}

#[test]
fn all_pots_together() {
    let plan = plan();
    let needs = plan.needs();
    let names: Vec<&str> = needs.iter().map(|n| n.name.as_str()).collect();
    assert_eq!(names, ["Coco", "Soy", "Sun guard", "Hardener", "Red", "Blue", "Fig leaf", "Wick tab"]);
    let all: Mass = needs.iter().map(|n| n.mass).sum();
    assert_eq!(all, plan.pours.iter().map(|p| p.total).sum());
    let counted = |at: usize| (needs[at].drops, needs[at].eighths, needs[at].pieces);
    // Three drops for four and 2¼ for three, 18 eighths for four and 13½ for three, a piece for each.
    assert_eq!([3, 4, 5, 7].map(counted), [(0, 18, 0), (5, 0, 0), (10, 0, 0), (0, 0, 7)]);
    assert!(needs.iter().find(|n| n.name == "Soy").unwrap().mass > g(790, 1));
}

#[test]
fn what_a_plan_takes() {
    let plan = plan();
    for name in ["Coco", "Red", "Wick tab", "Tumbler", "Cotton 12"] {
        assert!(plan.takes(name), "{name}");
    }
    assert!(!plan.takes("Cedar"));
    // As everywhere in the book, in whatever case it is written.
    for name in ["coco", " WICK TAB ", "tumbler", "cotton 12 "] {
        assert!(plan.takes(name), "{name}");
    }
    assert!(!plan.takes("cotton 1") && !plan.takes(""));
    let soy = plan.needs()[1].mass;
    assert_eq!(plan.leaves("Soy", soy + g(5, 1)), g(5, 1));
    assert_eq!(plan.leaves("Soy", g(1, 1)), Mass::ZERO);
    assert_eq!(plan.leaves("soy ", soy + g(5, 1)), g(5, 1));
    assert_eq!(plan.leaves("Cedar", g(1, 1)), g(1, 1));
}

#[test]
fn a_need_is_said_as_it_is_measured() {
    let none = Need { name: "Part".into(), mass: Mass::ZERO, drops: 0, eighths: 0, pieces: 0 };
    let weighing = |num, den| Need { mass: Mass::base(Exact::ratio(num, den)), ..none.clone() };
    for (need, expected) in [
        (weighing(61, 1), "61.0 g (2.15 oz)"),
        (Need { drops: 14, ..weighing(293, 1000) }, "14 drops, 0.29 g"),
        (Need { drops: 1, ..none.clone() }, "1 drop"),
        (Need { eighths: 24, ..weighing(8, 1) }, "1 tbsp, 8.0 g"),
        (Need { eighths: 6, ..none.clone() }, "¾ tsp"),
        (Need { pieces: 8, ..none.clone() }, "8 pieces"),
        (Need { pieces: 1, ..none.clone() }, "1 piece"),
    ] {
        assert_eq!(need.say(Voice::default()), expected);
    }
}
