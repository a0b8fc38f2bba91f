//! How many vessels, how much in all, and how it is split over pots.

use super::{Ask, MOST_VESSELS, Note, PlanError, Residue, Target};
use crate::formula::total_for;
use crate::quantity::{Exact, Mass, Voice, Why};

/// One pot's share of the batch.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(super) struct Size {
    pub(super) vessels: u32,
    pub(super) mass: Mass,
}

pub(super) struct Batch {
    pub(super) vessels: u32,
    pub(super) pours: Vec<Size>,
    pub(super) total: Mass,
    pub(super) residue: Mass,
    pub(super) notes: Vec<Note>,
    pub(super) why: Why,
}

/// What is needed for vessels, from the fill and what stays in the pot.
#[derive(Clone, Copy)]
pub(super) struct Needs<'a> {
    pub(super) fill: Mass,
    residue: &'a Residue,
}

impl<'a> Needs<'a> {
    pub(super) fn of(ask: &'a Ask) -> Self {
        Self { fill: ask.fill.0, residue: ask.residue }
    }

    /// What stays behind when `filled` goes into vessels from `pots` pots.
    pub(super) fn stays(self, filled: Mass, pots: u32) -> Mass {
        match self.residue {
            Residue::None => Mass::ZERO,
            Residue::Each(mass) => mass.value.times(whole(pots)),
            Residue::OfFilled(share) => filled.times(share.value.in_base()),
        }
    }

    /// In one pot for this many vessels.
    pub(super) fn pot(self, vessels: u32) -> Mass {
        let filled = self.fill.times(whole(vessels));
        filled + self.stays(filled, 1)
    }

    /// The most vessels that `total` in `pots` pots fills.
    pub(super) fn vessels(self, total: Mass, pots: u32) -> u32 {
        let filled = match self.residue {
            Residue::None => total,
            Residue::Each(mass) => total.less(mass.value.times(whole(pots))),
            Residue::OfFilled(share) => total.times(Exact::ONE / (Exact::ONE + share.value.in_base())),
        };
        let vessels = filled.over(self.fill).map_or(0, Exact::floor);
        u32::try_from(vessels.min(i128::from(MOST_VESSELS) + 1)).unwrap_or(0)
    }
}

fn whole(n: u32) -> Exact {
    Exact::whole(n.into())
}

pub(super) fn batch(ask: &Ask) -> Result<Batch, PlanError> {
    if ask.fill.0 <= Mass::ZERO {
        return Err(PlanError::NoFill);
    }
    match &ask.target {
        Target::Vessels(vessels) => whole_vessels(ask, *vessels, None),
        Target::Total(asked) => of_total(ask, asked.value),
        Target::Left { ingredient, mass } => {
            let usual = usual_residue(ask);
            let (most, why) = total_for(ask.formula, ingredient, mass.value, usual, ask.recipe, ask.voice)?;
            let vessels = most_within(ask, most);
            if vessels == 0 {
                return Err(too_little(ask));
            }
            whole_vessels(ask, vessels, Some(why))
        }
    }
}

impl Batch {
    /// The same with one vessel less.
    pub(super) fn with_one_less(self, ask: &Ask) -> Result<Self, PlanError> {
        if self.vessels <= 1 {
            return Err(too_little(ask));
        }
        let left = self.why.values.into_iter().find(|v| v.name == VESSELS).and_then(|v| v.why);
        whole_vessels(ask, self.vessels - 1, left.map(|why| *why))
    }
}

/// The name of the value that carries why there are so many vessels.
const VESSELS: &str = "vessels";

fn too_little(ask: &Ask) -> PlanError {
    match &ask.target {
        Target::Left { ingredient, mass } => {
            PlanError::TooLittleLeft { ingredient: ingredient.clone(), left: ask.voice.typed(*mass) }
        }
        Target::Vessels(_) | Target::Total(_) => PlanError::NoVessels,
    }
}

/// What would stay in the pot were the usual batch made, in one pot.
pub(super) fn usual_residue(ask: &Ask) -> Mass {
    let usual = ask.formula.usual.as_ref();
    let filled = usual.map_or(Mass::ZERO, |u| u.fill.value.times(whole(u.vessels)));
    Needs::of(ask).stays(filled, 1)
}

/// The most vessels whose total, in as many pots as they take, stays within `most`; zero where not one does.
fn most_within(ask: &Ask, most: Mass) -> u32 {
    let needs = Needs::of(ask);
    let fits = |vessels: u32| {
        let filled = needs.fill.times(whole(vessels));
        pots_for(ask, vessels).is_ok_and(|pots| filled + needs.stays(filled, pots) <= most)
    };
    // One pot is the least that stays behind, so this is at or above the answer.
    let start = needs.vessels(most, 1);
    (0..=start).rev().find(|v| *v == 0 || fits(*v)).unwrap_or(0)
}

/// The fewest pots that hold so many vessels in pours as equal as whole vessels allow.
fn pots_for(ask: &Ask, vessels: u32) -> Result<u32, PlanError> {
    let Some(pot) = ask.pot else { return Ok(1) };
    match Needs::of(ask).vessels(pot.capacity.value, 1) {
        0 => Err(PlanError::PotTooSmall {
            pot: pot.name.clone(),
            capacity: ask.voice.typed(pot.capacity),
            needed: ask.voice.both(Needs::of(ask).pot(1)),
        }),
        most => Ok(vessels.div_ceil(most)),
    }
}

/// Vessels of each pour, the larger pours first.
fn shares(vessels: u32, pots: u32) -> impl Iterator<Item = u32> {
    let (each, more) = (vessels / pots.max(1), vessels % pots.max(1));
    (0..pots).map(move |pot| each + u32::from(pot < more))
}

fn whole_vessels(ask: &Ask, vessels: u32, left: Option<Why>) -> Result<Batch, PlanError> {
    if vessels == 0 {
        return Err(PlanError::NoVessels);
    }
    if vessels > MOST_VESSELS {
        return Err(PlanError::TooMany);
    }
    let needs = Needs::of(ask);
    let pots = pots_for(ask, vessels)?;
    let pours: Vec<Size> =
        shares(vessels, pots).map(|vessels| Size { vessels, mass: needs.pot(vessels) }).collect();
    let filled = needs.fill.times(whole(vessels));
    let residue = needs.stays(filled, pots);
    let total = filled + residue;
    let count = vessels.to_string();
    let why = Why::new("The whole batch", "vessels × fill + what stays in the pot", ask.voice.mass(total));
    let why = match left {
        Some(left) => why.with_why(VESSELS, count, left),
        None => why.with(VESSELS, count),
    };
    let why = why.with_why("fill", ask.voice.mass(needs.fill), ask.fill.1.clone()).with_why(
        "what stays in the pot",
        ask.voice.mass(residue),
        residue_why(ask, filled, pots),
    );
    Ok(Batch { vessels, pours, total, residue, notes: Vec::new(), why })
}

/// Exactly this total; what is too little for one more vessel is shared by the pots.
fn of_total(ask: &Ask, asked: Mass) -> Result<Batch, PlanError> {
    let needs = Needs::of(ask);
    let voice = ask.voice;
    let too_small =
        || PlanError::TotalTooSmall { asked: voice.both(asked), needed: voice.both(needs.pot(1)) };
    // No fewer pots than the total itself needs.
    let fewest = ask.pot.and_then(|pot| asked.over(pot.capacity.value)).map_or(1, Exact::ceil);
    let mut pots = u32::try_from(fewest.clamp(1, i128::from(MOST_VESSELS) + 1)).unwrap_or(1);
    loop {
        let vessels = needs.vessels(asked, pots);
        if vessels > MOST_VESSELS {
            return Err(PlanError::TooMany);
        }
        if vessels < pots {
            // Either not one vessel, or every pot already makes no more than one: it cannot all be used.
            pots_for(ask, 1)?;
            return match most_within(ask, asked) {
                0 => Err(too_small()),
                most => {
                    let mut batch = whole_vessels(ask, most, None)?;
                    batch.notes.push(Note::remark(format!(
                        "Of the {} asked for, whole vessels in such a pot use {}.",
                        voice.both(asked),
                        voice.both(batch.total)
                    )));
                    Ok(batch)
                }
            };
        }
        let filled = needs.fill.times(whole(vessels));
        let residue = needs.stays(filled, pots);
        let spare = asked.less(filled + residue);
        let size = |n: u32| Size {
            vessels: n,
            mass: needs.pot(n) + spare.times(Exact::ratio(n.into(), vessels.into())),
        };
        let pours: Vec<Size> = shares(vessels, pots).map(size).collect();
        let fits = ask.pot.is_none_or(|pot| pours.iter().all(|p| p.mass <= pot.capacity.value));
        if !fits {
            pots += 1;
            continue;
        }
        let why =
            Why::new("Vessels", "(total − what stays in the pot) ÷ fill, whole ones", vessels.to_string())
                .with("total", voice.mass(asked))
                .with_why("what stays in the pot", voice.mass(residue), residue_why(ask, filled, pots))
                .with_why("fill", voice.mass(needs.fill), ask.fill.1.clone())
                .rounded("down, to whole vessels");
        let notes = if spare.is_zero() {
            Vec::new()
        } else {
            vec![Note::remark(format!(
                "That fills {vessels} vessels and leaves {}, too little for one more.",
                voice.both(spare)
            ))]
        };
        return Ok(Batch { vessels, pours, total: asked, residue, notes, why });
    }
}

fn residue_why(ask: &Ask, filled: Mass, pots: u32) -> Why {
    let voice: Voice = ask.voice;
    let stays = voice.mass(Needs::of(ask).stays(filled, pots));
    let what = "What stays in the pot";
    match ask.residue {
        Residue::None => Why::new(what, "no allowance is set", stays),
        Residue::Each(mass) => Why::new(what, "allowance for each pot × pots", stays)
            .with("allowance for each pot", voice.typed(*mass))
            .with("pots", pots.to_string()),
        Residue::OfFilled(share) => Why::new(what, "allowance × what is filled into vessels", stays)
            .with("allowance", voice.typed(*share))
            .with("filled into vessels", voice.mass(filled)),
    }
}
