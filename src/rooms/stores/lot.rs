//! One lot: what it is, what became of it, where it went, and what can be done with it.

use super::{HERE, with_ledger};
use crate::book::{Act, Id, State};
use crate::dom::*;
use crate::keep;
use crate::quantity::Exact;
use crate::rooms::parts::{
    Field, Typed, caution, coins, field, finish, missing_page, page_head, page_part, past, press, sheet,
    text_field,
};
use crate::rooms::workshop::Workshop;
use crate::shelf::batch_number;
use crate::stores::{Account, Holding, Ledger, LotEvent, Measure};

pub(super) fn page(shop: Workshop, id: Id) -> View {
    let doing = Value::new(None::<What>);
    let open = Value::new(false);
    let begin = move |what: What| {
        doing.set(Some(what));
        open.set(true);
    };
    let lot = id.clone();
    group![
        with_ledger(shop, move |ledger| match ledger.lot(&id) {
            None => missing_page(HERE, "Stores", "There is no lot of this address in this book."),
            Some((account, holding)) => shop.state(|s| one(shop, s, ledger, (account, holding), begin)),
        }),
        sheet(
            move || doing.get().map_or("", What::title).to_owned(),
            open,
            move || {
                let what = doing.get();
                // Not followed: the act that answers must not make the question anew.
                untrack(|| what.map(|what| ask(shop, &lot, what, open)).view())
            },
        )
    ]
}

/// What can be done with a lot.
#[derive(Clone, Copy, PartialEq, Eq)]
enum What {
    Count,
    WriteOff,
    Hold,
    Release,
}

impl What {
    const fn title(self) -> &'static str {
        match self {
            Self::Count => "Count what is there",
            Self::WriteOff => "Write some off",
            Self::Hold => "Put on hold",
            Self::Release => "Release",
        }
    }
}

fn one(
    shop: Workshop,
    state: &State,
    ledger: &Ledger,
    (account, holding): (&Account, &Holding),
    begin: impl Fn(What) + Copy + 'static,
) -> View {
    let address = |then: &str| ["#stores/lot/", &holding.id.0, then].concat();
    let hold = if holding.held { What::Release } else { What::Hold };
    let act = |class: &'static str, what: What| press(class, what.title(), move || begin(what));
    let history = state.lot_events.get(&holding.id).map(Vec::as_slice).unwrap_or_default();
    let told = history.iter().rev().map(|(at, entry, event)| {
        let entry = entry.clone();
        let back = move || {
            shop.act(Act::Undo { entry: entry.clone() });
        };
        el("li").child(
            el("p")
                .child(el("span").class("detail").child(keep::when(*at)))
                .child(" ")
                .child(event.say(account.measure, shop.voice()))
                .child(" ")
                .child(press("quiet", "Take it back", back)),
        )
    });
    group![
        page_head(HERE, "Stores", ["Lot ", &holding.lot.number].concat()),
        holding.held.then(|| caution(
            "This lot is on hold: it is not used in the next pours, and its candles are marked."
        )),
        facts(shop, account, holding),
        el("div")
            .class("actions")
            .child(act("", What::Count))
            .child(act("", What::WriteOff))
            .child(act(if holding.held { "main" } else { "danger" }, hold))
            .child(el("a").class("button").attr("href", address("/recall")).child("Recall sheet"))
            .child(el("a").class("button quiet").attr("href", address("/change")).child("Put it right")),
        page_part("lot-balance", "What became of it", balance(shop, account.measure, holding)),
        page_part("lot-went", "Where it went", went(shop, state, ledger, (account, holding))),
        (!history.is_empty()).then(|| page_part(
            "lot-history",
            "What was done",
            el("ul").class("list").child(told.views()).view()
        )),
        past(shop, &holding.id)
    ]
}

/// What it is, in lines.
pub(super) fn facts(shop: Workshop, account: &Account, holding: &Holding) -> View {
    let lot = &holding.lot;
    let of = account.lots.first().map(|first| ["#stores/of/", &first.id.0].concat());
    let supplier = (!lot.supplier.is_empty()).then(|| [" from ", &lot.supplier].concat());
    let until = lot.best_before.map(|day| [", best before ", &keep::day(day)].concat());
    let packs = [&lot.bought.packs.to_string(), " × ", &lot.bought.pack.say(shop.voice())].concat();
    group![
        el("p").class("found").child(el("a").attr("href", of).child(lot.ingredient.clone())).child(supplier),
        el("p").child("Got on ").child(keep::day(lot.got_on)).child(until).child("."),
        el("p").child(packs).child(" for ").child(coins(lot.price)).child(".")
    ]
}

/// Bought = in candles + written off + unexplained + left.
pub(super) fn balance(shop: Workshop, measure: Measure, holding: &Holding) -> View {
    let row = |name: &'static str, amount| {
        group![el("dt").child(name), el("dd").child(measure.say(amount, shop.voice()))]
    };
    el("dl")
        .class("needs balance")
        .child(row("In candles, with what stayed in the pot", holding.in_candles))
        .child(row("Left", holding.left))
        .child(row("Written off", holding.written_off))
        .child(row("Unexplained", holding.unexplained))
        .child(el("dt").class("whole").child("Bought"))
        .child(el("dd").class("whole").child(measure.say(holding.lot.amount, shop.voice())))
        .view()
}

/// The batches it went into.
pub(super) fn went(
    shop: Workshop,
    state: &State,
    ledger: &Ledger,
    (account, holding): (&Account, &Holding),
) -> View {
    let reached = ledger.forward(state, &holding.id);
    if reached.is_empty() {
        return el("p").child("Into no candle so far.").view();
    }
    let row = |reach: &crate::stores::Reach| {
        let plan = &reach.batch.run.plan;
        let candles = reach.batch.filled_vessels().to_string();
        let detail = [
            &candles,
            " × ",
            &plan.vessel,
            ", ",
            &batch_number(reach.batch),
            ", ",
            &keep::day(reach.batch.begun_on(keep::ZONE)),
        ]
        .concat();
        el("li").child(
            el("a")
                .attr("href", ["#pot/record/", &reach.batch.id.0].concat())
                .child(
                    el("span")
                        .class("what")
                        .child(el("span").class("title").child(plan.formula.clone()))
                        .child(el("span").class("detail").child(detail)),
                )
                .child(el("span").class("state").child(account.measure.say(reach.amount, shop.voice()))),
        )
    };
    el("ul").class("list").attr("id", "went").child(reached.iter().map(row).views()).view()
}

/// The sheet that asks for an amount, where there is one, and a reason.
fn ask(shop: Workshop, lot: &Id, what: What, open: Value<bool>) -> View {
    let (amount, reason) = (Typed::new(""), Typed::new(""));
    let measure = shop.state(|s| s.lots.get(lot).and_then(|k| Some(k.body()?.bought.pack.measure())));
    let measure = measure.unwrap_or_default();
    let read = move || measure.read(&amount.get(), shop.voice());
    let lot = lot.clone();
    let save = move || {
        let reason = reason.get();
        if reason.is_empty() {
            return vec!["Say why: it stands in the book for good.".to_owned()];
        }
        let event = match what {
            What::Count => read().map(|left| LotEvent::Counted { left, reason }),
            What::WriteOff => read().map(|amount| LotEvent::WrittenOff { amount, reason }),
            What::Hold => Ok(LotEvent::Held { reason }),
            What::Release => Ok(LotEvent::Released { reason }),
        };
        let left = shop.ledger().with(|l| l.lot(&lot).map_or(Exact::ZERO, |(_, holding)| holding.left));
        match event.and_then(|event| event.within(left, measure, shop.voice())) {
            Ok(event) => {
                if shop.act(Act::AtLot { lot: lot.clone(), event }) {
                    open.set(false);
                }
                Vec::new()
            }
            Err(why) => vec![why],
        }
    };
    let label = match what {
        What::Count => Some("How much is really there"),
        What::WriteOff => Some("How much is gone"),
        What::Hold | What::Release => None,
    };
    group![
        label.map(|label| {
            field(Field::new(label), amount, move || read().map(|a| measure.say(a, shop.voice())))
        }),
        text_field("Why", reason, Vec::new()),
        finish("Keep it", None, save)
    ]
}
