//! How amounts are written into the book: as text a person can read, exact to the last digit.
//!
//! A number is `-2.15` where it ends as a decimal soon, otherwise `1/3`. An amount is its number and its unit,
//! `2.15 oz`. The rare one whose number in that unit would not fit 128 bits is written in the base unit, with the
//! unit it is shown in after it: `base 1/3 oz`.

use super::{Amount, Exact, Quantity, Unit};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};

/// Most decimal places that are written; a longer number is written as a fraction.
const PLACES: u32 = 18;
const BASE: &str = "base ";

fn write(number: Exact) -> String {
    let (num, den) = number.parts();
    let digits = number.places().filter(|&p| p <= PLACES).and_then(|p| {
        let scaled = num.checked_mul(10_i128.pow(p) / den)?.unsigned_abs();
        Some((scaled.to_string(), p as usize))
    });
    let sign = if num < 0 { "-" } else { "" };
    match digits {
        Some((digits, 0)) => [sign, &digits].concat(),
        Some((digits, places)) => {
            let padded = ["0".repeat((places + 1).saturating_sub(digits.len())), digits].concat();
            let (whole, part) = padded.split_at(padded.len() - places);
            [sign, whole, ".", part].concat()
        }
        None => [sign, &num.unsigned_abs().to_string(), "/", &den.to_string()].concat(),
    }
}

fn digits(text: &str) -> Option<i128> {
    text.bytes().all(|b| b.is_ascii_digit()).then(|| text.parse().ok())?
}

fn parse(text: &str) -> Option<Exact> {
    let (negative, size) = text.strip_prefix('-').map_or((false, text), |size| (true, size));
    let number = if let Some((num, den)) = size.split_once('/') {
        Exact::whole(digits(num)?).checked_div(Exact::whole(digits(den)?))?
    } else if let Some((whole, part)) = size.split_once('.') {
        let den = 10_i128.checked_pow(u32::try_from(part.len()).ok()?)?;
        digits(part).filter(|_| !whole.is_empty())?;
        Exact::ratio(digits(&[whole, part].concat())?, den)
    } else {
        Exact::whole(digits(size)?)
    };
    Some(if negative { -number } else { number })
}

impl Serialize for Exact {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&write(*self))
    }
}

impl<'de> Deserialize<'de> for Exact {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        parse(&String::deserialize(from)?).ok_or_else(|| D::Error::custom("not an exact number"))
    }
}

impl<Q: Quantity> Serialize for Amount<Q> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let number = self.number();
        let (base, number) =
            if Q::of(number, self.unit) == self.value { ("", number) } else { (BASE, self.value.to_base()) };
        to.serialize_str(&[base, &write(number), " ", self.unit.symbol()].concat())
    }
}

impl<'de, Q: Quantity> Deserialize<'de> for Amount<Q> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let amount = || {
            let (base, rest) = text.strip_prefix(BASE).map_or((false, &*text), |rest| (true, rest));
            let (number, symbol) = rest.split_once(' ')?;
            let unit = Q::Unit::all().iter().copied().find(|u| u.symbol() == symbol)?;
            let number = parse(number)?;
            Some(if base { Self { value: Q::from_base(number), unit } } else { Self::new(number, unit) })
        };
        amount().ok_or_else(|| D::Error::custom("not an amount with its unit"))
    }
}
