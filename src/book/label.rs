//! What joins on a label: the candle's formula, the safety data of what is in it, the vessel, the batch as filled.

use super::fills::Fills;
use super::{Batch, Burden, Id, Kept, State};
use crate::desk::hazard::{self, Statements, statements};
use crate::desk::label::{Content, Design, Face, Market, Part};
use crate::desk::net::{
    Declaration, Panel, Test, declare, declare_metric, declare_tapers, eu_test, overstated, us_test,
};
use crate::formula::Formula;
use crate::quantity::{Exact, Length, LengthUnit, Mass, Voice, Volume};
use crate::vessel::{Vessel, capacity};

/// What a label is asked for.
pub struct Labelling<'a> {
    pub design: &'a Design,
    pub formula: &'a Formula,
    pub vessel: &'a Vessel,
    /// The batch it is for, where there is one.
    pub batch: Option<&'a Batch>,
    /// What the candle is called; empty: as the formula is.
    pub name: String,
    pub number: String,
    pub day: String,
    /// What is to be declared; none: what the average of the candles weighed, or the fill, allows.
    pub declared: Option<Mass>,
    /// Count and length, for tapers and decorative candles, which are not declared by weight.
    pub tapers: Option<(u32, Length)>,
    /// What a small package may leave out is left out.
    pub small: bool,
    /// Names of substances that may be left off are.
    pub few_names: bool,
}

/// A label's content and what has to be known with it.
pub struct Labelled {
    pub content: Content,
    /// None where nothing is declared.
    pub declared: Option<Declaration>,
    /// Of what was weighed of the batch; none where nothing was.
    pub tests: Vec<(&'static str, Test)>,
    /// That more is declared than the planned fill, where no test tells of it.
    pub over: Option<String>,
    /// True where the package holds at most 125 mL, so that some statements may be left out.
    pub may_be_small: bool,
    /// Which names of substances may be left off, where some may.
    pub spare: Option<String>,
    /// Sentences to be read before printing.
    pub remarks: Vec<String>,
}

/// The package is a small one up to here (CLP, Annex I, 1.5.2), in millilitres.
const SMALL: Volume = Volume::base(Exact::whole(125));

impl State {
    /// The formula of a batch as it was when it began, and its vessel.
    pub fn made_of(&self, batch: &Batch) -> Option<(&Formula, &Vessel)> {
        let formula = self.formulas.get(&batch.formula)?;
        let version = formula.version(&batch.version).map(|(_, v)| v).or_else(|| formula.latest())?;
        Some((&version.body, self.vessels.get(&batch.vessel)?.body()?))
    }

    /// What a label is about: a batch; where there is none, a formula and a vessel.
    pub fn chosen(&self, [batch, formula, vessel]: &[Id; 3]) -> Option<(&Formula, &Vessel)> {
        match self.batches.get(batch) {
            Some(batch) => self.made_of(batch),
            None => Some((self.formulas.get(formula)?.body()?, self.vessels.get(vessel)?.body()?)),
        }
    }

    /// What a candle is called on its label: what it is sold as, else its formula's name. Of a batch; where there is none, of
    /// a formula and a vessel.
    pub fn label_name(&self, [batch, formula, vessel]: &[Id; 3]) -> String {
        let (product, formula) = match self.batches.get(batch) {
            Some(batch) => (self.product_of(batch), self.made_of(batch).map(|of| of.0)),
            None => (self.product_with(formula, vessel), self.formulas.get(formula).and_then(Kept::body)),
        };
        product.map(|p| &p.name).or(formula.map(|f| &f.name)).cloned().unwrap_or_default()
    }

    /// Puts a label together.
    pub fn label(&self, ask: &Labelling, face: Face, voice: Voice) -> Labelled {
        self.label_with(ask, &self.burden_of(ask.formula, ask.batch, voice), face, voice)
    }

    /// The same, where what the formula or the batch brings is known already.
    pub fn label_with(&self, ask: &Labelling, burden: &Burden, face: Face, voice: Voice) -> Labelled {
        let (design, formula, vessel) = (ask.design, ask.formula, ask.vessel);
        let mut content = Content::new(face);
        let (mut remarks, mut spare) = (Vec::new(), None);
        let has = |part| design.parts.contains(&part);
        let volume = capacity(vessel, voice).ok().map(|found| found.0);
        let mixed = &burden.mixed;
        let may_be_small = volume.is_some_and(|v| v <= SMALL);
        if has(Part::Name) {
            let name = ask.name.trim();
            content.name(if name.is_empty() { &formula.name } else { name });
        }
        if has(Part::Fire) {
            content.fire();
            remarks.push(FIRE_REMARK.to_owned());
        }
        if has(Part::Hazards) {
            let said: Statements = statements(mixed, ask.small && may_be_small);
            remarks.extend(burden.over.clone());
            remarks.extend(hazard::remarks(mixed, voice));
            if said.is_empty() {
                let open =
                    "What hazards the candle has to bear cannot be told yet: the label is not complete.";
                let none = "By what is typed in, the candle has no hazard statement to bear.";
                remarks.push(if mixed.is_open() { open } else { none }.to_owned());
            } else if mixed.is_open() {
                remarks.push(OPEN.to_owned());
            }
            if volume.is_none() && !said.is_empty() {
                remarks.push(NO_VOLUME.to_owned());
            }
            spare = said.say_spare();
            content.hazards(if ask.few_names { said.with_few_names() } else { said }, volume);
        }
        if has(Part::Batch) {
            content.batch(&ask.number, &ask.day);
        }
        if has(Part::Maker) && !design.maker.trim().is_empty() {
            content.maker(design.maker.trim());
        }
        let (mut declared, mut over) = (None, None);
        let mut tests = Vec::new();
        if has(Part::Net) {
            match self.net(ask, voice) {
                Ok((declaration, fills)) => {
                    let weighed = &fills.weighed;
                    remarks.extend(fills.say(voice));
                    if weighed.is_empty() {
                        over =
                            ask.declared.zip(fills.planned).and_then(|(d, fill)| overstated(d, fill, voice));
                    }
                    let lot = fills.filled.unwrap_or_default();
                    let of_those = |test: Test| test.of_weighed(weighed.len(), lot);
                    let nominal = declaration.enforced.unwrap_or(Mass::ZERO);
                    let sheet =
                        Panel::Flat { width: design.sheet.width.value, height: design.sheet.height.value };
                    // Tapers stand in no vessel: their label is on what they are packed in.
                    let panel = if ask.tapers.is_some() { Some(sheet) } else { panel(vessel) };
                    let panel = panel.unwrap_or_else(|| {
                        remarks.push(NO_PANEL.to_owned());
                        sheet
                    });
                    if design.market != Market::EuropeanUnion {
                        tests.extend(
                            us_test(weighed, nominal, lot, voice).map(|t| ("United States", of_those(t))),
                        );
                        let lowest = panel.lowest().filter(|_| ask.tapers.is_none());
                        remarks.extend(lowest.map(|lowest| placed(lowest, voice)));
                    }
                    if design.market != Market::UnitedStates {
                        tests.extend(
                            eu_test(weighed, nominal, voice).map(|t| ("European Union", of_those(t))),
                        );
                    }
                    content.net(design.market, &declaration, nominal, panel);
                    declared = Some(declaration);
                }
                Err(why) => remarks.push(why),
            }
        }
        remarks.extend_from_slice(&burden.limits);
        Labelled { content, declared, tests, over, may_be_small, spare, remarks }
    }

    /// The declaration, and the fills it is held against.
    fn net(&self, ask: &Labelling, voice: Voice) -> Result<(Declaration, Fills), String> {
        if let Some((count, length)) = ask.tapers {
            return Ok((declare_tapers(count, length), Fills::default()));
        }
        let fills = match ask.batch {
            Some(batch) => Fills::of(batch, voice),
            None => {
                let fill = self.fill(ask.vessel, ask.formula, voice).map(|found| found.0);
                if let (None, Err(why)) = (ask.declared, &fill) {
                    return Err(why.to_string());
                }
                Fills { planned: fill.ok(), ..Fills::default() }
            }
        };
        let mass = ask.declared.or_else(|| fills.allows()).unwrap_or(Mass::ZERO);
        let metric = ask.design.market == Market::EuropeanUnion;
        Ok((if metric { declare_metric(mass) } else { declare(mass) }, fills))
    }
}

const FIRE_REMARK: &str = "The fire-safety messages are in our own words, with our own pictures. Compare them, their sizes and \
their place with your own copy of the standard of your market (ASTM F2058, EN 15494).";

const NO_PANEL: &str = "The inside of the vessel is not measured, so the least height of the net contents is reckoned from the \
label alone: it may have to be higher. Measure the vessel in the Book.";

const OPEN: &str = "The candle may have more hazards to bear than stand here: the label is not complete.";

const NO_VOLUME: &str = "How much the vessel holds is not known: the letters of the hazards are as high as for half a litre, and \
nothing is left out as for a small package. Measure the vessel in the Book.";

fn placed(lowest: Length, voice: Voice) -> String {
    let unit = if voice.length == LengthUnit::Inch { LengthUnit::Inch } else { LengthUnit::Millimetre };
    let height = voice.amount(lowest, unit);
    [
        "Stick the label so that the net contents stand within ",
        &height,
        " of the foot of the vessel (16 CFR 500.6).",
    ]
    .concat()
}

/// The side of a vessel, from its inside and wall.
fn panel(vessel: &Vessel) -> Option<Panel> {
    let inside = vessel.inside.as_ref()?;
    let wall = vessel.wall.map_or(Length::ZERO, |wall| wall.value);
    let widest = inside.top.value.max(inside.bottom.value);
    Some(Panel::Round { diameter: widest + wall + wall, height: inside.height.value + wall })
}
