//! Fewer vessels filled than were planned: a glass that cracked, wax that ran out, a pot that is lost.

use super::{Event, Run, StepKey};
use crate::quantity::{Mass, Voice};

/// What it comes to when vessels stay empty.
#[derive(Clone, PartialEq, Debug)]
pub struct Leaving {
    /// Those that stay empty.
    pub vessels: Vec<StepKey>,
    /// `Then 7 of 8 vessels are filled, and about 6.4 oz (182 g) stays in the pot.`
    pub said: String,
}

impl Run {
    /// The vessel of a step left empty; and, where there are more, all of its pour that are not filled yet.
    pub fn leaving(&self, step: StepKey, voice: Voice) -> Vec<Leaving> {
        let Some(pour) = step.pour() else { return Vec::new() };
        let all = self.unfilled(pour);
        let one = all.iter().copied().filter(|key| *key == step).collect::<Vec<_>>();
        let mut ways = vec![one];
        if ways.first() != Some(&all) {
            ways.push(all);
        }
        ways.retain(|vessels| !vessels.is_empty());
        ways.into_iter().map(|vessels| self.left(pour, vessels, voice)).collect()
    }

    fn left(&self, pour: u32, vessels: Vec<StepKey>, voice: Voice) -> Leaving {
        let empty = u32::try_from(vessels.len()).unwrap_or(u32::MAX);
        let still = u32::try_from(self.unfilled(pour).len()).unwrap_or(u32::MAX).saturating_sub(empty);
        let weighed = |event: &Event| match event {
            Event::Did { step: StepKey::Fill { pour: of, .. }, weighed, .. } if *of == pour => {
                Some(weighed.unwrap_or(self.plan.fill))
            }
            _ => None,
        };
        let filled: Mass = self.events().iter().filter_map(weighed).sum();
        let went_in: Mass = self.lines_of(pour).iter().map(|line| line.weighed).sum();
        let stays =
            went_in.less(filled).less(self.plan.fill.times(crate::quantity::Exact::whole(still.into())));
        let (then, all) = self.fold.stand(pour).map_or((0, 0), |s| (s.filled + still, s.vessels));
        let pot = match (self.plan.pours.len() > 1, stays.is_zero()) {
            (_, true) => String::new(),
            (true, _) => format!(", and about {} stays in this pot", voice.both(stays)),
            (false, _) => format!(", and about {} stays in the pot", voice.both(stays)),
        };
        let are = if then == 1 { "is" } else { "are" };
        let said = match then {
            0 => format!("Then no vessel is filled{pot}."),
            _ => format!("Then {then} of {all} vessels {are} filled{pot}."),
        };
        Leaving { vessels, said }
    }
}
