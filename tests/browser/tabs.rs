//! Two tabs of one browser that change one formula.

use crate::browser::{Browser, Engine};
use crate::flow::own_workshop;
use crate::kill::stored;
use crate::label::{LINES, add};
use crate::pour::serve;
use serde_json::Value;

/// Both change the same field of the same version; both changes are kept and shown in both tabs, and one is chosen.
#[tokio::test]
async fn two_tabs_change_one_formula() {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "two-tabs").await;
    b.size(1024, 768).await;
    b.open(&address).await;
    own_workshop(&b).await;
    let thing = b.client.execute("return location.hash.split('/')[2]", vec![]).await.unwrap();
    let thing = thing.as_str().unwrap().to_owned();
    let (change, page) = (format!("book/formula/{thing}/change"), format!("book/formula/{thing}"));
    b.room(&change).await;
    b.set("Note", "said in the first tab").await;

    let first = b.client.window().await.unwrap();
    let second = b.client.new_window(true).await.unwrap().handle;
    b.client.switch_to_window(second.clone()).await.unwrap();
    b.size(1024, 768).await;
    b.open(&format!("{address}#{change}")).await;
    // The first tab keeps what was typed on the device; this one starts from what is saved.
    b.set("Note", "said in the second tab").await;
    b.tap("Save formula").await;
    b.sees("Version").await;
    b.saved().await;

    b.client.switch_to_window(first).await.unwrap();
    b.tap("Save formula").await;
    b.saved().await;
    let both = async |b: &Browser| {
        b.sees("Changed in two windows since").await;
        b.sees("said in the first tab").await;
        b.sees("said in the second tab").await;
    };
    both(&b).await;
    b.client.switch_to_window(second).await.unwrap();
    both(&b).await;

    // The one that does not count for now.
    let other = "const all = [...document.querySelectorAll('.fork .tips > li')]; \
        const one = all.find((li) => li.innerText.includes('said in the second tab')); \
        one.querySelector('button').click(); return all.length";
    assert_eq!(b.client.execute(other, vec![]).await.unwrap(), 2);
    b.waits("the choice to be made", "return !document.querySelector('.fork')", vec![]).await;
    b.saved().await;
    b.open("about:blank").await;
    b.open(&format!("{address}#{page}")).await;
    b.sees("said in the second tab").await;
    assert!(!b.shows("said in the first tab").await);
    // What was not chosen is still there, and the choice can be taken back.
    b.room(&format!("book/history/{thing}")).await;
    b.sees("said in the first tab").await;
    let lines: Vec<Value> = stored(&b).await.values().map(|l| serde_json::from_str(l).unwrap()).collect();
    assert!(lines.iter().any(|l| l["act"]["Choose"].is_object()));
    b.tap("Undo: Quiet orchard Chosen among versions").await;
    both(&b).await;
    b.end().await;
}

/// What a formula brings to its label is reckoned once, not with every letter: but anew when the book has changed, and the
/// sheet under the label follows.
#[tokio::test]
async fn a_label_in_one_tab_follows_the_safety_data_of_another() {
    const SAID: &str = "return ['.label-large', '.label-page'].every((of) => \
        document.querySelector(of)?.textContent.includes('allergic') === arguments[0])";
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "label-tabs").await;
    b.size(1024, 768).await;
    b.open(&address).await;
    own_workshop(&b).await;
    add(&b, "Underside", "80 mm", "3", &["Name of the candle", "Net contents"]).await;
    b.waits("a label without hazards", SAID, vec![Value::Bool(false)]).await;
    b.sees("What hazards the candle has to bear cannot be told yet").await;

    let first = b.client.window().await.unwrap();
    let second = b.client.new_window(true).await.unwrap().handle;
    b.client.switch_to_window(second).await.unwrap();
    b.open(&format!("{address}#desk/safety/new")).await;
    b.fill("Ingredient", "Apple").await;
    b.set("Lines of section 3", LINES).await;
    b.tap("Keep this sheet").await;
    b.sees("3 substances").await;
    b.saved().await;

    b.client.switch_to_window(first).await.unwrap();
    b.waits("a label with the hazards", SAID, vec![Value::Bool(true)]).await;
    // A letter typed now keeps them.
    b.fill("Batch number", "2611-04").await;
    b.waits(
        "the number on the sheet",
        "return document.querySelector('.label-page').textContent.includes('2611-04')",
        vec![],
    )
    .await;
    b.waits("the hazards still", SAID, vec![Value::Bool(true)]).await;
    b.end().await;
}
