//! Reading amounts as people type them.

use super::kind::{KINDS, Kind};
use super::number::{DIGITS, FINEST, Scanned, Style, Trouble, clean, scan, vulgar};
use super::{Amount, AmountError, Density, DensityUnit, Exact, Locale, Quantity, Row, Unit};
use crate::text::cut;

/// A field on the screen, as far as reading goes.
#[derive(Clone, Copy)]
pub(super) struct Field {
    pub(super) noun: &'static str,
    pub(super) example: &'static str,
    pub(super) units: &'static [&'static Row],
    /// Meant where none is typed.
    pub(super) default: Option<&'static Row>,
    pub(super) style: Style,
}

/// Reads an amount: `2 1/4 oz`, `2.15oz`, `¾ tbsp`, `1 lb 3.5 oz`, `1,5 kg`, `188F`. Without a unit, `default` is meant.
///
/// Both decimal signs are read. Only where three digits follow the sign that is not the locale's own (`1,234` where
/// the point is the decimal sign) it may as well group thousands, and is asked about.
///
/// # Errors
/// A sentence that says what is wrong with the text and what to do; also for what cannot be at a pot.
pub fn read<Q: Quantity>(text: &str, default: Q::Unit, locale: Locale) -> Result<Amount<Q>, AmountError> {
    let (value, place) = read_kind(text, Q::KIND, default.row(), locale)?;
    Ok(Amount { value: Q::from_base(value), unit: Q::Unit::at(place) })
}

/// An amount in base units, and the place of the unit it was typed in.
fn read_kind(
    text: &str,
    kind: &Kind,
    default: &'static Row,
    locale: Locale,
) -> Result<(Exact, usize), AmountError> {
    let (noun, example, units) = (kind.noun, kind.example, kind.rows);
    let style = Style { locale, places: None };
    let (number, row) = Field { noun, example, units, default: Some(default), style }.read(text)?;
    let row = row.unwrap_or(default);
    let value = row.base(number);
    (kind.check)(value)?;
    Ok((value, units.iter().position(|unit| unit.symbol == row.symbol).unwrap_or(0)))
}

/// Reads a density: `0.9 g/mL`, `900 kg/m³`; without a unit, grams per millilitre are meant.
///
/// # Errors
/// As [`read`], and where it is zero.
pub fn read_density(text: &str, locale: Locale) -> Result<Density, AmountError> {
    read::<Density>(text, DensityUnit::GramPerMillilitre, locale).map(|amount| amount.value)
}

/// Reads a plain number from zero up, with fractions, comma or point.
///
/// # Errors
/// As [`read`].
pub fn read_number(text: &str, locale: Locale) -> Result<Exact, AmountError> {
    plain(text, Style { locale, places: None }, "2 1/4 or 15")
}

/// Most that is counted of anything.
const MOST: i128 = 100_000;

/// Reads a whole number above zero, up to 100 000.
///
/// # Errors
/// As [`read`], and where it is not whole or is zero.
pub fn read_count(text: &str, locale: Locale) -> Result<u32, AmountError> {
    let number = plain(text, Style { locale, places: Some(0) }, "8")?;
    if !number.is_whole() {
        return Err(AmountError::NotWhole { text: text.trim().into() });
    }
    match number.floor() {
        0 => Err(AmountError::NotAboveZero { noun: "number" }),
        n if n > MOST => Err(AmountError::TooLarge { noun: "number", most: "100\u{202f}000" }),
        n => u32::try_from(n).map_err(|_| AmountError::TooLong { noun: "number" }),
    }
}

fn plain(text: &str, style: Style, example: &'static str) -> Result<Exact, AmountError> {
    let (number, _) = Field { noun: "number", example, units: &[], default: None, style }.read(text)?;
    if number.is_negative() { Err(AmountError::Negative { noun: "number" }) } else { Ok(number) }
}

impl Field {
    /// The number and the unit it is of, which is the default where none is typed.
    pub(super) fn read(&self, text: &str) -> Result<(Exact, Option<&'static Row>), AmountError> {
        self.read_clean(&self.clean(text)?, text)
    }

    pub(super) fn clean(&self, text: &str) -> Result<String, AmountError> {
        clean(text).ok_or(AmountError::TooLong { noun: self.noun })
    }

    /// Reads a cleaned text; the sentences quote `text`, which is as it was typed.
    pub(super) fn read_clean(
        &self,
        cleaned: &str,
        text: &str,
    ) -> Result<(Exact, Option<&'static Row>), AmountError> {
        if cleaned.trim().is_empty() {
            return Err(AmountError::Empty { noun: self.noun });
        }
        let tell = |trouble: Trouble| trouble.tell(text, self.noun, self.example);
        let (negative, body) = match cleaned.strip_prefix('-') {
            Some(body) => (true, body.trim_start()),
            None => (false, cleaned.strip_prefix('+').unwrap_or(cleaned)),
        };
        let (scanned, rest) = scan(body, self.style).map_err(tell)?;
        let (row, second) = self.unit(text, rest.trim())?;
        let first = match scanned {
            Scanned::Clear(number) => number,
            Scanned::TwoWays(small, large) => return Err(both_ways(text, negative, row, &small, &large)),
        };
        let (number, row) = match (row, second) {
            (Some(large), Some(second)) => {
                let (more, small) = self.second(text, large, second)?;
                if !first.is_whole() {
                    return Err(tell(Trouble::NotANumber));
                }
                let whole = large.size / small.size;
                if more >= whole {
                    let (small, large) = (small.symbol, large.symbol);
                    return Err(AmountError::Spills { text: text.trim().into(), small, large });
                }
                (first * whole + more, Some(small))
            }
            (row, _) => (first, row),
        };
        if written(number).is_none() && number.parts().1 > FINEST {
            return Err(tell(Trouble::TooLong));
        }
        Ok((if negative { -number } else { number }, row))
    }

    /// The unit that `rest` names, and what follows it where that begins with a digit: `lb 3.5 oz`.
    fn unit<'a>(
        &self,
        text: &str,
        rest: &'a str,
    ) -> Result<(Option<&'static Row>, Option<&'a str>), AmountError> {
        if rest.is_empty() {
            return Ok((self.default, None));
        }
        if let Some(row) = named(rest, self.units) {
            return Ok((Some(row), None));
        }
        let digit = rest.find(|c: char| c.is_ascii_digit() || vulgar(c).is_some()).unwrap_or(rest.len());
        let (name, number) = cut(rest, digit);
        let (name, number) = match name.strip_suffix('.') {
            // The point belongs to the number: `1 lb .5 oz`.
            Some(bare) if bare.ends_with(' ') => (bare, cut(rest, bare.len()).1),
            _ => (name, number),
        };
        match named(name, self.units) {
            // A comma right before a digit could be a decimal sign: `1 lb ,3 oz`.
            Some(row) if !number.is_empty() && !name.ends_with(',') => Ok((Some(row), Some(number))),
            _ => Err(self.unknown(text, name.trim())),
        }
    }

    /// The second part of a compound amount, in the unit that may follow `large`.
    fn second(&self, text: &str, large: &Row, second: &str) -> Result<(Exact, &'static Row), AmountError> {
        let tell = |trouble: Trouble| trouble.tell(text, self.noun, self.example);
        let (scanned, rest) = scan(second, self.style).map_err(tell)?;
        match (scanned, named(rest, self.units)) {
            (Scanned::Clear(more), Some(small)) if large.then == Some(small.symbol) => Ok((more, small)),
            (Scanned::TwoWays(one, other), Some(small)) if large.then == Some(small.symbol) => {
                Err(both_ways(second, false, Some(small), &one, &other))
            }
            _ => Err(tell(Trouble::NotANumber)),
        }
    }

    /// True where the last word is a unit of this kind.
    fn ends(&self, text: &str) -> bool {
        let word = text.rfind(|c: char| !c.is_ascii_alphabetic()).map_or(text, |at| cut(text, at + 1).1);
        named(word, self.units).is_some()
    }

    fn unknown(&self, text: &str, name: &str) -> AmountError {
        let (text, noun) = (text.trim().into(), self.noun);
        let other = KINDS.iter().find(|kind| named(name, kind.rows).is_some()).map(|kind| kind.noun);
        match other {
            _ if self.units.is_empty() || name.is_empty() || !name.starts_with(starts_a_name) => {
                AmountError::NotANumber { text, noun, example: self.example }
            }
            Some(of) if of != noun && (name != "'" || !self.ends(&text)) => {
                AmountError::WrongUnit { text, of, noun, known: known(self.units) }
            }
            // A unit of this kind with something about it that is no amount: `1'23 g`.
            Some(_) => AmountError::NotANumber { text, noun, example: self.example },
            None => AmountError::UnknownUnit { text, unit: name.into(), noun, known: known(self.units) },
        }
    }
}

/// The two readings of `1,234` or `11/2`, each written so that it is clear.
fn both_ways(text: &str, negative: bool, row: Option<&Row>, small: &str, large: &str) -> AmountError {
    let (gap, unit) = row.map_or(("", ""), |row| (" ", row.symbol));
    let minus = if negative { "−" } else { "" };
    let written = |number| [minus, number, gap, unit].concat();
    AmountError::Ambiguous { text: text.trim().into(), small: written(small), large: written(large) }
}

/// The unit that a name is a spelling of, in any case, with any spaces and points.
pub(super) fn named(name: &str, rows: &'static [&'static Row]) -> Option<&'static Row> {
    let name = name.trim_end_matches([' ', ',']);
    if name.starts_with('.') {
        return None;
    }
    let name: String =
        name.chars().filter(|c| !matches!(c, ' ' | '.')).map(|c| c.to_ascii_lowercase()).collect();
    rows.iter().copied().find(|row| row.spellings.contains(&name.as_str()))
}

fn starts_a_name(c: char) -> bool {
    !c.is_ascii_punctuation() || matches!(c, '#' | '%' | '"' | '\'')
}

/// `g, kg, oz or lb`.
pub(super) fn known(rows: &[&Row]) -> String {
    let mut list = String::new();
    for (at, row) in rows.iter().enumerate() {
        list.push_str(if at == 0 {
            ""
        } else if at + 1 == rows.len() {
            " or "
        } else {
            ", "
        });
        list.push_str(row.symbol);
    }
    list
}

/// The digits and the decimal places of a number that can be typed as a decimal, none where it cannot.
pub(super) fn written(number: Exact) -> Option<(i128, u32)> {
    let places = number.places().filter(|&p| p as usize <= DIGITS)?;
    let (num, den) = number.parts();
    let digits = num.checked_mul(10_i128.pow(places) / den)?;
    (digits.abs() < 10_i128.pow(DIGITS as u32)).then_some((digits, places))
}
