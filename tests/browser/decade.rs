//! A large book opens from its bundle as it opens from its lines; whatever is the matter with the bundle or the lines, what
//! is stored is what is shown.

use crate::browser::{Browser, Engine};
use crate::decade_shared::{Size, lines};
use crate::years::{COUNT, bundle, doubt, holds, key, opened, put, trust};
use potside::bench::Ingredient;
use potside::book::{Act, Entry, Id};
use potside::shelf::Customer;
use serde_json::json;

/// Runs in the page: something done to the storage, past the app.
async fn does(b: &Browser, database: &str, store: &str, what: &str) {
    let script = format!(
        "const done = arguments[0]; const open = indexedDB.open('{database}', 1); open.onerror = () => done('not opened'); \
         open.onsuccess = () => {{ const t = open.result.transaction('{store}', 'readwrite'); \
         const s = t.objectStore('{store}'); {what}; \
         t.oncomplete = () => {{ open.result.close(); done('') }}; t.onabort = () => done('aborted') }}"
    );
    assert_eq!(b.client.execute_async(&script, vec![]).await.unwrap(), "", "{what}");
}

fn ingredient(name: &str, clock: u64) -> String {
    let body = Ingredient { name: name.to_owned(), ..Ingredient::default() };
    elsewhere(Act::Ingredient { id: Id(format!("i-{clock}")), over: None, body }, clock)
}

fn elsewhere(act: Act, clock: u64) -> String {
    Entry { id: Id(format!("elsewhere-{clock:x}-1")), clock, at: 1, device: "elsewhere".to_owned(), act }
        .to_line()
}

pub(crate) async fn entries(b: &Browser, number: usize) {
    b.room("desk").await;
    b.sees(&format!("Entries {number}")).await;
}

#[tokio::test]
async fn a_large_book_opens_from_its_bundle_and_is_what_is_stored() {
    let host = crate::pour::serve("/");
    let b = Browser::start(Engine::Chromium, "decade").await;
    b.size(1024, 768).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": COUNT })).await.unwrap();
    let address = host.address();
    b.open(&format!("{address}manifest.webmanifest")).await;
    let lines = lines(Size { batches: 260, lots: 60, trials: 40 });
    put(&b, &lines).await;
    assert!(!opened(&b, &address).await, "there is no bundle yet");
    bundle(&b, true).await;
    assert!(opened(&b, &address).await, "it is opened from its bundle");
    entries(&b, lines.len()).await;

    // Of many candles that are done the first are shown, and all where they are asked for.
    b.room("bench/burn").await;
    let judged = lines.iter().filter(|line| line.contains(r#""Closed":"#)).count();
    let all = format!("Show all {judged}");
    b.sees(&all).await;
    let shown = "return document.querySelectorAll('[aria-labelledby=burn-closed] li').length";
    assert_eq!(b.client.execute(shown, vec![]).await.unwrap(), 30);
    b.tap(&all).await;
    b.waits("all candles", &format!("{shown} === {judged}"), vec![]).await;

    // What the stores say of a pour comes a moment after the rest.
    b.open("about:blank").await;
    b.open(&format!("{address}#pot")).await;
    b.sees("is past its best-before day").await;

    // What is done in it is there the next time, also to a batch that is tied up.
    b.room("book/history/tablet-b5").await;
    b.sees("The pour ended").await;
    b.sees("The pour began").await;
    b.room("book/batch/tablet-b5").await;
    b.tap("Go on with this pour").await;
    b.saved().await;
    assert!(opened(&b, &address).await);
    entries(&b, lines.len() + 1).await;
    b.room("pot").await;
    b.sees("Step").await;

    // What another tab or a copy has stored, under whatever key.
    put(&b, &[ingredient("Late arrival", 3)]).await;
    assert!(opened(&b, &address).await);
    entries(&b, lines.len() + 2).await;

    // A bundle that was changed is none.
    does(
        &b,
        "potside-bundle",
        "bundle",
        "s.get('bundle').onsuccess = e => { const all = e.target.result; all[all.length >> 1] ^= 4; s.put(all, 'bundle') }",
    )
    .await;
    doubt(&b).await;
    assert!(!opened(&b, &address).await, "it is not whole");
    entries(&b, lines.len() + 2).await;
    // It is made anew.
    trust(&b, "1").await;

    // A line that is gone is not shown from the bundle.
    let gone = key(lines.last().unwrap());
    does(&b, "potside", "entries", &format!("s.delete('{gone}')")).await;
    opened(&b, &address).await;
    bundle(&b, false).await;
    b.sees("Past pours").await;
    entries(&b, lines.len() + 1).await;
    bundle(&b, true).await;

    // A line that is damaged is set aside, and the book is no longer opened from a bundle.
    let bad = key(&lines[200]);
    does(
        &b,
        "potside",
        "entries",
        &format!(
            "s.get('{bad}').onsuccess = e => s.put(e.target.result.replace('\"at\":1', '\"at\":2'), '{bad}')"
        ),
    )
    .await;
    assert!(opened(&b, &address).await);
    b.sees("set aside").await;
    bundle(&b, false).await;
    assert!(!opened(&b, &address).await);
    b.sees("set aside").await;
    b.end().await;
}

/// Killed while the bundle is written: whatever is there of it then, the book is what is stored.
#[tokio::test]
async fn killed_while_the_bundle_is_written() {
    let outcome = crate::tear::outcome(&crate::pour::serve("/").address(), "tear", 5, u64::MAX).await;
    assert_eq!((outcome.kills, outcome.wrong), (5, 0));
}

/// Counts how often an empty workshop is shown that takes something in, before the page's own scripts run.
const EMPTY: &str = "window.empty = 0; new MutationObserver(() => { \
    if (document.querySelector('#room:not([aria-busy])')?.innerText.includes('From the formula to the poured candle')) \
    window.empty++ }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true })";

/// A browser may clear its small texts and keep the book: no empty workshop is open, in which something would be done
/// before the book is there.
#[tokio::test]
async fn a_book_is_opened_where_only_the_small_texts_were_lost() {
    let host = crate::pour::serve("/");
    let b = Browser::start(Engine::Chromium, "texts").await;
    let address = host.address();
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": EMPTY })).await.unwrap();
    // A device that is new: the empty workshop is there.
    b.open(&address).await;
    b.sees("From the formula to the poured candle").await;
    b.waits("the empty workshop to be open", "return window.empty > 0", vec![]).await;
    b.open(&format!("{address}manifest.webmanifest")).await;
    put(&b, &lines(Size { batches: 260, lots: 60, trials: 20 })).await;
    b.client.execute("localStorage.clear()", vec![]).await.unwrap();
    b.open(&address).await;
    b.sees("Late Orchard").await;
    let empty = b.client.execute("return window.empty", vec![]).await.unwrap();
    assert_eq!(empty, 0, "an empty workshop was open");
    b.end().await;
}

/// A customer who asks to be removed is gone from the bundle too: from its bytes at once, and from the one made after it.
#[tokio::test]
async fn a_removed_customer_is_in_no_bundle() {
    let host = crate::pour::serve("/");
    let b = Browser::start(Engine::Chromium, "removed").await;
    b.size(1024, 768).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": COUNT })).await.unwrap();
    let address = host.address();
    b.open(&format!("{address}manifest.webmanifest")).await;
    let mut lines = lines(Size { batches: 260, lots: 60, trials: 20 });
    let body = Customer { name: "Prudence Amberley".to_owned(), ..Customer::default() };
    lines.push(elsewhere(Act::Customer { id: Id("p-1".to_owned()), over: None, body }, 2_999));
    put(&b, &lines).await;
    opened(&b, &address).await;
    bundle(&b, true).await;
    assert_eq!(holds(&b, "Amberley").await, Some(true));
    assert!(opened(&b, &address).await, "it is opened from its bundle");
    b.room("shelf/customer/p-1").await;
    b.tap("Remove this person").await;
    b.tap("Remove for good").await;
    b.saved().await;
    bundle(&b, false).await;
    assert_eq!(holds(&b, "Amberley").await, None, "nothing is left of it");
    assert!(!opened(&b, &address).await, "there is no bundle");
    bundle(&b, true).await;
    assert_eq!(holds(&b, "Amberley").await, Some(false));
    assert!(opened(&b, &address).await);
    b.room("shelf/customer/p-1").await;
    assert!(!b.shows("Amberley").await);
    let kept = crate::kill::stored(&b).await;
    assert!(kept.len() == lines.len() + 1 && kept.values().all(|line| !line.contains("Amberley")));
    b.end().await;
}
