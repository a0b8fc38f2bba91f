//! How amounts are written into the book: as text a person can read, exact to the last digit.
//!
//! A number is `-2.15` where it ends as a decimal soon, otherwise `1/3`. An amount is its number and its unit,
//! `2.15 oz`. The rare one whose number in that unit would not fit 128 bits is written in the base unit, with the
//! unit it is shown in after it: `base 1/3 oz`.

use super::units::Row;
use super::{
    Amount, Currency, Density, Exact, Length, Mass, Money, Quantity, Share, Temperature, Unit, Volume,
};
use crate::text::cut;
use crate::wire::{Flaws, Json, Wire, put_text, wire_struct};

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
            let (whole, part) = cut(&padded, padded.len() - places);
            [sign, whole, ".", part].concat()
        }
        None => [sign, &num.unsigned_abs().to_string(), "/", &den.to_string()].concat(),
    }
}

fn digits(text: &str) -> Option<i128> {
    if !text.bytes().all(|b| b.is_ascii_digit()) {
        return None;
    }
    // So many fit 64 bits, in which it goes faster.
    if text.len() < 19 { text.parse::<i64>().ok().map(i128::from) } else { text.parse().ok() }
}

fn parse(text: &str) -> Option<Exact> {
    let (negative, size) = text.strip_prefix('-').map_or((false, text), |size| (true, size));
    let number = if let Some((num, den)) = size.split_once('/') {
        Exact::whole(digits(num)?).checked_div(Exact::whole(digits(den)?))?
    } else if let Some((whole, part)) = size.split_once('.') {
        let den = 10_i128.checked_pow(u32::try_from(part.len()).ok()?)?;
        Exact::ratio(digits(whole)?.checked_mul(den)?.checked_add(digits(part)?)?, den)
    } else {
        Exact::whole(digits(size)?)
    };
    Some(if negative { -number } else { number })
}

fn put_amount(out: &mut String, value: Exact, row: &Row) {
    let number = row.number(value);
    let (base, number) = if row.base(number) == value { ("", number) } else { (BASE, value) };
    put_text(out, &[base, &write(number), " ", row.symbol].concat());
}

/// An amount in base units and the place of its unit among `rows`.
fn parse_amount(text: &str, rows: &[&Row]) -> Option<(Exact, usize)> {
    let (base, rest) = text.strip_prefix(BASE).map_or((false, text), |rest| (true, rest));
    let (number, symbol) = rest.split_once(' ')?;
    let place = rows.iter().position(|row| row.symbol == symbol)?;
    let number = parse(number)?;
    Some((if base { number } else { rows.get(place)?.base(number) }, place))
}

impl Wire for Exact {
    fn put(&self, out: &mut String) {
        put_text(out, &write(*self));
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        parse(json.text(flaws)).unwrap_or_else(|| {
            flaws.unlike();
            Self::ZERO
        })
    }
}

macro_rules! transparent {
    ($($name:ident)*) => {
        $(impl Wire for $name {
            fn put(&self, out: &mut String) {
                self.0.put(out);
            }
            fn get(json: &Json, flaws: &mut Flaws) -> Self {
                Self(Exact::get(json, flaws))
            }
        })*
    };
}

transparent!(Mass Volume Length Share Temperature Density);

impl<Q: Quantity> Wire for Amount<Q> {
    fn put(&self, out: &mut String) {
        put_amount(out, self.value.to_base(), self.unit.row());
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        let (value, place) = parse_amount(json.text(flaws), Q::Unit::ROWS).unwrap_or_else(|| {
            flaws.unlike();
            (Exact::ZERO, 0)
        });
        Self { value: Q::from_base(value), unit: Q::Unit::at(place) }
    }
}

impl Wire for Money {
    fn put(&self, out: &mut String) {
        out.push_str(&self.0.to_string());
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        let number = if let Json::Number(digits) = json { digits.parse().ok() } else { None };
        number.map(Self).unwrap_or_else(|| {
            flaws.unlike();
            Self::ZERO
        })
    }
}

wire_struct!(Currency { symbol, digits });
