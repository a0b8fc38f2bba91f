//! Photos of candles on trial: small pictures, each known by the SHA-256 of its bytes. The book names them; the bytes are
//! kept beside it.

mod base64;
mod jpeg;
mod sha256;

pub use base64::{from_base64, to_base64};
pub use jpeg::bare;
pub use sha256::sha256;

use crate::wire::wire_struct;
use std::fmt;

/// No photo is longer or wider, in pixels: a candle is seen well enough, and ten years of them fit on a tablet (our own
/// choice).
pub const LONG_SIDE: u32 = 640;
/// No photo has more bytes.
pub const MOST_BYTES: usize = 40_000;

/// No file is opened that has more bytes: a picture is laid out whole in memory to be made small (our own choice; what a
/// tablet's camera makes is a tenth of it).
pub const MOST_FILE: u32 = 60_000_000;

/// Why a picture is no photo of a book. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum PhotoError {
    /// The browser does not show it.
    NoPicture,
    /// It is none of ours: another kind of picture, larger, or with more in it than a picture.
    Foreign,
    /// Its bytes are not those that its name was made of.
    Damaged,
    /// The book names it, but its bytes are not on this device.
    Missing,
    /// It is not opened.
    TooLarge,
}

impl fmt::Display for PhotoError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoPicture => {
                "This file is no picture that this browser can show. Take a photo, or choose a JPEG or PNG."
            }
            Self::Foreign => "This is no photo that Potside has made. It is left out.",
            Self::Damaged => "This photo is damaged. A copy of the book may still have it whole: take one in on the Desk.",
            Self::Missing => {
                "This photo is not on this device. A copy of the book made where it was taken brings it: take it in on \
                 the Desk."
            }
            Self::TooLarge => {
                "This file has more than 60 MB, too much to be opened as a picture. Choose a smaller one, or take a \
                 photo with this device."
            }
        })
    }
}

impl std::error::Error for PhotoError {}

/// The name of a photo: the SHA-256 of its bytes, in 64 small hexadecimal digits.
pub fn name(photo: &[u8]) -> String {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let digit = |n: u8| char::from(*DIGITS.get(usize::from(n)).unwrap_or(&b'0'));
    sha256(photo).iter().flat_map(|byte| [digit(byte >> 4), digit(byte & 15)]).collect()
}

/// True where this could be the name of a photo.
pub fn is_name(name: &str) -> bool {
    name.len() == 64 && name.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
}

/// A picture as the browser made it, as it is kept: nothing but the picture in it. Its name, and its bytes as text.
///
/// # Errors
/// Where it is not a small JPEG.
pub fn pack(picture: &[u8]) -> Result<(String, String), PhotoError> {
    let bare = bare(picture).ok_or(PhotoError::Foreign)?;
    if bare.len() > MOST_BYTES { Err(PhotoError::Foreign) } else { Ok((name(&bare), to_base64(&bare))) }
}

/// Looks a kept photo over: it is what its name was made of, and a photo of ours.
///
/// # Errors
/// Where it is damaged or foreign.
pub fn check(name: &str, text: &str) -> Result<(), PhotoError> {
    let longest = MOST_BYTES.div_ceil(3) * 4;
    if text.len() > longest {
        return Err(PhotoError::Foreign);
    }
    let bytes = from_base64(text).ok_or(PhotoError::Damaged)?;
    if self::name(&bytes) != name {
        return Err(PhotoError::Damaged);
    }
    match bare(&bytes) {
        Some(bare) if bare == bytes => Ok(()),
        _ => Err(PhotoError::Foreign),
    }
}

/// A photo as it stands in a backup.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Photo {
    pub name: String,
    /// Its bytes as base64.
    pub jpeg: String,
}

wire_struct!(Photo { name, jpeg });
