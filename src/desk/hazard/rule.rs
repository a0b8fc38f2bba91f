//! The limits of Annex I for mixtures, one line each.

use super::class::Group::{self, *};
use crate::quantity::Exact;

/// Classes of substances that count, how many times, and from how many tenths of a percent on.
pub(super) struct Term {
    pub(super) group: Group,
    pub(super) categories: &'static [u8],
    pub(super) weight: i128,
    pub(super) cut: i128,
}

/// How the substances of a mixture come to a class of it.
pub(super) struct Rule {
    pub(super) group: Group,
    pub(super) category: u8,
    /// The limit, in percent.
    pub(super) limit: Exact,
    pub(super) way: Way,
    pub(super) terms: &'static [Term],
    pub(super) source: &'static str,
}

#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    /// All that count are added up.
    Sum,
    /// As `Sum`, and what is very toxic to water counts by its M-factor.
    SumM,
    /// Each substance for itself: they never add up.
    Each,
    /// Each for itself, of those to which adding up does not apply (acids, bases and their like).
    Apart,
}

macro_rules! rules {
    ($($group:ident $category:literal $way:ident $top:literal / $bottom:literal
       [$($of:ident [$($cat:literal)+] x $weight:literal from $cut:literal),+] $source:literal;)*) => {
        &[$(Rule {
            group: $group, category: $category, limit: Exact::ratio($top, $bottom), way: Way::$way,
            terms: &[$(Term { group: $of, categories: &[$($cat),+], weight: $weight, cut: $cut }),+],
            source: $source,
        }),*]
    };
}

/// What comes to a category that only the GHS has, beside what counts for the Union's (GHS, Tables 3.2.3 and 4.1.3; from
/// memory).
pub(super) const FURTHER: &[Rule] = rules! {
    Skin 3 Sum 1 / 1 [Skin [1] x 10 from 10, Skin [2] x 1 from 10] "GHS of the United Nations, Revision 10 (2023), Table 3.2.3, from memory";
    Skin 3 Sum 10 / 1 [Skin [1] x 10 from 10, Skin [2 3] x 1 from 10] "GHS of the United Nations, Revision 10 (2023), Table 3.2.3, from memory";
    Acute 2 SumM 25 / 1 [Acute [1] x 10 from 1, Acute [2] x 1 from 10] "GHS of the United Nations, Revision 10 (2023), Table 4.1.3, from memory";
    Acute 3 SumM 25 / 1
        [Acute [1] x 100 from 1, Acute [2] x 10 from 10, Acute [3] x 1 from 10] "GHS of the United Nations, Revision 10 (2023), Table 4.1.3, from memory";
};

/// Within a group the strictest comes first. Compared on 26 November 2026 with the consolidated text of 1 September 2025:
/// Tables 1.1, 3.4.5, 3.5.2, 3.6.2, 3.7.2, 3.8.3, 3.9.4, 3.11.2, 4.2.2 and 5.1, and 3.8.3.4.5, 3.10.3.3.1.2, 4.3.3.1 and
/// 4.4.3.1. Tables 4.1.1 and 4.1.2 by worked examples of the UN and of ECHA. Of Tables 3.2.3, 3.2.4, 3.3.3 and 3.3.4 the
/// Union's text was not to be had; the same tables of the GHS (Revision 7) stand in 29 CFR 1910.1200, Appendix A, as A.2.3,
/// A.2.4, A.3.3 and A.3.4 (text of 20 May 2024): compared figure for figure, with their note that a substance which is
/// corrosive to the skin and to the eyes counts once.
pub(super) const RULES: &[Rule] = rules! {
    Skin 1 Sum 5 / 1 [Skin [1] x 1 from 10] "Annex I, Table 3.2.3";
    Skin 1 Apart 1 / 1 [Skin [1] x 1 from 10] "Annex I, Table 3.2.4";
    Skin 2 Sum 10 / 1 [Skin [1] x 10 from 10, Skin [2] x 1 from 10] "Annex I, Table 3.2.3";
    Skin 2 Apart 3 / 1 [Skin [2] x 1 from 10] "Annex I, Table 3.2.4";
    Eye 1 Sum 3 / 1 [Eye [1] x 1 from 10, Skin [1] x 1 from 10] "Annex I, Table 3.3.3";
    Eye 1 Apart 1 / 1 [Eye [1] x 1 from 10, Skin [1] x 1 from 10] "Annex I, Table 3.3.4";
    Eye 2 Sum 10 / 1 [Eye [1] x 10 from 10, Skin [1] x 10 from 10, Eye [2] x 1 from 10] "Annex I, Table 3.3.3";
    Eye 2 Apart 3 / 1 [Eye [2] x 1 from 10] "Annex I, Table 3.3.4";
    RespSens 11 Each 1 / 10 [RespSens [11] x 1 from 0] "Annex I, Table 3.4.5";
    RespSens 10 Each 1 / 1 [RespSens [10 12] x 1 from 0] "Annex I, Table 3.4.5";
    SkinSens 11 Each 1 / 10 [SkinSens [11] x 1 from 0] "Annex I, Table 3.4.5";
    SkinSens 10 Each 1 / 1 [SkinSens [10 12] x 1 from 0] "Annex I, Table 3.4.5";
    Muta 11 Each 1 / 10 [Muta [11] x 1 from 0] "Annex I, Table 3.5.2";
    Muta 12 Each 1 / 10 [Muta [12] x 1 from 0] "Annex I, Table 3.5.2";
    Muta 2 Each 1 / 1 [Muta [2] x 1 from 0] "Annex I, Table 3.5.2";
    Carc 11 Each 1 / 10 [Carc [11] x 1 from 0] "Annex I, Table 3.6.2";
    Carc 12 Each 1 / 10 [Carc [12] x 1 from 0] "Annex I, Table 3.6.2";
    Carc 2 Each 1 / 1 [Carc [2] x 1 from 0] "Annex I, Table 3.6.2";
    Repr 11 Each 3 / 10 [Repr [11] x 1 from 0] "Annex I, Table 3.7.2";
    Repr 12 Each 3 / 10 [Repr [12] x 1 from 0] "Annex I, Table 3.7.2";
    Repr 2 Each 3 / 1 [Repr [2] x 1 from 0] "Annex I, Table 3.7.2";
    Lact 1 Each 3 / 10 [Lact [1] x 1 from 0] "Annex I, Table 3.7.2";
    Single 1 Each 10 / 1 [Single [1] x 1 from 0] "Annex I, Table 3.8.3";
    Single 2 Each 10 / 1 [Single [1] x 10 from 0, Single [2] x 1 from 0] "Annex I, Table 3.8.3";
    Airways 3 Sum 20 / 1 [Airways [3] x 1 from 10] "Annex I, 3.8.3.4.5";
    Drowsy 3 Sum 20 / 1 [Drowsy [3] x 1 from 10] "Annex I, 3.8.3.4.5";
    Repeated 1 Each 10 / 1 [Repeated [1] x 1 from 0] "Annex I, Table 3.9.4";
    Repeated 2 Each 10 / 1 [Repeated [1] x 10 from 0, Repeated [2] x 1 from 0] "Annex I, Table 3.9.4";
    Aspiration 1 Sum 10 / 1 [Aspiration [1] x 1 from 10] "Annex I, 3.10.3.3.1.2";
    Acute 1 SumM 25 / 1 [Acute [1] x 1 from 1] "Annex I, Table 4.1.1";
    Chronic 1 SumM 25 / 1 [Chronic [1] x 1 from 1] "Annex I, Table 4.1.2";
    Chronic 2 SumM 25 / 1 [Chronic [1] x 10 from 1, Chronic [2] x 1 from 10] "Annex I, Table 4.1.2";
    Chronic 3 SumM 25 / 1
        [Chronic [1] x 100 from 1, Chronic [2] x 10 from 10, Chronic [3] x 1 from 10] "Annex I, Table 4.1.2";
    Chronic 4 Sum 25 / 1 [Chronic [1] x 1 from 1, Chronic [2 3 4] x 1 from 10] "Annex I, Table 4.1.2";
    Ozone 1 Each 1 / 10 [Ozone [1] x 1 from 0] "Annex I, Table 5.1";
    HormoneHealth 1 Each 1 / 10 [HormoneHealth [1] x 1 from 0] "Annex I, Table 3.11.2";
    HormoneHealth 2 Each 1 / 1 [HormoneHealth [2] x 1 from 0] "Annex I, Table 3.11.2";
    HormoneNature 1 Each 1 / 10 [HormoneNature [1] x 1 from 0] "Annex I, Table 4.2.2";
    HormoneNature 2 Each 1 / 1 [HormoneNature [2] x 1 from 0] "Annex I, Table 4.2.2";
    Lasting 2 Each 1 / 10 [Lasting [2] x 1 from 0] "Annex I, 4.3.3.1";
    Lasting 1 Each 1 / 10 [Lasting [1] x 1 from 0] "Annex I, 4.3.3.1";
    Moving 2 Each 1 / 10 [Moving [2] x 1 from 0] "Annex I, 4.4.3.1";
    Moving 1 Each 1 / 10 [Moving [1] x 1 from 0] "Annex I, 4.4.3.1";
};
