//! The parts of a formula in words.

use super::{Basis, BasisKind, Caution, Doing, PartKind, PartShare};
use crate::quantity::{Mass, Share, Voice, Volume};

impl PartKind {
    pub const ALL: [Self; 4] = [Self::Fragrance, Self::Dye, Self::Additive, Self::Other];

    pub const fn name(self) -> &'static str {
        match self {
            Self::Fragrance => "Fragrance",
            Self::Dye => "Dye",
            Self::Additive => "Additive",
            Self::Other => "Other",
        }
    }
}

impl BasisKind {
    pub const ALL: [Self; 7] =
        [Self::OfWax, Self::OfWhole, Self::PerWax, Self::Weight, Self::Spoon, Self::Drops, Self::PerVessel];

    /// What the amount is measured against, to be chosen.
    pub const fn name(self) -> &'static str {
        match self {
            Self::OfWax => "% of the wax",
            Self::OfWhole => "% of the whole",
            Self::PerWax => "so much per so much wax (g per kg, oz per lb)",
            Self::Weight => "a weight for the usual batch",
            Self::Spoon => "level spoons for the usual batch",
            Self::Drops => "drops for the usual batch",
            Self::PerVessel => "pieces in each vessel",
        }
    }

    /// True for what is written for the usual batch, so that its size must be known.
    pub const fn of_a_batch(self) -> bool {
        matches!(self, Self::Weight | Self::Spoon | Self::Drops)
    }
}

impl Basis {
    /// True where there is an amount above zero.
    pub fn is_given(&self) -> bool {
        match self {
            Self::OfWax(share) | Self::OfWhole(share) => share.value > Share::ZERO,
            Self::PerWax { amount, .. } => amount.value > Mass::ZERO,
            Self::Weight(mass) => mass.value > Mass::ZERO,
            Self::Spoon(volume) => volume.value > Volume::ZERO,
            Self::Drops(count) | Self::PerVessel(count) => *count > 0,
        }
    }

    /// The amount as it was typed and both conventions of saying its share, where its mass is known: `8 % of the wax
    /// = 7.41 % of the whole`.
    pub fn tell(&self, solved: Option<&PartShare>, voice: Voice) -> String {
        let said = self.say(voice);
        let Some(solved) = solved.filter(|s| s.mass > Mass::ZERO) else { return said };
        let (of_wax, of_whole) = (voice.share(solved.of_wax), voice.share(solved.of_whole));
        match self {
            Self::OfWax(_) => format!("{said} = {of_whole} of the whole"),
            Self::OfWhole(_) => format!("{said} = {of_wax} of the wax"),
            _ => format!("{said} = {of_wax} of the wax = {of_whole} of the whole"),
        }
    }

    /// The amount as it was typed, with what it is measured against: `1 oz for 1 lb of wax`.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::OfWax(share) => format!("{} of the wax", voice.typed(*share)),
            Self::OfWhole(share) => format!("{} of the whole", voice.typed(*share)),
            Self::PerWax { amount, wax } => {
                format!("{} for {} of wax", voice.typed(*amount), voice.typed(*wax))
            }
            Self::Weight(mass) => format!("{} in the usual batch", voice.typed(*mass)),
            Self::Spoon(volume) => format!("{} in the usual batch", voice.typed(*volume)),
            Self::Drops(1) => "1 drop in the usual batch".to_owned(),
            Self::Drops(drops) => format!("{drops} drops in the usual batch"),
            Self::PerVessel(pieces) => format!("{pieces} in each vessel"),
        }
    }
}

impl Caution {
    /// The wax or part it is about; none where it is about the whole.
    pub fn about(&self) -> Option<&str> {
        match self {
            Self::Load { part, .. }
            | Self::FlashUnknown { part }
            | Self::SpoonUnweighed { part, .. }
            | Self::DropsUnweighed { part } => Some(part),
            Self::Flash { of, .. } => Some(of),
            Self::Order { first, .. } => Some(first),
            Self::Hot { doing: Doing::Adding(part), .. }
            | Self::AboveMelt { doing: Doing::Adding(part), .. } => Some(part),
            Self::LoadTogether { .. }
            | Self::Hot { .. }
            | Self::PourAboveAdd { .. }
            | Self::AboveMelt { .. } => None,
        }
    }
}
