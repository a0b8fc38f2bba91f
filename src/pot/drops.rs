//! Whole drops that keep a shade.

use crate::quantity::{Exact, Share, Voice, Why, decimal};
use std::cmp::Ordering;

/// What is wanted of one colour: drops for this batch, usually not whole.
#[derive(Clone, PartialEq, Debug)]
pub struct Wanted {
    pub name: String,
    pub drops: Exact,
}

/// Whole drops for each colour and what they do to the shade.
#[derive(Clone, PartialEq, Debug)]
pub struct DropChoice {
    pub drops: Vec<u32>,
    /// All colours together against what is wanted: 0.05 is 5 % too strong.
    pub strength_off: Exact,
    /// Of the colour whose share of all drops is furthest off: by how much of its wanted share.
    pub ratio_off: Exact,
    /// Which colour that is: an index into what was wanted.
    pub colour: usize,
}

impl DropChoice {
    /// Neither depth nor hue is off by more than `tolerance`.
    pub fn within(&self, tolerance: Share) -> bool {
        self.strength_off.abs() <= tolerance.in_base() && self.ratio_off.abs() <= tolerance.in_base()
    }
}

#[derive(Clone, PartialEq, Debug)]
pub struct Shade {
    /// Nearest first; one to three.
    pub choices: Vec<DropChoice>,
    /// Smallest number of vessels, every multiple of which keeps the shade exactly. None above 1,000.
    pub exact_every: Option<u32>,
    /// One part of dye made up to this many parts makes every colour a whole number of drops: the smallest such, up
    /// to twentyfold; failing that, the smallest within tolerance. None where the drops are whole as they are.
    pub dilute: Option<u32>,
    pub why: Why,
}

impl Shade {
    /// The same with another of its choices taken: that one stands first then.
    pub(super) fn with(mut self, taken: usize, wanted: &[Wanted], told: Option<Voice>) -> Self {
        if (1..self.choices.len()).contains(&taken) {
            let choice = self.choices.remove(taken);
            let why = told.map(|voice| why(wanted, &choice, voice).rounded("to whole drops, as chosen"));
            self.why = why.unwrap_or_default();
            self.choices.insert(0, choice);
        }
        self
    }
}

/// How much more a changed hue counts than a changed depth: people see it sooner (common practice, no source).
const HUE: f64 = 4.0;
/// No more combinations than this are weighed against each other.
const MOST: usize = 100_000;

/// Whole drops for a batch of `vessels`. None where nothing is wanted.
///
/// For drops kᵢ and wanted drops qᵢ, with Lᵢ = ln(kᵢ/qᵢ), weights wᵢ = qᵢ/Σq and the mean μ = ΣwᵢLᵢ, the least of
/// μ² + 4·Σwᵢ(Lᵢ−μ)² is taken: the first term is depth, the second hue; of equals the one
/// with the nearer hue.
pub fn choose_drops(wanted: &[Wanted], vessels: u32, tolerance: Share, voice: Voice) -> Option<Shade> {
    drops_for(wanted, vessels, tolerance, Some(voice))
}

/// The same; told to nobody, it does not say how it came about.
pub(super) fn drops_for(
    wanted: &[Wanted],
    vessels: u32,
    tolerance: Share,
    told: Option<Voice>,
) -> Option<Shade> {
    let drops: Vec<Exact> = wanted.iter().map(|w| w.drops.max(Exact::ZERO)).collect();
    let total = drops.iter().fold(Exact::ZERO, |sum, q| sum + *q);
    if total.is_zero() {
        return None;
    }
    let choices = nearest(&drops);
    let each: Vec<Exact> = drops.iter().map(|q| *q / Exact::whole(vessels.max(1).into())).collect();
    let exact_every = common_denominator(&each, 1000);
    let first = choices.first()?;
    let why = told.map(|voice| why(wanted, first, voice)).unwrap_or_default();
    Some(Shade { dilute: dilution(&drops, tolerance), choices, exact_every, why })
}

/// True where the whole drops nearest the shade, as [`choose_drops`] finds them, keep it within the tolerance. None
/// where nothing is wanted.
pub(super) fn keeps(wanted: &[Wanted], tolerance: Share) -> Option<bool> {
    let drops: Vec<Exact> = wanted.iter().map(|w| w.drops.max(Exact::ZERO)).collect();
    if drops.iter().all(|q| q.is_zero()) {
        return None;
    }
    Some(nearest(&drops).first()?.within(tolerance))
}

/// The three choices of least cost.
fn nearest(wanted: &[Exact]) -> Vec<DropChoice> {
    let mut best: Vec<(Cost, Vec<u32>)> = Vec::new();
    for drops in combinations(wanted) {
        let cost = cost(wanted, &drops);
        let at = best.partition_point(|(c, _)| c.cmp(&cost) != Ordering::Greater);
        best.insert(at, (cost, drops));
        best.truncate(3);
    }
    best.into_iter().map(|(_, drops)| judge(wanted, drops)).collect()
}

/// For each colour the whole drops around what is wanted, never none of a wanted one. The window narrows where many
/// colours would make too many combinations.
fn combinations(wanted: &[Exact]) -> Vec<Vec<u32>> {
    let window = |wide: i128, q: &Exact| -> Vec<u32> {
        if q.is_zero() {
            return vec![0];
        }
        let (low, high) = if wide < 0 { (q.round(), q.round()) } else { (q.floor() - wide, q.ceil() + wide) };
        let whole = |n: i128| u32::try_from(n.max(1)).unwrap_or(u32::MAX);
        (whole(low)..=whole(high)).collect()
    };
    for wide in [2, 1, 0, -1] {
        let windows: Vec<Vec<u32>> = wanted.iter().map(|q| window(wide, q)).collect();
        if windows.iter().fold(1_usize, |n, window| n.saturating_mul(window.len())) <= MOST {
            let mut all = vec![Vec::new()];
            for counts in windows {
                let heads = std::mem::take(&mut all);
                for head in heads {
                    for count in &counts {
                        all.push([head.as_slice(), &[*count]].concat());
                    }
                }
            }
            return all;
        }
    }
    Vec::new()
}

/// What a choice costs. Equal to 10⁻¹² is equal: then the nearer hue is taken.
struct Cost {
    all: f64,
    hue: f64,
}

impl Cost {
    fn cmp(&self, other: &Self) -> Ordering {
        if (self.all - other.all).abs() < 1e-12 {
            self.hue.total_cmp(&other.hue)
        } else {
            self.all.total_cmp(&other.all)
        }
    }
}

fn cost(wanted: &[Exact], drops: &[u32]) -> Cost {
    let total: f64 = wanted.iter().map(|q| q.to_f64()).sum();
    let mut logs: Vec<(f64, f64)> = Vec::new();
    for (wanted, drops) in wanted.iter().zip(drops) {
        if !wanted.is_zero() {
            let wanted = wanted.to_f64();
            logs.push((wanted / total, (f64::from(*drops) / wanted).ln()));
        }
    }
    let mean: f64 = logs.iter().map(|(w, l)| w * l).sum();
    let spread: f64 = logs.iter().map(|(w, l)| w * (l - mean).powi(2)).sum();
    Cost { all: mean * mean + HUE * spread, hue: spread }
}

fn judge(wanted: &[Exact], drops: Vec<u32>) -> DropChoice {
    let all = Exact::whole(drops.iter().map(|k| i128::from(*k)).sum());
    let total = wanted.iter().fold(Exact::ZERO, |sum, q| sum + *q);
    let (mut colour, mut ratio_off) = (0, Exact::ZERO);
    for (index, (q, k)) in wanted.iter().zip(&drops).enumerate() {
        let share = Exact::whole((*k).into()) / all;
        let off = share.checked_div(*q / total).map_or(Exact::ZERO, |r| r - Exact::ONE);
        if off.abs() > ratio_off.abs() {
            (colour, ratio_off) = (index, off);
        }
    }
    DropChoice { strength_off: all / total - Exact::ONE, ratio_off, colour, drops }
}

/// The smallest whole number up to `most` that makes all of `numbers` whole.
fn common_denominator(numbers: &[Exact], most: u32) -> Option<u32> {
    // The least common multiple of what each of them takes.
    let mut all = 1_u32;
    for number in numbers {
        let takes = u32::try_from(number.parts().1).ok().filter(|n| *n <= most)?;
        let (mut shared, mut rest) = (all, takes);
        while rest != 0 {
            (shared, rest) = (rest, shared % rest);
        }
        all = (all / shared).checked_mul(takes).filter(|n| *n <= most)?;
    }
    Some(all)
}

fn dilution(wanted: &[Exact], tolerance: Share) -> Option<u32> {
    if wanted.iter().all(|q| q.is_whole()) {
        return None;
    }
    let near = |fold: &u32| {
        let (mut more, mut drops) = (Vec::new(), Vec::new());
        for wanted in wanted {
            let wanted = *wanted * Exact::whole((*fold).into());
            let whole = u32::try_from(wanted.round()).unwrap_or(0);
            if whole == 0 && !wanted.is_zero() {
                return false;
            }
            more.push(wanted);
            drops.push(whole);
        }
        judge(&more, drops).within(tolerance)
    };
    common_denominator(wanted, 20).or_else(|| (2..=20).find(near))
}

fn why(wanted: &[Wanted], choice: &DropChoice, voice: Voice) -> Why {
    let result: Vec<String> =
        wanted.iter().zip(&choice.drops).map(|(w, k)| format!("{} {k}", w.name)).collect();
    let mut why = Why::new(
        "Whole drops nearest the shade",
        "the least of (mean of ln(drops ÷ wanted))² + 4 × (spread of ln(drops ÷ wanted)), by the wanted drops",
        result.join(", "),
    )
    .from("A changed hue is seen sooner than a changed depth, so it counts four times (common practice)");
    for w in wanted {
        why = why.with(format!("{} wanted", w.name), format!("{} drops", voice.number(w.drops)));
    }
    why.with("strength off", percent(choice.strength_off, voice))
        .with("ratio off", percent(choice.ratio_off, voice))
}

/// A signed share for sentences: `+6.7 %`.
pub(super) fn percent(share: Exact, voice: Voice) -> String {
    let shown = decimal(share * Exact::whole(100), Exact::ratio(1, 10), voice.locale);
    let plus = if share > Exact::ZERO { "+" } else { "" };
    format!("{plus}{shown} %")
}
