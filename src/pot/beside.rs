//! Pots heated side by side: which of them one is at, and what there is to know of the others.

use super::{Air, Clock, Event, Run, StepKey};
use crate::quantity::Voice;

/// Another pour of the batch, which one may turn to.
#[derive(Clone, PartialEq, Debug)]
pub struct Beside {
    pub pour: u32,
    /// `Pour 2: Add Fig leaf`.
    pub title: String,
    /// When it comes to the next temperature that matters: `in 4 to 7 min`.
    pub when: Option<String>,
    /// What its readings or its stirring ask for within half a minute, or now.
    pub soon: Option<String>,
}

impl Run {
    /// The pour that something was done, read or settled of last; the first where nothing was.
    pub fn last_pour(&self) -> u32 {
        let of = |event: &Event| match event {
            Event::Did { step, .. } | Event::Mended { step, .. } => step.pour(),
            Event::Read { pour, .. } => *pour,
            Event::Said { .. } => None,
        };
        self.events().iter().rev().find_map(of).unwrap_or(0)
    }

    /// The other pours while one is at `here`: those that are begun and not done, and the next that is not begun.
    pub fn beside(&self, here: u32, now: u64, air: Air, voice: Voice, clock: Clock) -> Vec<Beside> {
        let mut beside = Vec::new();
        for (pour, _) in (0..).zip(&self.plan.pours).filter(|(pour, _)| *pour != here) {
            let Some(step) = self.now_in(pour).filter(|step| step.key.pour() == Some(pour)) else { continue };
            let begun = self.events().iter().any(|event| {
                matches!(event, Event::Did { step, .. } if step.pour() == Some(pour))
                    || matches!(event, Event::Read { pour: Some(of), .. } if *of == pour)
            });
            let title = self.shown_step(step.key, voice).map(|shown| shown.title).unwrap_or_default();
            let told = self.foretold(pour, now, air, voice, clock);
            let stirred = self.stir_left(step.key, now) == Some(0);
            let soon = told.as_ref().and_then(|told| told.soon.clone());
            beside.push(Beside {
                pour,
                title: ["Pour ", &pour.saturating_add(1).to_string(), ": ", &title].concat(),
                when: told.and_then(|told| Some(told.gates.first()?.when.split(';').next()?.to_owned())),
                soon: stirred.then(|| "Stirred long enough.".to_owned()).or(soon),
            });
            if !begun {
                break;
            }
        }
        beside
    }

    /// Which pour a reading taken at a step is of: to be said only where there are several.
    pub fn read_in(&self, step: StepKey) -> Option<u32> {
        step.pour().filter(|_| self.plan.pours.len() > 1)
    }
}
