//! Requests and transactions of IndexedDB as futures, and their failures as [`StoreError`].

use crate::book::StoreError;
use js_sys::{Function, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{DomException, IdbRequest, IdbTransaction};

/// A promise that the two functions given to `hang` settle: they are hung on the events themselves.
async fn event(mut hang: impl FnMut(&Function, &Function)) -> Result<JsValue, JsValue> {
    JsFuture::from(Promise::new(&mut |resolve, reject| hang(&resolve, &reject))).await
}

/// The result of a request.
pub(super) async fn result(request: &IdbRequest) -> Result<JsValue, StoreError> {
    let settled = event(|resolve, reject| {
        request.set_onsuccess(Some(resolve));
        request.set_onerror(Some(reject));
    });
    match settled.await {
        Ok(_) => request.result().map_err(|e| store_error(&e)),
        Err(_) => Err(match request.error() {
            Ok(Some(e)) => from_exception(&e),
            Ok(None) => unsaid(),
            Err(e) => store_error(&e),
        }),
    }
}

/// Resolves once the transaction is complete: with strict durability, once it is on the disk.
pub(super) async fn complete(transaction: &IdbTransaction) -> Result<(), StoreError> {
    let settled = event(|resolve, reject| {
        transaction.set_oncomplete(Some(resolve));
        transaction.set_onabort(Some(reject));
    });
    match settled.await {
        Ok(_) => Ok(()),
        Err(_) => Err(transaction.error().as_ref().map_or_else(unsaid, from_exception)),
    }
}

fn unsaid() -> StoreError {
    StoreError::Failed("the browser gave up without a reason".to_owned())
}

/// What a thrown value means.
pub(super) fn store_error(thrown: &JsValue) -> StoreError {
    if let Some(e) = thrown.dyn_ref::<DomException>() {
        return from_exception(e);
    }
    match thrown.dyn_ref::<js_sys::Error>() {
        Some(e) => StoreError::Failed(String::from(e.message())),
        None => unsaid(),
    }
}

fn from_exception(e: &DomException) -> StoreError {
    match e.name().as_str() {
        "QuotaExceededError" => StoreError::Full,
        "SecurityError" | "InvalidStateError" | "NotAllowedError" => StoreError::Denied,
        "VersionError" => StoreError::Newer,
        name => StoreError::Failed(format!("{name}: {}", e.message())),
    }
}
