//! Why a file brings nothing to a book, in sentences.

use crate::quantity::{Exact, Locale, decimal};
use std::fmt;

/// A number of bytes as people read it: `4.2 MB`, `380 kB`.
pub fn say_bytes(bytes: u64, locale: Locale) -> String {
    let (size, step, unit) = match bytes {
        0..100_000 => (1_000, Exact::ratio(1, 10), "kB"),
        100_000..1_000_000 => (1_000, Exact::ONE, "kB"),
        1_000_000..10_000_000_000 => (1_000_000, Exact::ratio(1, 10), "MB"),
        _ => (1_000_000_000, Exact::ratio(1, 10), "GB"),
    };
    format!("{} {unit}", decimal(Exact::ratio(bytes.into(), size), step, locale))
}

/// Why a file brings nothing. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum CopyError {
    Empty,
    TooLarge {
        bytes: u64,
    },
    /// No line of it is an entry.
    NotACopy,
    /// A newer version of the app has written it.
    Newer {
        format: u32,
    },
    /// The browser could not read the file; with what it said.
    Unread(String),
}

impl fmt::Display for CopyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("This file is empty. Choose the copy that you downloaded here."),
            Self::TooLarge { bytes } => write!(
                f,
                "This file has {}, more than a book ever has. Choose the copy that you downloaded here.",
                say_bytes(*bytes, Locale::default())
            ),
            Self::NotACopy => f.write_str(
                "This file is not a copy of a book. Choose the one that you downloaded here; its name begins with \
                 “potside-book”.",
            ),
            Self::Newer { format } => write!(
                f,
                "A newer Potside has written this copy (format {format}). Update the app first, then open it again."
            ),
            Self::Unread(said) => {
                write!(f, "This file could not be read ({said}). Check that it is still there, then choose it again.")
            }
        }
    }
}

impl std::error::Error for CopyError {}
