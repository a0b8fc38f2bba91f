//! A browser that dies in the middle of pours, at moments chosen by chance, while entries are written by real taps.

use crate::browser::{Browser, Engine};
use crate::flow::{begin, done, finish, own_workshop, ready, step};
use serde_json::Value;
use std::collections::BTreeMap;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

#[derive(Default)]
pub(crate) struct Outcome {
    pub(crate) kills: u32,
    /// Entries that were there when the screen said "Saved" and are not there any more.
    pub(crate) lost: usize,
    /// Times after which the pour was not shown as it was left.
    pub(crate) unreadable: u32,
    pub(crate) entries: usize,
}

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

async fn stored(b: &Browser) -> BTreeMap<String, String> {
    let all = b.client.execute_async(STORED, vec![]).await.unwrap_or_default();
    let text = |v: &Value| v.as_str().unwrap_or_default().to_owned();
    all.as_array().into_iter().flatten().map(|pair| (text(&pair[0]), text(&pair[1]))).collect()
}

/// The step that is shown once the page is there again; none where it does not come in twenty seconds.
async fn step_again(b: &Browser, address: &str) -> Option<u32> {
    b.open(address).await;
    let start = Instant::now();
    while start.elapsed() < Duration::from_secs(20) {
        if let Some(step) = step(b).await {
            return Some(step);
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    eprintln!("no step is shown: {}", b.text().await);
    None
}

/// Kills it so often, or for so many seconds.
pub(crate) async fn outcome(address: &str, name: &str, kills: u32, seconds: u64) -> Outcome {
    let mut b = Browser::start(Engine::Chromium, name).await;
    b.open(address).await;
    own_workshop(&b).await;
    begin(&b).await;
    let mut chance = SystemTime::now().duration_since(UNIX_EPOCH).unwrap().subsec_nanos() | 1;
    eprintln!("chance begins with {chance}");
    let mut random = move |below: u32| {
        chance ^= chance << 13;
        chance ^= chance >> 17;
        chance ^= chance << 5;
        chance % below
    };
    let (mut outcome, start) = (Outcome::default(), Instant::now());
    while outcome.kills < kills && start.elapsed().as_secs() < seconds {
        for _ in 0..random(3) {
            if b.shows("Finish and keep the record").await {
                finish(&b).await;
                begin(&b).await;
            }
            done(&b).await;
        }
        b.saved().await;
        let (kept, before) = (step(&b).await.expect("a pour is on"), stored(&b).await);
        assert!(!before.is_empty(), "the storage can be looked into");
        // One more tap that may or may not be stored when the light goes out.
        if !b.shows("Finish and keep the record").await {
            ready(&b).await;
            b.tap("Done").await;
            tokio::time::sleep(Duration::from_micros(random(15_000).into())).await;
        }
        b.kill_and_restart().await;
        outcome.kills += 1;
        let now = step_again(&b, address).await;
        if !now.is_some_and(|now| now == kept || now == kept + 1) || b.shows("set aside").await {
            eprintln!("kill {}: step {kept} was kept, {now:?} is shown", outcome.kills);
            outcome.unreadable += 1;
        }
        let after = stored(&b).await;
        outcome.lost += before.iter().filter(|(key, line)| after.get(*key) != Some(line)).count();
        outcome.entries = after.len();
        if now.is_none() {
            break;
        }
    }
    b.end().await;
    outcome
}
