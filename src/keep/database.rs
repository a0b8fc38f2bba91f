//! One IndexedDB database as a store of journal lines.

use super::request::{complete, result, store_error};
use crate::book::{Store, StoreError};
use js_sys::{Array, Function, JSON, Object, Reflect};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    Event, IdbDatabase, IdbFactory, IdbKeyRange, IdbObjectStore, IdbTransaction, IdbTransactionMode,
};

/// The version of the database's own layout, which is apart from the format of the lines.
const LAYOUT: u32 = 1;
/// The object store: line text by entry id.
const ENTRIES: &str = "entries";
/// So many lines are read at once: a book of usual size is one piece.
pub(super) const PIECE: u32 = 5_000;

/// A database of lines by entry id; opened when first used, and again if the browser closed it.
pub struct Database {
    name: String,
    open: RefCell<Option<Rc<Open>>>,
}

struct Open {
    db: IdbDatabase,
    /// Lets go when another tab deletes the database or brings a newer layout.
    _let_go: Closure<dyn FnMut(Event)>,
}

impl Drop for Open {
    fn drop(&mut self) {
        self.db.set_onversionchange(None);
        self.db.close();
    }
}

impl Database {
    pub fn new(name: &str) -> Self {
        Self { name: name.to_owned(), open: RefCell::new(None) }
    }

    /// Deletes the database and all that is in it.
    ///
    /// # Errors
    /// Where storage is denied, or another tab does not let go of it.
    pub async fn delete(&self) -> Result<(), StoreError> {
        self.open.take();
        let request = factory()?.delete_database(&self.name).map_err(|e| store_error(&e))?;
        let blocked = Rc::new(RefCell::new(false));
        let flag = Rc::clone(&blocked);
        let refuse = request.clone();
        // A delete that is blocked would wait for ever; as an error it can be said.
        let on_blocked = Closure::<dyn FnMut(Event)>::new(move |_| {
            flag.replace(true);
            if let Some(reject) = refuse.onerror() {
                // Settles the promise; a handler has nothing to answer.
                let _ = reject.call0(&JsValue::NULL);
            }
        });
        request.set_onblocked(Some(on_blocked.as_ref().unchecked_ref()));
        let outcome = result(&request).await;
        request.set_onblocked(None);
        if *blocked.borrow() { Err(StoreError::Blocked) } else { outcome.map(|_| ()) }
    }

    /// Begins to store lines, at once where the database is open; none where it has to be opened first.
    pub fn begin(&self, lines: &[(String, String)]) -> Option<Result<IdbTransaction, StoreError>> {
        Some(put(self.at_once(IdbTransactionMode::Readwrite)?, lines))
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
            None => put(self.transaction(IdbTransactionMode::Readwrite).await?, lines)?,
        };
        complete(&transaction).await
    }

    async fn database(&self) -> Result<Rc<Open>, StoreError> {
        if let Some(open) = self.open.borrow().as_ref() {
            return Ok(Rc::clone(open));
        }
        let open = Rc::new(open(&self.name).await?);
        self.open.replace(Some(Rc::clone(&open)));
        Ok(open)
    }

    /// A transaction on the entries. A database that was closed meanwhile is opened once more.
    pub(super) async fn transaction(&self, mode: IdbTransactionMode) -> Result<IdbTransaction, StoreError> {
        match self.at_once(mode) {
            Some(transaction) => Ok(transaction),
            None => transaction(&self.database().await?.db, mode).map_err(|e| store_error(&e)),
        }
    }

    /// None where the database is not open, or was closed behind our back.
    fn at_once(&self, mode: IdbTransactionMode) -> Option<IdbTransaction> {
        let open = self.open.borrow().clone()?;
        transaction(&open.db, mode).map_err(|_| self.open.take()).ok()
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
        loop {
            let store = entries(&self.transaction(IdbTransactionMode::Readonly).await?)?;
            let request = store.get_all_with_key_and_limit(&after, most).map_err(thrown)?;
            let lines = lines_of(&result(&request).await?);
            let full = lines.len() as u32 == most;
            if !each(lines) || !full {
                return Ok(());
            }
            // What was stored in between makes this key an earlier one: then a line is read twice, and none is passed over.
            let store = entries(&self.transaction(IdbTransactionMode::Readonly).await?)?;
            let request = store.get_all_keys_with_key_and_limit(&after, most).map_err(thrown)?;
            let keys: Array = result(&request).await?.unchecked_into();
            let last = keys.get(keys.length().saturating_sub(1));
            after = IdbKeyRange::lower_bound_with_open(&last, true).map_err(thrown)?.into();
        }
    }
}

impl Store for Database {
    async fn load(&self) -> Result<Vec<String>, StoreError> {
        let mut all = Vec::new();
        let mut piece = |lines| {
            all.extend(lines);
            true
        };
        self.read(PIECE, &mut piece).await?;
        Ok(all)
    }

    async fn append(&self, lines: &[(String, String)]) -> Result<(), StoreError> {
        self.finish(self.begin(lines), lines).await
    }
}

/// The lines of what was got of all.
pub(super) fn lines_of(all: &JsValue) -> Vec<String> {
    // What is not text was not written by Potside; as JSON it is set aside with the damaged lines.
    let json = |v: &JsValue| JSON::stringify(v).ok()?.as_string();
    let all: &Array = all.unchecked_ref();
    all.iter().map(|v| v.as_string().or_else(|| json(&v)).unwrap_or_default()).collect()
}

/// Puts lines into a transaction, and has it committed.
fn put(transaction: IdbTransaction, lines: &[(String, String)]) -> Result<IdbTransaction, StoreError> {
    let store = entries(&transaction)?;
    for (id, line) in lines {
        // The same line may have been stored by a try whose answer was lost: `put` stores it again.
        if let Err(thrown) = store.put_with_key(&line.into(), &id.into()) {
            // All or none; that the abort itself fails means there is nothing left to abort.
            let _ = transaction.abort();
            return Err(store_error(&thrown));
        }
    }
    // Saves the wait for each line's own answer. A browser without it commits by itself, a little later.
    #[allow(deprecated, reason = "what is newer is the same with other types")]
    let _ = transaction.commit();
    Ok(transaction)
}

pub(super) fn factory() -> Result<IdbFactory, StoreError> {
    let window = web_sys::window().ok_or(StoreError::Denied)?;
    window.indexed_db().ok().flatten().ok_or(StoreError::Denied)
}

async fn open(name: &str) -> Result<Open, StoreError> {
    let request = factory()?.open_with_u32(name, LAYOUT).map_err(|e| store_error(&e))?;
    let fresh = request.clone();
    let lay_out = Closure::once(move |_: Event| {
        let made =
            fresh.result().and_then(|db| db.unchecked_into::<IdbDatabase>().create_object_store(ENTRIES));
        // Half a layout would stay for ever: aborted, the opening fails and the next one begins anew.
        if made.is_err()
            && let Some(upgrade) = fresh.transaction()
        {
            let _ = upgrade.abort();
        }
    });
    request.set_onupgradeneeded(Some(lay_out.as_ref().unchecked_ref()));
    let db: IdbDatabase = result(&request).await?.unchecked_into();
    request.set_onupgradeneeded(None);
    let closing = db.clone();
    let let_go = Closure::<dyn FnMut(Event)>::new(move |_| closing.close());
    db.set_onversionchange(Some(let_go.as_ref().unchecked_ref()));
    Ok(Open { db, _let_go: let_go })
}

pub(super) fn entries(transaction: &IdbTransaction) -> Result<IdbObjectStore, StoreError> {
    transaction.object_store(ENTRIES).map_err(|e| store_error(&e))
}

/// With strict durability, which web-sys calls unstable: so by the function's name.
fn transaction(db: &IdbDatabase, mode: IdbTransactionMode) -> Result<IdbTransaction, JsValue> {
    let options = Object::new();
    Reflect::set(&options, &"durability".into(), &"strict".into())?;
    let function: Function = Reflect::get(db, &"transaction".into())?.dyn_into()?;
    let mode = match mode {
        IdbTransactionMode::Readwrite => "readwrite",
        _ => "readonly",
    };
    Ok(function.call3(db, &ENTRIES.into(), &mode.into(), &options)?.unchecked_into())
}
