//! Fewer vessels filled than were planned, by touch: a glass that cracked, wax that ran out; and what the record and the shelf
//! then have.

use crate::browser::{Browser, Engine};
use crate::flow::{demo, done, moved_on, ready, step};
use crate::look::{axe, look};
use crate::pour::serve;

#[tokio::test]
async fn a_cracked_glass_and_wax_that_ran_out() {
    let (host, axe, mut found) = (serve("/"), axe(), Vec::new());
    let b = Browser::start(Engine::Chromium, "fewer").await;
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    demo(&b).await;
    b.room("pot").await;
    b.pick("Formula", "Late Orchard").await;
    b.fill("How many vessels", "5").await;
    b.sees("5 vessels").await;
    b.tap("Start this pour").await;
    b.sees("Step 1 of").await;
    while !b.shows("All filled").await {
        done(&b).await;
    }
    done(&b).await;
    let before = step(&b).await;
    b.tap("Not filled").await;
    b.sees("Then 4 of 5 vessels are filled, and about").await;
    look(&b, &axe, "not-filled", &mut found).await;
    b.size(1024, 768).await;
    b.tap("Leave this one empty").await;
    moved_on(&b, before).await;
    b.sees("left empty").await;
    // It is taken back as any other step.
    let before = step(&b).await;
    b.tap("Undo").await;
    moved_on(&b, before).await;
    b.tap("Not filled").await;
    b.tap("Leave this one empty").await;
    b.sees("Not filled").await;
    look(&b, &axe, "filling", &mut found).await;
    b.size(1024, 768).await;
    done(&b).await;
    b.tap("Not filled").await;
    b.sees("Then 2 of 5 vessels are filled, and about").await;
    b.tap("Leave all 2 empty").await;
    b.sees("Finish and keep the record").await;
    ready(&b).await;
    b.tap("Finish and keep the record").await;
    b.sees("Vessels filled 2 of 5").await;
    b.sees("Left empty: vessel 2; vessel 4; vessel 5.").await;
    b.sees("Poured").await;
    look(&b, &axe, "fewer-record", &mut found).await;
    b.saved().await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.end().await;
}
