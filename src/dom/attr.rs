//! What an element is given besides what stands in it.

use super::value::{Derived, Value};
use super::view::El;
use std::borrow::Cow;
use wasm_bindgen::JsValue;
use web_sys::Element;

/// What an attribute says: nothing (then it is not there), that it is on, or a text.
#[derive(Clone, PartialEq)]
pub enum Said {
    Nothing,
    On,
    Text(Cow<'static, str>),
}

/// What an attribute says, once and for all or as what it reads changes.
pub enum Attr {
    Fixed(Said),
    Live(Box<dyn Fn() -> Said>),
}

/// Where it goes: an attribute, a property of the element, or whether a class is there.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    Attribute,
    Property,
    Class,
}

/// What can be given as an attribute: words, whether it is on, one that may be missing, a function of any of these.
pub trait IntoAttr: Sized {
    fn attr(self) -> Attr;

    /// Gives it to the element. Apart for words that never change: they are most, and this keeps each call small.
    fn give(self, element: El, kind: Kind, name: &'static str) -> El {
        element.put(kind, name, self.attr())
    }
}

impl IntoAttr for &'static str {
    fn attr(self) -> Attr {
        Attr::Fixed(Said::Text(Cow::Borrowed(self)))
    }

    #[inline(never)]
    fn give(self, element: El, kind: Kind, name: &'static str) -> El {
        element.put(kind, name, self.attr())
    }
}

impl IntoAttr for String {
    fn attr(self) -> Attr {
        Attr::Fixed(Said::Text(Cow::Owned(self)))
    }
}

impl IntoAttr for bool {
    fn attr(self) -> Attr {
        Attr::Fixed(if self { Said::On } else { Said::Nothing })
    }
}

impl<T: IntoAttr> IntoAttr for Option<T> {
    fn attr(self) -> Attr {
        self.map_or(Attr::Fixed(Said::Nothing), IntoAttr::attr)
    }
}

impl<T: IntoAttr, F: Fn() -> T + 'static> IntoAttr for F {
    fn attr(self) -> Attr {
        Attr::Live(Box::new(move || now(self().attr())))
    }
}

impl<T: IntoAttr + Clone + 'static> IntoAttr for Derived<T> {
    fn attr(self) -> Attr {
        (move || self.get()).attr()
    }
}

impl<T: IntoAttr + Clone + 'static> IntoAttr for Value<T> {
    fn attr(self) -> Attr {
        (*self).attr()
    }
}

fn now(attr: Attr) -> Said {
    match attr {
        Attr::Fixed(said) => said,
        Attr::Live(of) => of(),
    }
}

/// Puts it on the element. What the document refuses (a name that is none) is left out.
pub(super) fn put(element: &Element, kind: Kind, name: &'static str, said: &Said) {
    match kind {
        Kind::Attribute => {
            let _ = match said {
                Said::Nothing => element.remove_attribute(name),
                Said::On => element.set_attribute(name, ""),
                Said::Text(text) => element.set_attribute(name, text),
            };
        }
        Kind::Class => {
            let _ = element.class_list().toggle_with_force(name, *said != Said::Nothing);
        }
        Kind::Property => {
            let value = match said {
                Said::Nothing => JsValue::FALSE,
                Said::On => JsValue::TRUE,
                Said::Text(text) => JsValue::from_str(text),
            };
            let name = JsValue::from_str(name);
            // The same text again would move the cursor of the field it is typed in.
            if js_sys::Reflect::get(element, &name).ok().as_ref() != Some(&value) {
                let _ = js_sys::Reflect::set(element, &name, &value);
            }
        }
    }
}
