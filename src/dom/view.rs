//! A page as plain data: what a room describes.

use super::attr::{Attr, IntoAttr, Kind};
use leptos::prelude::Owner;
use std::borrow::Cow;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use web_sys::{Event, HtmlInputElement};

/// A part of a page.
pub enum View {
    Nothing,
    Text(Cow<'static, str>),
    Element(El),
    Many(Vec<View>),
    /// Made anew whenever what it reads changes; in the document only what differs is changed.
    Live(Box<dyn Fn() -> View>),
    /// One of a list, known by its number: it stays what it is, wherever in the list it comes to stand. What it makes
    /// lives under this owner, not under the list's.
    Keyed(u64, Owner, Box<dyn FnOnce() -> View>),
}

/// An element being described.
pub struct El(pub(super) Box<Parts>);

pub(super) type Handler = Box<dyn Fn(Event)>;

pub(super) struct Parts {
    pub(super) tag: &'static str,
    /// Of a drawing, not of text.
    pub(super) drawn: bool,
    pub(super) attrs: Vec<(Kind, &'static str, Attr)>,
    pub(super) on: Vec<(&'static str, Handler)>,
    pub(super) children: Vec<View>,
}

pub fn el(tag: &'static str) -> El {
    El(Box::new(Parts { tag, drawn: false, attrs: Vec::new(), on: Vec::new(), children: Vec::new() }))
}

/// An element of a drawing (SVG): `svg` itself and everything in it.
pub fn svg(tag: &'static str) -> El {
    let mut drawn = el(tag);
    drawn.0.drawn = true;
    drawn
}

impl El {
    #[must_use]
    pub fn attr(self, name: &'static str, value: impl IntoAttr) -> Self {
        value.give(self, Kind::Attribute, name)
    }

    #[must_use]
    pub fn class(self, names: &'static str) -> Self {
        self.attr("class", names)
    }

    /// Whether the class is there.
    #[must_use]
    pub fn flag(self, class: &'static str, on: impl IntoAttr) -> Self {
        on.give(self, Kind::Class, class)
    }

    /// A property of the element, where the attribute is only what it starts from: what is typed, what is ticked.
    #[must_use]
    pub fn prop(self, name: &'static str, value: impl IntoAttr) -> Self {
        value.give(self, Kind::Property, name)
    }

    #[must_use]
    pub fn on(self, event: &'static str, then: impl Fn(Event) + 'static) -> Self {
        self.listen(event, Box::new(then))
    }

    #[must_use]
    pub fn child(self, child: impl IntoView) -> Self {
        child.stand_in(self)
    }

    pub fn view(self) -> View {
        View::Element(self)
    }

    #[inline(never)]
    pub(super) fn put(mut self, kind: Kind, name: &'static str, value: Attr) -> Self {
        self.0.attrs.push((kind, name, value));
        self
    }

    #[inline(never)]
    fn listen(mut self, event: &'static str, then: Handler) -> Self {
        self.0.on.push((event, then));
        self
    }

    #[inline(never)]
    fn add(mut self, child: View) -> Self {
        self.0.children.push(child);
        self
    }
}

/// What can stand in a page: words, elements, none or several of these, a function of any of these.
pub trait IntoView: Sized {
    fn view(self) -> View;

    /// Puts it into the element, after what stands there. Apart for what is put there most: that keeps each call small.
    fn stand_in(self, element: El) -> El {
        element.add(self.view())
    }
}

impl IntoView for View {
    fn view(self) -> View {
        self
    }
}

impl IntoView for El {
    fn view(self) -> View {
        View::Element(self)
    }

    #[inline(never)]
    fn stand_in(self, element: El) -> El {
        element.add(View::Element(self))
    }
}

impl IntoView for () {
    fn view(self) -> View {
        View::Nothing
    }
}

impl IntoView for &'static str {
    fn view(self) -> View {
        View::Text(Cow::Borrowed(self))
    }

    #[inline(never)]
    fn stand_in(self, element: El) -> El {
        element.add(self.view())
    }
}

impl IntoView for String {
    fn view(self) -> View {
        View::Text(Cow::Owned(self))
    }

    #[inline(never)]
    fn stand_in(self, element: El) -> El {
        element.add(self.view())
    }
}

impl<T: IntoView> IntoView for Option<T> {
    fn view(self) -> View {
        self.map_or(View::Nothing, IntoView::view)
    }
}

impl<T: IntoView> IntoView for Vec<T> {
    fn view(self) -> View {
        self.into_iter().views()
    }
}

impl<T: IntoView, F: Fn() -> T + 'static> IntoView for F {
    fn view(self) -> View {
        View::Live(Box::new(move || self().view()))
    }
}

/// Several parts, one after the other.
macro_rules! group {
    ($($part:expr),+ $(,)?) => {
        $crate::dom::View::Many(vec![$($crate::dom::IntoView::view($part)),+])
    };
}
pub(crate) use group;

/// The parts of a list, one after the other.
pub trait Views: Iterator<Item: IntoView> + Sized {
    fn views(self) -> View {
        let mut all = Vec::new();
        for part in self {
            all.push(part.view());
        }
        View::Many(all)
    }
}

impl<I: Iterator<Item: IntoView>> Views for I {}

/// A list whose parts stay what they are while others come and go; `key` tells them apart.
pub fn each<T: Clone + 'static>(
    list: impl Fn() -> Vec<T> + 'static,
    key: fn(&T) -> u64,
    part: impl Fn(T) -> View + Clone + 'static,
) -> View {
    let owner = Owner::current().unwrap_or_default();
    let one = move |item: T| {
        let part = part.clone();
        View::Keyed(key(&item), owner.clone(), Box::new(move || part(item)))
    };
    View::Live(Box::new(move || list().into_iter().map(&one).views()))
}

/// What the event came to.
pub fn target<T: JsCast>(event: &Event) -> Option<T> {
    event.current_target()?.dyn_into().ok()
}

/// What stands in the field that the event came from. Every field has a value as an `input` has.
pub fn text_of(event: &Event) -> String {
    let field = event.current_target();
    field.map(|field| field.unchecked_into::<HtmlInputElement>().value()).unwrap_or_default()
}

/// True while a key is held down and says so again.
pub fn held_down(event: &Event) -> bool {
    property(Some(event), "repeat").is_some_and(|v| v.is_truthy())
}

/// Where in the element it was pressed, in shares of its width from the left and of its height from the top.
pub fn share_of(event: &Event) -> (f64, f64) {
    let number = |of: Option<&JsValue>, name| property(of, name).and_then(|v| v.as_f64()).unwrap_or_default();
    let element = event.current_target();
    let element = element.as_ref().map(AsRef::as_ref);
    let share = |at, whole| number(Some(event), at) / number(element, whole).max(1.0);
    (share("offsetX", "clientWidth"), share("offsetY", "clientHeight"))
}

fn property(of: Option<&JsValue>, name: &str) -> Option<JsValue> {
    js_sys::Reflect::get(of?, &name.into()).ok()
}

/// Does this at every such event of the window, for as long as the page lives.
pub fn on_window(event: &str, then: impl Fn(Event) + 'static) {
    let then: Closure<dyn Fn(Event)> = Closure::new(then);
    if let Some(window) = web_sys::window() {
        let _ = window.add_event_listener_with_callback(event, then.as_ref().unchecked_ref());
    }
    then.forget();
}
