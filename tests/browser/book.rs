//! A book in trouble and a book brought back, in the built app: entries that are damaged or of a newer version, and a copy in
//! the place of the book.

use crate::browser::{Browser, Engine, downloaded};
use crate::kill::stored;
use crate::look::{axe, look};
use crate::pour::serve;
use crate::years::put;
use fantoccini::Locator;
use potside::bench::Ingredient;
use potside::book::{Act, Entry, Id, backup, crc32c};
use serde_json::json;
use std::path::{Path, PathBuf};

const DAY: u64 = 86_400_000;

fn now() -> u64 {
    let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH).unwrap();
    u64::try_from(since.as_millis()).unwrap()
}

fn line(name: &str, clock: u64, at: u64) -> String {
    let body = Ingredient { name: name.to_owned(), ..Ingredient::default() };
    let act = Act::Ingredient { id: Id(format!("i-{clock}")), over: None, body };
    Entry { id: Id(format!("desk-{clock:x}-1")), clock, at, device: "desk".to_owned(), act }.to_line()
}

/// An entry of a version that is not there yet.
fn newer() -> String {
    let body = "{\"v\":9,\"id\":\"desk-9-1\",\"what\":\"nobody knows yet\"";
    format!("{body},\"sum\":\"{:08x}\"}}", crc32c(body.as_bytes()))
}

/// The app at this place, opened over these lines.
async fn over(name: &str, address: &str, lines: &[String], place: &str) -> Browser {
    let b = Browser::start(Engine::Chromium, name).await;
    b.size(1024, 768).await;
    b.open(&format!("{address}manifest.webmanifest")).await;
    put(&b, lines).await;
    b.open(&format!("{address}#{place}")).await;
    b
}

fn folder(name: &str) -> PathBuf {
    let folder = std::env::temp_dir().join(format!("potside-files-of-{name}-{}", std::process::id()));
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// Something under a key that Potside never writes.
const FOREIGN: &str = "const done = arguments[0]; const open = indexedDB.open('potside', 1); open.onsuccess = () => { \
    const t = open.result.transaction('entries', 'readwrite'); t.objectStore('entries').put({ odd: 'a ring' }, 7); \
    t.oncomplete = () => { open.result.close(); done('') }; t.onabort = () => done('not stored') }";

#[tokio::test]
async fn damaged_entries_are_counted_and_can_be_downloaded() {
    let (host, given) = (serve("/"), folder("aside"));
    let good = line("Meadow wax", 1, now());
    let torn = line("Chalk wax", 2, 1);
    let flipped = line("Rice wax", 3, 1).replace("Rice", "Nice");
    let lines = [good, torn.clone(), flipped.clone()];
    let address = host.address();
    let b = over("aside", &address, &lines, "stores").await;
    b.sees("1 entry of the book is damaged and was set aside; the rest is open.").await;
    let script = "const [key, line, done] = arguments; const open = indexedDB.open('potside', 1); open.onsuccess = () => { \
        const t = open.result.transaction('entries', 'readwrite'); t.objectStore('entries').put(line, key); \
        t.oncomplete = () => { open.result.close(); done('') } }";
    let torn = &torn[..torn.len() - 30];
    b.client.execute_async(script, vec![json!("desk-2-1"), json!(torn)]).await.unwrap();
    assert_eq!(b.client.execute_async(FOREIGN, vec![]).await.unwrap(), "");
    b.open("about:blank").await;
    b.open(&format!("{address}#stores")).await;
    b.sees("3 entries of the book are damaged and were set aside; the rest is open.").await;
    b.sees("Meadow wax").await;
    let before = stored(&b).await;
    b.tap("Look at them").await;
    b.sees("Entries set aside").await;
    b.sees("This entry was changed or cut off after it was written.").await;
    let to = json!({ "behavior": "allow", "downloadPath": given.to_str().unwrap() });
    b.cdp("Browser.setDownloadBehavior", to).await.unwrap();
    b.tap("Download them").await;
    b.sees("is among your downloads.").await;
    let text = String::from_utf8(downloaded(&given, "txt").await).unwrap();
    let mut found: Vec<&str> = text.lines().collect();
    found.sort_unstable();
    let mut wanted = [torn, &flipped, "{\"odd\":\"a ring\"}"];
    wanted.sort_unstable();
    assert_eq!(found, wanted);
    assert_eq!(stored(&b).await, before, "nothing is written over them");
    b.end().await;
    std::fs::remove_dir_all(given).unwrap();
}

const READ_ONLY: &str =
    "This book was written by a newer Potside. It can be read, not changed: update the app first.";

#[tokio::test]
async fn a_newer_book_is_read_and_not_written() {
    let host = serve("/");
    let lines = [line("Meadow wax", 1, now()), newer()];
    let b = over("newer", &host.address(), &lines, "stores").await;
    b.sees(READ_ONLY).await;
    b.sees("Meadow wax").await;
    let before = stored(&b).await;
    assert_eq!(before.len(), 2);
    b.room("book/vessel/new").await;
    let locked = "return document.querySelector('#save').disabled";
    b.waits("saving to be locked", locked, vec![]).await;
    b.room("bench/scale/new").await;
    for (label, text) in
        [("Name", "Late"), ("Capacity", "5 kg"), ("Division", "1 g"), ("Smallest load", "20 g")]
    {
        b.fill(label, text).await;
    }
    b.tap("Keep this scale").await;
    b.sees(READ_ONLY).await;
    assert_eq!(b.length("Name").await, 4, "what was typed stays");
    assert_eq!(stored(&b).await, before);
    b.end().await;
}

/// A tab that was opened before, while another one of a newer version writes.
#[tokio::test]
async fn an_old_tab_beside_a_newer_one_stops_writing() {
    let host = serve("/");
    let b = over("old-tab", &host.address(), &[line("Meadow wax", 1, now())], "stores").await;
    b.sees("Meadow wax").await;
    assert!(!b.shows(READ_ONLY).await);
    let tell = "new BroadcastChannel('potside').postMessage(JSON.stringify([arguments[0]]))";
    b.client.execute(tell, vec![json!(newer())]).await.unwrap();
    b.sees(READ_ONLY).await;
    b.room("book/formula/new").await;
    b.waits("saving to be locked", "return document.querySelector('#save').disabled", vec![]).await;
    b.end().await;
}

async fn choose(b: &Browser, file: &Path) {
    b.sees("Choose a copy").await;
    let chooser = b.client.find(Locator::Css("input[accept^='.json']")).await.unwrap();
    chooser.send_keys(file.to_str().unwrap()).await.unwrap();
}

/// Scripts in a copy stay words.
const HOSTILE: &str = "<img src=x onerror='window.hacked=1'><script>window.hacked=1</script>";

/// A copy is asked for, looked at, put in the place of the book, and the book comes back.
#[tokio::test]
async fn a_copy_takes_the_place_of_the_book_which_comes_back() {
    let (host, given) = (serve("/"), folder("replaced"));
    let b = over("replaced", &host.address(), &[line("Meadow wax", 1, now() - 15 * DAY)], "stores").await;
    b.sees("There is no copy of your book yet. Keep one where this device is not.").await;
    b.tap("Ask tomorrow").await;
    b.waits("no notice", "return !document.querySelector('.told').innerText", vec![]).await;
    b.room("desk").await;
    b.sees("this browser allows, with the app itself").await;
    b.sees("Safe from clearing").await;

    let file = given.join("copy.json");
    let theirs = [line("Chalk wax", 2, 5), line(HOSTILE, 3, 6)];
    std::fs::write(&file, backup(&theirs, "desk", 1_764_806_400_000)).unwrap();
    choose(&b, &file).await;
    b.sees("This copy holds 2 entries. 2 are not here yet.").await;
    let row = "return [...document.querySelectorAll('.prospects tr')].some((r) => \
        r.innerText.replace(/\\s+/g, ' ').trim() === 'Ingredients 1 3 2')";
    b.waits("what it would bring", row, vec![]).await;
    assert_eq!(stored(&b).await.len(), 1, "nothing is changed by looking");
    b.tap("Replace the book with it").await;
    b.sees("is set aside as an earlier book").await;
    // A second tap, before the first is done, is no second act.
    let twice = "const yes = [...document.querySelectorAll('dialog[open] button')].find((b) => b.innerText === 'Replace it'); \
        yes.click(); yes.click()";
    b.client.execute(twice, vec![]).await.unwrap();
    b.sees("2 entries were taken in.").await;
    b.saved().await;
    b.open("about:blank").await;
    b.open(&format!("{}#stores", host.address())).await;
    b.sees("Chalk wax").await;
    b.sees(HOSTILE).await;
    assert!(!b.shows("Meadow wax").await, "{}", b.text().await);
    for room in ["book", "book/done", "book/history/i-3", "bench", "shelf", "desk"] {
        b.room(room).await;
    }
    let hacked = "return [window.hacked ?? 0, document.querySelectorAll('#room img, #room script').length]";
    assert_eq!(b.client.execute(hacked, vec![]).await.unwrap(), json!([0, 0]));
    b.sees("Earlier books").await;
    b.tap("Bring it back").await;
    b.saved().await;
    b.room("stores").await;
    b.sees("Meadow wax").await;
    assert_eq!(stored(&b).await.len(), 6, "nothing is deleted; how it can be taken back stands there too");

    // A copy that was changed takes the place of nothing.
    let text = std::fs::read_to_string(&file).unwrap().replace("Chalk", "Chelk");
    std::fs::write(&file, text).unwrap();
    b.room("desk").await;
    choose(&b, &file).await;
    b.sees("this file was changed or cut off after it was written").await;
    b.sees("Left out: 1").await;
    assert!(!b.shows("Replace the book with it").await);
    b.end().await;
    std::fs::remove_dir_all(given).unwrap();
}

/// A copy is taken in, taken back after a reload, and brought back; what was done since stays.
#[tokio::test]
async fn a_copy_that_was_taken_in_is_taken_back() {
    let (host, given) = (serve("/"), folder("taken"));
    let b = over("taken", &host.address(), &[line("Meadow wax", 1, 3)], "desk").await;
    let file = given.join("copy.json");
    let theirs = [line("Chalk wax", 2, 5), line("Tin lids", 3, 6)];
    std::fs::write(&file, backup(&theirs, "desk", 1_764_806_400_000)).unwrap();
    choose(&b, &file).await;
    b.sees("2 are not here yet.").await;
    b.tap("Take them in").await;
    b.sees("2 entries were taken in.").await;
    b.saved().await;
    b.open("about:blank").await;
    b.open(&format!("{}#desk", host.address())).await;
    b.tap("Copies that were taken in: 1").await;
    b.sees(": 2 entries.").await;
    let (axe, mut found) = (axe(), Vec::new());
    look(&b, &axe, "desk-taken", &mut found).await;
    b.tap("Take it back").await;
    b.sees("2 entries set aside.").await;
    b.saved().await;
    look(&b, &axe, "desk-taken-back", &mut found).await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.size(1024, 768).await;
    // The same copy brings nothing new, and it is said where it went.
    choose(&b, &file).await;
    b.sees("2 are set aside with an earlier book, which can be brought back below.").await;
    b.open("about:blank").await;
    b.open(&format!("{}#stores", host.address())).await;
    b.sees("Meadow wax").await;
    assert!(!b.shows("Chalk wax").await, "{}", b.text().await);
    b.room("book/done").await;
    b.sees("A copy taken back").await;
    b.room("desk").await;
    b.tap("Bring it back").await;
    b.saved().await;
    b.room("stores").await;
    b.sees("Chalk wax").await;
    b.sees("Meadow wax").await;
    b.end().await;
    std::fs::remove_dir_all(given).unwrap();
}
