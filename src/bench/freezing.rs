//! A vessel as it freezes: from what people know of it to what the heat module needs, and its results in words.

use super::property::{Properties, wax};
use super::reckoned::{last, shrinks};
use super::refusal::SceneError;
use super::stuff::Stuff;
use crate::heat::{Base, Difference, Freezing, Measure, Place, Setup, Shape, Wax, film, warmed};
use crate::quantity::{
    Amount, Exact, Length, LengthUnit, Mass, MassUnit, Quantity, Share, ShareUnit, Temperature,
    TemperatureUnit, Unit, Voice, decimal,
};
use crate::vessel::{FillRule, Inside, Vessel};

/// How warm the empty vessel is when the wax goes in.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Start {
    AsTheRoom,
    At(Temperature),
    /// Taken from an oven at this setting after so many minutes.
    Oven(Temperature, u32),
}

/// Everything that decides how one vessel freezes.
#[derive(Clone, PartialEq, Debug)]
pub struct Scene {
    pub vessel: Vessel,
    pub stuff: Stuff,
    pub vegetable: bool,
    /// Wholly solid below and wholly liquid above, where they are known better than the kind of wax says.
    pub melting: Option<(Temperature, Temperature)>,
    /// What else is known better.
    pub properties: Properties,
    pub pour: Temperature,
    pub start: Start,
    pub room: Temperature,
    pub base: Base,
    pub covered: bool,
    /// Close together with others, half a vessel apart.
    pub tray: bool,
    /// Moving air, as from a fan across the room.
    pub draught: bool,
    /// On every film coefficient: what a log of this workshop told; 1 where none did.
    pub factor: f64,
}

/// Speed of the air in a draught, m/s: a fan across the room. `common practice, no source`
const DRAUGHT: f64 = 0.5;
/// A glass or stoneware base is about twice as thick as its wall. `common practice, no source`
const BASE: f64 = 2.0;

impl Scene {
    /// The set-up that is followed. A tapered vessel is taken at its mean width, straight.
    ///
    /// # Errors
    /// A sentence where the vessel is not known well enough, or a temperature cannot be.
    pub fn setup(&self) -> Result<Setup, SceneError> {
        let material = self.stuff.material();
        let wax = self.wax();
        let (pour, room) = (celsius(self.pour), celsius(self.room));
        let shape = self.shape(&wax, pour)?;
        let vessel = match self.start {
            Start::AsTheRoom => room,
            Start::At(t) => celsius(t),
            Start::Oven(oven, minutes) => {
                warmed(&material, shape.wall, f64::from(minutes), celsius(oven), room)?
            }
        };
        let gap = self.tray.then_some(shape.radius);
        let air = if self.draught { DRAUGHT } else { 0.0 };
        let place = Place { room, base: self.base, covered: self.covered, gap, air };
        let mut film = film(&shape, &wax, &material, &place)?;
        film.side *= self.factor;
        film.top *= self.factor;
        film.bottom *= self.factor;
        let setup = Setup { shape, wax, material, film, room, pour, vessel, stirring: 1.0 };
        setup.check()?;
        Ok(setup)
    }

    fn wax(&self) -> Wax {
        let like = wax(self.vegetable, &self.properties);
        match self.melting {
            Some((solidus, liquidus)) => {
                Wax { solidus: celsius(solidus), liquidus: celsius(liquidus), ..like }
            }
            None => like,
        }
    }

    fn shape(&self, wax: &Wax, pour: f64) -> Result<Shape, SceneError> {
        let Inside { top, bottom, height } = self.vessel.inside.as_ref().ok_or(SceneError::NoInside)?;
        let wall = metres(self.vessel.wall.ok_or(SceneError::NoWall)?.value);
        let height = metres(height.value);
        let radius = 0.25 * (metres(top.value) + metres(bottom.value));
        let fill = match &self.vessel.fill {
            FillRule::Headspace(left) => height - metres(left.value),
            FillRule::Share(share) => height * share.value.in_base().to_f64(),
            FillRule::Weight(weight) => {
                let grams = weight.value.to(MassUnit::Gram).to_f64();
                1e-3 * grams / (wax.liquid_at(pour) * std::f64::consts::PI * radius * radius)
            }
        };
        if fill <= 0.0 || fill > height {
            return Err(SceneError::NoRoom);
        }
        let tin = matches!(self.stuff, Stuff::Steel | Stuff::Aluminium);
        let base = if tin { wall } else { BASE * wall };
        Ok(Shape { radius, fill, rim: height - fill, wall, base })
    }
}

fn celsius(t: Temperature) -> f64 {
    t.to(TemperatureUnit::Celsius).to_f64()
}

fn metres(l: Length) -> f64 {
    1e-3 * l.to(LengthUnit::Millimetre).to_f64()
}

/// A temperature from degrees Celsius, as this person reads it, to the degree: no freezing is foretold closer.
pub fn temperature(celsius: f64, voice: Voice) -> String {
    let t = Temperature::of(Exact::near(celsius).unwrap_or_default(), TemperatureUnit::Celsius);
    let whole = t.to(voice.temperature).round_to(Exact::ONE);
    [&decimal(whole, Exact::ONE, voice.locale), " ", voice.temperature.symbol()].concat()
}

/// A time as people say it: `45 min`, `2 h 10 min`.
pub fn duration(seconds: f64) -> String {
    let minutes = (seconds / 60.0).round().max(0.0) as u64;
    if minutes < 100 {
        return [&minutes.to_string(), " min"].concat();
    }
    [&(minutes / 60).to_string(), " h ", &(minutes % 60).to_string(), " min"].concat()
}

/// One result as people say it.
pub fn said(measure: Measure, value: f64, voice: Voice) -> String {
    match measure {
        Measure::WallRate => rate(value, voice),
        Measure::Enclosed => [&decimal_of(100.0 * value, 0, voice), " %"].concat(),
        Measure::KeepBack => voice.both(Mass::of(Exact::near(value).unwrap_or_default(), MassUnit::Gram)),
        _ => duration(value),
    }
}

/// What is told of a freezing: what it is, and how much.
pub fn results(f: &Freezing, voice: Voice) -> Vec<(&'static str, String)> {
    let mut told = Vec::new();
    for (measure, words) in [
        (Measure::Skin, "Skinned over after"),
        (Measure::Moving, "May be moved after"),
        (Measure::Solid, "Solid after"),
        (Measure::Trimming, "Wick may be trimmed after"),
        (Measure::Room, "At room temperature after"),
        (Measure::WallRate, "Wax by the wall cools, at its fastest"),
        (Measure::Enclosed, "Still liquid when the skin closes over it"),
        (Measure::KeepBack, "Keep back for topping up"),
    ] {
        let value = measure.of(f).map(|value| said(measure, value, voice));
        told.push((words, value.unwrap_or_else(|| "not within 12 h".to_owned())));
    }
    told.push(("Sets last", last(f, voice)));
    told.push(("Shrinks from the pour to the room", shrinks(f, voice)));
    told
}

/// What a log told: the sentence, and the share of the usual that this workshop's air takes, with what was in use before
/// reckoned in. `residual` is what is left between the two, K.
pub fn fitted(
    factor: f32,
    residual: f32,
    before: Option<Amount<Share>>,
    voice: Voice,
) -> (String, Amount<Share>) {
    let used = before.map_or(100.0, |b| b.value.to(ShareUnit::Percent).to_f64());
    let percent = Exact::near((f64::from(factor) * used).round()).unwrap_or_default();
    let film = Amount::new(percent, ShareUnit::Percent);
    let degrees = match voice.temperature {
        TemperatureUnit::Celsius => f64::from(residual),
        TemperatureUnit::Fahrenheit => 1.8 * f64::from(residual),
    };
    let words = [
        "Your air takes ",
        &voice.typed(film),
        " of the heat that is reckoned for a usual one. What is left between the two is ",
        &decimal_of(degrees, 1, voice),
        " ",
        voice.temperature.symbol(),
        " on average.",
    ];
    (words.concat(), film)
}

/// The sentences of how the second set-up differs from the first.
pub fn differences(all: &[Difference], voice: Voice) -> Vec<String> {
    let one = |d: &Difference| match (d.measure, d.first, d.second) {
        // A weight is said in this person's units.
        (Measure::KeepBack, Some(a), Some(b)) => {
            let (a, b) = (said(d.measure, a, voice), said(d.measure, b, voice));
            ["Wax to keep back: ", &b, " against ", &a, "."].concat()
        }
        _ => d.to_string(),
    };
    all.iter().map(one).collect()
}

fn rate(kelvin_per_second: f64, voice: Voice) -> String {
    let a_minute = 60.0 * kelvin_per_second;
    let degrees = match voice.temperature {
        TemperatureUnit::Celsius => a_minute,
        TemperatureUnit::Fahrenheit => 1.8 * a_minute,
    };
    [&decimal_of(degrees, 1, voice), " ", voice.temperature.symbol(), " a minute"].concat()
}

/// To so many places.
pub(super) fn decimal_of(x: f64, places: u32, voice: Voice) -> String {
    let step = Exact::ratio(1, 10_i128.pow(places));
    decimal(Exact::near(x).unwrap_or_default().round_to(step), step, voice.locale)
}
