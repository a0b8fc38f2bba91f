//! "Pour": the fields, the answer beside them, and the one button that starts.

use super::answer::answer;
use super::ask::{Asked, By, Stays, key};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::keep;
use crate::pot::{Outline, Plan};
use crate::rooms::parts::{
    Field, Pick, choice, field, mass_field, notes, pick, press, sentence, share_field, stepper,
};
use crate::rooms::workshop::Workshop;

/// The plan and the choices of whole drops, or why there is none.
type Planned = Derived<Result<(Outline, Vec<String>), String>>;

pub(super) fn form(shop: Workshop) -> View {
    let asked = Asked::kept(shop);
    let route = shop.route().get_untracked();
    match (route.at(0), route.at(1)) {
        (Some("again"), Some(batch)) => {
            let batch = shop.state_untracked(|s| s.batches.get(&Id(batch.to_owned())).cloned());
            if let Some(batch) = batch {
                asked.again(shop, &batch);
            }
        }
        (Some("pour"), Some(formula)) => {
            asked.choose(shop, &Id(formula.to_owned()));
            if let (Some(vessel), Some(count)) = (route.at(2), route.at(3)) {
                asked.fill(shop, &Id(vessel.to_owned()), count);
            }
        }
        _ => {}
    }
    asked.some_vessel(shop);
    let planned = Derived::new(move || asked.outline(shop));
    let can_start = Derived::new(move || planned.with(Result::is_ok));
    group![
        el("h1").child("Pour"),
        el("div")
            .class("pour")
            .child(
                el("div")
                    .class("wishes")
                    .child(what(shop, asked))
                    .child(how_many(shop, asked))
                    .child(circumstances(shop, asked, planned)),
            )
            .child(
                el("section")
                    .class("plan")
                    .attr("aria-labelledby", "plan-title")
                    .child(el("h2").attr("id", "plan-title").child("What goes in"))
                    .child(move || planned.with(|p| p.as_ref().ok().map(|(plan, _)| of_stores(shop, plan))))
                    .child(move || {
                        planned.with(|p| match p {
                            Ok((plan, _)) => answer(shop, asked, plan),
                            Err(why) => {
                                el("p").class("none").attr("role", "status").child(why.clone()).view()
                            }
                        })
                    })
                    .child(move || can_start.get().then(|| start_button(shop, asked))),
            )
    ]
}

/// What the stores say of it: in a large book a moment later, for the rest does not wait for that.
fn of_stores(shop: Workshop, plan: &Plan) -> View {
    if !shop.at_rest() {
        return ().view();
    }
    notes(&shop.ledger().with(|l| l.sources(plan, keep::today(), shop.voice()).1))
}

fn what(shop: Workshop, asked: Asked) -> View {
    let formulas = move || {
        let pick = |k: &crate::book::Kept<crate::formula::Formula>| -> Option<Pick> {
            Some((k.id.0.clone(), k.body()?.name.clone()))
        };
        shop.state(|s| s.formulas_shown().into_iter().filter_map(pick).collect())
    };
    let vessels = move || {
        let words = |wick: Option<&str>, name: &str| match wick {
            Some("") => name.to_owned(),
            Some(wick) => format!("{name}, wick {wick}"),
            None => format!("{name} (not in this formula)"),
        };
        asked.offers(shop).iter().map(|o| (key(o), words(o.wick.as_deref(), &o.name))).collect()
    };
    // Another formula brings its own vessel and its own size of batch.
    let mut before = asked.formula.get_untracked();
    watch(move || {
        let now = asked.formula.get();
        if before != now {
            asked.choose(shop, &Id(now.clone()));
            before = now;
        }
    });
    let add = || el("a").class("button main").attr("href", "#book/vessel/new").child("Add a vessel");
    let no_vessel = move || asked.offers(shop).is_empty().then(|| el("p").class("actions").child(add()));
    let unnamed = Derived::new(move || asked.offer.with(|o| o.as_ref().is_some_and(|o| o.wick.is_none())));
    group![
        pick("Formula", asked.formula, formulas),
        pick("Vessel", asked.vessel, vessels),
        no_vessel,
        move || unnamed.get().then(|| group![
            field(Field::text("Wick").optional(), asked.wick, || Ok(String::new())),
            sentence("This formula does not name a wick for this vessel. Burn-test it before you sell any.")
        ])
    ]
}

fn how_many(shop: Workshop, asked: Asked) -> View {
    let sized = move || match asked.by.get() {
        By::Vessels => stepper("How many vessels", "vessels", asked.vessels),
        By::Total => mass_field(Field::new("Total weight in the pot"), asked.total),
        By::Left => {
            let names = move || {
                let formula = Id(asked.formula.get());
                shop.state(|s| s.ingredients_of(&formula)).into_iter().map(|n| (n.clone(), n)).collect()
            };
            group![
                pick("Of what", asked.ingredient, names),
                mass_field(Field::new("How much of it is left"), asked.left)
            ]
        }
    };
    group![
        choice(
            "Size the batch by",
            asked.by,
            &[(By::Vessels, "Vessels"), (By::Total, "Weight"), (By::Left, "What is left")],
        ),
        sized
    ]
}

fn circumstances(shop: Workshop, asked: Asked, planned: Planned) -> View {
    let pots = move || {
        let one_pour = (String::new(), "Any pot that holds it all".to_owned());
        let pots = shop.state(|s| {
            let pick = |k: &crate::book::Kept<crate::bench::MeltingPot>| -> Option<Pick> {
                let pot = k.body()?;
                Some((k.id.0.clone(), format!("{}, holds {}", pot.name, shop.voice().typed(pot.capacity))))
            };
            s.pots_shown().into_iter().filter_map(pick).collect::<Vec<_>>()
        });
        std::iter::once(one_pour).chain(pots).collect()
    };
    // For another number of vessels the choices are others: then the nearest is taken again.
    let shades = Derived::new(move || planned.with(|p| p.as_ref().map(|p| p.1.clone()).unwrap_or_default()));
    watch(move || {
        shades.track();
        // Set where it is another only: what is set is planned anew.
        if asked.shade.with_untracked(|s| s != "0") {
            asked.shade.set("0".to_owned());
        }
    });
    let many = Derived::new(move || shades.with(|all| all.len() > 1));
    let drops = move || {
        let picks = move || {
            shades
                .with(|all| all.iter().enumerate().map(|(n, words)| (n.to_string(), words.clone())).collect())
        };
        many.get().then(|| pick("Drops", asked.shade, picks))
    };
    let stays = move || match asked.stays.get() {
        Stays::Nothing => ().view(),
        Stays::Each => mass_field(Field::new("Stays in each pot"), asked.stays_each),
        Stays::OfFilled => share_field(Field::new("Share of what is filled"), asked.stays_share),
    };
    group![
        choice("Vessels are", asked.warmed, &[(true, "Warmed"), (false, "Room temperature")]),
        drops,
        pick("Pot", asked.pot, pots),
        choice(
            "What stays in the pot",
            asked.stays,
            &[(Stays::Nothing, "Nothing"), (Stays::Each, "A weight"), (Stays::OfFilled, "A share")],
        ),
        stays
    ]
}

fn start_button(shop: Workshop, asked: Asked) -> View {
    let start = move |_| {
        if let Ok(plan) = untrack(|| asked.plan(shop)) {
            start(shop, asked, plan);
        }
    };
    el("div")
        .class("start")
        .child(
            el("button")
                .attr("type", "button")
                .class("main big")
                .attr("id", "start-pour")
                .on("click", start)
                .child("Start this pour"),
        )
        .child(el("p").class("actions").child(press("", "Print this sheet", keep::print)))
        .view()
}

/// What stays in the pot is remembered for the next pour; then the batch begins.
fn start(shop: Workshop, asked: Asked, plan: Plan) {
    let Some(offer) = asked.offer.get_untracked() else { return };
    let formula = Id(asked.formula.get_untracked());
    let version = shop.state_untracked(|s| Some(s.formulas.get(&formula)?.latest()?.entry.clone()));
    let Some(version) = version else { return };
    if let Ok(residue) = untrack(|| asked.residue(shop)) {
        let mut settings = shop.state_untracked(|s| s.settings.clone());
        if settings.residue != residue {
            settings.residue = residue;
            shop.act(Act::Settings(settings));
        }
    }
    let batch = shop.new_id();
    let (sources, _) = untrack(|| shop.ledger().with(|l| l.sources(&plan, keep::today(), shop.voice())));
    let taken = Act::TakenFrom { batch: batch.clone(), sources };
    let day = Some(keep::today());
    if shop.act(Act::Began { batch, formula, version, vessel: offer.vessel, day, plan: plan.into() }) {
        if !matches!(&taken, Act::TakenFrom { sources, .. } if sources.is_empty()) {
            shop.act(taken);
        }
        Asked::forget();
        shop.go("#pot");
    }
}
