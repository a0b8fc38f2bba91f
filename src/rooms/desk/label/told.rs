//! What has to be known with a label: the tests of the batch, remarks, and the rules behind it.

use crate::book::Labelled;
use crate::desk::hazard::SOURCE;
use crate::desk::label::{Design, Laid};
use crate::desk::net::{Asked, Test};
use crate::dom::*;
use crate::quantity::Voice;
use crate::rooms::parts::{caution, choice, page_part, sentence, why_button};

/// What has to be known with it; `laid` where it fits.
pub(super) fn told(
    labelled: &Labelled,
    design: &Design,
    laid: Option<&Laid>,
    voice: Voice,
    small: Value<bool>,
    few_names: Value<bool>,
) -> View {
    let place = laid.and_then(|laid| labelled.placing(laid, voice));
    let letters = labelled.letters.iter().cloned().chain(place).map(asked).views();
    let tests = labelled.tests.iter().map(|(title, test)| tested(title, test)).views();
    let of = |source: &str| ["Net contents: ", source, "."].concat();
    let source = labelled.declared.as_ref().map(|d| el("p").class("detail").child(of(d.source)));
    let left_out = labelled.may_be_small.then(|| {
        choice(
            "A package of at most 125 mL may leave out some statements",
            small,
            &[(false, "Keep them"), (true, "Leave them out")],
        )
    });
    let names = labelled.spare.clone().map(|said| {
        let offers = [(false, "All of them"), (true, "Only those proposed")];
        group![choice("Names of substances on the label", few_names, &offers), sentence(said)]
    });
    group![
        left_out,
        names,
        design.compared().map(sentence),
        labelled.content.remarks(&design.sheet).into_iter().map(sentence).views(),
        labelled.remarks.iter().cloned().map(sentence).views(),
        el("div")
            .class("below")
            .child(
                (!labelled.letters.is_empty())
                    .then(|| page_part("label-letters", "How high and where the net contents stand", letters)),
            )
            .child(
                (!labelled.tests.is_empty())
                    .then(|| page_part("label-tests", "Would the batch pass?", tests)),
            ),
        source,
        el("p").class("detail").child(
            [
                "Hazards: ",
                SOURCE,
                ". Letters of the hazards: Regulation (EU) 2024/2865, as gathered on 25 November 2026. This is an aid: local law and a qualified person decide.",
            ]
            .concat()
        )
    ]
}

fn asked(asked: Asked) -> View {
    let said = if asked.holds { sentence(asked.said) } else { caution(asked.said) };
    group![said, why_button(asked.why)]
}

fn tested(title: &str, test: &Test) -> View {
    let rules = test.rules.iter().map(|(holds, said)| {
        let word = match holds {
            Some(true) => "Holds: ",
            Some(false) => "Does not hold: ",
            None => "Cannot be told: ",
        };
        el("li").child(el("strong").child(word)).child(said.clone())
    });
    group![
        el("h3").child([title, ": ", &test.why.result].concat()),
        el("ul").class("plain").child(rules.views()),
        why_button(test.why.clone())
    ]
}
