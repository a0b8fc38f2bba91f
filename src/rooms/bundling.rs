//! A large book opened from its bundle, which is made and proved beside the work: a module of its own, fetched only where
//! there is such a book.

use super::fetch;
use super::renewal::renewed;
use super::rescue::BEGUN;
use super::workshop::{Opened, Workshop};
use crate::book::bundle::{Found, Tying, find, read};
use crate::book::{Book, Entry, Id};
use crate::keep::bundle::Trust;
use crate::keep::{self, Which, bundle};
use crate::rooms::parts::later;
use js_sys::Promise;
use leptos::task::spawn_local;
use std::pin::Pin;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// A book with fewer entries opens fast enough from its lines.
pub(super) const LARGE: usize = 2_000;
/// So many lines since are no reason yet to make the bundle anew.
const MORE: usize = 500;
/// So many lines that the bundle lacks are taken in one by one.
const MANY: usize = 2_000;
/// Milliseconds: the work is left alone for so long, and a piece of this takes no longer than that.
const LATER: u32 = 5_000;
const PIECE: u64 = 8;
const PAUSE: u32 = 30;
/// So many lines are looked through in one piece.
const LINES: u32 = 200;
/// So often it is tried to make a bundle in the middle of the work.
const TRIES: u32 = 20;

/// What this module does: opens the book from the bundle that was asked for, true where it could; and looks after its bundle.
pub(super) type Bundling = fn(Workshop, Option<Promise>) -> Pin<Box<dyn Future<Output = bool>>>;

pub(super) const BUNDLING: Bundling = |shop, asked| Box::pin(begin(shop, asked));

/// What a book was opened from.
struct Known {
    lines: usize,
    /// How many of them are not in the bundle.
    since: usize,
}

async fn begin(shop: Workshop, asked: Option<Promise>) -> bool {
    let at = shop.attempt.get_untracked();
    let mut known = None;
    if let Some(asked) = asked {
        let opened = open(shop, at, asked).await;
        if shop.attempt.get_untracked() != at {
            return true;
        }
        let Some((book, lines)) = opened else { return false };
        known = Some(lines);
        shop.open_book(book);
        shop.loaded();
    }
    spawn_local(care(shop, at, known));
    true
}

async fn open(shop: Workshop, at: u32, asked: Promise) -> Option<(Book, Known)> {
    let read = match find(bundle::bytes(asked).await?, &bundle::build())? {
        Found::Read(read) => read,
        Found::Old(old) => read(renewed(shop, at, old).await?, &bundle::build())?,
    };
    let lines = read.lines;
    let device = keep::device();
    let mut book = Book::open_tied(read, &device);
    let more = bundle::lines_since(&device, book.journal().last_clock()).await.ok()?;
    let since = more.len();
    more.into_iter().for_each(|line| book.hear(line));
    Some((book, Known { lines: lines + since, since }))
}

/// Looks after the bundle.
async fn care(shop: Workshop, at: u32, known: Option<Known>) {
    if let Some(known) = known {
        // Until it is proved to be all that is stored, nothing else is to be done with the bundle.
        let whole =
            missing(shop, at, &known).await == Some(true) && proved(shop, at, &known).await == Some(true);
        if !whole || known.since < MORE {
            return;
        }
    }
    for _ in 0..TRIES {
        pause(LATER).await;
        if tie(shop, at).await != Some(false) {
            return;
        }
    }
}

/// None where the book is another one now.
fn same(shop: Workshop, attempt: u32) -> Option<()> {
    let open = shop.opened.get_untracked() == Opened::Open && shop.attempt.get_untracked() == attempt;
    open.then_some(())
}

pub(super) async fn pause(milliseconds: u32) {
    let promise = Promise::new(&mut |resolve, _| {
        later(milliseconds, move || {
            // A promise has nothing to answer.
            let _ = resolve.call0(&JsValue::NULL);
        });
    });
    // It is never rejected.
    let _ = JsFuture::from(promise).await;
}

/// Throws the bundle away and opens the book from its lines; where those are gone it has them, and they are stored again.
fn distrust(shop: Workshop, gone: bool) {
    if gone || !keep::is_sure(Which::Own) || keep::local::kept(BEGUN).is_some() {
        spawn_local(async move {
            // Where it cannot be done, it is begun anew with the next thing that is stored.
            let _ = fetch::rescue(shop, None).await;
        });
        return;
    }
    bundle::forget_bundle();
    if !shop.unsaved() {
        spawn_local(shop.load());
    }
}

/// Finds what is stored and not in the book: another tab may have stored it, or a copy have brought it. False where
/// something is not stored that the bundle has, or is there that Potside never wrote.
async fn missing(shop: Workshop, at: u32, known: &Known) -> Option<bool> {
    let count = bundle::count().await.ok()?;
    same(shop, at)?;
    if count == shop.book.borrow().journal().len() {
        return Some(true);
    }
    let keys = bundle::keys().await.ok()?;
    same(shop, at)?;
    let mut unknown = Vec::new();
    let mut here = 0;
    for key in keys {
        match key.map(Id) {
            Some(id) if shop.book.borrow().journal().knows(&id) => here += 1,
            Some(id) => unknown.push(id.0),
            None => {
                distrust(shop, false);
                return Some(false);
            }
        }
    }
    if here < known.lines {
        distrust(shop, here == 0);
        return Some(false);
    }
    // As many as a copy brings take longer one by one than all of them anew.
    if unknown.len() > MANY && !shop.unsaved() {
        distrust(shop, false);
        return Some(false);
    }
    let lines = bundle::lines_at(&unknown).await.ok()?;
    same(shop, at)?;
    shop.hear(lines);
    Some(true)
}

/// Looks through all that is stored, a piece at a time. False where a line is damaged: it is set aside at once, and the
/// next time the book is opened from its lines; and where a line is gone. A bundle that was made of one of another build is
/// also compared with them: in a line there may be what only this build reads.
async fn proved(shop: Workshop, at: u32, known: &Known) -> Option<bool> {
    let compares = bundle::trust() != Trust::Lines;
    let mut after: Option<JsValue> = None;
    let mut here = 0;
    loop {
        pause(PAUSE).await;
        let (keys, lines) = bundle::piece(Which::Own, after.as_ref(), LINES).await.ok()?;
        same(shop, at)?;
        if keys.length() == 0 {
            if here < known.lines {
                distrust(shop, here == 0);
                return Some(false);
            }
            // It may have been thrown away meanwhile.
            if compares && bundle::has_bundle() {
                bundle::set_trust(Trust::Lines);
            }
            return Some(true);
        }
        let mut more = Vec::new();
        let mut bad = false;
        let mut known_lines = Vec::new();
        for (key, line) in keys.iter().zip(lines) {
            let known = key.as_string().map(Id).filter(|id| shop.book.borrow().journal().knows(id));
            match known.filter(|_| Entry::is_whole(&line)) {
                Some(id) => known_lines.push((id, line)),
                None => {
                    bad |= !Entry::is_whole(&line);
                    more.push(line);
                }
            }
        }
        here += known_lines.len();
        let all = known_lines.iter().map(|(id, line)| (id, line.as_str()));
        if compares && !shop.book.borrow().journal().says(all) {
            // The build before did not show it either: a pour that is on is not left for it.
            if shop.state_untracked(|s| s.running().is_some()) {
                bundle::forget_bundle();
            } else {
                distrust(shop, false);
            }
            return Some(false);
        }
        if !more.is_empty() {
            shop.hear(more);
        }
        if bad {
            bundle::forget_bundle();
            return Some(false);
        }
        after = Some(keys.get(keys.length() - 1));
    }
}

/// Makes the bundle, a piece at a time, and keeps it. False where what was to be tied up has changed meanwhile.
async fn tie(shop: Workshop, at: u32) -> Option<bool> {
    let mut tying = Tying::begin(shop.book.borrow().journal())?;
    loop {
        let start = keep::now();
        while keep::now() - start < PIECE {
            if tying.go_on(shop.book.borrow().journal()) {
                continue;
            }
            // What is not stored yet must not be in it.
            if shop.unsaved() {
                break;
            }
            let bytes = {
                let book = shop.book.borrow();
                tying.finish(book.journal(), &bundle::build(), book.journal().len())
            };
            let Some(bytes) = bytes else { return Some(false) };
            return Some(bundle::keep_bundle(&bytes, Trust::Lines).await.is_ok());
        }
        pause(PAUSE).await;
        same(shop, at)?;
    }
}
