//! Two books brought together by the share sheet. A headless browser has none: one of this test's own stands in its place,
//! which refuses what browsers refuse (MDN, Navigator.share): no tap shortly before, or no plain text.

use crate::browser::{Browser, Engine};
use crate::kill::stored;
use crate::look::{axe, look};
use crate::pour::serve;
use crate::years::put;
use fantoccini::Locator;
use potside::bench::Ingredient;
use potside::book::{Act, Entry, Id};
use serde_json::{Value, json};
use std::path::Path;

/// `sheet` is what the person does with it; `given` is what was shared.
const SHEET: &str = r#"
window.sheet = "take";
window.given = [];
const no = (name) => { throw new DOMException("", name); };
Navigator.prototype.canShare = (data) => data.files.length === 1 && data.files[0] instanceof File;
Navigator.prototype.share = async ({ files: [file] }) => {
  if (window.sheet === "late" || !navigator.userActivation.isActive) no("NotAllowedError");
  if (file.type !== "text/plain" || !/\.(txt|text)$/.test(file.name)) no("NotAllowedError");
  if (window.sheet === "leave") no("AbortError");
  window.given.push([file.name, await file.text()]);
};
"#;

fn line(name: &str, device: &str, clock: u64) -> String {
    let body = Ingredient { name: name.to_owned(), ..Ingredient::default() };
    let act = Act::Ingredient { id: Id(format!("i-{device}")), over: None, body };
    Entry { id: Id(format!("{device}-{clock:x}-1")), clock, at: 1, device: device.to_owned(), act }.to_line()
}

/// At the desk of a book with one ingredient in it.
async fn at_the_desk(name: &str, address: &str, ingredient: &str, clock: u64) -> Browser {
    let b = Browser::start(Engine::Chromium, name).await;
    b.size(1024, 768).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": SHEET })).await.unwrap();
    b.open(&format!("{address}manifest.webmanifest")).await;
    put(&b, &[line(ingredient, name, clock)]).await;
    b.open(&format!("{address}#desk")).await;
    b.sees("A copy to keep").await;
    b
}

async fn given(b: &Browser) -> Vec<Value> {
    b.client.execute("return window.given", vec![]).await.unwrap().as_array().cloned().unwrap()
}

async fn sheet(b: &Browser, does: &str) {
    b.client.execute("window.sheet = arguments[0]", vec![json!(does)]).await.unwrap();
}

/// Takes in what the other has shared.
async fn take_in(b: &Browser, folder: &Path, given: &Value, brought: &str) {
    let file = folder.join(given[0].as_str().unwrap());
    std::fs::write(&file, given[1].as_str().unwrap()).unwrap();
    let chooser = b.client.find(Locator::Css("input[accept^='.json']")).await.unwrap();
    chooser.send_keys(file.to_str().unwrap()).await.unwrap();
    b.tap("Take them in").await;
    b.sees(brought).await;
    b.saved().await;
}

#[tokio::test]
async fn two_books_are_brought_together_by_the_share_sheet() {
    let folder = std::env::temp_dir().join(format!("potside-shared-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let (host, other_host) = (serve("/"), serve("/"));
    let pot = at_the_desk("pot", &host.address(), "Rice wax", 3).await;
    let table = at_the_desk("table", &other_host.address(), "Tin lids", 5).await;

    // It took longer than the browser gives after a tap: the next one shares at once.
    sheet(&pot, "late").await;
    pot.tap("Share a copy").await;
    pot.sees("The copy is ready. Tap “Share a copy” once more.").await;
    assert!(given(&pot).await.is_empty());
    sheet(&pot, "take").await;
    pot.tap("Share a copy").await;
    pot.sees(".txt with 1 entry was handed on. On the other device,").await;
    let shared = given(&pot).await;
    assert_eq!(shared.len(), 1);
    let (axe, mut found) = (axe(), Vec::new());
    look(&pot, &axe, "desk-share", &mut found).await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    pot.size(1024, 768).await;

    take_in(&table, &folder, &shared[0], "1 entry was taken in.").await;
    // No app is chosen; one that the browser will not share with.
    sheet(&table, "leave").await;
    table.tap("Share a copy").await;
    table.sees("It was not shared: no app was chosen.").await;
    sheet(&table, "late").await;
    table.tap("Share a copy").await;
    table.sees("once more").await;
    table.tap("Share a copy").await;
    table.sees("This browser does not share the copy. Download it,").await;
    sheet(&table, "take").await;
    table.tap("Share a copy").await;
    table.sees(".txt with 3 entries was handed on.").await;
    take_in(&pot, &folder, &given(&table).await[0], "2 entries were taken in.").await;
    // The table hears that the pot took something in, and nothing more is to be brought.
    pot.tap("Share a copy").await;
    pot.sees(".txt with 4 entries was handed on.").await;
    take_in(&table, &folder, given(&pot).await.last().unwrap(), "1 entry was taken in.").await;

    let both = stored(&pot).await;
    assert_eq!(both.len(), 4, "what each of them had, and that each took something in");
    assert_eq!(stored(&table).await, both, "both have both");
    for b in [&pot, &table] {
        b.room("stores").await;
        b.sees("Rice wax").await;
        b.sees("Tin lids").await;
    }
    pot.end().await;
    table.end().await;
    std::fs::remove_dir_all(folder).unwrap();
}

/// Where the browser shares no files nothing is offered.
#[tokio::test]
async fn no_sheet_no_button() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "no-sheet").await;
    let none = "delete Navigator.prototype.canShare";
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": none })).await.unwrap();
    b.open(&format!("{}#desk", host.address())).await;
    b.sees("Download a copy").await;
    assert!(!b.shows("Share a copy").await);
    b.end().await;
}
