//! One pour: the formula solved for its mass, and every wax and part given its measure.

use super::batch::{Size, batch, usual_residue};
use super::drops::{drops_for, keeps};
use super::settle::settle;
use super::ways::{drops_note, named, off, small_note, spoon_note, whole_note};
use super::{
    Ask, Dose, DropChoice, Note, PlanError, Pour, ScaleChoice, Shade, Wanted, choose_scale, choose_spoon,
    eighth,
};
use crate::formula::{Makes, Part, PartKind, PartShare, amounts, order, solve};
use crate::quantity::{Amount, Exact, Mass, Share, Voice, Why};

/// A wax or part on its way to a line.
pub(super) struct Draft<'a> {
    pub(super) share: PartShare,
    pub(super) part: Option<&'a Part>,
    pub(super) dose: Dose,
    pub(super) notes: Vec<Note>,
    /// What was done to measure it, for its why.
    pub(super) how: How,
}

#[derive(Clone)]
pub(super) enum How {
    Scale {
        error: Share,
        division: Amount<Mass>,
    },
    /// With the other colours, by this choice.
    Drops(Why),
    /// In drops, by itself.
    Counted,
    Spoon {
        off: Share,
    },
    Plain,
}

/// The waxes, then the parts in the order of the work. Told to nobody, without how each came about.
fn shares<'a>(
    ask: &'a Ask,
    size: &Size,
    told: Option<Voice>,
) -> Result<Vec<(PartShare, Option<&'a Part>)>, PlanError> {
    let makes = Makes { total: size.mass, usual_residue: usual_residue(ask) };
    let solved = match told {
        Some(voice) => solve(ask.formula, makes, ask.recipe, voice)?,
        None => amounts(ask.formula, makes, ask.recipe)?,
    };
    let mut shares: Vec<(PartShare, Option<&Part>)> = Vec::new();
    for wax in &solved.waxes {
        shares.push((wax.clone(), None));
    }
    for index in order(ask.formula) {
        if let (Some(share), Some(part)) = (solved.parts.get(index), ask.formula.parts.get(index)) {
            shares.push((share.clone(), Some(part)));
        }
    }
    Ok(shares)
}

/// Only dyes make a shade: a fragrance in drops would be many more drops than they are, and hide how far they are off.
fn is_dye(part: Option<&Part>) -> bool {
    part.is_some_and(|p| p.kind == PartKind::Dye)
}

/// The colours of the shade.
fn wanted(shares: &[(PartShare, Option<&Part>)]) -> Vec<Wanted> {
    let mut wanted: Vec<Wanted> = Vec::new();
    for (share, part) in shares {
        if let Some(drops) = share.drops.filter(|_| is_dye(*part)) {
            wanted.push(Wanted { name: share.name.clone(), drops });
        }
    }
    wanted
}

/// The choices of whole drops for the largest pour in words, in the order in which [`Ask::shade`] counts them; none where
/// the nearest is exact.
///
/// # Errors
/// As [`super::plan`].
pub fn shades(ask: &Ask) -> Result<Vec<String>, PlanError> {
    let batch = batch(ask)?;
    let Some(size) = batch.pours.first() else { return Ok(Vec::new()) };
    let wanted = wanted(&shares(ask, size, None)?);
    let shade = drops_for(&wanted, size.vessels, ask.tolerance, None);
    Ok(in_words(ask, &wanted, shade.as_ref()))
}

/// True where the whole drops nearest the shade keep it within the tolerance, in the largest pour.
///
/// # Errors
/// As [`super::plan`].
pub fn keeps_shade(ask: &Ask) -> Result<bool, PlanError> {
    let batch = batch(ask)?;
    let Some(size) = batch.pours.first() else { return Ok(true) };
    let wanted = wanted(&shares(ask, size, None)?);
    Ok(keeps(&wanted, ask.tolerance) != Some(false))
}

fn in_words(ask: &Ask, wanted: &[Wanted], shade: Option<&Shade>) -> Vec<String> {
    let choices = shade.map_or(&[][..], |s| &s.choices);
    if choices.first().is_none_or(|c| c.strength_off.is_zero() && c.ratio_off.is_zero()) {
        return Vec::new();
    }
    let words = |c: &DropChoice| [&named(ask.voice, wanted, c), ": ", &off(ask.voice, wanted, c)].concat();
    choices.iter().map(words).collect()
}

/// Drops, spoons and what no scale can weigh are settled first, then the weighed lines are rounded together so that
/// the total is kept. With it the choices of whole drops, as [`shades`] says them. Where nobody is told, neither the pour nor
/// its lines say how they came about.
pub(super) fn pour(ask: &Ask, size: &Size, told: Option<Voice>) -> Result<(Pour, Vec<String>), PlanError> {
    let shares = shares(ask, size, told)?;
    let wanted = wanted(&shares);
    let shade = drops_for(&wanted, size.vessels, ask.tolerance, told);
    let choices = in_words(ask, &wanted, shade.as_ref());
    let shade = shade.map(|s| s.with(ask.shade, &wanted, told));
    let chosen = shade.as_ref().and_then(|s| s.choices.first()).map(|c| c.drops.as_slice());
    let mut chosen = chosen.unwrap_or_default().iter();
    let mut shade_note = shade.as_ref().and_then(|s| drops_note(ask, size, &wanted, s));

    let mut drafts: Vec<Draft> = Vec::new();
    for (share, part) in shares {
        let mut draft = Draft {
            share,
            part,
            dose: Dose::Unweighable { mass: Mass::ZERO },
            notes: Vec::new(),
            how: How::Plain,
        };
        if let (Some(drops), false) = (draft.share.drops, is_dye(part)) {
            draft.count(ask, size, drops);
        } else if draft.share.drops.is_some() {
            let drops = chosen.next().copied().unwrap_or(0);
            draft.drop(ask, drops, shade.as_ref());
            // The note is about all colours together: it stands at the first.
            draft.notes.extend(shade_note.take());
        } else {
            draft.measure(ask, size);
        }
        drafts.push(draft);
    }
    Ok((settle(ask, size, drafts, told), choices))
}

impl Draft<'_> {
    fn drop(&mut self, ask: &Ask, drops: u32, shade: Option<&Shade>) {
        let one = ask.recipe.drop_mass(&self.share.name).unwrap_or(Mass::ZERO);
        self.dose = Dose::Drops { drops, mass: one.times(Exact::whole(drops.into())) };
        self.how = How::Drops(shade.map(|s| s.why.clone()).unwrap_or_default());
    }

    /// In whole drops by itself, at least one.
    fn count(&mut self, ask: &Ask, size: &Size, wanted: Exact) {
        let whole = u32::try_from(wanted.round().max(1)).unwrap_or(u32::MAX);
        self.drop(ask, whole, None);
        self.how = How::Counted;
        self.notes.extend(whole_note(ask, size, &self.share.name, wanted, whole));
    }

    fn measure(&mut self, ask: &Ask, size: &Size) {
        let share = &self.share;
        if let Some(pieces) = share.pieces {
            self.dose = Dose::Count { pieces: pieces.saturating_mul(size.vessels) };
            return;
        }
        let spoon = share.volume.map(|volume| (volume, choose_spoon(volume, ask.tolerance)));
        let scale = choose_scale(share.mass, ask.scales, ask.tolerance);
        if let Some((volume, spoon)) = &spoon {
            let weighed = share.unweighed.is_none() && matches!(scale, ScaleChoice::On { .. });
            if !spoon.within {
                self.notes.push(spoon_note(ask, size, share, *volume, spoon, weighed));
            }
            if spoon.within || !weighed {
                let measured = eighth().times(Exact::whole(spoon.eighths.into()));
                let mass = share.mass.times(measured.over(*volume).unwrap_or(Exact::ZERO));
                self.how = How::Spoon { off: spoon.off };
                self.dose = Dose::Spoon { eighths: spoon.eighths, mass };
                return;
            }
        }
        match scale {
            ScaleChoice::On { scale, loads, error } => {
                let Some(scale) = ask.scales.get(scale) else { return };
                self.how = How::Scale { error, division: scale.division };
                self.dose = Dose::Weigh {
                    mass: share.mass,
                    scale: scale.name.clone(),
                    division: scale.division.value,
                    capacity: scale.capacity.value,
                    loads,
                };
            }
            ScaleChoice::None { from } => {
                self.notes.push(small_note(ask, size, share, self.part, from));
                self.dose = Dose::Unweighable { mass: share.mass };
            }
        }
    }
}
