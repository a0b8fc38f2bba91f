//! A counter and nothing else: the floor that tools/measure compares Potside with.

use leptos::prelude::*;

fn main() {
    mount_to_body(|| {
        let (count, set_count) = signal(0);
        view! { <button on:click=move |_| set_count.update(|n| *n += 1)>{count}</button> }
    });
}
