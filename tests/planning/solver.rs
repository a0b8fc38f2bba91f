//! Workshops of all sizes: the best in every measure is what a general solver found (tests/tables/planning.py).

use crate::planning_shared::{Shape, workshop};
use crate::shared::{best, check};
use potside::shelf::planning::{Measure, order};
use serde_json::Value;

#[test]
fn plans_are_as_good_as_those_of_a_general_solver() {
    let table: Value = serde_json::from_str(include_str!("../tables/planning.json")).unwrap();
    let mut held = 0;
    for row in table["workshops"].as_array().unwrap() {
        let of = |name: &str| row[name].as_u64().unwrap() as u32;
        let shape = Shape {
            seed: of("seed"),
            goods: of("goods"),
            orders: of("orders"),
            scarce: of("scarce"),
            first: of("first"),
        };
        if row["best"].is_null() {
            continue;
        }
        let problem = workshop(&shape);
        let plan = best(&problem);
        assert!(plan.closed(), "{shape:?}");
        check(&problem, &plan);
        for measure in order(&problem.goals) {
            let name = match measure {
                Measure::Late => "late",
                Measure::Unmet => "unmet",
                Measure::Short => "short",
                Measure::Pours => "pours",
                Measure::Surplus => "surplus",
                Measure::Changes => "changes",
            };
            assert_eq!(
                u64::from(plan.score.of(measure)),
                row["best"][name].as_u64().unwrap(),
                "{name} of {shape:?}"
            );
        }
        held += 1;
    }
    assert!(held >= 30, "only {held} workshops were held against the solver");
}
