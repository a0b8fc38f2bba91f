//! How amounts are written into the book: as text a person can read, exact to the last digit.

use super::{Amount, Exact, Locale, Quantity, Unit, read, show_exact};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};

impl Serialize for Exact {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let (num, den) = self.parts();
        if den == 1 { to.collect_str(&num) } else { to.collect_str(&format_args!("{num}/{den}")) }
    }
}

impl<'de> Deserialize<'de> for Exact {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let (num, den) = text.split_once('/').unwrap_or((&text, "1"));
        match (num.parse::<i64>(), den.parse::<i64>()) {
            (Ok(num), Ok(den)) if den > 0 => Ok(Self::ratio(num.into(), den.into())),
            _ => Err(D::Error::custom("not an exact number")),
        }
    }
}

impl<Q: Quantity> Serialize for Amount<Q> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&show_exact(*self, Locale::Point))
    }
}

impl<'de, Q: Quantity> Deserialize<'de> for Amount<Q> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        let first = *Q::Unit::all().first().ok_or_else(|| D::Error::custom("no unit"))?;
        read(&text, first).map_err(D::Error::custom)
    }
}
