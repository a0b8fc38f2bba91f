//! The whole pour: by touch and by keyboard, with the server gone, after a restart, after kills, in three engines.

use crate::browser::{Browser, Engine, GONE};
use crate::flow::{begin, done, finish, from_the_device, moved_on, own_workshop, ready, step};
use crate::host::Host;
use fantoccini::key::Key;
use std::path::Path;

pub(crate) fn serve(under: &str) -> Host {
    Host::start(&Path::new(env!("CARGO_MANIFEST_DIR")).join("dist"), 0, under)
        .expect("tools/build makes dist/")
}

/// By touch, from an empty app, below a sub-path, the server gone after the first load, the browser closed in the
/// middle and opened again with still no server.
#[tokio::test]
async fn a_pour_by_touch_with_the_server_gone() {
    let host = serve("/some/where/");
    let address = host.address();
    let mut b = Browser::start(Engine::Chromium, "touch").await;
    from_the_device(&b, host).await;
    own_workshop(&b).await;
    b.shot("formula").await;
    begin(&b).await;
    b.shot("pot-first-step").await;
    done(&b).await;
    b.saved().await;
    let at = step(&b).await;
    b.close_and_restart().await;
    b.open(&address).await;
    b.size(1024, 768).await;
    b.sees("Step").await;
    assert_eq!(step(&b).await, at, "the same step after a restart");
    finish(&b).await;
    b.shot("record").await;
    b.room("book").await;
    b.sees("Past pours").await;
    b.sees("Quiet orchard").await;
    assert_eq!(b.errors(GONE).await, Vec::<String>::new());
    b.end().await;
}

/// By keyboard alone once the workshop stands: the focus is where the next key is wanted.
#[tokio::test]
async fn a_pour_by_keyboard() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "keyboard").await;
    b.open(&host.address()).await;
    own_workshop(&b).await;
    begin(&b).await;
    let enter = char::from(Key::Enter).to_string();
    let mut is_read = false;
    for _ in 0..60 {
        if b.shows("Vessels filled").await {
            break;
        }
        ready(&b).await;
        if !is_read && b.shows("Add at").await {
            b.fill("Thermometer", "191 F").await;
            b.keys(&enter).await;
            b.sees("191 °F at").await;
            b.client.execute("document.querySelector('.hand button.main').focus()", vec![]).await.unwrap();
            is_read = true;
        }
        let before = step(&b).await;
        b.keys(&enter).await;
        moved_on(&b, before).await;
    }
    b.sees("Vessels filled").await;
    assert!(is_read, "the thermometer was read by keyboard");
    b.end().await;
}

/// What could not be read back is not done: the sentence stands there, what was typed stays, nothing says it is saved, and
/// the book opens whole afterwards.
#[tokio::test]
async fn what_is_too_long_to_keep_is_refused() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "long").await;
    b.open(&host.address()).await;
    own_workshop(&b).await;
    b.room("book/vessel/new").await;
    b.fill("Name of the vessel", "Second jar").await;
    b.fill("Weight in one vessel", "200 g").await;
    b.set("Note", &"x".repeat(1_000_001)).await;
    b.tap("Save vessel").await;
    b.sees("That is too long to be kept. Make it shorter, then save again.").await;
    assert_eq!(b.length("Note").await, 1_000_001, "what was typed stays");
    b.set("Note", "a short note").await;
    b.tap("Save vessel").await;
    b.sees("a short note").await;
    b.saved().await;
    b.open(&host.address()).await;
    b.room("book").await;
    b.sees("Second jar").await;
    assert!(!b.shows("set aside").await, "{}", b.text().await);
    b.end().await;
}

/// What is typed into a form and not saved is there again after a kill, once the browser itself has written it down.
#[tokio::test]
async fn what_is_typed_outlives_a_kill() {
    let host = serve("/");
    let mut b = Browser::start(Engine::Chromium, "typed").await;
    b.open(&host.address()).await;
    b.sees("From the formula to the poured candle").await;
    b.room("book/vessel/new").await;
    b.fill("Name of the vessel", "Half-typed jar").await;
    b.fill("Weight in one vessel", "180 g of what").await;
    b.written("180 g of what").await;
    b.kill_and_restart().await;
    b.open(&host.address()).await;
    b.room("book").await;
    b.sees("Half-typed jar").await;
    b.room("book/vessel/new").await;
    let typed =
        "return [...document.querySelectorAll('#room input')].map((i) => i.value).includes('180 g of what')";
    b.waits("what was typed", typed, vec![]).await;
    b.set("Weight in one vessel", "180 g").await;
    b.tap("Save vessel").await;
    b.sees("Half-typed jar").await;
    b.saved().await;
    b.room("book").await;
    b.sees("Half-typed jar").await;
    assert!(!b.shows("Being written").await, "{}", b.text().await);
    b.end().await;
}

/// Killed fifty times in the middle of pours, at moments chosen by chance: nothing acknowledged is lost.
#[tokio::test]
async fn killed_in_the_middle() {
    let outcome = crate::kill::outcome(&serve("/").address(), "kill", 50, u64::MAX).await;
    assert_eq!(outcome.kills, 50);
    let found = (outcome.lost, outcome.unreadable, outcome.early);
    assert_eq!(found, (0, 0, 0), "lost, unreadable, said too early");
}

/// The same pour where the server is gone, in another engine.
async fn offline_in(engine: Engine, name: &str) {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(engine, name).await;
    b.open(&address).await;
    b.kept_offline().await;
    drop(host);
    b.open(&address).await;
    own_workshop(&b).await;
    begin(&b).await;
    finish(&b).await;
    b.open(&address).await;
    b.room("book").await;
    b.sees("Past pours").await;
    b.sees("Quiet orchard").await;
    b.end().await;
}

#[tokio::test]
async fn a_pour_offline_in_firefox() {
    offline_in(Engine::Firefox, "firefox").await;
}

#[tokio::test]
async fn a_pour_offline_in_webkit() {
    offline_in(Engine::WebKit, "webkit").await;
}
