//! The record of a pour: what was planned, what was weighed, at what temperatures and times.

use super::{Dose, Event, Run, StepKey};
use crate::quantity::{Exact, Mass, Share, Temperature, Voice, Why};

/// A run as it is kept, opened and printed.
#[derive(Clone, PartialEq, Debug)]
pub struct Record {
    pub lines: Vec<RecordLine>,
    /// Every step that was done, in the order of the sheet.
    pub steps: Vec<RecordStep>,
    pub vessels: Vec<RecordVessel>,
    /// Those that were left empty: which vessel of which pour, both from 1.
    pub empty: Vec<(u32, u32)>,
    /// All that went in, into all pots.
    pub made: Mass,
    /// All that was filled into vessels.
    pub filled: Mass,
    /// What is left in the pots: what went in less what was filled.
    pub leftover: Mass,
    pub readings: Vec<RecordReading>,
    pub said: Vec<(u64, String)>,
}

/// One wax or part of one pour. What is not in yet is zero.
#[derive(Clone, PartialEq, Debug)]
pub struct RecordLine {
    /// From 1.
    pub pour: u32,
    pub name: String,
    pub dose: Dose,
    pub planned: Mass,
    pub weighed: Mass,
    /// Weighed less planned.
    pub off: Mass,
    /// False where a weight was not typed in and the one asked for is taken.
    pub known: bool,
    pub of_wax: Share,
    pub of_whole: Share,
}

#[derive(Clone, PartialEq, Debug)]
pub struct RecordStep {
    pub key: StepKey,
    pub title: String,
    pub at: u64,
    pub temperature: Option<Temperature>,
    /// The range it wanted, in words.
    pub wanted: Option<String>,
    pub missed: Option<String>,
}

#[derive(Clone, PartialEq, Debug)]
pub struct RecordVessel {
    /// Both from 1.
    pub pour: u32,
    pub vessel: u32,
    pub mass: Mass,
    /// False where its weight was not typed in and the fill is taken.
    pub known: bool,
}

#[derive(Clone, PartialEq, Debug)]
pub struct RecordReading {
    pub at: u64,
    pub temperature: Temperature,
    /// From 1; none where there is only one, or nobody said of which it is.
    pub pour: Option<u32>,
}

impl Run {
    /// The record as it stands.
    pub fn record(&self, voice: Voice) -> Record {
        let mut lines = Vec::new();
        for (pour, _) in (0..).zip(&self.plan.pours) {
            lines.extend(self.lines_of(pour));
        }
        let (mut vessels, mut empty) = (Vec::new(), Vec::new());
        let mut steps = Vec::new();
        for key in self.keys() {
            let Some(event @ Event::Did { weighed, temperature, at, .. }) = self.done(key) else { continue };
            if let StepKey::Fill { pour, vessel } = key {
                let (pour, vessel) = (pour.saturating_add(1), vessel.saturating_add(1));
                if event.filled().is_none() {
                    empty.push((pour, vessel));
                    continue;
                }
                vessels.push(RecordVessel {
                    pour,
                    vessel,
                    mass: weighed.unwrap_or(self.plan.fill),
                    known: weighed.is_some(),
                });
            }
            steps.push(RecordStep {
                key,
                title: self.name(key),
                at: *at,
                temperature: *temperature,
                wanted: self.wants(key).map(|w| w.say(voice)),
                missed: self.misses(key, voice),
            });
        }
        let made: Mass = lines.iter().map(|l| l.weighed).sum();
        let filled: Mass = vessels.iter().map(|v| v.mass).sum();
        let mut readings = Vec::new();
        let mut said = Vec::new();
        for event in self.events() {
            match event {
                Event::Read { temperature, at, pour } => readings.push(RecordReading {
                    at: *at,
                    temperature: *temperature,
                    pour: pour.map(|pour| pour.saturating_add(1)),
                }),
                Event::Said { text, at } => said.push((*at, text.clone())),
                Event::Did { .. } | Event::Mended { .. } => {}
            }
        }
        Record { leftover: made.less(filled), lines, steps, vessels, empty, made, filled, readings, said }
    }

    pub(super) fn lines_of(&self, pour: u32) -> Vec<RecordLine> {
        let of_plan = self.plan.pours.get(pour as usize).map(|p| p.lines.as_slice()).unwrap_or_default();
        let mut lines: Vec<RecordLine> = Vec::new();
        let (mut wax, mut whole) = (Mass::ZERO, Mass::ZERO);
        for (index, line) in (0..).zip(of_plan) {
            let is_wax = line.kind.is_none();
            let weighed = self.fold.is_in(pour, index, is_wax, self.events()).unwrap_or(Mass::ZERO);
            if is_wax {
                wax = wax + weighed;
            }
            whole = whole + weighed;
            lines.push(RecordLine {
                pour: pour.saturating_add(1),
                name: line.name.clone(),
                dose: line.dose.clone(),
                planned: line.dose.mass(),
                off: weighed - line.dose.mass(),
                weighed,
                known: self.weighed_at(pour, index, is_wax),
                of_wax: Share::ZERO,
                of_whole: Share::ZERO,
            });
        }
        let of = |mass: Mass, all: Mass| Share::base(mass.over(all).unwrap_or(Exact::ZERO));
        for line in &mut lines {
            line.of_wax = of(line.weighed, wax);
            line.of_whole = of(line.weighed, whole);
        }
        lines
    }

    /// How what went in, what was filled and what is left came about.
    pub fn record_whys(&self, record: &Record, voice: Voice) -> [Why; 3] {
        let mass = |mass| voice.mass(mass);
        let went_in = Why::new(
            "Went in",
            "what was weighed of everything, or else what was asked; of wax: weight ÷ all wax, of whole: weight ÷ what \
             went in to that pot",
            mass(record.made),
        );
        let is_in = record.lines.iter().filter(|line| !line.weighed.is_zero());
        let went_in = is_in.fold(went_in, |why, line| {
            let asked = if line.known { "" } else { ", as asked" };
            why.with(&line.name, mass(line.weighed) + asked)
        });
        let weighed = record.vessels.iter().filter(|v| v.known);
        let as_planned = record.vessels.iter().filter(|v| !v.known).count();
        let filled = Why::new("Filled", "what each vessel weighed, or else its fill", mass(record.filled))
            .with("vessels weighed", mass(weighed.map(|v| v.mass).sum()))
            .with("vessels not weighed", as_planned.to_string())
            .with("fill", mass(self.plan.fill));
        let left = Why::new("Left in the pot", "what went in − what was filled", mass(record.leftover))
            .with_why("went in", mass(record.made), went_in.clone())
            .with_why("filled", mass(record.filled), filled.clone());
        [went_in, filled, left]
    }

    /// Every weight of a line that is in was typed in.
    fn weighed_at(&self, pour: u32, line: u32, wax: bool) -> bool {
        let first = if wax { StepKey::Wax { pour, line } } else { StepKey::Add { pour, line } };
        let done = [first].into_iter().chain(self.fold.top_ups(pour, line)).filter_map(|key| self.done(key));
        let mut weights = done.map(|event| matches!(event, Event::Did { weighed: Some(_), .. })).peekable();
        weights.peek().is_some() && weights.all(|typed| typed)
    }
}
