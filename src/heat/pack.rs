//! Set-ups and freezings as plain numbers: what goes to where the reckoning is done, beside the page, and comes back.

use super::compare::Measure;
use super::contraction::Contraction;
use super::cooling::Reading;
use super::freezing::{Freezing, freeze};
use super::overlay::lay_over;
use super::picture::Picture;
use super::setup::{Detail, Film, Setup, Shape};
use super::wax::{Material, Wax};

/// What is reckoned, each for one set-up.
#[derive(Clone, PartialEq, Debug)]
pub enum Job {
    /// The whole freezing with its pictures.
    Freeze,
    /// One row of a map: one result at one vessel temperature over these pour temperatures, °C.
    Row { measure: Measure, vessel: f64, pours: Vec<f64> },
    /// The film factor that lays the freezing over a log: seconds and °C, hung at (m from the axis, m above the base).
    LayOver { probe: (f64, f64), log: Vec<Reading> },
}

const SIZE: usize = 27;

/// A job as numbers, for [`reckon`].
pub fn job(setup: &Setup, job: &Job) -> Vec<f64> {
    let mut numbers = setup.numbers().to_vec();
    match job {
        Job::Freeze => numbers.push(0.0),
        Job::Row { measure, vessel, pours } => {
            let at = Measure::ALL.iter().position(|m| m == measure).unwrap_or_default();
            numbers.extend([1.0, at as f64, *vessel]);
            numbers.extend(pours);
        }
        Job::LayOver { probe, log } => {
            numbers.extend([2.0, probe.0, probe.1]);
            numbers.extend(log.iter().flat_map(|r| [r.seconds, r.celsius]));
        }
    }
    numbers
}

/// Does a job. A freezing is read with [`Freezing::of_numbers`]; a row is a number for each pour temperature, not a
/// number where there is none; a log gives the factor,
/// what is left, K, and what is reckoned with it for each reading, °C. Nothing where it cannot be done.
pub fn reckon(job: &[f64]) -> Vec<f32> {
    let Some((setup, asked)) = job.split_first_chunk::<SIZE>() else { return Vec::new() };
    let setup = Setup::of_numbers(setup);
    match asked {
        [0.0] => freeze(&setup, &Detail::FINE).map(|f| f.numbers()).unwrap_or_default(),
        [1.0, measure, vessel, pours @ ..] => {
            let Some(measure) = Measure::ALL.get(*measure as usize) else { return Vec::new() };
            let mut row = Vec::with_capacity(pours.len());
            super::map(&setup, pours, &[*vessel], *measure, |_, _, value| {
                row.push(value.map_or(f32::NAN, |v| v as f32));
                true
            });
            row
        }
        [2.0, r, z, log @ ..] => {
            let log: Vec<Reading> =
                log.as_chunks().0.iter().map(|&[seconds, celsius]| Reading { seconds, celsius }).collect();
            let Ok((fitted, reckoned)) = lay_over(&setup, &log, (*r, *z)) else { return Vec::new() };
            let mut told = vec![fitted.factor as f32, fitted.residual as f32];
            told.extend(reckoned.iter().map(|celsius| *celsius as f32));
            told
        }
        _ => Vec::new(),
    }
}

impl Setup {
    fn numbers(&self) -> [f64; SIZE] {
        let (s, w, m, f) = (&self.shape, &self.wax, &self.material, &self.film);
        [
            s.radius,
            s.fill,
            s.rim,
            s.wall,
            s.base,
            w.solidus,
            w.liquidus,
            w.latent,
            w.heat_solid,
            w.heat_liquid,
            w.conduct_solid,
            w.conduct_liquid,
            w.density_liquid,
            w.expansion_liquid,
            w.density_solid,
            w.expansion_solid,
            m.density,
            m.heat,
            m.conduct,
            m.emissivity,
            f.side,
            f.top,
            f.bottom,
            self.room,
            self.pour,
            self.vessel,
            self.stirring,
        ]
    }

    fn of_numbers(numbers: &[f64; SIZE]) -> Self {
        let &[
            radius,
            fill,
            rim,
            wall,
            base,
            solidus,
            liquidus,
            latent,
            heat_solid,
            heat_liquid,
            conduct_solid,
            conduct_liquid,
            density_liquid,
            expansion_liquid,
            density_solid,
            expansion_solid,
            density,
            heat,
            conduct,
            emissivity,
            side,
            top,
            bottom,
            room,
            pour,
            vessel,
            stirring,
        ] = numbers;
        Self {
            shape: Shape { radius, fill, rim, wall, base },
            wax: Wax {
                solidus,
                liquidus,
                latent,
                heat_solid,
                heat_liquid,
                conduct_solid,
                conduct_liquid,
                density_liquid,
                expansion_liquid,
                density_solid,
                expansion_solid,
            },
            material: Material { density, heat, conduct, emissivity },
            film: Film { side, top, bottom },
            room,
            pour,
            vessel,
            stirring,
        }
    }
}

/// How many numbers stand before the pictures.
const HEAD: usize = 17;

impl Freezing {
    /// Everything shown of it; what comes not is not a number.
    fn numbers(&self) -> Vec<f32> {
        let p = &self.picture;
        let (rings, layers) = (p.rings(), p.layers());
        let maybe = |x: Option<f64>| x.unwrap_or(f64::NAN);
        let c = &self.contraction;
        let head: [f64; HEAD] = [
            maybe(self.skin),
            maybe(self.moving),
            maybe(self.solid),
            maybe(self.trimming),
            maybe(self.room),
            self.wall_rate,
            maybe(self.enclosed),
            self.last.0,
            self.last.1,
            c.liquid,
            c.setting,
            c.solid,
            c.keep_back,
            rings as f64,
            layers as f64,
            p.wax_rings as f64,
            p.wax_layers.start as f64,
        ];
        let mut numbers: Vec<f32> = head.iter().map(|x| *x as f32).collect();
        numbers.push(p.wax_layers.end as f32);
        numbers.extend(p.radii.iter().chain(&p.heights).map(|x| *x as f32));
        for (at, seconds) in p.seconds.iter().enumerate() {
            numbers.push(*seconds);
            numbers.extend(p.celsius(at).unwrap_or_default());
            numbers.extend(p.solid(at).unwrap_or_default().iter().map(|share| f32::from(*share)));
        }
        numbers
    }

    /// What [`reckon`] gave for [`Job::Freeze`]; none where it gave nothing. What is not shown (the trace, the
    /// imbalance, the steps) is not in it.
    pub fn of_numbers(numbers: &[f32]) -> Option<Self> {
        let (head, rest) = numbers.split_first_chunk::<HEAD>()?;
        let head = head.map(f64::from);
        let [
            skin,
            moving,
            solid,
            trimming,
            room,
            wall_rate,
            enclosed,
            last_r,
            last_z,
            liquid,
            setting,
            shrunk,
            keep_back,
            rings,
            layers,
            wax_rings,
            first,
        ] = head;
        let maybe = |x: f64| (!x.is_nan()).then_some(x);
        let (end, rest) = rest.split_first()?;
        let (rings, layers) = (rings as usize, layers as usize);
        let (radii, rest) = rest.split_at_checked(rings.saturating_add(1))?;
        let (heights, pictures) = rest.split_at_checked(layers.saturating_add(1))?;
        let wide = |edges: &[f32]| edges.iter().map(|x| f64::from(*x)).collect();
        let wax_layers = first as usize..*end as usize;
        let mut picture = Picture::empty(wide(radii), wide(heights), wax_rings as usize, wax_layers);
        for one in pictures.chunks_exact(1 + 2 * rings * layers) {
            let (seconds, cells) = one.split_first()?;
            let (celsius, solid) = cells.split_at_checked(rings * layers)?;
            picture.add(*seconds, celsius, solid);
        }
        Some(Self {
            skin: maybe(skin),
            moving: maybe(moving),
            solid: maybe(solid),
            trimming: maybe(trimming),
            room: maybe(room),
            wall_rate,
            enclosed: maybe(enclosed),
            last: (last_r, last_z),
            contraction: Contraction { liquid, setting, solid: shrunk, keep_back },
            picture,
            trace: Vec::new(),
            imbalance: 0.0,
            steps: 0,
        })
    }
}
