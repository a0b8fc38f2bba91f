//! What this device prefers, and its name. Lost or unreadable, nothing of the book is touched.

use super::local::{allowed, keep, kept};
use super::page::random;
use super::workshop::Which;
use crate::book::{Journal, Reminder};
use crate::day::DAY;
use crate::quantity::{Locale, MassUnit, Temperature, TemperatureUnit};
use crate::wire::{self, Flaws, Json, Wire, get_or, put_field, wire_enum};
use js_sys::{Function, Object, Reflect};
use std::cell::{OnceCell, RefCell};
use wasm_bindgen::{JsCast, JsValue};

const PREFS: &str = "potside.prefs";
/// Where preferences that could not be read are put when new ones are kept.
const UNREADABLE: &str = "potside.prefs.unreadable";
const DEVICE: &str = "potside.device";

/// Light or dark.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Theme {
    /// As the device is.
    #[default]
    Device,
    Light,
    Dark,
}

wire_enum!(Theme { Device, Light, Dark });

/// The hand one works with: the rooms stand along the edge that its thumb reaches.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Hand {
    #[default]
    Right,
    Left,
}

wire_enum!(Hand { Right, Left });

/// Preferences of this device; they are not part of the book.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Prefs {
    /// Found when it is first asked for.
    locale: OnceCell<Locale>,
    /// Shown first.
    pub mass: MassUnit,
    pub temperature: TemperatureUnit,
    pub theme: Theme,
    pub hand: Hand,
    pub workshop: Which,
    /// A sound when a gate is reached or a timer ends.
    pub sound: bool,
    /// How warm the room is, as typed, and when (milliseconds since 1970).
    pub room: Option<Temperature>,
    pub room_at: u64,
    /// When the last copy of the book was given out, milliseconds since 1970; zero: never.
    pub copied: u64,
    /// A copy is not asked for before this, milliseconds since 1970.
    pub later: u64,
    /// A copy is asked for after so many days, so many pours; zero: not.
    pub remind_days: u32,
    pub remind_pours: u32,
}

/// A room typed longer ago is not today's: sixteen hours, in milliseconds.
const TODAY: u64 = 16 * 60 * 60_000;

impl Default for Prefs {
    /// As the browser's language has it: ounces and °F first in the United States.
    fn default() -> Self {
        Self::usual(&language())
    }
}

fn language() -> String {
    web_sys::window().and_then(|w| w.navigator().language()).unwrap_or_default()
}

/// The first time a page asks this, the browser loads what it knows of languages, which takes longer than all else at the
/// start: so it is asked only where nothing is kept and when a number is shown. src/boot.js asks it before that, while the
/// module is on its way, or on a new device once the first screen is there.
fn usual_locale() -> Locale {
    let comma = half(&language()).is_some_and(|half| half.contains(','));
    if comma { Locale::Comma } else { Locale::Point }
}

impl Prefs {
    fn usual(language: &str) -> Self {
        let us = language.ends_with("-US");
        Self {
            locale: OnceCell::new(),
            mass: if us { MassUnit::Ounce } else { MassUnit::Gram },
            temperature: if us { TemperatureUnit::Fahrenheit } else { TemperatureUnit::Celsius },
            theme: Theme::default(),
            hand: Hand::default(),
            workshop: Which::default(),
            sound: true,
            room: None,
            room_at: 0,
            copied: 0,
            later: 0,
            remind_days: Reminder::default().days,
            remind_pours: Reminder::default().pours,
        }
    }
}

/// A half as this language writes it; nothing where the browser gives what is no language: WebKitGTK says "C" on a system
/// that has none set, and asking it to write in that throws.
fn half(language: &str) -> Option<String> {
    let number = JsValue::from_f64(0.5);
    let write = Reflect::get(&Object::get_prototype_of(&number), &"toLocaleString".into()).ok()?;
    write.dyn_into::<Function>().ok()?.call1(&number, &language.into()).ok()?.as_string()
}

impl Wire for Prefs {
    fn put(&self, out: &mut String) {
        out.push('{');
        put_field!(out, locale, &self.locale());
        put_field!(out, mass, &self.mass);
        put_field!(out, temperature, &self.temperature);
        put_field!(out, theme, &self.theme);
        put_field!(out, hand, &self.hand);
        put_field!(out, workshop, &self.workshop);
        put_field!(out, sound, &self.sound);
        put_field!(out, room, &self.room);
        put_field!(out, room_at, &self.room_at);
        put_field!(out, copied, &self.copied);
        put_field!(out, later, &self.later);
        put_field!(out, remind_days, &self.remind_days);
        put_field!(out, remind_pours, &self.remind_pours);
        out.push('}');
    }
    /// What is not there is as by default.
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        let kept = json.field("locale", flaws);
        let usual = Self::usual(&language());
        Self {
            locale: match kept {
                Json::Nothing => usual.locale,
                kept => Locale::get(kept, flaws).into(),
            },
            mass: get_or(json.field("mass", flaws), flaws, usual.mass),
            temperature: get_or(json.field("temperature", flaws), flaws, usual.temperature),
            theme: get_or(json.field("theme", flaws), flaws, usual.theme),
            hand: get_or(json.field("hand", flaws), flaws, usual.hand),
            workshop: get_or(json.field("workshop", flaws), flaws, usual.workshop),
            sound: get_or(json.field("sound", flaws), flaws, usual.sound),
            room: get_or(json.field("room", flaws), flaws, usual.room),
            room_at: get_or(json.field("room_at", flaws), flaws, usual.room_at),
            copied: get_or(json.field("copied", flaws), flaws, usual.copied),
            later: get_or(json.field("later", flaws), flaws, usual.later),
            remind_days: get_or(json.field("remind_days", flaws), flaws, usual.remind_days),
            remind_pours: get_or(json.field("remind_pours", flaws), flaws, usual.remind_pours),
        }
    }
}

impl Prefs {
    /// How numbers are written; as the browser's language has it where nothing was chosen.
    pub fn locale(&self) -> Locale {
        *self.locale.get_or_init(usual_locale)
    }

    pub fn set_locale(&mut self, locale: Locale) {
        self.locale = locale.into();
    }

    /// The sentence that asks for a copy of the book; none while none is due, or it is put off.
    pub fn copy_due(&self, journal: &Journal, now: u64) -> Option<String> {
        let reminder = Reminder { days: self.remind_days, pours: self.remind_pours };
        let copied = Some(self.copied).filter(|at| *at > 0);
        // Put off for a day, counted from a moment later than this one may be; not for years, where the clock was set
        // back since.
        let put_off = (now + 1..=now + 2 * DAY).contains(&self.later);
        reminder.said(copied, journal, now).filter(|_| self.workshop == Which::Own && !put_off)
    }

    /// How warm the room is, as far as it was typed today.
    pub fn room_at(&self, now: u64) -> Option<Temperature> {
        self.room.filter(|_| now.saturating_sub(self.room_at) < TODAY)
    }

    /// What was kept, or the defaults. What cannot be read is left as it is.
    pub fn load() -> Self {
        kept(PREFS).and_then(|text| wire::read(&text).ok()).unwrap_or_default()
    }

    /// Keeps them. False where this browser does not; then they hold until the page is left.
    pub fn save(&self) -> bool {
        match kept(PREFS) {
            Some(text) if wire::read::<Self>(&text).is_err() && !keep(UNREADABLE, &text) => false,
            _ => keep(PREFS, &wire::write(self)),
        }
    }
}

/// The name of this device in the book, made by chance at first; the same as long as the page lives.
pub fn device() -> String {
    thread_local! {
        static NAME: RefCell<Option<String>> = const { RefCell::new(None) };
    }
    NAME.with_borrow_mut(|name| name.get_or_insert_with(kept_name).clone())
}

/// True where this browser keeps texts and has none of Potside's: it was never opened here, or these texts were lost. Asked
/// before [`device`] is.
pub fn is_new() -> bool {
    allowed() && kept(DEVICE).is_none() && kept(PREFS).is_none()
}

fn kept_name() -> String {
    let named = kept(DEVICE).and_then(|text| wire::read::<String>(&text).ok());
    if let Some(name) =
        named.filter(|n| (1..=16).contains(&n.len()) && n.bytes().all(|b| b.is_ascii_alphanumeric()))
    {
        return name;
    }
    let name = short(u64::from(random()) << 32 | u64::from(random()));
    // Not kept, it is another device's name the next time: the book does not mind.
    keep(DEVICE, &wire::write(&name));
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
