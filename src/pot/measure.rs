//! One pour: the formula solved for its mass, and every wax and part given its measure.

use super::batch::{Needs, Size, batch, usual_residue};
use super::drops::keeps;
use super::ways::{drops_note, named, off, over_note, rounding_note, small_note, spoon_note};
use super::{
    Ask, Dose, DropChoice, Line, Note, PlanError, Pour, ScaleChoice, Shade, Wanted, apportion, choose_drops,
    choose_scale, choose_spoon, eighth,
};
use crate::formula::{Makes, Part, PartShare, order, solve};
use crate::quantity::{Amount, Exact, Mass, Share, Voice, VolumeUnit, Why, show_both};

/// A wax or part on its way to a line.
struct Draft<'a> {
    share: PartShare,
    part: Option<&'a Part>,
    dose: Dose,
    notes: Vec<Note>,
    /// What was done to measure it, for its why.
    how: How,
}

#[derive(Clone)]
enum How {
    Scale { error: Share, division: Amount<Mass> },
    Drops(Why),
    Spoon { off: Share },
    Plain,
}

/// The waxes, then the parts in the order of the work.
fn shares<'a>(ask: &'a Ask, size: &Size) -> Result<Vec<(PartShare, Option<&'a Part>)>, PlanError> {
    let makes = Makes { total: size.mass, usual_residue: usual_residue(ask) };
    let solved = solve(ask.formula, makes, ask.recipe, ask.voice)?;
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

fn wanted<'a>(shares: impl Iterator<Item = &'a PartShare>) -> Vec<Wanted> {
    let mut wanted: Vec<Wanted> = Vec::new();
    for share in shares {
        if let Some(drops) = share.drops {
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
    let wanted = wanted(shares(ask, size)?.iter().map(|(share, _)| share));
    let shade = choose_drops(&wanted, size.vessels, ask.tolerance, ask.voice);
    Ok(in_words(ask, &wanted, shade.as_ref()))
}

/// True where the whole drops nearest the shade keep it within the tolerance, in the largest pour.
///
/// # Errors
/// As [`super::plan`].
pub fn keeps_shade(ask: &Ask) -> Result<bool, PlanError> {
    let batch = batch(ask)?;
    let Some(size) = batch.pours.first() else { return Ok(true) };
    let wanted = wanted(shares(ask, size)?.iter().map(|(share, _)| share));
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
/// the total is kept. With it the choices of whole drops, as [`shades`] says them.
pub(super) fn pour(ask: &Ask, size: &Size) -> Result<(Pour, Vec<String>), PlanError> {
    let voice = ask.voice;
    let shares = shares(ask, size)?;
    let wanted = wanted(shares.iter().map(|(share, _)| share));
    let shade = choose_drops(&wanted, size.vessels, ask.tolerance, voice);
    let choices = in_words(ask, &wanted, shade.as_ref());
    let shade = shade.map(|s| s.with(ask.shade, &wanted, voice));
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
        if draft.share.drops.is_some() {
            let drops = chosen.next().copied().unwrap_or(0);
            draft.drop(ask, drops, shade.as_ref());
            // The note is about all colours together: it stands at the first.
            draft.notes.extend(shade_note.take());
        } else {
            draft.measure(ask, size);
        }
        drafts.push(draft);
    }
    Ok((settle(ask, size, drafts), choices))
}

impl Draft<'_> {
    fn drop(&mut self, ask: &Ask, drops: u32, shade: Option<&Shade>) {
        let one = ask.recipe.drop_mass(&self.share.name).unwrap_or(Mass::ZERO);
        self.dose = Dose::Drops { drops, mass: one.times(Exact::whole(drops.into())) };
        self.how = How::Drops(shade.map(|s| s.why.clone()).unwrap_or_default());
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

fn settle(ask: &Ask, size: &Size, mut drafts: Vec<Draft>) -> Pour {
    let voice = ask.voice;
    let weighed = |d: &Draft| matches!(d.dose, Dose::Weigh { .. });
    let (mut fixed, mut parts) = (Mass::ZERO, Vec::new());
    for draft in &drafts {
        if weighed(draft) {
            parts.push((draft.share.mass, draft.dose.division()));
        } else {
            fixed = fixed + draft.dose.mass();
        }
    }
    let rounded = apportion(&parts, size.mass - fixed);
    for (draft, mass) in drafts.iter_mut().filter(|d| weighed(d)).zip(&rounded.parts) {
        draft.dose = draft.dose.of(*mass);
        draft.notes.extend(rounding_note(ask, draft.share.mass, *mass));
    }
    let notes = over_note(voice, rounded.over).into_iter().collect();
    let wanted = rounded.whole + fixed;
    let lines: Vec<Line> = drafts.into_iter().map(|d| d.line(voice)).collect();
    let total: Mass = lines.iter().map(|l| l.dose.mass()).sum();
    let needs = Needs::of(ask);
    let stays = needs.stays(needs.fill.times(Exact::whole(size.vessels.into())), 1);
    let why = Why::new("This pot", "vessels × fill + what stays in the pot", voice.mass(size.mass))
        .with("vessels", size.vessels.to_string())
        .with_why("fill", voice.mass(needs.fill), ask.fill.1.clone())
        .with("what stays in the pot", voice.mass(stays))
        .rounded(format!("each part to its own measure, together {}", voice.mass(total)));
    Pour { vessels: size.vessels, total, wanted, lines, notes, why }
}

impl Draft<'_> {
    fn line(self, voice: Voice) -> Line {
        let why = self.why(voice);
        Line {
            name: self.share.name,
            kind: self.part.map(|p| p.kind),
            exact: self.share.mass,
            dose: self.dose,
            of_wax: self.share.of_wax,
            of_whole: self.share.of_whole,
            add: self.part.map(|p| p.add.clone()),
            stir_minutes: self.part.map_or(0, |p| p.stir_minutes),
            highest: self.part.and_then(|p| p.highest),
            flash: self.part.and_then(|p| p.flash),
            note: self.part.map(|p| p.note.clone()).unwrap_or_default(),
            notes: self.notes,
            why,
        }
    }

    fn why(&self, voice: Voice) -> Why {
        let name = &self.share.name;
        let exact = voice.mass(self.share.mass);
        let solved = self.share.why.clone();
        let shown = |division: Mass| {
            show_both(self.dose.mass(), voice.mass, Some(division), voice.locale).0.to_string()
        };
        match (&self.dose, &self.how) {
            (Dose::Weigh { scale, division, loads, .. }, How::Scale { error, division: typed }) => {
                let to = shown(*division);
                Why::new(name, "the exact mass, to a division of its scale", &exact)
                    .with_why("exact mass", exact.clone(), solved)
                    .with("scale", scale)
                    .with("division", voice.typed(*typed))
                    .with("loads", loads.to_string())
                    .with("error of weighing, half a division in each load", voice.share(*error))
                    .rounded(format!(
                        "to the {} division of “{scale}”, with the other parts so that the total is kept: {to}",
                        voice.typed(*typed)
                    ))
                    .from("Largest remainder method")
            }
            (Dose::Drops { drops, .. }, How::Drops(shade)) => {
                let exact =
                    self.share.drops.map(|q| format!("{} drops", voice.number(q))).unwrap_or_default();
                Why::new(name, "whole drops nearest the shade", format!("{drops} drops"))
                    .with_why("exact", exact, solved)
                    .with_why("choice", shade.result.clone(), shade.clone())
                    .with("mass of the drops", voice.mass(self.dose.mass()))
            }
            (Dose::Spoon { eighths, .. }, How::Spoon { off }) => {
                let measure = eighth().times(Exact::whole((*eighths).into()));
                let exact =
                    self.share.volume.map(|v| voice.amount(v, VolumeUnit::Teaspoon)).unwrap_or_default();
                Why::new(
                    name,
                    "the nearest eighth of a teaspoon",
                    voice.amount(measure, VolumeUnit::Teaspoon),
                )
                .with_why("exact", exact, solved)
                .with("mass of the spoon measure", voice.mass(self.dose.mass()))
                .rounded(format!("to ⅛ tsp: off by {}", voice.share(*off)))
            }
            (Dose::Count { pieces }, _) => {
                Why::new(name, "pieces in each vessel × vessels", pieces.to_string()).with_why(
                    "pieces in each vessel",
                    self.share.pieces.unwrap_or(0).to_string(),
                    solved,
                )
            }
            _ => Why::new(name, "the exact mass: no scale weighs it within tolerance", &exact).with_why(
                "exact mass",
                exact.clone(),
                solved,
            ),
        }
    }
}
