//! Days and times as the browser writes them.

use crate::day::Day;
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

impl Form {
    const fn parts(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Self::Weekday => &[("weekday", "long"), ("day", "numeric"), ("month", "short")],
            Self::WeekdayWithYear => {
                &[("weekday", "long"), ("day", "numeric"), ("month", "short"), ("year", "numeric")]
            }
            Self::Day => &[("day", "numeric"), ("month", "short"), ("year", "numeric")],
            Self::Time => &[("hour", "numeric"), ("minute", "2-digit")],
        }
    }
}

thread_local! {
    /// The browser's function for each form, made once: making one costs as much as a whole screen of text.
    static WRITERS: RefCell<[Option<Function>; 4]> = const { RefCell::new([None, None, None, None]) };
}

/// A time, milliseconds since 1970, as its day on this device: "Thursday 3 Dec", with the year where it is not this one.
pub fn weekday(at: u64) -> String {
    let this_year = date(at).get_full_year() == Date::new_0().get_full_year();
    written(at, if this_year { Form::Weekday } else { Form::WeekdayWithYear })
}

/// The day with its year, for what is kept or printed: "3 Dec 2025".
pub fn day(at: u64) -> String {
    written(at, Form::Day)
}

/// The time of day on this device: "14:32" or "2:32 PM".
pub fn time(at: u64) -> String {
    written(at, Form::Time)
}

/// Day and time of day: "3 Dec 2025, 14:32".
pub fn when(at: u64) -> String {
    [day(at), time(at)].join(", ")
}

/// Today on this device.
pub fn today() -> Day {
    Day::read(&file_day()).unwrap_or(Day(0))
}

/// Today on this device for a file's name: "2025-12-03".
pub fn file_day() -> String {
    let now = Date::new_0();
    format!("{}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date())
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
