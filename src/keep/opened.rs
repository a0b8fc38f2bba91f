//! The database of a journal as the browser has it open: how it is laid out, and what a transaction in it is.

use super::request::{result, store_error};
use crate::book::StoreError;
use js_sys::{Array, Function, JSON, Reflect};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, IdbDatabase, IdbFactory, IdbObjectStore, IdbTransaction};

/// The version of the database's own layout, which is apart from the format of the lines.
const LAYOUT: u32 = 1;
/// The object store: line text by entry id.
const ENTRIES: &str = "entries";

/// What a transaction is for.
#[derive(Clone, Copy)]
pub(super) enum Mode {
    Read,
    Write,
}

pub(super) struct Open {
    db: IdbDatabase,
    /// Begins a transaction to write, with strict durability; made once, because every tap waits for it.
    write: Function,
    /// Lets go when another tab deletes the database or brings a newer layout.
    _let_go: Closure<dyn FnMut(Event)>,
}

impl Drop for Open {
    fn drop(&mut self) {
        self.db.set_onversionchange(None);
        self.db.close();
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
pub(super) fn put(
    transaction: IdbTransaction,
    lines: &[(String, String)],
) -> Result<IdbTransaction, StoreError> {
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

pub(super) async fn open(name: &str, laid_out: &Rc<Cell<bool>>) -> Result<Open, StoreError> {
    let request = factory()?.open_with_u32(name, LAYOUT).map_err(|e| store_error(&e))?;
    let fresh = request.clone();
    let laid_out = Rc::clone(laid_out);
    let lay_out = Closure::once(move |_: Event| {
        laid_out.set(true);
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
    let write = writing(&db).map_err(|e| store_error(&e))?;
    Ok(Open { db, write, _let_go: let_go })
}

pub(super) fn entries(transaction: &IdbTransaction) -> Result<IdbObjectStore, StoreError> {
    transaction.object_store(ENTRIES).map_err(|e| store_error(&e))
}

/// What begins a transaction to write: with strict durability, which web-sys calls unstable, so by the function's name.
fn writing(db: &IdbDatabase) -> Result<Function, JsValue> {
    let options = JSON::parse(r#"{"durability":"strict"}"#)?;
    let function: Function = Reflect::get(db, &"transaction".into())?.unchecked_into();
    Ok(function.bind3(db, &ENTRIES.into(), &"readwrite".into(), &options).unchecked_into())
}

impl Open {
    pub(super) fn transaction(&self, mode: Mode) -> Result<IdbTransaction, JsValue> {
        match mode {
            Mode::Write => Ok(self.write.call0(&JsValue::UNDEFINED)?.unchecked_into()),
            _ => self.db.transaction_with_str(ENTRIES),
        }
    }
}
