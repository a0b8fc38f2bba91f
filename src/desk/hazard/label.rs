//! What a label says of the hazards: pictograms, signal word and statements, each by its precedence.

use super::class::{Class, Group, Signal};
use super::identity::{allergens, identities, spare};
use super::mix::{Further, Mixed};
use super::statement::{PRECAUTIONS, Precaution, hazard};
use super::worded::worded;

/// The hazard part of a label.
#[derive(Clone, PartialEq, Debug)]
pub struct Statements {
    /// Numbers of GHS pictograms, in their order.
    pub pictograms: Vec<u8>,
    pub signal: Signal,
    /// Substances to be named.
    pub contains: Vec<String>,
    /// Those of them that may be left off, since the others suffice (Article 18(3)).
    pub spare: Vec<String>,
    /// Codes and words, as the two that follow.
    pub hazards: Vec<(&'static str, String)>,
    pub precautions: Vec<(&'static str, &'static str)>,
    /// EUH lines.
    pub further: Vec<String>,
}

impl Statements {
    pub fn is_empty(&self) -> bool {
        self.hazards.is_empty() && self.further.is_empty()
    }

    /// Which names may be left off, and which not.
    pub fn say_spare(&self) -> Option<String> {
        let most = "Four names are enough on a label, unless the hazards ask for more (CLP, Article 18(3), from memory). What brings \
the most of a class stays, and so does all that may cause an allergy or cancer, or harm genes or children. By that, these may be \
left off: ";
        (!self.spare.is_empty()).then(|| [most, &self.spare.join(", "), "."].concat())
    }

    /// Without the names that may be left off.
    #[must_use]
    pub fn with_few_names(mut self) -> Self {
        self.contains.retain(|name| !self.spare.contains(name));
        self
    }
}

impl Further {
    /// The signal word, codes and words that are asked for where a country takes these categories.
    pub fn statements(&self) -> (Signal, Vec<(&'static str, &'static str)>) {
        let signal = self.classes.iter().map(|class| class.signal).max().unwrap_or(Signal::None);
        (signal, self.classes.iter().map(|class| (class.code, hazard(class.code))).collect())
    }
}

/// The most precautionary statements, unless the hazards make more of them necessary (Article 28(3)). What burns the skin
/// fills them with first aid; what keeps it off the skin and the eyes stands there as a seventh (our own choice).
const MOST: usize = 6;

/// Classes of which a package of at most 125 mL may leave out hazard and precautionary statements (Annex I,
/// 1.5.2.1.1, points 12, 13, 16 and 17: for what is sold to anybody), and those of which it may leave out the
/// precautionary ones (1.5.2.1.2, point 3; H362 from memory). Compared on 26 November 2026.
const SMALL: [&str; 5] = ["H315", "H319", "H400", "H410", "H411"];
const SMALL_PRECAUTIONS: [&str; 8] = ["H315", "H319", "H400", "H410", "H411", "H362", "H412", "H413"];

/// The hazard part of the label of a mixture. `small`: the package holds at most 125 mL and what may be left out is.
pub fn statements(mixed: &Mixed, small: bool) -> Statements {
    let classes = &mixed.classes;
    let has = |code: &str| classes.iter().any(|class| class.code == code);
    let mut codes: Vec<&'static str> = classes.iter().map(|class| class.code).collect();
    // Annex III: what another statement says already.
    codes.retain(|code| match *code {
        "H318" => !has("H314"),
        "H400" => !has("H410"),
        _ => true,
    });
    let asking: Vec<&str> =
        codes.iter().copied().filter(|c| !small || !SMALL_PRECAUTIONS.contains(c)).collect();
    codes.retain(|code| !small || !SMALL.contains(code));
    let asked = |p: &&Precaution| {
        !asking.is_empty() && p.for_codes.is_empty() || p.for_codes.iter().any(|code| asking.contains(code))
    };
    let wanted: Vec<&Precaution> = PRECAUTIONS.iter().filter(asked).collect();
    let worn = wanted.iter().skip(MOST).filter(|p| p.code == "P280" && asking.contains(&"H314"));
    let mut precautions: Vec<(&str, &str)> =
        wanted.iter().take(MOST).chain(worn).map(|p| (p.code, p.said(&asking))).collect();
    crate::sort::by(&mut precautions, |a, b| a.0.cmp(b.0));
    let allergens = allergens(mixed);
    let sensitising = classes.iter().any(|c| is_sensitiser(c));
    let mut further = Vec::new();
    if !allergens.is_empty() && !sensitising {
        further.push(
            ["EUH208: Contains ", &allergens.join(", "), ". May produce an allergic reaction."].concat(),
        );
    }
    let always = if sensitising { allergens } else { Vec::new() };
    let by_hazard = identities(mixed);
    let mut contains = always.clone();
    for name in by_hazard.iter().flat_map(|(_, names)| names) {
        if !contains.contains(name) {
            contains.push(name.clone());
        }
    }
    Statements {
        pictograms: pictograms(classes),
        signal: classes.iter().map(|class| class.signal).max().unwrap_or(Signal::None),
        spare: spare(&contains, &always, &by_hazard),
        contains,
        hazards: classes.iter().filter(|c| codes.contains(&c.code)).map(|c| worded(mixed, c)).collect(),
        precautions,
        further,
    }
}

pub(super) fn is_sensitiser(class: Class) -> bool {
    class.is_in(Group::RespSens) || class.is_in(Group::SkinSens)
}

/// Article 26: the skull takes the place of the exclamation mark; corrosion takes its place for skin and eyes; the health
/// hazard of an allergen that is breathed in takes its place for skin and eyes and skin allergy.
fn pictograms(classes: &[Class]) -> Vec<u8> {
    let shows = |pictogram: u8| classes.iter().any(|class| class.pictogram == pictogram);
    let asthma = classes.iter().any(|class| class.group == Group::RespSens);
    let mark = classes.iter().filter(|class| class.pictogram == 7).any(|class| match class.group {
        Group::Skin | Group::Eye => !shows(5) && !asthma,
        Group::SkinSens => !asthma,
        _ => true,
    });
    let stays = |pictogram: &u8| match pictogram {
        7 => mark && !shows(6),
        _ => shows(*pictogram),
    };
    [5, 6, 7, 8, 9].into_iter().filter(stays).collect()
}
