//! The bundle of one's own workshop (see [`crate::book::bundle`]): kept in a database of its own, so that the journal's is as
//! it ever was; and what of the journal is looked at besides it. Only a large book has one.

use super::database::Database;
use super::opened::{Mode, entries, factory, lines_of};
use super::request::{complete, result, store_error};
use super::workshop::{Which, database};
use super::{element, local};
use crate::book::StoreError;
use js_sys::{Array, Promise, Uint8Array};
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, future_to_promise};
use web_sys::{Event, IdbDatabase, IdbKeyRange, IdbObjectStore, IdbTransactionMode};

const NAME: &str = "potside-bundle";
/// Its object store, and the one key in it.
const BUNDLE: &str = "bundle";
/// Clocks whose lines are asked for at once.
const CLOCKS: u64 = 16;

/// Which build of the app this is: the name of its module, which has a hash in it.
pub fn build() -> String {
    element("potside-wasm").and_then(|link| link.get_attribute("href")).unwrap_or_default()
}

/// True where a bundle was kept in this browser: only then is it looked for.
pub fn has_bundle() -> bool {
    local::kept(NAME).is_some()
}

/// How far a bundle is to be trusted that is as this build makes it. A small text beside it says so: the bytes need not be
/// written anew when more is known of them.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Trust {
    /// It was made of the lines, or compared with them.
    Lines,
    /// It was made of one of another build, and its entries were not compared with the lines yet.
    Entries,
    /// It was begun so often to make it of one of another build.
    Begun(u8),
}

pub fn trust() -> Trust {
    match local::kept(NAME).and_then(|said| said.parse().ok()) {
        Some(1) => Trust::Lines,
        Some(said @ 3..) => Trust::Begun(said - 2),
        _ => Trust::Entries,
    }
}

/// Notes it beside a bundle that is kept.
pub fn set_trust(trust: Trust) {
    let said = match trust {
        Trust::Lines => 1,
        Trust::Entries => 2,
        Trust::Begun(times) => times.saturating_add(2),
    };
    local::keep(NAME, &said.to_string());
}

/// An open database, closed whichever way it is left: one that stays open would keep it from being deleted, and whoever
/// opens it after that from opening it.
struct Open(IdbDatabase);

impl Drop for Open {
    fn drop(&mut self) {
        self.0.close();
    }
}

async fn store(mode: IdbTransactionMode) -> Result<(Open, IdbObjectStore), StoreError> {
    let thrown = |e: JsValue| store_error(&e);
    let request = factory()?.open_with_u32(NAME, 1).map_err(thrown)?;
    let fresh = request.clone();
    let lay_out = Closure::once(move |_: Event| {
        // Where it cannot be made, the transaction below fails.
        let _ = fresh.result().and_then(|db| db.unchecked_into::<IdbDatabase>().create_object_store(BUNDLE));
    });
    request.set_onupgradeneeded(Some(lay_out.as_ref().unchecked_ref()));
    let db = Open(result(&request).await?.unchecked_into());
    let transaction = db.0.transaction_with_str_and_mode(BUNDLE, mode).map_err(thrown)?;
    let store = transaction.object_store(BUNDLE).map_err(thrown)?;
    Ok((db, store))
}

/// Asks for the bytes of the bundle at once, and then for the journal's database, which is wanted next: all of that is under
/// way while the module that reads them is fetched. See [`bytes`].
pub fn ask() -> Promise {
    future_to_promise(async {
        let bytes = bundle().await;
        // Where it does not open, whoever asks it for lines is told so.
        let _ = journal().await;
        bytes.map_err(|_| JsValue::NULL)
    })
}

async fn bundle() -> Result<JsValue, StoreError> {
    let (_open, store) = store(IdbTransactionMode::Readonly).await?;
    result(&store.get(&BUNDLE.into()).map_err(|e| store_error(&e))?).await
}

/// The bytes that were asked for; none where there are none.
pub async fn bytes(asked: Promise) -> Option<Vec<u8>> {
    Some(JsFuture::from(asked).await.ok()?.dyn_into::<Uint8Array>().ok()?.to_vec())
}

/// Keeps a bundle in the place of the one before.
///
/// # Errors
/// See [`StoreError`].
pub async fn keep_bundle(bytes: &[u8], trust: Trust) -> Result<(), StoreError> {
    let (_open, store) = store(IdbTransactionMode::Readwrite).await?;
    store.put_with_key(&Uint8Array::from(bytes), &BUNDLE.into()).map_err(|e| store_error(&e))?;
    complete(&store.transaction()).await?;
    set_trust(trust);
    Ok(())
}

/// Throws the bundle away: the book is opened from its lines the next time.
pub fn forget_bundle() {
    local::forget(NAME);
    if let Ok(factory) = factory() {
        // Where it is left, it is of no use: nothing looks for it.
        let _ = factory.delete_database(NAME);
    }
}

async fn journal() -> Result<IdbObjectStore, StoreError> {
    lines(Which::Own).await
}

async fn lines(which: Which) -> Result<IdbObjectStore, StoreError> {
    let database: Rc<Database> = database(which);
    entries(&database.transaction(Mode::Read).await?)
}

/// The lines that this device has stored after this clock, as far as they have one clock after the other.
pub async fn lines_since(device: &str, clock: u64) -> Result<Vec<String>, StoreError> {
    let (mut lines, mut from) = (Vec::new(), clock + 1);
    loop {
        let store = journal().await?;
        let mut requests = Vec::new();
        for clock in from..from + CLOCKS {
            let head = format!("{device}-{clock:x}");
            // A point is the sign after the dash.
            let range = IdbKeyRange::bound(&format!("{head}-").into(), &format!("{head}.").into());
            let range = range.map_err(|e| store_error(&e))?;
            requests.push(store.get_all_with_key(&range).map_err(|e| store_error(&e))?);
        }
        let before = lines.len();
        for request in requests {
            lines.extend(lines_of(&result(&request).await?));
        }
        if lines.len() == before {
            return Ok(lines);
        }
        from += CLOCKS;
    }
}

/// How many lines are stored.
pub async fn count() -> Result<usize, StoreError> {
    let request = journal().await?.count().map_err(|e| store_error(&e))?;
    Ok(result(&request).await?.as_f64().unwrap_or_default() as usize)
}

/// The keys of all lines; none of one that Potside never wrote.
pub async fn keys() -> Result<Vec<Option<String>>, StoreError> {
    let keys = database(Which::Own).keys().await?;
    Ok(keys.iter().map(|key| key.as_string()).collect())
}

/// The lines of these keys.
pub async fn lines_at(keys: &[String]) -> Result<Vec<String>, StoreError> {
    let store = journal().await?;
    let mut requests = Vec::new();
    for key in keys {
        let only = IdbKeyRange::only(&key.into()).map_err(|e| store_error(&e))?;
        requests.push(store.get_all_with_key(&only).map_err(|e| store_error(&e))?);
    }
    let mut lines = Vec::new();
    for request in requests {
        lines.extend(lines_of(&result(&request).await?));
    }
    Ok(lines)
}

/// The next lines of a workshop after a key, in the order of the keys, and the keys.
pub async fn piece(
    which: Which,
    after: Option<&JsValue>,
    most: u32,
) -> Result<(Array, Vec<String>), StoreError> {
    let store = lines(which).await?;
    let thrown = |e: JsValue| store_error(&e);
    let range = match after {
        Some(after) => IdbKeyRange::lower_bound_with_open(after, true).map_err(thrown)?.into(),
        None => JsValue::UNDEFINED,
    };
    let keys = store.get_all_keys_with_key_and_limit(&range, most).map_err(thrown)?;
    let lines = store.get_all_with_key_and_limit(&range, most).map_err(thrown)?;
    let keys: Array = result(&keys).await?.unchecked_into();
    let lines = lines_of(&result(&lines).await?);
    Ok((keys, lines))
}
