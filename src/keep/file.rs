//! Files given to the person and taken from them; nothing leaves the device.

use super::page::after;
use crate::book::{CopyError, LARGEST_COPY};
use js_sys::Array;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, HtmlInputElement, Url};

/// What is said where a browser gives out no files.
pub const NO_FILES: &str =
    "This browser does not give out files here. Open Potside in an ordinary window, then try again.";

/// Offers a text for download under this name. False where the browser does not.
pub fn download(name: &str, text: &str) -> bool {
    offer(name, text).is_ok()
}

fn offer(name: &str, text: &str) -> Result<(), JsValue> {
    let document = web_sys::window().and_then(|w| w.document()).ok_or(JsValue::NULL)?;
    let kind = BlobPropertyBag::new();
    kind.set_type(if name.ends_with(".csv") { "text/csv" } else { "application/json" });
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &kind)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // The browser may still be asking where to put it; by then it has begun to read.
    after(60_000, move || {
        // Fails for no address that was made here.
        let _ = Url::revoke_object_url(&address);
    });
    Ok(())
}

/// The text of the file that was chosen, none where none was.
///
/// # Errors
/// Where it is too large for a copy of a book, or cannot be read.
pub async fn chosen(input: &HtmlInputElement) -> Option<Result<String, CopyError>> {
    let file = input.files()?.get(0)?;
    let bytes = file.size() as u64;
    if bytes > LARGEST_COPY {
        return Some(Err(CopyError::TooLarge { bytes }));
    }
    let text = JsFuture::from(file.text()).await;
    // So that choosing the same file again is a new choice.
    input.set_value("");
    Some(match text {
        Ok(text) => Ok(text.as_string().unwrap_or_default()),
        Err(why) => Err(CopyError::Unread(
            why.dyn_ref::<js_sys::Error>().map_or_else(String::new, |e| String::from(e.message())),
        )),
    })
}
