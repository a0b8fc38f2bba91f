//! From a tap that writes one entry to "Saved", beside a bare IndexedDB put and a row put into SQLite, each with the same
//! durability, in the same page, in turn. SQLite runs in a worker, as it must: the time is the page's, from asking until it
//! is told. It is taken as it comes (a rollback journal), which has the budget, and in the fastest of its durable ways: with a
//! write-ahead log and the database locked for good.

use crate::browser::Browser;
use crate::{line, median};
use serde_json::{Value, json};

const ROUNDS: u32 = 60;

/// In turn, in one page: a reading noted at the pot, and a line of its length put into databases of this script's own.
const ROUNDS_OF_ALL: &str = r##"
const [rounds, folder, kinds, done] = arguments;
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
  const others = [];
  for (const [name, pragmas] of kinds) {
    const { sqlite } = await import(`./${folder}/page.js`);
    const ask = sqlite();
    const said = await ask({ do: "open", name, pragmas });
    const row = (round) => [round, `tablet-${round}-1`, "x".repeat(220)];
    // What is made once is made before.
    for (let round = -5; round < 0; round++) await ask({ do: "put", row: row(round) });
    others.push({ ask, row, said, page: [], inside: [] });
  }
  const app = [], bare = [];
  for (let round = 0; round < rounds; round++) {
    app.push(await timed(() => { const end = saved(); note.click(); return end; }));
    bare.push(await timed(() => put(database, round)));
    for (const { ask, row, page, inside } of others) {
      const asked = { do: "put", row: row(round) };
      page.push(await timed(async () => inside.push(await ask(asked))));
    }
  }
  database.close();
  indexedDB.deleteDatabase("bare-put");
  for (const { ask } of others) {
    const [kept] = await ask({ do: "read" });
    if (kept !== rounds + 5) throw new Error(`SQLite kept ${kept} rows`);
    await ask({ do: "close" });
  }
  return { app, bare, others: others.map(({ said, page, inside }) => ({ said, page, inside })) };
})().then(done, (error) => done(String(error)));
"##;

/// SQLite as it comes, and with a write-ahead log; the names are also those of their figures.
const KINDS: [(&str, &[&str]); 2] =
    [("sqlite", &[]), ("sqlite_wal", &["locking_mode=EXCLUSIVE", "journal_mode=WAL", "synchronous=FULL"])];

/// `beside` is the folder of SQLite on the app's own origin.
pub(crate) async fn figures(b: &Browser, beside: Option<&str>) {
    b.fill("Thermometer", "190").await;
    b.saved().await;
    let kinds: &[_] = if beside.is_some() { &KINDS } else { &[] };
    let asked = vec![json!(ROUNDS), json!(beside), json!(kinds)];
    let all = b.client.execute_async(ROUNDS_OF_ALL, asked).await.unwrap();
    let middle = |times: &Value| -> f64 {
        let list = times.as_array().unwrap_or_else(|| panic!("{all}"));
        median(&mut list.iter().filter_map(Value::as_f64).collect::<Vec<_>>())
    };
    let (app, bare) = (middle(&all["app"]), middle(&all["bare"]));
    line("append_ms", app, "ms", None);
    line("bare_put_ms", bare, "ms", None);
    line("append_vs_idb_ratio", app / bare, "x", Some(1.3));
    for (index, (name, _)) in kinds.iter().enumerate() {
        let other = &all["others"][index];
        eprintln!("{}", other["said"].as_str().unwrap_or_default());
        let page = middle(&other["page"]);
        line(&format!("{name}_append_ms"), page, "ms", None);
        line(&format!("{name}_append_inside_ms"), middle(&other["inside"]), "ms", None);
        line(&format!("append_vs_{name}_ratio"), app / page, "x", (index == 0).then_some(1.0));
    }
}
