//! Days and times as the browser writes them.

use super::page::now;
use crate::day::{Day, Zone};
use js_sys::{Array, Date, Function, Intl, Object, Reflect};
use std::cell::RefCell;
use wasm_bindgen::JsValue;

/// How a day or a time is written.
#[derive(Clone, Copy)]
enum Form {
    Weekday,
    WeekdayWithYear,
    Day,
    Time,
}

/// A day is the same wherever it is read, so it is written as the day of its noon at Greenwich.
const GREENWICH: (&str, &str) = ("timeZone", "UTC");

impl Form {
    const fn parts(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Self::Weekday => &[GREENWICH, ("weekday", "long"), ("day", "numeric"), ("month", "short")],
            Self::WeekdayWithYear => {
                &[GREENWICH, ("weekday", "long"), ("day", "numeric"), ("month", "short"), ("year", "numeric")]
            }
            Self::Day => &[GREENWICH, ("day", "numeric"), ("month", "short"), ("year", "numeric")],
            Self::Time => &[("hour", "numeric"), ("minute", "2-digit")],
        }
    }
}

thread_local! {
    /// The browser's function for each form, made once: making one costs as much as a whole screen of text.
    static WRITERS: RefCell<[Option<Function>; 4]> = const { RefCell::new([None, None, None, None]) };
}

/// The clock on the wall where this device stands.
pub const ZONE: Zone = Zone(wall);

fn wall(at: u64) -> u64 {
    // A whole number of minutes; not a number, and so none, of times that no calendar has.
    let behind = date(at).get_timezone_offset() as i64 * 60_000;
    at.saturating_add_signed(-behind)
}

/// "Thursday 3 Dec", with the year where it is not this one.
pub fn weekday(day: Day) -> String {
    let this_year = day.date().0 == today().date().0;
    written(day.noon(), if this_year { Form::Weekday } else { Form::WeekdayWithYear })
}

/// The day with its year, for what is kept or printed: "3 Dec 2025".
pub fn day(day: Day) -> String {
    written(day.noon(), Form::Day)
}

/// The time of day on this device: "14:32" or "2:32 PM".
pub fn time(at: u64) -> String {
    written(at, Form::Time)
}

/// The time of day of what was done on this day; none where the clock here shows it on another, as on a journey.
pub fn time_on(day: Day, at: u64) -> Option<String> {
    (ZONE.day(at) == day).then(|| time(at))
}

/// Day and time of day: "3 Dec 2025, 14:32".
pub fn when(at: u64) -> String {
    [day(ZONE.day(at)), time(at)].join(", ")
}

/// Today on this device.
pub fn today() -> Day {
    ZONE.day(now())
}

/// Today on this device for a file's name: "2025-12-03".
pub fn file_day() -> String {
    today().to_string()
}

fn date(at: u64) -> Date {
    Date::new(&JsValue::from_f64(at as f64))
}

fn written(at: u64, form: Form) -> String {
    let writer = WRITERS.with_borrow_mut(|all| {
        let place = all.get_mut(form as usize)?;
        Some(place.get_or_insert_with(|| writer(form)).clone())
    });
    let text = writer.and_then(|w| w.call1(&JsValue::UNDEFINED, &date(at)).ok());
    text.and_then(|t| t.as_string()).unwrap_or_default()
}

/// The app speaks English, so a date does: in the device's own kind of English, or else the British.
fn writer(form: Form) -> Function {
    let options = Object::new();
    for (key, value) in form.parts() {
        // Fails only for an object that is sealed.
        let _ = Reflect::set(&options, &(*key).into(), &(*value).into());
    }
    let language = web_sys::window().and_then(|w| w.navigator().language()).unwrap_or_default();
    let english = if language.starts_with("en") { language.as_str() } else { "en-GB" };
    Intl::DateTimeFormat::new(&Array::of1(&english.into()), &options).format()
}
