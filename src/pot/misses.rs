//! What a temperature outside its range means. Common practice, no source, but for flash points and burns.

use super::{Event, Line, Run, StepKey};
use crate::formula::{PartKind, TemperatureRange};
use crate::quantity::{Amount, Temperature, Voice};

/// The temperature a step wants.
#[derive(Clone, PartialEq, Debug)]
pub enum Wants {
    AtLeast(Amount<Temperature>),
    Within(TemperatureRange),
}

/// How a temperature is not as wanted.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Amiss {
    /// It can catch fire, whatever the step wants.
    TooHot,
    Outside,
}

impl Wants {
    /// As it stands on a screen: `175–180 °F`.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::AtLeast(low) => voice.amount(low.value, voice.temperature),
            Self::Within(range) => span(range, voice),
        }
    }

    pub fn holds(&self, at: Temperature) -> bool {
        match self {
            Self::AtLeast(low) => at >= low.value,
            Self::Within(range) => range.holds(at),
        }
    }
}

/// `175–180 °F`, in the person's own unit; one number where both ends are the same in it.
pub(super) fn span(range: &TemperatureRange, voice: Voice) -> String {
    let shown = |t: Temperature| voice.amount(t, voice.temperature);
    let (low, high) = (shown(range.low.value), shown(range.high.value));
    if low == high {
        return high;
    }
    let number = low.split_whitespace().next().unwrap_or_default();
    format!("{number}–{high}")
}

impl Run {
    /// The temperature a step wants, where it wants one.
    pub fn wants(&self, step: StepKey) -> Option<Wants> {
        match step {
            StepKey::Melt { .. } => Some(Wants::AtLeast(self.plan.melt_to)),
            StepKey::Gate { .. } | StepKey::Fill { .. } => Some(Wants::Within(self.plan.pour.clone())),
            StepKey::Add { pour, line } | StepKey::TopUp { pour, line, .. } if !self.counted(step) => {
                self.line(pour, line)?.add.clone().map(Wants::Within)
            }
            StepKey::Add { .. }
            | StepKey::TopUp { .. }
            | StepKey::Wax { .. }
            | StepKey::Stir { .. }
            | StepKey::Close => None,
        }
    }

    /// What it meant that a step was done outside its range. None where it was not, or no temperature was noted.
    pub fn misses(&self, step: StepKey, voice: Voice) -> Option<String> {
        match self.done(step)? {
            Event::Did { temperature, .. } => self.miss(step, (*temperature)?, voice),
            Event::Read { .. } | Event::Mended { .. } | Event::Said { .. } => None,
        }
    }

    /// What it would mean to do a step at this temperature; it can still be done. None where it is as wanted.
    pub fn miss(&self, step: StepKey, at: Temperature, voice: Voice) -> Option<String> {
        let shown = voice.amount(at, voice.temperature);
        if at.wants_caution() {
            return Some(format!(
                "{shown} is above 130 °C (266 °F), hotter than wax has any need to be: it can smoke and catch fire. Turn \
                 the heat off and stay with it."
            ));
        }
        if let Some(flashing) = self.flashing(step, at) {
            return Some(format!(
                "{shown} is at or above the flash point of “{}”: its vapour can catch fire from a flame or a spark. Heat \
                 off, no flame near, and let it cool first.",
                flashing.name
            ));
        }
        let wants = self.wants(step)?;
        if wants.holds(at) {
            return None;
        }
        let wanted = wants.say(voice);
        let cool = match &wants {
            Wants::AtLeast(_) => true,
            Wants::Within(range) => at < range.low.value,
        };
        let (side, means) = match step {
            StepKey::Add { pour, line } | StepKey::TopUp { pour, line, .. } => {
                let kind = self.line(pour, line).and_then(|l| l.kind);
                let side = if cool { "cooler" } else { "hotter" };
                (side, if cool { added_cool(kind) } else { added_hot(kind) })
            }
            StepKey::Melt { .. } => (
                "cooler",
                "Wax or hard additives may not be melted through: go on heating, gently, until it is clear.",
            ),
            _ if cool => (
                "cooler",
                "Poured too cool it can set with rough tops and lines, and hold badly to the vessel. Warm it a little, or \
                 pour at once.",
            ),
            _ => (
                "hotter",
                "Poured too hot it shrinks more: expect sinkholes and wet spots. Let it cool, stirring slowly.",
            ),
        };
        Some(format!("{shown} is {side} than the {wanted} wanted. {means} You can still go on."))
    }

    /// What [`Run::miss`] says in a word. None where it says nothing.
    pub fn amiss(&self, step: StepKey, at: Temperature) -> Option<Amiss> {
        if at.wants_caution() || self.flashing(step, at).is_some() {
            return Some(Amiss::TooHot);
        }
        self.wants(step).filter(|wants| !wants.holds(at)).map(|_| Amiss::Outside)
    }

    /// What is in the pot at this step, or going in, and can catch fire at this temperature. Of a step that is done, what
    /// went in after it was not there.
    pub(super) fn flashing(&self, step: StepKey, at: Temperature) -> Option<&Line> {
        let pour = step.pour()?;
        let going_in = step.line().filter(|_| step.goes_in());
        let there = |(index, line): &(u32, &Line)| {
            let key = match line.kind {
                None => StepKey::Wax { pour, line: *index },
                Some(_) => StepKey::Add { pour, line: *index },
            };
            let here = going_in == Some(*index) || self.fold.before(key, step);
            here && line.flash.is_some_and(|flash| at >= flash.value)
        };
        let lines = self.plan.pours.get(pour as usize)?.lines.iter();
        (0..).zip(lines).find(there).map(|(_, line)| line)
    }
}

fn added_cool(kind: Option<PartKind>) -> &'static str {
    match kind {
        Some(PartKind::Fragrance) => {
            "Fragrance added too cool binds and dissolves poorly, and may weep or pool. Warm the pot a little, or stir longer."
        }
        Some(PartKind::Dye) => {
            "Dye added too cool may not dissolve: expect specks and an uneven colour. Warm the pot a little, or stir longer."
        }
        Some(PartKind::Additive | PartKind::Other) | None => {
            "Added too cool it may not melt or dissolve through. Warm the pot a little, or stir longer."
        }
    }
}

fn added_hot(kind: Option<PartKind>) -> &'static str {
    match kind {
        Some(PartKind::Fragrance) => {
            "Fragrance added too hot loses more to the air, and comes nearer its flash point. Let the pot cool first."
        }
        Some(PartKind::Dye) => "Dye added too hot can shift in colour. Let the pot cool first.",
        Some(PartKind::Additive | PartKind::Other) | None => {
            "Added too hot some of it may break down or evaporate. Let the pot cool first."
        }
    }
}
