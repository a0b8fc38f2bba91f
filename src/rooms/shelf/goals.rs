//! What counts most when pours are planned, to be put in another order.

use crate::book::{Act, Settings};
use crate::dom::*;
use crate::rooms::parts::live;
use crate::rooms::workshop::Workshop;
use crate::shelf::planning::Goal;

const GOALS: [(Goal, &str); 5] = [
    (Goal::Late, "Fewest candles late or not met"),
    (Goal::Short, "Least short of what you wish to have in store"),
    (Goal::Pours, "Fewest pours"),
    (Goal::Surplus, "Fewest candles in store beyond the wish"),
    (Goal::Changes, "Fewest changes of colour and fragrance"),
];

/// What counts first stands first; each can be moved up.
pub(super) fn list(shop: Workshop) -> View {
    live(move || {
        let settings = shop.settings();
        let order = settings.goals.clone().unwrap_or_else(|| Goal::ALL.to_vec());
        let row = |(at, goal): (usize, &Goal)| {
            let words = GOALS.iter().find(|(g, _)| g == goal).map_or("", |(_, words)| *words);
            let (moved, settings) = (order.clone(), settings.clone());
            let up = move |_| {
                let mut moved = moved.clone();
                moved.swap(at.saturating_sub(1), at);
                shop.act(Act::Settings(Settings { goals: Some(moved), ..settings.clone() }));
            };
            el("li").class("use").child(el("span").child(words)).child((at > 0).then(|| {
                el("button")
                    .attr("type", "button")
                    .class("quiet")
                    .attr("aria-label", ["Up: ", words].concat())
                    .on("click", up)
                    .child("Up")
            }))
        };
        group![
            el("p").child("Of two plans the one is better that is better in the first of these; where they are even, in the next."),
            el("ol").class("list goals").child(order.iter().enumerate().map(row).views())
        ]
    })
}
