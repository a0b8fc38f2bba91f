//! A book of many years in a browser: put into the storage past the app, opened from its lines, then from its bundle.

use crate::browser::Browser;
use serde_json::{Value, json};
use std::time::Duration;

/// Lines into the storage, each under the id in it.
const PUT: &str = r#"
const [lines, done] = arguments;
const open = indexedDB.open("potside", 1);
open.onupgradeneeded = () => open.result.createObjectStore("entries");
open.onerror = () => done("not opened");
open.onsuccess = () => {
  const all = open.result.transaction("entries", "readwrite");
  for (const [id, line] of lines) all.objectStore("entries").put(line, id);
  all.oncomplete = () => { open.result.close(); done(""); };
  all.onabort = () => done("not stored");
};
"#;

/// Puts them there, with the page at the app's address but the app not running.
pub(crate) async fn put(b: &Browser, lines: &[String]) {
    for some in lines.chunks(2_000) {
        let pairs: Vec<Value> = some.iter().map(|line| json!([key(line), line])).collect();
        let said = b.client.execute_async(PUT, vec![json!(pairs)]).await.unwrap();
        assert_eq!(said, "", "lines are stored");
    }
}

pub(crate) fn key(line: &str) -> &str {
    line.split('"').nth(5).expect("a line has its id")
}

/// Waits until the bundle is kept, or is thrown away.
pub(crate) async fn bundle(b: &Browser, kept: bool, seconds: u32) {
    for _ in 0..seconds * 5 {
        let script = "return localStorage.getItem('potside-bundle') !== null";
        if b.client.execute(script, vec![]).await.unwrap() == kept {
            return;
        }
        tokio::time::sleep(Duration::from_millis(200)).await;
    }
    panic!("the bundle: {}", if kept { "not kept" } else { "not thrown away" });
}
