//! Far more goods than are listed together, each poured or not: which ones is a knapsack with two supplies. It is filled
//! by the textbook's table too: the most for so much of either supply, thing by thing.

use crate::shared::{best, check, finished};
use potside::shelf::planning::{Good, Limits, Line, Problem, Search, Size};
use proptest::prelude::*;

const GOODS: usize = 36;

/// A good: candles ordered of it, and what all of them take of each supply.
pub(crate) type Thing = (u32, Vec<u64>);

/// Each thing ordered whole and poured in one batch. No two are of one kind.
pub(crate) fn knapsack(things: &[Thing], supplies: &[u64]) -> Problem {
    let good = |(at, (number, uses)): (usize, &Thing)| Good {
        sizes: vec![Size { number: *number, uses: uses.iter().copied().enumerate().collect() }],
        kind: at as u32,
        ..Good::default()
    };
    let line = |(good, (number, _)): (usize, &Thing)| Line {
        order: good,
        good,
        number: *number,
        wanted: None,
        in_parts: false,
    };
    Problem {
        goods: things.iter().enumerate().map(good).collect(),
        lines: things.iter().enumerate().map(line).collect(),
        supplies: supplies.to_vec(),
        ..Problem::default()
    }
}

/// The most candles that can be poured, and with so many the fewest pours.
fn most(things: &[Thing], supplies: &[u64]) -> (u32, u32) {
    let (wide, high) = (supplies[0] as usize + 1, supplies[1] as usize + 1);
    // Candles, and pours from a hundred downwards.
    let mut best = vec![(0_u32, 100_u32); wide * high];
    for (number, uses) in things {
        let (a, b) = (uses[0] as usize, uses[1] as usize);
        for x in (a..wide).rev() {
            for y in (b..high).rev() {
                let before = best[(x - a) * high + y - b];
                let with = (before.0 + number, before.1 - 1);
                best[x * high + y] = best[x * high + y].max(with);
            }
        }
    }
    let (candles, pours) = best[wide * high - 1];
    (candles, 100 - pours)
}

/// The more it takes, the more candles there are, or nearly so: then few things are plainly better than others.
fn thing() -> impl Strategy<Value = Thing> {
    ([4..25_u64, 4..25_u64], 0..4_u32)
        .prop_map(|(uses, more)| ((uses[0] + uses[1]) as u32 / 2 + more, uses.to_vec()))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, max_shrink_iters: 100, ..ProptestConfig::default() })]

    #[test]
    fn no_other_choice_of_many_goods_is_better(
        things in prop::collection::vec(thing(), GOODS),
        shares in [20..50_u64, 20..50_u64],
        width in 1..5_usize,
    ) {
        let sum = |supply: usize| things.iter().map(|(_, uses)| uses[supply]).sum::<u64>();
        let supplies: Vec<u64> = shares.iter().enumerate().map(|(s, share)| sum(s) * share / 100).collect();
        let problem = knapsack(&things, &supplies);
        let plan = best(&problem);
        prop_assert!(plan.closed());
        check(&problem, &plan);
        let all: u32 = things.iter().map(|(number, _)| number).sum();
        prop_assert_eq!((all - plan.score.late, plan.score.pours), most(&things, &supplies));
        // With hardly any sums kept at first nearly all go unseen: none of the rounds may then be taken for a proof.
        let narrow = Limits { listed: 0, more: 0, width, spare: 0 };
        let plan = finished(Search::within(problem, narrow));
        prop_assert_eq!((all - plan.score.late, plan.score.pours), most(&things, &supplies));
    }
}
