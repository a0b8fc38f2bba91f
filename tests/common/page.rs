//! What the tests in a browser do in its page: a script, a promise, a wait.

#![allow(dead_code)]

use js_sys::{Function, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

pub(crate) fn js(body: &str) -> JsValue {
    Function::new_no_args(body).call0(&JsValue::NULL).expect("the test's own script runs")
}

/// What the promise gives that the script returns.
pub(crate) async fn wait(body: &str) -> JsValue {
    JsFuture::from(js(body).unchecked_into::<Promise>()).await.expect("the test's own promise is kept")
}

/// Where nothing may happen. What is to happen is waited for by [`until`]: how long it takes is the machine's affair.
pub(crate) async fn pause(milliseconds: u32) {
    wait(&format!("return new Promise(r => setTimeout(r, {milliseconds}))")).await;
}

/// Waits until it is so, at most ten seconds: then the test fails here.
pub(crate) async fn until(what: &str, mut is: impl FnMut() -> bool) {
    for _ in 0..1000 {
        if is() {
            return;
        }
        pause(10).await;
    }
    panic!("waited in vain for {what}");
}
