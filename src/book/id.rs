//! Names of things, unique across devices without a server.

use crate::wire::{Flaws, Json, Wire, put_text};
use std::fmt;

/// The device's name, its clock and a random number: `k3f9q2-1a-5c0ffee`. Letters, digits, `-` and `_`, at most 64.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Id(pub String);

/// The longest id that is read.
const LONGEST: usize = 64;

/// True for what may name a thing or a device.
pub(crate) fn is_name(text: &str) -> bool {
    (1..=LONGEST).contains(&text.len())
        && text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-' || b == b'_')
}

impl TryFrom<String> for Id {
    type Error = &'static str;
    fn try_from(text: String) -> Result<Self, Self::Error> {
        if is_name(&text) { Ok(Self(text)) } else { Err("not an id") }
    }
}

impl Wire for Id {
    fn put(&self, out: &mut String) {
        put_text(out, &self.0);
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        let text = json.text(flaws);
        if !is_name(text) {
            flaws.unlike();
        }
        Self(text.to_owned())
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}
