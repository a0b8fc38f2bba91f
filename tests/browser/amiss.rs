//! Whatever is tapped and typed, in any order: no error, nothing wider than the page, never an empty one.

use crate::browser::{Browser, Engine};
use crate::flow::demo;
use crate::pour::serve;
use serde_json::json;

const STEPS: &str = include_str!("amiss.js");
const ROOMS: &[&str] = &[
    "pot",
    "shelf",
    "stores",
    "bench",
    "book",
    "desk",
    "shelf/plan",
    "bench/burn",
    "bench/freeze",
    "book/done",
];
const SIZES: &[(u32, u32)] = &[(1024, 768), (768, 1024), (390, 844)];

/// Chromium does not ask before a page is left that nobody touched with a finger, and says so.
const IDLE: Option<&str> = Some("'beforeunload'");

/// So many rounds by chance from `seed`, each of twenty steps in some room at some size.
async fn by_chance(seed: u64, rounds: u64) {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, &format!("amiss-{seed}")).await;
    let quiet = "window.print = () => {}; window.confirm = () => true;";
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": quiet })).await.unwrap();
    b.open(&host.address()).await;
    demo(&b).await;
    for round in 0..rounds {
        let by = seed.wrapping_mul(2_654_435_761).wrapping_add(round.wrapping_mul(40_503));
        let of = |n: usize, shift: u32| usize::try_from(by >> shift).unwrap() % n;
        let (width, height) = SIZES[of(SIZES.len(), 3)];
        b.size(width, height).await;
        if round % 3 == 0 {
            b.room(ROOMS[of(ROOMS.len(), 5)]).await;
        }
        let told =
            b.client.execute_async(STEPS, vec![json!(by % 4_294_967_291 + 1), json!(20)]).await.unwrap();
        let found = b.errors(IDLE).await;
        if !found.is_empty() || !told[1].is_null() {
            b.shot(&format!("amiss-{seed}")).await;
            panic!("round {round} of {seed} at {width}: {} {found:?} after {:#}", told[1], told[0]);
        }
    }
    b.saved().await;
    b.end().await;
}

#[tokio::test]
async fn whatever_is_tapped_and_typed() {
    by_chance(7, 40).await;
}

/// A sheet over the page is closed by going: the browser tells of it when the page has gone.
#[tokio::test]
async fn a_page_that_is_thrown_away_leaves_no_error() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "thrown-away").await;
    b.open(&host.address()).await;
    demo(&b).await;
    b.room("book/formula/new").await;
    b.fill("Name of the formula", "Never kept").await;
    b.tap("Throw away").await;
    b.tap("Throw it away").await;
    b.sees("Wet Slate").await;
    assert_eq!(b.errors(IDLE).await, Vec::<String>::new());
    b.end().await;
}

/// Why a thing that was done changes nothing can be a long sentence.
#[tokio::test]
async fn what_changes_nothing_says_so_within_the_page() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "changes-nothing").await;
    b.open(&host.address()).await;
    b.size(390, 844).await;
    demo(&b).await;
    b.room("book/done").await;
    let undo = "[...document.querySelectorAll('#room li')].findLast((l) => /Step done: wax/.test(l.innerText)).querySelector('button').click()";
    b.client.execute(undo, vec![]).await.unwrap();
    b.sees("Changes nothing: Not yet").await;
    let wide = "return document.documentElement.scrollWidth - innerWidth";
    assert!(b.client.execute(wide, vec![]).await.unwrap().as_i64().unwrap() <= 0);
    b.end().await;
}

/// One word of four hundred letters in every field of every form.
#[tokio::test]
async fn the_longest_word_stays_within_the_page() {
    const TYPE: &str = r#"
        for (const e of document.querySelectorAll("details")) e.open = true;
        for (const e of document.querySelectorAll("main input, main textarea"))
          if (["text", "search", "textarea"].includes(e.type)) {
            e.value = "m".repeat(400);
            e.dispatchEvent(new Event("input", { bubbles: true }));
          }
        const done = arguments[0];
        requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)));"#;
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "long-word").await;
    let quiet = "window.confirm = () => true;";
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": quiet })).await.unwrap();
    b.open(&host.address()).await;
    demo(&b).await;
    let mut found = Vec::new();
    for page in [
        "book/formula/demo-orchard/change",
        "book/vessel/new",
        "stores/new",
        "shelf/product/new",
        "shelf/customer/new",
        "desk/label/new",
        "bench/burn/new",
        "bench/scale",
    ] {
        b.room(page).await;
        b.client.execute_async(TYPE, vec![]).await.unwrap();
        for &(width, height) in SIZES {
            b.size(width, height).await;
            let over =
                b.client.execute("return document.documentElement.scrollWidth - innerWidth", vec![]).await;
            if over.unwrap().as_i64().is_none_or(|over| over > 0) {
                found.push(format!("{page} at {width}"));
            }
        }
    }
    assert_eq!(found, Vec::<String>::new());
    b.end().await;
}
