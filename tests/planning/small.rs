//! Small problems: the plan is as good as the best of all there are.

use crate::shared::{best, by_brute_force, check, finished, order_by_order, rank, small};
use potside::shelf::planning::{Limits, Search};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, max_shrink_iters: 4000, ..ProptestConfig::default() })]

    #[test]
    fn no_plan_there_is_is_better(problem in small()) {
        let plan = best(&problem);
        prop_assert!(plan.closed());
        check(&problem, &plan);
        prop_assert_eq!(rank(&problem, &plan.score), by_brute_force(&problem));
    }

    /// Nothing is listed together and next to nothing kept at first, so that all comes to the bounds and the comparing of
    /// sums, which small problems else never do: none of them may ever leave out the best.
    #[test]
    fn nor_is_one_where_every_good_is_gone_through_by_itself(
        problem in small(),
        listed in prop::sample::select(vec![0, 30]),
        width in 1..40_usize,
        spare in prop::sample::select(vec![0, 4_096]),
    ) {
        let plan = finished(Search::within(problem.clone(), Limits { listed, more: listed, width, spare }));
        prop_assert!(plan.closed());
        check(&problem, &plan);
        prop_assert_eq!(rank(&problem, &plan.score), by_brute_force(&problem));
    }

    /// At every step a plan that is allowed, never worse than the one before, nor than pouring order by order.
    #[test]
    fn plans_only_get_better(problem in small()) {
        let mut search = Search::new(problem.clone());
        let mut before = search.plan();
        let mut over = false;
        while !over {
            over = search.step(1);
            let plan = search.plan();
            check(&problem, &plan);
            prop_assert!(rank(&problem, &plan.score) <= rank(&problem, &before.score));
            if let Some(gap) = before.gap {
                // What was proven stays so.
                let found = rank(&problem, &plan.score);
                let had = rank(&problem, &before.score);
                let order = potside::shelf::planning::order(&problem.goals);
                let place = order.iter().position(|measure| *measure == gap.measure).unwrap();
                prop_assert_eq!(&found[..place], &had[..place]);
                prop_assert!(found[place] >= gap.least && gap.least <= had[place]);
            }
            before = plan;
        }
        if problem.goals.is_empty() && problem.pinned.is_empty() {
            prop_assert!(rank(&problem, &before.score) <= rank(&problem, &order_by_order(&problem)));
        }
    }
}
