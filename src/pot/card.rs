//! One step as it is shown: everything there is to read at it, nothing to compute.

use super::misses::span;
use super::{Dose, Line, Note, Run, Step, StepKey, Wants};
use crate::formula::PartKind;
use crate::quantity::{Exact, Mass, Voice, Why};

/// What stands on the screen at a step.
#[derive(Clone, PartialEq, Debug)]
pub struct StepView {
    pub step: Step,
    /// Which pour of how many, from 1; none for the close.
    pub pour: Option<(u32, u32)>,
    pub title: String,
    /// The scale it is weighed on.
    pub scale: Option<String>,
    pub wants: Option<Wants>,
    /// To stir.
    pub minutes: u32,
    pub notes: Vec<Note>,
    /// The usual cautions where work can hurt.
    pub cautions: Vec<String>,
    pub why: Option<Why>,
}

impl Run {
    /// A step as it is shown, done or not. None where there is no such step.
    pub fn shown_step(&self, key: StepKey, voice: Voice) -> Option<StepView> {
        if !self.holds(key) {
            return None;
        }
        let mut step = self.step(key);
        if let (Some(dose @ Dose::Count { .. }), Some(pour)) = (&mut step.dose, key.pour()) {
            *dose = Dose::Count { pieces: self.pieces(pour, dose) };
        }
        let line = key.pour().zip(key.line()).and_then(|(pour, line)| self.line(pour, line));
        let scale = match &step.dose {
            Some(Dose::Weigh { scale, .. }) => Some(scale.clone()),
            _ => None,
        };
        let pours = u32::try_from(self.plan.pours.len()).unwrap_or(u32::MAX);
        Some(StepView {
            pour: key.pour().map(|p| (p.saturating_add(1), pours)),
            title: self.title(key, line, voice),
            scale,
            wants: self.wants(key),
            minutes: line.filter(|_| matches!(key, StepKey::Stir { .. })).map_or(0, |l| l.stir_minutes),
            notes: self.notes(key, line, voice),
            cautions: self.cautions(key, line, voice),
            why: self.why(key, &step, line, voice),
            step,
        })
    }

    fn title(&self, key: StepKey, line: Option<&Line>, voice: Voice) -> String {
        match key {
            StepKey::Melt { .. } => {
                format!("Melt to {}", voice.amount(self.plan.melt_to.value, voice.temperature))
            }
            StepKey::Gate { .. } => format!("Bring it to {}", span(&self.plan.pour, voice)),
            StepKey::Fill { pour, vessel } => {
                let of = self.fold.stand(pour).map_or(0, |s| s.vessels);
                format!("Fill vessel {} of {of}", vessel.saturating_add(1))
            }
            StepKey::Add { .. } if self.counted(key) => {
                format!("Set {} in the vessels", line.map_or("", |l| l.name.as_str()))
            }
            _ => self.name(key),
        }
    }

    fn notes(&self, key: StepKey, line: Option<&Line>, voice: Voice) -> Vec<Note> {
        let own = |line: &Line| {
            let note = line.note.trim();
            (!note.is_empty())
                .then(|| Note::remark(note))
                .into_iter()
                .chain(line.notes.iter().cloned())
                .chain(self.load_note(key, line, voice))
                .collect()
        };
        match key {
            StepKey::Wax { .. } | StepKey::Add { .. } => line.map(own).unwrap_or_default(),
            StepKey::TopUp { .. } if line.is_some_and(|l| l.kind.is_none()) => {
                vec![Note::remark("Cold wax cools the pot: let it melt through and stir before you go on.")]
            }
            StepKey::TopUp { .. } => vec![Note::remark("Stir it in before you go on.")],
            StepKey::Melt { pour } => {
                self.plan.pours.get(pour as usize).map(|p| p.notes.clone()).unwrap_or_default()
            }
            StepKey::Gate { .. } if self.plan.warmed => {
                vec![Note::remark("Have the vessels warmed, with their wicks set, before it is there.")]
            }
            StepKey::Gate { .. } => {
                vec![Note::remark("Have the vessels ready, with their wicks set, before it is there.")]
            }
            StepKey::Close => vec![
                Note::remark("When the wax is solid, trim the wicks to ¼ in (6 mm). Labels go on last."),
                Note::remark(cures(self.plan.cure_days)),
            ],
            StepKey::Stir { .. } | StepKey::Fill { .. } => Vec::new(),
        }
    }

    fn cautions(&self, key: StepKey, line: Option<&Line>, voice: Voice) -> Vec<String> {
        let say = |text: &[&str]| text.iter().map(|t| (*t).to_owned()).collect::<Vec<_>>();
        match key {
            StepKey::Melt { .. } => say(&[
                "Hot wax burns. Never leave a melter, and keep a thermometer in it always.",
                "Never put water on burning wax: heat off, lid on, fire blanket or dry-powder extinguisher at hand.",
            ]),
            StepKey::Add { .. } if self.counted(key) => Vec::new(),
            StepKey::Add { .. } | StepKey::TopUp { .. } => {
                line.map(|l| part_cautions(l, voice)).unwrap_or_default()
            }
            StepKey::Stir { .. } => say(&["Stir slowly, down to the bottom: what splashes burns."]),
            StepKey::Gate { .. } => say(&["Stay with the pot: never leave a melter."]),
            StepKey::Fill { .. } => say(&[
                "Hot wax burns and the vessel gets hot: level, heat-proof ground, gloves on, nobody else within reach.",
            ]),
            StepKey::Close => {
                say(&["Burn-test every combination of wax, wick, vessel and fragrance before sale."])
            }
            StepKey::Wax { .. } => Vec::new(),
        }
    }

    fn why(&self, key: StepKey, step: &Step, line: Option<&Line>, voice: Voice) -> Option<Why> {
        match key {
            StepKey::Fill { .. } => self.plan.why_of("fill"),
            StepKey::Wax { pour, .. } | StepKey::Add { pour, .. } => {
                let line = line?;
                let dose = step.dose.as_ref()?;
                if *dose == line.dose || self.counted(key) {
                    return Some(line.why.clone());
                }
                Some(restored_why(line, dose, None, self.fold.stand(pour)?.factor, voice))
            }
            StepKey::TopUp { pour, line: index, round } => {
                let round = self.fold.stand(pour)?.rounds.get((round as usize).checked_sub(1)?)?;
                let more = round.adds.iter().find(|m| m.line == index)?;
                Some(restored_why(line?, &more.dose, Some(more.had), round.factor, voice))
            }
            StepKey::Melt { .. } | StepKey::Stir { .. } | StepKey::Gate { .. } | StepKey::Close => None,
        }
    }
}

fn cures(days: u32) -> String {
    match days {
        0 => "Let it cure before burning or selling. How long, this formula does not say.".to_owned(),
        1 => "Cure for 1 day before burning or selling.".to_owned(),
        days => format!("Cure for {days} days before burning or selling."),
    }
}

/// Of an amount that a restore changed: `had` is what was in before.
fn restored_why(line: &Line, dose: &Dose, had: Option<Mass>, factor: Exact, voice: Voice) -> Why {
    let relation = match had {
        Some(_) => "planned × the batch as made now against the plan − what is in",
        None => "planned × the batch as made now against the plan",
    };
    let planned = line.dose.mass();
    let exact = planned.times(factor).less(had.unwrap_or(Mass::ZERO));
    let why = Why::new(&line.name, relation, voice.mass(exact))
        .with_why("planned", voice.mass(planned), line.why.clone())
        .with("the batch as made now against the plan", voice.number(factor));
    let why = match had {
        Some(had) => why.with("what is in", voice.mass(had)),
        None => why,
    };
    why.rounded(format!("with the other parts, to its own measure: {}", voice.mass(dose.mass())))
}

fn part_cautions(line: &Line, voice: Voice) -> Vec<String> {
    match (line.kind, line.flash) {
        (Some(PartKind::Fragrance), flash) => {
            let flash = match flash {
                Some(flash) => format!(
                    "Its flash point is {}: keep the pot below it, and every flame away.",
                    voice.amount(flash.value, voice.temperature)
                ),
                None => "Its flash point is not known here: look it up on the safety data sheet and keep below it.".to_owned(),
            };
            vec![
                "Gloves on and fresh air: fragrance oil harms skin and lungs. Read its safety data sheet."
                    .to_owned(),
                flash,
            ]
        }
        (Some(PartKind::Dye | PartKind::Additive | PartKind::Other), _) => {
            vec!["Gloves on, and breathe no dust. Read its safety data sheet.".to_owned()]
        }
        (None, _) => vec!["Hot wax burns: let it slide in, do not drop it.".to_owned()],
    }
}
