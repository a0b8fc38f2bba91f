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

/// The name of a substance, with the classes that are read and not reckoned with.
fn noted(substance: &Substance) -> Option<String> {
    let noted = substance.noted.join(", ");
    (!noted.is_empty()).then(|| [&substance.name, " (", &noted, ")"].concat())
}

/// A sentence about all of these; none where there are none.
fn of_all(before: &str, names: &[String], between: &str, after: &str) -> Option<String> {
    (!names.is_empty()).then(|| [before, &names.join(between), after].concat())
}

/// Sentences to be read with the result: what is not known, what was taken to be, and what is not carried over.
pub fn remarks(mixed: &Mixed, voice: Voice) -> Vec<String> {
    let mut said = Vec::new();
    let [open, harmless] = &mixed.no_sheet;
    said.extend(of_all(
        "There is no safety data for ",
        open,
        ", ",
        ": the result cannot be relied on until there is.",
    ));
    said.extend(of_all(
        "The formula does not tell how much is in the candle of ",
        &mixed.no_share,
        ", ",
        ": its hazards are not in the result. Weigh drops or level spoons of it on the Bench, or mend its amount in the \
formula: by weight or as a share.",
    ));
    said.extend(of_all("Taken to have no hazards, as no safety data is typed in: ", harmless, ", ", "."));
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
    let of = |word: &dyn Fn(&Substance) -> Option<String>| -> Vec<String> {
        mixed.substances.iter().filter_map(word).collect()
    };
    let unknown = of(&|s| s.unknown.then(|| s.name.clone()));
    said.extend(of_all("Hazards not known in full: ", &unknown, ", ", "."));
    said.extend(of_all(
        "A class of acute toxicity and the estimate beside it do not agree: ",
        &of(&at_odds),
        "; ",
        ". The stricter of the two counts. Compare both with the safety data sheet.",
    ));
    said.extend(of_all(
        "M-factor not typed in: ",
        &of(&without_m),
        ", ",
        ". It is reckoned as 1; the safety data sheet may have 10, 100 or more.",
    ));
    said.extend(of_all(
        "Not carried into the candle, as it is tested on the candle itself or is no class of the EU: ",
        &of(&noted),
        "; ",
        ".",
    ));
    if mixed.classes.iter().any(|c| c.code.starts_with("H3")) {
        said.push(
            "Classed for health: in the EU its composition is reported to the poison centres before sale, and the code \
of that report (UFI) stands on the label."
                .to_owned(),
        );
    }
    said
}
