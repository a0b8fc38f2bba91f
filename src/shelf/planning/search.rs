//! The search for the best plan.
//!
//! Good by good, the sums of one choice each are made, and of two sums the one that is no better in rank nor in any
//! scarce supply is left out, as is one whose bound shows no hope. A round keeps only so many sums of each good; the next
//! keeps more. A round that had to leave out none for room has proven its plan the best.

use super::bound::{Bound, ONE, Regret, hope, is_worse};
use super::choice::{Choice, fits};
use super::front::Points;
use super::model::{Model, plus};
use super::unit::{Picks, Units, Way};
use super::{Gap, Measure, Plan, Problem};
use crate::sort;
use std::cmp::Ordering;

/// Sums kept of each good in the first round; each further round keeps so many times more; none more than the last.
const FIRST: usize = 64;
const TIMES: usize = 8;
const LAST: usize = 1 << 18;
/// Ways listed for units together: at first, and when most ways have been left out.
const LISTED_FIRST: usize = 2_000;
const LISTED: usize = 20_000;
/// Of those kept so many are compared with a new sum; to look through more costs more than it saves.
const SCAN: usize = 100;

/// A sum of ways, one of each unit so far.
#[derive(Clone)]
struct Sum {
    rank: [u32; 6],
    regret: Regret,
    /// Units poured of the kind that is gone through.
    poured: u8,
    /// Nothing is poured.
    idle: bool,
    /// The sum before, and the way added.
    from: (u32, u32),
}

/// A unit in its turn.
struct Stage {
    unit: usize,
    /// The last of its kind.
    ends: bool,
    /// What of each supply all later units can use at most.
    later: Vec<u64>,
}

/// A round: all units, with room for so many sums.
struct Round {
    units: Units,
    bound: Bound,
    stages: Vec<Stage>,
    at: usize,
    sums: Vec<Sum>,
    /// Of each sum, what it takes of each scarce supply, one after the other.
    uses: Vec<u64>,
    /// For each unit gone through, where its sums came from.
    paths: Vec<Vec<(u32, u32)>>,
    /// How much better the sums left out for room might have been.
    left_out: u32,
}

/// The search among units that have nothing to do with others: measure by measure.
struct Part {
    units: Units,
    picks: Picks,
    /// Its changes are the kinds poured.
    rank: [u32; 6],
    /// The measure gone into: in those before it no plan is better, in this one none goes below.
    measure: usize,
    least: u32,
    width: usize,
    round: Option<Round>,
    /// Where something is to be poured, whatever it is.
    busy: bool,
}

impl Part {
    fn new(mut units: Units, busy: bool) -> Self {
        let ways = units.greedy();
        let picks = units.picks(&ways);
        units.pick(&picks);
        let rank = units.rank(&ways);
        let mut part = Self { units, picks, rank, measure: 0, least: 0, width: FIRST, round: None, busy };
        if busy && !ways.iter().any(|way| way.poured) {
            // Nothing poured has no change, as one kind has none.
            if let Some(cell) = part.rank.get_mut(part.units.changes) {
                *cell += 1;
            }
        }
        part
    }

    fn is_closed(&self) -> bool {
        self.measure > 5
    }

    fn is_over(&self) -> bool {
        self.is_closed() || (self.width > LAST && self.round.is_none())
    }

    /// A rank that no plan's is less than.
    fn least(&self) -> [u32; 6] {
        let mut least = self.rank;
        least.iter_mut().skip(self.measure).for_each(|later| *later = 0);
        if let Some(cell) = least.get_mut(self.measure) {
            *cell = self.least;
        }
        least
    }

    /// One unit more; gives how many sums were made.
    fn step(&mut self) -> usize {
        let mut round = match self.round.take() {
            Some(round) => round,
            None => self.begin(),
        };
        if !round.sums.is_empty() && round.at < round.stages.len() {
            let made = round.stage(self.width, self.busy, self.measure);
            self.round = Some(round);
            return made;
        }
        self.end(&round);
        0
    }

    fn begin(&mut self) -> Round {
        let measure = self.measure;
        let bound = Bound::new(&self.units, &self.rank, measure);
        self.units.narrow(&bound, |regret| !is_worse(regret, &bound.slack, measure));
        let mut units = self.units.up_to(measure);
        let mut bound = Bound::new(&units, &self.rank, measure);
        if !self.busy {
            // What is left makes shorter lists, and lists of more together.
            units.narrow(&bound, |regret| hope(regret, &bound.slack, measure).is_some());
            units.join(LISTED);
            bound = Bound::new(&units, &self.rank, measure);
        }
        units.narrow(&bound, |regret| hope(regret, &bound.slack, measure).is_some());
        let bound = Bound::new(&units, &self.rank, measure);
        let hopeless = hope(&[0; 6], &bound.slack, measure).is_none();
        let start = Sum { rank: [0; 6], regret: [0; 6], poured: 0, idle: true, from: (0, 0) };
        Round {
            stages: stages(&units),
            sums: if hopeless { Vec::new() } else { vec![start] },
            uses: if hopeless { Vec::new() } else { vec![0; units.left.len()] },
            units,
            bound,
            at: 0,
            paths: Vec::new(),
            left_out: 0,
        }
    }

    fn end(&mut self, round: &Round) {
        let cell = |rank: &[u32; 6]| rank.get(self.measure).copied().unwrap_or(0);
        let least = cell(&self.rank).saturating_sub(round.left_out);
        let up_to = |rank: &[u32; 6]| {
            let mut rank = *rank;
            rank.iter_mut().skip(self.measure + 1).for_each(|later| *later = 0);
            rank
        };
        let sums = round.sums.iter().enumerate().filter(|(_, sum)| !(self.busy && sum.idle));
        if let Some((at, sum)) = sums.min_by_key(|(_, sum)| sum.rank)
            && sum.rank < up_to(&self.rank)
            && let Some(ways) = round.picks(at)
        {
            self.picks = round.units.picks(&ways);
            self.units.pick(&self.picks);
            self.rank = self.units.rank(&self.units.picked());
        }
        self.least = self.least.max(least);
        if round.left_out == 0 || self.least >= cell(&self.rank) {
            (self.measure, self.least, self.width) = (self.measure + 1, 0, FIRST);
        } else {
            self.width *= TIMES;
        }
    }
}

/// A search that goes on in steps, with a plan at any time.
pub struct Search {
    model: Model,
    parts: Vec<Part>,
}

impl Search {
    pub fn new(problem: Problem) -> Self {
        let model = Model::new(problem);
        let mut units = Units::new(&model);
        units.join(LISTED_FIRST);
        let parts = units.split().into_iter().map(|units| Part::new(units, false)).collect();
        Self { model, parts }
    }

    /// The best plan so far.
    pub fn plan(&self) -> Plan {
        let mut picks: Vec<Option<&Choice>> = vec![None; self.model.choices.len()];
        for (good, at) in self.parts.iter().flat_map(|part| &part.picks) {
            let choice = self.model.choices.get(*good).and_then(|of| of.get(*at as usize));
            if let Some(pick) = picks.get_mut(*good) {
                *pick = choice;
            }
        }
        let picks: Vec<&Choice> = picks.into_iter().flatten().collect();
        self.model.plan(&picks, self.gap())
    }

    /// How far the best so far may be from the best there is; none: it is that.
    pub fn gap(&self) -> Option<Gap> {
        let sum =
            |of: fn(&Part) -> [u32; 6]| self.parts.iter().fold([0; 6], |sum, part| plus(&sum, &of(part)));
        let (rank, least) = (sum(|part| part.rank), sum(Part::least));
        let mut open =
            self.model.order.iter().zip(rank).zip(least).filter(|((_, rank), least)| rank != least);
        let ((measure, _), least) = open.next()?;
        // The first kind is no change.
        let first = *measure == Measure::Changes && self.model.pinned_kinds() == 0;
        Some(Gap { measure: *measure, least: least.saturating_sub(first.into()) })
    }

    /// Goes on until so many sums are made or more; true when there is nothing more to find.
    pub fn step(&mut self, sums: usize) -> bool {
        let mut made = 0;
        while made < sums {
            let open = self.parts.iter_mut().filter(|part| !part.is_over());
            let Some(part) = open.min_by_key(|part| (part.measure, part.width)) else {
                return self.is_over();
            };
            // A part costs something even where it makes no sums.
            made += part.step().max(1);
        }
        false
    }

    /// Where the parts by themselves pour nothing at all, one kind may be poured without a change: then they are gone
    /// through once more together.
    fn is_over(&mut self) -> bool {
        let busy = self.parts.iter().any(|part| part.busy);
        let idle = self.parts.iter().all(|part| !part.units.picked().iter().any(|way| way.poured));
        if busy || !idle || !self.model.problem.pinned.is_empty() {
            return true;
        }
        self.parts = vec![Part::new(Units::new(&self.model), true)];
        false
    }
}

impl Round {
    /// One unit more; gives how many sums were made.
    fn stage(&mut self, width: usize, busy: bool, measure: usize) -> usize {
        let Some(stage) = self.stages.get(self.at) else { return 0 };
        let Some(unit) = self.units.units.get(stage.unit) else { return 0 };
        let Some(regrets) = self.bound.regrets.get(stage.unit) else { return 0 };
        let sharing = self.bound.sharing.get(stage.unit).copied().unwrap_or(1);
        let wide = self.units.left.len();
        let (mut sums, mut uses) = (Vec::new(), Vec::new());
        for (from, sum) in self.sums.iter().enumerate() {
            let used = self.uses.get(from * wide..(from + 1) * wide).unwrap_or_default();
            for (at, (way, regret)) in (0..).zip(unit.ways.iter().zip(regrets)) {
                let mut total = sum.regret;
                total.iter_mut().zip(regret).for_each(|(total, more)| *total += more);
                let poured = way.poured && unit.kind.is_some();
                let mut new = Sum {
                    rank: sum.rank,
                    regret: total,
                    poured: sum.poured + u8::from(poured && sum.poured < u8::MAX),
                    idle: sum.idle && !way.poured,
                    from: (from as u32, at),
                };
                if stage.ends {
                    let rest = self.bound.rest(new.poured, sharing);
                    new.regret.iter_mut().zip(&rest).for_each(|(total, more)| *total += more);
                }
                if hope(&new.regret, &self.bound.slack, measure).is_none() {
                    continue;
                }
                let fits = used.iter().zip(&way.uses).zip(&self.units.left);
                if fits.clone().any(|((used, more), left)| used + more > *left) {
                    continue;
                }
                uses.extend(fits.map(|((used, more), _)| used + more));
                new.rank = plus(&sum.rank, &way.rank);
                if let Some(cell) = new.rank.get_mut(self.units.changes) {
                    *cell += u32::from(poured && sum.poured == 0);
                }
                if stage.ends {
                    new.poured = 0;
                }
                sums.push(new);
            }
        }
        let made = sums.len();
        let mut kept = undominated(&self.units, stage, &sums, &uses, busy);
        if kept.len() > width {
            let bound = &self.bound;
            let place = |at: usize| kept.get(at).and_then(|at| sums.get(*at));
            let by_hope = sort::order(kept.len(), &|a, b| match (place(a), place(b)) {
                (Some(a), Some(b)) => {
                    promise(a, bound).cmp(&promise(b, bound)).then_with(|| a.regret.cmp(&b.regret))
                }
                _ => Ordering::Equal,
            });
            for out in by_hope.iter().skip(width).filter_map(|at| place(*at)) {
                let hope = hope(&out.regret, &bound.slack, measure).unwrap_or(0);
                self.left_out = self.left_out.max(hope);
            }
            kept = by_hope.iter().take(width).filter_map(|at| kept.get(*at).copied()).collect();
        }
        self.sums = kept.iter().filter_map(|at| sums.get(*at)).cloned().collect();
        self.uses =
            kept.iter().filter_map(|at| uses.get(at * wide..(at + 1) * wide)).flatten().copied().collect();
        self.paths.push(self.sums.iter().map(|sum| sum.from).collect());
        self.at += 1;
        made
    }

    /// The ways of a sum, each in the place of its unit.
    fn picks(&self, mut at: usize) -> Option<Vec<Way>> {
        let mut picks: Vec<Option<Way>> = vec![None; self.units.units.len()];
        for (stage, path) in self.stages.iter().zip(&self.paths).rev() {
            let (from, way) = *path.get(at)?;
            *picks.get_mut(stage.unit)? = self.units.units.get(stage.unit)?.ways.get(way as usize).cloned();
            at = from as usize;
        }
        picks.into_iter().collect()
    }
}

/// What a sum promises: its bound in each measure, in whole candles, pours and changes.
fn promise(sum: &Sum, bound: &Bound) -> Regret {
    let mut promise = sum.regret;
    promise
        .iter_mut()
        .zip(&bound.slack)
        .for_each(|(regret, slack)| *regret = -((slack - *regret).div_euclid(ONE)));
    promise
}

/// The sums that no other beats: none of better rank takes as little of every supply that may still run out.
fn undominated(units: &Units, stage: &Stage, sums: &[Sum], uses: &[u64], busy: bool) -> Vec<usize> {
    let wide = units.left.len();
    let by_rank = sort::order(sums.len(), &|a, b| match (sums.get(a), sums.get(b)) {
        (Some(a), Some(b)) => a.rank.cmp(&b.rank),
        _ => Ordering::Equal,
    });
    // Below this the later units have all they can use.
    let floor: Vec<u64> =
        units.left.iter().zip(&stage.later).map(|(left, later)| left.saturating_sub(*later)).collect();
    let row = |at: usize| uses.get(at * wide..(at + 1) * wide).unwrap_or_default();
    let scarce: Vec<usize> = (0..wide)
        .filter(|s| (0..sums.len()).any(|at| row(at).get(*s).copied() > floor.get(*s).copied()))
        .collect();
    let beat = |a: usize, b: usize| match (sums.get(a), sums.get(b)) {
        (Some(a), Some(b)) => beats(a, b, units.changes, busy),
        _ => false,
    };
    // The last coordinate is the place by rank.
    let wide = scarce.len() + 1;
    let mut points = Vec::new();
    let mut few: Vec<usize> = Vec::new();
    let mut best: Vec<usize> = Vec::new();
    for at in by_rank {
        let first = points.len();
        for supply in &scarce {
            let of = row(at).get(*supply).zip(floor.get(*supply));
            points.push(of.map_or(0, |(used, floor)| *used.max(floor)));
        }
        points.push(few.len() as u64);
        // Most are beaten by one of those that have beaten others.
        let point = points.get(first..).unwrap_or_default();
        let by = best.iter().position(|other| {
            let of = points.get(other * wide..(other + 1) * wide).unwrap_or_default();
            fits(of, point) && few.get(*other).is_some_and(|other| beat(*other, at))
        });
        match by {
            Some(place) => {
                best.swap(place, place / 2);
                points.truncate(first);
            }
            None => {
                if best.len() < SCAN {
                    best.push(few.len());
                }
                few.push(at);
            }
        }
    }
    let points = Points { coordinates: &points, wide };
    let beat_at = |a: usize, b: usize| few.get(a).zip(few.get(b)).is_some_and(|(a, b)| beat(*a, *b));
    points.front(&beat_at).into_iter().filter_map(|at| few.get(at).copied()).collect()
}

/// Whether a sum of no worse rank stays so whatever comes after.
fn beats(a: &Sum, b: &Sum, changes: usize, busy: bool) -> bool {
    // Nothing poured is no change, as one kind is none: the two are not compared here.
    if busy && a.idle && !b.idle {
        return false;
    }
    if a.poured > 0 || b.poured == 0 {
        return true;
    }
    // The kind that the other has poured already may cost this one a change.
    let mut rank = a.rank;
    if let Some(cell) = rank.get_mut(changes) {
        *cell += 1;
    }
    rank <= b.rank
}

/// The units in the order to go through: those of a kind together, and first where the fewest supplies come into play.
fn stages(units: &Units) -> Vec<Stage> {
    let wide = units.left.len();
    let most = |unit: usize, supply: usize| units.units.get(unit).map_or(0, |unit| unit.most(supply));
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (place, unit) in units.units.iter().enumerate() {
        let kind = |group: &&mut Vec<usize>| {
            let first = group.first().and_then(|first| units.units.get(*first));
            unit.kind.is_some() && first.is_some_and(|first| first.kind == unit.kind)
        };
        match groups.iter_mut().find(kind) {
            Some(group) => group.push(place),
            None => groups.push(vec![place]),
        }
    }
    let mut open = vec![false; wide];
    let mut stages: Vec<Stage> = Vec::new();
    while let Some((place, _)) = groups.iter().enumerate().min_by_key(|(_, group)| {
        let opened = |supply: &usize| {
            !open.get(*supply).copied().unwrap_or(true) && group.iter().any(|unit| most(*unit, *supply) > 0)
        };
        let ways = group.iter().filter_map(|unit| units.units.get(*unit)).map(|unit| unit.ways.len() as u64);
        ((0..wide).filter(opened).count(), ways.fold(1, u64::saturating_mul))
    }) {
        for unit in groups.remove(place) {
            for (supply, open) in open.iter_mut().enumerate() {
                *open |= most(unit, supply) > 0;
            }
            stages.push(Stage { unit, ends: false, later: Vec::new() });
        }
        if let Some(last) = stages.last_mut() {
            last.ends = true;
        }
    }
    let mut later = vec![0_u64; wide];
    for stage in stages.iter_mut().rev() {
        stage.later.clone_from(&later);
        for (supply, later) in later.iter_mut().enumerate() {
            *later = later.saturating_add(most(stage.unit, supply));
        }
    }
    stages
}
