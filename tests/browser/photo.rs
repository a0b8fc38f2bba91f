//! A photo of a candle with the server gone: chosen, made small, there after a restart, brought by a copy to another device,
//! and told to be damaged where it is.

use crate::browser::{Browser, Engine, GONE, downloaded};
use crate::burn::on_trial;
use crate::flow::{from_the_device, series};
use crate::look::{axe, look};
use crate::pour::serve;
use fantoccini::Locator;
use serde_json::{Value, json};
use std::path::Path;

/// A picture of noise, which no coder makes small: an uncompressed bitmap of 24 bits a pixel, 1,600 × 1,200.
fn noise() -> Vec<u8> {
    let (wide, high) = (1600_u32, 1200_u32);
    let size = 3 * wide * high;
    let mut file = b"BM".to_vec();
    for word in [54 + size, 0, 54, 40, wide, high, 24 << 16 | 1, 0, size, 0, 0, 0, 0] {
        file.extend(word.to_le_bytes());
    }
    let mut state = 7_u32;
    file.extend((0..size).map(|_| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (state >> 24) as u8
    }));
    file
}

async fn choose(b: &Browser, field: &str, file: &Path) {
    let chooser = b.client.find(Locator::Css(field)).await.unwrap();
    chooser.send_keys(file.to_str().unwrap()).await.unwrap();
}

const PICTURE: &str = "input[accept='image/*']";
const COPY: &str = "input[accept^='.json']";

/// The picture shown, how large it is, and how long its text.
const SHOWN: &str = r#"
const all = [...document.querySelectorAll(".photo img")];
return all.length === 1 && all[0].naturalWidth ? [all[0].naturalWidth, all[0].naturalHeight, all[0].src.length] : null;
"#;

async fn shown(b: &Browser) -> Value {
    b.wait_js("the photo", SHOWN, vec![]).await
}

/// Puts something else in the place of the stored photo.
const DAMAGE: &str = r#"
const done = arguments[arguments.length - 1];
indexedDB.open("potside-photos").onsuccess = (opened) => {
  const change = opened.target.result.transaction("entries", "readwrite");
  const store = change.objectStore("entries");
  store.openCursor().onsuccess = (e) => {
    const text = e.target.result.value;
    e.target.result.update(text.slice(0, 900) + (text[900] === "A" ? "B" : "A") + text.slice(901));
  };
  change.oncomplete = () => { opened.target.result.close(); done(true); };
};
"#;

async fn to_the_candle(b: &Browser) {
    b.room("bench/burn").await;
    b.tap("A1: Apple in Straight jar, C 8, no. 1").await;
    b.sees("Take or choose a photo").await;
}

#[tokio::test]
async fn a_photo_is_kept_and_goes_with_a_copy() {
    let folder = std::env::temp_dir().join(format!("potside-photos-of-{}", std::process::id()));
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(folder.join("given")).unwrap();
    let (large, none) = (folder.join("large.bmp"), folder.join("none.jpg"));
    std::fs::write(&large, noise()).unwrap();
    std::fs::write(&none, "<svg xmlns='http://www.w3.org/2000/svg'/>").unwrap();

    let host = serve("/");
    let address = host.address();
    let mut b = Browser::start(Engine::Chromium, "photo").await;
    from_the_device(&b, host).await;
    b.sees("From the formula to the poured candle").await;
    series(&b, &["C 8", "C 10"]).await;
    on_trial(&b, "A1", "C 8").await;
    choose(&b, PICTURE, &none).await;
    b.sees("Not kept: This file is no picture").await;
    choose(&b, PICTURE, &large).await;
    let first = shown(&b).await;
    let sizes: Vec<u64> = first.as_array().unwrap().iter().map(|n| n.as_u64().unwrap()).collect();
    assert!(sizes[0] <= 640 && sizes[0] * 3 == sizes[1] * 4 && sizes[0] >= 320, "{sizes:?}");
    assert!(sizes[2] <= 40_000 / 3 * 4 + 40, "{sizes:?}");
    b.sees("Before its first burn").await;
    assert!(!b.shows("Not kept").await);
    b.saved().await;
    let (axe, mut found) = (axe(), Vec::new());
    look(&b, &axe, "burn-photo", &mut found).await;
    assert!(found.is_empty(), "{}", found.join("\n"));

    b.close_and_restart().await;
    b.open(&format!("{address}#bench/burn")).await;
    b.size(1024, 768).await;
    to_the_candle(&b).await;
    assert_eq!(shown(&b).await, first);

    let given = folder.join("given");
    let to = json!({ "behavior": "allow", "downloadPath": given.to_str().unwrap() });
    b.cdp("Browser.setDownloadBehavior", to).await.unwrap();
    b.room("desk").await;
    b.tap("Download a copy").await;
    b.sees("entries and 1 photo is among your downloads").await;
    let copy = folder.join("copy.json");
    std::fs::write(&copy, downloaded(&given, "json").await).unwrap();

    // Another device, with nothing on it.
    let host = serve("/");
    let other = Browser::start(Engine::Chromium, "photo-other").await;
    other.open(&host.address()).await;
    other.size(390, 844).await;
    other.sees("From the formula to the poured candle").await;
    other.room("desk").await;
    other.sees("Open a copy").await;
    choose(&other, COPY, &copy).await;
    other.sees("1 photo is not here yet.").await;
    other.shot("desk-copy-photo-390").await;
    other.tap("Take them in").await;
    other.sees("and 1 photo were taken in.").await;
    other.saved().await;
    to_the_candle(&other).await;
    assert_eq!(shown(&other).await, first);
    other.end().await;

    // Damaged, it is told, and the copy has it whole.
    b.client.execute_async(DAMAGE, vec![]).await.unwrap();
    to_the_candle(&b).await;
    b.sees("This photo is damaged.").await;
    b.room("desk").await;
    choose(&b, COPY, &copy).await;
    b.sees("1 photo is not here yet.").await;
    b.tap("Take them in").await;
    b.sees("1 photo was taken in.").await;
    to_the_candle(&b).await;
    assert_eq!(shown(&b).await, first);
    b.tap("Take it away").await;
    b.waits("no photo", "return !document.querySelector('.photo')", vec![]).await;
    b.saved().await;
    assert_eq!(b.errors(GONE).await, Vec::<String>::new());
    b.end().await;
    std::fs::remove_dir_all(folder).unwrap();
}
