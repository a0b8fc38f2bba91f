//! The Desk room: how amounts are said, the workshop's rules, where the book is kept and copies of it, the demo, about.

mod about;
mod copy;
mod damaged;
mod demo;
mod device;
mod rules;
mod storage;

use super::workshop::Workshop;
use leptos::prelude::*;

/// `#desk/damaged` shows what was set aside; all else is the Desk itself.
pub fn room() -> AnyView {
    let shop = Workshop::here();
    let damaged = Memo::new(move |_| shop.route().with(|r| r.at(0) == Some("damaged")));
    (move || {
        let damaged = damaged.get();
        untrack(|| if damaged { damaged::page(shop) } else { page(shop) })
    })
    .into_any()
}

fn page(shop: Workshop) -> AnyView {
    view! {
        <h1>"Desk"</h1>
        {section("desk-device", "This device", device::body(shop))}
        {section("desk-rules", "The workshop", rules::body(shop))}
        {section("desk-book", "Your book", view! { {storage::body(shop)} {copy::body(shop)} }.into_any())}
        {section("desk-demo", "The demo", demo::body(shop))}
        {section("desk-about", "About Potside", about::body())}
    }
    .into_any()
}

fn section(id: &'static str, title: &'static str, body: AnyView) -> AnyView {
    view! {
        <section class="part" aria-labelledby=id>
            <h2 id=id>{title}</h2>
            <div>{body}</div>
        </section>
    }
    .into_any()
}
