//! What a label is put together from.

use super::picture::Picture;
use crate::desk::code::{Code, QUIET};

/// A part of a label that takes the whole width.
#[derive(Clone, PartialEq, Debug)]
pub(super) enum Block {
    /// Words at a size in micrometres.
    Words { text: String, size: i64, bold: bool },
    /// Pictures side by side, each this wide and high, so far apart.
    Pictures { pictures: Vec<Picture>, side: i64, gap: i64 },
    /// A code with modules of this size.
    Code { code: Code, module: i64 },
}

/// The least module of a code that a phone reads from an ink-jet print: 0.4 mm (common practice, no source).
pub(super) const MODULE: i64 = 400;

impl Block {
    pub(super) fn code(text: &str) -> Option<Self> {
        Code::of(text).map(|code| Self::Code { code, module: MODULE })
    }

    /// The side of a code with its empty border.
    pub(super) fn code_side(code: &Code, module: i64) -> i64 {
        (code.side + 2 * QUIET) as i64 * module
    }
}
