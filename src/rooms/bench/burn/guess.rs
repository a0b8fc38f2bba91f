//! Which wick to begin with, before there is a candle: from the nearest ones that were tried.

use super::tells::advice;
use crate::bench::burn::Trial;
use crate::dom::*;
use crate::rooms::parts::{Typed, press};
use crate::rooms::workshop::Workshop;

/// `asked`: what is typed of the candle so far; none where its width is missing. A tap takes the wick over.
pub(super) fn of(shop: Workshop, asked: Option<Trial>, wick: Typed) -> View {
    let found = asked.and_then(|trial| {
        shop.state(|s| {
            let (series, advice) = s.next_wick(&trial, shop.voice())?;
            Some((advice.say(series, shop.voice()), series.sizes.get(advice.size).cloned()?))
        })
    });
    let Some((said, size)) = found else { return View::Nothing };
    let take = {
        let size = size.clone();
        move || wick.text.set(size.clone())
    };
    group![
        el("h2").child("Which wick to begin with"),
        advice(said),
        el("p").child(press("", ["Take ", &size].concat(), take))
    ]
}
