//! The screen kept awake beside the pot, as far as the browser lets a page do that.

use js_sys::{Function, Promise, Reflect};
use std::cell::RefCell;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// Whether the screen stays on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Wake {
    Asleep,
    Awake,
    /// The browser does not let it, or has no such thing.
    Refused,
}

#[derive(Default)]
struct Lock {
    wanted: bool,
    sentinel: Option<JsValue>,
    tell: Option<Box<dyn Fn(Wake)>>,
    listening: bool,
}

thread_local! {
    static LOCK: RefCell<Lock> = RefCell::default();
}

/// From now on the screen stays on, or may go off again; `tell` hears what came of it. A browser lets go of the lock
/// when the page is hidden: it is taken again when the page comes back.
pub fn stay_awake(on: bool, tell: impl Fn(Wake) + 'static) {
    let (held, listening) = LOCK.with_borrow_mut(|lock| {
        lock.wanted = on;
        lock.tell = Some(Box::new(tell));
        let held = if on { None } else { lock.sentinel.take() };
        (held, std::mem::replace(&mut lock.listening, true))
    });
    if let Some(sentinel) = held {
        release(&sentinel);
    }
    if !listening {
        listen();
    }
    if on {
        take();
    }
}

fn listen() {
    let Some(document) = web_sys::window().and_then(|w| w.document()) else { return };
    let page = document.clone();
    let back = Closure::<dyn FnMut()>::new(move || {
        if !page.hidden() && LOCK.with_borrow(|lock| lock.wanted) {
            take();
        }
    });
    let listener = back.into_js_value();
    let _ = document.add_event_listener_with_callback("visibilitychange", listener.unchecked_ref());
}

fn take() {
    spawn_local(async {
        let Some(sentinel) = request().await else { return tell(Wake::Refused) };
        let unwanted =
            LOCK.with_borrow_mut(
                |lock| {
                    if lock.wanted { lock.sentinel.replace(sentinel) } else { Some(sentinel) }
                },
            );
        if let Some(sentinel) = unwanted {
            release(&sentinel);
        }
        tell(if LOCK.with_borrow(|lock| lock.wanted) { Wake::Awake } else { Wake::Asleep });
    });
}

fn tell(wake: Wake) {
    LOCK.with_borrow(|lock| {
        if let Some(tell) = &lock.tell {
            tell(wake);
        }
    });
}

/// None where it is refused or not there.
async fn request() -> Option<JsValue> {
    let navigator = web_sys::window()?.navigator();
    let lock = Reflect::get(&navigator, &"wakeLock".into()).ok().filter(|l| l.is_object())?;
    let request: Function = Reflect::get(&lock, &"request".into()).ok()?.dyn_into().ok()?;
    let promise: Promise = request.call1(&lock, &"screen".into()).ok()?.dyn_into().ok()?;
    JsFuture::from(promise).await.ok()
}

fn release(sentinel: &JsValue) {
    let release = Reflect::get(sentinel, &"release".into()).ok().and_then(|r| r.dyn_into::<Function>().ok());
    if let Some(release) = release {
        // A promise that resolves with nothing; a lock that is gone already is as good as released.
        let _ = release.call0(sentinel);
    }
}
