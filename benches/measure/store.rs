//! From a tap that writes one entry to "Saved", beside a bare IndexedDB put with the same durability in the same page.

use crate::browser::Browser;
use crate::{line, median};
use serde_json::{Value, json};

const ROUNDS: u32 = 60;

/// In turn, in one page: a reading noted at the pot, and a line of its length put into a database of this script's own.
const ROUNDS_OF_BOTH: &str = r##"
const [rounds, done] = arguments;
const shown = document.querySelector("[data-saving]");
const note = [...document.querySelectorAll("#room button")].find((b) => b.innerText === "Note it");
const saved = () => new Promise((resolve) => {
  let busy = false;
  const watcher = new MutationObserver(() => {
    busy ||= shown.dataset.saving === "saving";
    if (!busy || shown.dataset.saving !== "saved") return;
    watcher.disconnect();
    resolve();
  });
  watcher.observe(shown, { attributes: true });
});
const opened = new Promise((resolve, reject) => {
  const request = indexedDB.open("bare-put", 1);
  request.onupgradeneeded = () => request.result.createObjectStore("lines");
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});
const put = (database, key) => new Promise((resolve, reject) => {
  const transaction = database.transaction("lines", "readwrite", { durability: "strict" });
  transaction.objectStore("lines").put("x".repeat(220), key);
  transaction.oncomplete = resolve;
  transaction.onabort = () => reject(transaction.error);
});
const timed = async (work) => {
  await new Promise((resolve) => setTimeout(resolve, 60));
  const start = performance.now();
  await work();
  return performance.now() - start;
};
(async () => {
  const database = await opened;
  const app = [], bare = [];
  for (let round = 0; round < rounds; round++) {
    app.push(await timed(() => { const end = saved(); note.click(); return end; }));
    bare.push(await timed(() => put(database, round)));
  }
  database.close();
  indexedDB.deleteDatabase("bare-put");
  return [app, bare];
})().then(done, (error) => done(String(error)));
"##;

pub(crate) async fn figures(b: &Browser) {
    b.fill("Thermometer", "190").await;
    b.saved().await;
    let both = b.client.execute_async(ROUNDS_OF_BOTH, vec![json!(ROUNDS)]).await.unwrap();
    let times = |index: usize| -> Vec<f64> {
        let list = both.get(index).and_then(Value::as_array).unwrap_or_else(|| panic!("{both}"));
        list.iter().filter_map(Value::as_f64).collect()
    };
    let (app, bare) = (median(&mut times(0)), median(&mut times(1)));
    line("append_ms", app, "ms", None);
    line("bare_put_ms", bare, "ms", None);
    line("append_vs_idb_ratio", app / bare, "x", Some(1.3));
}
