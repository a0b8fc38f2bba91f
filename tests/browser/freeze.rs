//! A vessel as it freezes, with the server gone: reckoned beside the page, scrubbed, compared, mapped.

use crate::browser::{Browser, Engine, GONE};
use crate::flow::{demo, from_the_device, read_twice};
use crate::pour::serve;
use serde_json::Value;

/// What stands in the table of results at this row and column.
const RESULT: &str = r#"
const [row, column] = arguments;
const line = [...document.querySelectorAll(".results tbody tr")].find((r) => r.cells[0].innerText.startsWith(row));
const said = line ? line.cells[column].innerText.trim() : "";
return said && said !== "…" ? said : null;
"#;

/// How many pixels of the canvas are painted, and a sum that changes with the picture.
const PAINTED: &str = r#"
const canvas = [...document.querySelectorAll("canvas")].filter((c) => c.matches(arguments[0]))[0];
if (!canvas) return null;
const data = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height).data;
let [count, sum] = [0, 0];
for (let i = 0; i < data.length; i += 4) { count += data[i + 3] > 0; sum = (sum * 31 + data[i] + 7 * data[i + 1]) % 1000003; }
return [count, sum];
"#;

const SCRUB: &str = r#"
const slider = document.querySelector(".scrub input");
slider.value = Math.round(slider.max * arguments[0]);
slider.dispatchEvent(new Event("input", { bubbles: true }));
return slider.getAttribute("aria-valuetext");
"#;

async fn result(b: &Browser, row: &str, column: u32) -> String {
    let said = b.wait_js(row, RESULT, vec![row.into(), column.into()]).await;
    said.as_str().unwrap_or_default().to_owned()
}

/// Waits until the first set-up shrinks by so much, or by other than that: the page moves when a result comes, and a tap that
/// is under way then goes astray.
async fn shrinks(b: &Browser, by: &str, so: bool) {
    let script = format!(
        "const of = function () {{ {RESULT} }}; const by = of('Shrinks', 1); \
         return by !== null && (by === arguments[0]) === arguments[1]"
    );
    b.waits("what comes of the set-up", &script, vec![by.into(), so.into()]).await;
}

async fn painted(b: &Browser, canvas: &str) -> (u64, u64) {
    let said = b.wait_js(canvas, PAINTED, vec![canvas.into()]).await;
    (said[0].as_u64().unwrap(), said[1].as_u64().unwrap())
}

#[tokio::test]
async fn a_vessel_freezes_with_the_server_gone() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "freeze").await;
    from_the_device(&b, host).await;
    demo(&b).await;
    b.room("bench/freeze").await;
    let skinned = result(&b, "Skinned over", 1).await;
    assert!(skinned.ends_with(" min"), "{skinned}");
    b.sees("less risk of wet spots").await;

    // Another pour temperature is another freezing; what is no temperature gets its sentence and stays.
    let before = result(&b, "Shrinks", 1).await;
    b.set("Pour at", "200 °F").await;
    shrinks(&b, &before, false).await;
    b.set("Pour at", "100 °F").await;
    b.sees("not wholly melted").await;
    b.set("Heat of melting, kJ/kg", "2000").await;
    b.sees("heat of melting is 2 000 000 J/kg").await;
    b.set("Heat of melting, kJ/kg", "").await;
    b.set("Pour at", "175 °F").await;
    result(&b, "Solid", 1).await;

    // The picture follows the slider, and says what it shows.
    let first = painted(&b, ".cut canvas").await;
    assert!(first.0 > 6_000, "the vessel fills its picture: {first:?}");
    let at: Value = b.client.execute(SCRUB, vec![0.5.into()]).await.unwrap();
    assert!(at.as_str().is_some_and(|t| t.contains("min")), "{at}");
    b.waits(
        "another picture",
        &format!("const f = () => {{ {PAINTED} }}; return f(arguments[0])[1] !== arguments[1]"),
        vec![".cut canvas".into(), first.1.into()],
    )
    .await;
    b.client.execute(SCRUB, vec![1.into()]).await.unwrap();
    b.sees("100 % solid").await;
    // It plays to its end by itself.
    b.tap("Play").await;
    b.sees("Stop").await;
    b.tap("Stop").await;
    b.sees("Play").await;

    let poured = result(&b, "Shrinks", 1).await;
    b.tap("Draw the map").await;
    let full = "const c = document.querySelector('canvas.map'); if (!c) return false; \
                const d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data; let n = 0; \
                for (let i = 3; i < d.length; i += 4) n += d[i] > 0; return n === c.width * c.height";
    b.waits("the whole map", full, vec![]).await;
    b.tap("Take the least over").await;
    shrinks(&b, &poured, false).await;
    b.shot("freeze").await;

    // A log of one's own: what cannot be read stays and gets its sentence, what can is laid over and kept.
    b.set("Readings", "0 175\n20 warm").await;
    b.tap("Lay it over").await;
    b.sees("Line 2: ").await;
    b.set("Pour at", "175 °F").await;
    shrinks(&b, &poured, true).await;
    b.set("Readings", "0 175\n20 155\n40 141\n60 132\n90 122").await;
    b.tap("Lay it over").await;
    b.sees("What is left between the two").await;
    let drawn = "const d = document.querySelectorAll('.chart .dot').length; const c = document.querySelector('.chart .curve'); \
                 return d === 5 && c.getAttribute('d').split('L').length === 5";
    b.waits("the log over its curve", drawn, vec![]).await;
    b.client
        .execute("document.querySelector('.chart').scrollIntoView({block: 'center'})", vec![])
        .await
        .unwrap();
    b.shot("freeze-log").await;
    b.tap("Use it in this workshop").await;
    b.sees("This workshop's air takes").await;
    // What was told is what is used, also when it is tapped twice: it is not reckoned on top of itself.
    b.tap("Use it in this workshop").await;
    let same = "const said = [...document.body.innerText.matchAll(/air takes (\\d+) % of the heat/g)].map((m) => m[1]); \
                return said.length === 2 && said[0] === said[1] && said[0] !== '100'";
    b.waits("one factor", same, vec![]).await;
    b.saved().await;
    // The readings are there again after a reload, and are laid over as before.
    b.client.refresh().await.unwrap();
    b.sees("A log is kept: 5 readings within 90 min, in the middle of the vessel.").await;
    b.set("Pour at", "175 °F").await;
    shrinks(&b, &poured, true).await;
    b.tap("Lay the kept readings over").await;
    b.sees("What is left between the two").await;
    b.waits("the kept log over its curve", drawn, vec![]).await;
    b.shot("freeze-log-kept").await;
    assert_eq!(b.errors(GONE).await, Vec::<String>::new());
    b.end().await;
}

/// What stands in the field of this label, the first of several.
const STANDS: &str = r#"
const label = [...document.querySelectorAll("label")].find((l) => l.textContent.trim().startsWith(arguments[0]));
return label?.control?.value || null;
"#;

/// The whole table of results, once nothing of it is reckoned any more.
const TABLE: &str = r#"
const results = document.querySelector(".results");
const text = results?.querySelector("td") ? results.innerText : "";
return text && !text.includes("…") && text !== arguments[0] ? text : null;
"#;

async fn stands(b: &Browser, label: &str) -> String {
    b.wait_js(label, STANDS, vec![label.into()]).await.as_str().unwrap_or_default().to_owned()
}

/// The results, other than these.
async fn other_than(b: &Browser, before: &str) -> String {
    b.wait_js("results", TABLE, vec![before.into()]).await.as_str().unwrap_or_default().to_owned()
}

/// How warm the room was said to be at the pot stands in the set-up, and the density of a wax of the book is taken from it:
/// each comes to the results that the same typed by hand comes to.
#[tokio::test]
async fn what_the_day_and_the_book_know_reaches_the_set_up() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "freeze-known").await;
    b.open(&host.address()).await;
    demo(&b).await;
    b.room("bench/freeze").await;
    assert_eq!(stands(&b, "Room").await, "72 °F");
    let assumed = other_than(&b, "").await;
    b.room("pot").await;
    b.tap("Start this pour").await;
    b.sees("Step 1 of").await;
    read_twice(&b).await;
    b.client
        .execute("const e = document.querySelector('.foretold header button'); e.click()", vec![])
        .await
        .unwrap();
    b.fill("How warm the room is", "58 F").await;
    b.tap("Keep it for today").await;
    b.sees("Room 58 °F").await;

    b.room("bench/freeze").await;
    assert_eq!(stands(&b, "Room").await, "58 °F");
    let today = other_than(&b, "").await;
    assert_ne!(today, assumed, "a colder room");
    // The second set-up stands in the same room.
    let second = "return [...document.querySelectorAll('label')].filter((l) => l.innerText.trim() === 'Room')[1].control.value";
    assert_eq!(b.client.execute(second, vec![]).await.unwrap(), "58 °F");
    b.set("Room", "72 °F").await;
    let typed = other_than(&b, &today).await;
    assert_ne!(typed, assumed, "the second one is colder still");
    b.set("Room", "58 °F").await;
    assert_eq!(other_than(&b, &typed).await, today);

    // 0.791 g/mL was weighed of the harbour wax; the liquid's own is another.
    b.pick("Its density from", "Harbour firm wax").await;
    let weighed = other_than(&b, &today).await;
    assert_eq!(stands(&b, "Density, liquid at 80 °C").await, "0.791");
    b.set("Density, liquid at 80 °C, g/mL", "0.9").await;
    let denser = other_than(&b, &weighed).await;
    b.set("Density, liquid at 80 °C, g/mL", "0.791").await;
    assert_eq!(other_than(&b, &denser).await, weighed);
    b.pick("Its density from", "Meadow soft wax").await;
    other_than(&b, &weighed).await;
    assert_eq!(stands(&b, "Density, liquid at 80 °C").await, "0.862");
    b.end().await;
}
