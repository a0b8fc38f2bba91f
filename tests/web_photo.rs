//! Photos in a real browser: made small on a canvas, kept strictly, and proven each time they are read.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::expect_used, clippy::panic)]

#[path = "common/page.rs"]
mod page;

use js_sys::Array;
use page::{js, wait};
use potside::keep::photo::{address, keep_photos, photo, sweep, taken};
use potside::keep::{self, Which};
use potside::photo::{PhotoError, check};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::HtmlInputElement;

wasm_bindgen_test_configure!(run_in_browser);

/// A field in which a file was chosen, made by a script that gives a blob.
async fn chosen(blob: &str) -> HtmlInputElement {
    let script = format!(
        "return (async () => {{
            const blob = await ({blob})();
            const files = new DataTransfer();
            if (blob) files.items.add(new File([blob], 'a.png', {{ type: blob.type }}));
            const field = document.createElement('input');
            field.type = 'file';
            field.files = files.files;
            return field;
        }})()"
    );
    wait(&script).await.unchecked_into()
}

/// A drawing of this size, of noise where it is to be hard to make small.
fn drawn(wide: u32, high: u32, noise: bool) -> String {
    format!(
        "() => {{
            const canvas = document.createElement('canvas');
            [canvas.width, canvas.height] = [{wide}, {high}];
            const pen = canvas.getContext('2d');
            if ({noise}) {{
                const image = pen.createImageData({wide}, {high});
                for (let i = 0, n = 7; i < image.data.length; i++)
                    image.data[i] = i % 4 === 3 ? 255 : (n = (n * 1664525 + 1013904223) >>> 0) >>> 24;
                pen.putImageData(image, 0, 0);
            }}
            return new Promise((done) => canvas.toBlob(done));
        }}"
    )
}

/// Width and height of what an image shows at this address.
async fn size(address: String) -> (u32, u32) {
    let image = web_sys::HtmlImageElement::new().expect("an image");
    image.set_src(&address);
    JsFuture::from(image.decode()).await.expect("it is a picture");
    (image.natural_width(), image.natural_height())
}

#[wasm_bindgen_test]
async fn a_picture_is_made_small_and_kept() {
    for (wide, high, noise, small) in [
        (3000, 2000, false, Some((640, 427))),
        (1000, 4000, false, Some((160, 640))),
        (40, 30, false, Some((40, 30))),
        (1, 5000, false, Some((1, 640))),
        (1600, 1200, true, None),
    ] {
        let field = chosen(&drawn(wide, high, noise)).await;
        let (name, text) = taken(&field).await.expect("one was chosen").expect("it is a picture");
        assert_eq!(check(&name, &text), Ok(()));
        keep_photos(Which::Demo, &[(name.clone(), text.clone())]).await.expect("stored");
        let kept = photo(Which::Demo, &name).await.expect("kept");
        assert_eq!((&kept.name, &kept.jpeg), (&name, &text));
        let shown = size(address(&kept)).await;
        match small {
            Some(small) => assert_eq!(shown, small, "{wide} × {high}"),
            None => assert!(shown.0 <= 640 && shown.1 <= 640, "{shown:?}"),
        }
        // One's own workshop has it not.
        assert_eq!(photo(Which::Own, &name).await, Err(PhotoError::Missing));
    }
    let (name, text) = taken(&chosen(&drawn(20, 20, false)).await).await.expect("chosen").expect("a picture");
    // Another photo under its name is told.
    let (_, other) = taken(&chosen(&drawn(21, 20, false)).await).await.expect("chosen").expect("a picture");
    keep_photos(Which::Demo, &[(name.clone(), other)]).await.expect("stored");
    assert_eq!(photo(Which::Demo, &name).await, Err(PhotoError::Damaged));
    keep_photos(Which::Demo, &[(name.clone(), text)]).await.expect("stored");
    assert!(photo(Which::Demo, &name).await.is_ok());
    // Left with the demo.
    keep::leave_demo().await.expect("left");
    assert_eq!(photo(Which::Demo, &name).await, Err(PhotoError::Missing));
}

#[wasm_bindgen_test]
async fn what_is_no_picture_is_said() {
    for blob in [
        "() => new Blob(['<svg xmlns=\"http://www.w3.org/2000/svg\"/>'], { type: 'image/png' })",
        "() => new Blob(['<p>'], { type: 'text/html' })",
        "() => new Blob([])",
    ] {
        assert_eq!(taken(&chosen(blob).await).await, Some(Err(PhotoError::NoPicture)), "{blob}");
    }
    // Too large to be opened, whatever is in it; one byte less is looked into.
    for (bytes, why) in [(60_000_000, PhotoError::NoPicture), (60_000_001, PhotoError::TooLarge)] {
        let blob = format!("() => new Blob([new Uint8Array({bytes})], {{ type: 'image/png' }})");
        assert_eq!(taken(&chosen(&blob).await).await, Some(Err(why)), "{bytes}");
    }
    assert_eq!(taken(&chosen("() => null").await).await, None);
}

#[wasm_bindgen_test]
async fn photos_are_stored_strictly() {
    js(
        "window.asked = []; window.real = IDBDatabase.prototype.transaction; IDBDatabase.prototype.transaction = \
         function(...a) { window.asked.push(a[1] + ' ' + a[2].durability); return window.real.apply(this, a) }",
    );
    keep_photos(Which::Demo, &[("0".repeat(64), "AAAA".to_owned())]).await.expect("stored");
    js("IDBDatabase.prototype.transaction = window.real");
    let asked: Array = js("return window.asked").unchecked_into();
    assert_eq!(String::from(asked.join(",")), "readwrite strict");
}

const DAY: u64 = 24 * 60 * 60 * 1000;

/// Three photos: one that the book names, one that only a stored line does, one whose entry never came. The last goes a day
/// after it was first seen so, and only it.
#[wasm_bindgen_test]
async fn only_a_photo_whose_entry_never_came_is_swept() {
    keep::leave_demo().await.expect("left");
    let mut names = Vec::new();
    for side in 30..33 {
        let (name, text) =
            taken(&chosen(&drawn(side, side, false)).await).await.expect("chosen").expect("a picture");
        keep_photos(Which::Demo, &[(name.clone(), text)]).await.expect("stored");
        names.push(name);
    }
    let [here, line, never] = [0, 1, 2].map(|n: usize| names.get(n).cloned().expect("three"));
    // Behind more lines than are looked through at once.
    let mut lines: Vec<_> = (0..450).map(|n| (format!("a-{n:03}"), "a line".to_owned())).collect();
    lines.push(("b".to_owned(), format!("what a newer version says of {line}")));
    keep::append(Which::Demo, lines).await.expect("stored");
    let named = {
        let here = here.clone();
        move || Some(vec![here.clone()])
    };
    let swept = async |at: u64| sweep(Which::Demo, &named, at).await.expect("looked");
    let none: Vec<String> = Vec::new();
    assert_eq!(swept(5).await, none, "seen for the first time");
    assert_eq!(swept(4 + DAY).await, none, "not for a day yet");
    // Not where the book is another one now, nor where the entry came while it was looked through.
    assert_eq!(sweep(Which::Demo, &|| None, 5 + DAY).await.expect("looked"), none);
    let asked = std::cell::Cell::new(0);
    let comes = || {
        asked.set(asked.get() + 1);
        Some(if asked.get() > 1 { vec![here.clone(), never.clone()] } else { vec![here.clone()] })
    };
    assert_eq!(sweep(Which::Demo, &comes, 5 + DAY).await.expect("looked"), none, "it came");
    for name in &names {
        assert!(photo(Which::Demo, name).await.is_ok(), "all are there");
    }
    assert_eq!(swept(5 + DAY).await, std::slice::from_ref(&never));
    assert_eq!(photo(Which::Demo, &never).await, Err(PhotoError::Missing));
    assert!(photo(Which::Demo, &here).await.is_ok() && photo(Which::Demo, &line).await.is_ok());
    assert_eq!(swept(6 + 9 * DAY).await, none);
    assert!(photo(Which::Demo, &line).await.is_ok(), "a line speaks of it");
    keep::leave_demo().await.expect("left");
}
