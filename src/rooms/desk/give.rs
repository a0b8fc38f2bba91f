//! A copy of the book given out as a file, and when one is asked for.

use crate::book::backup_with;
use crate::dom::*;
use crate::keep::{self, Which};
use crate::photo::Photo;
use crate::rooms::parts::{choice, press, words};
use crate::rooms::workshop::Workshop;
use leptos::task::spawn_local;

pub(super) fn part(shop: Workshop) -> View {
    let said = Value::new(String::new());
    let give = move || {
        let which = untrack(|| shop.which());
        spawn_local(async move {
            let name = ["potside-book-", &keep::file_day(), ".json"].concat();
            said.set(match keep::load(which).await {
                Ok(lines) => {
                    let count = lines.len();
                    let (photos, lacking) = photos_of(shop, which).await;
                    let (text, left) = backup_with(&lines, &photos, &keep::device(), keep::now());
                    if keep::download(&name, &text) {
                        shop.change_prefs(|p| p.copied = keep::now());
                        let with = counted(photos.len() - left, "photo");
                        let without = match (lacking, left) {
                            (0, 0) => String::new(),
                            (lacking, 0) => format!(" Not in it: {} that cannot be read here.", counted(lacking, "photo")),
                            (lacking, left) => {
                                format!(" Not in it: {}, for which there is no room.", counted(lacking + left, "photo"))
                            }
                        };
                        let with = if photos.is_empty() { String::new() } else { [" and ", &with].concat() };
                        format!("{name} with {count} entries{with} is among your downloads. Put it where this device is not.{without}")
                    } else {
                        keep::NO_FILES.to_owned()
                    }
                }
                Err(why) => why.to_string(),
            });
        });
    };
    group![
        el("h3").child("A copy to keep"),
        el("p").child(
            "The copy is one JSON file that any text editor shows: an entry a line, each with its \
own checksum, and one over the whole. Everything is in it but what this device prefers.",
        ),
        el("div").class("actions").child(press("", "Download a copy", give)),
        el("p").attr("role", "status").child(words(move || said.get())),
        remind(shop)
    ]
}

/// The photos of the book that are whole on this device, the latest first, and how many are not.
async fn photos_of(shop: Workshop, which: Which) -> (Vec<Photo>, usize) {
    let names: Vec<String> = untrack(|| shop.journal(|j| j.photos()));
    let mut photos = Vec::new();
    for name in &names {
        photos.extend(keep::photo::photo(which, name).await.ok());
    }
    let lacking = names.len() - photos.len();
    (photos, lacking)
}

/// `1 photo`, `3 photos`.
pub(super) fn counted(n: usize, what: &str) -> String {
    [n.to_string().as_str(), " ", what, if n == 1 { "" } else { "s" }].concat()
}

/// After how long a copy is asked for; kept as soon as it is chosen.
fn remind(shop: Workshop) -> View {
    let (days, pours) = untrack(|| shop.prefs().with(|p| (p.remind_days, p.remind_pours)));
    let (days, pours) = (Value::new(days), Value::new(pours));
    watch(move || {
        let (days, pours) = (days.get(), pours.get());
        shop.change_prefs(|p| (p.remind_days, p.remind_pours) = (days, pours));
    });
    el("div")
        .class("fields")
        .child(choice("Ask for a copy after days", days, &[(0, "Never"), (7, "7"), (14, "14"), (30, "30")]))
        .child(choice("or after pours", pours, &[(0, "Never"), (5, "5"), (10, "10"), (25, "25")]))
        .view()
}
