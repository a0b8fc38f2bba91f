//! How soon the page is painted and can be used, beside the bare counter's. Both come from this machine with empty
//! caches, in turn, each time from a new origin: what differs is what they are, not where they come from.

use crate::browser::Browser;
use crate::{line, median, serve};
use serde_json::{Value, json};

const RUNS: usize = 11;

/// Runs before the page's own scripts: notes when the element is there and the frame with it is done.
const WATCH: &str = r#"
new MutationObserver((_, watcher) => {
  if (!document.querySelector(ELEMENT)) return;
  watcher.disconnect();
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => { window.usableAt = performance.now(); };
    port2.postMessage(0);
  });
}).observe(document, { subtree: true, childList: true });
"#;

const READ: &str = r#"
const paint = performance.getEntriesByName("first-contentful-paint")[0];
return paint && window.usableAt ? [paint.startTime, window.usableAt] : null;
"#;

/// First paint and usable, ms after the navigation began.
async fn once(b: &Browser, folder: &str, element: &str) -> (f64, f64) {
    let host = serve(folder);
    let source = WATCH.replace("ELEMENT", &json!(element).to_string());
    let watch = b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source })).await.unwrap();
    b.open(&host.address()).await;
    let read = b.wait_js("a page that can be used", READ, vec![]).await;
    b.cdp("Page.removeScriptToEvaluateOnNewDocument", json!({ "identifier": watch["identifier"] }))
        .await
        .unwrap();
    let at = |index: usize| read.get(index).and_then(Value::as_f64).unwrap();
    // The next page begins with a quiet browser: the app goes on keeping its files for a while.
    tokio::time::sleep(std::time::Duration::from_millis(700)).await;
    b.open("about:blank").await;
    (at(0), at(1))
}

pub(crate) async fn figures(b: &Browser) {
    let (mut app, mut bare): (Vec<_>, Vec<_>) = Default::default();
    for _ in 0..RUNS {
        app.push(once(b, "POTSIDE_DIST", "#room h1").await);
        bare.push(once(b, "POTSIDE_BARE", "button").await);
    }
    let paint = |runs: &[(f64, f64)]| median(&mut runs.iter().map(|r| r.0).collect::<Vec<_>>());
    let usable = |runs: &[(f64, f64)]| median(&mut runs.iter().map(|r| r.1).collect::<Vec<_>>());
    line("first_paint_ms", paint(&app), "ms", None);
    line("bare_first_paint_ms", paint(&bare), "ms", None);
    line("usable_ms", usable(&app), "ms", None);
    line("bare_usable_ms", usable(&bare), "ms", None);
    line("usable_ratio", usable(&app) / usable(&bare), "x", Some(2.0));
}
