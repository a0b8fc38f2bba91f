//! Storage in a real browser: what is acknowledged is there, and every failure is said.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::expect_used, clippy::indexing_slicing)]

#[path = "common/page.rs"]
mod page;

use page::{js, until, wait};
use potside::book::{Act, Id, Journal, Store, StoreError};
use potside::keep::{self, Database, Prefs, Theme, Which};
use potside::quantity::{Locale, MassUnit};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

fn pair(id: &str, line: &str) -> (String, String) {
    (id.to_owned(), line.to_owned())
}

/// A database that no earlier run of this test has left.
async fn fresh(name: &str) -> Database {
    let database = Database::new(name);
    database.delete().await.expect("a test database can be deleted");
    database
}

/// Runs `body` with a property of `object` (a script) replaced, and puts it back.
async fn with<T>(object: &str, property: &str, descriptor: &str, body: impl Future<Output = T>) -> T {
    js(&format!(
        "const o = {object}; window.was = Object.getOwnPropertyDescriptor(o, '{property}'); \
         Object.defineProperty(o, '{property}', {{ configurable: true, ...{descriptor} }})"
    ));
    let out = body.await;
    js(&format!(
        "const o = {object}; delete o.{property}; if (window.was) Object.defineProperty(o, '{property}', window.was)"
    ));
    out
}

#[wasm_bindgen_test]
async fn lines_come_back_after_the_database_is_opened_anew() {
    let first = fresh("test-append").await;
    assert_eq!(first.load().await, Ok(vec![]));
    first.append(&[pair("a", "one"), pair("b", "zwei ¾")]).await.expect("stored");
    first.append(&[pair("c", "three")]).await.expect("stored");
    // A try whose answer was lost is made again.
    first.append(&[pair("c", "three")]).await.expect("stored");
    let second = Database::new("test-append");
    assert_eq!(second.load().await, Ok(["one", "zwei ¾", "three"].map(String::from).to_vec()));
}

#[wasm_bindgen_test]
async fn transactions_are_strict() {
    let database = fresh("test-strict").await;
    js("window.asked = []; window.real = IDBDatabase.prototype.transaction");
    let spy = "{ value: function(...a) { window.asked.push(a[1] + ' ' + a[2].durability); return window.real.apply(this, a) } }";
    with("IDBDatabase.prototype", "transaction", spy, database.append(&[pair("a", "one")]))
        .await
        .expect("stored");
    assert_eq!(js("return window.asked.join()").as_string().as_deref(), Some("readwrite strict"));
}

/// One begun ahead of its lines carries them, and one that nothing came for is no hindrance to what comes later.
#[wasm_bindgen_test]
async fn a_transaction_can_be_begun_ahead_of_its_lines() {
    let database = fresh("test-ahead").await;
    js("window.asked = 0; window.real = IDBDatabase.prototype.transaction");
    let spy = "{ value: function(...a) { window.asked += 1; return window.real.apply(this, a) } }";
    let stored = with("IDBDatabase.prototype", "transaction", spy, async {
        database.append(&[pair("a", "one")]).await?;
        database.expect(true);
        database.append(&[pair("b", "two")]).await
    });
    stored.await.expect("stored");
    assert_eq!(js("return window.asked").as_f64(), Some(2.0), "one for each line");
    database.expect(true);
    database.expect(false);
    wait("return new Promise((done) => setTimeout(done, 20))").await;
    database.append(&[pair("c", "three")]).await.expect("stored");
    assert_eq!(database.load().await.map(|lines| lines.len()), Ok(3));
}

#[wasm_bindgen_test]
async fn own_and_demo_are_apart_and_the_demo_can_be_left() {
    keep::leave_demo().await.expect("left");
    let own = keep::load(Which::Own).await.expect("loaded").len();
    keep::append(Which::Demo, vec![pair("demo-1", "demo line")]).await.expect("stored");
    keep::append(Which::Own, vec![pair("own-1", "own line")]).await.expect("stored");
    assert_eq!(keep::load(Which::Demo).await, Ok(vec!["demo line".to_owned()]));
    let lines = keep::load(Which::Own).await.expect("loaded");
    assert!(lines.contains(&"own line".to_owned()) && !lines.contains(&"demo line".to_owned()));
    keep::leave_demo().await.expect("left");
    assert_eq!(keep::load(Which::Demo).await, Ok(vec![]));
    assert!(keep::load(Which::Own).await.expect("loaded").len() >= own.max(1));
}

#[wasm_bindgen_test]
async fn a_full_disk_keeps_nothing_of_the_append() {
    let database = fresh("test-full").await;
    database.append(&[pair("a", "kept")]).await.expect("stored");
    js("window.n = 0; window.real = IDBObjectStore.prototype.put");
    let full = "{ value: function(...a) { if (++window.n == 2) throw new DOMException('no', 'QuotaExceededError'); return window.real.apply(this, a) } }";
    let lines = [pair("b", "first"), pair("c", "second")];
    let outcome = with("IDBObjectStore.prototype", "put", full, database.append(&lines)).await;
    assert_eq!(outcome, Err(StoreError::Full));
    assert_eq!(database.load().await, Ok(vec!["kept".to_owned()]));
    database.append(&lines).await.expect("stored");
    assert_eq!(database.load().await.map(|l| l.len()), Ok(3));
}

#[wasm_bindgen_test]
async fn an_aborted_transaction_is_not_acknowledged() {
    let database = fresh("test-abort").await;
    js("window.real = IDBObjectStore.prototype.put");
    let abort = "{ value: function(...a) { const t = this.transaction; const r = window.real.apply(this, a); t.abort(); return r } }";
    let outcome = with("IDBObjectStore.prototype", "put", abort, database.append(&[pair("a", "one")])).await;
    assert!(matches!(outcome, Err(StoreError::Failed(_))), "{outcome:?}");
    assert_eq!(database.load().await, Ok(vec![]));
}

#[wasm_bindgen_test]
async fn storage_denied_or_absent_is_said() {
    for getter in [
        "{ get() { throw new DOMException('no', 'SecurityError') } }",
        "{ get() { return null } }",
        "{ get() { return undefined } }",
    ] {
        let database = Database::new("test-denied");
        let loaded = with("window", "indexedDB", getter, database.load()).await;
        assert_eq!(loaded, Err(StoreError::Denied), "{getter}");
        let appended = with("window", "indexedDB", getter, database.append(&[pair("a", "one")])).await;
        assert_eq!(appended, Err(StoreError::Denied), "{getter}");
    }
}

#[wasm_bindgen_test]
async fn another_tab_may_delete_and_this_one_goes_on() {
    let mine = fresh("test-let-go").await;
    mine.append(&[pair("a", "one")]).await.expect("stored");
    Database::new("test-let-go").delete().await.expect("deleted");
    // Alone it would look like the whole book.
    assert_eq!(mine.append(&[pair("b", "two")]).await, Err(StoreError::Cleared));
    assert_eq!(mine.append(&[pair("b", "two")]).await, Err(StoreError::Cleared), "nor is it later");
    assert!(mine.is_gone() && !mine.is_sure());
    // To look at what is left is not to know that it is all.
    assert_eq!(mine.load().await, Ok(vec![]));
    assert_eq!(mine.append(&[pair("b", "two")]).await, Err(StoreError::Cleared));
    // Whoever opens it anew as a book knows what is there.
    mine.read(1, &mut |_| true).await.expect("read");
    mine.append(&[pair("b", "two")]).await.expect("stored");
    assert_eq!(mine.load().await, Ok(vec!["two".to_owned()]));
    // One that is deleted here is as one that never was.
    mine.delete().await.expect("deleted");
    mine.append(&[pair("c", "three")]).await.expect("stored");
    assert!(!mine.is_gone());
}

#[wasm_bindgen_test]
async fn a_tab_that_does_not_let_go_is_said() {
    let database = fresh("test-blocked").await;
    wait("return new Promise(done => { const r = indexedDB.open('test-blocked', 1); r.onsuccess = () => { window.held = r.result; done() } })").await;
    assert_eq!(database.delete().await, Err(StoreError::Blocked));
    js("window.held.close()");
    // One that only takes a moment to let go of it holds up nobody.
    let database = fresh("test-lets-go").await;
    database.append(&[pair("a", "one")]).await.expect("stored");
    wait("return new Promise(done => { const r = indexedDB.open('test-lets-go', 1); r.onsuccess = () => { const db = r.result; db.onversionchange = () => setTimeout(() => db.close(), 300); done() } })").await;
    assert_eq!(database.delete().await, Ok(()));
    assert_eq!(database.load().await, Ok(vec![]));
}

#[wasm_bindgen_test]
async fn a_newer_layout_is_left_alone() {
    let database = fresh("test-newer").await;
    wait("return new Promise(done => { const r = indexedDB.open('test-newer', 2); r.onupgradeneeded = () => r.result.createObjectStore('later'); r.onsuccess = () => { r.result.close(); done() } })").await;
    assert_eq!(database.load().await, Err(StoreError::Newer));
    assert_eq!(database.append(&[pair("a", "one")]).await, Err(StoreError::Newer));
}

#[wasm_bindgen_test]
async fn a_foreign_value_does_not_hide_the_lines() {
    let database = fresh("test-foreign").await;
    database.append(&[pair("a", "one")]).await.expect("stored");
    wait("return new Promise(done => { const r = indexedDB.open('test-foreign', 1); r.onsuccess = () => { const t = r.result.transaction('entries', 'readwrite'); t.objectStore('entries').put({ odd: 1 }, 'z'); t.oncomplete = () => { r.result.close(); done() } } })").await;
    let lines = database.load().await.expect("loaded");
    assert_eq!((lines.len(), lines[0].as_str()), (2, "one"));
}

#[wasm_bindgen_test]
async fn other_tabs_hear_what_was_stored_and_are_heard() {
    let heard = Rc::new(RefCell::new(Vec::new()));
    let into = Rc::clone(&heard);
    keep::listen(Which::Demo, move |lines| into.borrow_mut().extend(lines));
    js(
        "window.there = new BroadcastChannel('potside-demo'); window.got = []; window.there.onmessage = e => window.got.push(e.data)",
    );
    keep::append(Which::Demo, vec![pair("t", "told")]).await.expect("stored");
    keep::tell(Which::Demo, &[pair("t", "told")]);
    js(
        "window.there.postMessage('not JSON'); window.there.postMessage({}); window.there.postMessage('[\"said\"]')",
    );
    let got = || js("return window.got.length > 0").is_truthy();
    until("both to hear", || got() && !heard.borrow().is_empty()).await;
    assert_eq!(js("return window.got.join()").as_string().as_deref(), Some("[\"told\"]"));
    assert_eq!(*heard.borrow(), ["said"]);
    js("window.there.close()");
    keep::leave_demo().await.expect("left");
}

fn item(key: &str) -> Option<String> {
    js(&format!("return localStorage.getItem('{key}')")).as_string()
}

#[wasm_bindgen_test]
async fn preferences_come_back_and_what_cannot_be_read_is_not_overwritten() {
    js("localStorage.clear()");
    let mut prefs = Prefs::load();
    assert_eq!(prefs, Prefs::default());
    prefs.theme = Theme::Dark;
    prefs.workshop = Which::Demo;
    prefs.sound = false;
    assert!(prefs.save());
    assert_eq!(Prefs::load(), prefs);
    // A field that is not there is at its default.
    js("localStorage.setItem('potside.prefs', '{\"theme\":\"Light\"}')");
    let mut light = Prefs::default();
    light.theme = Theme::Light;
    assert_eq!(Prefs::load(), light);
    js("localStorage.setItem('potside.prefs', '{broken')");
    assert_eq!(Prefs::load(), Prefs::default());
    assert_eq!(item("potside.prefs").as_deref(), Some("{broken"));
    assert!(prefs.save());
    assert_eq!(Prefs::load(), prefs);
    // To the letter: it may be mended by hand.
    assert_eq!(item("potside.prefs.unreadable").as_deref(), Some("{broken"));
}

#[wasm_bindgen_test]
async fn the_browser_s_language_gives_the_defaults() {
    let cases = [
        ("en-US", Locale::Point, MassUnit::Ounce),
        ("en-GB", Locale::Point, MassUnit::Gram),
        ("de-DE", Locale::Comma, MassUnit::Gram),
        // What WebKitGTK says on a system with no language set is no language at all.
        ("C", Locale::Point, MassUnit::Gram),
        ("", Locale::Point, MassUnit::Gram),
    ];
    for (language, locale, mass) in cases {
        let body = async {
            let usual = Prefs::default();
            assert_eq!((usual.locale(), usual.mass), (locale, mass), "{language}");
        };
        with("navigator", "language", &format!("{{ get() {{ return '{language}' }} }}"), body).await;
    }
}

/// The browser takes long for the first answer: it is asked when a number is to be shown, and once.
#[wasm_bindgen_test]
async fn how_numbers_are_written_is_asked_when_it_is_wanted() {
    let asked = || js("return String(window.halves ?? 0)").as_string();
    let counted = "{ value() { window.halves = (window.halves ?? 0) + 1; return '0,5' } }";
    with("Number.prototype", "toLocaleString", counted, async {
        js("localStorage.clear()");
        let prefs = Prefs::load();
        assert_eq!(asked().as_deref(), Some("0"));
        assert_eq!((prefs.locale(), prefs.locale()), (Locale::Comma, Locale::Comma));
        assert_eq!(asked().as_deref(), Some("1"));
        assert!(prefs.save());
        assert_eq!(Prefs::load().locale(), Locale::Comma);
        assert_eq!(asked().as_deref(), Some("1"), "what is kept is not asked");
    })
    .await;
}

#[wasm_bindgen_test]
async fn preferences_live_without_storage() {
    for getter in ["{ get() { throw new DOMException('no', 'SecurityError') } }", "{ get() { return null } }"]
    {
        let body = async {
            assert_eq!(Prefs::load(), Prefs::default());
            assert!(!Prefs::load().save());
            assert_eq!(keep::device(), keep::device());
        };
        with("window", "localStorage", getter, body).await;
    }
    let full = "{ value() { throw new DOMException('no', 'QuotaExceededError') } }";
    with("Storage.prototype", "setItem", full, async { assert!(!Prefs::default().save()) }).await;
}

#[wasm_bindgen_test]
async fn the_page_has_a_clock_chance_and_room() {
    assert!(keep::now() > 1_700_000_000_000, "a time after 2023");
    let draws: std::collections::BTreeSet<u32> = (0..64).map(|_| keep::random()).collect();
    assert!(draws.len() > 60, "chance hardly repeats in 64 draws of 2³²");
    assert!(keep::device().bytes().all(|b| b.is_ascii_alphanumeric()));
    let room = keep::room().await.expect("this browser says");
    assert!(room.used <= room.whole && room.whole > 0.0);
    assert!(keep::persist().await.is_some());
    let done = Rc::new(RefCell::new(false));
    let flag = Rc::clone(&done);
    keep::after(10, move || *flag.borrow_mut() = true);
    assert!(!*done.borrow());
    until("what is done after a moment", || *done.borrow()).await;
}

/// A copy that was put off while the clock was ten years ahead is asked for again.
#[wasm_bindgen_test]
fn a_copy_is_put_off_for_a_day_and_not_for_years() {
    const DAY: u64 = 24 * 60 * 60_000;
    let mut journal = Journal::open(Vec::new(), "tablet");
    journal.take(journal.entry(Act::Forgotten { customer: Id("c".to_owned()) }, DAY, 7));
    let now = 100 * DAY;
    let mut prefs = Prefs::default();
    for (later, asked) in
        [(0, true), (now, true), (now + 1, false), (now + DAY + 60_000, false), (now + 2 * DAY + 1, true)]
    {
        prefs.later = later;
        assert_eq!(prefs.copy_due(&journal, now).is_some(), asked, "{later}");
    }
}
