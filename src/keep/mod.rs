//! Storage in the browser: IndexedDB behind the `Store` trait, device preferences behind gloo-storage.
