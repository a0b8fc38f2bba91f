//! Single cases that can be followed by hand, and what a plan says of its pours and of missed lines.

use crate::shared::{best, check, finished};
use potside::shelf::planning::{
    Goal, Good, Limits, Line, Loss, MOST, Miss, Pin, Plan, Pour, Problem, Score, Search, Size,
};

/// Batches of 4, 8, 16 and 24, each candle of which takes 200 of supply 0.
fn good(takes: u32, stock: &[(u32, u32)]) -> Good {
    let sizes = [4, 8, 16, 24].map(|number| Size { number, uses: vec![(0, 200 * u64::from(number))] });
    Good { takes, stock: stock.to_vec(), sizes: sizes.to_vec(), ..Good::default() }
}

fn line(good: usize, number: u32, wanted: u32) -> Line {
    Line { order: 0, good, number, wanted: Some(wanted), in_parts: false }
}

fn problem(goods: Vec<Good>, lines: Vec<Line>, supply: u64) -> Problem {
    Problem { goods, lines, supplies: vec![supply], ..Problem::default() }
}

fn solved(problem: &Problem) -> Plan {
    let plan = best(problem);
    assert!(plan.closed());
    check(problem, &plan);
    plan
}

fn poured(plan: &Plan) -> Vec<(usize, u32)> {
    plan.pours.iter().map(|pour| (pour.good, pour.number)).collect()
}

/// Common practice, no source: four ordered, three on the shelf, batches of four at least: one is short, and one pour of
/// four leaves three.
#[test]
fn one_short_is_one_pour_of_four_that_leaves_three() {
    let plan = solved(&problem(vec![good(2, &[(0, 3)])], vec![line(0, 4, 5)], 10_000));
    assert_eq!(
        plan.pours,
        [Pour {
            good: 0,
            number: 4,
            serves: vec![(0, 1)],
            surplus: 3,
            without: Loss { late: 4, unmet: 4, short: 0 },
            ..Pour::default()
        }]
    );
    assert_eq!(plan.score, Score { pours: 1, surplus: 3, ..Score::default() });
    assert_eq!((plan.lines[0].on_time, plan.lines[0].poured, plan.lines[0].ready), (4, 1, Some(2)));
}

#[test]
fn one_pour_of_twenty_four_rather_than_more() {
    let mut good = good(2, &[]);
    good.spare = 3;
    let plan = solved(&problem(vec![good], vec![line(0, 20, 5)], 10_000));
    assert_eq!(poured(&plan), [(0, 24)]);
    assert_eq!((plan.pours[0].spare, plan.pours[0].surplus), (3, 1));
}

#[test]
fn a_date_that_cannot_be_kept_is_said() {
    let plan = solved(&problem(vec![good(14, &[])], vec![line(0, 4, 9)], 10_000));
    assert_eq!(poured(&plan), [(0, 4)]);
    assert_eq!((plan.lines[0].late, plan.lines[0].ready), (4, Some(14)));
    assert_eq!(plan.lines[0].miss, Some(Miss::Date { ready: 14 }));
    assert_eq!(plan.score.late, 4);
}

#[test]
fn candles_not_cured_in_time_do_not_serve() {
    // Four on the shelf are ready on day 3 only, so the line for day 2 waits, and the one for day 3 gets them.
    let lines = vec![line(0, 4, 2), line(0, 4, 3)];
    let plan = solved(&problem(vec![good(9, &[(3, 4)])], lines, 0));
    assert_eq!((plan.lines[0].on_time, plan.lines[1].on_time), (0, 4));
    assert_eq!(plan.score.late, 4);
}

#[test]
fn what_is_lacking_is_said() {
    // Enough for twelve candles: the line for eight can be had, that for six would need a batch of eight more.
    let lines = vec![line(0, 8, 5), line(0, 6, 5)];
    let plan = solved(&problem(vec![good(2, &[])], lines, 2400));
    assert_eq!(plan.score.late, 6);
    assert_eq!(plan.lines[0].on_time, 8);
    assert_eq!(plan.lines[1].miss, Some(Miss::Supply { number: 8, lacks: vec![(0, 800)] }));
    let mut nothing = problem(vec![good(2, &[])], vec![line(0, 4, 5)], 2400);
    nothing.goods[0].sizes.clear();
    assert_eq!(solved(&nothing).lines[0].miss, Some(Miss::Size));
}

#[test]
fn a_line_in_parts_takes_what_there_is() {
    let mut lines = vec![line(0, 6, 5)];
    let whole = solved(&problem(vec![good(2, &[(0, 1)])], lines.clone(), 800));
    assert_eq!((whole.lines[0].unmet, whole.pours.len()), (6, 0));
    lines[0].in_parts = true;
    let parts = solved(&problem(vec![good(2, &[(0, 1)])], lines, 800));
    assert_eq!((parts.lines[0].on_time, parts.lines[0].unmet), (5, 1));
    assert_eq!(parts.lines[0].miss, Some(Miss::Supply { number: 4, lacks: vec![(0, 800)] }));
}

#[test]
fn the_goals_can_be_put_in_another_order() {
    let mut asked = problem(vec![good(2, &[])], vec![line(0, 4, 5)], 10_000);
    asked.goals = vec![Goal::Pours];
    let plan = solved(&asked);
    assert_eq!((plan.pours.len(), plan.lines[0].miss.clone()), (0, Some(Miss::Goals)));
}

#[test]
fn pinned_pours_stay_even_where_the_supplies_do_not_reach() {
    let mut asked = problem(vec![good(2, &[]), good(2, &[])], vec![line(0, 4, 5), line(1, 4, 5)], 1800);
    asked.pinned = vec![Pin { good: 1, size: Size { number: 6, uses: vec![(0, 1200)] } }];
    let plan = solved(&asked);
    // 600 are left, and the smallest batch of the other takes 800.
    assert_eq!(poured(&plan), [(1, 6)]);
    assert!(plan.pours[0].pinned && plan.lacks.is_empty());
    asked.supplies = vec![1000];
    assert_eq!(solved(&asked).lacks, [(0, 200)]);
}

#[test]
fn light_is_poured_before_dark_and_one_kind_together() {
    let of = |kind, depth| Good { kind, depth, ..good(2, &[]) };
    let goods = vec![of(1, 60), of(2, 10), of(1, 60), of(3, 30)];
    let lines = (0..4).map(|at| line(at, 4, 5)).collect();
    let plan = solved(&problem(goods, lines, 10_000));
    assert_eq!(poured(&plan).iter().map(|(good, _)| *good).collect::<Vec<_>>(), [1, 3, 0, 2]);
    assert_eq!(plan.score.changes, 2);
}

#[test]
fn numbers_out_of_all_reason_are_borne() {
    let mut asked =
        problem(vec![good(u32::MAX, &[(u32::MAX, u32::MAX)])], vec![line(0, u32::MAX, 0); 3], u64::MAX);
    asked.goods[0].spare = u32::MAX;
    asked.lines.push(line(7, 3, 1));
    let plan = best(&asked);
    assert_eq!(plan.lines[0].on_time, 0);
}

/// More of one kind than is planned at once: what fits is planned, and why the rest is not is said.
#[test]
fn more_of_one_kind_than_is_planned_at_once_is_said() {
    let mut asked = problem(vec![good(2, &[])], vec![line(0, 24, 5), line(0, MOST + 1, 5)], u64::MAX);
    let plan = solved(&asked);
    assert_eq!((plan.lines[0].on_time, plan.lines[1].on_time), (24, 0));
    assert_eq!(plan.lines[1].miss, Some(Miss::Most));
    asked.lines[1].number = MOST - 24;
    assert_eq!(solved(&asked).score.late, 0);
}

/// A supply of which there is none says nothing of another.
#[test]
fn none_of_one_supply_does_not_make_another_plenty() {
    let size = |number, uses| Size { number, uses: vec![uses] };
    let goods = vec![
        Good { sizes: vec![size(1, (1, 1)), size(2, (0, 1))], ..Good::default() },
        Good { sizes: vec![size(1, (0, 1))], ..Good::default() },
    ];
    let lines = vec![line(0, 4, 5), line(0, 4, 5), line(1, 2, 5)];
    let asked = Problem { goods, lines, supplies: vec![2, 0, 0], ..Problem::default() };
    assert_eq!(solved(&asked).score.late, 6);
}

/// What is of a colour that has been poured already costs no change any more, and what is not may still cost one: of two
/// ways to begin, the one with fewer changes so far does not make the other needless. The pours that a first plan takes for
/// the orders are not the best, so that the spare comes to the search too.
#[test]
fn a_change_that_is_paid_for_is_not_held_against_what_comes_after() {
    let spare = Good { spare: 3, sizes: vec![Size { number: 3, uses: vec![(1, 3)] }], ..Good::default() };
    let of = |number, used| Good { sizes: vec![Size { number, uses: vec![(0, used)] }], ..Good::default() };
    let goods = vec![spare.clone(), spare.clone(), spare, of(5, 6), of(4, 5), of(4, 5)];
    let lines = vec![line(3, 5, 5), line(4, 4, 5), line(5, 4, 5)];
    let goals = vec![Goal::Late, Goal::Changes, Goal::Short];
    let asked = Problem { goods, lines, supplies: vec![10, 6], goals, ..Problem::default() };
    let limits = Limits { listed: 0, more: 0, ..Limits::default() };
    for plan in [solved(&asked), finished(Search::within(asked.clone(), limits))] {
        assert!(plan.closed());
        assert_eq!(plan.score, Score { late: 5, unmet: 5, short: 3, pours: 4, surplus: 0, changes: 0 });
    }
}
