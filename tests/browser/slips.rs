//! Slips of somebody new: a scale that shows grams where ounces come first, and too little weighed in.

use crate::browser::{Browser, Engine};
use crate::flow::{begin, done, own_workshop};
use crate::pour::serve;
use fantoccini::key::Key;

/// A number without a unit is what the scale shows, not 28 times as much.
#[tokio::test]
async fn a_scale_in_grams_where_ounces_come_first() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "grams").await;
    b.open(&host.address()).await;
    b.sees("From the formula to the poured candle").await;
    b.room("bench/scale/new").await;
    b.fill("Name", "Fine scale").await;
    b.fill("Capacity", "200 g").await;
    b.sees("7.05 oz (200.0 g)").await;
    b.fill("Division", "0.01").await;
    b.fill("Smallest load", "0.5").await;
    b.sees("0.018 oz (0.50 g)").await;
    b.tap("Keep this scale").await;
    b.sees("to 200 g, in steps of 0.01 g, from 0.5 g").await;
    b.room("bench/drops").await;
    b.fill("What is dropped", "Blue dye").await;
    b.fill("The scale shows", "0.43").await;
    b.sees("One drop weighs 21.5 mg").await;
    b.tap("Keep this drop").await;
    b.sees("One drop weighs 21.5 mg").await;
    b.room("bench/spoons").await;
    b.fill("The scale shows", "32.4").await;
    b.sees("One level tbsp weighs 0.29 oz (8.1 g)").await;
    b.saved().await;
    b.end().await;
}

#[tokio::test]
async fn too_little_is_told_before_it_is_done() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "little").await;
    b.open(&host.address()).await;
    b.size(390, 844).await;
    own_workshop(&b).await;
    begin(&b).await;
    b.tap("Enter what went in").await;
    b.fill("It weighed", "66.7 g").await;
    // 667 g were asked, on a scale of 1 g.
    b.sees("(600.3 g) less than asked. Add it and type what is in by then, or go on with less.").await;
    b.shot("too-little-390").await;
    b.fill("It weighed", "667 g").await;
    b.waits("nothing more", "return !document.querySelector('dialog[open] .note')", vec![]).await;
    b.tap("Done with this amount").await;
    b.sees("Step 2 of").await;
    while !b.shows("Finish and keep the record").await {
        done(&b).await;
    }
    b.sees("How long, this formula does not say.").await;
    b.end().await;
}

/// Goes through a long form with the tabulator, on a telephone: the bar at the end of it covers no field it comes to.
#[tokio::test]
async fn the_field_that_has_the_focus_is_seen() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "focus").await;
    b.open(&host.address()).await;
    b.size(390, 844).await;
    b.sees("From the formula to the poured candle").await;
    b.room("book/vessel/new").await;
    b.sees("No fill yet. Type how much goes into one vessel.").await;
    b.fill("Name of the vessel", "Straight jar").await;
    let covered = "const e = document.activeElement, r = e.getBoundingClientRect(); \
        const at = document.elementFromPoint(r.left + r.width / 2, r.bottom - 2); \
        return e.closest('form') && r.height > 2 && !e.contains(at) ? e.labels?.[0]?.innerText ?? e.innerText : null";
    let mut found = Vec::new();
    for _ in 0..16 {
        b.keys(&char::from(Key::Tab).to_string()).await;
        let field = b.client.execute(covered, vec![]).await.unwrap();
        found.extend(field.as_str().map(str::to_owned));
    }
    assert_eq!(found, Vec::<String>::new());
    assert!(b.client.execute("return scrollY > 200", vec![]).await.unwrap() == true, "it came far down");
    b.end().await;
}

/// What nobody has weighed yet is not an empty answer.
#[tokio::test]
async fn drops_of_nothing_in_particular() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "drops").await;
    b.open(&host.address()).await;
    b.sees("From the formula to the poured candle").await;
    b.tap("Convert").await;
    b.fill("Amount with its unit", "5 drops").await;
    b.sees("What a drop weighs depends on what is dropped.").await;
    b.end().await;
}

/// A formula and no vessel yet: the Pot leads to the form of one, and takes it.
#[tokio::test]
async fn the_first_formula_before_the_first_vessel() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "vessel").await;
    b.open(&host.address()).await;
    b.size(768, 1024).await;
    b.tap("Start your own workshop").await;
    for (field, text) in [
        ("Name of the formula", "Plain"),
        ("Name of the wax", "Plain wax"),
        ("Melt to", "185F"),
        ("Warmed from", "165F"),
        ("Unwarmed from", "170F"),
    ] {
        b.fill(field, text).await;
    }
    b.tap("Save formula").await;
    b.tap("Pour this").await;
    b.sees("No vessel in the book yet. Add the one you pour into.").await;
    b.shot("no-vessel-768").await;
    b.tap("Add a vessel").await;
    b.fill("Name of the vessel", "Straight jar").await;
    b.fill("Weight in one vessel", "7 1/4 oz").await;
    b.tap("Save vessel").await;
    b.sees("Version 1 of 1").await;
    b.room("pot").await;
    b.sees("Start this pour").await;
    b.end().await;
}
