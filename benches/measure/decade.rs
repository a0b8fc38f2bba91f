//! The book of ten years: opened, searched, added to.

use crate::browser::Browser;
use crate::decade_shared::{TEN_YEARS, lines};
use crate::sqlite::beside;
use crate::years::{bundle_within, put, put_old};
use crate::{line, median, quantile, serve};
use potside::book::bundle::{Found, Tying, find, read};
use potside::book::{Act, Book, Settings};
use serde_json::json;
use std::hint::black_box;
use std::time::Duration;
use std::time::Instant;

fn ms<T>(call: impl FnOnce() -> T) -> (f64, T) {
    let start = Instant::now();
    let out = black_box(call());
    (start.elapsed().as_secs_f64() * 1e3, out)
}

/// Natively, at full speed.
pub(crate) fn natively() {
    let lines = lines(TEN_YEARS);
    let stored = lines.len();
    line("ten_year_entries", lines.len() as f64, "", None);
    line("ten_year_stored_mb", lines.iter().map(String::len).sum::<usize>() as f64 / 1e6, "MB", None);
    let (opening, mut book) = ms(|| Book::open(lines, "tablet"));
    line("ten_year_fold_native_ms", opening, "ms", None);
    let (finding, finder) = ms(|| book.state().finder());
    line("ten_year_finder_native_ms", finding, "ms", None);
    let (search, found) = ms(|| book.state().find(&finder, "windy market salt").len());
    assert!(found > 0, "a batch is found by its words");
    line("ten_year_search_native_ms", search, "ms", Some(16.7));
    let (tying, bytes) = ms(|| Tying::begin(book.journal())?.finish(book.journal(), "this", stored));
    let bytes = bytes.expect("a book that is whole can be tied up");
    line("ten_year_bundle_mb", bytes.len() as f64 / 1e6, "MB", None);
    line("ten_year_tying_native_ms", tying, "ms", None);
    let (renewing, renewed) = ms(|| match find(bytes.clone(), "that")? {
        Found::Old(old) => old.finish("this"),
        Found::Read(_) => None,
    });
    assert!(renewed.as_ref() == Some(&bytes), "renewed it is the same but for the build that it names");
    line("ten_year_renewing_native_ms", renewing, "ms", None);
    let (untying, tied) = ms(|| Book::open_tied(read(bytes, "this").expect("it is whole"), "tablet"));
    line("ten_year_open_native_ms", untying, "ms", None);
    assert!(tied.state() == book.state(), "it is the same book");
    let (act, _) = ms(|| book.act(Act::Settings(Settings::default()), 1, 1));
    line("ten_year_act_native_ms", act, "ms", None);
}

/// Runs before the page's own scripts: notes when a formula of the book can be chosen and the frame with it is done; and
/// the app's memory, which no page is told.
const WATCH: &str = r##"
window.memories = [];
const start = WebAssembly.instantiateStreaming;
WebAssembly.instantiateStreaming = async (...all) => {
  const made = await start(...all);
  for (const part of Object.values(made.instance.exports)) {
    if (part instanceof WebAssembly.Memory && !window.memories.includes(part)) window.memories.push(part);
  }
  return made;
};
new MutationObserver((_, watcher) => {
  if (!document.querySelector("#room")?.innerText.includes("Late Orchard")) return;
  watcher.disconnect();
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => { window.usableAt = performance.now(); };
    port2.postMessage(0);
  });
}).observe(document, { subtree: true, childList: true, characterData: true });
"##;

/// Bytes: of WebAssembly, and of scripts and what they hold.
const MEMORY: &str = "return window.memories.reduce((sum, one) => sum + one.buffer.byteLength, 0) + performance.memory.usedJSHeapSize";

/// Opened in a browser that was just started, and how much it holds then.
async fn once(b: &mut Browser, address: &str) -> (f64, f64) {
    b.close_and_restart().await;
    b.size(1024, 768).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH })).await.unwrap();
    tokio::time::sleep(Duration::from_secs(2)).await;
    b.open(address).await;
    // Longer than anything else is given: it may have to be made anew first.
    for _ in 0..1_200 {
        let at = b.client.execute("return window.usableAt ?? null", vec![]).await.unwrap();
        if let Some(at) = at.as_f64() {
            let memory = b.client.execute(MEMORY, vec![]).await.unwrap();
            return (at, memory.as_f64().unwrap() / 1e6);
        }
        tokio::time::sleep(Duration::from_millis(60)).await;
    }
    panic!("the book cannot be used");
}

/// Opened in a browser that was just started, from the bundle of another build, which is made anew first. The memory is
/// what is held at the end, and a WebAssembly memory never shrinks; it is to be 200 MB at most (our own choice: a small tablet
/// gives a page several hundred).
async fn after_update(b: &mut Browser, address: &str, lines: &[String]) {
    b.open(&format!("{address}manifest.webmanifest")).await;
    put_old(b, lines, "1").await;
    let (time, memory) = once(b, address).await;
    line("ten_year_after_update_ms", time, "ms", None);
    line("ten_year_after_update_memory_mb", memory, "MB", Some(200.0));
}

/// Types words into the Book's search letter by letter: from each letter until what is found stands in the page and is laid
/// out, ms; four times. The first letters may find all that was listed before; the words at the end do not.
const SEARCH: &str = r##"
const [words, done] = arguments;
const input = document.querySelector("#room [role=search] input");
const list = document.querySelector("#room [role=search] + [aria-live]");
(async () => {
  const times = [];
  const all = list.textContent;
  for (let letter = 0; letter < 4 * words.length; letter++) {
    await new Promise((resolve) => setTimeout(resolve, 100));
    input.value = words.slice(0, (letter % words.length) + 1);
    const start = performance.now();
    input.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = resolve;
      port2.postMessage(0);
    });
    list.getBoundingClientRect();
    times.push(performance.now() - start);
  }
  const found = list.querySelectorAll("a").length;
  if (list.textContent === all || !found) throw new Error(`${found} found by ${input.value}: ${list.textContent}`);
  return times;
})().then(done, (error) => done(String(error)));
"##;

/// In the open book, at the processor's own speed; the slowest letter but for one in twenty.
async fn search(b: &Browser) {
    b.room("book").await;
    b.sees("What was done").await;
    let times = b.client.execute_async(SEARCH, vec![json!("windy market salt")]).await.unwrap();
    let mut times: Vec<f64> =
        times.as_array().unwrap_or_else(|| panic!("{times}")).iter().filter_map(|t| t.as_f64()).collect();
    line("ten_year_search_ms", quantile(&mut times, 0.95), "ms", Some(16.7));
}

/// In the browser, with the book in its own storage: from the navigation until it can be used, the files being on the
/// device; first from all lines, then from the bundle. In turn with that, in a browser just started too, the same lines from
/// SQLite's own storage: from the navigation to a page of their own until each was read as a text. Nothing is made of them,
/// and they stay in the worker; the app has untied its bundle, folded what is not tied, and shows its room.
pub(crate) async fn figures(b: &mut Browser) {
    let host = serve("POTSIDE_DIST");
    let address = host.address();
    b.open(&address).await;
    b.kept_offline().await;
    b.open(&format!("{address}manifest.webmanifest")).await;
    let lines = lines(TEN_YEARS);
    put(b, &lines).await;
    // A book of years takes longer than anything else is given.
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH })).await.unwrap();
    b.open(&address).await;
    bundle_within(b, Duration::from_secs(400), true).await;
    let whole = b.client.execute("return window.usableAt", vec![]).await.unwrap();
    line("ten_year_fold_ms", whole.as_f64().unwrap_or_default(), "ms", None);
    let memory = b.client.execute(MEMORY, vec![]).await.unwrap().as_f64().unwrap_or_default();
    line("ten_year_fold_memory_mb", memory / 1e6, "MB", None);
    after_update(b, &address, &lines).await;
    // From an origin of its own: the app would answer every navigation on its own.
    let sqlite = beside().map(|beside| (beside.serve(), beside));
    if let Some((host, beside)) = &sqlite {
        beside.fill(b, &host.address(), &lines).await;
    }
    let (mut times, mut memories) = (Vec::new(), Vec::new());
    let (mut others, mut inside) = (Vec::new(), Vec::new());
    for _ in 0..5 {
        let (time, memory) = once(b, &address).await;
        times.push(time);
        memories.push(memory);
        if let Some((host, beside)) = &sqlite {
            let opened = beside.open(b, &host.address(), &lines).await;
            others.push(opened.all);
            inside.push(opened.inside);
        }
    }
    once(b, &address).await;
    search(b).await;
    let opened = median(&mut times);
    line("ten_year_open_ms", opened, "ms", Some(500.0));
    line("ten_year_memory_mb", median(&mut memories), "MB", Some(100.0));
    if sqlite.is_some() {
        let other = median(&mut others);
        line("sqlite_open_ms", other, "ms", None);
        line("sqlite_open_inside_ms", median(&mut inside), "ms", None);
        line("open_vs_sqlite_ratio", opened / other, "x", None);
    }
}
