//! What every room shares: the open book, what is being saved, the person's preferences, where they stand.

use super::route::Route;
use crate::book::{Act, ActError, Book, Entry, Id, Journal, Saving, Settings, State, StoreError};
use crate::dom::*;
use crate::keep::{self, Hand, Prefs, Theme, Which};
use crate::quantity::Why;
use crate::rooms::parts::later;
use crate::stores::Ledger;
use leptos::prelude::{Owner, set_interval};
use std::cell::{Cell, RefCell};

/// Handles to the state of the app; copied freely, alive as long as the page.
#[derive(Clone, Copy)]
pub struct Workshop {
    /// As long as the page lives, so does the book: one in all, never given back.
    pub(super) book: &'static RefCell<Book>,
    /// Set when the book changed.
    pub(super) changed: Value<()>,
    /// True while the rooms do not show yet what has changed.
    due: Value<bool>,
    /// Lines that another tab stored while the book was being opened.
    pub(super) heard: Value<Vec<String>>,
    /// Why the last thing was not done; none once one was.
    refused: Value<Option<ActError>>,
    pub(super) saving: Value<Saving>,
    /// True while all of the book is stored again.
    pub(super) rescuing: Value<bool>,
    /// What is to be told once the browser had cleared the storage; none once it was understood.
    pub(super) cleared: Value<Option<String>>,
    /// The same as it is said in words: a little later, so that what is stored at once is not said to be under way.
    said: Value<Saving>,
    pub(super) prefs: Value<Prefs>,
    route: Value<Route>,
    why: Value<Option<Why>>,
    pub(super) opened: Value<Opened>,
    /// False while a large book has only been opened: what takes long waits until what is wanted first has been shown.
    pub(super) rest: Value<bool>,
    /// What is said while it is opened, and how many pieces of it there are by then: as long as they come, the storage answers.
    pub(super) opening: Value<(&'static str, u32)>,
    /// How often a book was begun to be opened: an answer that comes late is for an earlier one.
    pub(super) attempt: Value<u32>,
    /// Milliseconds since 1970, once a second.
    now: Value<u64>,
    /// What is due of the candles that burn.
    pub(super) reminds: Value<Vec<String>>,
    next_dom_id: Value<u32>,
    /// What it makes lives as long as the page.
    pub(super) page: &'static Owner,
}

/// Whether the book is open. Before it is nothing is written.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Opened {
    Opening,
    /// There is none, as far as is known: an empty one is shown.
    Guessed,
    Open,
    Failed(StoreError),
}

pub(super) const OPENING: &str = "Opening the book …";

/// Milliseconds: the rooms show what has changed no later than that.
const FRAME: u32 = 16;

thread_local! {
    static HERE: Cell<Option<Workshop>> = const { Cell::new(None) };
    /// Made by the first room that asks, so that what it takes to reckon it comes with that room.
    static LEDGER: Cell<Option<Derived<Ledger>>> = const { Cell::new(None) };
}

impl Workshop {
    /// The workshop of this page; [`Workshop::open`] was called before any view was made.
    pub fn here() -> Self {
        HERE.get().unwrap_or_else(|| Self::open(Prefs::default()))
    }

    pub fn open(prefs: Prefs) -> Self {
        let shop = Self {
            book: Box::leak(Box::default()),
            changed: Value::new(()),
            due: Value::new(false),
            heard: Value::new(Vec::new()),
            refused: Value::new(None),
            saving: Value::new(Saving::Saved),
            rescuing: Value::new(false),
            cleared: Value::new(None),
            said: Value::new(Saving::Saved),
            prefs: Value::new(prefs),
            route: Value::new(Route::parse(&keep::hash())),
            why: Value::new(None),
            opened: Value::new(Opened::Opening),
            rest: Value::new(true),
            opening: Value::new((OPENING, 0)),
            attempt: Value::new(0),
            now: Value::new(keep::now()),
            reminds: Value::new(Vec::new()),
            next_dom_id: Value::new(0),
            page: Box::leak(Box::new(Owner::current().unwrap_or_default())),
        };
        HERE.set(Some(shop));
        shop
    }

    /// Follows the address, the clock, the other tabs; asks before unsaved work is left.
    pub fn listen(self) {
        on_window("hashchange", move |_| {
            self.route.set(Route::parse(&keep::hash()));
            keep::to_top();
            // Once the room is there: what was pressed to come here may be gone from the page.
            later(0, || keep::focus_if_lost("room"));
        });
        set_interval(move || self.now.set(keep::now()), std::time::Duration::from_secs(1));
        keep::ask_on_leave(move || self.unsaved());
        // Whatever is tapped while a pour is on: a sound has to be ready before it is wanted.
        on_window("click", move |_| {
            if self.prefs.with_untracked(|p| p.sound) && self.state_untracked(|s| s.running().is_some()) {
                // After what the tap does.
                later(0, keep::ready_sound);
            }
        });
        for which in [Which::Own, Which::Demo] {
            keep::listen(which, move |lines| {
                if self.prefs.with_untracked(|p| p.workshop == which) {
                    self.hear(lines);
                }
            });
        }
        watch(move || {
            let theme = self.prefs.with(|p| p.theme);
            keep::set_root(
                "theme",
                match theme {
                    Theme::Device => "device",
                    Theme::Light => "light",
                    Theme::Dark => "dark",
                },
            );
            let hand = self.prefs.with(|p| p.hand);
            keep::set_root("hand", if hand == Hand::Left { "left" } else { "right" });
        });
    }

    pub(super) fn unsaved(self) -> bool {
        self.book.borrow().unsaved() > 0 || self.rescuing.get_untracked()
    }

    /// What `of` finds in the book, followed.
    pub fn state<T>(self, of: impl FnOnce(&State) -> T) -> T {
        self.changed.track();
        of(self.book.borrow().state())
    }
    pub fn state_untracked<T>(self, of: impl FnOnce(&State) -> T) -> T {
        of(self.book.borrow().state())
    }
    /// What `of` finds in the journal, followed.
    pub fn journal<T>(self, of: impl FnOnce(&Journal) -> T) -> T {
        self.changed.track();
        of(self.book.borrow().journal())
    }
    /// Has the entries of a batch at hand, or of no batch the last ones of the book, so many.
    pub fn untie(self, batch: Option<&Id>, most: usize) {
        let mut book = self.book.borrow_mut();
        match batch {
            Some(batch) => book.untie(batch),
            None => book.untie_latest(most),
        }
    }
    /// Why the last thing was not done.
    pub fn refused(self) -> Value<Option<ActError>> {
        self.refused
    }
    pub fn settings(self) -> Settings {
        self.state(|s| s.settings.clone())
    }
    /// The stores: what became of every lot. Reckoned when it is asked for, and anew only after a change.
    pub fn ledger(self) -> Derived<Ledger> {
        LEDGER.get().unwrap_or_else(|| {
            let ledger =
                self.page.with(|| Derived::new(|| Self::here().state(|s| Ledger::of(s, keep::ZONE))));
            LEDGER.set(Some(ledger));
            ledger
        })
    }
    pub fn saving(self) -> Derived<Saving> {
        self.saving.into()
    }
    pub fn said(self) -> Derived<Saving> {
        self.said.into()
    }
    pub fn opened(self) -> Derived<Opened> {
        self.opened.into()
    }
    pub fn at_rest(self) -> bool {
        self.rest.get()
    }
    pub fn route(self) -> Derived<Route> {
        self.route.into()
    }
    /// Milliseconds since 1970, once a second: for timers.
    pub fn now(self) -> Derived<u64> {
        self.now.into()
    }
    pub fn why(self) -> Value<Option<Why>> {
        self.why
    }
    pub fn ask_why(self, why: Why) {
        self.why.set(Some(why));
    }

    /// A fresh id for an element, so that labels and descriptions find each other.
    pub fn fresh_dom_id(self) -> String {
        self.next_dom_id.update(|n| *n += 1);
        format!("e{}", self.next_dom_id.get_untracked())
    }

    /// A fresh id for a new thing in the book.
    pub fn new_id(self) -> Id {
        self.book.borrow().journal().new_id(keep::random())
    }

    /// Goes to a place in the app, as a link would.
    pub fn go(self, hash: &str) {
        self.show();
        keep::set_hash(hash);
        self.route.set(Route::parse(hash));
    }

    /// True where nothing may be written: the book is of a newer version, or not open.
    pub fn read_only(self) -> bool {
        self.journal(Journal::read_only) || self.opened.get() != Opened::Open
    }

    /// Does something: the rooms show it at once, and it goes to the storage at once; [`Workshop::saving`] says when
    /// it is there. False where it is not done: then nothing has changed, what was typed is to stay, and
    /// [`Workshop::refused`] says why in every room.
    pub fn act(self, act: Act) -> bool {
        self.change(|b| b.act(act, keep::now(), keep::random()).map(|_| ()))
    }

    /// Does several things in one go, as [`Workshop::act`] does one.
    pub fn act_all(self, acts: impl IntoIterator<Item = Act>) -> bool {
        self.change(|b| {
            acts.into_iter().try_for_each(|act| b.act(act, keep::now(), keep::random()).map(|_| ()))
        })
    }

    /// Takes in what a copy brings, and may replace the book by it. False where it is not done, as in [`Workshop::act`].
    pub fn take_copy(self, fresh: Vec<(Entry, String)>, made: Option<u64>, replace: Option<Act>) -> bool {
        self.change(|b| b.take_copy(fresh, made, replace, keep::now(), keep::random()))
    }

    fn change(self, how: impl FnOnce(&mut Book) -> Result<(), ActError>) -> bool {
        if self.opened.get_untracked() != Opened::Open {
            return false;
        }
        let which = self.prefs.with_untracked(|p| p.workshop);
        keep::expect(which, self.saving.with_untracked(|s| *s == Saving::Saved));
        let outcome = how(&mut self.book.borrow_mut());
        let done = outcome.is_ok();
        if !done || self.refused.with_untracked(Option::is_some) {
            self.refused.set(outcome.err());
        }
        // First to the storage. Its answer comes within a frame, and would have to wait for the rooms if they began now.
        self.store();
        keep::expect(which, false);
        self.due.set(true);
        later(FRAME, move || self.show());
        done
    }

    /// Says in words how saving stands.
    pub(super) fn say(self) {
        let now = self.saving.get_untracked();
        if self.said.with_untracked(|said| *said != now) {
            self.said.set(now);
        }
    }

    /// Lets the rooms show what has changed, if they do not yet.
    pub(super) fn show(self) {
        self.say();
        if self.due.get_untracked() {
            self.due.set(false);
            self.changed.set(());
        }
    }
}
