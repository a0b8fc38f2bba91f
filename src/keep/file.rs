//! Files given to the person and taken from them; nothing leaves the device.

use super::page::after;
use crate::book::{CopyError, LARGEST_COPY};
use js_sys::{Array, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobPropertyBag, DomException, File, FilePropertyBag, HtmlAnchorElement, HtmlInputElement,
    Navigator, ShareData, Url,
};

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

/// A text ready to be shared.
pub struct Sharing(ShareData);

/// How sharing went.
pub enum Shared {
    /// Another app has it.
    Given,
    /// The person shared it with none.
    Left,
    /// The browser wants a tap of its own first, or shares no such file.
    Refused,
}

fn navigator() -> Option<Navigator> {
    let navigator = web_sys::window()?.navigator();
    Reflect::has(&navigator, &"canShare".into()).ok()?.then_some(navigator)
}

/// A text as a file. Plain text, under a name that ends in `.txt`: several browsers share no JSON (MDN, Navigator.share,
/// "Shareable file types"). None where the browser shares no files.
pub fn sharing(name: &str, text: &str) -> Option<Sharing> {
    let kind = FilePropertyBag::new();
    kind.set_type("text/plain");
    let file = File::new_with_str_sequence_and_options(&Array::of1(&text.into()), name, &kind).ok()?;
    let data = ShareData::new();
    data.set_files(&Array::of1(&file));
    navigator()?.can_share_with_data(&data).then_some(Sharing(data))
}

/// Opens the device's sheet of what a file can be shared with.
pub async fn share(what: &Sharing) -> Shared {
    let Some(navigator) = navigator() else { return Shared::Refused };
    match JsFuture::from(navigator.share_with_data(&what.0)).await {
        Ok(_) => Shared::Given,
        Err(why) if why.dyn_ref::<DomException>().is_some_and(|e| e.name() == "AbortError") => Shared::Left,
        Err(_) => Shared::Refused,
    }
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
