//! A picture of temperatures against time.

use crate::dom::*;
use crate::pot::{Chart, HIGH, WIDE, Words};

pub fn chart(chart: &Chart) -> View {
    let strip = |(top, height): &(i32, i32)| {
        svg("rect")
            .class("strip")
            .attr("y", top.to_string())
            .attr("width", WIDE.to_string())
            .attr("height", height.to_string())
    };
    let dot = |(x, y, odd): &(i32, i32, bool)| {
        svg("circle")
            .class(if *odd { "dot odd" } else { "dot" })
            .attr("cx", x.to_string())
            .attr("cy", y.to_string())
            .attr("r", "5")
    };
    svg("svg")
        .class("chart")
        .attr("viewBox", format!("-8 0 {} {HIGH}", WIDE + 16))
        .attr("role", "img")
        .attr("aria-label", chart.said.clone())
        .child(chart.strips.iter().map(strip).views())
        .child(svg("path").class("band").attr("d", chart.band.clone()))
        .child(svg("path").class("curve").attr("d", chart.curve.clone()))
        .child(svg("path").class("at").attr("d", chart.at.clone()))
        .child(chart.dots.iter().map(dot).views())
        .child(captions(&chart.words))
        .view()
}

/// The words in a picture.
pub fn captions(words: &[Words]) -> View {
    let one = |words: &Words| {
        svg("text")
            .attr("x", words.x.to_string())
            .attr("y", words.y.to_string())
            .attr("text-anchor", words.anchor)
            .child(words.text.clone())
    };
    words.iter().map(one).views().view()
}
