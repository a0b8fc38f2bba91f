//! Every room at three sizes, light and dark: what axe finds, nothing cut off, no sideways scroll, no other origin.

use crate::browser::{Browser, Engine};
use crate::flow::{demo, read_twice};
use crate::pour::serve;
use serde_json::json;

const ROOMS: &[(&str, &str)] = &[
    ("pot", "Pour"),
    ("shelf", "Shelf"),
    ("stores", "Stores"),
    ("bench", "Bench"),
    ("book", "Book"),
    ("desk", "Desk"),
];

const SIZES: &[(u32, u32)] = &[(1024, 768), (768, 1024), (390, 844)];

/// Text that its own box cuts off, and anything wider than the page.
pub(crate) const CUT: &str = r#"
const wide = document.documentElement.scrollWidth > innerWidth ? [`page ${document.documentElement.scrollWidth} wide`] : [];
const hides = (e) => ["hidden", "clip"].includes(getComputedStyle(e).overflowX);
const cut = [...document.querySelectorAll(`#app *`)].filter((e) =>
  e.getClientRects().length > 0 && !e.classList.contains("unseen") && hides(e) && e.scrollWidth > e.clientWidth + 1 && e.innerText);
return [...wide, ...cut.map((e) => `${e.tagName}.${e.className}: ${e.innerText.slice(0, 40)}`)];
"#;

/// The browser takes the colours on when it comes to it: later on a busy machine than the next frame. While it has only
/// begun, the same element has one of its colours dark and another light.
const TAKEN_ON: &str = r#"
const [scheme, done] = arguments;
const wait = (frames) => requestAnimationFrame(() => {
  const on = matchMedia(`(prefers-color-scheme: ${scheme})`).matches && document.getAnimations().every((a) => a.playState !== "running");
  frames === 0 ? done() : wait(on ? frames - 1 : 3);
});
wait(3);
"#;

const AXE: &str = r#"
const done = arguments[arguments.length - 1];
const why = (n) => [n.target.join(" "), ...n.any.map((c) => c.message)].join(": ");
axe.run(document, { resultTypes: ["violations"], rules: { region: { enabled: true } } }).then(
  (r) => done(r.violations.map((v) => `${v.id}: ${v.nodes.slice(0, 4).map(why).join(" | ")}`)),
  (e) => done([String(e)]));
"#;

pub(crate) fn axe() -> String {
    let tools = std::env::var("POTSIDE_TOOLS").expect("POTSIDE_TOOLS: tools/setup test says where");
    std::fs::read_to_string(format!("{tools}/npm/node_modules/axe-core/axe.min.js"))
        .expect("axe-core: tools/setup test")
}

pub(crate) async fn look(b: &Browser, axe: &str, name: &str, found: &mut Vec<String>) {
    for dark in [false, true] {
        let scheme = if dark { "dark" } else { "light" };
        let media = json!({ "features": [{ "name": "prefers-color-scheme", "value": scheme }] });
        b.cdp("Emulation.setEmulatedMedia", media).await.unwrap();
        b.client.execute_async(TAKEN_ON, vec![json!(scheme)]).await.unwrap();
        // By the protocol, since the page's policy forbids a script of the page to be made from text.
        b.cdp("Runtime.evaluate", json!({ "expression": axe })).await.unwrap();
        let violations = b.client.execute_async(AXE, vec![]).await.unwrap();
        found.extend(violations.as_array().unwrap().iter().map(|v| format!("{name}, {scheme}: {v}")));
        for &(width, height) in SIZES {
            b.size(width, height).await;
            let cut = b.client.execute(CUT, vec![]).await.unwrap();
            found.extend(cut.as_array().unwrap().iter().map(|c| format!("{name} at {width}: {c}")));
            b.shot(&format!("{name}-{width}-{scheme}")).await;
        }
    }
}

/// Pictures of one part of a page, by the selector of what stands at its head, to be looked at.
pub(crate) async fn pictured(b: &Browser, selector: &str, name: &str) {
    for dark in [false, true] {
        let scheme = if dark { "dark" } else { "light" };
        let media = json!({ "features": [{ "name": "prefers-color-scheme", "value": scheme }] });
        b.cdp("Emulation.setEmulatedMedia", media).await.unwrap();
        for &(width, height) in SIZES {
            b.size(width, height).await;
            let show = "document.querySelector(arguments[0]).scrollIntoView({ block: 'start', behavior: 'instant' })";
            b.client.execute(show, vec![json!(selector)]).await.unwrap();
            b.shot(&format!("{name}-{width}-{scheme}")).await;
        }
    }
}

#[tokio::test]
async fn every_room_in_light_and_dark_at_three_sizes() {
    let (host, axe, mut found) = (serve("/"), axe(), Vec::new());
    let b = Browser::start(Engine::Chromium, "look").await;
    b.open(&host.address()).await;
    b.sees("From the formula to the poured candle").await;
    look(&b, &axe, "first", &mut found).await;
    demo(&b).await;
    for (slug, title) in ROOMS {
        b.room(slug).await;
        b.sees(title).await;
        look(&b, &axe, slug, &mut found).await;
    }
    b.room("book/formula/new").await;
    look(&b, &axe, "formula-form", &mut found).await;
    for (place, words) in [
        ("desk/hazards", "Why"),
        ("desk/safety/new", "Lines of section 3"),
        ("desk/print/demo-label-under", "Print the sheet"),
    ] {
        b.room(place).await;
        b.sees(words).await;
        look(&b, &axe, &place.replace('/', "-"), &mut found).await;
    }
    b.room("bench/freeze").await;
    b.sees("Shrinks").await;
    b.tap("Draw the map").await;
    b.sees("Least:").await;
    look(&b, &axe, "freeze", &mut found).await;
    b.room("pot").await;
    b.tap("Start this pour").await;
    b.sees("Step 1 of").await;
    look(&b, &axe, "step", &mut found).await;
    read_twice(&b).await;
    b.sees("As it cools Room 72 °F, assumed").await;
    b.sees("Add Plum dye 180–188 °F").await;
    b.sees("; too cool in about").await;
    look(&b, &axe, "cooling", &mut found).await;
    for &(width, height) in SIZES {
        b.size(width, height).await;
        let show =
            "document.querySelector('.chart').scrollIntoView({ block: 'center', behavior: 'instant' })";
        b.client.execute(show, vec![]).await.unwrap();
        b.shot(&format!("chart-{width}")).await;
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
    let network = b.log("performance").await;
    let asked = network.iter().filter_map(|l| {
        let message: serde_json::Value = serde_json::from_str(l["message"].as_str()?).ok()?;
        message["message"]["params"]["request"]["url"].as_str().map(str::to_owned)
    });
    let other: Vec<_> = asked.filter(|u| u.starts_with("http") && !u.starts_with(&host.address())).collect();
    assert!(other.is_empty(), "asked another origin: {other:?}");
    assert_eq!(b.errors(None).await, Vec::<String>::new());
    b.end().await;
}
