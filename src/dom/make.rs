//! Puts a described page into the document.

use super::attr::{Attr, Kind, Said, put};
use super::change::{Next, attributes, change, listeners};
use super::mounted::{Mounted, Region, Standing};
use super::view::{El, View};
use leptos::prelude::RenderEffect;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use web_sys::{Comment, Document, Element, Node};

/// Shows a page in this place for as long as the document lives.
pub fn show(place: &Element, view: View) {
    std::mem::forget(make(view, place, None));
}

fn document() -> Option<Document> {
    web_sys::window()?.document()
}

/// Puts a part into `parent`, before `next`, at the end where there is none.
pub(super) fn make(view: View, parent: &Node, next: Option<&Node>) -> Mounted {
    let Some(document) = document() else { return Mounted::Nothing };
    match view {
        View::Nothing => Mounted::Nothing,
        View::Text(text) => {
            let node = document.create_text_node(&text);
            let _ = parent.insert_before(&node, next);
            Mounted::Text(node, text)
        }
        View::Element(described) => match created(&document, &described) {
            Ok(element) => {
                let standing = element_of(described, element);
                let _ = parent.insert_before(&standing.element, next);
                Mounted::Element(Box::new(standing))
            }
            Err(_) => Mounted::Nothing,
        },
        View::Many(parts) => Mounted::Many(parts.into_iter().map(|p| make(p, parent, next)).collect()),
        View::Live(of) => {
            let end = document.create_comment("");
            let _ = parent.insert_before(&end, next);
            Mounted::Live(follow(of, Rc::new(RefCell::new(Mounted::Nothing)), end))
        }
        View::Keyed(key, owner, part) => {
            let own = owner.child();
            let made = own.with(|| make(part(), parent, next));
            Mounted::Keyed(key, Box::new(made), own)
        }
    }
}

fn created(document: &Document, described: &El) -> Result<Element, JsValue> {
    let tag = described.0.tag;
    if described.0.drawn {
        document.create_element_ns(Some("http://www.w3.org/2000/svg"), tag)
    } else {
        document.create_element(tag)
    }
}

fn element_of(described: El, element: Element) -> Standing {
    let parts = *described.0;
    // A property may be about what stands within, as which option is chosen.
    let (after, before): (Vec<_>, Vec<_>) =
        parts.attrs.into_iter().partition(|(kind, ..)| *kind == Kind::Property);
    let mut attrs = attributes(&element, Vec::new(), before);
    let listeners = listeners(&element, Vec::new(), parts.on);
    let children = parts.children.into_iter().map(|c| make(c, &element, None)).collect();
    attrs.extend(attributes(&element, Vec::new(), after));
    Standing { tag: parts.tag, drawn: parts.drawn, element, attrs, listeners, children }
}

/// Shows what `of` says before `end`, now and whenever it says otherwise.
pub(super) fn follow(of: Box<dyn Fn() -> View>, shown: Rc<RefCell<Mounted>>, end: Comment) -> Region {
    // What is shown goes with its region at once. Were it held here too, the parts within would go on following until this
    // effect's task has ended, and would read what is gone.
    let (held, upto) = (Rc::downgrade(&shown), end.clone());
    let following = RenderEffect::new(move |_| {
        let Some(here) = held.upgrade() else { return };
        let view = of();
        let Some(parent) = upto.parent_node() else { return };
        let was = here.replace(Mounted::Nothing);
        let is = change(was, view, &parent, &Next::Node(&upto));
        here.replace(is);
    });
    Region { shown, end, _following: following }
}

/// Keeps the element as `attr` says; `said` is what it was last told.
pub(super) fn follow_attr(
    element: &Element,
    kind: Kind,
    name: &'static str,
    attr: Attr,
    said: &Rc<RefCell<Said>>,
) -> Option<RenderEffect<()>> {
    match attr {
        Attr::Fixed(now) => {
            if *said.borrow() != now {
                put(element, kind, name, &now);
                said.replace(now);
            }
            None
        }
        Attr::Live(of) => {
            let (element, said) = (element.clone(), said.clone());
            Some(RenderEffect::new(move |_| {
                let now = of();
                // A property may have been changed by the person since.
                if kind == Kind::Property || *said.borrow() != now {
                    put(&element, kind, name, &now);
                    said.replace(now);
                }
            }))
        }
    }
}
