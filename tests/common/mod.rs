//! A small invented workshop for the tests of the pot.

#![allow(clippy::unwrap_used, dead_code)]

pub mod run;

use potside::bench::{MeltingPot, Scale};
use potside::formula::{
    Basis, Formula, Part, PartKind, PourRanges, Recipe, TemperatureRange, UsualBatch, WaxShare,
};
use potside::pot::{Ask, Line, Plan, PlanError, Residue, Target, plan};
use potside::quantity::{Amount, Density, Exact, Mass, Quantity, Share, Unit, Voice, Why};

/// An amount as typed.
pub(crate) fn read<Q: Quantity>(text: &str) -> Amount<Q> {
    potside::quantity::read(text, Q::Unit::all()[0], Default::default()).unwrap()
}

pub(crate) fn g(num: i128, den: i128) -> Mass {
    Mass::base(Exact::ratio(num, den))
}

/// The line of this name in the first pour.
#[track_caller]
pub(crate) fn line<'a>(plan: &'a Plan, name: &str) -> &'a Line {
    plan.pours[0].lines.iter().find(|l| l.name == name).unwrap()
}

/// What of an ingredient a plan takes.
pub(crate) fn takes(plan: &Plan, name: &str) -> Mass {
    plan.pours.iter().flat_map(|p| &p.lines).filter(|l| l.name == name).map(|l| l.dose.mass()).sum()
}

/// That it cannot be planned, and why.
#[track_caller]
pub(crate) fn refused(w: &Workshop, target: Target, expected: &str) {
    let error: PlanError = w.plan(target).unwrap_err();
    assert_eq!(error.say(Voice::default()), expected);
}

pub(crate) struct Weighed;

impl Recipe for Weighed {
    fn drop_mass(&self, ingredient: &str) -> Option<Mass> {
        ["Red", "Blue"].contains(&ingredient).then(|| g(21, 1000))
    }
    fn bulk_density(&self, ingredient: &str) -> Option<Density> {
        (ingredient == "Hardener").then(|| Density::base(Exact::ratio(54, 100)))
    }
}

pub(crate) struct Workshop {
    pub(crate) formula: Formula,
    pub(crate) fill: Mass,
    pub(crate) scales: Vec<Scale>,
    pub(crate) pot: Option<MeltingPot>,
    pub(crate) residue: Residue,
    pub(crate) tolerance: Share,
}

fn range(low: &str, high: &str) -> TemperatureRange {
    TemperatureRange { low: read(low), high: read(high) }
}

fn part(name: &str, kind: PartKind, basis: Basis, add: TemperatureRange, stir_minutes: u32) -> Part {
    Part {
        name: name.into(),
        kind,
        basis,
        add,
        stir_minutes,
        note: String::new(),
        highest: None,
        flash: None,
    }
}

impl Workshop {
    /// 180 g vessels, the usual batch four of them; a bench scale and a fine one; a pot of 4 kg.
    pub(crate) fn new() -> Self {
        let wax = |name: &str, share: &str| WaxShare { name: name.into(), share: read(share), flash: None };
        let fragrance = Basis::Weight(read("2.15 oz"));
        let formula = Formula {
            name: "Fig on the sill".into(),
            wax: vec![wax("Coco", "30 %"), wax("Soy", "70 %")],
            parts: vec![
                Part {
                    flash: Some(read("200 °F")),
                    ..part("Fig leaf", PartKind::Fragrance, fragrance, range("175 °F", "180 °F"), 2)
                },
                part(
                    "Sun guard",
                    PartKind::Additive,
                    Basis::OfWax(read("0.5 %")),
                    range("186 °F", "190 °F"),
                    1,
                ),
                part(
                    "Hardener",
                    PartKind::Additive,
                    Basis::Spoon(read("3/4 tbsp")),
                    range("185 °F", "190 °F"),
                    1,
                ),
                part("Red", PartKind::Dye, Basis::Drops(3), range("180 °F", "185 °F"), 0),
                part("Blue", PartKind::Dye, Basis::Drops(6), range("180 °F", "185 °F"), 1),
                part("Wick tab", PartKind::Other, Basis::PerVessel(1), range("60 °F", "90 °F"), 0),
            ],
            usual: Some(UsualBatch { vessels: 4, fill: read("180 g") }),
            melt_to: read("200 °F"),
            pour: PourRanges { warmed: range("163 °F", "167 °F"), unwarmed: range("168 °F", "175 °F") },
            vessels: Vec::new(),
            cure_days: 14,
            note: String::new(),
        };
        let scale = |name: &str, capacity: &str, division: &str, least: &str| Scale {
            name: name.into(),
            capacity: read(capacity),
            division: read(division),
            least: read(least),
            trial: None,
        };
        Self {
            formula,
            fill: g(180, 1),
            scales: vec![scale("Bench", "5 kg", "1 g", "20 g"), scale("Fine", "500 g", "0.01 g", "0.2 g")],
            pot: Some(MeltingPot { name: "Jug".into(), capacity: read("4 kg"), body: None }),
            residue: Residue::None,
            tolerance: read::<Share>("2 %").value,
        }
    }

    pub(crate) fn ask(&self, target: Target) -> Ask<'_> {
        Ask {
            formula: &self.formula,
            vessel: "Tumbler",
            wick: "Cotton 12",
            fill: (self.fill, Why::new("Fill", "the weight typed in", "180 g")),
            target,
            residue: &self.residue,
            warmed: false,
            scales: &self.scales,
            pot: self.pot.as_ref(),
            shade: 0,
            recipe: &Weighed,
            tolerance: self.tolerance,
            voice: Voice::default(),
        }
    }

    pub(crate) fn plan(&self, target: Target) -> Result<Plan, PlanError> {
        plan(&self.ask(target))
    }
}
