//! From an order to what is sent, by touch, with the server gone.

use crate::browser::{Browser, Engine};
use crate::flow::{begin, finish, for_sale, from_the_device, own_workshop, tick_all};
use crate::look::{axe, look};
use crate::pour::serve;

/// Every line in the storage of this device.
async fn stored(b: &Browser) -> String {
    const READ: &str = r#"
const done = arguments[arguments.length - 1];
const one = (name) => new Promise((then) => {
  indexedDB.open(name).onsuccess = ({ target }) => {
    const db = target.result;
    const all = db.transaction("entries").objectStore("entries").getAll();
    all.onsuccess = () => { db.close(); then(all.result.join("\n")); };
  };
});
indexedDB.databases().then((all) => Promise.all(all.map((d) => one(d.name)))).then((t) => done(t.join("\n")));
"#;
    b.client.execute_async(READ, vec![]).await.unwrap().as_str().unwrap().to_owned()
}

#[tokio::test]
async fn an_order_is_poured_finished_and_sent() {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "shelf").await;
    from_the_device(&b, host).await;
    own_workshop(&b).await;
    for_sale(&b, &[("To have in store", "2"), ("Days until it ships", "0")]).await;
    b.sees("2 candles fewer than you wish to have in store").await;

    // Nothing ordered is no order; then one for three.
    b.tap("New order").await;
    b.sees("Keep this order").await;
    b.tap("Keep this order").await;
    b.sees("Say how many of which candle are ordered.").await;
    b.fill("Orchard jar", "3").await;
    b.tap("Keep this order").await;
    b.sees("Short 3 candles").await;
    b.saved().await;

    begin(&b).await;
    finish(&b).await;
    // Until somebody has seen them solid, or it is said that nothing is waited for, they are not ready today.
    b.room("shelf").await;
    b.sees("All there, ready").await;
    b.room("desk").await;
    b.fill("Days until the wax is solid", "0").await;
    b.tap("Keep these").await;
    b.room("shelf").await;
    b.sees("All there, not finished").await;
    b.sees("4 candles, 1 of them free").await;
    b.shot("shelf-list").await;

    // What is not finished goes only by a choice of its own, which says what is missing.
    let (axe, mut found) = (axe(), Vec::new());
    b.client
        .execute("document.querySelector('.list a[href^=\"#shelf/order\"]').click()", vec![])
        .await
        .unwrap();
    b.sees("not done: The wax is solid through, Wicks trimmed").await;
    assert!(!b.shows("Send 3 candles").await);
    look(&b, &axe, "shelf-order", &mut found).await;
    b.tap("Send although unfinished").await;
    b.sees("Send 3 candles as they are").await;
    look(&b, &axe, "shelf-order-although", &mut found).await;
    b.tap("No, go back").await;
    b.room("shelf").await;
    b.sees("All there, not finished").await;

    // Finishing waits for the wax.
    b.client
        .execute("document.querySelector('.list a[href^=\"#shelf/batch\"]').click()", vec![])
        .await
        .unwrap();
    b.sees("The wax is solid through").await;
    let waits = "return document.querySelectorAll('.tick:disabled').length === 5";
    b.waits("steps that wait", waits, vec![]).await;
    tick_all(&b).await;
    b.tap("Candles went, or came back").await;
    b.tap("Write it down").await;
    b.sees("1 candle broken").await;
    b.saved().await;
    b.shot("shelf-batch").await;

    b.room("shelf").await;
    b.sees("3 candles, 0 of them free").await;
    b.client
        .execute("document.querySelector('.list a[href^=\"#shelf/order\"]').click()", vec![])
        .await
        .unwrap();
    b.sees("Can go now").await;
    b.shot("shelf-order").await;
    b.tap("Send 3 candles").await;
    b.sees("All of this order is sent.").await;
    b.sees("3 × Orchard jar").await;
    b.saved().await;
    b.open(&address).await;
    b.room("shelf").await;
    b.sees("No order waits.").await;
    b.room("book").await;
    b.sees("Quiet orchard").await;

    // An order that is sent is found again, and by its candles' number on the label everything in them; a slip is told.
    b.tap("Shelf").await;
    b.tap("Orders that are done").await;
    b.sees("3 × Orchard jar").await;
    look(&b, &axe, "shelf-done", &mut found).await;
    b.size(390, 844).await;
    b.client
        .execute("document.querySelector('.list a[href^=\"#shelf/order\"]').click()", vec![])
        .await
        .unwrap();
    b.sees("All of this order is sent.").await;
    b.client
        .execute("document.querySelector('.list a[href^=\"#shelf/batch\"]').click()", vec![])
        .await
        .unwrap();
    let number = "return document.querySelector('.number strong')?.innerText ?? null";
    let number = b.wait_js("the batch number", number, vec![]).await;
    let number = number.as_str().unwrap_or_default().to_lowercase().replace('-', "");
    b.room("book").await;
    b.fill("Find", &number).await;
    b.sees("Past pours Quiet orchard").await;
    let other = if number.ends_with('2') { '3' } else { '2' };
    b.fill("Find", &[&number[..number.len() - 1], &other.to_string()].concat()).await;
    b.sees("its check sign does not fit").await;

    // Somebody who is removed is gone.
    b.room("shelf/customer/new").await;
    b.fill("Name", "R. Example").await;
    b.tap("Keep this customer").await;
    b.sees("R. Example").await;
    b.client
        .execute("document.querySelector('.list a[href^=\"#shelf/customer/\"]').click()", vec![])
        .await
        .unwrap();
    b.saved().await;
    assert!(stored(&b).await.contains("R. Example"));
    b.tap("Remove this person").await;
    b.sees("this cannot be undone").await;
    b.tap("Remove for good").await;
    b.sees("Nobody is named yet.").await;
    b.saved().await;
    let lines = stored(&b).await;
    assert!(!lines.contains("R. Example") && lines.contains("\"removed\":true"), "{lines}");
    // Nor does the history give it back.
    b.room("book/done").await;
    b.sees("Removed from the book for good").await;
    assert!(!b.shows("R. Example").await);

    for (page, sees) in [
        ("shelf", "No order waits."),
        ("shelf/order/new", "Keep this order"),
        ("shelf/product/new", "Keep this candle"),
    ] {
        b.room(page).await;
        b.sees(sees).await;
        look(&b, &axe, &page.replace('/', "-"), &mut found).await;
    }
    b.size(1024, 768).await;
    b.room("shelf").await;
    b.client.execute("document.querySelector('h3 a').click()", vec![]).await.unwrap();
    b.sees("Sell it no more").await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.end().await;
}
