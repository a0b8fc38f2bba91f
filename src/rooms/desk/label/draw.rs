//! Labels as drawings: one unit is a micrometre.

use crate::desk::label::{Cell, Item, Laid, Picture, Sheet, Stroke, micrometres};
use crate::dom::*;

fn number(n: i64) -> String {
    n.to_string()
}

/// The paths of a picture, drawn in 100 by 100.
fn paths(picture: Picture) -> View {
    let one = |(stroke, d): &(Stroke, &'static str)| {
        let path = svg("path").attr("d", *d);
        match stroke {
            Stroke::Black => path.attr("fill", "#000"),
            Stroke::White => path.attr("fill", "#fff"),
            Stroke::Frame => path.attr("fill", "#fff").attr("stroke", "#e30613").attr("stroke-width", "5"),
            Stroke::Line => path
                .attr("fill", "none")
                .attr("stroke", "#000")
                .attr("stroke-width", "4")
                .attr("stroke-linecap", "round")
                .attr("stroke-linejoin", "round"),
        }
    };
    picture.paths().iter().map(one).views()
}

/// The GHS pictogram of this number, by itself.
pub(in super::super) fn pictogram(number: u8) -> View {
    let picture = Picture::hazard(number);
    picture
        .map(|picture| {
            svg("svg")
                .class("pictogram")
                .attr("viewBox", "0 0 100 100")
                .attr("role", "img")
                .attr("aria-label", picture.name())
                .child(paths(picture))
        })
        .view()
}

fn item(item: &Item) -> View {
    match item {
        Item::Words { x, y, size, width, bold, text } => svg("text")
            .attr("x", number(*x))
            .attr("y", number(*y))
            .attr("font-size", number(*size))
            .attr("font-weight", if *bold { "700" } else { "400" })
            // Whatever face the device has, a line is no longer than it was reckoned.
            .attr("textLength", number(*width))
            .attr("lengthAdjust", "spacingAndGlyphs")
            .child(text.clone())
            .view(),
        Item::Picture { x, y, side, picture } => svg("svg")
            .attr("x", number(*x))
            .attr("y", number(*y))
            .attr("width", number(*side))
            .attr("height", number(*side))
            .attr("viewBox", "0 0 100 100")
            .child(paths(*picture))
            .view(),
        Item::Code { x, y, module, code } => {
            let first = module * 4;
            let place = [
                "translate(",
                &number(x + first),
                " ",
                &number(y + first),
                ") scale(",
                &number(*module),
                ")",
            ];
            svg("path")
                .attr("transform", place.concat())
                .attr("fill", "#000")
                .attr("shape-rendering", "crispEdges")
                .attr("d", code.path())
                .view()
        }
    }
}

fn inside(laid: &Laid) -> View {
    laid.items.iter().map(item).views()
}

/// One label, as large as the screen allows, with its edge.
pub(super) fn large(laid: &Laid) -> View {
    let (width, height) = (number(laid.width), number(laid.height));
    let edge = if laid.round {
        let radius = number(laid.width / 2);
        svg("circle").attr("cx", radius.clone()).attr("cy", radius.clone()).attr("r", radius)
    } else {
        svg("rect").attr("width", width.clone()).attr("height", height.clone()).attr("rx", "1500")
    };
    svg("svg")
        .class("label-large")
        .attr("viewBox", ["0 0 ", &width, " ", &height].concat())
        .attr("role", "img")
        .attr("aria-label", "The label")
        .child(edge.class("edge-of-label"))
        .child(inside(laid))
        .view()
}

/// The whole sheet, true to size when printed. The last millimetre of the page is left out: a page that is filled to
/// its end makes some browsers print an empty one after it.
pub(super) fn page(sheet: &Sheet, cells: &[Cell], laid: &Laid) -> View {
    let [width, height] = [sheet.page_width, sheet.page_height].map(|l| micrometres(l.value) - 1000);
    let mm = |um: i64| {
        [&(um / 1000).to_string(), ".", &(um % 1000 + 1000).to_string().split_off(1), "mm"].concat()
    };
    let one = |cell: &Cell| {
        svg("svg")
            .attr("x", number(cell.x))
            .attr("y", number(cell.y))
            .attr("width", number(laid.width))
            .attr("height", number(laid.height))
            .attr("viewBox", ["0 0 ", &number(laid.width), " ", &number(laid.height)].concat())
            .child(inside(laid))
    };
    svg("svg")
        .class("label-page")
        .attr("width", mm(width))
        .attr("height", mm(height))
        .attr("viewBox", ["0 0 ", &number(width), " ", &number(height)].concat())
        .attr("role", "img")
        .attr("aria-label", "The sheet as it prints")
        .child(cells.iter().map(one).views())
        .view()
}
