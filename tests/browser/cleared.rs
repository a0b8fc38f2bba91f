//! A storage that the browser clears while the book is open.

use super::trouble::{FULL, GIVEN, LEAVES, copied, run};
use crate::browser::{Browser, Engine};
use crate::decade_shared::{Size, lines};
use crate::flow::scale;
use crate::kill::stored;
use crate::pour::serve;
use crate::years::{COUNT as COUNT_READS, bundle, doubt, key, opened, put, trust};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Deletes the journal and the photos, and waits until they are gone, as another page of the same origin would do it.
const DELETE: &str = "const done = arguments[0]; Promise.all(['potside', 'potside-photos'].map((name) => \
    new Promise((gone) => { indexedDB.deleteDatabase(name).onsuccess = gone }))).then(() => done(''))";

/// Leaves a thousand of the lines that were there at first, as where the page ended while they were stored again.
const HALF: &str = "const done = arguments[0]; localStorage.setItem('potside-rescue', '1'); \
    const open = indexedDB.open('potside', 1); open.onsuccess = () => { \
    const t = open.result.transaction('entries', 'readwrite'); const s = t.objectStore('entries'); \
    s.getAllKeys().onsuccess = (e) => e.target.result.filter((key) => key.startsWith('tablet-')) \
    .slice(1000).forEach((key) => s.delete(key)); \
    t.oncomplete = () => { open.result.close(); done('') } }";

const UNREGISTER: &str = "const done = arguments[0]; navigator.serviceWorker.getRegistrations() \
    .then((all) => Promise.all(all.map((one) => one.unregister()))).then(() => done(''))";

const CLEARED: &str = "The browser had cleared the storage of this page while it was open. The book was still in memory, and \
    all of it was stored again.";

/// Another page deletes the storage while the book is open: what was said to be saved is stored again with the next thing
/// done, and that is told.
#[tokio::test]
async fn what_the_browser_clears_under_an_open_book_is_stored_again() {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "cleared").await;
    b.size(1024, 768).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": GIVEN })).await.unwrap();
    b.open(&address).await;
    b.sees("From the formula to the poured candle").await;
    for name in ["First scale", "Second scale"] {
        scale(&b, name).await;
        b.saved().await;
    }
    let other = b.client.new_window(true).await.unwrap().handle;
    let app = b.client.window().await.unwrap();
    b.client.switch_to_window(other.clone()).await.unwrap();
    b.open(&format!("{address}manifest.webmanifest")).await;
    b.client.execute_async(DELETE, vec![]).await.unwrap();
    b.client.switch_to_window(app.clone()).await.unwrap();
    scale(&b, "Third scale").await;
    b.sees(CLEARED).await;
    b.saved().await;
    for (width, height) in [(1024, 768), (768, 1024), (390, 844)] {
        b.size(width, height).await;
        b.shot(&format!("cleared-{width}")).await;
    }
    b.size(1024, 768).await;
    assert!(!b.shows("could not be brought back").await, "there were no photos");
    assert_eq!(stored(&b).await.len(), 3);
    b.tap("Understood").await;
    b.waits("no notice", "return !document.querySelector('.told').innerText", vec![]).await;
    // A copy is made before anything is done: it has the whole book, and so has the storage then.
    b.client.switch_to_window(other).await.unwrap();
    b.client.execute_async(DELETE, vec![]).await.unwrap();
    b.client.switch_to_window(app).await.unwrap();
    let copy = copied(&b, "with 3 entries is among your downloads.").await;
    assert!(["First", "Second", "Third"].iter().all(|name| copy.contains(name)), "{copy}");
    b.sees(CLEARED).await;
    b.saved().await;
    assert_eq!(stored(&b).await.len(), 3);
    b.tap("Understood").await;
    // By the browser itself, and with no room for what is to be stored again.
    run(&b, FULL).await;
    let origin = address.trim_end_matches('/');
    b.cdp("Storage.clearDataForOrigin", json!({ "origin": origin, "storageTypes": "indexeddb" }))
        .await
        .unwrap();
    scale(&b, "Fourth scale").await;
    b.sees("The storage of this device is full. Free some space, then save again").await;
    assert_eq!(stored(&b).await.len(), 0);
    assert_eq!(run(&b, LEAVES).await, true, "leaving asks");
    assert!(!b.shows(CLEARED).await);
    run(&b, "window.mend()").await;
    b.saved().await;
    b.sees(CLEARED).await;
    assert_eq!(stored(&b).await.len(), 4);
    b.open("about:blank").await;
    b.open(&format!("{address}#bench")).await;
    for name in ["First scale", "Second scale", "Third scale", "Fourth scale"] {
        b.sees(name).await;
    }
    assert!(!b.shows("The browser had cleared").await, "it was told where it happened");
    b.end().await;
}

/// The same of a large book, most of which is in memory only as its bundle.
#[tokio::test]
async fn what_is_cleared_of_a_large_book_is_stored_again() {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "cleared-large").await;
    b.size(1024, 768).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": COUNT_READS })).await.unwrap();
    b.open(&format!("{address}manifest.webmanifest")).await;
    let lines = lines(Size { batches: 260, lots: 60, trials: 40 });
    put(&b, &lines).await;
    assert!(!opened(&b, &address).await, "there is no bundle yet");
    bundle(&b, true).await;
    let same = |kept: &BTreeMap<String, String>| lines.iter().all(|line| kept.get(key(line)) == Some(line));
    // At once, so that the lines are looked through while they are gone; and once that was done.
    for (number, looked_through) in [(1, false), (2, true)] {
        doubt(&b).await;
        assert!(opened(&b, &address).await, "it is opened from its bundle");
        if looked_through {
            trust(&b, "1").await;
        }
        b.client.execute_async(DELETE, vec![]).await.unwrap();
        scale(&b, &format!("Scale number {number}")).await;
        b.sees(CLEARED).await;
        b.saved().await;
        let kept = stored(&b).await;
        assert_eq!(kept.len(), lines.len() + number);
        assert!(same(&kept), "every line is as it was");
        b.room("desk").await;
        b.sees(&format!("Entries {}", lines.len() + number)).await;
    }
    // The page ended in the middle of it: the bundle has what was not stored yet. With its worker there the app would be
    // running at this address too.
    b.client.execute_async(UNREGISTER, vec![]).await.unwrap();
    b.open("about:blank").await;
    b.open(&format!("{address}manifest.webmanifest")).await;
    assert_eq!(b.client.execute_async(HALF, vec![]).await.unwrap(), "");
    assert!(stored(&b).await.len() < lines.len() - 1_000);
    assert!(opened(&b, &address).await, "it is opened from its bundle");
    b.sees(CLEARED).await;
    b.saved().await;
    let kept = stored(&b).await;
    assert_eq!(kept.len(), lines.len() + 2);
    assert!(same(&kept), "every line is as it was");
    assert_eq!(run(&b, "return localStorage.getItem('potside-rescue')").await, Value::Null);
    // Also without the bundle.
    run(&b, "localStorage.removeItem('potside-bundle')").await;
    assert!(!opened(&b, &address).await);
    b.room("desk").await;
    b.sees(&format!("Entries {}", lines.len() + 2)).await;
    b.end().await;
}
