//! The whole freezing of one vessel, and what is told of it.

use super::contraction::{Contraction, contraction};
use super::error::HeatError;
use super::flow::Flow;
use super::grid::Grid;
use super::picture::Picture;
use super::setup::{Detail, Setup};

/// The wax has set when this share of it has.
const SET: f64 = 0.995;
/// It may be moved when this share has: what is still liquid lies closed in. `common practice, no source`
const STILL: f64 = 0.98;
/// The skin is closed where its softest place is more solid than liquid.
const CLOSED: f64 = 0.5;
/// K above the room of the warmest wax: firm enough to trim, and cold. `common practice, no source`
const TRIM: f64 = 3.0;
const COLD: f64 = 1.0;
/// Depth at which the wall layer is looked at, m.
const DEPTH: f64 = 0.002;
/// First step, s; with the growth it sets how the first seconds are resolved.
const FIRST: f64 = 0.5;
/// Longest step, s.
const LONGEST: f64 = 240.0;
/// Nothing is followed below this many K above the room.
const DONE: f64 = 0.25;

/// What comes of it. Times are seconds from the pour, none where they do not come in the time followed.
#[derive(Clone, PartialEq, Debug)]
pub struct Freezing {
    /// The whole surface is skinned over.
    pub skin: Option<f64>,
    /// All but a fiftieth is solid: it may be moved.
    pub moving: Option<f64>,
    /// All but a two-hundredth is solid.
    pub solid: Option<f64>,
    /// Firm enough to trim the wick.
    pub trimming: Option<f64>,
    /// At room temperature.
    pub room: Option<f64>,
    /// Greatest cooling rate 2 mm from the wall at half height, K/s. A figure to compare set-ups by.
    pub wall_rate: f64,
    /// Share of the wax still liquid when the skin closed over it. A figure to compare set-ups by.
    pub enclosed: Option<f64>,
    /// Where the last liquid was: m from the axis, and m below the surface.
    pub last: (f64, f64),
    pub contraction: Contraction,
    pub picture: Picture,
    /// (seconds, °C) at the probe, step by step; empty without one.
    pub trace: Vec<(f64, f64)>,
    /// The largest share of the heat poured in that was missing or too much after any step.
    pub imbalance: f64,
    pub steps: usize,
}

/// When something that rises passes a mark, from its values at the ends of the steps.
#[derive(Default)]
struct Passing {
    when: Option<f64>,
    was: f64,
}

impl Passing {
    fn look(&mut self, is: f64, mark: f64, before: f64, now: f64) {
        if self.when.is_none() && is >= mark {
            let part =
                if is > self.was { ((mark - self.was) / (is - self.was)).clamp(0.0, 1.0) } else { 1.0 };
            self.when = Some(before + part * (now - before));
        }
        self.was = is;
    }
}

/// What is looked for while the clock runs.
struct Watch {
    skin: Passing,
    moving: Passing,
    solid: Passing,
    trimming: Passing,
    room: Passing,
    enclosed: Option<f64>,
    last: (f64, f64),
    wall_rate: f64,
    imbalance: f64,
    poured: f64,
    wall: f64,
    liquid: f64,
}

impl Watch {
    fn new(hot: f64, poured: f64) -> Self {
        let cooling = || Passing { when: None, was: -hot };
        Self {
            skin: Passing::default(),
            moving: Passing::default(),
            solid: Passing::default(),
            trimming: cooling(),
            room: cooling(),
            enclosed: None,
            last: (0.0, 0.0),
            wall_rate: 0.0,
            imbalance: 0.0,
            poured,
            wall: hot,
            liquid: 1.0,
        }
    }

    /// After a step; how many K above the room the warmest wax is.
    fn look(&mut self, flow: &Flow, depth: (f64, f64), before: f64, now: f64) -> f64 {
        let seen = flow.survey();
        self.imbalance = self.imbalance.max(((seen.held + flow.lost - self.poured) / self.poured).abs());
        let wall = flow.between(depth.0, depth.1);
        self.wall_rate = self.wall_rate.max((self.wall - wall) / (now - before));
        self.wall = wall;
        if self.solid.when.is_none() {
            self.last = flow.grid.place(seen.softest);
        }
        self.skin.look(seen.skin, CLOSED, before, now);
        self.moving.look(1.0 - seen.liquid, STILL, before, now);
        self.solid.look(1.0 - seen.liquid, SET, before, now);
        self.trimming.look(-seen.hottest, -TRIM, before, now);
        self.room.look(-seen.hottest, -COLD, before, now);
        if let (Some(when), None) = (self.skin.when, self.enclosed) {
            let part = (when - before) / (now - before);
            self.enclosed = Some(self.liquid + part * (seen.liquid - self.liquid));
        }
        self.liquid = seen.liquid;
        seen.hottest
    }
}

/// Follows one vessel from the pour until it is cold or the time is up.
///
/// Conduction in wax, wall and base, with the heat of melting; no flow in the liquid beyond
/// [`Setup::stirring`], no sinking surface, no gap opening between wax and glass. Every film coefficient stays what
/// it is. A wall, a base or a rim below 0.005 mm is left out. The method is implicit, and a step that leads astray is taken
/// again, shorter: no place gets hotter than the hottest or colder than the coldest there was, but for 0.25 K.
///
/// # Errors
/// As [`Setup::check`], and for a [`Detail`] that cannot be.
pub fn freeze(setup: &Setup, detail: &Detail) -> Result<Freezing, HeatError> {
    detail.check()?;
    let contraction = contraction(setup)?;
    let mut flow = Flow::new(setup, Grid::new(setup, detail));
    let poured = flow.survey().held;
    let mut watch = Watch::new(setup.pour - setup.room, poured);
    let depth = (setup.shape.radius - DEPTH, 0.5 * setup.shape.fill);
    let frames = detail.frames as f64;
    let mut picture = Picture::new(&flow, if detail.frames > 0 { 2 * detail.frames + 4 } else { 0 });
    let mut trace = Vec::with_capacity(if detail.probe.is_some() { 4096 } else { 0 });
    if detail.frames > 0 {
        picture.take(&flow, 0.0, setup.room);
    }
    if let Some((r, z)) = detail.probe {
        trace.push((0.0, setup.room + flow.between(r, z)));
    }
    let (mut now, mut dt, mut steps) = (0.0, FIRST, 0);
    let (mut power, mut fading, mut taken) = (0.0, 1.0, (0.0, 0.0));
    while now < detail.seconds {
        let (before, lost, was) = (now, flow.lost, power);
        dt = flow.step(dt, fading);
        steps += 1;
        power = (flow.lost - lost) / dt;
        now += dt * ending(was, power);
        fading = if power < was { (power / was).max(0.0) } else { 1.0 };
        let hottest = watch.look(&flow, depth, before, now);
        if let Some((r, z)) = detail.probe {
            trace.push((now, setup.room + flow.between(r, z)));
        }
        // With nothing to draw or to lay a log over, there is nothing left to tell once it is cold.
        let told = watch.room.when.is_some() && detail.frames == 0 && detail.probe.is_none();
        let finished = told || hottest.abs() < DONE || now >= detail.seconds;
        let gone = flow.lost / poured;
        let due = gone >= taken.0 + 1.0 / frames || now >= taken.1 + detail.seconds / frames;
        if detail.frames > 0 && (due || finished) {
            picture.take(&flow, now, setup.room);
            taken = (gone, now);
        }
        if finished {
            break;
        }
        let share = (power * dt / poured).abs();
        let fit = if share > 0.0 { dt * detail.share / share } else { f64::INFINITY };
        dt = fit.min(detail.growth * now).min(1.5 * dt).clamp(FIRST, LONGEST);
    }
    Ok(Freezing {
        skin: watch.skin.when,
        moving: watch.moving.when,
        solid: watch.solid.when,
        trimming: watch.trimming.when,
        room: watch.room.when,
        wall_rate: watch.wall_rate,
        enclosed: watch.enclosed,
        last: watch.last,
        contraction,
        picture,
        trace,
        imbalance: watch.imbalance,
        steps,
    })
}

/// By how much the clock runs slower than the step.
///
/// An implicit step takes the heat out at the rate of its end. Where that falls from step to step, the same heat took
/// less time than that: the trapezoidal rule for the clock makes the long steps of a dying curve good to second
/// order. In the first seconds the rate jumps, and the clock is left alone.
fn ending(was: f64, is: f64) -> f64 {
    if is < 1.25 * was && is > 0.6 * was { 2.0 * is / (was + is) } else { 1.0 }
}
