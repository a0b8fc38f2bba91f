//! Batch numbers that people read, write and type: the day, four signs, and a check sign.

use crate::book::Batch;
use crate::book::crc32c;
use crate::day::{Zone, put_digits};
use crate::text::cut;

/// ISO/IEC 7064's alphabet for MOD 37,36.
const SIGNS: &[u8; 36] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
/// Of them, those that are not mistaken for another.
const CLEAR: &[u8; 29] = b"23456789ABCDEFGHJKMNPQRSTVWXZ";

/// The check sign of ISO/IEC 7064 MOD 37,36 for digits and capital letters; none where there is another sign.
pub fn check_sign(text: &str) -> Option<char> {
    let mut sum = 36;
    for sign in text.bytes() {
        let value = SIGNS.iter().position(|s| *s == sign)?;
        sum = (sum + value) % 36;
        sum = (if sum == 0 { 36 } else { sum }) * 2 % 37;
    }
    SIGNS.get((37 - sum) % 36).map(|s| char::from(*s))
}

/// `261125-7KQM-4`: the day it was begun as it was written down, four signs that come of its id alone, and the check sign:
/// the same on every device and in every book. Before the day was written down it was the one at Greenwich.
pub fn batch_number(batch: &Batch) -> String {
    let mut text = String::new();
    put_digits(&mut text, batch.begun_on(Zone::GREENWICH).digits(), 6);
    let mut rest = crc32c(batch.id.0.as_bytes()) as usize;
    for _ in 0..4 {
        text.extend(CLEAR.get(rest % CLEAR.len()).map(|s| char::from(*s)));
        rest /= CLEAR.len();
    }
    text.push(check_sign(&text).unwrap_or('0'));
    dashed(&text)
}

/// With its dashes.
fn dashed(plain: &str) -> String {
    let (day, rest) = cut(plain, 6);
    let (signs, check) = cut(rest, 4);
    [day, "-", signs, "-", check].concat()
}

/// Its signs: no dashes and spaces, capital letters.
fn plain(text: &str) -> String {
    text.chars().filter(|c| !matches!(c, '-' | ' ')).map(|c| c.to_ascii_uppercase()).collect()
}

/// True where it is written as a batch number is and its check sign is right; small letters, spaces and no dashes are as
/// good.
pub fn is_batch_number(text: &str) -> bool {
    let plain = plain(text);
    let mut signs = plain.chars();
    let check = signs.next_back();
    plain.len() == 11 && check.is_some() && check_sign(signs.as_str()) == check
}

/// A text that is shaped like a batch number, a day and five signs, written as one with its dashes; and whether its check
/// sign is right. None of any other text.
pub fn as_batch_number(text: &str) -> Option<(String, bool)> {
    let plain = plain(text);
    let (day, rest) = cut(&plain, 6);
    let shaped = plain.len() == 11
        && day.bytes().all(|b| b.is_ascii_digit())
        && rest.bytes().all(|b| b.is_ascii_alphanumeric());
    shaped.then(|| (dashed(&plain), is_batch_number(&plain)))
}
