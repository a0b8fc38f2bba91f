//! Which lots a pour is taken from: told at the step, chosen there, and kept in the record.

use super::pouring::Pouring;
use crate::book::{Act, Batch, Id, Kept, State};
use crate::dom::*;
use crate::pot::{Run, StepKey};
use crate::rooms::parts::{caution, sheet};
use crate::rooms::workshop::Workshop;
use crate::stores::{Account, Holding, Ledger, Measure};

/// The lot of the step that is now, and the way to another; nothing where none is in the stores.
pub(super) fn from_lot(p: Pouring, key: StepKey) -> View {
    let shop = p.shop;
    let named = |run: &Run| run.takes_at(key).into_iter().map(str::to_owned).collect();
    let mut parts: Vec<String> = p.run(named).unwrap_or_default();
    parts.retain(|part| shop.state(|s| s.has_lots(part)));
    let held = Derived::new(move || shop.state(|s| s.running().map(|b| held(s, b, key)).unwrap_or_default()));
    // While vessels are filled it is not said at each from which lots they are, unless one of them is on hold.
    let shown = Derived::new(move || key.goes_in() || held.with(|held| !held.is_empty()));
    group![
        move || shown.get().then(|| parts.iter().map(|part| of_part(shop, part, !key.goes_in())).views()),
        move || held.with(|held| (!held.is_empty()).then(|| on_hold(held)))
    ]
}

/// From which lot a part is, and the way to another. `named`: the step is about several, so it is said which of them.
fn of_part(shop: Workshop, part: &str, named: bool) -> View {
    let (open, part, of, title) = (Value::new(false), part.to_owned(), part.to_owned(), part.to_owned());
    let head = if named { [part.as_str(), ": "].concat() } else { String::new() };
    let told = Derived::new(move || shop.state(|s| s.running().map(|b| told(s, b, &of)).unwrap_or_default()));
    group![
        el("p").class("from-lot").child(head).child(move || told.get()).child(" ").child(
            el("button")
                .attr("type", "button")
                .class("quiet")
                .on("click", move |_| open.set(true))
                .child("Another lot"),
        ),
        sheet(move || ["Lots of “", &title, "”"].concat(), open, move || offers(shop, &part, open))
    ]
}

/// The lots of the step that are on hold: id and number.
fn held(state: &State, batch: &Batch, key: StepKey) -> Vec<(Id, String)> {
    let number = |lot: &Id| state.lots.get(lot).and_then(Kept::body).map(|l| l.number.clone());
    let held = state.held_at(batch, key);
    held.into_iter().map(|lot| (lot.clone(), number(lot).unwrap_or_default())).collect()
}

/// The step waits, and the two ways on.
fn on_hold(held: &[(Id, String)]) -> View {
    let way = |(id, number): &(Id, String)| {
        el("a")
            .attr("href", ["#stores/lot/", &id.0].concat())
            .child(["Lot ", number, " in the Stores"].concat())
    };
    group![
        caution(
            "A lot of this step is on hold, so it is not used. Take another lot; or, if it is good after all, lift the hold on \
its page and come back here."
        ),
        el("p").class("actions").child(held.iter().map(way).views())
    ]
}

/// `From lot M-7`.
fn told(state: &State, batch: &Batch, part: &str) -> String {
    let lots = batch.lots_of(part);
    let numbers: Vec<&str> =
        lots.iter().filter_map(|l| Some(state.lots.get(l)?.body()?.number.as_str())).collect();
    if numbers.is_empty() {
        return "From no lot in the book.".to_owned();
    }
    ["From lot ", &numbers.join(", then ")].concat()
}

/// Every lot there is of it, to be tapped.
fn offers(shop: Workshop, part: &str, open: Value<bool>) -> View {
    shop.ledger().with(|ledger| ledger.account(part).map(|account| rows(shop, account, part, open))).view()
}

fn rows(shop: Workshop, account: &Account, part: &str, open: Value<bool>) -> View {
    let row = |holding: &Holding| {
        let (id, part) = (holding.id.clone(), part.to_owned());
        let choose = move |_| {
            choose(shop, &part, &id);
            open.set(false);
        };
        el("li").child(
            el("button")
                .attr("type", "button")
                .attr("disabled", holding.held)
                .on("click", choose)
                .child(el("span").class("title").child("Lot ").child(holding.lot.number.clone()))
                .child(el("span").class("detail").child(if holding.held { "on hold" } else { "" }))
                .child(account.measure.say(holding.left, shop.voice())),
        )
    };
    el("ul").class("list").child(account.lots.iter().map(row).views()).view()
}

fn choose(shop: Workshop, part: &str, lot: &Id) {
    let act = untrack(|| {
        shop.state(|s| {
            let batch = s.running()?;
            let source = shop.ledger().with(|l| l.choose(&batch.run.plan, part, lot));
            Some(Act::TakenFrom { batch: batch.id.clone(), sources: vec![source] })
        })
    });
    if let Some(act) = act {
        shop.act(act);
    }
}

/// What a batch was taken from, lot by lot.
pub(super) fn origins(shop: Workshop, batch: &Batch) -> View {
    shop.ledger().with(|ledger| of_ledger(shop, ledger, batch))
}

fn of_ledger(shop: Workshop, ledger: &Ledger, batch: &Batch) -> View {
    let origins = ledger.back(&batch.id);
    if ledger.accounts.is_empty() {
        return ().view();
    }
    let held = ledger.is_held(&batch.id);
    let row = |origin: &crate::stores::Origin| {
        let lot = &origin.holding.lot;
        let measure: Measure = origin.account.measure;
        el("tr")
            .child(el("td").child(origin.account.name.clone()))
            .child(
                el("td")
                    .child(
                        el("a")
                            .attr("href", ["#stores/lot/", &origin.holding.id.0].concat())
                            .child(lot.number.clone()),
                    )
                    .child(origin.holding.held.then_some(" on hold")),
            )
            .child(el("td").class("number").child(measure.say(origin.amount, shop.voice())))
    };
    let head = |name: &'static str| el("th").attr("scope", "col").child(name);
    let untraced = batch.untraced(ledger).join(", ");
    group![
        held.then(|| caution("Something in these candles is of a lot that is on hold. Do not sell or ship them until it is released.")),
        el("h2").child("From which lots"),
        (!origins.is_empty()).then(|| el("table")
            .class("lots")
            .child(
                el("thead").child(
                    el("tr")
                        .child(head("Part"))
                        .child(head("Lot"))
                        .child(el("th").attr("scope", "col").class("number").child("Taken"))
                )
            )
            .child(el("tbody").child(origins.iter().map(row).views()))),
        (!untraced.is_empty())
            .then(|| el("p").class("detail").child(["From no lot in the book: ", &untraced, "."].concat()))
    ]
}
