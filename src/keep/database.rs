//! One IndexedDB database as a store of journal lines.

use super::opened::{Mode, Open, entries, factory, lines_of, open, put};
use super::request::{complete, result, store_error};
use crate::book::{Store, StoreError};
use crate::sort;
use js_sys::Array;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, IdbKeyRange, IdbTransaction};

/// So many lines are read at once: a book of usual size is one piece.
pub(super) const PIECE: u32 = 5_000;

/// So many lines are stored at once where all of them are to be stored again.
const AGAIN: usize = 2_000;

/// Milliseconds that a database has to be let go of before it counts as held by another tab (our own choice).
const LET_GO: i32 = 1_000;

/// A database of lines by entry id; opened when first used, and again if the browser closed it. Then what was in it may be
/// gone: nothing is stored until whoever has the lines has seen to it that they are there.
pub struct Database {
    name: String,
    open: RefCell<Option<Rc<Open>>>,
    /// How often it was opened, and after which of these times it was known what is in it.
    openings: Cell<u32>,
    trusted: Cell<u32>,
    /// True where the last opening had to lay it out once more.
    gone: Cell<bool>,
    /// Begun for what is stored in the same breath; see [`Database::expect`].
    expecting: Cell<Option<IdbTransaction>>,
}

/// Gives the next lines to be stored again, so many, of those whose keys are not among these; none at the end.
pub type Again<'a> = &'a mut dyn FnMut(usize, &dyn Fn(&str) -> bool) -> Option<Vec<(String, String)>>;

impl Database {
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            open: RefCell::new(None),
            openings: Cell::new(0),
            trusted: Cell::new(0),
            gone: Cell::new(false),
            expecting: Cell::new(None),
        }
    }

    /// Begins a transaction for lines that are still to be made, so that the browser lays it out meanwhile. What takes it is
    /// [`Database::begin`], before the page's code comes to its end: then one that nothing was put into is over by itself,
    /// and must be forgotten.
    pub fn expect(&self, some: bool) {
        self.expecting.set(if some { self.at_once(Mode::Write) } else { None });
    }

    /// Deletes the database and all that is in it.
    ///
    /// # Errors
    /// Where storage is denied, or another tab does not let go of it.
    pub async fn delete(&self) -> Result<(), StoreError> {
        self.open.take();
        self.openings.set(0);
        self.trusted.set(0);
        let request = factory()?.delete_database(&self.name).map_err(|e| store_error(&e))?;
        let blocked = Rc::new(Cell::new(false));
        let flag = Rc::clone(&blocked);
        let refuse = request.clone();
        // A delete that is blocked would wait for ever; as an error it can be said. What this page read last may only be
        // ending, so it has a moment's time.
        let on_blocked = Closure::<dyn FnMut(Event)>::new(move |_| {
            flag.set(true);
            if let (Some(reject), Some(window)) = (refuse.onerror(), web_sys::window()) {
                // Settles the promise, if nothing else did; without a timer it waits on.
                let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&reject, LET_GO);
            }
        });
        request.set_onblocked(Some(on_blocked.as_ref().unchecked_ref()));
        let outcome = result(&request).await;
        request.set_onblocked(None);
        match outcome {
            Err(_) if blocked.get() => Err(StoreError::Blocked),
            outcome => outcome.map(|_| ()),
        }
    }

    /// Begins to store lines, at once where the database is open; none where it has to be opened first.
    pub fn begin(&self, lines: &[(String, String)]) -> Option<Result<IdbTransaction, StoreError>> {
        let transaction = self.expecting.take().or_else(|| self.at_once(Mode::Write))?;
        Some(self.sure().and_then(|()| put(transaction, lines)))
    }

    /// Resolves once what was begun is stored; what was not begun is stored now.
    ///
    /// # Errors
    /// As [`Store::append`].
    pub async fn finish(
        &self,
        begun: Option<Result<IdbTransaction, StoreError>>,
        lines: &[(String, String)],
    ) -> Result<(), StoreError> {
        let transaction = match begun {
            Some(begun) => begun?,
            None => {
                let transaction = self.transaction(Mode::Write).await?;
                self.sure()?;
                put(transaction, lines)?
            }
        };
        complete(&transaction).await
    }

    /// What is stored beside lines that are gone would look like the whole book.
    fn sure(&self) -> Result<(), StoreError> {
        if self.is_sure() { Ok(()) } else { Err(StoreError::Cleared) }
    }

    /// True where what is in it is known: it was not opened again, or was read or brought back since.
    pub fn is_sure(&self) -> bool {
        self.openings.get() == self.trusted.get()
    }

    /// True where the browser had cleared it, and it was laid out once more.
    pub fn is_gone(&self) -> bool {
        self.gone.get()
    }

    /// Stores what `again` gives, a piece at a time: from then on lines are stored as before. Where another tab does the same
    /// the lines are the same ones, under the same keys. How many they were.
    ///
    /// # Errors
    /// As [`Store::append`]; what is stored by then stays.
    pub async fn bring_back(&self, again: Again<'_>) -> Result<usize, StoreError> {
        let keys = self.keys().await?;
        let opening = self.openings.get();
        let mut known: Vec<String> = keys.iter().filter_map(|key| key.as_string()).collect();
        sort::by(&mut known, Ord::cmp);
        let has = |key: &str| known.binary_search_by(|known| known.as_str().cmp(key)).is_ok();
        let mut number = 0;
        while let Some(lines) = again(AGAIN, &has) {
            let transaction = self.transaction(Mode::Write).await?;
            complete(&put(transaction, &lines)?).await?;
            number += lines.len();
        }
        // Where it was cleared once more meanwhile, all of it begins anew.
        self.trusted.set(opening);
        self.sure().map(|()| number)
    }

    /// The keys of all lines.
    pub(super) async fn keys(&self) -> Result<Array, StoreError> {
        let store = entries(&self.transaction(Mode::Read).await?)?;
        let request = store.get_all_keys().map_err(|e| store_error(&e))?;
        Ok(result(&request).await?.unchecked_into())
    }

    async fn database(&self) -> Result<Rc<Open>, StoreError> {
        if let Some(open) = self.open.borrow().as_ref() {
            return Ok(Rc::clone(open));
        }
        // Where two wait for the first opening, both are the first.
        let first = self.openings.get() == 0;
        let fresh = Rc::new(Cell::new(false));
        let open = Rc::new(open(&self.name, &fresh).await?);
        self.openings.update(|n| n + 1);
        if first {
            self.trusted.set(self.openings.get());
        }
        self.gone.set(fresh.get() && !first);
        self.open.replace(Some(Rc::clone(&open)));
        Ok(open)
    }

    /// A transaction on the entries. A database that was closed meanwhile is opened once more.
    pub(super) async fn transaction(&self, mode: Mode) -> Result<IdbTransaction, StoreError> {
        match self.at_once(mode) {
            Some(transaction) => Ok(transaction),
            None => self.database().await?.transaction(mode).map_err(|e| store_error(&e)),
        }
    }

    /// None where the database is not open, or was closed behind our back.
    fn at_once(&self, mode: Mode) -> Option<IdbTransaction> {
        let open = self.open.borrow().clone()?;
        open.transaction(mode).map_err(|_| self.open.take()).ok()
    }
}

impl Database {
    /// Gives every stored line to `each`, no more than so many at once, until it answers false: so that the browser never
    /// holds a large book whole.
    ///
    /// # Errors
    /// Where the storage is denied, or does not give them.
    pub async fn read(&self, most: u32, each: &mut dyn FnMut(Vec<String>) -> bool) -> Result<(), StoreError> {
        let thrown = |e: JsValue| store_error(&e);
        let mut after = JsValue::UNDEFINED;
        let mut opening = None;
        loop {
            let store = entries(&self.transaction(Mode::Read).await?)?;
            let opening = *opening.get_or_insert(self.openings.get());
            let request = store.get_all_with_key_and_limit(&after, most).map_err(thrown)?;
            let lines = lines_of(&result(&request).await?);
            let full = lines.len() as u32 == most;
            if !each(lines) {
                return Ok(());
            }
            if !full {
                // Whoever has read all of it knows what is in it.
                self.trusted.set(opening);
                return Ok(());
            }
            // What was stored in between makes this key an earlier one: then a line is read twice, and none is passed over.
            let store = entries(&self.transaction(Mode::Read).await?)?;
            let request = store.get_all_keys_with_key_and_limit(&after, most).map_err(thrown)?;
            let keys: Array = result(&request).await?.unchecked_into();
            let last = keys.get(keys.length().saturating_sub(1));
            after = IdbKeyRange::lower_bound_with_open(&last, true).map_err(thrown)?.into();
        }
    }
}

impl Store for Database {
    /// What it gives takes the place of no book in memory, so where it was cleared, that is still to be brought back.
    async fn load(&self) -> Result<Vec<String>, StoreError> {
        let known = self.trusted.get();
        let mut all = Vec::new();
        let mut piece = |lines| {
            all.extend(lines);
            true
        };
        self.read(PIECE, &mut piece).await?;
        if known > 0 {
            self.trusted.set(known);
        }
        Ok(all)
    }

    async fn append(&self, lines: &[(String, String)]) -> Result<(), StoreError> {
        self.finish(self.begin(lines), lines).await
    }
}
