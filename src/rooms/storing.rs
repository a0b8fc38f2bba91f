//! Opening a book, changing to another, and storing what is done in it.

use super::bundling::LARGE;
use super::fetch;
use super::workshop::{OPENING, Opened, Workshop};
use crate::book::{Book, Reading, StoreError};
use crate::dom::on_window;
use crate::keep::{self, Which};
use crate::rooms::parts::later;
use leptos::task::spawn_local;

/// Milliseconds: a storage that has not answered by then is told to be silent (our own choice; it answers within 100).
const PATIENCE: u32 = 10_000;
/// Milliseconds after a book was opened until what takes long is begun: by then its first page has been shown.
const REST: u32 = 300;
/// Milliseconds: what takes longer than that is told (our own choice).
const SOON: u64 = 1_000;
const LONG: &str = "Opening the book … It is a large one, and all of it is read this once.";
const LOST: &str = "The browser has cleared the storage of this page while another book was open. If you had a book here, \
take in your last copy of it.";

impl Workshop {
    /// Opens the book of the workshop that the preferences name.
    pub async fn load(self) {
        self.attempt.update(|n| *n += 1);
        let attempt = self.attempt.get_untracked();
        if attempt > 1 {
            self.opened.set(Opened::Opening);
        }
        self.heard.set(Vec::new());
        self.opening.set((OPENING, 0));
        self.be_patient(attempt, 0);
        let which = self.prefs.with_untracked(|p| p.workshop);
        if which == Which::Own && keep::bundle::has_bundle() {
            let asked = keep::bundle::ask();
            if fetch::bundling(self, Some(asked)).await {
                return;
            }
        }
        let mut reading = Reading::of(&keep::device());
        let began = keep::now();
        let mut piece = |lines| {
            reading.add(lines);
            self.goes_on(attempt, began, LONG)
        };
        let outcome = match keep::read(which, &mut piece).await {
            Ok(()) if which == Which::Demo && reading.lines() == 0 => {
                fill_demo().await.map(|lines| reading.add(lines))
            }
            read => read,
        };
        if !self.is_attempt(attempt) {
            return;
        }
        match outcome {
            Ok(()) => {
                if which == Which::Own && reading.lines() == 0 && keep::is_gone(which) {
                    self.cleared.set(Some(LOST.to_owned()));
                }
                let large = which == Which::Own && reading.lines() >= LARGE;
                if self.opened.get_untracked() != Opened::Open {
                    self.open_book(reading.book());
                } else if reading.lines() > 0 {
                    self.book.borrow_mut().join(reading);
                    self.changed.set(());
                }
                self.loaded();
                if large {
                    fetch::bundling(self, None).await;
                }
            }
            Err(e) => self.opened.set(Opened::Failed(e)),
        }
    }

    /// One more piece of the book is there; where it takes long, it is said why. False where another book is opened by now.
    pub(super) fn goes_on(self, attempt: u32, began: u64, why: &'static str) -> bool {
        if !self.is_attempt(attempt) {
            return false;
        }
        let long = keep::now().saturating_sub(began) > SOON;
        self.opening.update(|(said, pieces)| {
            *pieces += 1;
            if long {
                *said = why;
            }
        });
        true
    }

    /// Says that the storage is silent where it is waited for and no piece came for long.
    fn be_patient(self, attempt: u32, pieces: u32) {
        later(PATIENCE, move || {
            let waits = matches!(self.opened.get_untracked(), Opened::Opening | Opened::Guessed);
            if !self.is_attempt(attempt) || !waits {
                return;
            }
            match self.opening.get_untracked().1 {
                more if more > pieces => self.be_patient(attempt, more),
                _ => self.opened.set(Opened::Failed(StoreError::Silent)),
            }
        });
    }

    pub(super) fn loaded(self) {
        self.store();
        // Once what is wanted first has been shown.
        later(100, move || spawn_local(fetch::fetch_all(self)));
        later(REST, move || self.rest.set(true));
    }

    /// Where nothing else was ever kept in this browser there will be no book: so the first screen is shown at once. What
    /// the storage says of it comes a little later: an empty book is open once the storage had to be laid out for it, and
    /// otherwise its lines are waited for.
    pub(super) fn begin(self) {
        self.looked_at();
        on_window("potside:book", move |_| self.looked_at());
    }

    fn looked_at(self) {
        let waits = matches!(self.opened.get_untracked(), Opened::Opening | Opened::Guessed);
        if !waits || self.attempt.get_untracked() > 1 {
            return;
        }
        match keep::root("book").as_deref() {
            None => self.opened.set(Opened::Guessed),
            Some("none") => self.open_book(Book::open(Vec::new(), &keep::device())),
            Some(_) => self.opened.set(Opened::Opening),
        }
    }

    pub(super) fn open_book(self, book: Book) {
        self.rest.set(book.journal().len() < LARGE);
        self.book.replace(book);
        self.changed.set(());
        self.opened.set(Opened::Open);
        let heard = self.heard.get_untracked();
        self.heard.set(Vec::new());
        self.hear(heard);
    }

    fn is_attempt(self, attempt: u32) -> bool {
        self.attempt.get_untracked() == attempt
    }

    /// Changes to the other workshop; what is not stored yet is stored first.
    pub fn change_workshop(self, which: Which) {
        if self.unsaved() {
            return later(100, move || self.change_workshop(which));
        }
        self.change_prefs(|p| p.workshop = which);
        self.go("#pot");
        spawn_local(self.load());
    }

    /// Leaves the demo workshop and deletes it, back to one's own.
    pub fn leave_demo(self) {
        if self.unsaved() {
            return later(100, move || self.leave_demo());
        }
        self.change_prefs(|p| p.workshop = Which::Own);
        self.go("#pot");
        super::book::forget_demo();
        self.opened.set(Opened::Opening);
        spawn_local(async move {
            // A demo that cannot be deleted now is there the next time one looks around in it: no harm is done.
            let _ = keep::leave_demo().await;
            self.load().await;
        });
    }

    /// Takes in what another tab stored; while the book is being opened it waits, or it would be missing until the next time.
    pub(super) fn hear(self, lines: Vec<String>) {
        if self.opened.get_untracked() == Opened::Open {
            let mut book = self.book.borrow_mut();
            lines.into_iter().for_each(|line| book.hear(line));
            drop(book);
            self.changed.set(());
            self.store();
        } else {
            self.heard.update(|h| h.extend(lines));
        }
    }

    /// Stores what waits, in order, one transaction after another, until nothing does.
    pub fn store(self) {
        // A bundle still tells what was taken out of the entries.
        if self.book.borrow_mut().has_taken_out() {
            keep::bundle::forget_bundle();
        }
        let next = self.book.borrow_mut().to_store();
        if let Some(lines) = next {
            self.send(lines);
        }
        self.saving.set(self.book.borrow().saving());
    }

    /// Sends lines to the storage. What is shown meanwhile is said after it, so that it does not wait for that.
    fn send(self, lines: Vec<(String, String)>) {
        let which = self.prefs.with_untracked(|p| p.workshop);
        let (flight, attempt) = (self.book.borrow().flight(), self.attempt.get_untracked());
        let stored = keep::append(which, lines.clone());
        spawn_local(async move {
            let mut outcome = stored.await;
            if outcome == Err(StoreError::Cleared) {
                outcome = fetch::rescue(self, Some(flight)).await;
                if outcome.is_ok() {
                    outcome = keep::append(which, lines.clone()).await;
                }
            }
            let done = outcome.is_ok();
            if !self.is_attempt(attempt) {
                return;
            }
            self.book.borrow_mut().answered(flight, outcome);
            if done {
                self.store();
            } else {
                self.store_later();
            }
            // After who waits here has been told: the other tabs, and then the rooms.
            later(0, move || {
                if done {
                    keep::tell(which, &lines);
                }
                self.show();
            });
        });
        later(PATIENCE, move || {
            if self.is_attempt(attempt) && self.book.borrow_mut().late(flight) {
                self.store_later();
            }
        });
    }

    /// Says that it is not stored, and tries again after a while.
    fn store_later(self) {
        self.saving.set(self.book.borrow().saving());
        self.say();
        let pause = self.book.borrow().pause();
        later(pause, move || self.store());
    }
}

/// Fills the empty demo workshop; its lines.
async fn fill_demo() -> Result<Vec<String>, StoreError> {
    let Some(lines) = fetch::demo_lines().await else {
        return Err(StoreError::Failed("the demo could not be fetched; check the connection".to_owned()));
    };
    keep::append(Which::Demo, lines.clone()).await?;
    keep::tell(Which::Demo, &lines);
    Ok(lines.into_iter().map(|(_, line)| line).collect())
}
