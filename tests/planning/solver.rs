//! Workshops of all sizes: the best in every measure is what a general solver found (tests/tables/planning.py).

use crate::planning_shared::{Shape, workshop};
use crate::shared::{best, check};
use potside::shelf::planning::{Measure, Score, Search, order};
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

/// A fifth of all supplies short, vessels and wicks among them: SciPy's solver took 44 s for this one (tests/tables/planning.py
/// 79190 40 200 20 0). Here it takes some hundred thousand sums, a fraction of a second; without rounding what is there of
/// a supply to whole batches it is not proven after a hundred times as many.
#[test]
fn a_large_workshop_short_of_much_is_proven_soon() {
    let problem = workshop(&Shape { seed: 79_190, goods: 40, orders: 200, scarce: 20, first: 0 });
    let mut search = Search::new(problem.clone());
    let slices = (0..200).find(|_| search.step(2_000));
    assert!(slices.is_some(), "not proven after 400 000 sums: {:?}", search.gap());
    let plan = search.plan();
    check(&problem, &plan);
    assert_eq!(plan.score, Score { late: 505, unmet: 461, short: 72, pours: 54, surplus: 23, changes: 23 });
}

/// Nearly a third of them short: with what is ahead of a sum reckoned supply by supply it takes 5 slices, without it 57,
/// as it was when the figures held here were found.
#[test]
fn a_large_workshop_short_of_still_more_is_proven_soon() {
    let problem = workshop(&Shape { seed: 237_570, goods: 40, orders: 200, scarce: 30, first: 0 });
    let mut search = Search::new(problem.clone());
    let slices = (0..12).find(|_| search.step(10_000));
    assert!(slices.is_some(), "not proven in time: {:?}", search.gap());
    let plan = search.plan();
    check(&problem, &plan);
    assert_eq!(plan.score, Score { late: 410, unmet: 379, short: 59, pours: 92, surplus: 14, changes: 29 });
}

/// Forty products in seven colours and fragrances, as where each is poured into several vessels, a third of all supplies
/// short. With all goods of a colour listed together before the bounds were known one slice of this took seconds, and all
/// of it 38 s natively, where it is now a quarter of one; the figures are those that the slower search came to.
#[test]
fn a_large_workshop_of_few_colours_is_proven_soon() {
    let mut problem = workshop(&Shape { seed: 52_573_958, goods: 40, orders: 200, scarce: 30, first: 0 });
    problem.goods.iter_mut().for_each(|good| good.kind %= 7);
    let mut search = Search::new(problem.clone());
    let slices = (0..60).find(|_| search.step(40_000));
    assert!(slices.is_some(), "not proven in time: {:?}", search.gap());
    let plan = search.plan();
    check(&problem, &plan);
    assert_eq!(plan.score, Score { late: 432, unmet: 323, short: 62, pours: 77, surplus: 35, changes: 6 });
}
