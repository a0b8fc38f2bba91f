//! After an update of the app a large book opens from the bundle of the build before: it is made anew from its entries, no
//! line of the storage is read for it, and what the lines say is what counts in the end.

use crate::browser::{Browser, Engine};
use crate::decade::entries;
use crate::decade_shared::{Size, lines};
use crate::years::{COUNT, bundle, holds, opened, put, put_old, trust};
use potside::book::{Act, Entry};
use serde_json::json;

/// The lines of a book in a browser where the app is not running yet.
async fn begin(name: &str, address: &str, lines: &[String]) -> Browser {
    let b = Browser::start(Engine::Chromium, name).await;
    b.size(1024, 768).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": COUNT })).await.unwrap();
    b.open(&format!("{address}manifest.webmanifest")).await;
    put(&b, lines).await;
    b
}

#[tokio::test]
async fn a_large_book_opens_from_the_bundle_of_the_build_before() {
    let host = crate::pour::serve("/");
    let address = host.address();
    let lines = lines(Size { batches: 260, lots: 60, trials: 40 });
    let b = begin("update", &address, &lines).await;
    put_old(&b, &lines[..lines.len() - 3], "1").await;
    assert_eq!(holds(&b, "another build").await, Some(true));
    assert!(opened(&b, &address).await, "no line was read for it");
    assert_eq!(holds(&b, "another build").await, Some(false), "the new one is in its place");
    // The last three were stored since.
    entries(&b, lines.len()).await;
    b.room("book/history/tablet-b5").await;
    b.sees("The pour ended").await;
    b.sees("The pour began").await;
    // It is compared with the lines, and then as good as one that was made of them.
    trust(&b, "1").await;
    assert!(opened(&b, &address).await);
    entries(&b, lines.len()).await;
    assert_eq!(holds(&b, "another build").await, Some(false));

    // Were it what ends the page each time, it is not tried for ever.
    b.open(&format!("{address}manifest.webmanifest")).await;
    put_old(&b, &lines, "5").await;
    assert!(!opened(&b, &address).await, "three times it came to no end");
    entries(&b, lines.len()).await;
    bundle(&b, true).await;
    assert_eq!(holds(&b, "another build").await, Some(false));
    trust(&b, "1").await;
    b.end().await;
}

/// What another build did not know to read stands in the lines: it is found, and the book opened from them.
#[tokio::test]
async fn what_the_build_before_did_not_read_is_in_the_book_after() {
    let host = crate::pour::serve("/");
    let address = host.address();
    let whole = lines(Size { batches: 260, lots: 60, trials: 40 });
    let mut poorer = whole.clone();
    let ended = |line: &String| matches!(Entry::from_line(line).map(|e| e.act), Ok(Act::Ended { .. }));
    let at = whole.iter().rposition(ended).unwrap();
    let mut entry = Entry::from_line(&whole[at]).unwrap();
    let Act::Ended { batch, note, .. } = &mut entry.act else { panic!("it is an ended pour") };
    let (page, said) = (format!("book/batch/{}", batch.0), std::mem::take(note));
    assert!(!said.is_empty());
    poorer[at] = entry.to_line();
    let b = begin("poorer", &address, &whole).await;
    put_old(&b, &poorer, "1").await;
    assert!(opened(&b, &address).await, "it opens at once");
    b.waits("the lines to be read", "return window.wholes > 0", vec![]).await;
    b.room(&page).await;
    b.sees(&said).await;
    bundle(&b, true).await;
    trust(&b, "1").await;
    assert!(opened(&b, &address).await);
    b.room(&page).await;
    b.sees(&said).await;
    b.end().await;
}
