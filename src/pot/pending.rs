//! Too much of one part: what keeping it and what restoring the pot would come to.

use super::fold::Fold;
use super::mend::kept_why;
use super::{Dose, Event, Kept, Line, Mended, Note, Plan, Restored, Run, Said, StepKey, Way, keep, restore};
use crate::quantity::{Exact, Mass, Voice, Why};

/// A batch this many times as large is no mending any more (our own choice).
const MOST_TIMES: Exact = Exact::whole(10);
/// From this many times what was asked the amount itself is in doubt (our own choice).
const DOUBT: Exact = Exact::whole(2);

/// An overshoot that waits for a decision, with what each way comes to.
#[derive(Clone, PartialEq, Debug)]
pub struct Pending {
    pub step: StepKey,
    pub name: String,
    pub asked: Mass,
    pub weighed: Mass,
    pub over: Mass,
    /// The three as they are measured: `14 drops (0.29 g)`.
    pub said: [String; 3],
    /// The lines of the pot; `kept` and `restored` are in the same order.
    pub lines: Vec<Mended>,
    pub kept: Kept,
    pub kept_why: Why,
    pub restored: Option<Restored>,
    /// Why it cannot be restored, where it cannot.
    pub no_way_back: Option<String>,
    /// That the amount may be typed wrongly, where it is many times what was asked.
    pub doubt: Option<Note>,
    /// What restoring asks to add, in the order of the work.
    pub adds: Vec<Added>,
    /// What is to be read about keeping it.
    pub keep_notes: Vec<Note>,
    /// What is to be read about restoring it.
    pub restore_notes: Vec<Note>,
}

/// What restoring asks to add of one line.
#[derive(Clone, PartialEq, Debug)]
pub struct Added {
    pub name: String,
    pub said: Said,
    /// On top of what is in; else instead of what was planned.
    pub more: bool,
}

impl Run {
    /// The first overshoot not settled yet: more than the tolerance and more than a division too much. Where what drops
    /// or a spoon weigh is not known, a weight tells nothing of it.
    pub fn pending(&self, voice: Voice) -> Option<Pending> {
        let open = |key: &StepKey| {
            let over = self.fold.over(*key, self.events())?;
            let asked = self.fold.dose(*key)?;
            let much = !asked.mass().is_zero()
                && over > asked.division()
                && over > asked.mass().times(self.plan.tolerance.in_base());
            let lost = key.pour().is_some_and(|pour| self.fold.given_up(pour));
            (much && !lost && self.fold.mended(*key).is_none()).then_some(*key)
        };
        if self.fold.is_done(StepKey::Close) {
            return None;
        }
        let step = self.keys().iter().find_map(open)?;
        self.overshoot(step, voice)
    }

    /// What the two ways come to at a step where more was weighed than asked, however little. None at any other.
    pub fn overshoot(&self, step: StepKey, voice: Voice) -> Option<Pending> {
        let pour = step.pour()?;
        let events = self.events();
        let over = self.fold.over(step, events)?;
        let lines = self.fold.lines(&self.plan, pour, events);
        let of_plan: Vec<&Line> = lines.iter().filter_map(|(index, _)| self.line(pour, *index)).collect();
        let lines: Vec<Mended> = lines.iter().map(|(_, l)| l.clone()).collect();
        let kept_lines: Vec<Mended> =
            self.fold.lines_kept(&self.plan, pour, events).into_iter().map(|(_, l)| l).collect();
        let kept = keep(&kept_lines);
        let (restored, no_way_back) = match self.way_back(pour, voice) {
            Ok(restored) => (restored, None),
            Err(why) => (None, Some(why)),
        };
        let melted = self.fold.is_done(StepKey::Melt { pour });
        let mut keep_notes = too_much(&of_plan, &kept, voice);
        if matches!(step, StepKey::Wax { .. }) && !melted {
            keep_notes.push(Note::remark(
                "Nothing is melted yet: you can also take the excess out, undo this step and weigh it again.",
            ));
        }
        let dose = self.fold.dose(step)?;
        let (asked, weighed) = (dose.mass(), self.fold.went_in(step, events)?);
        let too_much_of_it = dose.measure(over, voice).unwrap_or_else(|| voice.amount(over, voice.mass));
        Some(Pending {
            step,
            name: self.line(pour, step.line()?)?.name.clone(),
            asked,
            weighed,
            over,
            said: [dose.tell(asked, voice), dose.tell(weighed, voice), too_much_of_it],
            adds: if restored.is_some() { self.added(step, pour, voice) } else { Vec::new() },
            kept_why: kept_why(&kept_lines, voice),
            restore_notes: restored.as_ref().map(|r| self.afterwards(r, voice)).unwrap_or_default(),
            lines,
            kept,
            restored,
            no_way_back,
            doubt: doubtful(asked, weighed),
            keep_notes,
        })
    }

    /// What restoring comes to, or why it is no way on.
    fn way_back(&self, pour: u32, voice: Voice) -> Result<Option<Restored>, String> {
        if self.fold.stand(pour).is_some_and(|s| s.filled > 0) {
            return Err("Vessels are filled from this pot already: what is added now would not reach them, so it can only \
                        be kept."
                .to_owned());
        }
        match self.fold.restored(&self.plan, pour, self.events(), voice) {
            Some(r) if r.factor > MOST_TIMES => Err(format!(
                "It would take {} in the pot to bring every share back: too much to put right. If the amount was typed \
                 wrongly, undo it; if it did go in, this pot is lost for this formula: “Stop this pour”.",
                voice.both(r.total)
            )),
            restored => Ok(restored),
        }
    }

    /// What the steps after a restore ask for that those before it did not.
    fn added(&self, step: StepKey, pour: u32, voice: Voice) -> Vec<Added> {
        let mut after = self.clone();
        let restore = Event::Mended { step, way: Way::Restore, at: 0 };
        let (Ok(()), Some(before)) = (after.take(restore), self.fold.stand(pour)) else { return Vec::new() };
        let Some(stand) = after.fold.stand(pour) else { return Vec::new() };
        let name = |line: u32| self.line(pour, line).map(|l| l.name.clone()).unwrap_or_default();
        let more = stand.rounds.last().map(|round| round.adds.as_slice()).unwrap_or_default();
        let mut adds: Vec<Added> = more
            .iter()
            .map(|more| Added { name: name(more.line), said: more.dose.said(voice), more: true })
            .collect();
        for (line, (dose, was)) in (0..).zip(stand.doses.iter().zip(&before.doses)) {
            if dose != was {
                adds.push(Added { name: name(line), said: dose.said(voice), more: false });
            }
        }
        adds
    }

    fn afterwards(&self, restored: &Restored, voice: Voice) -> Vec<Note> {
        let mut notes = Vec::new();
        if !restored.over_pot.is_zero() {
            notes.push(Note::caution(format!(
                "That is {} more than “{}” holds. Do not add it all here: keep it, or take some out into a second pot \
                 first.",
                voice.both(restored.over_pot),
                self.plan.pot.as_deref().unwrap_or("the pot")
            )));
        }
        match restored.more_vessels {
            0 => notes.push(Note::remark("It fills no vessel more: what is over stays in the pot.")),
            1 => notes.push(Note::remark("It fills one vessel more: have one ready, with its wick.")),
            more => notes.push(Note::remark(format!(
                "It fills {more} vessels more: have them ready, with their wicks."
            ))),
        }
        notes
    }
}

fn doubtful(asked: Mass, weighed: Mass) -> Option<Note> {
    let times = weighed.over(asked).filter(|times| *times >= DOUBT)?;
    Some(Note::caution(format!(
        "That is {} times what was asked, or more. If it was typed wrongly, undo it and type it again.",
        times.floor()
    )))
}

/// Parts that are above their highest load if it is kept.
fn too_much(lines: &[&Line], kept: &Kept, voice: Voice) -> Vec<Note> {
    let mut notes = Vec::new();
    for (line, (of_wax, of_whole)) in lines.iter().zip(kept.of_wax.iter().zip(&kept.of_whole)) {
        let Some(highest) = line.highest.filter(|h| *of_wax > h.value) else { continue };
        notes.push(Note::caution(format!(
            "“{}” would be {} of the wax ({} of the whole), above its highest load of {}. Too much can weep, smoke and \
             burn too high.",
            line.name,
            voice.share(*of_wax),
            voice.share(*of_whole),
            voice.typed(highest)
        )));
    }
    notes
}

impl Fold {
    /// What is still to be topped up of a line.
    fn still_to_come(&self, pour: u32, line: u32) -> Mass {
        let open = self.top_ups(pour, line).filter(|key| !self.is_done(*key));
        open.filter_map(|key| self.dose(key)).map(Dose::mass).sum()
    }

    /// The lines of a pour as they stand, those that are counted left out: for restoring against the plan.
    pub(super) fn lines(&self, plan: &Plan, pour: u32, events: &[Event]) -> Vec<(u32, Mended)> {
        self.each_line(plan, pour, &|index, line, wax| {
            let actual = self.is_in(pour, index, wax, events).unwrap_or(Mass::ZERO);
            (line.dose.mass(), actual)
        })
    }

    /// The same for keeping: with what is asked now, and what is still to be topped up taken as in.
    pub(super) fn lines_kept(&self, plan: &Plan, pour: u32, events: &[Event]) -> Vec<(u32, Mended)> {
        self.each_line(plan, pour, &|index, line, wax| {
            let asked = self.stand(pour).and_then(|s| s.doses.get(index as usize)).unwrap_or(&line.dose);
            let actual = self.is_in(pour, index, wax, events);
            (asked.mass(), actual.map_or(Mass::ZERO, |m| m + self.still_to_come(pour, index)))
        })
    }

    fn each_line(
        &self,
        plan: &Plan,
        pour: u32,
        of: &dyn Fn(u32, &Line, bool) -> (Mass, Mass),
    ) -> Vec<(u32, Mended)> {
        let lines = plan.pours.get(pour as usize).map(|p| p.lines.as_slice()).unwrap_or_default();
        let mut all = Vec::new();
        for (index, line) in (0..).zip(lines) {
            if !matches!(line.dose, Dose::Count { .. }) {
                let wax = line.kind.is_none();
                let (planned, actual) = of(index, line, wax);
                let division = line.dose.division();
                all.push((index, Mended { name: line.name.clone(), wax, planned, actual, division }));
            }
        }
        all
    }

    pub(super) fn restored(
        &self,
        plan: &Plan,
        pour: u32,
        events: &[Event],
        voice: Voice,
    ) -> Option<Restored> {
        let lines: Vec<Mended> = self.lines(plan, pour, events).into_iter().map(|(_, l)| l).collect();
        restore(&lines, plan.fill, plan.pot_capacity, voice)
    }
}
