//! Described pages in a real browser: what changes in the document is what a description says otherwise, and nothing
//! else.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::expect_used, clippy::indexing_slicing)]

#[path = "common/page.rs"]
mod page;

use leptos::prelude::Owner;
use page::{pause, until};
use potside::dom::{Derived, IntoView, Value, View, each, el, show, svg, text_of, watch};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::{Document, Element, Event, HtmlDialogElement, HtmlElement};

wasm_bindgen_test_configure!(run_in_browser);

fn document() -> Document {
    web_sys::window().expect("a window").document().expect("a document")
}

/// A place in the page of its own, and what `page` describes shown in it.
fn shown(page: impl FnOnce() -> View + 'static) -> Element {
    let place = document().create_element("div").expect("an element");
    document().body().expect("a body").append_child(&place).expect("it takes children");
    let (into, html) = (place.clone(), place.clone().unchecked_into::<HtmlElement>());
    leptos::mount::mount_to(html, move || show(&into, page())).forget();
    place
}

/// Until everything that follows a value has run: it does before the browser comes to anything else.
async fn settled() {
    pause(0).await;
}

fn found(place: &Element, what: &str) -> HtmlElement {
    place.query_selector(what).expect("a selector").expect("it is there").unchecked_into()
}

fn values<T: Copy + 'static>(make: impl FnOnce() -> T) -> T {
    let owner = Owner::new();
    let made = owner.with(make);
    std::mem::forget(owner);
    made
}

#[wasm_bindgen_test]
async fn an_element_is_as_described() {
    let place = shown(|| {
        el("p")
            .class("one two")
            .attr("aria-label", "said")
            .attr("hidden", true)
            .attr("title", None::<String>)
            .flag("three", true)
            .flag("four", false)
            .child("a < b & c")
            .child(el("strong").child(7.to_string()))
            .child(Some("!"))
            .child(())
            .view()
    });
    assert_eq!(
        found(&place, "p").outer_html(),
        "<p class=\"one two three\" aria-label=\"said\" hidden=\"\">a &lt; b &amp; c<strong>7</strong>!</p>"
    );
}

/// An element made in the wrong namespace looks the same and draws nothing: its box is empty.
#[wasm_bindgen_test]
async fn a_drawing_is_drawn_and_changes() {
    let (far, drawn) = values(|| (Value::new(20), Value::new(true)));
    let place = shown(move || {
        let line = move || svg("path").class("line").attr("d", format!("M0 0L{} 10", far.get()));
        let link = move || if drawn.get() { svg("a").child("drawn") } else { el("a").child("text") };
        group(svg("svg").attr("viewBox", "0 0 20 10").attr("role", "img").child(line).view(), link)
    });
    let path: web_sys::SvgGraphicsElement = found(&place, "svg > path.line").unchecked_into();
    let wide = || {
        let boxed = path.get_b_box().expect("it is drawn");
        js_sys::Reflect::get(&boxed, &"width".into()).expect("a box").as_f64()
    };
    assert_eq!(wide(), Some(20.0));
    far.set(15);
    settled().await;
    assert!(path.is_connected(), "the line is the same");
    assert_eq!(wide(), Some(15.0));
    let space = || found(&place, "output > a").namespace_uri();
    assert_eq!(space().as_deref(), Some("http://www.w3.org/2000/svg"));
    drawn.set(false);
    settled().await;
    assert_eq!(space().as_deref(), Some("http://www.w3.org/1999/xhtml"));
}

/// A page within a page goes with it at once, though what it follows has changed in the same moment: what it would read
/// is gone already.
#[wasm_bindgen_test]
async fn what_is_gone_reads_nothing_more() {
    let (there, number) = values(|| (Value::new(true), Value::new(1)));
    let reads = Rc::new(Cell::new(0));
    let counted = reads.clone();
    let place = shown(move || {
        let inner = move || {
            let counted = counted.clone();
            let own = Value::new("of its own");
            let words = move || {
                counted.set(counted.get() + 1);
                format!("{} {}", number.get(), own.get())
            };
            // A region that follows nothing, as a part that had to be fetched.
            (move || el("p").child(words.clone()).view()).view()
        };
        (move || if there.get() { inner() } else { el("p").child("another").view() }).view()
    });
    settled().await;
    assert_eq!(place.text_content().as_deref(), Some("1 of its own"));
    there.set(false);
    number.set(2);
    settled().await;
    assert_eq!(place.text_content().as_deref(), Some("another"));
    assert_eq!(reads.get(), 1, "it was read once");
}

#[wasm_bindgen_test]
async fn words_follow_what_they_read() {
    let (a, b) = values(|| (Value::new(1), Value::new(10)));
    let sum = values(|| Derived::new(move || a.get() + b.get()));
    let runs = Rc::new(Cell::new(0));
    let counted = runs.clone();
    let place = shown(move || {
        let words = move || {
            counted.set(counted.get() + 1);
            format!("{} ", sum.get())
        };
        el("p").attr("data-sum", move || sum.get().to_string()).child(words).child("kg").view()
    });
    assert_eq!(place.text_content().expect("text"), "11 kg");
    let node = found(&place, "p").first_child().expect("words");
    a.set(2);
    settled().await;
    assert_eq!(place.text_content().expect("text"), "12 kg");
    assert_eq!(found(&place, "p").get_attribute("data-sum").as_deref(), Some("12"));
    assert!(node.is_connected(), "the words changed where they stood");
    // The sum stays what it is: nothing that follows it has anything to do.
    let before = runs.get();
    a.set(3);
    b.set(9);
    settled().await;
    assert_eq!(runs.get(), before);
    assert_eq!(sum.get_untracked(), 12);
}

#[wasm_bindgen_test]
async fn what_stays_keeps_its_focus_and_does_the_new_thing() {
    let n = values(|| Value::new(1));
    let pressed = Rc::new(Cell::new(0));
    let told = pressed.clone();
    let place = shown(move || {
        (move || {
            let (now, told) = (n.get(), told.clone());
            let button = el("button").attr("title", now.to_string()).on("click", move |_| told.set(now));
            let other = if now % 2 == 0 { el("em").child("even") } else { el("b").child("odd") };
            el("div").child(button.child(now.to_string())).child(other).view()
        })
        .view()
    });
    let button = found(&place, "button");
    button.focus().expect("it can have the focus");
    n.set(2);
    settled().await;
    assert!(button.is_connected(), "the button is the same");
    assert_eq!(document().active_element().as_ref(), Some(button.as_ref()));
    assert_eq!((button.title(), button.text_content()), ("2".to_owned(), Some("2".to_owned())));
    assert_eq!(found(&place, "em").text_content().as_deref(), Some("even"));
    assert!(place.query_selector("b").expect("a selector").is_none());
    button.click();
    assert_eq!(pressed.get(), 2, "and does what is described now, once");
}

#[wasm_bindgen_test]
async fn a_list_grows_shrinks_and_empties_in_its_place() {
    let list = values(|| Value::new(vec!["a", "b"]));
    let place = shown(move || {
        let one = |word: &&'static str| el("li").child(*word);
        let items = move || list.with(|l| l.iter().map(one).collect::<Vec<_>>());
        el("ul").child("[").child(items).child("]").view()
    });
    let read = || place.text_content().expect("text");
    for (now, said) in [(vec!["a", "b", "c"], "[abc]"), (vec![], "[]"), (vec!["z"], "[z]")] {
        list.set(now);
        settled().await;
        assert_eq!(read(), said);
    }
}

/// Parts come and go alone, in a group, as an element, by themselves and by their key, with others around them.
#[wasm_bindgen_test]
async fn what_comes_between_others_stands_in_its_place() {
    let there = values(|| Value::new(0_u32));
    let is = |all: u32, bit: u32| all >> bit & 1 == 1;
    let place = shown(move || {
        let page = move || {
            let all = there.get();
            let one = move |bit, word: &'static str| is(all, bit).then_some(word);
            let keyed = move || [2_u32, 1].into_iter().filter(|n| is(there.get(), 4 + n)).collect::<Vec<_>>();
            el("p")
                .child(one(0, "a"))
                .child(vec![one(1, "b").view(), "-".view()])
                .child(is(all, 2).then(|| el("b").child("c")))
                .child(move || is(there.get(), 3).then_some("d"))
                .child(one(4, "e"))
                .child(each(keyed, |n| u64::from(*n), |n| n.to_string().view()))
        };
        page.view()
    });
    for turn in 0..130 {
        let all = turn * 29 % 128;
        there.set(all);
        settled().await;
        let mut expected = String::new();
        for (bit, word) in [(0, "a"), (1, "b"), (7, "-"), (2, "c"), (3, "d"), (4, "e"), (6, "2"), (5, "1")] {
            if bit == 7 || is(all, bit) {
                expected.push_str(word);
            }
        }
        assert_eq!(place.text_content().expect("text"), expected, "{all:b}");
    }
}

#[wasm_bindgen_test]
async fn the_keyed_stay_what_they_are() {
    let list = values(|| Value::new(vec![1_u64, 2, 3]));
    let place = shown(move || {
        let part = |key: u64| {
            let typed = Value::new(String::new());
            let field = el("input").attr("id", format!("k{key}")).prop("value", move || typed.get());
            let words = move || typed.get();
            group(field.on("input", move |e| typed.set(text_of(&e))).child(()).view(), words)
        };
        each(move || list.get(), |k| *k, part)
    });
    let field = found(&place, "#k2");
    js_sys::Reflect::set(&field, &"value".into(), &"typed".into()).expect("it is set");
    field.dispatch_event(&Event::new("input").expect("an event")).expect("it is sent");
    list.set(vec![4, 3, 2]);
    settled().await;
    let order = || {
        let all = place.get_elements_by_tag_name("input");
        (0..all.length()).filter_map(|i| all.item(i)).map(|n| n.id()).collect::<Vec<_>>()
    };
    assert_eq!(order(), ["k4", "k3", "k2"]);
    assert!(field.is_connected(), "the field is the same");
    // What the part made lives as long as the part, not as long as that state of the list.
    assert_eq!(found(&place, "#k2 + output").text_content().as_deref(), Some("typed"));
}

fn group(first: View, then: impl IntoView) -> View {
    View::Many(vec![first, el("output").child(then).view()])
}

#[wasm_bindgen_test]
async fn what_is_typed_is_not_typed_over() {
    let (typed, other) = values(|| (Value::new("ab".to_owned()), Value::new(0)));
    let place = shown(move || {
        (move || {
            let n = other.get();
            el("label").child(n.to_string()).child(el("input").prop("value", typed)).view()
        })
        .view()
    });
    let input: web_sys::HtmlInputElement = found(&place, "input").unchecked_into();
    input.focus().expect("it can have the focus");
    input.set_selection_range(1, 1).expect("a cursor");
    other.set(1);
    settled().await;
    assert_eq!(input.selection_start().expect("a cursor"), Some(1), "the cursor stays");
    typed.set("xyz".to_owned());
    settled().await;
    assert_eq!(input.value(), "xyz");
}

#[wasm_bindgen_test]
async fn what_is_gone_follows_nothing() {
    let (open, n) = values(|| (Value::new(true), Value::new(1)));
    let runs = Rc::new(Cell::new(0));
    let counted = runs.clone();
    let place = shown(move || {
        (move || {
            let counted = counted.clone();
            open.get().then(move || {
                let inner = Value::new(0);
                watch(move || inner.set(n.get()));
                let words = move || {
                    counted.set(counted.get() + 1);
                    inner.get().to_string()
                };
                el("p").child(words)
            })
        })
        .view()
    });
    settled().await;
    assert_eq!(place.text_content().as_deref(), Some("1"));
    open.set(false);
    settled().await;
    assert_eq!(place.text_content().as_deref(), Some(""));
    let before = runs.get();
    n.set(2);
    settled().await;
    assert_eq!(runs.get(), before);
}

/// A dialog is told that it was closed a moment after it was; by then its page may have gone, and with it who listened.
#[wasm_bindgen_test]
async fn what_is_gone_is_told_nothing_late() {
    let open = values(|| Value::new(true));
    let heard = Rc::new(Cell::new(0));
    let counted = heard.clone();
    let place = shown(move || {
        (move || {
            let counted = counted.clone();
            open.get().then(move || el("dialog").on("close", move |_| counted.set(counted.get() + 1)))
        })
        .view()
    });
    settled().await;
    let errors = Rc::new(Cell::new(0));
    let counted = errors.clone();
    let note: Closure<dyn Fn(Event)> = Closure::new(move |e: Event| {
        e.prevent_default();
        counted.set(counted.get() + 1);
    });
    let window = web_sys::window().expect("a window");
    window.add_event_listener_with_callback("error", note.as_ref().unchecked_ref()).expect("it listens");
    let dialog: HtmlDialogElement = found(&place, "dialog").unchecked_into();
    let told = Rc::new(Cell::new(0));
    let counted = told.clone();
    let late: Closure<dyn Fn(Event)> = Closure::new(move |_| counted.set(counted.get() + 1));
    dialog.add_event_listener_with_callback("close", late.as_ref().unchecked_ref()).expect("it listens");
    for (stays, times) in [(true, 1), (false, 2)] {
        dialog.show_modal().expect("it opens");
        dialog.close();
        open.set(stays);
        // How late the browser tells it is its own affair: until it has.
        until("the late event", || told.get() >= times).await;
        settled().await;
        assert_eq!(told.get(), times, "stays: {stays}");
        assert_eq!((heard.get(), errors.get()), (1, 0), "stays: {stays}");
    }
    window.remove_event_listener_with_callback("error", note.as_ref().unchecked_ref()).expect("it did");
}
