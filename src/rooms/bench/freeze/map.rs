//! One result over pour and vessel temperatures, filled in row by row.

use super::Side;
use crate::bench::{Sweep, said, temperature};
use crate::dom::*;
use crate::heat::{Job, Measure, job};
use crate::keep;
use crate::rooms::parts::{Pick, pick, press};
use crate::rooms::workshop::Workshop;

const SHOWN: [(&str, Measure, &str); 4] = [
    ("wall", Measure::WallRate, "How fast the wax by the wall cools (wet spots)"),
    ("enclosed", Measure::Enclosed, "Still liquid under the skin (sinkholes)"),
    ("solid", Measure::Solid, "Time until it is solid"),
    ("keep", Measure::KeepBack, "Wax to keep back"),
];

type Asked = Option<Result<(Sweep, Measure), String>>;

/// Palest where it is least.
const SCALE: [[u8; 3]; 2] = [[247, 231, 211], [122, 40, 6]];

pub(super) fn map(shop: Workshop, of: Side) -> View {
    let which = Value::new("wall".to_owned());
    let on = Value::new(false);
    let measure = move || {
        which.with(|w| SHOWN.iter().find(|(key, ..)| key == w).map_or(Measure::WallRate, |(_, m, _)| *m))
    };
    let asked: Derived<Asked> =
        Derived::new(move || on.get().then(|| of.setup.get().map(|s| (Sweep::over(&s), measure()))));
    let rows = Value::new(Vec::<Vec<f32>>::new());
    watch(move || {
        rows.set(Vec::new());
        if let Some(Ok((over, measure))) = asked.get() {
            next(asked, rows, over, measure);
        }
    });
    let offers =
        || -> Vec<Pick> { SHOWN.iter().map(|(k, _, w)| ((*k).to_owned(), (*w).to_owned())).collect() };
    let body = move || match asked.get() {
        None => press("", "Draw the map", move || on.set(true)),
        Some(Err(why)) => el("p").class("muted").child(why).view(),
        Some(Ok((over, measure))) => chart(shop, of, rows, over, measure),
    };
    group![
        el("p").class("why-line").child(
            "For the first set-up where it stands: pour temperatures across, vessel temperatures up. \
Tap a place to take it over.",
        ),
        pick("What the map shows", which, offers),
        el("div").class("map-place").child(body)
    ]
}

/// Asks for the next row, as long as the same map is wanted.
fn next(asked: Derived<Asked>, rows: Value<Vec<Vec<f32>>>, over: Sweep, measure: Measure) {
    let Some(vessel) = rows.with_untracked(|r| over.vessels.get(r.len()).copied()) else { return };
    let wanted = Job::Row { measure, vessel, pours: over.pours.clone() };
    keep::reckon(job(&over.setup, &wanted), move |row| {
        let now = Some(Some(Ok((over, measure))));
        if asked.try_untracked() == now
            && let Some(Some(Ok((over, measure)))) = now
        {
            rows.update(|r| r.push(row));
            next(asked, rows, over, measure);
        }
    });
}

fn chart(shop: Workshop, of: Side, rows: Value<Vec<Vec<f32>>>, over: Sweep, measure: Measure) -> View {
    let voice = shop.voice();
    let id = shop.fresh_dom_id();
    let canvas = id.clone();
    let (columns, lines) = (over.pours.len(), over.vessels.len());
    watch(move || {
        let mut pixels = vec![0; 4 * columns * lines];
        rows.with(|r| Sweep::paint(r, SCALE, columns, lines, &mut pixels));
        keep::put_pixels(&canvas, &mut pixels, columns as u32, lines as u32);
    });
    let take = {
        let over = over.clone();
        move |(pour, vessel): (f64, f64)| {
            if let Some((pour, vessel)) = over.at(pour, vessel) {
                of.form.set(temperature(pour, voice), temperature(vessel, voice));
            }
        }
    };
    let ends = |of: &[f64]| {
        let at = |t: Option<&f64>| temperature(t.copied().unwrap_or_default(), voice);
        (at(of.first()), at(of.last()))
    };
    let (pours, vessels) = (ends(&over.pours), ends(&over.vessels));
    let least = move || {
        let found = rows.with(|r| over.least(r));
        let part = found.map(|(pour, vessel, least, most)| {
            let words = [
                "Least: ",
                &said(measure, least, voice),
                ", poured at ",
                &temperature(pour, voice),
                " into a vessel at ",
                &temperature(vessel, voice),
                ". Most: ",
                &said(measure, most, voice),
                ".",
            ];
            let over = move || of.form.set(temperature(pour, voice), temperature(vessel, voice));
            group![
                el("p").attr("role", "status").child(words.concat()),
                press("", "Take the least over", over)
            ]
        });
        part.view()
    };
    group![
        el("p").class("map-top").child(["Vessel ", &vessels.1].concat()),
        el("canvas")
            .class("map")
            .attr("id", id)
            .attr("width", columns.to_string())
            .attr("height", lines.to_string())
            .attr("role", "img")
            .attr("aria-label", "The map; what is least on it is said below")
            .on("click", move |e| take(share_of(&e))),
        el("p")
            .class("map-ends")
            .child(el("span").child(["Vessel ", &vessels.0].concat()))
            .child(el("span").child(["Pour ", &pours.0, " to ", &pours.1].concat())),
        least
    ]
}
