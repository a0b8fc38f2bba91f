//! The problem goes to the worker as text, and the plan comes back so.

use potside::shelf::planning::{
    Gap, Goal, Good, Line, Loss, Measure, Met, Miss, Pin, Plan, Pour, Problem, Score, Size, order,
};
use potside::wire;

#[test]
fn problem_and_plan_are_read_back() {
    let size = Size { number: 4, uses: vec![(0, 700_000_000_000), (2, 4)] };
    let problem = Problem {
        goods: vec![Good {
            takes: 14,
            stock: vec![(0, 3), (5, 8)],
            spare: 2,
            sizes: vec![size.clone()],
            kind: 7,
            depth: 30,
        }],
        lines: vec![
            Line { order: 9, good: 0, number: 4, wanted: Some(15), in_parts: true },
            Line { order: 9, good: 0, number: 2, wanted: None, in_parts: false },
        ],
        supplies: vec![u64::MAX, 0],
        goals: vec![Goal::Changes, Goal::Late],
        pinned: vec![Pin { good: 0, size }],
    };
    assert_eq!(wire::read(&wire::write(&problem)), Ok(problem));

    let met = |miss| Met { on_time: 1, late: 2, unmet: 3, ready: Some(14), poured: 2, miss };
    let plan = Plan {
        pours: vec![Pour {
            good: 0,
            number: 4,
            pinned: true,
            serves: vec![(0, 1), (1, 2)],
            spare: 1,
            surplus: 0,
            without: Loss { late: 1, unmet: 2, short: 3 },
        }],
        lines: vec![
            met(None),
            met(Some(Miss::Date { ready: 14 })),
            met(Some(Miss::Supply { number: 4, lacks: vec![(1, 5)] })),
            met(Some(Miss::Size)),
            met(Some(Miss::Most)),
            Met { miss: Some(Miss::Goals), ..Met::default() },
        ],
        score: Score { late: 1, unmet: 2, short: 3, pours: 4, surplus: 5, changes: 6 },
        gap: Some(Gap { measure: Measure::Unmet, least: 1 }),
        lacks: vec![(1, 9)],
    };
    assert_eq!(wire::read(&wire::write(&plan)), Ok(plan));
}

#[test]
fn goals_left_out_follow_as_usual() {
    use Measure::{Changes, Late, Pours, Short, Surplus, Unmet};
    assert_eq!(order(&[]), [Late, Unmet, Short, Pours, Surplus, Changes]);
    assert_eq!(
        order(&[Goal::Changes, Goal::Late, Goal::Changes]),
        [Changes, Late, Unmet, Short, Pours, Surplus]
    );
}
