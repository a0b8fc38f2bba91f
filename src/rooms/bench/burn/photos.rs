//! Photos of a candle: taken or chosen, shown where they are looked at, taken away.

use crate::bench::burn::{BurnEvent, Shot};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::keep;
use crate::keep::photo;
use crate::photo::PhotoError;
use crate::rooms::parts::{file_input, live, page_part, press, refusal, words};
use crate::rooms::workshop::Workshop;
use leptos::task::spawn_local;
use web_sys::HtmlInputElement;

/// So many are shown at once: a tablet holds no more pictures than are looked at.
const SHOWN: usize = 6;

pub(super) fn part(shop: Workshop, id: &Id) -> View {
    let named = id.clone();
    let all = Derived::new(move || shop.state(|s| s.shots_of(&named)));
    let most = Value::new(SHOWN);
    let more = move || {
        let left = all.with(Vec::len).saturating_sub(most.get());
        (left > 0).then(|| {
            press("", ["Show ", &left.min(SHOWN).to_string(), " earlier"].concat(), move || {
                most.update(|most| *most += SHOWN);
            })
        })
    };
    let shown = move || all.get().into_iter().take(most.get()).collect::<Vec<_>>();
    page_part(
        "burn-photos",
        "Photos",
        group![
            take(shop, id),
            el("div").class("photos").child(each(
                shown,
                |(entry, _)| number(entry),
                move |(entry, shot)| { one(shop, &entry, &shot) }
            )),
            live(move || more().view())
        ],
    )
}

/// Entries are told apart by their names; a list wants a number.
fn number(entry: &Id) -> u64 {
    entry.0.bytes().fold(0, |sum, byte| sum.rotate_left(7) ^ sum.wrapping_mul(31) ^ u64::from(byte))
}

/// The button that takes one, and what came of it.
fn take(shop: Workshop, id: &Id) -> View {
    let wrong = Value::new(None::<String>);
    let busy = Value::new(false);
    let id = id.clone();
    let taken = move |input: HtmlInputElement| {
        let id = id.clone();
        busy.set(true);
        spawn_local(async move {
            let outcome = keep_one(shop, &id, &input).await;
            busy.set(false);
            wrong.set(outcome.err());
        });
    };
    group![
        file_input("image/*", "Take or choose a photo", Callback::new(taken)),
        el("p").class("detail").child(
            "It is made small, and what a camera adds (place, time, device) is left out. It stays on this device and in \
copies of the book.",
        ),
        el("div")
            .attr("role", "status")
            .child(words(move || if busy.get() { "Keeping it …".to_owned() } else { String::new() }))
            .child(live(move || wrong.get().map(|why| refusal("Not kept: ", why)).view()))
    ]
}

/// First the photo is stored, then the entry that names it: an entry never tells of a photo that was lost on the way.
async fn keep_one(shop: Workshop, id: &Id, input: &HtmlInputElement) -> Result<(), String> {
    let at = keep::now();
    let Some(taken) = photo::taken(input).await else { return Ok(()) };
    let (name, text) = taken.map_err(|why| why.to_string())?;
    if untrack(|| shop.read_only()) {
        return Err("this book can only be read now.".to_owned());
    }
    let which = untrack(|| shop.which());
    photo::keep_photos(which, &[(name.clone(), text)]).await.map_err(|why| why.to_string())?;
    shop.act(Act::AtTrial { trial: id.clone(), event: BurnEvent::Pictured { at, photo: name } });
    Ok(())
}

fn one(shop: Workshop, entry: &Id, shot: &Shot) -> View {
    let found = Value::new(None::<Result<String, PhotoError>>);
    let (which, name) = (untrack(|| shop.which()), shot.photo.clone());
    spawn_local(async move {
        found.set(Some(photo::photo(which, &name).await.map(|p| photo::address(&p))));
    });
    let said = [&shot.said, ", ", &keep::when(shot.at)].concat();
    let picture = {
        let said = shot.said.clone();
        move || match found.get() {
            None => ().view(),
            Some(Ok(address)) => {
                el("img").attr("src", address).attr("alt", ["Photo: ", &said].concat()).view()
            }
            Some(Err(why)) => refusal("", why.to_string()),
        }
    };
    let entry = entry.clone();
    let away = move || {
        shop.act(Act::Undo { entry: entry.clone() });
    };
    el("figure")
        .class("photo")
        .child(picture)
        .child(el("figcaption").child(said).child(press("quiet", "Take it away", away)))
        .view()
}
