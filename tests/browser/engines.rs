//! Every room in the engines that an iPad and Firefox have: it opens, computes and fetches its parts, with no error, nothing
//! cut off and nothing wider than the page.

use crate::browser::{Browser, Engine};
use crate::flow::demo;
use crate::look::CUT;
use crate::pour::serve;

/// What these drivers do not tell: what was thrown, and what was written to the console as an error.
const HEARD: &str = r#"
window.heard = [];
addEventListener("error", (e) => heard.push(String(e.message)));
addEventListener("unhandledrejection", (e) => heard.push(String(e.reason)));
addEventListener("securitypolicyviolation", (e) => heard.push(`${e.violatedDirective} ${e.blockedURI}`));
const said = console.error;
console.error = (...all) => (heard.push(all.join(" ")), said(...all));
"#;

type Typed = Option<(&'static str, &'static str)>;

/// A place, what is typed there into which field, and words of the answer.
const PLACES: &[(&str, Typed, &str)] = &[
    ("pot", Some(("How many vessels", "6")), "6 vessels"),
    ("shelf", None, "What to pour next"),
    ("shelf/plan", None, "No plan is better: that is proven."),
    ("shelf/order/new", None, "Keep this order"),
    ("stores", None, "On hand Brick dye"),
    ("stores/short", Some(("How much of it is left", "3 lb")), "Pour these"),
    ("stores/of/demo-lot-1/supply", None, "How it is bought: Meadow soft wax"),
    ("bench", None, "What you measure with"),
    ("bench/burn", None, "Burning now"),
    ("bench/freeze", Some(("Room", "60 F")), "15.6 °C"),
    ("book", None, "Past pours"),
    ("book/formula/new", None, "Save formula"),
    ("desk", None, "Cost and price"),
    ("desk/cost", Some(("How many in a batch", "7")), "$8.70 to $8.71 a candle"),
    ("desk/hazards", None, "Suppliers' limits"),
    ("desk/print/demo-label-front", Some(("Net weight to declare", "180 g")), "6.35 oz"),
];

async fn every_room_in(engine: Engine, name: &str) {
    let host = serve("/");
    let b = Browser::start(engine, name).await;
    b.open(&host.address()).await;
    b.sees("From the formula to the poured candle").await;
    b.client.execute(HEARD, vec![]).await.unwrap();
    demo(&b).await;
    let mut found = Vec::new();
    for (width, height) in [(1024, 768), (500, 844)] {
        b.size(width, height).await;
        for (place, typed, words) in PLACES {
            b.room(place).await;
            if let Some((label, text)) = typed {
                b.set(label, text).await;
            }
            b.sees(words).await;
            let cut = b.client.execute(CUT, vec![]).await.unwrap();
            found.extend(cut.as_array().unwrap().iter().map(|c| format!("{place} at {width}: {c}")));
            b.shot(&format!("{name}-{}-{width}", place.replace('/', "-"))).await;
        }
    }
    // What is reckoned beside the page.
    b.room("bench/freeze").await;
    // The answer comes above the button, and moves it.
    b.sees("Shrinks").await;
    b.tap("Draw the map").await;
    b.sees("Least:").await;
    let heard = b.client.execute("return heard", vec![]).await.unwrap();
    assert_eq!(heard, serde_json::json!([]));
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.end().await;
}

#[tokio::test]
async fn every_room_in_firefox() {
    every_room_in(Engine::Firefox, "rooms-firefox").await;
}

#[tokio::test]
async fn every_room_in_webkit() {
    every_room_in(Engine::WebKit, "rooms-webkit").await;
}
