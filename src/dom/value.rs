//! Values that pages follow, over Leptos's own. The graph behind them knows only that something changed, never of what
//! type: so it is compiled once.

use leptos::prelude::{
    ArcMemo, ArcTrigger, Effect, Get, GetUntracked, LocalStorage, Notify, StoredValue, Track, WithValue,
};
use std::any::Any;
use std::cell::RefCell;
use std::marker::PhantomData;
use std::ops::Deref;
use std::rc::Rc;

/// What a handle leads to.
#[derive(Clone)]
struct Slot {
    /// A `RefCell<Option<T>>`.
    held: Rc<dyn Any>,
    source: Source,
}

#[derive(Clone)]
enum Source {
    Set(ArcTrigger),
    /// Says whether it came out otherwise than before.
    Renew(Rc<dyn Fn() -> bool>),
    /// Counts how often it came out otherwise.
    Computed(ArcMemo<u32>),
}

type Key = StoredValue<Slot, LocalStorage>;

/// Something that can be read and followed. Handles are copied freely; they lead nowhere once the part of the page that
/// made them is gone.
pub struct Derived<T> {
    key: Key,
    of: PhantomData<fn() -> T>,
}

/// Something that can also be set.
pub struct Value<T>(Derived<T>);

impl<T> Clone for Derived<T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for Derived<T> {}
impl<T> Clone for Value<T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for Value<T> {}

impl<T> Deref for Value<T> {
    type Target = Derived<T>;
    fn deref(&self) -> &Derived<T> {
        &self.0
    }
}

impl<T> From<Value<T>> for Derived<T> {
    fn from(value: Value<T>) -> Self {
        value.0
    }
}

#[inline(never)]
fn slot(key: Key) -> Option<Slot> {
    key.try_with_value(Slot::clone)
}

/// Brings it up to date, and follows it from whatever is being computed.
#[inline(never)]
fn read(key: Key, follow: bool) -> Option<Rc<dyn Any>> {
    let slot = slot(key)?;
    match (slot.source, follow) {
        (Source::Set(changed), true) => changed.track(),
        (Source::Computed(memo), _) => {
            let _ = if follow { memo.get() } else { memo.get_untracked() };
        }
        _ => {}
    }
    Some(slot.held)
}

#[inline(never)]
fn computed(held: Rc<dyn Any>, renew: Rc<dyn Fn() -> bool>) -> Key {
    // A memo may be sent between threads and what it computes may not: it finds that through a handle.
    let renewing = StoredValue::new_local(Slot { held: held.clone(), source: Source::Renew(renew) });
    let memo = ArcMemo::new(move |before: Option<&u32>| {
        let count = before.copied().unwrap_or_default();
        match slot(renewing).map(|s| s.source) {
            Some(Source::Renew(renew)) if renew() => count.wrapping_add(1),
            _ => count,
        }
    });
    StoredValue::new_local(Slot { held, source: Source::Computed(memo) })
}

#[inline(never)]
fn set(held: Rc<dyn Any>) -> Key {
    StoredValue::new_local(Slot { held, source: Source::Set(ArcTrigger::new()) })
}

#[inline(never)]
fn changed(key: Key) {
    if let Some(Slot { source: Source::Set(changed), .. }) = slot(key) {
        changed.notify();
    }
}

impl<T: 'static> Derived<T> {
    fn held(self, follow: bool) -> Option<Rc<RefCell<Option<T>>>> {
        read(self.key, follow)?.downcast().ok()
    }

    fn look<R>(self, follow: bool, of: impl FnOnce(&T) -> R) -> Option<R> {
        let held = self.held(follow)?;
        let value = held.try_borrow().ok()?;
        value.as_ref().map(of)
    }

    /// What `of` finds in it, followed.
    ///
    /// # Panics
    /// Where the part of the page that made it is gone, or from within its own change.
    pub fn with<R>(self, of: impl FnOnce(&T) -> R) -> R {
        self.look(true, of).unwrap_or_else(|| gone())
    }

    /// The same, not followed.
    ///
    /// # Panics
    /// As [`Derived::with`].
    pub fn with_untracked<R>(self, of: impl FnOnce(&T) -> R) -> R {
        self.look(false, of).unwrap_or_else(|| gone())
    }

    pub fn track(self) {
        read(self.key, true);
    }
}

impl<T: Clone + 'static> Derived<T> {
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    pub fn get_untracked(self) -> T {
        self.with_untracked(T::clone)
    }

    /// Not followed; none where the part of the page that made it is gone.
    pub fn try_untracked(self) -> Option<T> {
        self.look(false, T::clone)
    }
}

impl<T: PartialEq + 'static> Derived<T> {
    /// Computed when it is read, and again only once something has changed that it read.
    pub fn new(of: impl Fn() -> T + 'static) -> Self {
        let held = Rc::new(RefCell::new(None));
        let kept = held.clone();
        let renew = move || {
            let now = Some(of());
            let mut kept = kept.borrow_mut();
            let otherwise = *kept != now;
            if otherwise {
                *kept = now;
            }
            otherwise
        };
        Self { key: computed(held, Rc::new(renew)), of: PhantomData }
    }
}

impl<T: 'static> Value<T> {
    pub fn new(value: T) -> Self {
        Self(Derived { key: set(Rc::new(RefCell::new(Some(value)))), of: PhantomData })
    }

    /// Nothing happens where the part of the page that made it is gone.
    pub fn set(self, value: T) {
        self.update(|held| *held = value);
    }

    /// Nothing happens where the part of the page that made it is gone.
    pub fn update(self, how: impl FnOnce(&mut T)) {
        let Some(held) = self.held(false) else { return };
        if let Ok(mut held) = held.try_borrow_mut()
            && let Some(value) = held.as_mut()
        {
            how(value);
        }
        drop(held);
        changed(self.key);
    }
}

impl<T: Default + 'static> Default for Value<T> {
    fn default() -> Self {
        Self::new(T::default())
    }
}

/// Something to be done or asked for later, as a handle that is copied freely.
pub struct Callback<A: 'static, R: 'static = ()>(Value<Rc<dyn Fn(A) -> R>>);

impl<A, R> Clone for Callback<A, R> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<A, R> Copy for Callback<A, R> {}

impl<A, R> Callback<A, R> {
    pub fn new(what: impl Fn(A) -> R + 'static) -> Self {
        Self(Value::new(Rc::new(what)))
    }

    pub fn run(self, with: A) -> R {
        let what = self.0.get_untracked();
        what(with)
    }
}

#[cold]
#[allow(clippy::panic, reason = "there is no value to go on with; a page reads only what lives with it")]
fn gone<R>() -> R {
    panic!("a value was read that is gone from the page")
}

/// Does this now, soon, and again whenever what it reads changes, as long as the part of the page that asked for it lives.
pub fn watch(mut what: impl FnMut() + 'static) {
    let what: Box<dyn FnMut(Option<()>)> = Box::new(move |_| what());
    Effect::new(what);
}
