//! A list taken in at the Desk: what is good is kept, what is wrong is said by its line.

use crate::browser::{Browser, Engine};
use crate::pour::serve;
use fantoccini::Locator;

#[tokio::test]
async fn vessels_out_of_a_spreadsheet() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "lists").await;
    b.open(&host.address()).await;
    b.sees("From the formula to the poured candle").await;
    b.room("desk").await;
    b.sees("Take in a list").await;
    let file = std::env::temp_dir().join(format!("potside-vessels-{}.csv", std::process::id()));
    std::fs::write(
        &file,
        "Name;Fill;Note\n=Amber jar;180 g;\"<img src=x onerror=alert(1)>\"\nOdd jar;heavy\n",
    )
    .unwrap();
    let chooser = b.client.find(Locator::Css("input[accept^='.csv']")).await.unwrap();
    chooser.send_keys(file.to_str().unwrap()).await.unwrap();
    b.sees("1 of 2 lines can be taken in.").await;
    b.sees("Left out, line 3, Odd jar: Fill: “heavy” is not a weight. Type it like 61 g or 2 1/4 oz.").await;
    b.tap("Take in the good ones").await;
    b.sees("1 was taken in.").await;
    b.saved().await;
    b.room("book").await;
    b.sees("=Amber jar").await;
    std::fs::remove_file(file).unwrap();
    assert_eq!(
        b.client.execute("return document.querySelectorAll('#room img').length", vec![]).await.unwrap(),
        0
    );
    b.end().await;
}
