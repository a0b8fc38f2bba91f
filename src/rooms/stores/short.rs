//! "Running short?": how far what is left of one thing goes.

use crate::book::{Id, VesselOffer, Wish};
use crate::dom::*;
use crate::pot::{Outline, Plan, Target};
use crate::rooms::parts::{Field, Pick, Typed, live, mass_field, notes, pick, sentence, why_button};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
struct Short {
    formula: Value<String>,
    /// The number of the vessel among those offered for the formula.
    vessel: Value<String>,
    ingredient: Value<String>,
    left: Typed,
}

impl Short {
    fn formula(self) -> Id {
        Id(self.formula.get())
    }

    fn offers(self, shop: Workshop) -> Vec<VesselOffer> {
        shop.state(|s| s.vessels_for(&self.formula()))
    }

    fn offer(self, shop: Workshop) -> Option<VesselOffer> {
        let n: usize = self.vessel.get().parse().ok()?;
        self.offers(shop).into_iter().nth(n)
    }

    /// What the pour would be; none while nothing is typed.
    fn plan(self, shop: Workshop) -> Option<Result<Outline, String>> {
        let left = self.left.read(shop.mass_unit()).ok()?;
        let offer = self.offer(shop)?;
        let plan = shop.state(|s| {
            // The largest pot splits a batch into the fewest pours.
            let pots = s.pots_shown().into_iter().filter_map(|k| Some((&k.id, k.body()?.capacity.value)));
            let pot = pots.max_by(|(_, a), (_, b)| a.cmp(b)).map(|(id, _)| id.clone());
            let wish = Wish {
                shade: 0,
                formula: self.formula(),
                vessel: offer.vessel,
                wick: offer.wick.unwrap_or_default(),
                target: Target::Left { ingredient: self.ingredient.get(), mass: left },
                residue: s.settings.residue.clone(),
                warmed: false,
                pot,
            };
            s.outline(&wish, shop.voice())
        });
        Some(plan.map(|(plan, _)| plan).map_err(|e| e.say(shop.voice())))
    }

    /// The first vessel and the first ingredient of the formula.
    fn begin(self, shop: Workshop) {
        self.vessel.set("0".to_owned());
        let first = shop.state(|s| s.ingredients_of(&self.formula()).into_iter().next());
        self.ingredient.set(first.unwrap_or_default());
    }
}

pub(super) fn short(shop: Workshop) -> View {
    let first = shop.state(|s| s.formulas_shown().first().map(|k| k.id.0.clone()).unwrap_or_default());
    let short = Short {
        formula: Value::new(first),
        vessel: Value::default(),
        ingredient: Value::default(),
        left: Typed::new(""),
    };
    watch(move || {
        short.formula.track();
        untrack(|| short.begin(shop));
    });
    let formulas = move || -> Vec<Pick> {
        shop.state(|s| {
            s.formulas_shown().iter().filter_map(|k| Some((k.id.0.clone(), k.body()?.name.clone()))).collect()
        })
    };
    let vessels = move || -> Vec<Pick> {
        let words = |o: VesselOffer| match o.wick {
            Some(wick) if !wick.is_empty() => [&o.name, ", wick ", &wick].concat(),
            _ => o.name,
        };
        short.offers(shop).into_iter().enumerate().map(|(n, o)| (n.to_string(), words(o))).collect()
    };
    let names = move || -> Vec<Pick> {
        shop.state(|s| s.ingredients_of(&short.formula())).into_iter().map(|n| (n.clone(), n)).collect()
    };
    let plan = Derived::new(move || short.plan(shop));
    group![
        el("p").class("lead").child(
            "Say what is left of one thing, and see how many vessels it fills and what else \
they need.",
        ),
        el("div")
            .class("fields")
            .child(pick("Formula", short.formula, formulas))
            .child(pick("Vessel", short.vessel, vessels))
            .child(pick("What runs short", short.ingredient, names))
            .child(mass_field(Field::new("How much of it is left").placeholder("350 g"), short.left)),
        el("div").attr("aria-live", "polite").child(live(move || {
            plan.with(|p| match p {
                None => ().view(),
                Some(Err(why)) => sentence(why.clone()),
                Some(Ok(plan)) => answer(shop, short, plan),
            })
        }))
    ]
}

fn answer(shop: Workshop, short: Short, plan: &Plan) -> View {
    let voice = shop.voice();
    let vessels = if plan.vessels == 1 { "1 vessel".to_owned() } else { format!("{} vessels", plan.vessels) };
    let needs = plan
        .needs()
        .into_iter()
        .map(|n| group![el("dt").child(n.name.clone()), el("dd").child(n.say(voice))]);
    let ingredient = short.ingredient.get_untracked();
    let leaves = short.left.read(shop.mass_unit()).ok().map(|left| plan.leaves(&ingredient, left.value));
    let leaves = leaves.map(|over| ["That leaves ", &voice.both(over), " of “", &ingredient, "”."].concat());
    let pour = untrack(|| short.offer(shop)).map(|offer| {
        let address =
            format!("#pot/pour/{}/{}/{}", short.formula.get_untracked(), offer.vessel, plan.vessels);
        el("a").class("button main").attr("href", address).child("Pour these")
    });
    group![
        el("p").class("makes").attr("id", "makes").child(vessels),
        el("p").child(leaves).child(" ").child(why_button(plan.why.clone())),
        notes(&plan.notes),
        el("h3").child("They need"),
        el("dl").class("needs").child(needs.views()),
        el("p").class("actions").child(pour)
    ]
}
