//! How what is kept is written as JSON and read back.
//!
//! Everything in the book goes through this, and it is made to be small: the code for one type is a list of calls, with
//! no way out in between. So reading never stops at a flaw: the first one is noted, zero stands in for what could not
//! be read, and in the end the whole is refused.

mod json;
mod macros;
mod values;

pub use json::Json;
pub(crate) use macros::{get_field, get_kind, put_field, put_kind, wire_enum, wire_struct};

use crate::text::cut;
use std::fmt;

/// What can be written as JSON and read back. [`wire_struct`] and [`wire_enum`] make it for structs and enums.
pub trait Wire: Sized {
    /// Adds it to the text.
    fn put(&self, out: &mut String);
    /// Reads it; what cannot be it is noted in `flaws`, and anything may be given back.
    fn get(json: &Json, flaws: &mut Flaws) -> Self;
    /// True for what is left out where a field may be.
    fn is_blank(&self) -> bool {
        false
    }
}

/// It as JSON, on one line.
pub fn write<T: Wire>(value: &T) -> String {
    let mut out = String::new();
    value.put(&mut out);
    out
}

/// Reads JSON. Fields that are not known are passed over.
///
/// # Errors
/// The first thing that is not as it should be.
pub fn read<T: Wire>(text: &str) -> Result<T, Flaw> {
    get(&Json::parse(text).ok_or(Flaw::NotJson)?)
}

/// Takes it out of JSON that was parsed.
///
/// # Errors
/// The first thing that is not as it should be.
pub fn get<T: Wire>(json: &Json) -> Result<T, Flaw> {
    let mut flaws = Flaws::default();
    let value = T::get(json, &mut flaws);
    flaws.first.map_or(Ok(value), Err)
}

/// Why a text was not read; `at` is the last field that was begun. `Display` is a part of a sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Flaw {
    NotJson,
    /// Not there, or not what the field can hold.
    Unlike {
        at: &'static str,
    },
    Twice {
        at: &'static str,
    },
    /// One of several kinds, but none that is known.
    Unknown {
        at: &'static str,
        said: String,
    },
}

impl fmt::Display for Flaw {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotJson => f.write_str("it is not JSON, or one thing stands in another more than 128 deep"),
            Self::Unlike { at } => write!(f, "“{at}” is missing or not what it can be"),
            Self::Twice { at } => write!(f, "“{at}” is there twice"),
            Self::Unknown { at, said } => write!(f, "“{said}” is not known at “{at}”"),
        }
    }
}

impl std::error::Error for Flaw {}

/// So many signs of a kind that is not known are told.
const LONGEST_SAID: usize = 60;

/// Where reading is, and the first flaw found.
#[derive(Default)]
pub struct Flaws {
    at: &'static str,
    first: Option<Flaw>,
}

impl Flaws {
    fn note(&mut self, flaw: Flaw) {
        self.first.get_or_insert(flaw);
    }

    /// Notes that what is read here cannot be.
    pub(crate) fn unlike(&mut self) {
        self.note(Flaw::Unlike { at: self.at });
    }

    /// Notes that no kind of this name is known. No name is long: what is told of one has its bounds.
    pub(crate) fn unknown(&mut self, said: &str) {
        self.note(Flaw::Unknown { at: self.at, said: said.chars().take(LONGEST_SAID).collect() });
    }
}

impl Json<'_> {
    /// The field of an object; [`Json::Nothing`] where it is not there.
    pub(crate) fn field(&self, name: &'static str, flaws: &mut Flaws) -> &Self {
        flaws.at = name;
        let Self::Object(fields) = self else {
            flaws.unlike();
            return &Json::Nothing;
        };
        let mut found = fields.iter().filter(|(field, _)| field == name).map(|(_, value)| value);
        let first = found.next().unwrap_or(&Json::Nothing);
        if found.next().is_some() {
            flaws.note(Flaw::Twice { at: name });
        }
        first
    }

    /// The name of a kind and what it holds: `"Close"` or `{"Melt":…}`.
    pub(crate) fn kind(&self) -> (&str, &Self) {
        match self {
            Self::Text(name) => (name, &Json::Nothing),
            Self::Object(fields) => match fields.as_slice() {
                [(name, value)] => (name, value),
                _ => ("", &Json::Nothing),
            },
            _ => ("", &Json::Nothing),
        }
    }

    /// Holds that a kind which holds nothing does not.
    pub(crate) fn nothing(&self, flaws: &mut Flaws) {
        if !matches!(self, Self::Nothing) {
            flaws.unlike();
        }
    }

    pub(crate) fn text(&self, flaws: &mut Flaws) -> &str {
        if let Self::Text(text) = self {
            return text;
        }
        flaws.unlike();
        ""
    }

    fn whole(&self, most: u64, flaws: &mut Flaws) -> u64 {
        if let Self::Number(digits) = self
            && let Ok(number) = digits.parse()
            && number <= most
        {
            return number;
        }
        flaws.unlike();
        0
    }

    fn items(&self, flaws: &mut Flaws) -> &[Self] {
        if let Self::List(items) = self {
            return items;
        }
        flaws.unlike();
        &[]
    }
}

/// Adds a text in quotation marks.
pub(crate) fn put_text(out: &mut String, text: &str) {
    out.push('"');
    let mut rest = text;
    // Hardly any text has a sign in it that is written otherwise.
    while let Some(at) = rest.bytes().position(|b| matches!(b, b'"' | b'\\' | 0..b' ')) {
        let (plain, after) = cut(rest, at);
        out.push_str(plain);
        let mut signs = after.chars();
        let sign = signs.next().unwrap_or_default();
        rest = signs.as_str();
        let short = match sign {
            '\n' => 'n',
            '\r' => 'r',
            '\t' => 't',
            '\u{8}' => 'b',
            '\u{c}' => 'f',
            '\0'..' ' => {
                out.push_str("\\u00");
                out.extend(
                    [u32::from(sign) >> 4, u32::from(sign) & 15]
                        .map(|n| char::from_digit(n, 16).unwrap_or('0')),
                );
                continue;
            }
            _ => sign,
        };
        out.push('\\');
        out.push(short);
    }
    out.push_str(rest);
    out.push('"');
}

/// Adds the name of a field, after a comma where it is not the first.
pub(crate) fn put_name(out: &mut String, name: &str) {
    if !out.ends_with('{') {
        out.push(',');
    }
    put_text(out, name);
    out.push(':');
}

/// A field that may be left out, and then is as usual.
pub(crate) fn get_or<T: Wire>(json: &Json, flaws: &mut Flaws, usual: T) -> T {
    if matches!(json, Json::Nothing) { usual } else { T::get(json, flaws) }
}
