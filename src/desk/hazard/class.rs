//! The classes there are: their names, hazard statements, pictograms and signal words.

/// What a hazard is about. Within one group only the strictest class holds.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Group {
    Oral,
    Dermal,
    Inhaled,
    Skin,
    Eye,
    RespSens,
    SkinSens,
    Muta,
    Carc,
    Repr,
    Lact,
    Single,
    Airways,
    Drowsy,
    Repeated,
    Aspiration,
    Acute,
    Chronic,
    Ozone,
    HormoneHealth,
    HormoneNature,
    Lasting,
    Moving,
}

/// The signal word of a label.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Signal {
    None,
    Warning,
    Danger,
}

impl Signal {
    pub const fn word(self) -> &'static str {
        match self {
            Self::None => "",
            Self::Warning => "Warning",
            Self::Danger => "Danger",
        }
    }
}

/// One line of the table of classes.
#[derive(PartialEq, Debug)]
pub struct Row {
    pub(super) group: Group,
    /// The category; 10, 11, 12 are 1, 1A and 1B where these differ.
    pub(super) category: u8,
    pub name: &'static str,
    /// The code of its hazard statement.
    pub code: &'static str,
    /// The number of its GHS pictogram, 0 for none.
    pub(super) pictogram: u8,
    pub(super) signal: Signal,
}

/// A class that a substance or a mixture has.
pub type Class = &'static Row;

macro_rules! rows {
    ($($group:ident $category:literal $name:literal $code:literal $pictogram:literal $signal:ident;)*) => {
        &[$(Row {
            group: Group::$group, category: $category, name: $name, code: $code, pictogram: $pictogram,
            signal: Signal::$signal,
        }),*]
    };
}

/// Annex I, parts 3 to 5 (labelling tables), with the classes of Delegated Regulation (EU) 2023/707. From memory where
/// the reference values do not say. The first of a group and category is what a mixture gets.
const ROWS: &[Row] = rows! {
    Oral 1 "Acute Tox. 1" "H300" 6 Danger;
    Oral 2 "Acute Tox. 2" "H300" 6 Danger;
    Oral 3 "Acute Tox. 3" "H301" 6 Danger;
    Oral 4 "Acute Tox. 4" "H302" 7 Warning;
    Dermal 1 "Acute Tox. 1" "H310" 6 Danger;
    Dermal 2 "Acute Tox. 2" "H310" 6 Danger;
    Dermal 3 "Acute Tox. 3" "H311" 6 Danger;
    Dermal 4 "Acute Tox. 4" "H312" 7 Warning;
    Inhaled 1 "Acute Tox. 1" "H330" 6 Danger;
    Inhaled 2 "Acute Tox. 2" "H330" 6 Danger;
    Inhaled 3 "Acute Tox. 3" "H331" 6 Danger;
    Inhaled 4 "Acute Tox. 4" "H332" 7 Warning;
    Skin 1 "Skin Corr. 1" "H314" 5 Danger;
    Skin 1 "Skin Corr. 1A" "H314" 5 Danger;
    Skin 1 "Skin Corr. 1B" "H314" 5 Danger;
    Skin 1 "Skin Corr. 1C" "H314" 5 Danger;
    Skin 2 "Skin Irrit. 2" "H315" 7 Warning;
    Eye 1 "Eye Dam. 1" "H318" 5 Danger;
    Eye 2 "Eye Irrit. 2" "H319" 7 Warning;
    Eye 2 "Eye Irrit. 2A" "H319" 7 Warning;
    Eye 2 "Eye Irrit. 2B" "H319" 7 Warning;
    RespSens 10 "Resp. Sens. 1" "H334" 8 Danger;
    RespSens 11 "Resp. Sens. 1A" "H334" 8 Danger;
    RespSens 12 "Resp. Sens. 1B" "H334" 8 Danger;
    SkinSens 10 "Skin Sens. 1" "H317" 7 Warning;
    SkinSens 11 "Skin Sens. 1A" "H317" 7 Warning;
    SkinSens 12 "Skin Sens. 1B" "H317" 7 Warning;
    Muta 12 "Muta. 1B" "H340" 8 Danger;
    Muta 11 "Muta. 1A" "H340" 8 Danger;
    Muta 2 "Muta. 2" "H341" 8 Warning;
    Carc 12 "Carc. 1B" "H350" 8 Danger;
    Carc 11 "Carc. 1A" "H350" 8 Danger;
    Carc 2 "Carc. 2" "H351" 8 Warning;
    Repr 12 "Repr. 1B" "H360" 8 Danger;
    Repr 11 "Repr. 1A" "H360" 8 Danger;
    Repr 2 "Repr. 2" "H361" 8 Warning;
    Lact 1 "Lact." "H362" 0 None;
    Single 1 "STOT SE 1" "H370" 8 Danger;
    Single 2 "STOT SE 2" "H371" 8 Warning;
    Airways 3 "STOT SE 3" "H335" 7 Warning;
    Drowsy 3 "STOT SE 3" "H336" 7 Warning;
    Repeated 1 "STOT RE 1" "H372" 8 Danger;
    Repeated 2 "STOT RE 2" "H373" 8 Warning;
    Aspiration 1 "Asp. Tox. 1" "H304" 8 Danger;
    Acute 1 "Aquatic Acute 1" "H400" 9 Warning;
    Chronic 1 "Aquatic Chronic 1" "H410" 9 Warning;
    Chronic 2 "Aquatic Chronic 2" "H411" 9 None;
    Chronic 3 "Aquatic Chronic 3" "H412" 0 None;
    Chronic 4 "Aquatic Chronic 4" "H413" 0 None;
    Ozone 1 "Ozone 1" "H420" 7 Warning;
    HormoneHealth 1 "ED HH 1" "EUH380" 0 Danger;
    HormoneHealth 2 "ED HH 2" "EUH381" 0 Warning;
    HormoneNature 1 "ED ENV 1" "EUH430" 0 Danger;
    HormoneNature 2 "ED ENV 2" "EUH431" 0 Warning;
    Lasting 1 "PBT" "EUH440" 0 Danger;
    Lasting 2 "vPvB" "EUH441" 0 Danger;
    Moving 1 "PMT" "EUH450" 0 Danger;
    Moving 2 "vPvM" "EUH451" 0 Danger;
};

/// The categories of the GHS that the Union does not have (GHS, Tables 3.1.1, 3.2.2 and 4.1.1, and its Annex 1; from memory).
const FURTHER: &[Row] = rows! {
    Oral 5 "Acute Tox. 5" "H303" 0 Warning;
    Dermal 5 "Acute Tox. 5" "H313" 0 Warning;
    Inhaled 5 "Acute Tox. 5" "H333" 0 Warning;
    Skin 3 "Skin Irrit. 3" "H316" 0 Warning;
    Acute 2 "Aquatic Acute 2" "H401" 0 None;
    Acute 3 "Aquatic Acute 3" "H402" 0 None;
};

/// Every class that a sheet can name.
pub(super) fn rows() -> impl Iterator<Item = Class> {
    ROWS.iter().chain(FURTHER)
}

/// What a mixture of this group and category is called.
pub(super) fn class(group: Group, category: u8) -> Option<Class> {
    rows().find(|row| row.group == group && row.category == category)
}

impl Row {
    /// `Skin Sens. 1 (H317)`
    pub fn say(&self) -> String {
        [self.name, " (", self.code, ")"].concat()
    }

    /// Lower is stricter, within one group.
    pub fn rank(&self) -> u8 {
        match self.category {
            11 => 0,
            10 | 12 => 1,
            category => category,
        }
    }

    /// True where both are about the same hazard.
    pub fn group_is(&self, other: &Self) -> bool {
        self.group == other.group
    }

    pub(super) fn is_in(&self, group: Group) -> bool {
        self.group == group
    }

    pub(super) fn is(&self, group: Group, category: u8) -> bool {
        self.group == group && self.category == category
    }
}
