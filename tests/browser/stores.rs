//! The stores by touch: a lot is bought, poured, traced, put on hold and recalled; and how their pages look.

use crate::browser::{Browser, Engine, GONE};
use crate::flow::{begin, demo, done, finish, from_the_device, own_workshop};
use crate::look::{axe, look};
use crate::pour::serve;
use serde_json::json;

/// A lot of 500 g that came today.
pub(crate) async fn came(b: &Browser, what: &str, lot: &str, price: &str) {
    b.room("stores/lot/new").await;
    b.fill("What it is", what).await;
    b.fill("Lot number", lot).await;
    b.fill("One pack holds", "500 g").await;
    b.fill("How many packs", "2").await;
    b.fill("Price of all of it", price).await;
    b.sees("In all: 2.205 lb (1000.0 g)").await;
    b.tap("Keep this lot").await;
    b.sees(&format!("Lot {lot}")).await;
    b.sees("Into no candle so far.").await;
}

/// By touch, from an empty app, the server gone after the first load.
#[tokio::test]
async fn a_lot_from_its_delivery_to_its_recall() {
    let host = serve("/some/where/");
    let b = Browser::start(Engine::Chromium, "stores").await;
    from_the_device(&b, host).await;
    own_workshop(&b).await;
    came(&b, "Plain wax", "W-1", "12").await;
    came(&b, "Apple", "A-7", "40").await;
    begin(&b).await;
    b.sees("From lot W-1").await;
    finish(&b).await;
    b.sees("From which lots").await;
    b.shot("stores-record").await;
    b.tap("A-7").await;
    b.sees("Where it went").await;
    b.sees("Quiet orchard").await;
    b.sees("4 × Straight jar").await;
    b.sees("53.0 g").await;
    b.tap("Put on hold").await;
    b.tap("Keep it").await;
    b.sees("Say why").await;
    b.fill("Why", "It smells of solvent").await;
    b.tap("Keep it").await;
    b.sees("This lot is on hold").await;
    b.shot("stores-held").await;
    b.tap("Recall sheet").await;
    b.sees("Candles with it in them: 4, of 1 batch.").await;
    b.shot("stores-recall").await;
    b.sees("Who has them None were sent. On the shelf: 4.").await;
    b.cdp("Emulation.setEmulatedMedia", json!({ "media": "print" })).await.unwrap();
    b.shot("stores-recall-print").await;
    b.cdp("Emulation.setEmulatedMedia", json!({ "media": "" })).await.unwrap();
    // One went to a fair as a sample: whoever has it is told on the sheet.
    b.room("shelf").await;
    b.client
        .execute("document.querySelector('.list a[href^=\"#shelf/batch\"]').click()", vec![])
        .await
        .unwrap();
    b.tap("Candles went, or came back").await;
    b.tap("Sample").await;
    b.fill("Why", "Mill Lane fair").await;
    b.tap("Write it down").await;
    b.sees("as a sample").await;
    b.room("stores").await;
    b.tap("Apple").await;
    b.tap("Lot A-7").await;
    b.tap("Recall sheet").await;
    b.sees("A sample Mill Lane fair On the shelf: 3.").await;
    b.shot("stores-recall-sample").await;
    b.room("pot").await;
    b.sees("Lot A-7 of “Apple” is on hold, so it is not used.").await;
    b.room("stores").await;
    b.sees("one on hold").await;
    b.tap("Apple").await;
    b.tap("Lot A-7").await;
    b.tap("Count what is there").await;
    b.fill("How much is really there", "940 g").await;
    b.fill("Why", "Weighed the bottle").await;
    b.tap("Keep it").await;
    b.sees("Counted: 33.16 oz (940.0 g)").await;
    b.sees("7.0 g").await;
    b.tap("Take it back").await;
    b.sees("947.0 g").await;
    b.room("shelf").await;
    b.room("desk/cost").await;
    b.sees("a candle").await;
    b.saved().await;
    assert_eq!(b.errors(GONE).await, Vec::<String>::new());
    b.end().await;
}

/// Every page of them in the demo: what axe finds, nothing cut off, no sideways scroll.
#[tokio::test]
async fn the_pages_of_the_stores_and_the_costs() {
    let (host, axe, mut found) = (serve("/"), axe(), Vec::new());
    let b = Browser::start(Engine::Chromium, "stores-look").await;
    b.open(&host.address()).await;
    demo(&b).await;
    for (slug, words, name) in [
        ("stores", "On hand", "stores"),
        ("stores/of/demo-lot-0", "Order when no more than", "stores-of"),
        ("stores/lot/demo-lot-7", "What became of it", "stores-lot"),
        ("stores/lot/demo-lot-7/recall", "Recall sheet", "stores-recall"),
        ("stores/lot/new", "Something came", "stores-new"),
        ("stores/of/demo-lot-0/supply", "How it is bought", "stores-supply"),
        ("desk/cost", "By the size of the batch", "cost"),
        ("desk/rates", "An hour of work", "rates"),
    ] {
        b.room(slug).await;
        b.sees(words).await;
        look(&b, &axe, name, &mut found).await;
    }
    b.room("shelf").await;
    b.size(1024, 768).await;
    b.room("stores/lot/demo-lot-7").await;
    b.tap("4 × Shoulder jar").await;
    b.tap("What it cost").await;
    b.sees("By the lots used").await;
    look(&b, &axe, "cost-batch", &mut found).await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.end().await;
}

/// A lot of vessels turns out to be cracked when the first one is filled: the pour waits until another is named, and its record
/// says of which lot each vessel is.
#[tokio::test]
async fn a_lot_of_vessels_on_hold_stops_the_filling() {
    let host = serve("/vessels/");
    let b = Browser::start(Engine::Chromium, "stores-vessels").await;
    from_the_device(&b, host).await;
    own_workshop(&b).await;
    for lot in ["J-1", "J-2"] {
        b.room("stores/lot/new").await;
        b.fill("What it is", "Straight jar").await;
        b.fill("Lot number", lot).await;
        b.fill("One pack holds", "500 g").await;
        b.fill("Price of all of it", "12").await;
        b.tap("Keep this lot").await;
        b.sees("Choose “Pieces” for “Straight jar”").await;
        b.tap("Pieces").await;
        b.fill("One pack holds", "12").await;
        b.tap("Keep this lot").await;
        b.sees(&["Lot ", lot].concat()).await;
    }
    begin(&b).await;
    while !b.shows("All filled").await {
        done(&b).await;
    }
    done(&b).await;
    b.room("stores").await;
    b.tap("Straight jar").await;
    b.tap("Lot J-1").await;
    b.tap("Put on hold").await;
    b.fill("Why", "Cracks in the base").await;
    b.tap("Keep it").await;
    b.sees("This lot is on hold").await;
    b.room("pot").await;
    b.sees("A lot of this step is on hold").await;
    b.sees("Take another lot first").await;
    for (wide, high) in [(1024, 768), (768, 1024), (390, 844)] {
        b.size(wide, high).await;
        b.shot(&format!("pot-vessels-held-{wide}")).await;
    }
    b.size(1024, 768).await;
    b.tap("Another lot").await;
    b.tap("Lot J-2").await;
    finish(&b).await;
    b.sees("J-1 on hold 1 piece").await;
    b.sees("J-2 3 pieces").await;
    b.end().await;
}
