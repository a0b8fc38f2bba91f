//! What Potside is, what its numbers stand on, the cautions of the work.

use crate::formula::{Moment, PartKind, usual_cautions};
use crate::vessel::WATER_SOURCE;
use leptos::prelude::*;

pub(super) fn body() -> AnyView {
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
    view! {
        <p>"Potside "{env!("CARGO_PKG_VERSION")}", for container candles made in small batches."</p>
        <h3>"What the numbers stand on"</h3>
        <ul class="plain">
            <li>"Amounts are exact fractions inside. They are rounded once, when they are shown, halves to the even digit."</li>
            <li>"Units: NIST Special Publication 811, Appendix B, and NIST Handbook 44, Appendix C."</li>
            <li>"A vessel by water: "{WATER_SOURCE}"."</li>
            <li>"How good a drop's weight is: the standard error, with the reading of the scale after GUM F.2.2.1."</li>
            <li>"Ask “why?” beside any number to see how it came about."</li>
        </ul>
        <h3>"Cautions"</h3>
        <ul class="plain">{cautions.into_iter().map(|c| view! { <li>{c}</li> }).collect_view()}</ul>
        <p>
            "Potside is an aid. Local rules, the supplier's documents and a qualified person decide; a thermometer, a scale and
            your own burn tests have the last word."
        </p>
        <h3>"Licence"</h3>
        <p>"MIT or Apache 2.0, as you choose. It comes without warranty."</p>
    }
    .into_any()
}
