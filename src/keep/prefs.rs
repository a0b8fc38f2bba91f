//! What this device prefers, and its name. Lost or unreadable, nothing of the book is touched.

use super::page::random;
use super::workshop::Which;
use crate::quantity::{Locale, MassUnit, TemperatureUnit};
use gloo_storage::{LocalStorage, Storage, errors::StorageError};
use serde::{Deserialize, Serialize};
use std::cell::RefCell;

const PREFS: &str = "potside.prefs";
/// Where preferences that could not be read are put when new ones are kept.
const UNREADABLE: &str = "potside.prefs.unreadable";
const DEVICE: &str = "potside.device";

/// Light or dark.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, Serialize, Deserialize)]
pub enum Theme {
    /// As the device is.
    #[default]
    Device,
    Light,
    Dark,
}

/// The hand one works with: the rooms stand along the edge that its thumb reaches.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, Serialize, Deserialize)]
pub enum Hand {
    #[default]
    Right,
    Left,
}

/// Preferences of this device; they are not part of the book.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[serde(default)]
pub struct Prefs {
    pub locale: Locale,
    /// Shown first.
    pub mass: MassUnit,
    pub temperature: TemperatureUnit,
    pub theme: Theme,
    pub hand: Hand,
    pub workshop: Which,
    /// A sound when a gate is reached or a timer ends.
    pub sound: bool,
}

impl Default for Prefs {
    /// As the browser's language has it: ounces and °F first in the United States.
    fn default() -> Self {
        let language = web_sys::window().and_then(|w| w.navigator().language()).unwrap_or_default();
        let us = language.ends_with("-US");
        let half = String::from(js_sys::Number::from(0.5).to_locale_string(&language));
        Self {
            locale: if half.contains(',') { Locale::Comma } else { Locale::Point },
            mass: if us { MassUnit::Ounce } else { MassUnit::Gram },
            temperature: if us { TemperatureUnit::Fahrenheit } else { TemperatureUnit::Celsius },
            theme: Theme::default(),
            hand: Hand::default(),
            workshop: Which::default(),
            sound: true,
        }
    }
}

/// True where this page may use local storage; gloo-storage panics where it may not, so it is asked first.
fn allowed() -> bool {
    web_sys::window().is_some_and(|w| matches!(w.local_storage(), Ok(Some(_))))
}

impl Prefs {
    /// What was kept, or the defaults. What cannot be read is left as it is.
    pub fn load() -> Self {
        if allowed() { LocalStorage::get(PREFS).unwrap_or_default() } else { Self::default() }
    }

    /// Keeps them. False where this browser does not; then they hold until the page is left.
    pub fn save(&self) -> bool {
        if !allowed() {
            return false;
        }
        if let Err(StorageError::SerdeError(_)) = LocalStorage::get::<Self>(PREFS) {
            let text = LocalStorage::raw().get_item(PREFS).ok().flatten().unwrap_or_default();
            if LocalStorage::set(UNREADABLE, text).is_err() {
                return false;
            }
        }
        LocalStorage::set(PREFS, self).is_ok()
    }
}

/// The name of this device in the book, made by chance at first; the same as long as the page lives.
pub fn device() -> String {
    thread_local! {
        static NAME: RefCell<Option<String>> = const { RefCell::new(None) };
    }
    NAME.with_borrow_mut(|name| name.get_or_insert_with(kept_name).clone())
}

fn kept_name() -> String {
    let kept = if allowed() { LocalStorage::get::<String>(DEVICE).ok() } else { None };
    if let Some(name) =
        kept.filter(|n| (1..=16).contains(&n.len()) && n.bytes().all(|b| b.is_ascii_alphanumeric()))
    {
        return name;
    }
    let name = short(u64::from(random()) << 32 | u64::from(random()));
    if allowed() {
        // Not kept, it is another device's name the next time: the book does not mind.
        let _ = LocalStorage::set(DEVICE, &name);
    }
    name
}

/// Eight letters and digits, none of which are mistaken for another.
fn short(mut chance: u64) -> String {
    const SIGNS: &[u8; 32] = b"abcdefghjkmnpqrstuvwxyz023456789";
    let mut name = String::new();
    for _ in 0..8 {
        let sign = SIGNS.get((chance % 32) as usize).copied().unwrap_or(b'a');
        name.push(char::from(sign));
        chance /= 32;
    }
    name
}
