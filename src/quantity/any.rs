//! Amounts of whatever kind, for the converter: reading one, and saying it in every unit of its kind.

use super::kind::KINDS;
use super::number::{Style, vulgar_char};
use super::read::{Field, known};
use super::show::{mixed, number};
use super::{
    Amount, AmountError, Density, Exact, Length, Locale, Mass, MassUnit, Quantity, Row, Share, Shown,
    Temperature, Unit, Volume, VolumeUnit, Way, Why, decimal, read,
};
use crate::text::lower;

/// An amount of the kind that its unit tells.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Any {
    Mass(Amount<Mass>),
    Volume(Amount<Volume>),
    Length(Amount<Length>),
    Temperature(Amount<Temperature>),
    Share(Amount<Share>),
    Density(Amount<Density>),
    /// So many drops.
    Drops(Exact),
    /// A number without a unit: its kind must be asked.
    Bare(Exact),
}

/// One amount in one unit.
#[derive(Clone, PartialEq, Debug)]
pub struct Converted {
    pub shown: Shown,
    /// False where it was rounded to be shown.
    pub exact: bool,
    pub why: Why,
}

const NOUN: &str = "measure";
const EXAMPLE: &str = "2 1/4 oz, ¾ tbsp or 86 °C";

/// The symbol of every unit there is, by kind: for asking which one a bare number is of.
pub fn symbols() -> Vec<&'static str> {
    all().iter().map(|row| row.symbol).collect()
}

fn all() -> Vec<&'static Row> {
    KINDS.map(|kind| kind.rows).concat()
}

/// Reads an amount of any kind; the unit tells which. `6 drops` is a number of drops.
///
/// # Errors
/// As [`read`]; an unknown unit is answered with every unit there is.
pub fn read_any(text: &str, locale: Locale) -> Result<Any, AmountError> {
    let style = Style { locale, places: None };
    let bare = Field { noun: NOUN, example: EXAMPLE, units: &[], default: None, style };
    let lower = lower(text.trim());
    if let Some(count) = lower.strip_suffix("drops").or_else(|| lower.strip_suffix("drop")) {
        let (count, _) = bare.read(count)?;
        return if count.is_negative() {
            Err(AmountError::Negative { noun: NOUN })
        } else {
            Ok(Any::Drops(count))
        };
    }
    let neither = match bare.read(text) {
        Ok((number, _)) => return Ok(Any::Bare(number)),
        Err(AmountError::NotANumber { text, noun, example }) => {
            AmountError::NotANumber { text, noun, example }
        }
        Err(other) => return Err(other),
    };
    // The unit is looked at before the range: a weight that is none says what it is instead.
    let kind = match read::<Mass>(text, MassUnit::Gram, locale) {
        Ok(mass) => return Ok(Any::Mass(mass)),
        Err(AmountError::WrongUnit { of, .. }) => of,
        Err(AmountError::UnknownUnit { text, unit, .. }) => {
            return Err(AmountError::UnknownUnit { text, unit, noun: NOUN, known: known(&all()) });
        }
        Err(AmountError::NotANumber { .. }) => return Err(neither),
        Err(other) => return Err(other),
    };
    match kind {
        Volume::NOUN => of(text, locale).map(Any::Volume),
        Length::NOUN => of(text, locale).map(Any::Length),
        Temperature::NOUN => of(text, locale).map(Any::Temperature),
        Share::NOUN => of(text, locale).map(Any::Share),
        Density::NOUN => of(text, locale).map(Any::Density),
        _ => Err(neither),
    }
}

/// Reads a text that names its unit.
fn of<Q: Quantity>(text: &str, locale: Locale) -> Result<Amount<Q>, AmountError> {
    read(text, Q::Unit::at(0), locale)
}

impl Any {
    /// What the unit is taken to be, where people mean different things by it.
    pub fn remark(&self) -> Option<&'static str> {
        match self {
            Self::Mass(a) if a.unit == MassUnit::Ounce => {
                Some("oz is the ounce of weight. For the volume type fl oz.")
            }
            Self::Volume(a) => match a.unit {
                VolumeUnit::UsFluidOunce => {
                    Some("fl oz is the US fluid ounce. For the British one type imp fl oz.")
                }
                VolumeUnit::Teaspoon | VolumeUnit::Tablespoon | VolumeUnit::Cup => {
                    Some("Spoons and cups are the US ones, level.")
                }
                _ => None,
            },
            _ => None,
        }
    }

    /// The amount in every unit of its kind; nothing for a bare number and for drops.
    ///
    /// What ends within three decimals, or as a fraction a spoon or a rule is marked in, is shown as it is; the rest is
    /// rounded to the unit's own step.
    pub fn everywhere(&self, locale: Locale) -> Vec<Converted> {
        let (base, rows, typed) = match self {
            Self::Mass(a) => whole(*a),
            Self::Volume(a) => whole(*a),
            Self::Length(a) => whole(*a),
            Self::Temperature(a) => whole(*a),
            Self::Share(a) => whole(*a),
            Self::Density(a) => whole(*a),
            Self::Drops(_) | Self::Bare(_) => return Vec::new(),
        };
        rows.iter().map(|row| one(base, typed, row, locale)).collect()
    }
}

fn whole<Q: Quantity>(amount: Amount<Q>) -> (Exact, &'static [&'static Row], &'static Row) {
    (amount.value.to_base(), Q::Unit::ROWS, amount.unit.row())
}

/// How one unit came from another.
fn why(base: Exact, typed: &Row, row: &Row, locale: Locale) -> Why {
    let told = |number: Exact| match number.places().filter(|places| *places <= 12) {
        Some(places) => decimal(number, Exact::ratio(1, 10_i128.pow(places)), locale),
        None => decimal(number, Exact::ratio(1, 1_000_000), locale),
    };
    let (number, size) = (typed.number(base), typed.size / row.size);
    let result = [&told(row.number(base)), " ", row.symbol].concat();
    let what = [&told(number), " ", typed.symbol, " in ", row.symbol].concat();
    let one = ["1 ", typed.symbol].concat();
    let other = [&told(size), " ", row.symbol].concat();
    if typed.zero == row.zero {
        let source = if row.symbol == "%" || row.symbol == "‰" { "" } else { SOURCE };
        return Why::new(what, "number × size of its unit in the other", result)
            .with("number", told(number))
            .with(one, other)
            .from(source);
    }
    // °F and °C: their zeros lie apart, and one degree is another size.
    Why::new(
        what,
        "(number − zero of its scale) × size of its degree in the other + zero of the other",
        result,
    )
    .with("number", told(number))
    .with("zero of its scale", told(typed.zero))
    .with("size of its degree in the other", told(size))
    .with("zero of the other", told(row.zero))
    .from(SOURCE)
}

const SOURCE: &str = "NIST SP 811 (2008), App. B; NIST Handbook 44, App. C";

fn one(base: Exact, typed: &Row, row: &Row, locale: Locale) -> Converted {
    let value = row.number(base);
    let rest = value.abs() - Exact::whole(value.abs().floor());
    let spoon = row.way == Way::Eighths && (rest.is_zero() || vulgar_char(rest).is_some());
    let (number, exact) = match value.places() {
        _ if spoon => (mixed(value, locale), true),
        Some(places) if places <= 3 => (decimal(value, Exact::ratio(1, 10_i128.pow(places)), locale), true),
        _ => (number(value, row, None, locale), false),
    };
    let shown = Shown { number, unit: row.symbol };
    let why = why(base, typed, row, locale);
    let why = if exact { why } else { why.rounded(shown.to_string()) };
    Converted { shown, exact, why }
}
