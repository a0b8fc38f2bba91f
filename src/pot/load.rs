//! A part that would be above its highest load, because less wax is in than was planned.

use super::mend::keep;
use super::{Line, Mended, Note, Run, StepKey};
use crate::quantity::{Exact, Mass, Share, Voice};

impl Run {
    /// What is to be read before such a part goes in, with the weight that keeps the share that was planned. None where
    /// it stays within its load, or was planned above it: that is told with the plan.
    pub(super) fn load_note(&self, key: StepKey, line: &Line, voice: Voice) -> Option<Note> {
        let (StepKey::Add { pour, line: index }, Some(highest)) = (key, line.highest) else { return None };
        if self.done(key).is_some() {
            return None;
        }
        let lines = self.fold.lines_kept(&self.plan, pour, self.events());
        let at = lines.iter().position(|(of, _)| *of == index)?;
        let now: Vec<Mended> = lines.into_iter().map(|(_, line)| line).collect();
        let planned: Vec<Mended> = self
            .fold
            .lines(&self.plan, pour, self.events())
            .into_iter()
            .map(|(_, line)| Mended { actual: Mass::ZERO, ..line })
            .collect();
        let share = |lines: &[Mended]| keep(lines).of_wax.get(at).copied();
        let (would, planned): (Share, Share) = (share(&now)?, share(&planned)?);
        let allowed = planned.times(Exact::ONE + self.plan.tolerance.in_base()).max(highest.value);
        if would <= allowed {
            return None;
        }
        let asked = now.get(at)?.mass();
        let right = asked.times(planned.over(would)?);
        Some(Note::caution(format!(
            "Less wax is in than planned: {} of “{}” would be {} of it, above its highest load of {}. {} keeps the share \
             that was planned.",
            voice.both(asked),
            line.name,
            voice.share(would),
            voice.typed(highest),
            voice.both(right)
        )))
    }
}
