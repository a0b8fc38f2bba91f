//! Two pots heated side by side, by touch: one turns from one to the other, and each has its own readings.

use crate::browser::{Browser, Engine};
use crate::flow::{done, finish, step, two_pots};
use crate::look::{axe, look};
use crate::pour::serve;
use serde_json::json;

async fn reads(b: &Browser, reading: &str) {
    b.fill("Thermometer", reading).await;
    b.tap("Note it").await;
    b.sees(&format!("{reading} at").replace(" F", " °F")).await;
}

async fn later(b: &Browser, minutes: u32) {
    let later = format!("const now = Date.now.bind(Date); Date.now = () => now() + {minutes} * 60000");
    b.client.execute(&later, vec![]).await.unwrap();
}

/// The step's title stands whole below what is above it, however much that is.
async fn titled(b: &Browser) {
    let script = "const top = (e) => document.querySelector(e).getBoundingClientRect().top; \
        return top('#step-title') >= top('.now')";
    b.waits("the whole title", script, vec![]).await;
}

#[tokio::test]
async fn each_of_two_pots_has_its_own_readings() {
    let (host, axe, mut found) = (serve("/"), axe(), Vec::new());
    let b = Browser::start(Engine::Chromium, "beside").await;
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    two_pots(&b).await;
    while !b.shows("Add at").await {
        done(&b).await;
    }
    let first = step(&b).await;
    titled(&b).await;
    reads(&b, "193 F").await;
    // The wax of the other is weighed and melted while this one cools.
    b.tap("Pour 2: Weigh").await;
    b.sees("pour 2 of 2").await;
    b.sees("Pour 1: Add").await;
    while !b.shows("Add at").await {
        done(&b).await;
    }
    let second = step(&b).await;
    assert_ne!(first, second);
    b.sees("Thermometer: no reading yet").await;
    reads(&b, "199 F").await;
    later(&b, 4).await;
    b.tap("Pour 1: Add").await;
    assert_eq!(step(&b).await, first, "the same step as before");
    b.sees("193 °F at").await;
    reads(&b, "189 F").await;
    b.sees("As it cools").await;
    b.sees("Add Brick dye, Plum dye 180–188 °F").await;
    b.tap("Pour 2: Add").await;
    b.sees("199 °F at").await;
    b.sees("Read it once more in a few minutes").await;
    look(&b, &axe, "beside", &mut found).await;
    b.size(1024, 768).await;
    // A page that is loaded again comes back to the pot that was turned to.
    b.tap("Pour 1: Add").await;
    b.saved().await;
    b.open("about:blank").await;
    b.open(&host.address()).await;
    b.room("pot").await;
    b.sees("pour 1 of 2").await;
    assert_eq!(step(&b).await, first);
    // What is taken back is taken back before one's eyes: the reading was the last, then what was melted beside it.
    b.tap("Undo").await;
    b.sees("193 °F at").await;
    b.tap("Undo").await;
    b.sees("pour 2 of 2").await;
    b.sees("Thermometer: no reading yet").await;
    finish(&b).await;
    b.sees("193 °F, pour 1").await;
    let errors: Vec<_> =
        b.log("browser").await.into_iter().filter(|l| l["level"] == json!("SEVERE")).collect();
    assert!(errors.is_empty(), "{errors:?}");
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.end().await;
}
