//! The bundle in a real browser, and what of the journal is looked at besides it.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::expect_used)]

#[path = "common/page.rs"]
mod page;

use page::js;
use potside::keep::bundle::Trust;
use potside::keep::{self, Which, bundle};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

async fn bytes() -> Option<Vec<u8>> {
    bundle::bytes(bundle::ask()).await
}

fn pair(id: &str) -> (String, String) {
    (id.to_owned(), format!("line of {id}"))
}

#[wasm_bindgen_test]
async fn a_bundle_is_kept_looked_for_and_thrown_away() {
    bundle::forget_bundle();
    assert!(!bundle::has_bundle());
    assert_eq!(bytes().await, None);
    bundle::keep_bundle(&[1, 2, 3], Trust::Lines).await.expect("kept");
    assert!(bundle::has_bundle());
    assert_eq!(bytes().await, Some(vec![1, 2, 3]));
    bundle::keep_bundle(&[4; 300_000], Trust::Lines).await.expect("kept in its place");
    assert_eq!(bytes().await, Some(vec![4; 300_000]));
    bundle::forget_bundle();
    assert!(!bundle::has_bundle());
    assert_eq!(bytes().await, None, "its bytes are gone too");
}

/// What is known of a bundle stands beside it, and goes with it.
#[wasm_bindgen_test]
async fn how_far_a_bundle_is_trusted_is_noted() {
    bundle::forget_bundle();
    for trust in [Trust::Entries, Trust::Lines, Trust::Begun(1), Trust::Begun(2), Trust::Begun(u8::MAX - 2)] {
        bundle::keep_bundle(&[1], trust).await.expect("kept");
        assert_eq!(bundle::trust(), trust);
        bundle::set_trust(Trust::Begun(7));
        assert!(bundle::has_bundle());
        assert_eq!(bundle::trust(), Trust::Begun(7));
    }
    // What was not written here is not believed.
    for other in ["", "0", "-1", "1 ", "yes", "300"] {
        keep::local::keep("potside-bundle", other);
        assert_eq!(bundle::trust(), Trust::Entries, "{other:?}");
    }
    bundle::forget_bundle();
    assert!(!bundle::has_bundle());
}

#[wasm_bindgen_test]
async fn a_bundle_that_cannot_be_kept_is_not_looked_for() {
    bundle::forget_bundle();
    js("window.was = IDBObjectStore.prototype.put; \
        IDBObjectStore.prototype.put = () => { throw new DOMException('no', 'QuotaExceededError') }");
    let outcome = bundle::keep_bundle(&[1], Trust::Lines).await;
    js("IDBObjectStore.prototype.put = window.was");
    assert!(outcome.is_err() && !bundle::has_bundle());
    js("window.was = IDBTransaction.prototype.commit; window.put = IDBObjectStore.prototype.put; \
        IDBObjectStore.prototype.put = function (...a) { const r = window.put.apply(this, a); this.transaction.abort(); return r }");
    let outcome = bundle::keep_bundle(&[1], Trust::Lines).await;
    js("IDBObjectStore.prototype.put = window.put");
    assert!(outcome.is_err() && !bundle::has_bundle());
}

#[wasm_bindgen_test]
async fn what_is_stored_besides_is_found() {
    let ids = ["dev-1-a", "dev-9-b", "dev-a-c", "dev-a-d", "dev-1a-e", "dev-3a-f", "device-a-g", "other-a-h"];
    keep::append(Which::Own, ids.map(pair).to_vec()).await.expect("stored");
    let count = bundle::count().await.expect("counted");
    let keys = bundle::keys().await.expect("got");
    assert_eq!(keys.len(), count);
    assert!(ids.iter().all(|id| keys.contains(&Some((*id).to_owned()))));
    // From 9 on, sixteen clocks at a time: 10 twice, 26, and not 58, as there is none from 41 to 56.
    let since = bundle::lines_since("dev", 8).await.expect("got");
    assert_eq!(since, ["dev-9-b", "dev-a-c", "dev-a-d", "dev-1a-e"].map(|id| pair(id).1));
    assert_eq!(bundle::lines_since("dev", 100).await, Ok(vec![]));
    let some = ["dev-1-a", "not there", "other-a-h"].map(str::to_owned);
    assert_eq!(bundle::lines_at(&some).await, Ok(["dev-1-a", "other-a-h"].map(|id| pair(id).1).to_vec()));
    let (mut seen, mut after) = (Vec::new(), None);
    loop {
        let (keys, lines) = bundle::piece(Which::Own, after.as_ref(), 3).await.expect("got");
        assert_eq!(keys.length() as usize, lines.len());
        if lines.is_empty() {
            break;
        }
        seen.extend(lines);
        after = Some(keys.get(keys.length() - 1));
    }
    assert_eq!(seen, keep::load(Which::Own).await.expect("loaded"));
}
