//! A copy of the book given out as a file, and when one is asked for.

use crate::book::{Saving, StoreError, backup_with};
use crate::dom::*;
use crate::keep::{self, Shared, Sharing, Which};
use crate::photo::Photo;
use crate::rooms::fetch;
use crate::rooms::parts::{choice, later, press, words};
use crate::rooms::workshop::{Opened, Workshop};
use leptos::task::spawn_local;
use std::cell::{Cell, RefCell};
use std::future::poll_fn;
use std::pin::pin;
use std::rc::Rc;
use std::task::{Poll, Waker};

/// A copy as text, and what is said of it: what it has, and what it has not.
struct Made {
    text: String,
    with: String,
    without: String,
    /// When it was begun, milliseconds since 1970: what is done after that may not be in it.
    at: u64,
}

async fn made(shop: Workshop) -> Result<Made, String> {
    let which = untrack(|| shop.which());
    let at = keep::now();
    let mut stored = stored(shop, which).await;
    if stored.is_ok() && !keep::is_sure(which) {
        // What is missing there is brought back; a copy of what is left would have none of it.
        stored = Err(StoreError::Cleared);
        spawn_local(async move {
            // Where it cannot be done, it is begun anew with the next thing that is stored.
            let _ = fetch::rescue(shop, None).await;
        });
    }
    let read = stored.is_ok();
    if let Err(why) = &stored
        && untrack(|| shop.opened().get()) != Opened::Open
    {
        return Err(why.to_string());
    }
    let (photos, lacking) = if matches!(stored, Err(StoreError::Silent)) {
        (Vec::new(), untrack(|| shop.journal(|j| j.photos().len())))
    } else {
        photos_of(shop, which).await
    };
    let (lines, unsaved) = {
        let book = shop.book.borrow();
        (book.lines(stored.ok()), book.unsaved())
    };
    let (text, left) = backup_with(&lines, &photos, &keep::device(), at);
    let entries =
        |n: usize| if n == 1 { "1 entry".to_owned() } else { [&n.to_string(), " entries"].concat() };
    let mut with = entries(lines.len());
    if !photos.is_empty() {
        with = [&with, " and ", &counted(photos.len() - left, "photo")].concat();
    }
    let mut without = match (lacking, left) {
        (0, 0) => String::new(),
        (lacking, 0) => [" Not in it: ", &counted(lacking, "photo"), " that cannot be read here."].concat(),
        _ => [" Not in it: ", &counted(lacking + left, "photo"), ", for which there is no room."].concat(),
    };
    if !read {
        without += " The storage of this device could not be read: the copy is of what is open here.";
    }
    if unsaved > 0 {
        without =
            [&without, " In it too, and not saved on this device yet: ", &entries(unsaved), "."].concat();
    }
    Ok(Made { text, with, without, at })
}

/// Milliseconds: a storage that has not given all by then is not waited for (our own choice; a large book takes two seconds).
const PATIENCE: u32 = 30_000;

/// What is stored; not asked for where the storage is known not to answer.
async fn stored(shop: Workshop, which: Which) -> Result<Vec<String>, StoreError> {
    if untrack(|| shop.saving().get()) == Saving::NotSaved(StoreError::Silent) {
        return Err(StoreError::Silent);
    }
    let mut load = pin!(keep::load(which));
    let late = Rc::new(Cell::new(false));
    let waiting = Rc::new(RefCell::new(None::<Waker>));
    let (is_late, wakes) = (Rc::clone(&late), Rc::clone(&waiting));
    later(PATIENCE, move || {
        is_late.set(true);
        if let Some(waker) = wakes.take() {
            waker.wake();
        }
    });
    poll_fn(|context| {
        if let Poll::Ready(lines) = load.as_mut().poll(context) {
            return Poll::Ready(lines);
        }
        waiting.replace(Some(context.waker().clone()));
        if late.get() { Poll::Ready(Err(StoreError::Silent)) } else { Poll::Pending }
    })
    .await
}

/// Under today's name.
fn named(ending: &str) -> String {
    ["potside-book-", &keep::file_day(), ending].concat()
}

pub(super) fn part(shop: Workshop) -> View {
    let said = Value::new(String::new());
    let give = move || {
        spawn_local(async move {
            let name = named(".json");
            said.set(match made(shop).await {
                Ok(Made { text, with, without, at }) if keep::download(&name, &text) => {
                    shop.change_prefs(|p| p.copied = at);
                    let place = " is among your downloads. Put it where this device is not.";
                    [&name, " with ", &with, place, &without].concat()
                }
                Ok(_) => keep::NO_FILES.to_owned(),
                Err(why) => why,
            });
        });
    };
    let shares = keep::sharing(&named(".txt"), "").is_some();
    group![
        el("h3").child("A copy to keep"),
        el("p").child(
            "The copy is one JSON file that any text editor shows: an entry a line, each with its \
own checksum, and one over the whole. Everything is in it but what this device prefers.",
        ),
        shares.then(|| {
            el("p").child(
                "To bring it to your other device, share it by an app that both have. Your customers \
are in it: choose one that nobody else reads.",
            )
        }),
        el("div").class("actions").child(press("", "Download a copy", give)).child(shares.then(|| press(
            "",
            "Share a copy",
            sharer(shop, said)
        ))),
        el("p").attr("role", "status").child(words(move || said.get())),
        remind(shop)
    ]
}

/// A copy to be shared, what is said of it, and when it was begun.
type Ready = Option<(Sharing, String, u64)>;

/// What a tap does. A browser opens its sheet only shortly after one, and a large book takes longer: then the copy waits a
/// minute for the next.
fn sharer(shop: Workshop, said: Value<String>) -> impl Fn() + 'static {
    let ready = Rc::new(RefCell::new(Ready::None));
    move || {
        let ready = Rc::clone(&ready);
        spawn_local(async move {
            let waited = ready.take();
            let again = waited.is_some();
            let now = match waited {
                Some(copy) => Ok(Some(copy)),
                None => made(shop).await.map(|made| {
                    let name = named(".txt");
                    let what = [&name, " with ", &made.with, " was handed on."].concat();
                    Some((keep::sharing(&name, &made.text)?, what + &made.without, made.at))
                }),
            };
            let copy = match now {
                Ok(Some(copy)) => copy,
                Ok(None) => return said.set(NOT_SHARED.to_owned()),
                Err(why) => return said.set(why),
            };
            said.set(match keep::share(&copy.0).await {
                Shared::Given => {
                    shop.change_prefs(|p| p.copied = copy.2);
                    copy.1 + " On the other device, save it, then choose it under “Open a copy”."
                }
                Shared::Left => "It was not shared: no app was chosen.".to_owned(),
                Shared::Refused if again => NOT_SHARED.to_owned(),
                Shared::Refused => {
                    ready.replace(Some(copy));
                    // What is done meanwhile would not be in it.
                    later(60_000, move || drop(ready.take()));
                    "The copy is ready. Tap “Share a copy” once more.".to_owned()
                }
            });
        });
    }
}

const NOT_SHARED: &str = "This browser does not share the copy. Download it, and send the file from there.";

/// The photos of the book that are whole on this device, the latest first, and how many are not.
async fn photos_of(shop: Workshop, which: Which) -> (Vec<Photo>, usize) {
    let names: Vec<String> = untrack(|| shop.journal(|j| j.photos()));
    let mut photos = Vec::new();
    for name in &names {
        photos.extend(keep::photo::photo(which, name).await.ok());
    }
    let lacking = names.len() - photos.len();
    (photos, lacking)
}

/// `1 photo`, `3 photos`.
pub(super) fn counted(n: usize, what: &str) -> String {
    [n.to_string().as_str(), " ", what, if n == 1 { "" } else { "s" }].concat()
}

/// After how long a copy is asked for; kept as soon as it is chosen.
fn remind(shop: Workshop) -> View {
    let (days, pours) = untrack(|| shop.prefs().with(|p| (p.remind_days, p.remind_pours)));
    let (days, pours) = (Value::new(days), Value::new(pours));
    watch(move || {
        let (days, pours) = (days.get(), pours.get());
        shop.change_prefs(|p| (p.remind_days, p.remind_pours) = (days, pours));
    });
    el("div")
        .class("fields")
        .child(choice("Ask for a copy after days", days, &[(0, "Never"), (7, "7"), (14, "14"), (30, "30")]))
        .child(choice("or after pours", pours, &[(0, "Never"), (5, "5"), (10, "10"), (25, "25")]))
        .view()
}
