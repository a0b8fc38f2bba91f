//! What the tests do in the app: a workshop typed in from nothing, and a pour from the first step to its record.

use crate::browser::Browser;
use crate::host::Host;
use serde_json::json;

/// Opens the app, waits until it is kept on the device, and opens it again with the server gone.
pub(crate) async fn from_the_device(b: &Browser, host: Host) {
    let address = host.address();
    b.open(&address).await;
    b.size(1024, 768).await;
    b.kept_offline().await;
    drop(host);
    b.open(&address).await;
}

/// From the first screen into the demo workshop.
pub(crate) async fn demo(b: &Browser) {
    b.tap("Look around the demo workshop").await;
    b.sees("Demo workshop").await;
}

/// From the first screen to the first step of a pour of the demo's that takes two pots.
pub(crate) async fn two_pots(b: &Browser) {
    demo(b).await;
    b.room("pot").await;
    b.pick("Formula", "Late Orchard").await;
    b.pick("Pot", "Pouring jug").await;
    b.fill("How many vessels", "8").await;
    b.sees("in 2 pours").await;
    b.tap("Start this pour").await;
    b.sees("pour 1 of 2").await;
}

/// A scale of 5 kg in steps of a gram.
pub(crate) async fn scale(b: &Browser, name: &str) {
    b.room("bench/scale/new").await;
    b.fill("Name", name).await;
    b.fill("Capacity", "5 kg").await;
    b.fill("Division", "1 g").await;
    b.fill("Smallest load", "20 g").await;
    b.tap("Keep this scale").await;
    b.sees(name).await;
}

/// Wicks of these sizes.
pub(crate) async fn series(b: &Browser, sizes: &[&str]) {
    b.room("bench/burn/wicks/new").await;
    b.fill("Name of the series", "Cotton").await;
    b.set("Sizes, the smallest first", &sizes.join("\n")).await;
    b.tap("Keep this series").await;
    b.sees(&sizes.join(", ")).await;
}

/// Names what [`begin`] pours as a candle to sell, with more of its fields filled.
pub(crate) async fn for_sale(b: &Browser, more: &[(&str, &str)]) {
    b.room("shelf").await;
    b.tap("Name a candle to sell").await;
    b.pick("Formula", "Quiet orchard").await;
    b.pick("Vessel", "Straight jar").await;
    b.fill("Sold as", "Orchard jar").await;
    for (field, text) in more {
        b.fill(field, text).await;
    }
    b.tap("Keep this candle").await;
    b.sees("Orchard jar").await;
}

/// From an empty app: a scale, a vessel, a formula.
pub(crate) async fn own_workshop(b: &Browser) {
    b.sees("From the formula to the poured candle").await;
    scale(b, "Bench scale").await;
    b.room("book/vessel/new").await;
    b.fill("Name of the vessel", "Straight jar").await;
    b.fill("Weight in one vessel", "180 g").await;
    b.tap("Save vessel").await;
    b.sees("Straight jar").await;
    b.room("book/formula/new").await;
    b.fill("Name of the formula", "Quiet orchard").await;
    b.fill("Name of the wax", "Plain wax").await;
    b.fill("Share of the blend", "100 %").await;
    b.tap("Add fragrance").await;
    b.fill("Name of the part", "Apple").await;
    b.fill("Amount", "8 %").await;
    b.fill("Add from", "80 C").await;
    b.fill("Add to", "82 C").await;
    b.fill("Melt to", "90 C").await;
    b.fill("Warmed from", "72 C").await;
    b.fill("Warmed to", "75 C").await;
    b.fill("Unwarmed from", "75 C").await;
    b.fill("Unwarmed to", "78 C").await;
    b.tap("Add a vessel").await;
    b.pick("Vessel", "Straight jar").await;
    b.tap("Save formula").await;
    b.sees("Version").await;
    b.saved().await;
}

/// Asks for four vessels of it and begins.
pub(crate) async fn begin(b: &Browser) {
    b.room("pot").await;
    b.pick("Formula", "Quiet orchard").await;
    b.pick("Vessel", "Straight jar").await;
    b.fill("How many vessels", "4").await;
    // 4 × 180 g; 8 % of the wax is 720 × 8/108 = 53.33 g, 53 g on this scale.
    for grams in ["53", "667"] {
        let script = "const t = document.body.innerText; return ['.0 g', ' g', 'g'].some((u) => t.includes(arguments[0] + u))";
        b.waits(grams, script, vec![json!(grams)]).await;
    }
    b.tap("Start this pour").await;
    b.sees("Step 1 of").await;
    b.saved().await;
}

/// Which step is shown, counted from 1; none where no pour is on.
pub(crate) async fn step(b: &Browser) -> Option<u32> {
    let script = "return (document.querySelector('.place')?.innerText.match(/Step (\\d+)/) ?? [])[1] ?? null";
    b.client.execute(script, vec![]).await.ok()?.as_str()?.parse().ok()
}

/// From the step shown to the record.
pub(crate) async fn finish(b: &Browser) {
    for _ in 0..60 {
        if b.shows("Finish and keep the record").await {
            break;
        }
        done(b).await;
    }
    ready(b).await;
    b.tap("Finish and keep the record").await;
    b.sees("Vessels filled").await;
    b.saved().await;
}

/// Ticks every step of finishing on a batch's page.
pub(crate) async fn tick_all(b: &Browser) {
    for step in [
        "The wax is solid through",
        "Wicks trimmed to ¼ in (6 mm)",
        "Vessels wiped clean",
        "Caution label on",
        "Product label on",
        "Lid or cover on",
    ] {
        b.tap(step).await;
        b.sees(&["✓ ", step].concat()).await;
    }
}

/// Waits until another step is shown.
pub(crate) async fn moved_on(b: &Browser, before: Option<u32>) {
    let script = "return !document.querySelector('.place') || \
        !document.querySelector('.place').innerText.startsWith('Step ' + arguments[0] + ' of')";
    b.waits("the next step", script, vec![json!(before)]).await;
}

/// Waits until "Done" takes a press: right after a step it does not, so that a double tap does not skip one.
pub(crate) async fn ready(b: &Browser) {
    let script = "const d = document.querySelector('.hand button.main'); return !!d && d.getAttribute('aria-disabled') !== 'true'";
    b.waits("Done to be ready", script, vec![]).await;
}

/// One step done by a tap.
pub(crate) async fn done(b: &Browser) {
    ready(b).await;
    let before = step(b).await;
    b.tap("Done").await;
    moved_on(b, before).await;
}

/// Goes on to the first part and reads the thermometer there twice, four minutes apart.
pub(crate) async fn read_twice(b: &Browser) {
    while !b.shows("Add at").await {
        done(b).await;
    }
    for (minutes, reading) in [(0, "193 F"), (4, "189 F")] {
        let later = format!("const now = Date.now.bind(Date); Date.now = () => now() + {minutes} * 60000");
        b.client.execute(&later, vec![]).await.unwrap();
        b.fill("Thermometer", reading).await;
        b.tap("Note it").await;
        b.sees(&format!("{reading} at").replace(" F", " °F")).await;
    }
}
