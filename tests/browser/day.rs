//! The day of the workshop, where it is another at Greenwich: an evening in Los Angeles, a morning in Auckland. Browsers know
//! the clocks of places; what each page says of one batch must be one day.

use crate::browser::{Browser, Engine, downloaded};
use crate::decade_shared::{Size, lines};
use crate::flow::{begin, finish, for_sale, own_workshop, tick_all};
use crate::pour::serve;
use crate::years::put;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// Puts the browser to a place, and its clock to this time, going on from there.
async fn stand(b: &Browser, place: &str, at: u64) {
    b.cdp("Emulation.setTimezoneOverride", json!({ "timezoneId": place })).await.unwrap();
    let ahead =
        format!("const since = Date.now(), now = Date.now.bind(Date); Date.now = () => now() - since + {at}");
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": ahead })).await.unwrap();
}

fn folder(name: &str) -> PathBuf {
    let folder = std::env::temp_dir().join(format!("potside-days-of-{name}-{}", std::process::id()));
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// A list as it is given out: its rows of cells.
async fn list(b: &Browser, title: &str, folder: &Path) -> Vec<Vec<String>> {
    b.room("desk").await;
    b.pick("List", title).await;
    b.tap("Download the list").await;
    let text = String::from_utf8(downloaded(folder, "csv").await).unwrap();
    text.lines().map(|l| l.split(',').map(str::to_owned).collect()).collect()
}

async fn read(b: &Browser, what: &str, script: &str) -> String {
    b.wait_js(what, script, vec![]).await.as_str().unwrap_or_default().to_owned()
}

async fn go(b: &Browser, to: &str) {
    let script = "document.querySelector(`.list a[href^=\"${arguments[0]}\"]`).click()";
    b.client.execute(script, vec![Value::from(to)]).await.unwrap();
}

/// What a day is, on the number, in words and in a list.
struct Said {
    number: &'static str,
    words: &'static str,
    iso: &'static str,
}

/// Pours four jars that cure for three days and looks at everything that says a day of them.
async fn says_one_day(name: &str, place: &str, at: u64, clock: &str, poured: Said, ready: (&str, &str)) {
    let host = serve("/");
    let given = folder(name);
    let b = Browser::start(Engine::Chromium, name).await;
    stand(&b, place, at).await;
    let to = json!({ "behavior": "allow", "downloadPath": given.to_str().unwrap() });
    b.cdp("Browser.setDownloadBehavior", to).await.unwrap();
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    own_workshop(&b).await;
    for_sale(&b, &[("Days until it ships", "2")]).await;
    begin(&b).await;
    finish(&b).await;

    // Its record.
    let when = read(&b, "the record", "return document.querySelector('.when')?.innerText ?? null").await;
    assert!(when.starts_with(&format!("{}, begun {clock}", poured.words)), "{when}");

    // The Shelf, the page of the batch.
    b.room("shelf").await;
    b.sees(&format!("Curing, ready {}", ready.0)).await;
    b.shot(&format!("day-{name}-shelf")).await;
    go(&b, "#shelf/batch").await;
    let number =
        read(&b, "the number", "return document.querySelector('.number strong')?.innerText ?? null").await;
    assert!(number.starts_with(poured.number), "{number}");
    b.sees(&format!("Curing, ready {}.", ready.0)).await;
    tick_all(&b).await;
    b.tap("Candles went, or came back").await;
    b.tap("Write it down").await;
    b.sees(&format!("1 candle broken, {}", poured.words)).await;
    b.saved().await;

    // The Book, and the label.
    b.room("book").await;
    b.sees(&format!("{}, {clock}", poured.words)).await;
    b.room("desk/label/new").await;
    b.fill("Name of the label", "Front").await;
    b.tap("Keep this label").await;
    b.sees("Batch number").await;
    let typed = "return [...document.querySelectorAll('label')].find((l) => l.textContent.trim() === 'Date')?.control?.value || null";
    assert_eq!(read(&b, "the date on the label", typed).await, poured.words);
    b.shot(&format!("day-{name}-label")).await;

    // The lists. Seen to be solid, the day for that is not waited for.
    let rows = list(&b, "Past pours", &given).await;
    assert_eq!((rows[1][0].as_str(), rows[1][1].as_str()), (number.as_str(), poured.iso), "{rows:?}");
    let rows = list(&b, "Batches on the shelf", &given).await;
    assert_eq!((rows[1][0].as_str(), rows[1][6].as_str()), (number.as_str(), ready.1), "{rows:?}");
    let rows = list(&b, "What left the shelf", &given).await;
    assert_eq!((rows[1][0].as_str(), rows[1][1].as_str()), (poured.iso, number.as_str()), "{rows:?}");

    // Another device, far away: the number and the day are those of the workshop.
    b.cdp("Emulation.setTimezoneOverride", json!({ "timezoneId": "UTC" })).await.unwrap();
    b.open("about:blank").await;
    b.open(&host.address()).await;
    b.room("book").await;
    b.sees(&number).await;
    b.sees(&format!("{}, {number}", poured.words)).await;
    let rows = list(&b, "Past pours", &given).await;
    assert_eq!((rows[1][0].as_str(), rows[1][1].as_str()), (number.as_str(), poured.iso), "{rows:?}");
    let rows = list(&b, "Batches on the shelf", &given).await;
    assert_eq!((rows[1][0].as_str(), rows[1][6].as_str()), (number.as_str(), ready.1), "{rows:?}");
    let _ = std::fs::remove_dir_all(given);
    b.end().await;
}

/// 24 November 2026, 18:30: at Greenwich it is the 25th. Two days of cure after the day until they are solid.
#[tokio::test]
async fn an_evening_in_los_angeles() {
    let poured = Said { number: "261124-", words: "Nov 24, 2026", iso: "2026-11-24" };
    says_one_day(
        "angeles",
        "America/Los_Angeles",
        1_795_573_800_000,
        "6:3",
        poured,
        ("Friday, Nov 27", "2026-11-26"),
    )
    .await;
}

/// 25 November 2026, 8:30: at Greenwich it is the 24th, and noon there is the day after here.
#[tokio::test]
async fn a_morning_in_auckland() {
    let poured = Said { number: "261125-", words: "Nov 25, 2026", iso: "2026-11-25" };
    says_one_day(
        "auckland",
        "Pacific/Auckland",
        1_795_548_600_000,
        "8:3",
        poured,
        ("Saturday, Nov 28", "2026-11-27"),
    )
    .await;
}

/// Counts how often the clock of the place is asked for.
const ASKED: &str = "window.asked = 0; const ask = Date.prototype.getTimezoneOffset; \
    Date.prototype.getTimezoneOffset = function () { window.asked++; return ask.call(this) }";

/// How often it was asked since the last time: at least so often, and until it is not asked any more.
async fn asked(b: &Browser, least: u64) -> u64 {
    b.waits("the clock to be asked", "return asked >= arguments[0]", vec![least.into()]).await;
    let mut before = u64::MAX;
    loop {
        let now = b.client.execute("return asked", vec![]).await.unwrap().as_u64().unwrap();
        if now == before {
            b.client.execute("asked = 0", vec![]).await.unwrap();
            return now;
        }
        before = now;
        tokio::time::sleep(std::time::Duration::from_millis(700)).await;
    }
}

/// In a book of many pours no key that is typed asks the browser's calendar of each of them, and no room does: only of those
/// that are shown, or that took something of late. (None of these was filled; `tests/shelf/day.rs` counts for the shelf.)
#[tokio::test]
async fn the_calendar_is_not_asked_of_every_batch() {
    const BATCHES: u64 = 1500;
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "asked").await;
    b.size(1024, 768).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": ASKED })).await.unwrap();
    let address = host.address();
    b.open(&format!("{address}manifest.webmanifest")).await;
    put(&b, &lines(Size { batches: BATCHES, lots: 60, trials: 4 })).await;
    b.open(&format!("{address}#book")).await;
    b.sees("Show earlier pours").await;
    asked(&b, 1).await;
    b.fill("Find", "h").await;
    let typed = asked(&b, 1).await;
    assert!(typed <= 120, "{typed}");
    let mut rooms = Vec::new();
    for room in ["shelf", "shelf/plan", "stores", "bench", "pot", "desk"] {
        b.room(room).await;
        rooms.push((room, asked(&b, 0).await));
    }
    assert!(rooms.iter().all(|(_, n)| *n < BATCHES / 2), "{rooms:?}");
    b.end().await;
}
