//! The vessels cut through, scrubbed through time and played.

use crate::bench::{duration, moment};
use crate::dom::*;
use crate::heat::{Colours, Freezing, paint};
use crate::keep;
use crate::rooms::parts::later;
use crate::rooms::workshop::Workshop;
use std::rc::Rc;

type Shown = Value<Option<Rc<Freezing>>>;

/// Pixels of one picture.
const SIZE: (u32, u32) = (160, 160);
/// Between two pictures while it plays, ms.
const FRAME: u32 = 60;

const SCALE: [[u8; 3]; 5] = [[58, 84, 117], [87, 140, 146], [214, 197, 140], [222, 142, 66], [176, 58, 30]];
const FRONT: [u8; 3] = [20, 20, 20];

pub(super) fn pictures(shop: Workshop, one: Shown, two: Shown) -> View {
    // Both run on the clock of the one that takes longer; each picture is the last not after that time.
    let clock = Derived::new(move || {
        let seconds =
            |f: Shown| f.with(|f| f.as_ref().map(|f| f.picture.seconds.clone())).unwrap_or_default();
        let (a, b) = (seconds(one), seconds(two));
        if a.last() >= b.last() { a } else { b }
    });
    let at = Value::new(0_usize);
    let playing = Value::new(false);
    let last = move || clock.with(|c| c.len().saturating_sub(1));
    let seconds =
        move || clock.with(|c| c.get(at.get().min(c.len().saturating_sub(1))).map_or(0.0, |s| f64::from(*s)));
    watch(move || {
        if playing.get() {
            step(at, playing, clock);
        }
    });
    let play = move || {
        if !playing.get_untracked() && at.get_untracked() >= last() {
            at.set(0);
        }
        playing.update(|p| *p = !*p);
    };
    let scrub = move |e| {
        playing.set(false);
        at.set(text_of(&e).parse().unwrap_or_default());
    };
    el("section")
        .class("cuts")
        .attr("aria-label", "The vessels through time")
        .child(
            el("div")
                .class("cut-pair")
                .child(cut(shop, one, "First", seconds))
                .child(cut(shop, two, "Second", seconds)),
        )
        .child(
            el("div")
                .class("scrub")
                .child(
                    el("button")
                        .attr("type", "button")
                        .on("click", move |_| play())
                        .child(move || if playing.get() { "Stop" } else { "Play" }),
                )
                .child(
                    el("input")
                        .attr("type", "range")
                        .attr("aria-label", "Time since the pour")
                        .attr("aria-valuetext", move || duration(seconds()))
                        .attr("min", "0")
                        .attr("max", move || last().to_string())
                        .prop("value", move || at.get().min(last()).to_string())
                        .on("input", scrub),
                )
                .child(
                    el("p").class("clock").child(move || [&duration(seconds()), " after the pour"].concat()),
                ),
        )
        .view()
}

fn step(at: Value<usize>, playing: Value<bool>, clock: Derived<Vec<f32>>) {
    later(FRAME, move || {
        if playing.try_untracked() != Some(true) {
            return;
        }
        let last = clock.with_untracked(|c| c.len().saturating_sub(1));
        let next = at.get_untracked() + 1;
        at.set(next.min(last));
        if next >= last {
            playing.set(false);
        } else {
            step(at, playing, clock);
        }
    });
}

fn cut(shop: Workshop, of: Shown, title: &'static str, seconds: impl Fn() -> f64 + Copy + 'static) -> View {
    let id = shop.fresh_dom_id();
    let canvas = id.clone();
    let (width, height) = SIZE;
    let mut pixels = vec![0; (4 * width * height) as usize];
    let mut seen: Option<(Rc<Freezing>, (f32, f32))> = None;
    watch(move || {
        let now = seconds();
        of.with(|f| {
            let Some(f) = f else { return };
            // Looked through once for each freezing, not for each picture of it.
            if !seen.as_ref().is_some_and(|(of, _)| Rc::ptr_eq(of, f)) {
                seen = Some((f.clone(), f.picture.span()));
            }
            let (from, to) = seen.as_ref().map_or((0.0, 1.0), |(_, span)| *span);
            let colours = Colours { scale: SCALE, front: FRONT, from, to };
            paint(&f.picture, f.picture.at(now), &colours, width as usize, height as usize, &mut pixels);
            keep::put_pixels(&canvas, &mut pixels, width, height);
        });
    });
    let said =
        move || of.with(|f| f.as_ref().map(|f| moment(f, seconds(), shop.voice()))).unwrap_or_default();
    el("figure")
        .class("cut")
        .child(
            el("canvas")
                .attr("id", id)
                .attr("width", width.to_string())
                .attr("height", height.to_string())
                .attr("role", "img")
                .attr("aria-label", move || [title, " vessel, cut through. ", &said()].concat()),
        )
        .child(el("figcaption").child(el("strong").child(title)).child(" ").child(said))
        .view()
}
