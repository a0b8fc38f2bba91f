//! A vessel of the book filled with water and weighed several times at the bench.

use crate::browser::{Browser, Engine};
use crate::burn::SECOND;
use crate::flow::demo;
use crate::look::{axe, look};
use crate::pour::serve;

#[tokio::test]
async fn a_vessel_is_weighed_again_and_held_against_its_inside() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "water").await;
    b.open(&host.address()).await;
    demo(&b).await;
    let (axe, mut found) = (axe(), Vec::new());
    b.room("bench").await;
    b.sees("water to the brim: 9.6 oz").await;
    b.tap("Shoulder jar").await;
    b.sees("Fill it and weigh it again").await;
    b.tap("Weigh once more").await;
    let second = |text: &str| vec!["Water to the brim".into(), text.into()];
    // What is no weight gets its sentence and stays.
    b.client.execute(SECOND, second("heavy")).await.unwrap();
    b.tap("Keep what it holds").await;
    b.sees("Water to the brim: weighing 2: ").await;
    b.client.execute(SECOND, second("9.7 oz")).await.unwrap();
    // Half of what they are apart is 0.52 % of 9.65 oz; 2 × 0.518² ÷ 0.5² = 2.1 weighings.
    b.sees("(0.52 %). Filled and weighed once more, it is good to 0.5 %.").await;
    b.fill("Inside, across the top", "68 mm").await;
    b.fill("Inside, height", "80 mm").await;
    // π/4 × 6.8² × 8 cm = 290.5 mL.
    b.sees("By its inside it holds 290.5 mL").await;
    b.sees("Measure again: either the inside diameter is off").await;
    look(&b, &axe, "vessel-water", &mut found).await;
    b.fill("Inside, across the top", "66 mm").await;
    b.sees("They agree: ").await;
    b.tap("Keep what it holds").await;
    b.sees(", the mean of 2").await;
    b.saved().await;
    b.tap("Shoulder jar").await;
    b.tap("This vessel in the Book").await;
    b.sees("the mean of 2, at 70 °F").await;
    // Its form there has both weighings, and leaves them.
    b.tap("Change").await;
    assert_eq!(b.value("Water to the brim").await, "9.6 oz; 9.7 oz");
    look(&b, &axe, "vessel-weighed", &mut found).await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.end().await;
}
