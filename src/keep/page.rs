//! The clock, chance, and small things of the page.

use crate::desk::label::Face;
use std::cell::Cell;
use wasm_bindgen::Clamped;
use wasm_bindgen::JsCast;
use wasm_bindgen::JsValue;
use wasm_bindgen::closure::Closure;
use web_sys::{BeforeUnloadEvent, CanvasRenderingContext2d, HtmlCanvasElement, HtmlElement, ImageData};

/// The device's wall clock, milliseconds since 1970.
pub fn now() -> u64 {
    js_sys::Date::now().max(0.0) as u64
}

thread_local! {
    /// Where the random numbers have come to, 0 before the first.
    static CHANCE: Cell<u64> = const { Cell::new(0) };
}

/// A random number. The first is from the browser's own source, and the others follow from it (xorshift, Marsaglia 2003):
/// to ask the browser for each takes as long as to make an entry.
pub fn random() -> u32 {
    let mut n = CHANCE.get();
    if n == 0 {
        let mut bytes = [0; 8];
        let filled = web_sys::window()
            .and_then(|w| w.crypto().ok())
            .is_some_and(|c| c.get_random_values_with_u8_array(&mut bytes).is_ok());
        let first = if filled { u64::from_le_bytes(bytes) } else { js_sys::Math::random().to_bits() };
        n = first | 1;
    }
    n ^= n << 13;
    n ^= n >> 7;
    n ^= n << 17;
    CHANCE.set(n);
    (n >> 32) as u32
}

/// The element of this id.
pub fn element(id: &str) -> Option<HtmlElement> {
    web_sys::window()?.document()?.get_element_by_id(id)?.dyn_into().ok()
}

/// Puts pixels (red, green, blue, opacity) into the canvas of this id, where there is one.
pub fn put_pixels(canvas: &str, pixels: &mut [u8], width: u32, height: u32) {
    let canvas = element(canvas).and_then(|c| c.dyn_into::<HtmlCanvasElement>().ok());
    let context = canvas.and_then(|c| c.get_context("2d").ok().flatten());
    let context = context.and_then(|c| c.dyn_into::<CanvasRenderingContext2d>().ok());
    let image = ImageData::new_with_u8_clamped_array_and_sh(Clamped(pixels), width, height);
    if let (Some(context), Ok(image)) = (context, image) {
        // Fails only for an image without pixels.
        let _ = context.put_image_data(&image, 0.0, 0.0);
    }
}

/// A data attribute of the root element, by its name in scripts.
pub fn root(name: &str) -> Option<String> {
    let root: HtmlElement = web_sys::window()?.document()?.document_element()?.dyn_into().ok()?;
    root.dataset().get(name)
}

/// Puts the focus on the first field in the element of this id, or on the element itself where there is none, once the
/// page has settled.
pub fn focus_in(id: String) {
    after(0, move || {
        let Some(place) = element(&id) else { return };
        let field = place.query_selector("input, select").ok().flatten();
        let target = field.and_then(|f| f.dyn_into::<HtmlElement>().ok()).unwrap_or(place);
        // Fails only for what is no longer on the page.
        let _ = target.focus();
    });
}

/// Sets a data attribute of the root element, for the style to follow.
pub fn set_root(name: &str, value: &str) {
    let root = web_sys::window().and_then(|w| w.document()).and_then(|d| d.document_element());
    if let Some(root) = root.and_then(|r| r.dyn_into::<HtmlElement>().ok()) {
        // Fails only for a name with a dash in it.
        let _ = root.dataset().set(name, value);
    }
}

/// Tells the page's own script something.
pub fn tell_page(event: &str) {
    if let (Some(window), Ok(event)) = (web_sys::window(), web_sys::Event::new(event)) {
        let _ = window.dispatch_event(&event);
    }
}

/// Back to the top of a room that was just entered.
pub fn to_top() {
    if let Some(window) = web_sys::window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// What stands after the `#` of the address, with the sign.
pub fn hash() -> String {
    web_sys::window().and_then(|w| w.location().hash().ok()).unwrap_or_default()
}

/// Puts `hash` into the address, so that a reload returns to the same place.
pub fn set_hash(hash: &str) {
    if let Some(window) = web_sys::window() {
        // Fails only in a page that is being left.
        let _ = window.location().set_hash(hash);
    }
}

/// Calls `then` after so many milliseconds.
pub fn after(milliseconds: u32, then: impl FnOnce() + 'static) {
    let Some(window) = web_sys::window() else { return };
    let call = Closure::once_into_js(then);
    let pause = i32::try_from(milliseconds).unwrap_or(i32::MAX);
    // Fails only in a page that is being left.
    let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(call.unchecked_ref(), pause);
}

/// From now on, leaving the page while `unsaved` is true asks first.
pub fn ask_on_leave(unsaved: impl Fn() -> bool + 'static) {
    let Some(window) = web_sys::window() else { return };
    let on_leave = Closure::<dyn FnMut(BeforeUnloadEvent)>::new(move |event: BeforeUnloadEvent| {
        if unsaved() {
            event.prevent_default();
            event.set_return_value("unsaved");
        }
    });
    let listener: JsValue = on_leave.into_js_value();
    let _ = window.add_event_listener_with_callback("beforeunload", listener.unchecked_ref());
}

/// Asks at once, by the browser's own question; false where it shows none.
pub fn confirmed(question: &str) -> bool {
    web_sys::window().is_some_and(|w| w.confirm_with_message(question).unwrap_or(false))
}

/// Puts the focus on the element of this id.
pub fn focus(id: &str) {
    if let Some(element) = element(id) {
        // Fails only for an element that cannot have it.
        let _ = element.focus();
    }
}

/// Puts the focus on the element of this id, and the page so that it begins there.
pub fn go_to(id: &str) {
    if let Some(element) = element(id) {
        // Fails only for an element that cannot have it.
        let _ = element.focus();
        element.scroll_into_view();
    }
}

/// Puts the focus there, but only where what had it is gone from the page.
pub fn focus_if_lost(id: &str) {
    let focused = web_sys::window().and_then(|w| w.document()).and_then(|d| d.active_element());
    if focused.is_none_or(|e| e.tag_name() == "BODY") {
        focus(id);
    }
}

/// Scrolls one element so that another in it is seen, with some of what stands before it. The page stays where it is.
pub fn scroll_within(outer: &str, inner: &str) {
    const BEFORE: i32 = 150;
    if let (Some(outer), Some(inner)) = (element(outer), element(inner)) {
        outer.set_scroll_top((inner.offset_top() - BEFORE).max(0));
    }
}

/// Asks the browser to print the page.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // Fails where printing is denied; then nothing is printed.
        let _ = window.print();
    }
}

/// The heights of letters in the face that labels are printed in, measured on a canvas; the usual ones where that cannot
/// be done.
pub fn face() -> Face {
    let document = web_sys::window().and_then(|w| w.document());
    let canvas = document.and_then(|d| d.create_element("canvas").ok());
    let canvas = canvas.and_then(|c| c.dyn_into::<HtmlCanvasElement>().ok());
    let context = canvas.and_then(|c| c.get_context("2d").ok().flatten());
    let Some(context) = context.and_then(|c| c.dyn_into::<CanvasRenderingContext2d>().ok()) else {
        return Face::default();
    };
    context.set_font("1000px Arial, \"Liberation Sans\", Helvetica, sans-serif");
    let height = |sign: &str| {
        let measured = context.measure_text(sign).ok()?;
        js_sys::Reflect::get(&measured, &"actualBoundingBoxAscent".into()).ok()?.as_f64()
    };
    match (height("x"), height("H")) {
        (Some(small), Some(capital)) if small > 0.0 => Face::of(small as i64, capital as i64),
        _ => Face::default(),
    }
}
