//! A browser that dies while the bundle of a large book is written: whatever is there of it then, the book is what is
//! stored.

use crate::browser::{Browser, Engine, PATIENCE};
use crate::decade_shared::{Size, lines};
use crate::kill::{chance, missing, stored};
use crate::years::{key, put};
use serde_json::json;
use std::time::{Duration, Instant};

#[derive(Default)]
pub(crate) struct Outcome {
    pub(crate) kills: u32,
    /// Kills before which the bundle was whole.
    pub(crate) whole: u32,
    /// Books that were not what is stored.
    pub(crate) wrong: u32,
}

/// Runs before the page's own scripts: notes when the bundle is handed over, and when it is kept.
const NOTE: &str = r#"
{
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function () {
  if (this.name === "bundle") {
    window.handed = true;
    this.transaction.addEventListener("complete", () => { window.whole = true; });
  }
  return put.apply(this, arguments);
};
}
"#;

/// Throws the mark away by which a bundle is looked for, so that one is made again: over the bytes of the one before.
const FORGET: &str = "localStorage.removeItem('potside-bundle')";

const HANDED: &str =
    "const done = arguments[0]; const ask = () => window.handed ? done(true) : setTimeout(ask, 1); ask()";

/// True where the book shows as many entries as are stored, and none set aside.
async fn shows_all(b: &Browser, number: usize) -> bool {
    b.room("desk").await;
    let shown = format!("Entries {number}");
    let start = Instant::now();
    while start.elapsed() < PATIENCE {
        if b.shows(&shown).await {
            return !b.shows("set aside").await;
        }
        tokio::time::sleep(Duration::from_millis(100)).await;
    }
    eprintln!("not “{shown}”: {}", b.text().await);
    false
}

/// Kills it so often, or for so many seconds.
pub(crate) async fn outcome(address: &str, name: &str, kills: u32, seconds: u64) -> Outcome {
    let mut b = Browser::start(Engine::Chromium, name).await;
    b.open(&format!("{address}manifest.webmanifest")).await;
    let lines = lines(Size { batches: 260, lots: 60, trials: 20 });
    put(&b, &lines).await;
    let said = lines.iter().map(|line| (key(line).to_owned(), line.clone())).collect();
    let (mut random, mut outcome, start) = (chance(), Outcome::default(), Instant::now());
    while outcome.kills < kills && start.elapsed().as_secs() < seconds {
        b.open(&format!("{address}manifest.webmanifest")).await;
        b.client.execute(FORGET, vec![]).await.unwrap();
        b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": NOTE })).await.unwrap();
        b.open(address).await;
        b.client.execute_async(HANDED, vec![]).await.expect("a bundle is made within half a minute");
        tokio::time::sleep(Duration::from_micros(random(12_000).into())).await;
        let whole = b.client.execute("return window.whole === true", vec![]).await.unwrap();
        outcome.whole += u32::from(whole == json!(true));
        b.kill_and_restart().await;
        outcome.kills += 1;
        // The browser may not have written the mark down: whatever is there of the bundle is looked at.
        b.open(&format!("{address}manifest.webmanifest")).await;
        b.client.execute("localStorage.setItem('potside-bundle', '1')", vec![]).await.unwrap();
        b.open(address).await;
        let good = shows_all(&b, lines.len()).await && missing(&said, &stored(&b).await) == 0;
        outcome.wrong += u32::from(!good);
    }
    b.end().await;
    outcome
}
