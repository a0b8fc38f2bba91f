//! The page as the rooms describe it, and as the browser shows it.
//!
//! The values and their following are Leptos's. Its views are not used: they are generic in all they hold, so every
//! closure in a page is compiled some ten times over, and a browser fetched three bytes of views for one of everything
//! else. Here a page is described as plain data ([`View`]) and one piece of code that is generic in nothing puts it
//! into the document and changes there what has changed.

mod attr;
mod change;
mod make;
mod mounted;
mod value;
mod view;

pub use leptos::prelude::untrack;
pub use make::show;
pub use value::{Callback, Derived, Value, watch};
pub(crate) use view::group;
pub use view::{IntoView, View, Views, each, el, held_down, on_window, share_of, svg, target, text_of};
