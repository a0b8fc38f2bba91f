//! From the lines of a safety data sheet to a printed label, with the server gone.

use crate::browser::{Browser, Engine};
use crate::flow::{begin, finish, from_the_device, own_workshop};
use crate::paper::{part, print};
use crate::pour::serve;

pub(crate) const LINES: &str = "Linalool; 78-70-6; 10 - 25 %; Skin Irrit. 2 H315; Skin Sens. 1B H317\n\
Limonene; 5989-27-5; 5 - 10 %; Flam. Liq. 3 H226; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 1 H410; M=1\n\
Citral; 5392-40-5; 1 - 2.5 %; Skin Sens. 1 H317";

const BATCH: &str = "Batch, date and QR code";

/// A label 80 mm wide, 20 mm from the corner of A4, with these of the six things off.
pub(crate) async fn add(b: &Browser, name: &str, height: &str, rows: &str, off: &[&str]) {
    b.room("desk/label/new").await;
    b.fill("Name of the label", name).await;
    for part in off {
        b.tap(part).await;
    }
    b.fill("Rows", rows).await;
    b.set("Height of a label", height).await;
    b.tap("Keep this label").await;
    b.pick("Batch", "No batch").await;
    if !off.contains(&BATCH) {
        b.set("Batch number", "2611-03").await;
    }
}

#[tokio::test]
async fn a_label_from_the_lines_of_a_sheet_with_the_server_gone() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "label").await;
    from_the_device(&b, host).await;
    own_workshop(&b).await;

    b.room("desk/safety/new").await;
    b.fill("Ingredient", "Apple").await;
    b.set("Lines of section 3", &LINES.replace("78-70-6", "78-70-5")).await;
    b.sees("Line 1: The CAS number “78-70-5” has a wrong digit").await;
    b.shot("desk-safety-wrong").await;
    b.set("Lines of section 3", LINES).await;
    b.sees("Skin Sens. 1B (H317)").await;
    b.shot("desk-safety").await;
    b.tap("Keep this sheet").await;
    b.sees("3 substances").await;
    b.shot("desk-with-sheet").await;

    // 8 % of the wax is 7.41 % of the candle: 1.85 % Linalool is a sensitiser, 0.19 % Citral is named.
    b.room("desk/hazards").await;
    b.sees("May cause an allergic skin reaction.").await;
    b.sees("Contains: Linalool, Limonene, Citral.").await;
    b.sees("Allergens to be named").await;
    b.sees("Each ingredient is tried by itself").await;
    b.shot("desk-hazards").await;
    b.size(390, 844).await;
    b.shot("desk-hazards-390").await;
    b.size(1024, 768).await;

    add(&b, "Front", "70 mm", "3", &["Fire safety", "Hazards", "Who makes it"]).await;
    b.sees("Batch 2611-03").await;
    b.shot("desk-label-front").await;
    let (pdf, pages) = print(&b, "label-front").await;
    assert_eq!(pages, 1, "one sheet is one page");
    let first = (20.0, 20.0, 80.0, 70.0);
    assert_eq!(part(&pdf, 600, first).code().as_deref(), Some("2611-03"));
    // The size of the vessel is not known, so the panel is the label: 8.7 square inches, an eighth of an inch.
    let height = part(&pdf, 1200, first).last_letter(1);
    assert!((height - 3.175).abs() <= 0.05, "{height} mm");

    // What cannot be read is not printed as if nothing were typed, and more than is in it is told.
    b.fill("Net weight to declare", "heavy").await;
    b.sees("Not printed: Net weight to declare:").await;
    assert!(!b.shows("Print the sheet").await);
    b.fill("Net weight to declare", "500 g").await;
    b.sees("More than is in it may not stand on a label").await;
    b.shot("desk-label-overstated").await;

    // What does not fit is told before printing, with the size that would do.
    let all = &["Name of the candle", "Net contents"];
    add(&b, "Small", "40 mm", "3", all).await;
    b.sees("It does not fit without letters below their least height: it needs a height of").await;
    b.shot("desk-label-small").await;
    add(&b, "Underside", "80 mm", "3", all).await;
    b.sees("Print the sheet").await;
    b.shot("desk-label-underside").await;
    let (pdf, pages) = print(&b, "label-underside").await;
    assert_eq!(pages, 1);
    assert!(part(&pdf, 150, (0.0, 0.0, 210.0, 296.0)).width > 1000);
    // The hazards by themselves: small letters are 1.2 mm high or a little more (Regulation (EU) 2024/2865).
    add(
        &b,
        "Hazards",
        "50 mm",
        "3",
        &["Name of the candle", "Fire safety", BATCH, "Who makes it", "Net contents"],
    )
    .await;
    b.sees("Avoid release to the environment.").await;
    let (pdf, _) = print(&b, "label-hazards").await;
    let height = part(&pdf, 1200, (20.0, 20.0, 80.0, 50.0)).lowest_letter(0);
    assert!((1.19..=1.26).contains(&height), "{height} mm");
    b.shot("desk-label-form").await;
    b.end().await;
}

/// Five substances make a candle one that harms organs: all are named, until the person says that four will do.
#[tokio::test]
async fn names_that_may_be_left_off_are_told_and_stay_until_that_is_chosen() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "label-names").await;
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    own_workshop(&b).await;
    let line =
        |name: &str| format!("{name}; 15 - 20 %; STOT RE 1 H372 (liver) (oral); STOT RE 1 H372 >= 1 %");
    let names = ["Alpha", "Beta", "Gamma", "Delta", "Epsilon"].map(line).join("\n");
    b.room("desk/safety/new").await;
    b.fill("Ingredient", "Apple").await;
    b.set("Lines of section 3", &names).await;
    b.tap("Keep this sheet").await;
    b.sees("5 substances").await;
    b.room("desk/hazards").await;
    b.sees("these may be left off: Gamma.").await;
    b.sees("Causes damage to organs (liver) through prolonged or repeated exposure if swallowed.").await;
    b.shot("desk-hazards-names").await;
    let off = ["Name of the candle", "Fire safety", BATCH, "Who makes it", "Net contents"];
    add(&b, "Hazards", "40 mm", "3", &off).await;
    b.sees("Contains: Alpha, Beta, Delta, Epsilon, Gamma.").await;
    for (width, height) in [(1024, 768), (768, 1024), (390, 844)] {
        b.size(width, height).await;
        b.shot(&format!("desk-label-names-{width}")).await;
    }
    b.tap("Only those proposed").await;
    b.sees("Contains: Alpha, Beta, Delta, Epsilon.").await;
    b.sees("these may be left off: Gamma.").await;
    b.shot("desk-label-names-few").await;
    b.tap("All of them").await;
    b.sees("Contains: Alpha, Beta, Delta, Epsilon, Gamma.").await;
    b.end().await;
}

/// Another tab keeps the safety data of the fragrance. The label of the first changes by it, and what was typed on it stays.
#[tokio::test]
async fn what_is_typed_on_a_label_stays_when_another_tab_changes_the_book() {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "label-tabs").await;
    b.size(1024, 768).await;
    b.open(&address).await;
    own_workshop(&b).await;
    add(&b, "Front", "90 mm", "2", &["Fire safety", "Who makes it"]).await;
    b.set("Name on the label", "Dusk").await;
    b.set("Date", "St. Nicholas").await;
    b.sees("There is no safety data for Apple").await;
    b.saved().await;

    let first = b.client.window().await.unwrap();
    let second = b.client.new_window(true).await.unwrap().handle;
    b.client.switch_to_window(second).await.unwrap();
    b.size(1024, 768).await;
    b.open(&format!("{address}#desk/safety/new")).await;
    b.fill("Ingredient", "Apple").await;
    b.set("Lines of section 3", LINES).await;
    b.tap("Keep this sheet").await;
    b.sees("3 substances").await;
    b.saved().await;

    b.client.switch_to_window(first).await.unwrap();
    b.sees("Contains: Linalool, Limonene, Citral.").await;
    assert!(!b.shows("There is no safety data for Apple").await);
    for (field, typed) in
        [("Name on the label", "Dusk"), ("Batch number", "2611-03"), ("Date", "St. Nicholas")]
    {
        assert_eq!(b.value(field).await, typed, "{field}");
    }
    b.sees("Batch 2611-03, St. Nicholas").await;
    b.end().await;
}

/// A pour of which nothing was weighed as it was filled: its label passes no test on weights that nobody took.
#[tokio::test]
async fn a_label_of_a_batch_that_nobody_weighed_passes_nothing() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "label-unweighed").await;
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    own_workshop(&b).await;
    begin(&b).await;
    finish(&b).await;
    b.room("desk/label/new").await;
    b.fill("Name of the label", "Front").await;
    for part in ["Fire safety", "Hazards", BATCH, "Who makes it"] {
        b.tap(part).await;
    }
    b.fill("Rows", "3").await;
    b.set("Height of a label", "70 mm").await;
    b.tap("Keep this label").await;
    b.sees("As filled, by the record: 0 of 4 candles weighed. What is in them").await;
    b.sees("What is declared rests on the planned fill").await;
    assert!(!b.shows("would pass.").await && !b.shows("Would the batch pass?").await);
    for (width, height) in [(1024, 768), (768, 1024), (390, 844)] {
        b.size(width, height).await;
        b.shot(&format!("desk-label-unweighed-{width}")).await;
    }
    b.size(1024, 768).await;
    b.fill("Net weight to declare", "500 g").await;
    b.sees("More than is in it may not stand on a label").await;
    b.end().await;
}
