//! "Pour": the fields, the answer beside them, and the one button that starts.

use super::answer::answer;
use super::ask::{Asked, By, Stays, key};
use crate::book::{Act, Id};
use crate::pot::Plan;
use crate::rooms::parts::{Field, Pick, choice, field, mass_field, pick, sentence, share_field, stepper};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

pub(super) fn form(shop: Workshop) -> AnyView {
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
    let plan = Memo::new(move |_| asked.plan(shop));
    view! {
        <h1>"Pour"</h1>
        <div class="pour">
            <div class="wishes">
                {what(shop, asked)}
                {how_many(shop, asked)}
                {circumstances(shop, asked)}
            </div>
            <section class="plan" aria-labelledby="plan-title">
                <h2 id="plan-title">"What goes in"</h2>
                {move || plan.with(|p| match p {
                    Ok(plan) => view! { {answer(shop, plan)} {start_button(shop, asked)} }.into_any(),
                    Err(why) => view! { <p class="none" role="status">{why.clone()}</p> }.into_any(),
                })}
            </section>
        </div>
    }
    .into_any()
}

fn what(shop: Workshop, asked: Asked) -> AnyView {
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
    let first = asked.formula.get_untracked();
    Effect::new(move |before: Option<String>| {
        let now = asked.formula.get();
        if before.unwrap_or_else(|| first.clone()) != now {
            asked.choose(shop, &Id(now.clone()));
        }
        now
    });
    let unnamed = Memo::new(move |_| asked.offer(shop).is_some_and(|o| o.wick.is_none()));
    view! {
        {pick("Formula", asked.formula, formulas)}
        {pick("Vessel", asked.vessel, vessels)}
        {move || unnamed.get().then(|| view! {
            {field(Field::text("Wick").optional(), asked.wick, || Ok(String::new()))}
            {sentence("This formula does not name a wick for this vessel. Burn-test it before you sell any.")}
        })}
    }
    .into_any()
}

fn how_many(shop: Workshop, asked: Asked) -> AnyView {
    let sized = move || match asked.by.get() {
        By::Vessels => stepper("How many vessels", "vessels", asked.vessels),
        By::Total => mass_field(Field::new("Total weight in the pot"), asked.total),
        By::Left => {
            let names = move || {
                let formula = Id(asked.formula.get());
                shop.state(|s| s.ingredients_of(&formula)).into_iter().map(|n| (n.clone(), n)).collect()
            };
            view! {
                {pick("Of what", asked.ingredient, names)}
                {mass_field(Field::new("How much of it is left"), asked.left)}
            }
            .into_any()
        }
    };
    view! {
        {choice("Size the batch by", asked.by, &[
            (By::Vessels, "Vessels"), (By::Total, "Weight"), (By::Left, "What is left"),
        ])}
        {sized}
    }
    .into_any()
}

fn circumstances(shop: Workshop, asked: Asked) -> AnyView {
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
    let stays = move || match asked.stays.get() {
        Stays::Nothing => ().into_any(),
        Stays::Each => mass_field(Field::new("Stays in each pot"), asked.stays_each),
        Stays::OfFilled => share_field(Field::new("Share of what is filled"), asked.stays_share),
    };
    view! {
        {choice("Vessels are", asked.warmed, &[(true, "Warmed"), (false, "Room temperature")])}
        {pick("Pot", asked.pot, pots)}
        {choice("What stays in the pot", asked.stays, &[
            (Stays::Nothing, "Nothing"), (Stays::Each, "A weight"), (Stays::OfFilled, "A share"),
        ])}
        {stays}
    }
    .into_any()
}

fn start_button(shop: Workshop, asked: Asked) -> AnyView {
    let start = move |_| {
        let Ok(plan) = untrack(|| asked.plan(shop)) else { return };
        start(shop, asked, plan);
    };
    view! {
        <div class="start">
            <button type="button" class="main big" id="start-pour" on:click=start>"Start this pour"</button>
        </div>
    }
    .into_any()
}

/// What stays in the pot is remembered for the next pour; then the batch begins.
fn start(shop: Workshop, asked: Asked, plan: Plan) {
    let Some(offer) = untrack(|| asked.offer(shop)) else { return };
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
    if shop.act(Act::Began { batch, formula, version, vessel: offer.vessel, plan: Box::new(plan) }) {
        Asked::forget();
        shop.go("#pot");
    }
}
