//! What joins on a label: the candle's formula, the safety data of what is in it, the vessel, the batch as filled.

use super::{Batch, Burden, Id, Kept, State};
use crate::desk::hazard::{self, Statements, statements};
use crate::desk::label::{Content, Design, Face, Market, Part};
use crate::desk::net::{Asked, Declaration, Panel, Test};
use crate::formula::Formula;
use crate::quantity::{Exact, Length, Mass, Voice, Volume};
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
#[derive(Default)]
pub struct Labelled {
    pub content: Content,
    /// None where nothing is declared.
    pub declared: Option<Declaration>,
    /// Of what was weighed of the batch; none where nothing was.
    pub tests: Vec<(&'static str, Test)>,
    /// How high its letters have to be, by the rules of each market.
    pub letters: Vec<Asked>,
    /// The panel it stands on, and whether the label is all that is known of it; none where no rule asks for its place.
    pub(super) panel: Option<(Panel, bool)>,
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
        // What a small package may leave out, which names may be left off, and EUH lines are the Union's.
        let union = design.market != Market::UnitedStates;
        let may_be_small = union && volume.is_some_and(|v| v <= SMALL);
        if has(Part::Name) {
            let name = ask.name.trim();
            content.name(if name.is_empty() { &formula.name } else { name });
        }
        if has(Part::Fire) {
            content.fire();
            remarks.push(fire_remark(design.market));
        }
        if has(Part::Hazards) {
            let mut said: Statements = statements(mixed, ask.small && may_be_small);
            let left_off = if union { Vec::new() } else { std::mem::take(&mut said.further) };
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
            if !union {
                remarks.push(OF_STATES.to_owned());
                if !left_off.is_empty() {
                    remarks.push([LEFT_OFF, &left_off.join(" ")].concat());
                }
            }
            spare = said.say_spare().filter(|_| union);
            let few = union && ask.few_names;
            content.hazards(if few { said.with_few_names() } else { said }, volume);
        }
        if has(Part::Batch) {
            content.batch(&ask.number, &ask.day);
        }
        if has(Part::Maker) && !design.maker.trim().is_empty() {
            content.maker(design.maker.trim());
        }
        let mut labelled = Labelled { may_be_small, spare, ..Labelled::default() };
        if has(Part::Net) {
            match self.declared(ask, voice) {
                Ok(found) => {
                    content.net(design.market, &found.declaration, found.nominal, found.panel);
                    remarks.extend(found.remarks);
                    let asks = design.market != Market::EuropeanUnion;
                    labelled.panel = asks.then_some((found.panel, found.own));
                    (labelled.tests, labelled.letters, labelled.over) =
                        (found.tests, found.letters, found.over);
                    labelled.declared = Some(found.declaration);
                }
                Err(why) => remarks.push(why),
            }
        }
        remarks.extend_from_slice(&burden.limits);
        Labelled { content, remarks, ..labelled }
    }
}

/// The editions that abstracts of the standards named on 27 November 2026.
fn fire_remark(market: Market) -> String {
    let standard = match market {
        Market::UnitedStates => "ASTM F2058-07 (reapproved 2021)",
        Market::EuropeanUnion => "EN 15494:2019",
        Market::Both => "ASTM F2058-07 (reapproved 2021) and EN 15494:2019",
    };
    [
        "The fire-safety messages are in our own words, with our own pictures. Compare them, their sizes and their place with \
your own copy of the standard of your market: ",
        standard,
        ", the editions known here on 27 November 2026. Your copy decides.",
    ]
    .concat()
}

const OF_STATES: &str = "The hazards stand here by the Globally Harmonized System as the European Union took it over. In the United \
States that system is for workplaces (29 CFR 1910.1200); what is sold to consumers is under the Federal Hazardous Substances Act, \
which has words of its own (16 CFR 1500; both from memory, 27 November 2026). Ask a qualified person which your candle has to bear.";

const LEFT_OFF: &str =
    "Left off, since only the European Union asks for it; with “Both” as the market it stands on the label: ";

const OPEN: &str = "The candle may have more hazards to bear than stand here: the label is not complete.";

const NO_VOLUME: &str = "How much the vessel holds is not known: the letters of the hazards are as high as for half a litre, and \
nothing is left out as for a small package. Measure the vessel in the Book.";
