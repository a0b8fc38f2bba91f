//! What weighing water tells of a vessel: how good it is, and whether the inside by rule says the same.

use super::scatter::stray;
use crate::quantity::{Amount, Exact, Length, LengthUnit, Share, Voice, Volume, VolumeUnit, Why};
use crate::vessel::{Vessel, VesselError, Water, by_inside, by_water};

/// Good enough: the fill follows it, and of 200 g it is a gram.
const GOOD: f64 = 0.005;

/// The standard error of the mean as a share of it, and how many more weighings make it good; see [`stray`].
fn spread(water: &Water) -> Option<(f64, u32)> {
    stray(&water.masses().collect::<Vec<_>>(), GOOD)
}

/// What it holds, in sentences: `By water it holds 300.5 mL to the brim. Give or take 0.4 mL (0.13 %), …`
///
/// # Errors
/// Where the water makes no volume.
pub fn held(water: &Water, voice: Voice) -> Result<(String, Why), VesselError> {
    let (volume, mut why) = by_water(water, voice)?;
    let good = match spread(water) {
        None => "Fill it and weigh it again: that tells how far your fillings stray.".to_owned(),
        Some((error, more)) => {
            let error = Exact::near(error).unwrap_or(Exact::ZERO);
            let said =
                [&shown(volume.times(error), voice), " (", &voice.share(Share::base(error)), ")"].concat();
            let good = match more {
                0 => "That is good to 0.5 %.".to_owned(),
                1 => "Filled and weighed once more, it is good to 0.5 %.".to_owned(),
                more => {
                    ["Filled and weighed ", &more.to_string(), " times more, it is good to 0.5 %."].concat()
                }
            };
            let weighings = (water.again.len() + 1).to_string();
            let how = Why::new("Standard error", "scatter of the weighings ÷ √weighings", said.clone())
                .with("weighings", weighings)
                .from("GUM 4.2.3");
            why = why.with_why("give or take", said.clone(), how);
            ["Give or take ", &said, ". ", &good].concat()
        }
    };
    Ok((["By water it holds ", &shown(volume, voice), " to the brim. ", &good].concat(), why))
}

/// A vessel by water beside the same by its inside.
#[derive(Clone, PartialEq, Debug)]
pub struct Beside {
    pub water: Volume,
    pub inside: Volume,
    /// How far they may be apart by what each is good to: twice the standard uncertainty of the difference (GUM 6.2 and
    /// 6.3.3, k = 2).
    pub allowed: Volume,
    /// How far the inside is off across, were it the diameters alone.
    pub across: Length,
    pub why: Why,
}

/// The volume by water held against that by the inside; none where either is not there or makes no volume.
///
/// A length is two readings of the rule, each good to its step ÷ √12 (GUM F.2.2.1), so to step ÷ √6. The volume π h
/// (D² + D d + d²) ÷ 12 follows them by its derivatives; where the sides are straight, D is measured once for both ends.
pub fn beside(vessel: &Vessel, voice: Voice) -> Option<Beside> {
    let (water, inside) = (vessel.water.as_ref()?, vessel.inside.as_ref()?);
    let (by_rule, rule_why) = by_inside(inside, voice).ok()?;
    let (weighed, water_why) = by_water(water, voice).ok()?;
    let [top, bottom, height] =
        [inside.top, inside.bottom, inside.height].map(|l| l.value.in_base().to_f64());
    let third = std::f64::consts::PI * height / 12.0 / 1000.0;
    // Millilitres for each millimetre at the top, at the bottom, and up.
    let (of_top, of_bottom) = (third * (2.0 * top + bottom), third * (top + 2.0 * bottom));
    let of_height = by_rule.in_base().to_f64() / height;
    let good = |length: Amount<Length>| step(length).in_base().to_f64() / 6.0_f64.sqrt();
    let across = if inside.top.value == inside.bottom.value {
        ((of_top + of_bottom) * good(inside.top)).powi(2)
    } else {
        (of_top * good(inside.top)).powi(2) + (of_bottom * good(inside.bottom)).powi(2)
    };
    let strays = spread(water).map_or(0.0, |(error, _)| error * weighed.in_base().to_f64());
    let spread = across + (of_height * good(inside.height)).powi(2) + strays.powi(2);
    let allowed = Volume::base(Exact::near(2.0 * spread.sqrt())?);
    let apart = (by_rule - weighed).in_base().to_f64();
    let across = Length::base(Exact::near((apart / (of_top + of_bottom)).abs())?);
    let why = Why::new("By water and by inside", "by inside − by water", shown(by_rule - weighed, voice))
        .with_why("by inside", shown(by_rule, voice), rule_why)
        .with_why("by water", shown(weighed, voice), water_why)
        .with("step of the rule", said_step(inside.top, voice))
        .with("they may be apart by", shown(allowed, voice))
        .from("GUM F.2.2.1, 5.1.2 and 6.2.1 with k = 2");
    Some(Beside { water: weighed, inside: by_rule, allowed, across, why })
}

impl Beside {
    /// By inside less by water.
    pub fn apart(&self) -> Volume {
        self.inside - self.water
    }

    /// True where they are no further apart than what each is good to.
    pub fn agrees(&self) -> bool {
        self.apart() <= self.allowed && Volume::ZERO - self.apart() <= self.allowed
    }

    /// Both and what to do, in sentences. `By its inside it holds 452.4 mL, 1.2 mL (0.27 %) more than by water. …`
    pub fn say(&self, voice: Voice) -> String {
        let apart = self.apart();
        let (far, way) = if apart < Volume::ZERO { (Volume::ZERO - apart, "less") } else { (apart, "more") };
        let share = far.over(self.water).map(|s| voice.share(Share::base(s))).unwrap_or_default();
        let told = [
            "By its inside it holds ",
            &shown(self.inside, voice),
            ", ",
            &shown(far, voice),
            " (",
            &share,
            ") ",
            way,
            " than by water. ",
        ];
        let allowed = shown(self.allowed, voice);
        let so = if self.agrees() {
            ["They agree: the rule allows ", &allowed, "."].concat()
        } else {
            let water = if apart < Volume::ZERO {
                "the water was weighed with the vessel or filled above the rim"
            } else {
                "the water did not reach the brim"
            };
            [
                "That is more than the ",
                &allowed,
                " that the measures allow. Measure again: either the inside diameter is off, by about ",
                &voice.amount(self.across, voice.length),
                ", or ",
                water,
                ". A rounded bottom or a neck also makes them differ; the water is right then.",
            ]
            .concat()
        };
        [told.concat(), so].concat()
    }
}

/// What a rule shows: millimetres, or sixteenths of an inch.
fn step(length: Amount<Length>) -> Length {
    match length.unit {
        LengthUnit::Inch | LengthUnit::Foot => Amount::new(Exact::ratio(1, 16), LengthUnit::Inch).value,
        _ => Length::base(Exact::ONE),
    }
}

fn said_step(length: Amount<Length>, voice: Voice) -> String {
    let unit =
        if step(length) == Length::base(Exact::ONE) { LengthUnit::Millimetre } else { LengthUnit::Inch };
    voice.typed(Amount { value: step(length), unit })
}

fn shown(volume: Volume, voice: Voice) -> String {
    voice.amount(volume, VolumeUnit::Millilitre)
}
