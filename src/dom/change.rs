//! Changes in the document what a new description says otherwise.

use super::attr::{Attr, Kind, Said, put};
use super::make::{follow, follow_attr, make};
use super::mounted::{Given, Listener, Mounted, Region, Then};
use super::view::{Handler, View};
use leptos::prelude::Owner;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, Event, Node};

/// What stood there, made into what `view` says. Elements of the same kind in the same place stay, and with them the
/// focus, the cursor and where they were scrolled to. `next` is what stands after it.
pub(super) fn change(was: Mounted, view: View, parent: &Node, next: &Next) -> Mounted {
    match (was, view) {
        (Mounted::Text(node, was), View::Text(is)) => {
            if was != is {
                node.set_data(&is);
            }
            Mounted::Text(node, is)
        }
        (Mounted::Element(mut standing), View::Element(described))
            if standing.tag == described.0.tag && standing.drawn == described.0.drawn =>
        {
            let parts = *described.0;
            standing.listeners =
                listeners(&standing.element, std::mem::take(&mut standing.listeners), parts.on);
            let children = std::mem::take(&mut standing.children);
            standing.children = list(children, parts.children, &standing.element, &Next::Nothing);
            standing.attrs = attributes(&standing.element, std::mem::take(&mut standing.attrs), parts.attrs);
            Mounted::Element(standing)
        }
        (Mounted::Many(was), View::Many(is)) => Mounted::Many(list(was, is, parent, next)),
        (Mounted::Live(Region { shown, end, _following }), View::Live(of)) => {
            drop(_following);
            Mounted::Live(follow(of, shown, end))
        }
        (Mounted::Keyed(key, part, owner), View::Keyed(same, ..)) if key == same => {
            Mounted::Keyed(key, part, owner)
        }
        (was, View::Nothing) => {
            was.remove();
            Mounted::Nothing
        }
        (was, view) => {
            let is = make(view, parent, was.first().or_else(|| next.node()).as_ref());
            was.remove();
            is
        }
    }
}

/// What stands after a part. It is looked for only where something new is put before it: each look asks the document.
pub(super) enum Next<'a> {
    Nothing,
    Node(&'a Node),
    /// The first of these that is in the document, or what comes after all of them.
    Of(&'a [Mounted], &'a Next<'a>),
}

impl Next<'_> {
    fn node(&self) -> Option<Node> {
        match self {
            Self::Nothing => None,
            Self::Node(node) => Some((*node).clone()),
            Self::Of(parts, after) => parts.iter().find_map(Mounted::first).or_else(|| after.node()),
        }
    }
}

fn list(mut was: Vec<Mounted>, is: Vec<View>, parent: &Node, next: &Next) -> Vec<Mounted> {
    // Without keyed parts each stays in its place.
    if is.iter().any(|view| matches!(view, View::Keyed(..))) {
        was = in_order(was, &is, parent, next);
    }
    let now = is.len();
    for (place, view) in is.into_iter().enumerate() {
        if place == was.len() {
            was.push(Mounted::Nothing);
        }
        if let Some((part, rest)) = was.get_mut(place..).and_then(<[_]>::split_first_mut) {
            let stood = std::mem::replace(part, Mounted::Nothing);
            *part = change(stood, view, parent, &Next::Of(rest, next));
        }
    }
    was.drain(now..).for_each(Mounted::remove);
    was
}

/// What stood there in the order of what shall stand there: nothing where that is new. The others are gone.
fn in_order(was: Vec<Mounted>, is: &[View], parent: &Node, next: &Next) -> Vec<Mounted> {
    let mut was: Vec<Option<Mounted>> = was.into_iter().map(Some).collect();
    let mut parts = Vec::with_capacity(is.len());
    for (place, view) in is.iter().enumerate() {
        parts.push(stood(&mut was, place, view).unwrap_or(Mounted::Nothing));
    }
    was.into_iter().flatten().for_each(Mounted::remove);
    let mut next = next.node();
    // From the last to the first, so that what each stands before is in its place already.
    for part in parts.iter().rev() {
        part.stand_before(parent, next.as_ref());
        next = part.first().or(next);
    }
    parts
}

/// What becomes this view: of a keyed one what has its key, of any other what stood in its place.
fn stood(was: &mut [Option<Mounted>], place: usize, view: &View) -> Option<Mounted> {
    let slot = match view {
        View::Keyed(key, ..) => {
            was.iter_mut().find(|slot| matches!(slot, Some(Mounted::Keyed(same, ..)) if same == key))
        }
        _ => was.get_mut(place).filter(|slot| !matches!(slot, Some(Mounted::Keyed(..)))),
    };
    slot.and_then(Option::take)
}

/// What an element is given now, over what it was given before.
pub(super) fn attributes(
    element: &Element,
    mut was: Vec<Given>,
    is: Vec<(Kind, &'static str, Attr)>,
) -> Vec<Given> {
    let mut given = Vec::with_capacity(is.len());
    for (kind, name, attr) in is {
        let before =
            was.iter().position(|g| g.kind == kind && g.name == name).map(|at| was.swap_remove(at).said);
        let said = before.unwrap_or_else(|| Rc::new(RefCell::new(Said::Nothing)));
        let told = (kind == Kind::Attribute && name == "class").then(|| said.borrow().clone());
        let following = follow_attr(element, kind, name, attr, &said);
        // Naming the classes anew takes the flagged ones with it.
        if told.is_some_and(|told| *said.borrow() != told) {
            was.iter().filter(|g| g.kind == Kind::Class).for_each(|g| {
                g.said.replace(Said::Nothing);
            });
        }
        given.push(Given { kind, name, said, _following: following });
    }
    for gone in was {
        put(element, gone.kind, gone.name, &Said::Nothing);
    }
    given
}

/// What an element does now, over what it did before.
pub(super) fn listeners(
    element: &Element,
    mut was: Vec<Listener>,
    is: Vec<(&'static str, Handler)>,
) -> Vec<Listener> {
    let owner = Owner::current();
    let mut listening = Vec::with_capacity(is.len());
    for (event, handler) in is {
        let then = Then { owner: owner.clone(), handler: Rc::from(handler) };
        let before = was.iter().position(|l| l.event == event).map(|at| was.swap_remove(at));
        listening.push(match before {
            Some(listener) => {
                listener.then.replace(then);
                listener
            }
            None => listen(element, event, then),
        });
    }
    for gone in was {
        let _ =
            element.remove_event_listener_with_callback(gone.event, gone.closure.as_ref().unchecked_ref());
    }
    listening
}

fn listen(element: &Element, event: &'static str, then: Then) -> Listener {
    let then = Rc::new(RefCell::new(then));
    let now = then.clone();
    let closure: Closure<dyn Fn(Event)> = Closure::new(move |event: Event| {
        let Then { owner, handler } = now.borrow().clone();
        match owner {
            Some(owner) => owner.with(|| handler(event)),
            None => handler(event),
        }
    });
    let _ = element.add_event_listener_with_callback(event, closure.as_ref().unchecked_ref());
    Listener { event, then, closure }
}
