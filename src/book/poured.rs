//! What is in the candles of a batch by its record, where that is more than the formula asks.

use super::{Batch, State};
use crate::desk::hazard::{Ingredient, Mixed, mix, statements};
use crate::formula::{Caution, Formula, PartKind};
use crate::pot::Line;
use crate::quantity::{Exact, Mass, Share, Voice};

/// What a formula, or a batch of it, brings to a label, whatever else stands on it: reckoned once for many letters that are
/// typed.
#[derive(Clone, PartialEq, Debug)]
pub struct Burden {
    pub(super) mixed: Mixed,
    /// Of what more was weighed than the formula asks.
    pub(super) over: Option<String>,
    pub(super) limits: Vec<String>,
}

/// One wax or part of a batch.
struct Poured<'a> {
    line: &'a Line,
    of_wax: Share,
    /// The same by what the plan asks to be weighed, to the divisions of the scales.
    planned: Share,
    of_whole: Share,
    /// Something of the batch is not in yet, and is taken as planned.
    so_far: bool,
}

/// So many percent of the whole over the formula are told though no statement changes.
const WORTH_TELLING: Exact = Exact::ratio(1, 10);

impl State {
    /// What a formula brings to a label; for a batch of it, of each thing the larger of what the formula asks and what went
    /// in, in that of the pots that has most of it.
    pub fn burden_of(&self, formula: &Formula, batch: Option<&Batch>, voice: Voice) -> Burden {
        let planned = self.hazards_of(formula, voice);
        let mut limits = self.limits_of(formula, voice);
        let (mut parts, mut over, mut so_far) = (planned.clone(), Vec::new(), false);
        for poured in batch.map(|batch| poured(batch, voice)).unwrap_or_default() {
            limits.extend(poured.above(voice));
            so_far |= poured.so_far;
            let (name, percent) = (&poured.line.name, poured.of_whole.in_base() * Exact::whole(100));
            match parts.iter_mut().find(|part| part.name == *name) {
                Some(part) if percent > part.percent => {
                    if part.sheet.is_some() || !part.harmless {
                        over.push((percent - part.percent, poured.instead_of(part.percent, voice)));
                    }
                    part.percent = percent;
                }
                None if !percent.is_zero() => {
                    let harmless = poured.line.kind != Some(PartKind::Fragrance);
                    parts.push(Ingredient { percent, ..self.with_safety(name, harmless) });
                }
                _ => {}
            }
        }
        let mixed = mix(&parts, true);
        if !over.is_empty() && statements(&mixed, false) == statements(&mix(&planned, true), false) {
            over.retain(|(more, _)| *more >= WORTH_TELLING);
        }
        let over: Vec<String> = over.into_iter().map(|(_, said)| said).collect();
        let (head, end) = if so_far {
            (
                "More was weighed in this batch so far, with the rest as planned, than the formula asks: ",
                SO_FAR,
            )
        } else {
            ("More was weighed in this batch than the formula asks: ", WEIGHED)
        };
        let said = [head, &over.join(", "), end].concat();
        Burden { mixed, over: (!over.is_empty()).then_some(said), limits }
    }
}

const SO_FAR: &str = ". The hazards are those of that; look again when all is in.";
const WEIGHED: &str = ". The hazards are those of what was weighed.";

/// What went into each pot, and of what is not in yet as much as was planned; of each thing the pot that has most of it.
fn poured(batch: &Batch, voice: Voice) -> Vec<Poured<'_>> {
    let record = batch.run.record(voice).lines;
    let plan = batch.run.plan.pours.iter().flat_map(|pour| &pour.lines);
    let lines: Vec<(u32, &Line, Mass)> = plan
        .zip(&record)
        .map(|(line, of)| (of.pour, line, if of.weighed.is_zero() { of.planned } else { of.weighed }))
        .collect();
    let so_far =
        batch.ended.is_none() && record.iter().any(|of| of.weighed.is_zero() && !of.planned.is_zero());
    let mut found: Vec<Poured> = Vec::new();
    for (pour, line, mass) in &lines {
        let of_pot = lines.iter().filter(|(of, ..)| of == pour);
        let (mut wax, mut planned, mut whole) = (Mass::ZERO, Mass::ZERO, Mass::ZERO);
        for (_, other, mass) in of_pot {
            whole = whole + *mass;
            if other.kind.is_none() {
                wax = wax + *mass;
                planned = planned + other.dose.mass();
            }
        }
        let share = |of: Mass, all: Mass| Share::base(of.over(all).unwrap_or(Exact::ZERO));
        let planned = share(line.dose.mass(), planned);
        let (of_wax, of_whole) = (share(*mass, wax), share(*mass, whole));
        let poured = Poured { line, of_wax, planned, of_whole, so_far };
        match found.iter_mut().find(|known| known.line.name == line.name) {
            Some(known) if known.of_whole < poured.of_whole => *known = poured,
            Some(_) => {}
            None => found.push(poured),
        }
    }
    found
}

impl Poured<'_> {
    /// `9.81 % of Late orchard oil instead of 7.41 %`
    fn instead_of(&self, percent: Exact, voice: Voice) -> String {
        let asked = voice.share(Share::base(percent / Exact::whole(100)));
        [&voice.share(self.of_whole), " of ", &self.line.name, " instead of ", &asked].concat()
    }

    /// That it is above its supplier's highest load, where the formula was not and more is in than the plan asks for: what
    /// the plan itself rounds up was not weighed wrongly.
    fn above(&self, voice: Voice) -> Option<String> {
        let is_over =
            |most: Share| self.of_wax > most && self.line.of_wax <= most && self.of_wax > self.planned;
        let highest = self.line.highest.filter(|most| is_over(most.value))?;
        let (part, of_wax, of_whole) = (self.line.name.clone(), self.of_wax, self.of_whole);
        let head = if self.so_far {
            "As weighed in this batch so far, the rest as planned: "
        } else {
            "As weighed in this batch: "
        };
        Some([head, &Caution::Load { part, of_wax, of_whole, highest }.say(voice)].concat())
    }
}
