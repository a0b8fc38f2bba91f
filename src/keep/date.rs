//! Days as the browser writes them.

use js_sys::{Array, Date, Intl, Object, Reflect};
use wasm_bindgen::JsValue;

/// A time, milliseconds since 1970, as its day on this device: "Thursday 3 Dec", with the year where it is not this one.
///
/// The app speaks English, so the day does: in the device's own kind of English, or else the British.
pub fn weekday(at: u64) -> String {
    let date = Date::new(&JsValue::from_f64(at as f64));
    let options = Object::new();
    let set = |key: &str, value: &str| {
        // Fails only for an object that is sealed.
        let _ = Reflect::set(&options, &key.into(), &value.into());
    };
    set("weekday", "long");
    set("day", "numeric");
    set("month", "short");
    if date.get_full_year() != Date::new_0().get_full_year() {
        set("year", "numeric");
    }
    let language = web_sys::window().and_then(|w| w.navigator().language()).unwrap_or_default();
    let english = if language.starts_with("en") { language.as_str() } else { "en-GB" };
    let format = Intl::DateTimeFormat::new(&Array::of1(&english.into()), &options);
    format.format().call1(&JsValue::UNDEFINED, &date).ok().and_then(|t| t.as_string()).unwrap_or_default()
}

/// Today on this device for a file's name: "2025-12-03".
pub fn file_day() -> String {
    let now = Date::new_0();
    format!("{}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date())
}
