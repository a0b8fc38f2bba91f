//! A browser that dies in the middle of pours, at moments chosen by chance, while entries are written by real taps.

use crate::browser::{Browser, Engine, PATIENCE};
use crate::flow::{begin, done, finish, own_workshop, ready, step};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

#[derive(Default)]
pub(crate) struct Outcome {
    pub(crate) kills: u32,
    /// Entries of which the screen said that they are saved, and which are not there any more.
    pub(crate) lost: usize,
    /// Times after which the pour was not shown as it was left.
    pub(crate) unreadable: u32,
    /// Entries of which the screen said so before the storage did, or that were stored with less than strict durability: a
    /// kill seldom finds these, since the system writes down what a dead browser has handed over.
    pub(crate) early: u64,
    pub(crate) entries: usize,
}

/// Runs before the page's own scripts: notes every line that is handed to the storage, and at each "Saved" on the screen
/// whether the storage had said so of all of them. `acknowledged()` gives those of which the screen says it.
const NOTE: &str = r#"
{
const given = [];
let early = 0;
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (line, key) {
  if (this.name === "entries") {
    const one = { key, line, stored: false };
    given.push(one);
    const strict = this.transaction.durability === "strict";
    this.transaction.addEventListener("complete", () => { one.stored = strict; });
  }
  return put.apply(this, arguments);
};
window.acknowledged = () => {
  if (document.querySelector("[data-saving]")?.dataset.saving !== "saved") return null;
  for (const one of given) {
    if (!one.said && !one.stored) early++;
    one.said = true;
  }
  return { lines: given.map(({ key, line }) => [key, line]), early };
};
new MutationObserver(window.acknowledged)
  .observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ["data-saving"] });
}
"#;

/// A press, and the answer as soon as the screen says that all is saved.
const PRESS: &str = r#"
const done = arguments[0];
document.querySelector(".hand button.main").click();
const ask = () => { const all = acknowledged(); if (all) done(all); else setTimeout(ask, 0); };
setTimeout(ask, 0);
"#;

/// All lines in the storage, by their keys: past the app, straight from the browser.
const STORED: &str = r#"
const done = arguments[0];
const open = indexedDB.open("potside", 1);
open.onerror = () => done(null);
open.onsuccess = () => {
  const store = open.result.transaction("entries").objectStore("entries");
  const keys = store.getAllKeys();
  const lines = store.getAll();
  lines.onsuccess = () => { open.result.close(); done(keys.result.map((key, at) => [key, lines.result[at]])); };
  lines.onerror = () => done(null);
};
"#;

type Lines = BTreeMap<String, String>;

fn pairs(all: &Value) -> Lines {
    let text = |v: &Value| v.as_str().unwrap_or_default().to_owned();
    all.as_array().into_iter().flatten().map(|pair| (text(&pair[0]), text(&pair[1]))).collect()
}

pub(crate) async fn stored(b: &Browser) -> Lines {
    pairs(&b.client.execute_async(STORED, vec![]).await.unwrap_or_default())
}

/// How many of these lines are not there as they were.
pub(crate) fn missing(said: &Lines, stored: &Lines) -> usize {
    said.iter().filter(|(key, line)| stored.get(*key) != Some(line)).count()
}

/// Numbers by chance, each below what is asked for.
pub(crate) fn chance() -> impl FnMut(u32) -> u32 {
    let mut chance = SystemTime::now().duration_since(UNIX_EPOCH).unwrap().subsec_nanos() | 1;
    eprintln!("chance begins with {chance}");
    move |below| {
        chance ^= chance << 13;
        chance ^= chance >> 17;
        chance ^= chance << 5;
        chance % below
    }
}

/// Opened with every line noted.
async fn open(b: &Browser, address: &str) {
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": NOTE })).await.unwrap();
    b.open(address).await;
}

/// The step that is shown once the page is there again; none where it does not come.
async fn step_again(b: &Browser, address: &str) -> Option<u32> {
    open(b, address).await;
    let start = Instant::now();
    while start.elapsed() < PATIENCE {
        if let Some(step) = step(b).await {
            return Some(step);
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    eprintln!("no step is shown: {}", b.text().await);
    None
}

impl Outcome {
    /// Adds what the screen says to be saved to what it said before.
    fn note(&mut self, said: &mut Lines, page: &mut u64, all: &Value) {
        said.extend(pairs(&all["lines"]));
        let early = all["early"].as_u64().expect("the page notes what it hands over");
        self.early += early - *page;
        *page = early;
    }
}

/// Kills it so often, or for so many seconds.
pub(crate) async fn outcome(address: &str, name: &str, kills: u32, seconds: u64) -> Outcome {
    let mut b = Browser::start(Engine::Chromium, name).await;
    open(&b, address).await;
    own_workshop(&b).await;
    begin(&b).await;
    let (mut random, mut said) = (chance(), Lines::new());
    let (mut outcome, start) = (Outcome::default(), Instant::now());
    // What the page has counted.
    let mut page = 0;
    while outcome.kills < kills && start.elapsed().as_secs() < seconds {
        for _ in 0..random(3) {
            if b.shows("Finish and keep the record").await {
                finish(&b).await;
                begin(&b).await;
            }
            done(&b).await;
        }
        let all = b.wait_js("Saved", "return acknowledged()", vec![]).await;
        outcome.note(&mut said, &mut page, &all);
        let (mut kept, mut more) = (step(&b).await.expect("a pour is on"), 0);
        if !b.shows("Finish and keep the record").await {
            ready(&b).await;
            if random(2) == 0 {
                // One more tap that may or may not be stored when the light goes out.
                b.tap("Done").await;
                tokio::time::sleep(Duration::from_micros(random(15_000).into())).await;
                more = 1;
            } else {
                // One more that the screen says to be stored, and the light goes out at that word.
                let all = b.client.execute_async(PRESS, vec![]).await.unwrap();
                outcome.note(&mut said, &mut page, &all);
                kept += 1;
            }
        }
        b.kill_and_restart().await;
        (outcome.kills, page) = (outcome.kills + 1, 0);
        let now = step_again(&b, address).await;
        if !now.is_some_and(|now| (kept..=kept + more).contains(&now)) || b.shows("set aside").await {
            eprintln!("kill {}: step {kept} was kept, {now:?} is shown", outcome.kills);
            outcome.unreadable += 1;
        }
        let after = stored(&b).await;
        outcome.lost += missing(&said, &after);
        outcome.entries = after.len();
        // What is lost is counted once.
        said.retain(|key, line| after.get(key) == Some(line));
        if now.is_none() {
            break;
        }
    }
    assert!(said.len() > outcome.kills as usize / 2, "the page tells what it says to be saved");
    b.end().await;
    outcome
}
