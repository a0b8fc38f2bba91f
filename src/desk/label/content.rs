//! What stands on a label, and how large each thing must be.

use super::block::Block;
use super::lay::GAP;
use super::picture::Picture;
use super::width::Face;
use super::{Market, Part, Sheet, micrometres};
use crate::desk::code::Code;
use crate::desk::hazard::{Signal, Statements};
use crate::desk::net::{Declaration, Panel, eu_height, us_height};
use crate::quantity::{Exact, Length, Mass, Volume};

/// The three messages of a candle's fire-safety label, in our own words. The standards that are known to ask for them
/// are ASTM F2058-07 (2021) and EN 15494:2019: compare with your own copy.
pub const FIRE: [&str; 3] = [
    "Burn it only within sight.",
    "Burn it away from things that catch fire.",
    "Burn it away from children and pets.",
];

/// What is put on a label. Sizes are in micrometres.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Content {
    name: Option<String>,
    fire: bool,
    hazards: Option<Statements>,
    batch: Option<(String, String)>,
    maker: Option<String>,
    /// The declaration and its size.
    pub(super) net: Option<(String, i64)>,
    /// Of hazard statements.
    lettering: i64,
    face: Option<Face>,
}

/// Least height of a small letter in the hazard part, by the volume of the package (Regulation (EU) 2024/2865, which
/// holds from 1 January 2028; taken now).
pub fn lettering(volume: Volume) -> Length {
    let litres = |tenths: i128| Volume::base(Exact::whole(tenths * 100));
    let tenths = match volume {
        v if v <= litres(5) => 12,
        v if v <= litres(30) => 14,
        v if v <= litres(500) => 18,
        _ => 20,
    };
    Length::base(Exact::ratio(tenths, 10))
}

/// Name (height of its small letters), hazard pictures (over the diamond's corners), fire pictures and what is between
/// these, from the most roomy to the tightest. Each fire picture has a candle in it: closer, it seems to be its neighbour's.
/// A hazard picture has a side of 16 mm if possible and 10 mm at least (CLP, Annex I, Table 1.3), which is 22.7 and 14.2 mm
/// from corner to corner. A fire picture is at least 5 mm high (EN 15494:2019, by abstracts of it): what is drawn of each is
/// no less than 0.74 of its square, so a square of 7 mm does.
const LEVELS: [[i64; 4]; 6] = [
    [6000, 22_700, 11_000, 4000],
    [4500, 22_700, 9000, 3300],
    [3500, 18_000, 8000, 3000],
    [2500, 14_200, 7500, 2700],
    [2000, 14_200, 7000, 2500],
    [1600, 14_200, 7000, GAP],
];

/// Small letters of the plain texts: 1.2 mm; of the fire messages 1.6 mm (a sixteenth of an inch; our own choice).
const PLAIN: i64 = 1200;
const FIRE_LETTERS: i64 = 1600;

/// Micrometres, the shorter side first.
const HAZARD_LABEL: (i64, i64) = (52_000, 74_000);

/// Smaller than a label with hazards should be. A round one is held against it by its area (our own reading).
fn is_small(sheet: &Sheet) -> bool {
    let (width, height) = (micrometres(sheet.width.value), micrometres(sheet.height.value));
    let (short, long) = HAZARD_LABEL;
    if sheet.round {
        // A quarter of 355/113, for π.
        return width * width / 452 * 355 < short * long;
    }
    width.min(height) < short || width.max(height) < long
}

impl Content {
    pub(super) const LEVELS: usize = LEVELS.len();

    pub fn new(face: Face) -> Self {
        Self { face: Some(face), lettering: PLAIN, ..Self::default() }
    }
    pub fn name(&mut self, name: &str) {
        self.name = Some(name.to_owned());
    }
    pub fn fire(&mut self) {
        self.fire = true;
    }
    /// `volume` is that of the package.
    pub fn hazards(&mut self, statements: Statements, volume: Option<Volume>) {
        self.lettering = volume.map_or(PLAIN, |v| micrometres(lettering(v)));
        self.hazards = Some(statements);
    }
    pub fn batch(&mut self, number: &str, day: &str) {
        self.batch = Some((number.to_owned(), day.to_owned()));
    }
    pub fn maker(&mut self, maker: &str) {
        self.maker = Some(maker.to_owned());
    }

    /// The net contents by the rules of the market: in the United States small letters are as high as is asked, in the
    /// European Union figures are. `nominal` is what is declared there.
    pub fn net(&mut self, market: Market, declared: &Declaration, nominal: Mass, panel: Panel) {
        let face = self.face.unwrap_or_default();
        let by = |height: Length, part: i64| (micrometres(height) * 1000 + part - 1) / part;
        let us = by(us_height(panel, false), face.small);
        let eu = by(eu_height(nominal), face.capital);
        let size = match market {
            Market::UnitedStates => us,
            Market::EuropeanUnion => eu,
            Market::Both => us.max(eu),
        };
        self.net = Some((declared.text.clone(), size));
    }

    /// Which parts there are.
    pub fn has(&self, part: Part) -> bool {
        match part {
            Part::Name => self.name.is_some(),
            Part::Fire => self.fire,
            Part::Hazards => self.hazards.is_some(),
            Part::Batch => self.batch.is_some(),
            Part::Maker => self.maker.is_some(),
            Part::Net => self.net.is_some(),
        }
    }

    /// What is not on it as it should be, to be read before printing.
    pub fn remarks(&self, sheet: &Sheet) -> Vec<String> {
        let mut said = Vec::new();
        if let Some((number, _)) = &self.batch {
            let number = number.trim();
            if number.is_empty() {
                said.push("No batch number is typed: the label has none, and no QR code.".to_owned());
            } else if Code::of(number).is_none() {
                said.push(
                    "The batch number is too long for a QR code: the label has none. Shorten it.".to_owned(),
                );
            }
        }
        if self.hazards.as_ref().is_some_and(|said| !said.is_empty()) && is_small(sheet) {
            said.push(
                "A label with hazards on it is to be 52 × 74 mm or larger if possible (CLP, Annex I, Table 1.3, for packages \
of up to 3 litres). This one is smaller: take a larger one where the vessel or its box has room."
                    .to_owned(),
            );
        }
        said
    }

    /// All but the net contents, from the top.
    pub(super) fn blocks(&self, level: usize) -> Vec<Block> {
        let face = self.face.unwrap_or_default();
        let [name, hazard, fire, gap] = LEVELS.get(level).copied().unwrap_or([PLAIN, 14_200, 7000, GAP]);
        let size = |small: i64| (small * 1000 + face.small - 1) / face.small;
        let words = |text: String, small: i64, bold: bool| Block::Words { text, size: size(small), bold };
        let mut blocks = Vec::new();
        if let Some(text) = &self.name {
            blocks.push(words(text.clone(), name, true));
        }
        if self.fire {
            blocks.push(Block::Pictures { pictures: Picture::FIRE.to_vec(), side: fire, gap });
            blocks.push(words("WARNING".to_owned(), FIRE_LETTERS, true));
            blocks.push(words(FIRE.join(" "), FIRE_LETTERS, false));
        }
        if let Some(said) = self.hazards.as_ref().filter(|said| !said.is_empty()) {
            let small = self.lettering;
            if !said.pictograms.is_empty() {
                let pictures = said.pictograms.iter().filter_map(|n| Picture::hazard(*n)).collect();
                blocks.push(Block::Pictures { pictures, side: hazard, gap: GAP });
            }
            if said.signal != Signal::None {
                blocks.push(words(said.signal.word().to_owned(), small * 4 / 3, true));
            }
            if !said.contains.is_empty() {
                blocks.push(words(["Contains: ", &said.contains.join(", "), "."].concat(), small, false));
            }
            let mut text: Vec<&str> = said.hazards.iter().map(|h| h.1.as_str()).collect();
            text.extend(said.precautions.iter().map(|p| p.1));
            // The number of an EUH line does not stand on the label.
            text.extend(said.further.iter().map(|f| f.split_once(": ").map_or(f.as_str(), |found| found.1)));
            blocks.push(words(text.join(" "), small, false));
        }
        if let Some((number, day)) = &self.batch {
            let (number, day) = (number.trim(), day.trim());
            let of = if number.is_empty() { String::new() } else { ["Batch ", number].concat() };
            // Without a number there is nothing to be read from a code.
            blocks.extend((!number.is_empty()).then(|| Block::code(number)).flatten());
            let parts: Vec<&str> = [of.as_str(), day].into_iter().filter(|part| !part.is_empty()).collect();
            blocks.push(words(parts.join(", "), PLAIN, false));
        }
        if let Some(maker) = &self.maker {
            blocks.push(words(maker.clone(), PLAIN, false));
        }
        blocks
    }
}
