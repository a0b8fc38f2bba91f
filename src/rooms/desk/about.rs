//! What Potside is, what its numbers stand on, the cautions of the work.

use crate::dom::*;
use crate::formula::{Moment, PartKind, usual_cautions};
use crate::vessel::WATER_SOURCE;

pub(super) fn body() -> View {
    let moments = [
        Moment::Melting,
        Moment::Adding(PartKind::Fragrance),
        Moment::Adding(PartKind::Dye),
        Moment::Pouring,
        Moment::Finishing,
    ];
    let mut cautions: Vec<&str> = Vec::new();
    for caution in moments.into_iter().flat_map(usual_cautions) {
        if !cautions.contains(caution) {
            cautions.push(caution);
        }
    }
    group![
        el("p")
            .child("Potside ")
            .child(env!("CARGO_PKG_VERSION"))
            .child(", for container candles made in small batches."),
        el("h3").child("What the numbers stand on"),
        el("ul")
            .class("plain")
            .child(el("li").child(
                "Amounts are exact fractions inside. They are rounded once, when they are \
shown, halves to the even digit.",
            ))
            .child(
                el("li").child(
                    "Units: NIST Special Publication 811, Appendix B, and NIST Handbook 44, Appendix C.",
                ),
            )
            .child(el("li").child("A vessel by water: ").child(WATER_SOURCE).child("."))
            .child(el("li").child(
                "How good a drop's weight is: the standard error, with the reading of the scale \
after GUM F.2.2.1.",
            ))
            .child(el("li").child("Ask “why?” beside any number to see how it came about.")),
        el("h3").child("Cautions"),
        el("ul").class("plain").child(cautions.into_iter().map(|c| el("li").child(c)).views()),
        el("p").child(
            "Potside is an aid. Local rules, the supplier's documents and a qualified \
person decide; a thermometer, a scale and your own burn tests have the last \
word.",
        ),
        el("h3").child("Licence"),
        el("p").child("MIT or Apache 2.0, as you choose. It comes without warranty.")
    ]
}
