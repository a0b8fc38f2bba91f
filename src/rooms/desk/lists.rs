//! Lists for a spreadsheet: each given out as a file, vessels, ingredients and orders taken in after a look at every line.

use crate::book::CopyError;
use crate::dom::*;
use crate::keep;
use crate::lists::{Found, LISTS, List, TakeError, Taken, give, take, write};
use crate::rooms::parts::{Pick, chooser, live, pick, press, refusal, words};
use crate::rooms::workshop::Workshop;

pub(super) fn body(shop: Workshop) -> View {
    group![out(shop), into(shop)]
}

fn named(key: &str) -> Option<&'static (List, &'static str, &'static str)> {
    LISTS.iter().find(|(_, _, file)| *file == key)
}

fn picks(takes: bool) -> Vec<Pick> {
    let all = LISTS
        .iter()
        .filter(|(list, _, _)| !takes || matches!(list, List::Vessels | List::Ingredients | List::Orders));
    all.map(|(_, title, file)| ((*file).to_owned(), (*title).to_owned())).collect()
}

fn out(shop: Workshop) -> View {
    let chosen = Value::new("pours".to_owned());
    let said = Value::new(String::new());
    let give = move || {
        let Some((list, _, file)) = named(&chosen.get_untracked()) else { return };
        let rows = untrack(|| shop.state(|s| give(*list, s, keep::ZONE, shop.voice())));
        let name = ["potside-", file, "-", &keep::file_day(), ".csv"].concat();
        let lines = rows.len().saturating_sub(1);
        said.set(if keep::download(&name, &write(&rows, untrack(|| shop.locale()))) {
            format!("{name} with {lines} lines is among your downloads.")
        } else {
            keep::NO_FILES.to_owned()
        });
    };
    group![
        el("h3").child("A list for a spreadsheet"),
        el("p").child("A plain table (CSV) that every spreadsheet opens. Changes made there do not come back by themselves."),
        el("div").class("fields").child(pick("List", chosen, || picks(false))),
        el("div").class("actions").child(press("", "Download the list", give)),
        el("p").attr("role", "status").child(words(move || said.get()))
    ]
}

type Looked = Option<Result<Taken, String>>;

fn into(shop: Workshop) -> View {
    let chosen = Value::new("vessels".to_owned());
    let looked = Value::new(Looked::None);
    let kept = Value::new(None::<usize>);
    let look = move |text: Result<String, CopyError>| {
        let Some((list, _, _)) = named(&chosen.get_untracked()) else { return };
        kept.set(None);
        let look = |text: String| untrack(|| shop.state(|s| take(*list, &text, s, shop.voice())));
        let text = text.map_err(|e| e.to_string());
        looked.set(Some(text.and_then(|t| look(t).map_err(|e: TakeError| e.to_string()))));
    };
    group![
        el("h3").child("Take in a list"),
        el("p").child(
            "The first row names the columns, as in the list that is given out; only the first of them must be there. \
Nothing is kept before you have seen every line.",
        ),
        el("div").class("fields").child(pick("List to take in", chosen, || picks(true))),
        chooser(".csv,.txt,text/csv,text/plain", "Choose a list", look),
        el("div")
            .attr("role", "status")
            .child(live(move || {
                looked.with(|l| match l {
                    None => ().view(),
                    Some(Err(why)) => refusal("Not read: ", why.clone()),
                    Some(Ok(taken)) => preview(shop, taken, looked, kept),
                })
            }))
            .child(words(move || match kept.get() {
                None => String::new(),
                Some(1) => "1 was taken in.".to_owned(),
                Some(n) => format!("{n} were taken in."),
            }))
    ]
}

/// Every line with what is wrong in it, and the button that keeps the good ones.
fn preview(shop: Workshop, taken: &Taken, looked: Value<Looked>, kept: Value<Option<usize>>) -> View {
    let good = taken.found.iter().filter(|f| f.body.is_ok()).count();
    let keep_them = move || {
        let Some(Ok(taken)) = looked.get_untracked() else { return };
        let done =
            taken.found.iter().filter_map(|f| f.act(shop.new_id())).take_while(|act| shop.act(act.clone()));
        kept.set(Some(done.count()));
        looked.set(None);
    };
    let line = |f: &Found| {
        let (mark, said) = match &f.body {
            Ok(_) => ("Good", String::new()),
            Err(problems) => ("Left out", [": ", &problems.join(" ")].concat()),
        };
        el("li").class("taken").child(el("strong").child(mark)).child(format!(
            ", line {}, {}{said}",
            f.line,
            if f.name.is_empty() { "no name" } else { &f.name }
        ))
    };
    let unknown = (!taken.unknown.is_empty()).then(|| {
        el("p").class("note").child(["Columns passed over: ", &taken.unknown.join(", "), "."].concat())
    });
    let doubled = taken.doubled().map(|said| el("p").class("note").child(said));
    group![
        el("p").class("found").child(format!("{good} of {} lines can be taken in.", taken.found.len())),
        unknown,
        doubled,
        el("ul").class("left-out").child(taken.found.iter().map(line).views()),
        el("div")
            .class("actions")
            .child((good > 0).then(|| press("main", "Take in the good ones", keep_them)))
            .child(press("", "Leave the list", move || looked.set(None)))
    ]
}
