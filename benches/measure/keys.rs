//! From a key to the frame that has its answer, with the processor slowed to a quarter. What a field with nothing behind
//! it takes in the same browser is printed beside it: on a slow machine without a graphics card that alone is more than
//! the budget.

use crate::browser::Browser;
use crate::flow::done;
use crate::{line, quantile, serve};
use serde_json::{Value, json};
use std::time::Duration;

/// Pairs of a digit and a backspace in each field.
const PAIRS: u32 = 60;

/// A field of each room that has one with an answer: the figure's name, where it is, its label, what stands in it, and
/// after how many letters of that the digits go in. What is answered is all the words of the room.
/// Of a field that answers nothing while the number is good, the number grows too large and good again by turns.
const FIELDS: [(&str, &str, &str, &str, u32); 12] = [
    ("order", "shelf/order/new", "Late Orchard, jar", "99999", 1),
    ("product", "shelf/product/new", "To have in store", "99999", 1),
    ("supply", "stores/of/demo-lot-1/supply", "Days until it comes", "99999", 1),
    ("short", "stores/short", "How much of it is left", "1 oz", 1),
    ("lot", "stores/lot/new", "Price of all of it", "1", 1),
    ("drops", "bench/drops", "The scale shows", "1 g", 1),
    ("freeze", "bench/freeze", "Room", "1", 1),
    ("find", "book", "Find", "1", 1),
    ("formula", "book/formula/new", "Melt to", "1", 1),
    ("vessel", "book/vessel/new", "Water to the brim", "1", 1),
    ("cost", "desk/cost", "How many in a batch", "1", 1),
    ("label", "desk/print/demo-label-front", "Net weight to declare", "1 g", 1),
];

/// Begins to time keys: from the event's own time stamp to the end of the first frame in which the answer is another.
const WATCH: &str = r##"
const answer = {
  bare: () => document.querySelector("output").textContent,
  converter: () => document.querySelector("dialog[open]").textContent,
  count: () => document.querySelector("dialog[open]").textContent,
  thermometer: () => document.querySelector("#room input[type=range]").value,
}[arguments[0]] ?? (() => document.getElementById("room").textContent);
window.keyTimes = [];
window.keyWatch?.abort();
window.keyWatch = new AbortController();
addEventListener("keydown", ({ timeStamp }) => {
  const before = answer();
  const look = () => {
    if (answer() === before) return requestAnimationFrame(look);
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => { window.keyTimes.push(performance.now() - timeStamp); };
    port2.postMessage(0);
  };
  requestAnimationFrame(look);
}, { capture: true, signal: window.keyWatch.signal });
"##;

/// Puts the cursor after so many letters of the field that has the focus.
const CURSOR: &str = "document.activeElement.setSelectionRange(arguments[0], arguments[0])";

async fn press(b: &Browser, key: char) {
    let keys = match key {
        '\u{8}' => json!({ "key": "Backspace", "code": "Backspace", "windowsVirtualKeyCode": 8 }),
        digit => json!({
            "key": digit, "code": format!("Digit{digit}"), "text": digit, "windowsVirtualKeyCode": u32::from(digit),
        }),
    };
    for kind in ["keyDown", "keyUp"] {
        let mut event = keys.clone();
        event["type"] = json!(kind);
        b.cdp("Input.dispatchKeyEvent", event).await.unwrap();
    }
}

/// The times of all keys in one field, ms. Every key changes the answer: a digit goes in after `cursor` letters of
/// `text`, and out again.
async fn field(b: &Browser, name: &str, label: &str, text: &str, cursor: u32) -> Vec<f64> {
    b.fill(label, text).await;
    b.client.execute(CURSOR, vec![json!(cursor)]).await.unwrap();
    b.client.execute(WATCH, vec![json!(name)]).await.unwrap();
    b.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await.unwrap();
    for pair in 0..PAIRS {
        let digit = char::from_digit(2 + pair % 8, 10).unwrap();
        for key in [digit, '\u{8}'] {
            press(b, key).await;
            // Not in step with the frames.
            tokio::time::sleep(Duration::from_millis(101 + u64::from(pair % 17))).await;
        }
    }
    b.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": 1 })).await.unwrap();
    let times = b.client.execute("window.keyWatch.abort(); return window.keyTimes", vec![]).await.unwrap();
    let times: Vec<f64> = times.as_array().unwrap().iter().filter_map(Value::as_f64).collect();
    assert_eq!(times.len(), 2 * PAIRS as usize, "{name}: a key without an answer");
    times
}

/// A field and its answer with nothing behind them, in the bare counter's page: what any key costs here.
const BARE: &str = r#"
const [label, field, output] = ["label", "input", "output"].map((name) => document.createElement(name));
label.append("Bare", field);
document.body.append(label, output);
field.addEventListener("input", () => { output.textContent = field.value; });
"#;

/// The floor, ms; to be called before the app is opened.
pub(crate) async fn floor(b: &Browser) -> f64 {
    let host = serve("POTSIDE_BARE");
    b.open(&host.address()).await;
    b.client.execute(BARE, vec![]).await.unwrap();
    let mut times = field(b, "bare", "Bare", "1", 1).await;
    let floor = quantile(&mut times, 0.95);
    line("bare_key_to_paint_ms_p95_cpu4x", floor, "ms", None);
    floor
}

/// Begins a pour, and goes on to the first step that wants a temperature.
pub(crate) async fn to_a_temperature(b: &Browser) {
    b.tap("Start this pour").await;
    b.sees("Step 1 of").await;
    while !b.shows("Note it").await {
        done(b).await;
    }
}

/// The times of all fields, and the figure of the one that takes longest.
#[derive(Default)]
pub(crate) struct Times {
    all: Vec<f64>,
    worst: f64,
}

impl Times {
    /// Prints the figure of one field.
    fn said(&mut self, name: &str, mut times: Vec<f64>) {
        let figure = quantile(&mut times, 0.95);
        line(&format!("key_to_paint_{name}_ms_p95_cpu4x"), figure, "ms", None);
        self.worst = self.worst.max(figure);
        self.all.append(&mut times);
    }
}

/// Of the pour's form, of the converter, and of a field of every other room; back at the Pot.
pub(crate) async fn rooms(b: &Browser) -> Times {
    let mut times = Times::default();
    times.said("pot", field(b, "pot", "How many vessels", "1", 1).await);
    b.tap("Convert").await;
    times.said("converter", field(b, "converter", "Amount with its unit", "1 oz", 1).await);
    b.tap("Close").await;
    for (name, place, label, text, cursor) in FIELDS {
        b.room(place).await;
        times.said(name, field(b, name, label, text, cursor).await);
    }
    b.room("stores/lot/demo-lot-1").await;
    b.tap("Count what is there").await;
    times.said("count", field(b, "count", "How much is really there", "1 g", 1).await);
    b.tap("Close").await;
    b.room("pot").await;
    times
}

/// Of the thermometer at the pot, and of all fields together.
pub(crate) async fn figures(b: &Browser, floor: f64, mut times: Times) {
    times.said("thermometer", field(b, "thermometer", "Thermometer", "18", 2).await);
    let all = quantile(&mut times.all, 0.95);
    line("key_to_paint_over_bare_ms_p95_cpu4x", all - floor, "ms", None);
    // Of all keys together most are in small forms: so the form that takes longest is told by itself.
    line("key_to_paint_worst_ms_p95_cpu4x", times.worst, "ms", Some(16.7));
    line("key_to_paint_ms_p95_cpu4x", all, "ms", Some(16.7));
}
