//! What a device does for the page: the screen kept awake, files given and taken, the share sheet, days and times, the
//! question on leaving. Each stands in for itself where a browser without a person cannot show it.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::expect_used)]

#[path = "common/page.rs"]
mod page;

use page::{js, pause, until, wait};
use potside::book::{CopyError, LARGEST_COPY};
use potside::day::Day;
use potside::keep::{self, Shared, Wake, ZONE};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::HtmlInputElement;

wasm_bindgen_test_configure!(run_in_browser);

fn number(body: &str) -> f64 {
    js(body).as_f64().expect("the test's own script gives a number")
}

fn text(value: &JsValue) -> String {
    value.as_string().expect("the test's own script gives a text")
}

/// Replaces a property of `object` (a script) until the page ends or it is replaced again.
fn put(object: &str, property: &str, value: &str) {
    js(&format!(
        "Object.defineProperty({object}, '{property}', {{ configurable: true, writable: true, value: {value} }})"
    ));
}

/// What is told of the screen next, and that it is told once.
async fn next(told: &RefCell<Vec<Wake>>) -> Vec<Wake> {
    until("a word of the screen", || !told.borrow().is_empty()).await;
    pause(30).await;
    told.take()
}

#[wasm_bindgen_test]
async fn the_screen_is_kept_awake_and_let_go() {
    let told = Rc::new(RefCell::new(Vec::new()));
    let hear = || {
        let told = Rc::clone(&told);
        move |wake| told.borrow_mut().push(wake)
    };
    put("navigator", "wakeLock", "undefined");
    keep::stay_awake(true, hear());
    assert_eq!(next(&told).await, [Wake::Refused], "there is no such thing");

    put(
        "navigator",
        "wakeLock",
        "{ request: async () => { throw new DOMException('', 'NotAllowedError') } }",
    );
    keep::stay_awake(true, hear());
    assert_eq!(next(&told).await, [Wake::Refused], "the browser does not let it");

    js("window.asked = []; window.released = 0");
    put(
        "navigator",
        "wakeLock",
        "{ request: async (kind) => { asked.push(kind); return { release: async () => { released++ } } } }",
    );
    keep::stay_awake(true, hear());
    assert_eq!(next(&told).await, [Wake::Awake]);
    assert_eq!(text(&js("return asked.join()")), "screen");

    // The page was hidden, where a browser lets go by itself, and is back.
    js("document.dispatchEvent(new Event('visibilitychange'))");
    assert_eq!(next(&told).await, [Wake::Awake]);
    assert_eq!(number("return asked.length"), 2.0);
    assert_eq!(number("return released"), 1.0, "the old one is let go");

    keep::stay_awake(false, hear());
    assert_eq!(number("return released"), 2.0);
    js("document.dispatchEvent(new Event('visibilitychange'))");
    pause(30).await;
    assert_eq!(number("return asked.length"), 2.0, "nothing is asked for that is not wanted");

    // Given only after it was no longer wanted.
    keep::stay_awake(true, hear());
    keep::stay_awake(false, hear());
    assert_eq!(next(&told).await, [Wake::Asleep]);
    assert_eq!(number("return released"), 3.0);
}

#[wasm_bindgen_test]
async fn a_text_is_offered_under_its_name() {
    js("window.clicked = []");
    put(
        "HTMLAnchorElement.prototype",
        "click",
        "function () { clicked.push([this.download, fetch(this.href)]) }",
    );
    assert!(keep::download("book.json", "[\"¾\"]"));
    assert!(keep::download("lots.csv", "Name\r\n"));
    let said = wait(
        "return Promise.all(clicked.map(async ([name, got]) => { const b = await (await got).blob(); \
         return [name, b.type, await b.text()].join('|') })).then(all => all.join('&'))",
    )
    .await;
    assert_eq!(text(&said), "book.json|application/json|[\"¾\"]&lots.csv|text/csv|Name\r\n");
    js("window.made = URL.createObjectURL");
    put("URL", "createObjectURL", "() => { throw new Error('no files here') }");
    assert!(!keep::download("book.json", "{}"));
    put("URL", "createObjectURL", "made");
}

/// A field in which a file with this text was chosen.
fn field(text: &str) -> HtmlInputElement {
    js(&format!(
        "const field = document.createElement('input'); field.type = 'file'; \
         const all = new DataTransfer(); all.items.add(new File(['{text}'], 'copy.json')); \
         field.files = all.files; return field"
    ))
    .unchecked_into()
}

#[wasm_bindgen_test]
async fn a_chosen_file_is_read() {
    let none = js("const f = document.createElement('input'); f.type = 'file'; return f");
    assert_eq!(keep::chosen(none.unchecked_ref()).await, None);
    let one = field("zwölf");
    assert_eq!(keep::chosen(&one).await, Some(Ok("zwölf".to_owned())));
    assert_eq!(one.value(), "", "the same file can be chosen again");

    js("window.size = Object.getOwnPropertyDescriptor(Blob.prototype, 'size')");
    put("Blob.prototype", "size", &(LARGEST_COPY + 1).to_string());
    let large = keep::chosen(&field("small")).await;
    js("Object.defineProperty(Blob.prototype, 'size', size)");
    assert_eq!(large, Some(Err(CopyError::TooLarge { bytes: LARGEST_COPY + 1 })));

    js("window.read = Blob.prototype.text");
    put("Blob.prototype", "text", "async () => { throw new Error('the card is gone') }");
    let gone = keep::chosen(&field("small")).await;
    put("Blob.prototype", "text", "read");
    assert_eq!(gone, Some(Err(CopyError::Unread("the card is gone".to_owned()))));
}

#[wasm_bindgen_test]
async fn a_text_is_shared_where_the_browser_can() {
    js("delete Navigator.prototype.canShare");
    assert!(keep::sharing("book.txt", "").is_none(), "there is no sheet");
    put("navigator", "canShare", "() => false");
    assert!(keep::sharing("book.txt", "").is_none(), "it shares no files");
    put("navigator", "canShare", "({ files }) => files[0].type === 'text/plain'");
    js("window.how = ''; window.shared = []");
    put(
        "navigator",
        "share",
        "async ({ files: [f] }) => { if (how) throw new DOMException('', how); shared.push(f.name, await f.text()) }",
    );
    let ready = keep::sharing("book.txt", "{ }\n").expect("it can be shared");
    for (how, refused) in [("AbortError", false), ("NotAllowedError", true), ("InvalidStateError", true)] {
        js(&format!("window.how = '{how}'"));
        let shared = keep::share(&ready).await;
        assert!(
            if refused { matches!(shared, Shared::Refused) } else { matches!(shared, Shared::Left) },
            "{how}"
        );
    }
    js("window.how = ''");
    assert!(matches!(keep::share(&ready).await, Shared::Given));
    assert_eq!(text(&js("return shared.join('|')")), "book.txt|{ }\n");
}

#[wasm_bindgen_test]
fn days_and_times_are_the_device_s() {
    let written = |form: &str, at: &str| {
        text(&js(&format!(
            "return new Intl.DateTimeFormat(navigator.language.startsWith('en') ? navigator.language : 'en-GB', {{ {form} }}).format({at})"
        )))
    };
    let now = keep::now();
    let at = |at: u64| format!("new Date({at})");
    let day = "day: 'numeric', month: 'short', year: 'numeric'";
    // 3 December 2025, noon in UTC; and now.
    for ms in [1_764_763_200_000, now] {
        assert_eq!(keep::day(ZONE.day(ms)), written(day, &at(ms)));
        let iso = text(&js(&format!("return new Intl.DateTimeFormat('sv').format({})", at(ms))));
        assert_eq!(ZONE.day(ms).to_string(), iso);
        assert_eq!(keep::time(ms), written("hour: 'numeric', minute: '2-digit'", &at(ms)));
        assert_eq!(keep::when(ms), [keep::day(ZONE.day(ms)), keep::time(ms)].join(", "));
    }
    let (of_this_year, of_another) = (
        "weekday: 'long', day: 'numeric', month: 'short'",
        "weekday: 'long', day: 'numeric', month: 'short', year: 'numeric'",
    );
    assert_eq!(keep::weekday(keep::today()), written(of_this_year, &at(now)));
    assert_eq!(keep::weekday(Day(10_957)), written(of_another, "new Date(2000, 0, 1)"));
    // Sweden writes a day as ISO 8601 does.
    let today = text(&js("return new Intl.DateTimeFormat('sv').format(new Date())"));
    assert_eq!(keep::file_day(), today);
    assert_eq!(keep::today(), Day::read(&today).expect("a day"));
    // By another day than that of its time no time is said.
    assert_eq!(keep::time_on(keep::today(), now), Some(keep::time(now)));
    assert_eq!(keep::time_on(Day(keep::today().0 - 1), now), None);
}

#[wasm_bindgen_test]
fn leaving_asks_only_with_unsaved_work() {
    let unsaved = Rc::new(Cell::new(true));
    let is = Rc::clone(&unsaved);
    keep::ask_on_leave(move || is.get());
    let leave = "const e = document.createEvent('BeforeUnloadEvent'); e.initEvent('beforeunload', false, true); \
                 return window.dispatchEvent(e)";
    assert_eq!(js(leave), false, "it is asked");
    unsaved.set(false);
    assert_eq!(js(leave), true, "one leaves");
}
