//! The hazard statement of a class of a mixture, with the organs, the way into the body and the harm to reproduction that the
//! sheets of what brings it say.

use super::class::{Class, Group};
use super::detail::{ANY, ANY_SUSPECTED, CHILD, CHILD_SUSPECTED, FERTILITY, FERTILITY_SUSPECTED, Organs};
use super::mix::Mixed;
use super::statement::hazard;
use super::substance::Substance;

/// Its code and words.
pub(super) fn worded(mixed: &Mixed, class: Class) -> (&'static str, String) {
    let place = [Group::Single, Group::Repeated].into_iter().position(|group| class.is_in(group));
    if let Some(place) = place {
        return (class.code, of_organs(mixed, class, place));
    }
    let code = if class.is_in(Group::Repr) { of_reproduction(mixed, class) } else { class.code };
    (code, hazard(code).to_owned())
}

impl Substance {
    /// Its own statement of harm to reproduction, where it has letters.
    pub(super) fn letters(&self) -> Option<&'static str> {
        let code = lettered(self.detail.repr, self.detail.repr, self.has(Group::Repr, &[11, 12]));
        Some(code).filter(|code| code.len() > "H360".len())
    }
}

/// Annex III, H360 and H361 with their letters, and Annex I, 3.7.4.1: of several substances each harm is said once, and what is
/// known outweighs what is suspected. One without a letter may do either, and so the general statement stands.
fn of_reproduction(mixed: &Mixed, class: Class) -> &'static str {
    let of =
        |category: u8| bringing(mixed, Group::Repr, &[category]).iter().fold(0, |all, s| all | s.detail.repr);
    let known = of(11) | of(12);
    lettered(known, known | of(2), class.code == "H360")
}

/// The code for what some are known and all are known or suspected to do.
fn lettered(known: u8, all: u8, is_known: bool) -> &'static str {
    let has = |bit: u8| all & bit != 0;
    let suspected = |bit: u8| all & (bit | ANY_SUSPECTED) != 0;
    if is_known {
        return match (known & ANY != 0, has(FERTILITY), has(CHILD)) {
            (false, true, true) => "H360FD",
            (false, true, false) if suspected(CHILD_SUSPECTED) => "H360Fd",
            (false, true, false) => "H360F",
            (false, false, true) if suspected(FERTILITY_SUSPECTED) => "H360Df",
            (false, false, true) => "H360D",
            _ => "H360",
        };
    }
    match (has(ANY_SUSPECTED), has(FERTILITY_SUSPECTED), has(CHILD_SUSPECTED)) {
        (false, true, true) => "H361fd",
        (false, true, false) => "H361f",
        (false, false, true) => "H361d",
        _ => "H361",
    }
}

/// Annex III, H370 to H373: all organs, if known, and the way where no other does the harm. Where one substance that brings the
/// class does not say its organs, or its way, those of the others are not all.
fn of_organs(mixed: &Mixed, class: Class, place: usize) -> String {
    let group = if place == 0 { Group::Single } else { Group::Repeated };
    let (mut all, mut every) = (Organs::default(), true);
    for organs in bringing(mixed, group, &[class.category]).iter().filter_map(|s| s.detail.organs.get(place))
    {
        every &= !organs.names.is_empty();
        all.take(organs);
    }
    let mut words = hazard(class.code).trim_end_matches('.').to_owned();
    if every && !all.names.is_empty() {
        words = words.replace("organs", &["organs (", &all.names.join(", "), ")"].concat());
    }
    [words.as_str(), all.way().map(|way| [" ", &way].concat()).as_deref().unwrap_or_default(), "."].concat()
}

/// The substances of which there is enough for one of these categories, each by itself.
fn bringing<'a>(mixed: &'a Mixed, group: Group, categories: &[u8]) -> Vec<&'a Substance> {
    let mut found = Vec::new();
    for sum in mixed.sums.iter().filter(|sum| sum.is_reached()) {
        let Some(rule) = sum.of().filter(|r| r.group == group && categories.contains(&r.category)) else {
            continue;
        };
        let enough = |(place, weight): &(usize, _)| {
            mixed.substances.get(*place).filter(|substance| substance.percent * *weight >= rule.limit)
        };
        found.extend(sum.parts.iter().filter_map(enough));
    }
    found
}
