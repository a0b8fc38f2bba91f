//! The two workshops of a device: the person's own and the demo, never mixed.

use super::database::{Again, Database, PIECE};
use super::tabs::Tabs;
use crate::book::{Store, StoreError};
use crate::wire::wire_enum;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{StorageEstimate, StorageManager};

/// Which workshop is open.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Which {
    #[default]
    Own,
    Demo,
}

wire_enum!(Which { Own, Demo });

impl Which {
    /// The name of its database and of its channel. Renaming one would lose what is kept under it.
    const fn name(self) -> &'static str {
        match self {
            Self::Own => "potside",
            Self::Demo => "potside-demo",
        }
    }
}

/// The database of the demo's photos; one's own are in [`super::photo`] alone, for nothing deletes them all.
pub(super) const DEMO_PHOTOS: &str = "potside-demo-photos";

struct Kept {
    database: Rc<Database>,
    tabs: Tabs,
}

thread_local! {
    static OWN: Rc<Kept> = Rc::new(Kept::new(Which::Own));
    static DEMO: Rc<Kept> = Rc::new(Kept::new(Which::Demo));
    static ASKED: Cell<bool> = const { Cell::new(false) };
}

impl Kept {
    fn new(which: Which) -> Self {
        Self { database: Rc::new(Database::new(which.name())), tabs: Tabs::new(which.name()) }
    }

    fn of(which: Which) -> Rc<Self> {
        match which {
            Which::Own => OWN.with(Rc::clone),
            Which::Demo => DEMO.with(Rc::clone),
        }
    }
}

pub(super) fn database(which: Which) -> Rc<Database> {
    Rc::clone(&Kept::of(which).database)
}

/// Every stored line of a workshop.
///
/// # Errors
/// See [`StoreError`].
pub async fn load(which: Which) -> Result<Vec<String>, StoreError> {
    Kept::of(which).database.load().await
}

/// Gives every stored line of a workshop to `each`, a piece at a time, until it answers false.
///
/// # Errors
/// See [`StoreError`].
pub async fn read(which: Which, each: &mut dyn FnMut(Vec<String>) -> bool) -> Result<(), StoreError> {
    Kept::of(which).database.read(PIECE, each).await
}

/// Stores lines, all or none; durable once it resolves. They are on their way when this returns, where the storage is open.
/// The first time in one's own workshop the browser is asked to keep its storage for good.
///
/// # Errors
/// See [`StoreError`].
pub fn append(
    which: Which,
    lines: Vec<(String, String)>,
) -> impl Future<Output = Result<(), StoreError>> + 'static {
    let kept = Kept::of(which);
    let begun = kept.database.begin(&lines);
    async move {
        kept.database.finish(begun, &lines).await?;
        if which == Which::Own && !ASKED.replace(true) {
            spawn_local(async {
                persist().await;
            });
        }
        Ok(())
    }
}

/// See [`Database::expect`].
pub fn expect(which: Which, some: bool) {
    Kept::of(which).database.expect(some);
}

/// Stores again what of a book in memory is not stored; see [`Database::bring_back`].
///
/// # Errors
/// See [`StoreError`].
pub async fn bring_back(which: Which, again: Again<'_>) -> Result<usize, StoreError> {
    database(which).bring_back(again).await
}

/// See [`Database::is_sure`].
pub fn is_sure(which: Which) -> bool {
    database(which).is_sure()
}

/// True where the browser had cleared what was stored while this page had it open.
pub fn is_gone(which: Which) -> bool {
    database(which).is_gone()
}

/// Tells the other tabs what was stored.
pub fn tell(which: Which, lines: &[(String, String)]) {
    Kept::of(which).tabs.tell(lines);
}

/// Calls `hear` with the lines that another tab has stored in this workshop, as long as the page lives.
pub fn listen(which: Which, hear: impl FnMut(Vec<String>) + 'static) {
    Kept::of(which).tabs.listen(hear);
}

/// Deletes the demo workshop. One's own cannot be deleted.
///
/// # Errors
/// Where storage is denied, or another tab does not let go of it.
pub async fn leave_demo() -> Result<(), StoreError> {
    Kept::of(Which::Demo).database.delete().await?;
    // Whoever has it open lets go of it.
    Database::new(DEMO_PHOTOS).delete().await
}

fn manager() -> Option<StorageManager> {
    let manager = web_sys::window()?.navigator().storage();
    // Not there where the page is not from a secure origin.
    (!manager.is_undefined()).then_some(manager)
}

/// Asks the browser not to clear the storage by itself. True where it will not, none where it does not say.
pub async fn persist() -> Option<bool> {
    let promise = manager()?.persist().ok()?;
    JsFuture::from(promise).await.ok()?.as_bool()
}

/// Whether the browser has promised not to clear the storage by itself; none where it does not say.
pub async fn persisted() -> Option<bool> {
    let promise = manager()?.persisted().ok()?;
    JsFuture::from(promise).await.ok()?.as_bool()
}

/// What the storage holds, in bytes.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Room {
    pub used: f64,
    /// What this page may use altogether.
    pub whole: f64,
}

/// How much of the storage is used, none where the browser does not say.
pub async fn room() -> Option<Room> {
    let promise = manager()?.estimate().ok()?;
    let estimate: StorageEstimate = JsFuture::from(promise).await.ok()?.unchecked_into();
    Some(Room { used: estimate.get_usage()?, whole: estimate.get_quota()? })
}
