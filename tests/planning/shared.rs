//! Small problems drawn, plans checked by other means than the planner's, and the search run to its end.

use potside::shelf::planning::{Goal, Good, Line, Pin, Plan, Problem, Score, Search, Size, order};
use proptest::prelude::*;
use std::collections::BTreeSet;

pub(crate) fn best(problem: &Problem) -> Plan {
    finished(Search::new(problem.clone()))
}

pub(crate) fn finished(mut search: Search) -> Plan {
    while !search.step(1000) {}
    search.plan()
}

pub(crate) fn rank(problem: &Problem, score: &Score) -> [u32; 6] {
    score.rank(&order(&problem.goals))
}

fn size(supplies: usize) -> impl Strategy<Value = Size> {
    (1..6_u32, prop::collection::vec((0..supplies, 0..4_u64), 0..3), prop::bool::ANY).prop_map(
        |(number, uses, by_number)| {
            // Mostly what a batch takes goes by its size.
            let uses = uses.into_iter().map(|(s, u)| (s, if by_number { u * u64::from(number) } else { u }));
            Size { number, uses: uses.collect() }
        },
    )
}

fn good(supplies: usize) -> impl Strategy<Value = Good> {
    let stock = prop::collection::vec((0..8_u32, 1..4_u32), 0..3);
    let sizes = prop::collection::vec(size(supplies), 0..4);
    (0..6_u32, stock, 0..3_u32, sizes, 0..2_u32, 0..3_u32).prop_map(
        |(takes, stock, spare, sizes, kind, depth)| Good { takes, stock, spare, sizes, kind, depth },
    )
}

fn line(goods: usize) -> impl Strategy<Value = Line> {
    (0..4_usize, 0..goods, 1..5_u32, prop::option::weighted(0.8, 0..9_u32), prop::bool::weighted(0.3))
        .prop_map(|(order, good, number, wanted, in_parts)| Line { order, good, number, wanted, in_parts })
}

/// Few goods, few lines, and supplies of which there is mostly too little.
pub(crate) fn small() -> impl Strategy<Value = Problem> {
    (1..4_usize, 0..4_usize).prop_flat_map(|(goods, supplies)| {
        let at_least_one = supplies.max(1);
        (
            prop::collection::vec(good(at_least_one), goods),
            prop::collection::vec(line(goods), 0..6),
            prop::collection::vec(0..20_u64, at_least_one),
            Just(Goal::ALL.to_vec()).prop_shuffle(),
            0..6_usize,
            prop::collection::vec((0..goods, size(at_least_one)), 0..2),
            prop::bool::weighted(0.3),
        )
            .prop_map(|(goods, lines, supplies, mut goals, named, pins, pinned)| {
                goals.truncate(named);
                let pins = pins.into_iter().filter(|_| pinned).map(|(good, size)| Pin { good, size });
                Problem { goods, lines, supplies, goals, pinned: pins.collect() }
            })
    })
}

/// Candles of one good by the day they are ready, one for each.
fn candles(good: &Good, poured: u32) -> Vec<u32> {
    let mut days: Vec<u32> =
        good.stock.iter().flat_map(|(day, number)| vec![*day; *number as usize]).collect();
    days.extend(vec![good.takes; poured as usize]);
    days.sort_unstable();
    days
}

/// Every score that some way to deal the candles out gives: late, unmet, short, surplus.
fn dealt(good: &Good, lines: &[&Line], days: &[u32], out: &mut BTreeSet<[u32; 4]>) {
    fn deal(
        rest: &[&Line],
        days: Vec<u32>,
        late: u32,
        unmet: u32,
        then: u32,
        good: &Good,
        out: &mut BTreeSet<[u32; 4]>,
    ) {
        let Some((line, rest)) = rest.split_first() else {
            // What goes late takes what is left.
            let Some(left) = (days.len() as u32).checked_sub(then) else { return };
            out.insert([late, unmet, good.spare.saturating_sub(left), left.saturating_sub(good.spare)]);
            return;
        };
        for on_time in 0..=line.number {
            for after in 0..=line.number - on_time {
                let whole = on_time == line.number || (on_time == 0 && (after == 0 || after == line.number));
                if !line.in_parts && !whole || after > 0 && line.wanted.is_none() {
                    continue;
                }
                // Lines come by the day wanted, so which of the candles ready by then they take is all one.
                let in_time = days.iter().filter(|day| line.wanted.is_none_or(|w| **day <= w)).count() as u32;
                if on_time > in_time {
                    continue;
                }
                let left = days[on_time as usize..].to_vec();
                let never = line.number - on_time - after;
                deal(rest, left, late + line.number - on_time, unmet + never, then + after, good, out);
            }
        }
    }
    let mut lines = lines.to_vec();
    lines.sort_by_key(|line| line.wanted.unwrap_or(u32::MAX));
    deal(&lines, days.to_vec(), 0, 0, 0, good, out);
}

/// A way to pour one good, from all there are: score without changes, uses, poured.
type Way = ([u32; 5], Vec<u64>, bool);

fn ways(problem: &Problem, at: usize) -> BTreeSet<Way> {
    let good = &problem.goods[at];
    let lines: Vec<&Line> = problem.lines.iter().filter(|line| line.good == at).collect();
    let pins: Vec<&Size> = problem.pinned.iter().filter(|pin| pin.good == at).map(|pin| &pin.size).collect();
    let need: u32 = lines.iter().map(|line| line.number).sum::<u32>() + good.spare;
    let mut ways = BTreeSet::new();
    let mut stack: Vec<(usize, u32, u32, Vec<u64>)> = vec![(0, 0, 0, vec![0; problem.supplies.len()])];
    while let Some((from, poured, pours, uses)) = stack.pop() {
        let all = poured + pins.iter().map(|size| size.number).sum::<u32>();
        let mut scores = BTreeSet::new();
        dealt(good, &lines, &candles(good, all), &mut scores);
        for [late, unmet, short, surplus] in scores {
            let score = [late, unmet, short, pours + pins.len() as u32, surplus];
            ways.insert((score, uses.clone(), pours > 0 || !pins.is_empty()));
        }
        // Beyond the need a pour more is of no use to anybody.
        if poured >= need {
            continue;
        }
        for (next, size) in good.sizes.iter().enumerate().skip(from) {
            let mut uses = uses.clone();
            for (supply, used) in &size.uses {
                uses[*supply] += used;
            }
            if size.number > 0 {
                stack.push((next, poured + size.number, pours + 1, uses));
            }
        }
    }
    ways
}

/// The least rank of all plans there are.
pub(crate) fn by_brute_force(problem: &Problem) -> [u32; 6] {
    let mut left: Vec<i64> = problem.supplies.iter().map(|s| *s as i64).collect();
    for pin in &problem.pinned {
        for (supply, used) in &pin.size.uses {
            left[*supply] -= *used as i64;
        }
    }
    let left: Vec<u64> = left.into_iter().map(|left| left.max(0) as u64).collect();
    // Sums so far: score, uses, kinds poured.
    let mut sums: BTreeSet<([u32; 5], Vec<u64>, BTreeSet<u32>)> = BTreeSet::new();
    sums.insert(([0; 5], vec![0; left.len()], BTreeSet::new()));
    for (at, good) in problem.goods.iter().enumerate() {
        let ways = ways(problem, at);
        let mut next = BTreeSet::new();
        for (score, uses, kinds) in &sums {
            for (more, used, poured) in &ways {
                let uses: Vec<u64> = uses.iter().zip(used).map(|(a, b)| a + b).collect();
                if uses.iter().zip(&left).all(|(used, left)| used <= left) {
                    let mut kinds = kinds.clone();
                    kinds.extend(poured.then_some(good.kind));
                    next.insert((std::array::from_fn(|i| score[i] + more[i]), uses, kinds));
                }
            }
        }
        sums = next;
    }
    let order = order(&problem.goals);
    let ranks = sums.iter().map(|([late, unmet, short, pours, surplus], _, kinds)| {
        let changes = (kinds.len() as u32).saturating_sub(1);
        Score { late: *late, unmet: *unmet, short: *short, pours: *pours, surplus: *surplus, changes }
            .rank(&order)
    });
    ranks.min().unwrap()
}

/// Reckons a plan anew from its pours and what it says of the lines, and holds that it is allowed.
pub(crate) fn check(problem: &Problem, plan: &Plan) {
    let mut left: Vec<i128> = problem.supplies.iter().map(|s| i128::from(*s)).collect();
    let mut pins: Vec<&Pin> = problem.pinned.iter().collect();
    for pour in &plan.pours {
        let size = if pour.pinned {
            let at = pins.iter().position(|pin| pin.good == pour.good && pin.size.number == pour.number);
            &pins.remove(at.expect("a pinned pour is one that was asked for")).size
        } else {
            let sizes = &problem.goods[pour.good].sizes;
            let of_number: Vec<&Size> = sizes.iter().filter(|size| size.number == pour.number).collect();
            // Two sizes of one number cannot be told apart here; the drawn problems then say nothing of supplies.
            if of_number.len() > 1 {
                continue;
            }
            of_number[0]
        };
        for (supply, used) in &size.uses {
            left[*supply] -= i128::from(*used);
        }
    }
    assert!(pins.is_empty(), "every pinned pour is in the plan");
    for (supply, left) in left.iter().enumerate() {
        let lack = plan.lacks.iter().find(|(of, _)| *of == supply).map_or(0, |(_, lack)| i128::from(*lack));
        assert!(*left >= -lack, "supply {supply} is overdrawn by {left}");
    }
    let mut score = Score { pours: plan.pours.len() as u32, ..Score::default() };
    for (at, good) in problem.goods.iter().enumerate() {
        let poured: u32 = plan.pours.iter().filter(|p| p.good == at).map(|p| p.number).sum();
        let mut days = candles(good, poured);
        let mut lines: Vec<_> = problem.lines.iter().zip(&plan.lines).filter(|(l, _)| l.good == at).collect();
        lines.sort_by_key(|(line, _)| line.wanted.unwrap_or(u32::MAX));
        for (line, met) in &lines {
            assert_eq!(met.on_time + met.late + met.unmet, line.number);
            assert!(met.poured <= met.on_time + met.late);
            let whole = [met.on_time, met.late, met.unmet].contains(&line.number);
            assert!(line.in_parts || whole, "{line:?} goes whole, but {met:?}");
            assert_eq!(met.miss.is_some(), met.on_time < line.number);
            for _ in 0..met.on_time {
                assert!(line.wanted.is_none_or(|wanted| days[0] <= wanted), "{line:?} is late");
                days.remove(0);
            }
            score.late += line.number - met.on_time;
            score.unmet += met.unmet;
        }
        let late: u32 = lines.iter().map(|(_, met)| met.late).sum();
        let left = (days.len() as u32).checked_sub(late).expect("no candle goes twice");
        score.short += good.spare.saturating_sub(left);
        score.surplus += left.saturating_sub(good.spare);
    }
    let mut kinds: Vec<u32> = plan.pours.iter().map(|p| problem.goods[p.good].kind).collect();
    kinds.dedup();
    score.changes = (kinds.len() as u32).saturating_sub(1);
    assert_eq!(score, plan.score);
    // Each candle of each pour is for something.
    for pour in &plan.pours {
        let served: u32 = pour.serves.iter().map(|(_, number)| number).sum();
        assert_eq!(served + pour.spare + pour.surplus, pour.number);
    }
    for (at, met) in plan.lines.iter().enumerate() {
        let from: u32 =
            plan.pours.iter().flat_map(|p| &p.serves).filter(|(l, _)| *l == at).map(|(_, n)| n).sum();
        assert_eq!(from, met.poured);
    }
}

/// What comes of going through the lines by the day wanted and pouring for each the smallest batch that makes up what is
/// missing, as somebody would without a plan.
pub(crate) fn order_by_order(problem: &Problem) -> Score {
    let mut left = problem.supplies.clone();
    let mut score = Score::default();
    let mut shelf: Vec<Vec<u32>> = problem.goods.iter().map(|good| candles(good, 0)).collect();
    let mut kinds = BTreeSet::new();
    let mut lines: Vec<&Line> = problem.lines.iter().collect();
    lines.sort_by_key(|line| line.wanted.unwrap_or(u32::MAX));
    for line in lines {
        let good = &problem.goods[line.good];
        let in_time =
            |shelf: &[u32]| shelf.iter().filter(|day| line.wanted.is_none_or(|w| **day <= w)).count();
        let missing = (line.number as usize).saturating_sub(in_time(&shelf[line.good]));
        let fits = |size: &&Size| {
            let used = |supply| size.uses.iter().filter(|(s, _)| *s == supply).map(|(_, u)| u).sum::<u64>();
            size.number as usize >= missing && left.iter().enumerate().all(|(s, left)| used(s) <= *left)
        };
        let smallest = good.sizes.iter().filter(fits).min_by_key(|size| size.number);
        if let Some(size) = smallest.filter(|_| missing > 0 && line.wanted.is_none_or(|w| good.takes <= w)) {
            for (supply, used) in &size.uses {
                left[*supply] -= used;
            }
            shelf[line.good].extend(vec![good.takes; size.number as usize]);
            shelf[line.good].sort_unstable();
            score.pours += 1;
            kinds.insert(good.kind);
        }
        if in_time(&shelf[line.good]) >= line.number as usize {
            shelf[line.good].drain(..line.number as usize);
        } else {
            score.late += line.number;
            score.unmet += line.number;
        }
    }
    for (good, left) in problem.goods.iter().zip(&shelf) {
        score.short += good.spare.saturating_sub(left.len() as u32);
        score.surplus += (left.len() as u32).saturating_sub(good.spare);
    }
    score.changes = (kinds.len() as u32).saturating_sub(1);
    score
}
