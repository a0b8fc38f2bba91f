//! What is said where a measure is off or cannot be taken, with the ways out.

use super::batch::{Needs, Size};
use super::drops::{keeps, percent};
use super::{Ask, DropChoice, Note, Shade, SpoonChoice, Wanted, choose_spoon, eighth};
use crate::formula::{Part, PartKind, PartShare};
use crate::quantity::{Exact, Mass, Share, Voice, Volume, VolumeUnit, decimal};
use crate::sort;

/// Batches up to this many vessels are looked through for a better one.
const LOOKED_THROUGH: u32 = 100;
/// No more than this many of them are named.
const NAMED: usize = 4;

fn list(numbers: &[u32]) -> String {
    let mut words: Vec<String> = numbers.iter().map(u32::to_string).collect();
    match (words.pop(), words.is_empty()) {
        (Some(last), false) => format!("{} or {last}", words.join(", ")),
        (Some(last), true) => last,
        (None, _) => String::new(),
    }
}

/// Batch sizes that fit one pot and for which `good` holds of the amounts scaled by that factor.
fn sizes(ask: &Ask, size: &Size, good: &dyn Fn(u32, Exact) -> bool) -> Vec<u32> {
    let needs = Needs::of(ask);
    let mut sizes = Vec::new();
    for vessels in 1..=LOOKED_THROUGH {
        let mass = needs.pot(vessels);
        if ask.pot.is_some_and(|pot| mass > pot.capacity.value) {
            break;
        }
        if mass.over(size.mass).is_some_and(|factor| good(vessels, factor)) {
            sizes.push(vessels);
        }
    }
    sizes
}

/// Those nearest the batch asked for, in order.
fn nearest(mut sizes: Vec<u32>, size: &Size) -> Vec<u32> {
    sort::by(&mut sizes, |a, b| a.abs_diff(size.vessels).cmp(&b.abs_diff(size.vessels)));
    sizes.truncate(NAMED);
    sort::by(&mut sizes, u32::cmp);
    sizes
}

fn scaled(wanted: &[Wanted], by: Exact) -> Vec<Wanted> {
    wanted.iter().map(|w| Wanted { name: w.name.clone(), drops: w.drops * by }).collect()
}

/// Drops off the shade by more than the tolerance, and what would keep it.
pub(super) fn drops_note(ask: &Ask, size: &Size, wanted: &[Wanted], shade: &Shade) -> Option<Note> {
    let first = shade.choices.first().filter(|c| !c.within(ask.tolerance))?;
    let exactly = nearest(sizes(ask, size, &|_, by| wanted.iter().all(|w| (w.drops * by).is_whole())), size);
    let nearly = || {
        let near = sizes(ask, size, &|_, by| keeps(&scaled(wanted, by), ask.tolerance) == Some(true));
        nearest(near, size)
    };
    let mut text = format!("{}: {}.", named(ask.voice, wanted, first), off(ask.voice, wanted, first));
    if !exactly.is_empty() {
        text += &format!(" A batch of {} vessels keeps the shade exactly.", list(&exactly));
    } else if let near @ [_, ..] = nearly().as_slice() {
        let within = ask.voice.share(ask.tolerance);
        text += &format!(" A batch of {} vessels keeps it to within {within}.", list(near));
    }
    if let Some(fold) = shade.dilute {
        let more: Vec<String> = wanted
            .iter()
            .map(|w| format!("{} {}", w.name, (w.drops * Exact::whole(fold.into())).round()))
            .collect();
        text += &format!(
            " Or thin each dye to {fold} times its volume in its own carrier and count drops of that: {}.",
            more.join(", ")
        );
    }
    // Worth naming only as a trade of hue for depth.
    if let Some(next) = shade.choices.get(1).filter(|n| n.strength_off.abs() < first.strength_off.abs()) {
        text +=
            &format!(" Next best is {}: {}.", named(ask.voice, wanted, next), off(ask.voice, wanted, next));
    }
    Some(Note::caution(text))
}

pub(super) fn named(voice: Voice, wanted: &[Wanted], choice: &DropChoice) -> String {
    let each = wanted.iter().zip(&choice.drops).map(|(w, k)| {
        let exact = decimal(w.drops, Exact::ratio(1, 100), voice.locale);
        let drops = if *k == 1 { "drop" } else { "drops" };
        if w.drops == Exact::whole((*k).into()) {
            format!("{} {k} {drops}", w.name)
        } else {
            format!("{} {k} {drops} for {exact}", w.name)
        }
    });
    each.collect::<Vec<_>>().join(", ")
}

pub(super) fn off(voice: Voice, wanted: &[Wanted], choice: &DropChoice) -> String {
    let strength = percent(choice.strength_off.abs(), voice);
    let strength = strength.trim_start_matches('+');
    let depth = match (choice.strength_off.is_zero(), choice.strength_off.is_negative()) {
        (true, _) => "the depth is kept".to_owned(),
        (false, true) => format!("{strength} too weak"),
        (false, false) => format!("{strength} too strong"),
    };
    let hue = match wanted.get(choice.colour) {
        _ if wanted.len() < 2 => return depth,
        Some(colour) if !choice.ratio_off.is_zero() => {
            format!(
                "the share of {} among the colours is off by {}",
                colour.name,
                percent(choice.ratio_off, voice)
            )
        }
        _ => "the hue is kept".to_owned(),
    };
    format!("{depth}, {hue}")
}

/// Whole drops of what is no dye, off by more than the tolerance, and the batches that take whole ones.
pub(super) fn whole_note(ask: &Ask, size: &Size, name: &str, wanted: Exact, drops: u32) -> Option<Note> {
    let off = Exact::whole(drops.into()).checked_div(wanted)? - Exact::ONE;
    if off.abs() <= ask.tolerance.in_base() {
        return None;
    }
    let exact = decimal(wanted, Exact::ratio(1, 100), ask.voice.locale);
    let side = if off.is_negative() { "little" } else { "much" };
    let share = ask.voice.share(Share::base(off.abs()));
    let mut text = format!("{drops} drops of “{name}” for {exact}: {share} too {side}.");
    let whole = nearest(sizes(ask, size, &|_, by| (wanted * by).is_whole()), size);
    if !whole.is_empty() {
        text += &format!(" A batch of {} vessels takes whole drops.", list(&whole));
    }
    Some(Note::caution(text))
}

/// A spoon measure that no eighth of a teaspoon meets within tolerance.
pub(super) fn spoon_note(
    ask: &Ask,
    size: &Size,
    share: &PartShare,
    volume: Volume,
    spoon: &SpoonChoice,
    weighed: bool,
) -> Note {
    let voice = ask.voice;
    let teaspoons = |v: Volume| voice.amount(v, VolumeUnit::Teaspoon);
    let exact = decimal(
        volume.over(eighth()).unwrap_or(Exact::ZERO) / Exact::whole(8),
        Exact::ratio(1, 100),
        voice.locale,
    );
    let closest = teaspoons(eighth().times(Exact::whole(spoon.eighths.into())));
    let opening = format!(
        "{exact} tsp of “{}”: the nearest measure, {closest}, is off by {}.",
        share.name,
        voice.share(spoon.off)
    );
    if weighed {
        return Note::remark(format!("{opening} So it is weighed."));
    }
    let mut text = opening;
    let better =
        nearest(sizes(ask, size, &|_, by| choose_spoon(volume.times(by), ask.tolerance).within), size);
    if !better.is_empty() {
        text += &format!(" A batch of {} vessels can be spooned.", list(&better));
    }
    if share.unweighed.is_some() {
        text += " Or weigh level spoons of it at the Bench, so that it can be weighed instead.";
    }
    Note::caution(text)
}

/// A part too small for every scale, and the ways out.
pub(super) fn small_note(
    ask: &Ask,
    size: &Size,
    share: &PartShare,
    part: Option<&Part>,
    from: Option<Mass>,
) -> Note {
    let voice = ask.voice;
    if ask.scales.is_empty() {
        return Note::caution(format!(
            "No scale is known yet, so {} of “{}” stands unrounded. Add your scales at the Bench.",
            voice.both(share.mass),
            share.name
        ));
    }
    let mut text = format!(
        "{} of “{}” is too little for your scales to weigh within {}.",
        voice.both(share.mass),
        share.name,
        voice.share(ask.tolerance)
    );
    let mut ways = Vec::new();
    if let Some(from) = from {
        let enough = sizes(ask, size, &|_, by| share.mass.times(by) >= from);
        if let Some(least) = enough.first() {
            ways.push(format!("make {least} vessels or more in one pot"));
        }
        let fold = from.over(share.mass).map_or(0, Exact::ceil);
        if (2..=20).contains(&fold) {
            let more = voice.both(share.mass.times(Exact::whole(fold)));
            ways.push(format!(
                "mix one part of it by weight into {} parts of the melted wax and weigh {more} of that",
                fold - 1
            ));
        }
    }
    if matches!(part.map(|p| p.kind), Some(PartKind::Dye | PartKind::Fragrance)) {
        ways.push("if it is a liquid, weigh some drops of it at the Bench and write it in drops".to_owned());
    } else if part.is_some() {
        ways.push("weigh level spoons of it at the Bench and write it as a spoon measure".to_owned());
    }
    ways.push("use a finer scale".to_owned());
    text += &format!(" Ways out: {}.", ways.join("; or "));
    Note::caution(text)
}

/// A weighed part that rounding moved beyond the tolerance.
pub(super) fn rounding_note(ask: &Ask, exact: Mass, rounded: Mass) -> Option<Note> {
    let off = (rounded - exact).over(exact)?;
    (off.abs() > ask.tolerance.in_base()).then(|| {
        Note::remark(format!(
            "{} is wanted: rounding to the scale puts it off by {}.",
            ask.voice.mass(exact),
            percent(off, ask.voice)
        ))
    })
}

/// A total that the divisions of the scales cannot reach.
pub(super) fn over_note(voice: Voice, over: Mass) -> Option<Note> {
    let size = voice.mass(Mass::base(over.in_base().abs()));
    let side = if over.in_base().is_negative() { "under" } else { "over" };
    (!over.is_zero()).then(|| {
        Note::remark(format!(
            "The measures cannot add up to the total exactly: it comes out {size} {side}. Every part is right to its own \
             division."
        ))
    })
}
