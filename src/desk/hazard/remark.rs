//! What has to be read with the classes of a mixture.

use super::class::Group;
use super::mix::Mixed;
use super::say::percent;
use super::substance::Substance;
use crate::quantity::{Exact, Voice};

/// The name of a substance that is very toxic to water, with what it has no M-factor for.
fn without_m(substance: &Substance) -> Option<String> {
    let of = match (substance.lacks_m(Group::Acute), substance.lacks_m(Group::Chronic)) {
        (true, true) => " (acute and chronic)",
        (true, false) => " (acute)",
        (false, true) => " (chronic)",
        (false, false) => return None,
    };
    Some([&substance.name, of].concat())
}

/// The name of a substance, with its classes that an estimate does not agree with.
fn at_odds(substance: &Substance) -> Option<String> {
    let classes: Vec<String> = substance.at_odds().iter().map(|class| class.say()).collect();
    (!classes.is_empty()).then(|| [&substance.name, ": ", &classes.join(", ")].concat())
}

/// Sentences to be read with the result: what is not known, what was taken to be, and what is not carried over.
pub fn remarks(mixed: &Mixed, voice: Voice) -> Vec<String> {
    let mut said = Vec::new();
    let [open, harmless] = &mixed.no_sheet;
    if !open.is_empty() {
        said.push(
            [
                "There is no safety data for ",
                &open.join(", "),
                ": the result cannot be relied on until there is.",
            ]
            .concat(),
        );
    }
    if !mixed.no_share.is_empty() {
        said.push(
            [
                "The formula does not tell how much is in the candle of ",
                &mixed.no_share.join(", "),
                ": its hazards are not in the result. Weigh drops or level spoons of it on the Bench, or mend its \
amount in the formula: by weight or as a share.",
            ]
            .concat(),
        );
    }
    if !harmless.is_empty() {
        said.push(
            ["Taken to have no hazards, as no safety data is typed in: ", &harmless.join(", "), "."].concat(),
        );
    }
    for acute in mixed.acute.iter().filter(|a| a.unknown >= Exact::ONE) {
        if let Some(route) = acute.of() {
            let share = percent(acute.unknown, voice);
            said.push(
                [
                    &share,
                    " of the mixture consists of ingredients of unknown acute toxicity (",
                    route.name,
                    ").",
                ]
                .concat(),
            );
        }
    }
    let unknown: Vec<&str> = mixed.substances.iter().filter(|s| s.unknown).map(|s| s.name.as_str()).collect();
    if !unknown.is_empty() {
        said.push(["Hazards not known in full: ", &unknown.join(", "), "."].concat());
    }
    let at_odds: Vec<String> = mixed.substances.iter().filter_map(at_odds).collect();
    if !at_odds.is_empty() {
        said.push(
            [
                "A class of acute toxicity and the estimate beside it do not agree: ",
                &at_odds.join(", "),
                ". The stricter of the two counts. Compare both with the safety data sheet.",
            ]
            .concat(),
        );
    }
    let without_m: Vec<String> = mixed.substances.iter().filter_map(without_m).collect();
    if !without_m.is_empty() {
        said.push(
            [
                "M-factor not typed in: ",
                &without_m.join(", "),
                ". It is reckoned as 1; the safety data sheet may have 10, 100 or more.",
            ]
            .concat(),
        );
    }
    let noted = |s: &&Substance| !s.noted.is_empty();
    let noted: Vec<String> = mixed
        .substances
        .iter()
        .filter(noted)
        .map(|s| [s.name.as_str(), " (", &s.noted.join(", "), ")"].concat())
        .collect();
    if !noted.is_empty() {
        said.push(
            ["Not carried into the candle, as it is tested on the candle itself or is no class of the EU: ", &noted.join("; "), "."]
                .concat(),
        );
    }
    if mixed.classes.iter().any(|c| c.code.starts_with("H3")) {
        said.push(
            "Classed for health: in the EU its composition is reported to the poison centres before sale, and the code \
of that report (UFI) stands on the label."
                .to_owned(),
        );
    }
    said
}
