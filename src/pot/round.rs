//! Rounding parts to the divisions of their scales so that they add up to the rounded whole.

use crate::quantity::{Exact, Mass};
use crate::sort;

/// Parts after rounding.
#[derive(Clone, PartialEq, Debug)]
pub struct Rounded {
    pub parts: Vec<Mass>,
    /// The whole rounded to the finest division: what the parts should add up to.
    pub whole: Mass,
    /// Sum of the parts minus `whole`: zero wherever the divisions can reach it. Positive is over.
    pub over: Mass,
}

/// Parts of one division, the largest remainder first: the order in which they go up.
struct Class {
    division: Exact,
    /// Index of the part and its remainder as a share of the division.
    parts: Vec<(usize, Exact)>,
}

/// How many of each class go up, and what that comes to.
#[derive(Clone)]
struct Pick {
    counts: Vec<usize>,
    miss: Exact,
    /// What going up adds to the squared errors, each in divisions: of several ways to the same sum the one that
    /// moves parts least.
    moved: Exact,
}

/// Largest remainder with a division for each part: no part moves by a whole division or more, and the sum is the
/// whole (rounded to the finest division), or as near to it as the divisions allow. Ties go to the part listed first.
///
/// `parts` are pairs of exact mass and division; a part without a division (zero) stays as it is. The method is not
/// monotone (the Alabama paradox): a larger whole can lower a part by a division.
pub fn apportion(parts: &[(Mass, Mass)], whole: Mass) -> Rounded {
    let mut rounded: Vec<Mass> = parts.iter().map(|(mass, division)| floor(*mass, *division)).collect();
    let finest = parts.iter().map(|p| p.1).filter(|d| *d > Mass::ZERO).min().unwrap_or(Mass::ZERO);
    let whole = whole.round_to(finest);
    let classes = classes(parts);
    let short = whole.in_base() - rounded.iter().copied().sum::<Mass>().in_base();

    let mut best: Option<Pick> = None;
    search(&classes, short, &mut Vec::new(), Exact::ZERO, &mut best);
    if let Some(pick) = best {
        for (class, up) in classes.iter().zip(&pick.counts) {
            for (index, _) in class.parts.iter().take(*up) {
                if let Some(part) = rounded.get_mut(*index) {
                    *part = *part + Mass::base(class.division);
                }
            }
        }
    }
    let over = rounded.iter().copied().sum::<Mass>() - whole;
    Rounded { parts: rounded, whole, over }
}

fn floor(mass: Mass, division: Mass) -> Mass {
    match mass.over(division) {
        Some(n) => division.times(Exact::whole(n.floor())),
        None => mass,
    }
}

/// Classes from the coarsest division to the finest. A part that is whole already can only move by a whole division,
/// so it is in none.
fn classes(parts: &[(Mass, Mass)]) -> Vec<Class> {
    let mut classes: Vec<Class> = Vec::new();
    for (index, (mass, division)) in parts.iter().enumerate() {
        let Some(n) = mass.over(*division) else { continue };
        let rest = n - Exact::whole(n.floor());
        if rest.is_zero() {
            continue;
        }
        match classes.iter_mut().find(|c| c.division == division.in_base()) {
            Some(class) => class.parts.push((index, rest)),
            None => classes.push(Class { division: division.in_base(), parts: vec![(index, rest)] }),
        }
    }
    for class in &mut classes {
        sort::by(&mut class.parts, |a, b| b.1.cmp(&a.1));
    }
    sort::by(&mut classes, |a, b| b.division.cmp(&a.division));
    classes
}

/// Tries every count of every class but those that cannot come nearer than the best so far; the finest class takes
/// the counts either side of what is still short.
fn search(classes: &[Class], short: Exact, counts: &mut Vec<usize>, moved: Exact, best: &mut Option<Pick>) {
    let Some((class, rest)) = classes.split_first() else {
        let pick = Pick { counts: counts.clone(), miss: short.abs(), moved };
        let better = best.as_ref().is_none_or(|b| (pick.miss, pick.moved) < (b.miss, b.moved));
        if better {
            *best = Some(pick);
        }
        return;
    };
    let reach: Exact = rest
        .iter()
        .map(|c| c.division * Exact::whole(c.parts.len() as i128))
        .fold(Exact::ZERO, |sum, most| sum + most);
    let near = (short / class.division).floor();
    let mut moved = moved;
    for up in 0..=class.parts.len() {
        if let Some((_, remainder)) = up.checked_sub(1).and_then(|last| class.parts.get(last)) {
            moved = moved + Exact::ONE - *remainder - *remainder;
        }
        let left = short - class.division * Exact::whole(up as i128);
        let least = if left.is_negative() { left.abs() } else { (left - reach).max(Exact::ZERO) };
        let worse = best.as_ref().is_some_and(|b| least > b.miss);
        let far = rest.is_empty()
            && near.clamp(0, class.parts.len() as i128) != up as i128
            && (near + 1).clamp(0, class.parts.len() as i128) != up as i128;
        if worse || far {
            continue;
        }
        counts.push(up);
        search(rest, left, counts, moved, best);
        counts.pop();
    }
}
