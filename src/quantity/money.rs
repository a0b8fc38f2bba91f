//! Money in whole minor units; any currency, no conversion.

use super::number::Style;
use super::read::Field;
use super::show::{MINUS, sign_and_digits};
use super::{AmountError, Exact, Locale};

/// An amount of money in minor units (cents, pence); the currency is the workshop's own.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Money(pub i64);

/// The workshop's currency: the sign or code it is written with, and how many decimals it has (ISO 4217: 2 for most,
/// 0 for the yen, 3 for the Kuwaiti dinar).
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Currency {
    pub symbol: String,
    pub digits: u32,
}

impl Default for Currency {
    fn default() -> Self {
        Self { symbol: "$".into(), digits: 2 }
    }
}

/// Nothing in a workshop costs more than this many whole units.
const MOST: i128 = 1_000_000_000;
const NOUN: &str = "price";

impl Currency {
    /// Minor units in a whole one; at most six decimals are kept.
    fn minor(&self) -> (u32, Exact) {
        let places = self.digits.min(6);
        (places, Exact::whole(10_i128.pow(places)))
    }

    /// Reads a price from zero up, with or without the currency's sign on either side: `12.50`, `12,50`, `$12.50`,
    /// `12 €`. Three digits after the sign that is not the locale's decimal one are thousands where the currency has
    /// fewer than three decimals, so `1,234` is clear in it.
    ///
    /// # Errors
    /// A sentence, as for every amount; also for more decimals than the currency has.
    pub fn read(&self, text: &str, locale: Locale) -> Result<Money, AmountError> {
        let (places, minor) = self.minor();
        let style = Style { locale, places: Some(places) };
        let field = Field { noun: NOUN, example: "12", units: &[], default: None, style };
        let cleaned = field.clean(text)?;
        let (negative, bare) =
            cleaned.strip_prefix('-').map_or((false, &*cleaned), |rest| (true, rest.trim_start()));
        let (number, _) = field.read_clean(self.without_symbol(bare), text)?;
        let units = number * minor;
        if negative || number.is_negative() {
            return Err(AmountError::Negative { noun: NOUN });
        }
        if number > Exact::whole(MOST) {
            return Err(AmountError::TooLarge { noun: NOUN, most: "1\u{202f}000\u{202f}000\u{202f}000" });
        }
        if !units.is_whole() {
            return Err(AmountError::TooManyPlaces { text: text.trim().into(), places });
        }
        i64::try_from(units.floor()).map(Money).map_err(|_| AmountError::TooLong { noun: NOUN })
    }

    /// The text without the currency's sign, in any case, at either end.
    fn without_symbol<'a>(&self, text: &'a str) -> &'a str {
        let symbol = self.symbol.trim();
        let split = |at: Option<usize>| text.split_at_checked(at?);
        match (split(Some(symbol.len())), split(text.len().checked_sub(symbol.len()))) {
            (Some((head, rest)), _) if head.eq_ignore_ascii_case(symbol) => rest.trim(),
            (_, Some((rest, tail))) if tail.eq_ignore_ascii_case(symbol) => rest.trim(),
            _ => text,
        }
    }

    /// Written with the currency's own decimals: `$12.50` where the point is the decimal sign and the sign is one
    /// character or ends in `$`, otherwise after the number: `12,50 €`, `12.50 EUR`.
    pub fn show(&self, money: Money, locale: Locale) -> String {
        let number = sign_and_digits(money.0.into(), self.minor().0, locale);
        let symbol = self.symbol.trim();
        let before = locale == Locale::Point && (symbol.chars().count() == 1 || symbol.ends_with('$'));
        match number.strip_prefix(MINUS) {
            _ if symbol.is_empty() => number,
            _ if !before => [&number, "\u{a0}", symbol].concat(),
            Some(size) => [MINUS, symbol, size].concat(),
            None => [symbol, &number].concat(),
        }
    }
}

impl Money {
    pub const ZERO: Self = Self(0);

    /// `self` times an exact number, rounded once to the minor unit; a half goes to the even one.
    pub fn times(self, by: Exact) -> Self {
        Self::clamped((Exact::whole(self.0.into()) * by).round())
    }

    fn clamped(units: i128) -> Self {
        Self(i64::try_from(units).unwrap_or(if units < 0 { i64::MIN } else { i64::MAX }))
    }
}

impl std::ops::Add for Money {
    type Output = Self;
    /// The sum; what is beyond all money stays at the largest number there is.
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl std::ops::Sub for Money {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, |sum, one| sum + one)
    }
}
