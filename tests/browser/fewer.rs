//! Fewer vessels filled than were planned, by touch: a glass that cracked, wax that ran out, a pot that is lost; and what
//! the record and the shelf then have.

use crate::browser::{Browser, Engine};
use crate::flow::{demo, done, finish, moved_on, ready, step, two_pots};
use crate::look::{axe, look};
use crate::pour::serve;

async fn title(b: &Browser) -> String {
    let title =
        b.client.execute("return document.querySelector('#step-title')?.innerText ?? ''", vec![]).await;
    title.unwrap().as_str().unwrap().to_owned()
}

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

/// Twenty times too much went into the first of two pots: it is given up, and the other is poured.
#[tokio::test]
async fn a_lost_pot_is_given_up_and_the_other_is_poured() {
    let (host, axe, mut found) = (serve("/"), axe(), Vec::new());
    let b = Browser::start(Engine::Chromium, "lost-pot").await;
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    two_pots(&b).await;
    while title(&b).await != "Add Late orchard oil" {
        done(&b).await;
    }
    b.tap("Enter what went in").await;
    b.fill("It weighed", "1500 g").await;
    b.tap("Done with this amount").await;
    b.sees("Too much Late orchard oil").await;
    b.sees("this pot is lost for this formula: “Stop this pour”.").await;
    look(&b, &axe, "lost-pot", &mut found).await;
    b.size(1024, 768).await;
    b.tap("Stop this pour").await;
    b.sees("Or only the pot of pour 1 is lost").await;
    look(&b, &axe, "give-up", &mut found).await;
    b.size(1024, 768).await;
    b.tap("Give up pour 1 only").await;
    b.sees("pour 2 of 2").await;
    assert!(!b.shows("Pour 1:").await, "nothing more is asked of it");
    finish(&b).await;
    b.sees("Vessels filled 4 of 8").await;
    b.sees("Left empty: vessel 1; vessel 2; vessel 3; vessel 4.").await;
    look(&b, &axe, "lost-pot-record", &mut found).await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    assert_eq!(b.errors(None).await, Vec::<String>::new());
    b.end().await;
}
