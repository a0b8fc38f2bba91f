//! Slips of somebody new: a scale that shows grams where ounces come first, and too little weighed in.

use crate::browser::{Browser, Engine};
use crate::flow::{begin, done, own_workshop};
use crate::pour::serve;

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
