//! A storage that fails under the built app: what cannot be stored is said with its reason, stays on the screen, is tried
//! again, and is asked for on leaving, as is what was typed and not kept; where there is no storage at all that is said at once.

use crate::browser::{Browser, Engine};
use crate::flow::{demo, scale};
use crate::kill::stored;
use crate::pour::serve;
use serde_json::{Value, json};

/// Runs before the page's own scripts: counts how often the browser is asked to keep the storage for good.
const COUNT: &str = "window.asked = 0; const ask = StorageManager.prototype.persist; \
    StorageManager.prototype.persist = function () { window.asked++; return ask.apply(this) }";

/// True where leaving the page would ask.
pub(crate) const LEAVES: &str =
    "return !window.dispatchEvent(new Event('beforeunload', { cancelable: true }))";

/// From now on every put is refused for want of room.
pub(crate) const FULL: &str = "const put = IDBObjectStore.prototype.put; window.mend = () => { IDBObjectStore.prototype.put = put }; \
    IDBObjectStore.prototype.put = () => { throw new DOMException('no', 'QuotaExceededError') }";

/// From now on every transaction is aborted at its end.
const ABORT: &str = "const end = IDBTransaction.prototype.commit; window.mend = () => { IDBTransaction.prototype.commit = end }; \
    IDBTransaction.prototype.commit = function () { this.abort() }";

/// From now on no transaction ends: one request is made after the other.
const HANG: &str = "const end = IDBTransaction.prototype.commit; let hung = true; \
    window.mend = () => { hung = false; IDBTransaction.prototype.commit = end }; \
    IDBTransaction.prototype.commit = function () { const store = this.objectStore('entries'); \
    const again = () => { if (hung) store.count().onsuccess = again }; again() }";

/// Runs before the page's own scripts: keeps what the last file had that was given out.
pub(crate) const GIVEN: &str = "window.given = ''; const Plain = Blob; window.Blob = function (parts, kind) { \
    if ((parts ?? []).every((part) => typeof part === 'string')) window.given = parts.join(''); return new Plain(parts, kind) }";

/// What a copy that is made now has.
pub(crate) async fn copied(b: &Browser, with: &str) -> String {
    b.cdp("Browser.setDownloadBehavior", json!({ "behavior": "deny" })).await.unwrap();
    b.room("desk").await;
    b.tap("Download a copy").await;
    b.sees(with).await;
    run(b, "return window.given").await.as_str().unwrap_or_default().to_owned()
}

pub(crate) async fn run(b: &Browser, script: &str) -> Value {
    b.client.execute(script, vec![]).await.unwrap()
}

pub(crate) async fn holds(b: &Browser, name: &str) -> bool {
    stored(b).await.values().any(|line| line.contains(name))
}

#[tokio::test]
async fn what_cannot_be_stored_is_said_and_stays_and_is_tried_again() {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "trouble").await;
    b.size(1024, 768).await;
    let before = [COUNT, GIVEN].join("; ");
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": before })).await.unwrap();
    // The demo is not what one would miss: nothing is asked for it.
    b.open(&address).await;
    demo(&b).await;
    b.saved().await;
    assert_eq!(run(&b, "return window.asked").await, 0);
    run(&b, "localStorage.clear()").await;
    b.open(&address).await;
    b.sees("From the formula to the poured candle").await;
    assert_eq!(run(&b, "return window.asked").await, 0, "nothing was saved yet");
    scale(&b, "First scale").await;
    b.saved().await;
    b.waits("the browser to be asked", "return window.asked === 1", vec![]).await;
    assert_eq!(run(&b, LEAVES).await, false, "all is stored");

    for (number, (how, said)) in [
        (FULL, "The storage of this device is full. Free some space, then save again"),
        (ABORT, "Not saved ("),
        (HANG, "Not saved yet: the storage of this device does not answer."),
    ]
    .into_iter()
    .enumerate()
    {
        let name = format!("Scale number {number}");
        run(&b, how).await;
        scale(&b, &name).await;
        let state = "return document.querySelector('[data-saving]').dataset.saving === 'not-saved'";
        b.waits("not saved", state, vec![]).await;
        b.sees(said).await;
        b.sees("Not saved").await;
        assert_eq!(run(&b, LEAVES).await, true, "leaving asks: {said}");
        if number < 2 {
            assert!(!holds(&b, &name).await, "{said}");
        }
        // It is in the book as it is shown, wherever one goes, and in a copy.
        let copy = copied(&b, "In it too, and not saved on this device yet: 1 entry.").await;
        assert!(copy.contains("First scale") && copy.contains(&name), "{copy}");
        b.sees(said).await;
        b.room("bench").await;
        b.sees(&name).await;
        run(&b, "window.mend()").await;
        // Nobody has to do anything for it.
        b.saved().await;
        assert!(holds(&b, &name).await, "{said}");
        b.waits("no notice", "return !document.querySelector('.told').innerText", vec![]).await;
        assert_eq!(run(&b, LEAVES).await, false);
    }
    assert_eq!(run(&b, "return window.asked").await, 1, "once is enough");
    b.open("about:blank").await;
    b.open(&format!("{address}#bench")).await;
    for name in ["First scale", "Scale number 0", "Scale number 1", "Scale number 2"] {
        b.sees(name).await;
    }
    b.end().await;
}

/// Storage that is denied, or not there, as some browsers have it in a private window.
#[tokio::test]
async fn no_storage_is_said_at_once_with_the_way_out() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "denied").await;
    for getter in ["throw new DOMException('no', 'SecurityError')", "return null", "return undefined"] {
        let source = format!(
            "window.was ??= Object.getOwnPropertyDescriptor(window, 'indexedDB'); \
             Object.defineProperty(window, 'indexedDB', {{ configurable: true, get() {{ {getter} }} }})"
        );
        let script = json!({ "source": source });
        let added = b.cdp("Page.addScriptToEvaluateOnNewDocument", script).await.unwrap();
        b.open("about:blank").await;
        b.open(&host.address()).await;
        b.sees("The book cannot be opened").await;
        b.sees("This browser gives Potside no storage").await;
        b.sees("Not open").await;
        let header = "return document.querySelector('[data-saving]').innerText";
        assert_eq!(run(&b, header).await, "Not open", "nothing is saved");
        b.sees("open it in an ordinary window.").await;
        // The way out, taken.
        run(&b, "Object.defineProperty(window, 'indexedDB', window.was)").await;
        b.tap("Try again").await;
        b.sees("From the formula to the poured candle").await;
        b.cdp("Page.removeScriptToEvaluateOnNewDocument", added).await.unwrap();
    }
    b.end().await;
}

/// What the browser asks in the page's name is noted, and answered as the test says.
const ANSWER: &str = "window.asked = 0; window.answer = false; window.confirm = () => { window.asked++; return window.answer }";

/// Any form with something changed in it asks before the page or the form is left; kept or left on purpose it does not,
/// and what is no form never does.
#[tokio::test]
async fn what_was_typed_and_not_kept_is_asked_for_on_leaving() {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "leaving").await;
    b.size(1024, 768).await;
    b.open(&address).await;
    b.sees("From the formula to the poured candle").await;
    run(&b, ANSWER).await;
    let asks = async |what: &str, wanted: bool| {
        // What is on its way to the storage is asked for too.
        b.saved().await;
        assert_eq!(run(&b, LEAVES).await, wanted, "{what}");
    };

    // No forms: the list to be given out and the device's own choices, beside a form on the same page; the converter.
    b.room("desk").await;
    b.pick("List to take in", "Orders").await;
    b.tap("Ounces").await;
    b.tap("Convert").await;
    b.fill("Amount", "3 oz").await;
    b.tap("Close").await;
    asks("no form was changed", false).await;
    b.fill("Tolerance of a dose", "3 %").await;
    asks("the rules were changed", true).await;
    b.tap("Keep these").await;
    b.sees("Kept.").await;
    asks("the rules are kept, and the form stays", false).await;
    b.fill("Tolerance of a dose", "none").await;
    b.tap("Keep these").await;
    b.sees("Tolerance: ").await;
    asks("what is refused is not kept", true).await;
    b.room("bench").await;
    asks("the form is gone", false).await;

    // Words, lines, a choice, a number counted up: whatever is changed, until it is kept.
    b.room("shelf/customer/new").await;
    asks("nothing was typed", false).await;
    b.tap("Wholesale").await;
    asks("a choice was made", true).await;
    b.fill("Name", "North Shop").await;
    b.tap("Keep this customer").await;
    b.sees("Names and addresses stay on this device").await;
    asks("the customer is kept", false).await;
    b.room("desk/label/new").await;
    b.tap("More columns").await;
    asks("counted up", true).await;
    b.room("desk/safety/new").await;
    asks("another form in its place", false).await;
    b.set("Lines of section 3", "Linalool; 5 %").await;
    asks("lines", true).await;

    // In the app a link asks, and "Leave it" does not.
    b.tap("Stores").await;
    assert_eq!(run(&b, "return [window.asked, location.hash]").await, json!([1, "#desk/safety/new"]));
    assert_eq!(b.length("Lines of section 3").await, "Linalool; 5 %".len(), "it stays as typed");
    run(&b, "window.answer = true").await;
    b.tap("Stores").await;
    b.waits("the stores", "return location.hash === '#stores'", vec![]).await;
    assert_eq!(run(&b, "return window.asked").await, 2);
    asks("left", false).await;
    b.room("desk/safety/new").await;
    b.set("Lines of section 3", "Linalool; 5 %").await;
    b.tap("Leave it").await;
    b.sees("Hazards of a fragrance").await;
    b.tap("Bench").await;
    b.sees("Bench").await;
    assert_eq!(run(&b, "return window.asked").await, 2, "left on purpose");
    b.end().await;
}
