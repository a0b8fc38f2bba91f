//! What is in the document, and by which part of the page.

use super::attr::{Kind, Said};
use super::change::listeners;
use leptos::prelude::{Owner, RenderEffect};
use std::borrow::Cow;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use web_sys::{Comment, Element, Event, Node, Text};

/// A part of the page that stands in the document.
pub(super) enum Mounted {
    Nothing,
    Text(Text, Cow<'static, str>),
    Element(Box<Standing>),
    Many(Vec<Mounted>),
    Live(Region),
    Keyed(u64, Box<Mounted>, Owner),
}

/// An element with what it was given.
pub(super) struct Standing {
    pub(super) tag: &'static str,
    pub(super) drawn: bool,
    pub(super) element: Element,
    pub(super) attrs: Vec<Given>,
    pub(super) listeners: Vec<Listener>,
    pub(super) children: Vec<Mounted>,
}

/// A browser may still tell an element that has gone of what befell it before: that a dialog was closed is told a moment
/// after. Nobody is there any more to be told.
impl Drop for Standing {
    fn drop(&mut self) {
        if !self.listeners.is_empty() {
            listeners(&self.element, std::mem::take(&mut self.listeners), Vec::new());
        }
    }
}

/// What was given, what it said last, and what follows it.
pub(super) struct Given {
    pub(super) kind: Kind,
    pub(super) name: &'static str,
    pub(super) said: Rc<RefCell<Said>>,
    pub(super) _following: Option<RenderEffect<()>>,
}

/// The document keeps the listener; what it does is changed in its place.
pub(super) struct Listener {
    pub(super) event: &'static str,
    pub(super) then: Rc<RefCell<Then>>,
    pub(super) closure: Closure<dyn Fn(Event)>,
}

/// What is done, and under whom lives what that makes.
#[derive(Clone)]
pub(super) struct Then {
    pub(super) owner: Option<Owner>,
    pub(super) handler: Rc<dyn Fn(Event)>,
}

/// A part that changes by itself: what it shows stands before its end.
pub(super) struct Region {
    pub(super) shown: Rc<RefCell<Mounted>>,
    pub(super) end: Comment,
    pub(super) _following: RenderEffect<()>,
}

impl Mounted {
    /// Its nodes in the document, not those within them.
    pub(super) fn nodes(&self, into: &mut Vec<Node>) {
        match self {
            Self::Nothing => {}
            Self::Text(node, _) => into.push(node.clone().into()),
            Self::Element(standing) => into.push(standing.element.clone().into()),
            Self::Many(parts) => parts.iter().for_each(|p| p.nodes(into)),
            Self::Live(region) => {
                region.shown.borrow().nodes(into);
                into.push(region.end.clone().into());
            }
            Self::Keyed(_, part, _) => part.nodes(into),
        }
    }

    pub(super) fn first(&self) -> Option<Node> {
        match self {
            Self::Nothing => None,
            Self::Text(node, _) => Some(node.clone().into()),
            Self::Element(standing) => Some(standing.element.clone().into()),
            Self::Many(parts) => parts.iter().find_map(Self::first),
            Self::Live(region) => region.shown.borrow().first().or_else(|| Some(region.end.clone().into())),
            Self::Keyed(_, part, _) => part.first(),
        }
    }

    /// Takes it out of the document.
    pub(super) fn remove(self) {
        let mut nodes = Vec::new();
        self.nodes(&mut nodes);
        for node in nodes {
            if let Some(parent) = node.parent_node() {
                let _ = parent.remove_child(&node);
            }
        }
    }

    /// Puts it before another node, where it does not stand there already.
    pub(super) fn stand_before(&self, parent: &Node, next: Option<&Node>) {
        let mut nodes = Vec::new();
        self.nodes(&mut nodes);
        if nodes.last().is_some_and(|last| last.next_sibling().as_ref() == next) {
            return;
        }
        for node in nodes {
            let _ = parent.insert_before(&node, next);
        }
    }
}
