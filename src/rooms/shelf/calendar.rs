//! Planned pours on the calendar.

use crate::dom::*;
use crate::pot::WIDE;
use crate::rooms::parts::captions;
use crate::shelf::agenda::{Row, Rows};

/// The picture, and the same in words.
pub(super) fn picture(rows: &Rows) -> View {
    let bar = |row: &Row| {
        let (top, wide, high) = row.bar;
        let marks = row.marks.iter().map(move |(x, late)| {
            let d =
                ["M", &x.to_string(), " ", &(top - 6).to_string(), "v", &(high + 12).to_string()].concat();
            svg("path").class(if *late { "wanted late" } else { "wanted" }).attr("d", d)
        });
        group![
            svg("rect")
                .class("bar")
                .attr("y", top.to_string())
                .attr("width", wide.to_string())
                .attr("height", high.to_string()),
            marks.views()
        ]
    };
    group![
        svg("svg")
            .class("chart calendar")
            .attr("viewBox", format!("-8 0 {} {}", WIDE + 16, rows.high))
            .attr("role", "img")
            .attr("aria-label", rows.said.clone())
            .child(rows.rows.iter().map(bar).views())
            .child(captions(&rows.words)),
        el("p").class("detail").child(
            "A bar is a pour until it can ship; a line across it a day on which some of it is wanted."
        ),
        el("ul").class("list detail").child(rows.rows.iter().map(|r| el("li").child(r.said.clone())).views())
    ]
}
