//! The words of the hazard and precautionary statements, as far as a candle can need them.
//!
//! As printed in Annexes III and IV of Regulation (EC) No 1272/2008, text of 1 September 2025, those of EUH380 to EUH451
//! as in Regulation (EU) 2023/707, those of H360 and H361 with letters from memory, those that the Union does not have (H303, H313, H316, H333, H401, H402) as in the GHS, from
//! memory. Which hazard asks for which precaution: Annex I, Tables 3.1.3, 3.3.5, 3.4.7, 3.6.3,
//! 3.8.4, 3.9.5, 3.10.2 and 4.1.4. Compared on 26 November 2026; of Tables 3.2.5, 3.5.3 and 3.7.3 transcriptions
//! by others.

use crate::text::lower;

/// Hazard statements by their code.
const HAZARDS: &[(&str, &str)] = &[
    ("H300", "Fatal if swallowed."),
    ("H301", "Toxic if swallowed."),
    ("H302", "Harmful if swallowed."),
    ("H303", "May be harmful if swallowed."),
    ("H304", "May be fatal if swallowed and enters airways."),
    ("H310", "Fatal in contact with skin."),
    ("H311", "Toxic in contact with skin."),
    ("H312", "Harmful in contact with skin."),
    ("H313", "May be harmful in contact with skin."),
    ("H314", "Causes severe skin burns and eye damage."),
    ("H315", "Causes skin irritation."),
    ("H316", "Causes mild skin irritation."),
    ("H317", "May cause an allergic skin reaction."),
    ("H318", "Causes serious eye damage."),
    ("H319", "Causes serious eye irritation."),
    ("H330", "Fatal if inhaled."),
    ("H331", "Toxic if inhaled."),
    ("H332", "Harmful if inhaled."),
    ("H333", "May be harmful if inhaled."),
    ("H334", "May cause allergy or asthma symptoms or breathing difficulties if inhaled."),
    ("H335", "May cause respiratory irritation."),
    ("H336", "May cause drowsiness or dizziness."),
    ("H340", "May cause genetic defects."),
    ("H341", "Suspected of causing genetic defects."),
    ("H350", "May cause cancer."),
    ("H351", "Suspected of causing cancer."),
    ("H360", "May damage fertility or the unborn child."),
    ("H361", "Suspected of damaging fertility or the unborn child."),
    ("H360F", "May damage fertility."),
    ("H360D", "May damage the unborn child."),
    ("H360FD", "May damage fertility. May damage the unborn child."),
    ("H360Fd", "May damage fertility. Suspected of damaging the unborn child."),
    ("H360Df", "May damage the unborn child. Suspected of damaging fertility."),
    ("H361f", "Suspected of damaging fertility."),
    ("H361d", "Suspected of damaging the unborn child."),
    ("H361fd", "Suspected of damaging fertility. Suspected of damaging the unborn child."),
    ("H362", "May cause harm to breast-fed children."),
    ("H370", "Causes damage to organs."),
    ("H371", "May cause damage to organs."),
    ("H372", "Causes damage to organs through prolonged or repeated exposure."),
    ("H373", "May cause damage to organs through prolonged or repeated exposure."),
    ("H402", "Harmful to aquatic life."),
    ("H401", "Toxic to aquatic life."),
    ("H400", "Very toxic to aquatic life."),
    ("H410", "Very toxic to aquatic life with long lasting effects."),
    ("H411", "Toxic to aquatic life with long lasting effects."),
    ("H412", "Harmful to aquatic life with long lasting effects."),
    ("H413", "May cause long lasting harmful effects to aquatic life."),
    ("H420", "Harms public health and the environment by destroying ozone in the upper atmosphere."),
    ("EUH380", "May cause endocrine disruption in humans."),
    ("EUH381", "Suspected of causing endocrine disruption in humans."),
    ("EUH430", "May cause endocrine disruption in the environment."),
    ("EUH431", "Suspected of causing endocrine disruption in the environment."),
    ("EUH440", "Accumulates in the environment and living organisms including in humans."),
    ("EUH441", "Strongly accumulates in the environment and living organisms including in humans."),
    ("EUH450", "Can cause long-lasting and diffuse contamination of water resources."),
    ("EUH451", "Can cause very long-lasting and diffuse contamination of water resources."),
];

pub(super) fn hazard(code: &str) -> &'static str {
    HAZARDS.iter().find(|(known, _)| *known == code).map_or("", |found| found.1)
}

/// The text, in small letters, without the words of the statements whose codes stand in it: `h317: may cause an allergic
/// skin reaction`.
pub(super) fn without_words(text: &str) -> String {
    let mut bare = text.to_owned();
    // What begins or ends like another stands behind it in the table.
    for (code, words) in HAZARDS.iter().rev() {
        if text.contains(&lower(code)) {
            bare = bare.replace(lower(words).trim_end_matches('.'), " ");
        }
    }
    bare
}

/// A precautionary statement for things sold to anybody, with the hazard statements that ask for it.
pub(super) struct Precaution {
    pub(super) code: &'static str,
    pub(super) text: &'static str,
    /// Codes of hazard statements; empty: every one.
    pub(super) for_codes: &'static [&'static str],
}

const fn p(code: &'static str, text: &'static str, for_codes: &'static [&'static str]) -> Precaution {
    Precaution { code, text, for_codes }
}

impl Precaution {
    /// Its words where these hazard statements ask for it.
    pub(super) fn said(&self, asking: &[&str]) -> &'static str {
        if self.code == "P280" { worn(asking) } else { self.text }
    }
}

/// P280 names what fits the hazard (Annex IV, Table 1.2, from memory): for what gets through the skin gloves and clothing, for
/// what burns it eyes and face as well, for irritation and allergy of the skin gloves, for harm to the eyes their protection. For
/// what harms genes or children or causes cancer the supplier has to choose: gloves, as a candle is touched.
fn worn(asking: &[&str]) -> &'static str {
    let any = |codes: &[&str]| asking.iter().any(|code| codes.contains(code));
    let clothing = any(&["H310", "H311", "H312", "H314"]);
    let hands = clothing || any(&["H315", "H317", "H340", "H341", "H350", "H351", "H360", "H361"]);
    match (hands, clothing, any(&["H314", "H318", "H319"])) {
        (_, true, true) => "Wear protective gloves/protective clothing/eye protection/face protection.",
        (_, true, false) => "Wear protective gloves/protective clothing.",
        (true, false, true) => "Wear protective gloves/eye protection/face protection.",
        (false, false, true) => "Wear eye protection/face protection.",
        (_, false, false) => "Wear protective gloves.",
    }
}

/// The most wanted first: six are enough (Article 28(3)). The order is our own choice for a candle.
pub(super) const PRECAUTIONS: &[Precaution] = &[
    p("P102", "Keep out of reach of children.", &[]),
    p(
        "P501",
        "Dispose of contents/container in accordance with local regulations.",
        &[
            "H300", "H301", "H302", "H304", "H310", "H311", "H312", "H314", "H317", "H330", "H331", "H334",
            "H335", "H336", "H340", "H341", "H350", "H351", "H360", "H361", "H370", "H371", "H372", "H373",
            "H400", "H410", "H411", "H412", "H413",
        ],
    ),
    p("P301+P310", "IF SWALLOWED: Immediately call a POISON CENTER or doctor.", &["H300", "H301", "H304"]),
    p("P331", "Do NOT induce vomiting.", &["H304"]),
    p("P301+P330+P331", "IF SWALLOWED: Rinse mouth. Do NOT induce vomiting.", &["H314"]),
    p(
        "P303+P361+P353",
        "IF ON SKIN (or hair): Take off immediately all contaminated clothing. Rinse skin with water.",
        &["H314"],
    ),
    p(
        "P305+P351+P338",
        "IF IN EYES: Rinse cautiously with water for several minutes. Remove contact lenses, if present and easy to \
do. Continue rinsing.",
        &["H314", "H318", "H319"],
    ),
    p("P310", "Immediately call a POISON CENTER or doctor.", &["H310", "H314", "H318", "H330"]),
    p(
        "P304+P340",
        "IF INHALED: Remove person to fresh air and keep comfortable for breathing.",
        &["H314", "H330", "H331", "H332", "H334", "H335", "H336"],
    ),
    p("P342+P311", "If experiencing respiratory symptoms: Call a POISON CENTER or doctor.", &["H334"]),
    p(
        "P308+P313",
        "IF exposed or concerned: Get medical advice.",
        &["H340", "H341", "H350", "H351", "H360", "H361", "H362"],
    ),
    p("P308+P311", "IF exposed or concerned: Call a POISON CENTER or doctor.", &["H370", "H371"]),
    p("P302+P352", "IF ON SKIN: Wash with plenty of water.", &["H310", "H311", "H312", "H315", "H317"]),
    p("P333+P313", "If skin irritation or rash occurs: Get medical advice.", &["H317"]),
    p("P273", "Avoid release to the environment.", &["H400", "H410", "H411", "H412", "H413"]),
    p("P391", "Collect spillage.", &["H400", "H410", "H411"]),
    p("P337+P313", "If eye irritation persists: Get medical advice.", &["H319"]),
    p("P332+P313", "If skin irritation occurs: Get medical advice.", &["H315"]),
    p("P301+P312", "IF SWALLOWED: Call a POISON CENTRE or doctor if you feel unwell.", &["H302"]),
    p(
        "P280",
        // In its place `worn` tells what fits the hazards.
        "",
        &[
            "H310", "H311", "H312", "H314", "H315", "H317", "H318", "H319", "H340", "H341", "H350", "H351",
            "H360", "H361",
        ],
    ),
    p("P261", "Avoid breathing vapours.", &["H317", "H331", "H332", "H334", "H335", "H336"]),
    p("P314", "Get medical advice if you feel unwell.", &["H372", "H373"]),
    p(
        "P201",
        "Obtain special instructions before use.",
        &["H340", "H341", "H350", "H351", "H360", "H361", "H362"],
    ),
    p("P271", "Use only outdoors or in a well-ventilated area.", &["H330", "H331", "H332", "H335", "H336"]),
    p("P101", "If medical advice is needed, have product container or label at hand.", &[]),
];
