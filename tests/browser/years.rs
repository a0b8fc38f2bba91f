//! A book of many years in a browser: put into the storage past the app, opened from its lines, then from its bundle.

use crate::browser::{Browser, PATIENCE};
use potside::book::Journal;
use potside::book::bundle::Tying;
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
pub(crate) async fn bundle(b: &Browser, kept: bool) {
    bundle_within(b, PATIENCE, kept).await;
}

/// The same of a book that is larger than any of the tests.
pub(crate) async fn bundle_within(b: &Browser, most: Duration, kept: bool) {
    let script = "return (localStorage.getItem('potside-bundle') !== null) === arguments[0]";
    let what = if kept { "a bundle to be kept" } else { "the bundle to be thrown away" };
    b.wait_within(most, what, script, vec![json!(kept)]).await;
}

/// Waits until the bundle is trusted so far; `1` once it was made of the lines, or compared with them.
pub(crate) async fn trust(b: &Browser, wanted: &str) {
    let script = "return localStorage.getItem('potside-bundle') === arguments[0]";
    b.waits(&format!("trust {wanted}"), script, vec![json!(wanted)]).await;
}

/// Lets the app know no more of the bundle that is there but that there is one: so it is seen when it was compared with the
/// lines, or another is made.
pub(crate) async fn doubt(b: &Browser) {
    b.client.execute("localStorage.setItem('potside-bundle', '2')", vec![]).await.unwrap();
}

/// Bytes as a bundle, with the page at the app's address but the app not running; `trust` as it stands beside it.
const KEEP: &str = r#"
const [trust, done] = arguments;
const all = Uint8Array.from(window.parts.join(""), (sign) => sign.charCodeAt(0));
const open = indexedDB.open("potside-bundle", 1);
open.onupgradeneeded = () => open.result.createObjectStore("bundle");
open.onerror = () => done("not opened");
open.onsuccess = () => {
  const kept = open.result.transaction("bundle", "readwrite");
  kept.objectStore("bundle").put(all, "bundle");
  kept.oncomplete = () => { open.result.close(); localStorage.setItem("potside-bundle", trust); done(""); };
  kept.onabort = () => done("not stored");
};
"#;

/// A bundle of these lines that another build of the app has made, kept as if the app had been updated since.
pub(crate) async fn put_old(b: &Browser, lines: &[String], trust: &str) {
    let journal = Journal::open(lines.to_vec(), "tablet");
    let tied =
        Tying::begin(&journal).and_then(|tying| tying.finish(&journal, "another build", journal.len()));
    b.client.execute("window.parts = []", vec![]).await.unwrap();
    for part in tied.expect("it can be tied up").chunks(1_000_000) {
        let part: String = part.iter().copied().map(char::from).collect();
        b.client.execute("window.parts.push(arguments[0])", vec![json!(part)]).await.unwrap();
    }
    assert_eq!(b.client.execute_async(KEEP, vec![json!(trust)]).await.unwrap(), "", "a bundle is kept");
}

/// Whether the bytes that are kept of a bundle hold a word; nothing where there are none.
const HOLDS: &str = r#"
const [word, done] = arguments;
const open = indexedDB.open("potside-bundle", 1);
open.onupgradeneeded = () => open.transaction.abort();
open.onerror = () => done(null);
open.onsuccess = () => {
  const got = open.result.transaction("bundle").objectStore("bundle").get("bundle");
  got.onsuccess = () => {
    open.result.close();
    done(got.result ? new TextDecoder("latin1").decode(got.result).includes(word) : null);
  };
};
"#;

pub(crate) async fn holds(b: &Browser, word: &str) -> Option<bool> {
    b.client.execute_async(HOLDS, vec![json!(word)]).await.unwrap().as_bool()
}

/// Counts the readings of all lines, before the page's own scripts run: more than a few, and from the first one on.
pub(crate) const COUNT: &str = "window.wholes = 0; const all = IDBObjectStore.prototype.getAll; \
    IDBObjectStore.prototype.getAll = function (...a) { if (a[0] === undefined && !(a[1] < 1000)) window.wholes++; \
    return all.apply(this, a) }";

/// Opens the book; true where it was from the bundle.
pub(crate) async fn opened(b: &Browser, address: &str) -> bool {
    b.open("about:blank").await;
    b.open(&format!("{address}#book")).await;
    b.sees("Past pours").await;
    b.client.execute("return window.wholes", vec![]).await.unwrap() == 0
}
