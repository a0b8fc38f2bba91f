//! A scale tried by weighing one thing several times: how small a load is worth weighing on it, and whether it is right.

use super::told;
use crate::bench::{Scale, ScaleTrial};
use crate::dom::*;
use crate::quantity::{Amount, Mass, MassUnit, Voice};
use crate::rooms::parts::{Field, Typed, caution, live, mass_field, press, sentence};
use crate::rooms::workshop::Workshop;

/// What is typed of a trial.
#[derive(Clone, Copy)]
pub(super) struct Form {
    readings: Typed,
    known: Typed,
}

impl Form {
    pub(super) fn of(shop: Workshop, trial: Option<&ScaleTrial>) -> Self {
        let readings = trial.map(|t| t.readings.as_slice()).unwrap_or_default();
        let lines: Vec<String> = readings.iter().map(|r| shop.voice().typed(*r)).collect();
        Self { readings: Typed::new(lines.join("\n")), known: Typed::amount(trial.and_then(|t| t.known)) }
    }

    /// On a scale that shows the unit of its division.
    pub(super) fn read(self, shop: Workshop, division: MassUnit) -> Result<Option<ScaleTrial>, String> {
        let (known, voice) = (self.known.get(), Voice { mass: division, ..shop.voice() });
        self.readings.text.with(|readings| ScaleTrial::read(readings, &known, voice))
    }

    /// The fields and what they tell; a tap takes the smallest load over.
    pub(super) fn part(
        self,
        shop: Workshop,
        division: impl Fn() -> Option<Amount<Mass>> + 'static,
        least: Typed,
    ) -> View {
        let id = shop.fresh_dom_id();
        let found = Derived::new(move || {
            let division = division()?;
            match self.read(shop, division.unit) {
                Err(why) => Some(Err(why)),
                Ok(trial) => {
                    let scale =
                        Scale { name: String::new(), capacity: division, division, least: division, trial };
                    scale.steady(shop.voice()).map(Ok)
                }
            }
        });
        let answer = move || match found.get() {
            None => View::Nothing,
            Some(Err(why)) => sentence(why),
            Some(Ok(steady)) => {
                let load = shop.voice().typed(steady.least);
                let take = {
                    let load = load.clone();
                    move || least.text.set(load.clone())
                };
                group![
                    told(steady.said, steady.why),
                    steady.caution.map(caution),
                    el("p").child(press("", ["Take ", &load, " as the smallest load"].concat(), take))
                ]
            }
        };
        group![
            el("p").child(
                "Weigh one thing again and again, lifting it off and letting the scale come back to zero each time: the same \
jar ten times tells how far a reading can be trusted."
            ),
            el("div")
                .class("field")
                .child(el("label").attr("for", id.clone()).child("What it showed, one reading on each line"))
                .child(
                    el("textarea")
                        .attr("id", id)
                        .attr("rows", "5")
                        .attr("spellcheck", "false")
                        .attr("placeholder", "100.02 g\n100.01 g\n100.02 g")
                        .prop("value", self.readings.text)
                        .on("input", move |e| self.readings.text.set(text_of(&e))),
                ),
            mass_field(
                Field::new("What it really weighs")
                    .hint("A check weight, or a new coin of known weight. Else leave it empty.")
                    .optional(),
                self.known,
            ),
            el("div").class("answer-line").attr("aria-live", "polite").child(live(answer))
        ]
    }
}
