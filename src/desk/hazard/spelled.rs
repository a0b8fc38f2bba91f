//! Classes written in full, as many sheets print them: `Skin sensitization, Category 1B`, `Hazardous to the aquatic
//! environment, long-term hazard, Category 2`, `Acute toxicity, oral (Category 4), H302`.

use super::named::ROUTES;
use crate::text::cut;

/// Only a part with one of these is looked at here.
const LONG: [&str; 17] = [
    "cat.",
    "categor",
    "toxicity",
    "sensiti",
    "irritation",
    "corrosi",
    "damage",
    "hazard",
    "mutagen",
    "carcinogen",
    "exposure",
    "environment",
    "irritant",
    "endocrine",
    "lactation",
    "cat ",
    "aquatic tox",
];

/// Words that names of classes are made of, as they begin, and those that stand by themselves.
const BEGIN: [&str; 40] = [
    "acute",
    "tox",
    "sens",
    "resp",
    "corr",
    "irrit",
    "serious",
    "dam",
    "asp",
    "hazard",
    "aquatic",
    "environment",
    "long",
    "short",
    "chronic",
    "target",
    "organ",
    "specific",
    "single",
    "repeated",
    "exposure",
    "muta",
    "carc",
    "repr",
    "lact",
    "ozone",
    "endocrine",
    "disrupt",
    "human",
    "health",
    "flam",
    "combust",
    "liq",
    "solid",
    "metal",
    "narcotic",
    "drows",
    "nervous",
    "effect",
    "system",
];
const WHOLE: [&str; 22] = [
    "skin",
    "eye",
    "eyes",
    "term",
    "germ",
    "cell",
    "stot",
    "se",
    "re",
    "layer",
    "tract",
    "via",
    "or",
    "on",
    "to",
    "the",
    "for",
    "and",
    "of",
    "through",
    "central",
    "breast-fed",
];

/// The part with its classes by their short names; none where it has none in full, or a word that is not known.
pub(super) fn short(words: &str) -> Option<String> {
    if !LONG.iter().any(|long| words.contains(long)) {
        return None;
    }
    let (head, tail) = cut(words, limit(words));
    let coded = head.split(|c: char| !c.is_ascii_alphanumeric()).any(is_code);
    let (mut out, mut class) = (String::new(), Spelled::default());
    for token in head.split([' ', ',', '/', '(', ')', ':', '+', '[', ']']) {
        let token = token.trim_matches(['-', '.']);
        let (begins, rest) = cut(token, token.find(|c: char| c.is_ascii_digit()).unwrap_or(token.len()));
        let says = |word: &&str| begins.starts_with(word);
        if ["c", "scl"].contains(&token) {
            continue;
        }
        if is_code(token) {
            class.end("", coded, &mut out)?;
            out.push_str(token);
            out.push(',');
        } else if ["category", "cat", "cat.", "sub-category", "subcategory", "class", ""].contains(&begins) {
            if !rest.is_empty() {
                class.end(rest, coded, &mut out)?;
            }
        } else if !rest.is_empty() {
            return None;
        } else if let Some((route, _)) =
            ROUTES.iter().find(|(route, _)| token.strip_suffix('s').unwrap_or(token) == *route)
        {
            class.route(route, &mut out);
        } else if token.starts_with("inhal") {
            class.words.push_str(" inhal");
        } else if BEGIN.iter().any(says) || WHOLE.contains(&token) {
            class.words.push(' ');
            class.words.push_str(token);
        } else if !(class.organs && coded) {
            return None;
        }
    }
    class.end("", coded, &mut out)?;
    let out = out.trim_end_matches([' ', ',']);
    (!out.is_empty()).then(|| [out, ", ", tail].concat())
}

fn is_code(token: &str) -> bool {
    let token = token.strip_prefix("eu").unwrap_or(token);
    token
        .strip_prefix('h')
        .is_some_and(|rest| rest.len() >= 3 && rest.bytes().take(3).all(|b| b.is_ascii_digit()))
}

/// Where a specific limit begins: `C ≥ 5 %`, `1 % ≤ C`.
fn limit(words: &str) -> usize {
    let sign = words.find(['<', '>', '%']).unwrap_or(words.len());
    let before = cut(words, sign).0;
    let figures = |c: char| c.is_ascii_digit() || ". ,".contains(c);
    if words.as_bytes().get(sign) == Some(&b'%') { before.trim_end_matches(figures).len() } else { sign }
}

/// The words of one class, until its category or its code ends it.
#[derive(Default)]
struct Spelled {
    words: String,
    /// Where a route belongs that comes after the class: none before the first, and none to a class that has its own.
    open: bool,
    route: String,
    /// Organs are named after it.
    organs: bool,
}

impl Spelled {
    fn route(&mut self, route: &str, out: &mut String) {
        if self.open && self.words.is_empty() {
            out.push_str(route);
            out.push(',');
        } else {
            self.route = route.to_owned();
        }
    }

    /// Ends a class: its short name, with its route behind it. None where it is no class and no code tells it.
    fn end(&mut self, category: &str, coded: bool, out: &mut String) -> Option<()> {
        let (words, route) = (std::mem::take(&mut self.words), std::mem::take(&mut self.route));
        if words.is_empty() && category.is_empty() {
            // A route by itself may be of a class that is not read; that of organs is no part of their class.
            return (route.is_empty() || self.organs).then_some(());
        }
        if self.organs && category.is_empty() {
            // What stands after a class of organs tells which: `Category 3, respiratory tract irritation`.
            out.push_str(if coded { "" } else { organ(&words)? });
            return Some(());
        }
        let Some(name) = name(&words, category) else {
            // The code beside it tells the class.
            return (coded && category.is_empty()).then_some(());
        };
        self.organs = name.starts_with("stot");
        let acute = name.starts_with("acute tox");
        self.open = acute && route.is_empty();
        out.push_str(&name);
        out.push(' ');
        if acute {
            out.push_str(&route);
        }
        out.push(',');
        if self.organs && !coded {
            out.push_str(organ(&words).unwrap_or_default());
        }
        Some(())
    }
}

/// The code that the organs of `STOT SE 3` tell.
fn organ(words: &str) -> Option<&'static str> {
    match () {
        () if words.contains("resp") => Some("h335,"),
        () if words.contains("narcotic") || words.contains("drows") => Some("h336,"),
        () => None,
    }
}

/// The short name of a class by its words and category. Where a class has two names, the category decides: 1 of skin and
/// eyes is corrosion and damage, 2 irritation.
fn name(words: &str, category: &str) -> Option<String> {
    // Every word is led by a space.
    let has = |word: &str| words.contains(word);
    let by = |stem: &str, usual: &str| {
        let category = if category.is_empty() { usual } else { category };
        (!category.is_empty()).then(|| [stem, " ", category].concat())
    };
    // Of two that part a hazard exactly one is said.
    let either = |one: bool, other: bool, [first, second]: [&'static str; 2], usual: &str| {
        (one != other).then(|| by(if one { first } else { second }, usual)).flatten()
    };
    // Category 1 of what is split into 1A and 1B only: their limits are the same.
    let split = |stem: &str| if category == "1" { Some([stem, " 1b"].concat()) } else { by(stem, "") };
    let (skin, eye) = (has(" skin"), has(" eye"));
    let (sharp, mild) = (has(" corr") || has(" dam"), has(" irrit"));
    let strong = if category.is_empty() { sharp } else { category.starts_with('1') };
    let usual = match (sharp, mild) {
        (true, false) => "1",
        (false, true) => "2",
        _ => "",
    };
    match () {
        () if has(" ozone") => by("ozone", "1"),
        () if has(" endocrine") => either(has(" human"), has(" environment"), ["ed hh", "ed env"], ""),
        () if has(" aquatic") => {
            let (short, long) = (has(" acute") || has(" short"), has(" chronic") || has(" long"));
            either(short, long, ["aquatic acute", "aquatic chronic"], "")
        }
        () if has(" sens") => either(skin, has(" resp"), ["skin sens.", "resp. sens."], "1"),
        () if has(" target") || has(" stot") => {
            let word = |word: &str| words.split(' ').any(|w| w == word);
            let (once, often) = (has(" single") || word("se"), has(" repeated") || word("re"));
            either(once, often, ["stot se", "stot re"], "")
        }
        () if has(" asp") => by("asp. tox.", "1"),
        () if has(" muta") => split("muta."),
        () if has(" carc") => split("carc."),
        () if has(" lact") || has(" breast") => Some("lact.".to_owned()),
        () if has(" repr") => split("repr."),
        () if has(" flam") || has(" combust") => by("flammable", ""),
        () if has(" metal") => by("met. corr.", "1"),
        () if has(" acute") && has(" tox") => by("acute tox.", ""),
        () if (sharp || mild) && skin != eye => match (skin, strong) {
            (true, true) => by("skin corr.", usual),
            (true, false) => by("skin irrit.", usual),
            (false, true) => by("eye dam.", usual),
            (false, false) => by("eye irrit.", usual),
        },
        () => None,
    }
}
