//! The browser's local storage: small texts by key. Where it is denied nothing is kept and nothing fails.

use gloo_storage::{LocalStorage, Storage};

/// gloo-storage panics where this page may not use local storage, so it is asked first.
pub(super) fn allowed() -> bool {
    web_sys::window().is_some_and(|w| matches!(w.local_storage(), Ok(Some(_))))
}

/// What is kept under a key in this browser, as text.
pub fn kept(key: &str) -> Option<String> {
    if allowed() { LocalStorage::raw().get_item(key).ok()? } else { None }
}

/// Keeps text under a key; false where this browser does not.
pub fn keep(key: &str, text: &str) -> bool {
    allowed() && LocalStorage::raw().set_item(key, text).is_ok()
}

/// Keeps nothing under a key any more.
pub fn forget(key: &str) {
    if allowed() {
        LocalStorage::delete(key);
    }
}

/// The keys that begin so.
pub fn keys(head: &str) -> Vec<String> {
    if !allowed() {
        return Vec::new();
    }
    let storage = LocalStorage::raw();
    let keys = (0..storage.length().unwrap_or_default()).filter_map(|n| storage.key(n).ok()?);
    keys.filter(|key| key.starts_with(head)).collect()
}
