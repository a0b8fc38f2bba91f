//! What a person does on a page: find by the words on the screen, tap, type, read.

use crate::browser::{Browser, Engine, PATIENCE};
use fantoccini::actions::{InputSource, PointerAction, TouchActions};
use fantoccini::elements::Element;
use fantoccini::key::Key;
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// Finds what can be pressed by its words: a visible button, link, summary or label whose text or aria-label is,
/// begins with, or contains the wanted one, in this order.
const FIND: &str = r#"
const [want, kinds] = arguments;
const words = (e) => (e.getAttribute("aria-label") || e.innerText || e.textContent || "").replace(/\s+/g, " ").trim();
const seen = (e) => e.getClientRects().length > 0 && getComputedStyle(e).visibility !== "hidden";
const open = document.querySelector("dialog[open]");
const all = [...(open ?? document).querySelectorAll(kinds)].filter(seen);
const low = want.toLowerCase();
const by = (test) => all.find((e) => test(words(e).toLowerCase()));
return by((t) => t === low) ?? by((t) => t.startsWith(low)) ?? by((t) => t.includes(low)) ?? null;
"#;

const PRESSED: &str = "button, a[href], summary, label, [role=button]";

/// Finds a choice by the legend it stands under.
const CHOICE: &str = r#"
const [legend, want] = arguments;
const groups = [...document.querySelectorAll("fieldset")].filter((f) => f.getClientRects().length > 0);
const group = groups.find((f) => f.querySelector("legend")?.textContent.trim() === legend);
return [...group?.querySelectorAll("label") ?? []].find((l) => l.textContent.trim() === want) ?? null;
"#;

/// Finds the field that a label belongs to.
const FIELD: &str = r#"
const low = arguments[0].toLowerCase();
const open = document.querySelector("dialog[open]");
const seen = (e) => e.getClientRects().length > 0;
const words = (e) => (e.textContent || "").replace(/\s+/g, " ").trim().toLowerCase();
const labels = [...(open ?? document).querySelectorAll("label")].filter(seen);
const label = labels.find((l) => words(l) === low) ?? labels.find((l) => words(l).startsWith(low));
return label ? label.control : [...(open ?? document).querySelectorAll("input, textarea, select")]
  .find((e) => seen(e) && (e.getAttribute("aria-label") || "").toLowerCase().startsWith(low)) ?? null;
"#;

/// All the words of the page. Those of a part far from the screen, which the browser leaves out as long as it is not laid
/// out, are among them.
const WORDS: &str = r#"
const words = () => {
  const far = [...document.querySelectorAll(".below > .part")];
  for (const part of far) part.style.contentVisibility = "visible";
  const all = document.body.innerText;
  for (const part of far) part.style.contentVisibility = "";
  return all;
};
"#;

impl Browser {
    pub(crate) async fn waits(&self, what: &str, script: &str, args: Vec<Value>) {
        self.wait_js(what, script, args).await;
    }

    /// Waits until the script returns something, and gives that.
    pub(crate) async fn wait_js(&self, what: &str, script: &str, args: Vec<Value>) -> Value {
        self.wait_within(PATIENCE, what, script, args).await
    }

    /// The same for what takes longer than anything else.
    pub(crate) async fn wait_within(
        &self,
        most: Duration,
        what: &str,
        script: &str,
        args: Vec<Value>,
    ) -> Value {
        let start = Instant::now();
        loop {
            if let Ok(found) = self.client.execute(script, args.clone()).await
                && !found.is_null()
                && found != json!(false)
            {
                return found;
            }
            if start.elapsed() > most {
                let text = self.text().await;
                self.shot(&format!("missing-{}", what.replace(|c: char| !c.is_alphanumeric(), "-"))).await;
                panic!("waited in vain for “{what}”. On the screen:\n{text}");
            }
            tokio::time::sleep(Duration::from_millis(60)).await;
        }
    }

    async fn element(&self, what: &str, script: &str, args: Vec<Value>) -> Element {
        let found = self.wait_js(what, script, args).await;
        let id = found.as_object().and_then(|o| o.values().next()).and_then(Value::as_str).unwrap();
        Element::from_element_id(self.client.clone(), id.to_owned().into())
    }

    /// All the words on the screen.
    pub(crate) async fn text(&self) -> String {
        let text = self.client.execute(&[WORDS, "return words()"].concat(), vec![]).await.unwrap_or_default();
        text.as_str().unwrap_or_default().to_owned()
    }

    /// Waits until these words stand somewhere on the screen.
    pub(crate) async fn sees(&self, words: &str) {
        let script = [WORDS, "return words().replace(/\\s+/g, ' ').includes(arguments[0])"].concat();
        self.wait_js(words, &script, vec![json!(words)]).await;
    }

    /// True where these words stand on the screen now.
    pub(crate) async fn shows(&self, words: &str) -> bool {
        self.text().await.split_whitespace().collect::<Vec<_>>().join(" ").contains(words)
    }

    /// Taps what has these words.
    pub(crate) async fn tap(&self, words: &str) {
        let element = self.element(words, FIND, vec![json!(words), json!(PRESSED)]).await;
        self.touch(element).await;
    }

    /// Taps one of the choices under this heading.
    pub(crate) async fn choose(&self, legend: &str, words: &str) {
        let element = self.element(words, CHOICE, vec![json!(legend), json!(words)]).await;
        self.touch(element).await;
    }

    /// With a finger in Chromium, with the driver's click elsewhere.
    async fn touch(&self, element: Element) {
        if self.engine != Engine::Chromium {
            // WebKitGTK's driver clicks only what is in view.
            let scroll = "arguments[0].scrollIntoView({ block: 'center' })";
            self.client.execute(scroll, vec![serde_json::to_value(&element).unwrap()]).await.unwrap();
            return element.click().await.unwrap();
        }
        let scroll = "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' })";
        self.client.execute(scroll, vec![serde_json::to_value(&element).unwrap()]).await.unwrap();
        let finger = TouchActions::new("finger".to_owned())
            .then(PointerAction::MoveToElement { element, duration: None, x: 0.0, y: 0.0 })
            .then(PointerAction::Down { button: 0 })
            .then(PointerAction::Up { button: 0 });
        self.client.perform_actions(finger).await.unwrap();
    }

    /// Replaces what stands in the field of this label.
    pub(crate) async fn fill(&self, label: &str, text: &str) {
        let field = self.element(label, FIELD, vec![json!(label)]).await;
        let clear = "arguments[0].focus(); arguments[0].select && arguments[0].select()";
        self.client.execute(clear, vec![serde_json::to_value(&field).unwrap()]).await.unwrap();
        field.send_keys(&format!("{}{text}", char::from(Key::Backspace))).await.unwrap();
    }

    /// Presses keys wherever the focus is.
    pub(crate) async fn keys(&self, keys: &str) {
        self.client.active_element().await.unwrap().send_keys(keys).await.unwrap();
    }

    /// Waits until everything done is stored.
    pub(crate) async fn saved(&self) {
        self.wait_js(
            "Saved",
            "return document.querySelector('[data-saving]')?.dataset.saving === 'saved'",
            vec![],
        )
        .await;
    }

    /// Waits until the files are kept for use offline.
    pub(crate) async fn kept_offline(&self) {
        self.wait_js("offline", "return document.documentElement.dataset.offline === 'ready'", vec![]).await;
    }

    pub(crate) async fn open(&self, address: &str) {
        self.client.goto(address).await.unwrap();
    }

    /// The size of the page itself, not of the window around it.
    pub(crate) async fn size(&self, width: u32, height: u32) {
        if self.engine == Engine::Chromium {
            let metrics =
                json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 600 });
            self.cdp("Emulation.setDeviceMetricsOverride", metrics).await.unwrap();
        } else {
            self.client.set_window_size(width, height).await.unwrap();
        }
    }

    /// A picture of the screen, into the folder that CI keeps.
    pub(crate) async fn shot(&self, name: &str) {
        let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("out/screens");
        std::fs::create_dir_all(&folder).unwrap();
        if let Ok(png) = self.client.screenshot().await {
            std::fs::write(folder.join(format!("{name}.png")), png).unwrap();
        }
    }
}

/// Chooses in the list of this label the line that begins with these words.
const PICK: &str = r#"
const [field, want] = arguments;
const option = [...field.options].find((o) => o.text.trim().startsWith(want));
if (!option) return false;
field.value = option.value;
field.dispatchEvent(new Event("change", { bubbles: true }));
return true;
"#;

impl Browser {
    pub(crate) async fn pick(&self, label: &str, words: &str) {
        let field = self.element(label, FIELD, vec![json!(label)]).await;
        self.wait_js(words, PICK, vec![serde_json::to_value(&field).unwrap(), json!(words)]).await;
    }

    /// Puts a text into the field of this label at once, as a paste does.
    pub(crate) async fn set(&self, label: &str, text: &str) {
        let field = self.element(label, FIELD, vec![json!(label)]).await;
        let put = "arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('input', { bubbles: true }))";
        self.client.execute(put, vec![serde_json::to_value(&field).unwrap(), json!(text)]).await.unwrap();
    }

    /// What stands in the field of this label.
    pub(crate) async fn value(&self, label: &str) -> String {
        let field = self.element(label, FIELD, vec![json!(label)]).await;
        let script = "return arguments[0].value";
        let value = self.client.execute(script, vec![serde_json::to_value(&field).unwrap()]).await.unwrap();
        value.as_str().unwrap().to_owned()
    }

    /// How many letters stand in the field of this label.
    pub(crate) async fn length(&self, label: &str) -> usize {
        let field = self.element(label, FIELD, vec![json!(label)]).await;
        let script = "return arguments[0].value.length";
        let length = self.client.execute(script, vec![serde_json::to_value(&field).unwrap()]).await.unwrap();
        usize::try_from(length.as_u64().unwrap()).unwrap()
    }

    /// The room of these words on the edge, by its link.
    pub(crate) async fn room(&self, slug: &str) {
        self.client.execute("location.hash = arguments[0]", vec![json!(slug)]).await.unwrap();
        let here = "return location.hash === arguments[0] && document.querySelector('#room h1') !== null";
        self.wait_js(slug, here, vec![json!(format!("#{slug}"))]).await;
    }
}
