//! What has to be known with a label: the tests of the batch, remarks, and the rules behind it.

use crate::book::Labelled;
use crate::desk::hazard::SOURCE;
use crate::desk::label::Design;
use crate::desk::net::Test;
use crate::dom::*;
use crate::rooms::parts::{choice, page_part, sentence, why_button};

/// What has to be known with it.
pub(super) fn told(labelled: &Labelled, design: &Design, small: Value<bool>, few_names: Value<bool>) -> View {
    let tests = labelled.tests.iter().map(|(title, test)| tested(title, test)).views();
    let source = labelled.declared.as_ref().map(|d| el("p").class("detail").child(d.source));
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
        (!labelled.tests.is_empty()).then(|| page_part("label-tests", "Would the batch pass?", tests)),
        source,
        el("p").class("detail").child(
            [
                "Hazards: ",
                SOURCE,
                ". Letters: Regulation (EU) 2024/2865, 16 CFR 500.21 (compared with 21 CFR 101.7), Directive 76/211/EEC, as gathered \
on 25 and 26 November 2026. \
This is an aid: local law and a qualified person decide.",
            ]
            .concat()
        )
    ]
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
