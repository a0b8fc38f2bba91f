//! The net contents of a label: what is declared and held against what, the panel it stands on, its letters and its place.

use super::fills::Fills;
use super::label::Labelling;
use super::{Labelled, State};
use crate::desk::label::{Laid, Market};
use crate::desk::net::{
    Asked, Declaration, Panel, Test, declare, declare_metric, declare_tapers, declare_tapers_metric,
    eu_letters, eu_test, overstated, us_height, us_letters, us_place, us_test,
};
use crate::quantity::{Exact, Length, Mass, Voice};
use crate::vessel::Vessel;

/// What a label declares, and all that has to be known with it.
pub(super) struct Declared {
    pub declaration: Declaration,
    pub nominal: Mass,
    pub panel: Panel,
    /// True where the label is all that is known of the panel.
    pub own: bool,
    pub letters: Vec<Asked>,
    pub tests: Vec<(&'static str, Test)>,
    pub over: Option<String>,
    pub remarks: Vec<String>,
}

impl State {
    /// The net contents of a label.
    ///
    /// # Errors
    /// Why nothing can be declared.
    pub(super) fn declared(&self, ask: &Labelling, voice: Voice) -> Result<Declared, String> {
        let (declaration, fills) = self.declaration(ask, voice)?;
        let design = ask.design;
        let (states, union) = (design.market != Market::EuropeanUnion, design.market != Market::UnitedStates);
        let nominal = declaration.enforced.unwrap_or(Mass::ZERO);
        let weighed = &fills.weighed;
        let lot = fills.filled.unwrap_or_default();
        let mut remarks: Vec<String> = fills.say(voice).into_iter().collect();
        let mut over = None;
        if weighed.is_empty() {
            over = ask.declared.zip(fills.planned).and_then(|(d, fill)| overstated(d, fill, voice));
        }
        let (panel, own, why) = panel_of(ask);
        let (mut tests, mut letters) = (Vec::new(), Vec::new());
        let of_those = |test: Test| test.of_weighed(weighed.len(), lot);
        if states {
            remarks.extend(why);
            tests.extend(us_test(weighed, nominal, lot, voice).map(|t| ("United States", of_those(t))));
            letters.push(us_letters(panel, voice));
        }
        if union && declaration.enforced.is_some() {
            tests.extend(eu_test(weighed, nominal, voice).map(|t| ("European Union", of_those(t))));
            letters.push(eu_letters(nominal, voice));
        }
        Ok(Declared { declaration, nominal, panel, own, letters, tests, over, remarks })
    }

    /// The declaration, and the fills it is held against.
    fn declaration(&self, ask: &Labelling, voice: Voice) -> Result<(Declaration, Fills), String> {
        let metric = ask.design.market == Market::EuropeanUnion;
        if let Some((count, length)) = ask.tapers {
            let said = if metric { declare_tapers_metric } else { declare_tapers };
            return Ok((said(count, length), Fills::default()));
        }
        let fills = match ask.batch {
            Some(batch) => Fills::of(batch, voice),
            None => {
                let fill = self.fill(ask.vessel, ask.formula, voice).map(|found| found.0);
                if let (None, Err(why)) = (ask.declared, &fill) {
                    return Err(why.say(voice));
                }
                Fills { planned: fill.ok(), ..Fills::default() }
            }
        };
        let mass = ask.declared.or_else(|| fills.allows()).unwrap_or(Mass::ZERO);
        Ok((if metric { declare_metric(mass) } else { declare(mass) }, fills))
    }
}

impl Labelled {
    /// Where the net contents have to stand, and so the label as it is laid out; none where no rule asks.
    pub fn placing(&self, laid: &Laid, voice: Voice) -> Option<Asked> {
        let (panel, own) = self.panel?;
        us_place(panel, own, Length::base(Exact::ratio(laid.reach?.into(), 1000)), voice)
    }
}

const NO_PANEL: &str = "The inside of the vessel is not measured, so the least height of the net contents is reckoned from the \
label alone: it may have to be higher. Measure the vessel in the Book.";

const PACKED: &str = "Tapers stand in no vessel, so the least height of the net contents is reckoned from the label alone. What \
counts is the side of the package that is seen when it is sold: where that is larger than the label, the letters may have to be \
higher (16 CFR 500.21).";

const NO_WALL: &str = "The wall of the vessel is not measured, so its panel is reckoned from the inside: with the wall the letters \
of the net contents may have to be higher. Measure it in the Book.";

/// The panel, whether it is the label alone, and what has to be said of it.
fn panel_of(ask: &Labelling) -> (Panel, bool, Option<String>) {
    let sheet = &ask.design.sheet;
    let own = Panel::Flat { width: sheet.width.value, height: sheet.height.value };
    if ask.tapers.is_some() {
        return (own, true, Some(PACKED.to_owned()));
    }
    let wall = ask.vessel.wall.map(|wall| wall.value);
    let Some(panel) = side(ask.vessel, wall.unwrap_or(Length::ZERO)) else {
        return (own, true, Some(NO_PANEL.to_owned()));
    };
    // No vessel of glass or tin has walls thicker than 5 mm (common practice, no source).
    let thick = side(ask.vessel, Length::base(Exact::whole(5)));
    let higher = thick.is_some_and(|thick| us_height(thick, false) > us_height(panel, false));
    (panel, false, (wall.is_none() && higher).then(|| NO_WALL.to_owned()))
}

/// The side of a vessel, from its inside and wall.
fn side(vessel: &Vessel, wall: Length) -> Option<Panel> {
    let inside = vessel.inside.as_ref()?;
    let widest = inside.top.value.max(inside.bottom.value);
    Some(Panel::Round { diameter: widest + wall + wall, height: inside.height.value + wall })
}
