//! A browser's storage that fails at every place where it can: nothing is acknowledged that is not there, all or none of an
//! append is kept, and what failed once can be done again.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::expect_used, clippy::indexing_slicing)]

#[path = "common/page.rs"]
mod page;

use page::{js, pause, until, wait};
use potside::bench::Ingredient;
use potside::book::{Act, Again, Id, Journal, Store, StoreError};
use potside::keep::{Database, Prefs};
use potside::wire;
use std::cell::RefCell;
use std::rc::Rc;
use std::task::Poll;
use wasm_bindgen_futures::spawn_local;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

async fn fresh(name: &str) -> Database {
    let database = Database::new(name);
    database.delete().await.expect("a test database can be deleted");
    database
}

fn lines(ids: &str) -> Vec<(String, String)> {
    ids.chars().map(|id| (id.to_string(), format!("line {id}"))).collect()
}

async fn kept(database: &Database) -> usize {
    database.load().await.expect("it can be read").len()
}

/// Replaces a function of a class: the body knows the real one as `real` and how often it was called as `n`.
fn patch(class: &str, name: &str, body: &str) {
    js(&format!(
        "const real = window.was ??= {class}.prototype.{name}; let n = 0; \
         {class}.prototype.{name} = function(...a) {{ n++; {body} }}"
    ));
}

fn mend(class: &str, name: &str) {
    js(&format!("{class}.prototype.{name} = window.was; delete window.was"));
}

/// At each put: no room, another exception, a request that fails by itself, the transaction aborted at once and later.
#[wasm_bindgen_test]
async fn a_failure_at_any_put_keeps_nothing_of_the_append() {
    const THROWN: [&str; 3] = [
        "new DOMException('no', 'QuotaExceededError')",
        "new DOMException('no', 'DataError')",
        "new TypeError('odd')",
    ];
    let mut hows: Vec<String> = THROWN.iter().map(|e| format!("throw {e}")).collect();
    // A second value under the same key: the browser's own error, which aborts the transaction.
    hows.push("real.apply(this, a); return this.add(...a)".to_owned());
    hows.push("const r = real.apply(this, a); this.transaction.abort(); return r".to_owned());
    for (how, number) in hows.iter().zip(0..) {
        for at in 1..=3 {
            let database = fresh(&format!("fault-put-{number}-{at}")).await;
            database.append(&lines("z")).await.expect("stored");
            patch(
                "IDBObjectStore",
                "put",
                &format!("if (n === {at}) {{ {how} }} return real.apply(this, a)"),
            );
            let outcome = database.append(&lines("abc")).await;
            mend("IDBObjectStore", "put");
            match (number, &outcome) {
                (0, Err(StoreError::Full)) | (1.., Err(StoreError::Failed(_))) => {}
                _ => panic!("{how} at put {at}: {outcome:?}"),
            }
            assert_eq!(kept(&database).await, 1, "{how} at put {at}");
            database.append(&lines("abc")).await.expect("tried again");
            assert_eq!(kept(&database).await, 4);
        }
    }
}

/// The transaction is aborted after all was put and before it is complete.
#[wasm_bindgen_test]
async fn a_transaction_aborted_at_its_end_is_not_acknowledged() {
    let database = fresh("fault-commit").await;
    database.append(&lines("z")).await.expect("stored");
    patch("IDBTransaction", "commit", "this.abort()");
    let outcome = database.append(&lines("ab")).await;
    mend("IDBTransaction", "commit");
    assert!(matches!(outcome, Err(StoreError::Failed(_))), "{outcome:?}");
    assert_eq!(kept(&database).await, 1);
    database.append(&lines("ab")).await.expect("tried again");
    assert_eq!(kept(&database).await, 3);
}

/// A transaction that does not end is not acknowledged, nor is what waits behind it; once it ends, both are.
#[wasm_bindgen_test]
async fn an_append_that_hangs_is_acknowledged_when_it_ends_and_not_before() {
    let database = Rc::new(fresh("fault-hang").await);
    database.append(&lines("z")).await.expect("stored");
    // Kept alive by one request after the other.
    let hang = "window.hung = true; const store = this.objectStore('entries'); \
        const again = () => { if (window.hung) store.count().onsuccess = again }; again()";
    patch("IDBTransaction", "commit", hang);
    let answers: [Rc<RefCell<Option<Result<(), StoreError>>>>; 2] = Default::default();
    for (answer, ids) in answers.iter().cloned().zip(["ab", "bc"]) {
        let database = Rc::clone(&database);
        spawn_local(async move {
            let outcome = database.append(&lines(ids)).await;
            answer.replace(Some(outcome));
        });
    }
    until("a transaction that hangs", || js("return window.hung === true").is_truthy()).await;
    pause(300).await;
    assert!(answers.iter().all(|a| a.borrow().is_none()), "no answer yet: {answers:?}");
    mend("IDBTransaction", "commit");
    js("window.hung = false");
    until("both answers", || answers.iter().all(|a| a.borrow().is_some())).await;
    assert!(answers.iter().all(|a| *a.borrow() == Some(Ok(()))), "{answers:?}");
    assert_eq!(kept(&database).await, 4);
}

/// The layout of a new database made half: the next opening makes it whole.
#[wasm_bindgen_test]
async fn a_layout_that_was_interrupted_is_made_again() {
    let aborted = "const s = real.apply(this, a); s.transaction.abort(); return s";
    let thrown = "throw new DOMException('no', 'QuotaExceededError')";
    for (number, how) in [aborted, thrown].into_iter().enumerate() {
        let database = fresh(&format!("fault-layout-{number}")).await;
        patch("IDBDatabase", "createObjectStore", how);
        let loaded = database.load().await;
        mend("IDBDatabase", "createObjectStore");
        assert!(matches!(loaded, Err(StoreError::Failed(_) | StoreError::Full)), "{how}: {loaded:?}");
        database.append(&lines("ab")).await.expect("the layout is made now");
        assert_eq!(kept(&database).await, 2, "{how}");
    }
}

/// The browser has closed the database behind our back: it is opened again, and where that one is closed by then too, it is
/// said. What is in it is looked at before anything is stored.
#[wasm_bindgen_test]
async fn a_database_that_was_closed_is_opened_once_more() {
    patch("IDBFactory", "open", "const r = real.apply(this, a); (window.opened ??= []).push(r); return r");
    let database = fresh("fault-closed").await;
    database.append(&lines("z")).await.expect("stored");
    for again in [false, true] {
        js("window.opened.at(-1).result.close()");
        let looked = js("return window.opened.length").as_f64();
        // As long as it is set, what is opened is closed at once.
        js(&format!("window.closes = {again}"));
        js("const r = IDBRequest.prototype, real = Object.getOwnPropertyDescriptor(r, 'result'); window.result = real;
            Object.defineProperty(r, 'result', { configurable: true, get() {
                const db = real.get.call(this);
                if (window.closes && db instanceof IDBDatabase) db.close();
                return db } })");
        let outcome = database.append(&lines("a")).await;
        js("Object.defineProperty(IDBRequest.prototype, 'result', window.result)");
        assert_eq!(js("return window.opened.length").as_f64(), looked.map(|n| n + 1.0), "opened once more");
        assert_eq!(outcome == Err(StoreError::Cleared), !again, "{outcome:?}");
        assert!(outcome.is_err(), "not acknowledged");
        assert!(!database.is_gone(), "it was only closed");
        let mut known = Some(lines("z"));
        let mut all = |_: usize, has: &dyn Fn(&str) -> bool| {
            known.take().map(|lines| lines.into_iter().filter(|(id, _)| !has(id)).collect())
        };
        assert_eq!(database.bring_back(&mut all).await, Ok(0), "nothing is missing");
        database.append(&lines("a")).await.expect("stored");
    }
    mend("IDBFactory", "open");
    assert_eq!(kept(&database).await, 2);
}

fn book(name: &str, number: u32) -> Journal {
    let mut journal = Journal::open(vec!["not an entry at all".to_owned()], name);
    for number in 0..number {
        let body = Ingredient { name: format!("Wax {number}"), ..Ingredient::default() };
        let act = Act::Ingredient { id: Id(format!("{name}-w{number}")), over: None, body };
        let entry = journal.entry(act, 1, number);
        journal.take(entry);
    }
    journal
}

fn pairs(journal: &Journal) -> Vec<(String, String)> {
    let mut all: Vec<_> = journal.entries().iter().map(|e| (e.id.0.clone(), e.to_line())).collect();
    all.extend(journal.damaged().iter().map(|(line, _)| ("odd".to_owned(), line.clone())));
    all
}

async fn brought_back(database: &Database, journal: &Journal) -> Result<usize, StoreError> {
    let mut again = Again::of(journal, database.is_gone());
    database.bring_back(&mut |_, has| again.next(journal, 100, has)).await
}

/// The database is deleted under a book that is open: nothing is acknowledged before all of the book is stored again, by
/// one tab or by two.
#[wasm_bindgen_test]
async fn what_is_deleted_under_an_open_book_is_stored_again() {
    let (here, there) = (fresh("fault-deleted").await, Database::new("fault-deleted"));
    let journal = book("tablet", 250);
    here.append(&pairs(&journal)).await.expect("stored");
    assert_eq!(kept(&there).await, 251);
    Database::new("fault-deleted").delete().await.expect("deleted");
    for database in [&here, &there] {
        assert_eq!(database.append(&lines("a")).await, Err(StoreError::Cleared));
    }
    // No room for the second piece: still nothing is acknowledged, and it is begun again.
    patch(
        "IDBObjectStore",
        "put",
        "if (n === 150) throw new DOMException('no', 'QuotaExceededError'); return real.apply(this, a)",
    );
    // To look at what is left, as for a copy, is not to know that it is all.
    assert_eq!(here.load().await.map(|lines| lines.len()), Ok(0));
    assert!(!here.is_sure());
    let outcome = brought_back(&here, &journal).await;
    mend("IDBObjectStore", "put");
    assert_eq!(outcome, Err(StoreError::Full));
    assert_eq!(here.append(&lines("a")).await, Err(StoreError::Cleared));
    let (one, two) = futures_of(brought_back(&here, &journal), brought_back(&there, &journal)).await;
    assert!(one.is_ok() && two.is_ok(), "{one:?} {two:?}");
    here.append(&lines("a")).await.expect("stored");
    there.append(&lines("b")).await.expect("stored");
    let mut read = Database::new("fault-deleted").load().await.expect("read");
    assert_eq!(read.len(), 253, "each line once");
    read.retain(|line| !line.starts_with("line "));
    let opened = Journal::open(read, "tablet");
    assert_eq!(opened.entries(), journal.entries());
    assert_eq!(opened.damaged(), journal.damaged());
    // It is cleared once more in the middle of it: then it is begun once more.
    Database::new("fault-deleted").delete().await.expect("deleted");
    let mut again = Again::of(&journal, true);
    let mut pieces = 0;
    let outcome = here
        .bring_back(&mut |_, has| {
            pieces += 1;
            if pieces == 2 {
                js("indexedDB.deleteDatabase('fault-deleted')");
            }
            again.next(&journal, 100, has)
        })
        .await;
    if outcome.is_ok() {
        // The deletion came after the last piece.
        assert_eq!(here.append(&lines("a")).await, Err(StoreError::Cleared));
    }
    assert!(brought_back(&here, &journal).await.is_ok());
    here.append(&lines("a")).await.expect("stored");
    assert_eq!(kept(&Database::new("fault-deleted")).await, 252);
}

/// Both at once.
async fn futures_of<A, B>(one: impl Future<Output = A>, two: impl Future<Output = B>) -> (A, B) {
    let (mut one, mut two) = (Box::pin(one), Box::pin(two));
    let (mut a, mut b) = (None, None);
    std::future::poll_fn(move |task| {
        if a.is_none()
            && let Poll::Ready(done) = one.as_mut().poll(task)
        {
            a = Some(done);
        }
        if b.is_none()
            && let Poll::Ready(done) = two.as_mut().poll(task)
        {
            b = Some(done);
        }
        if a.is_some() && b.is_some() { Poll::Ready(a.take().zip(b.take())) } else { Poll::Pending }
    })
    .await
    .expect("both are done")
}

/// What cannot be opened is said by what the browser says of it.
#[wasm_bindgen_test]
async fn a_database_that_cannot_be_opened_is_said() {
    for (number, (thrown, want)) in [
        ("new DOMException('no', 'SecurityError')", Some(StoreError::Denied)),
        ("new DOMException('no', 'QuotaExceededError')", Some(StoreError::Full)),
        ("new TypeError('odd')", None),
        ("'not even an error'", None),
    ]
    .into_iter()
    .enumerate()
    {
        let database = fresh(&format!("fault-open-{number}")).await;
        patch("IDBFactory", "open", &format!("throw {thrown}"));
        let (loaded, appended) = (database.load().await, database.append(&lines("a")).await);
        mend("IDBFactory", "open");
        let said = loaded.expect_err("it cannot be opened");
        assert!(want.is_none_or(|want| want == said), "{thrown}: {said:?}");
        assert_eq!(appended, Err(said));
        assert_eq!(kept(&database).await, 0, "and later it can");
    }
}

/// Keys and values that Potside never wrote: the entries are all there, the rest is set aside.
#[wasm_bindgen_test]
async fn foreign_keys_and_values_hide_no_entry() {
    let database = fresh("fault-foreign").await;
    let mut tablet = Journal::open(vec![], "tablet");
    for number in 0..3 {
        let body = Ingredient { name: format!("Wax {number}"), ..Ingredient::default() };
        let entry =
            tablet.entry(Act::Ingredient { id: Id(format!("w{number}")), over: None, body }, 1, number);
        tablet.take(entry.clone());
        database.append(&[(entry.id.0.clone(), entry.to_line())]).await.expect("stored");
    }
    wait(
        "return new Promise((done, bad) => { const r = indexedDB.open('fault-foreign', 1); r.onsuccess = () => { \
         const t = r.result.transaction('entries', 'readwrite'); const s = t.objectStore('entries'); \
         const ring = {}; ring.ring = ring; \
         const all = [[1, 'a number for a key'], [[1, 'x'], 'a list'], [new Date(0), 'a day'], ['', 'no key'], \
           ['zz1', 5], ['zz2', null], ['zz3', undefined], ['zz4', ring], ['zz5', 10n], ['zz6', new Blob(['x'])], \
           ['zz7', new Uint8Array(4)], ['\\ud800', '\\udfff broken signs']]; \
         for (const [key, value] of all) s.put(value, key); \
         t.oncomplete = () => { r.result.close(); done() }; t.onabort = () => bad(t.error) } })",
    )
    .await;
    let lines = database.load().await.expect("loaded");
    assert_eq!(lines.len(), 15);
    // Read in pieces, whatever key a piece ends at.
    for most in 1..=16 {
        let (mut pieces, mut all) = (0, Vec::new());
        let mut piece = |some: Vec<String>| {
            assert!(some.len() <= most);
            pieces += 1;
            all.extend(some);
            true
        };
        database.read(most as u32, &mut piece).await.expect("read");
        assert_eq!(all, lines, "{most} at once");
        assert_eq!(pieces, 15 / most + 1);
    }
    let mut once = 0;
    let mut first = |_| {
        once += 1;
        false
    };
    database.read(2, &mut first).await.expect("read");
    assert_eq!(once, 1, "nothing is read that is not asked for any more");
    let opened = Journal::open(lines, "tablet");
    assert_eq!(opened.entries(), tablet.entries());
    assert_eq!(opened.state(), tablet.state());
    assert!(!opened.read_only() && !opened.damaged().is_empty());
}

/// Preferences cut off anywhere, or with one byte changed: they are as they were, or some are as by default.
#[wasm_bindgen_test]
async fn damaged_preferences_stop_nothing() {
    let text = wire::write(&Prefs::default());
    let set = |text: &str| {
        let storage = web_sys::window().and_then(|w| w.local_storage().ok().flatten()).expect("it is there");
        storage.set_item("potside.prefs", text).expect("set");
    };
    for at in 0..text.len() {
        set(&text[..at]);
        assert_eq!(Prefs::load(), Prefs::default(), "cut at {at}");
        for put in ["\"", "9", "}", "null", "e999", "\u{0}"] {
            set(&[&text[..at], put, &text[at + 1..]].concat());
            let loaded = Prefs::load();
            assert_eq!(wire::read(&wire::write(&loaded)), Ok(loaded), "{put} at {at}");
        }
    }
    js("localStorage.clear()");
}
