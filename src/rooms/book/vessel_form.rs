//! The vessel form, and what the vessel holds while it is typed.

use super::base::{Base, End, behind, draft_kept, end, remarks, written};
use super::drafts::{self, Unsaved};
use super::missing;
use crate::book::{Act, Id};
use crate::quantity::{Density, Voice, VolumeUnit};
use crate::rooms::parts::{
    Field, Typed, area, choice, field, length_field, mass_field, page_head, pick, share_field,
    temperature_field, text_field, why_button,
};
use crate::rooms::workshop::Workshop;
use crate::vessel::{Draft, FillKind, FillRule, Vessel, capacity, check, fill};
use leptos::prelude::*;

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    top: Typed,
    bottom: Typed,
    height: Typed,
    water: Typed,
    water_at: Typed,
    rule: RwSignal<FillKind>,
    fill: Typed,
    wall: Typed,
    note: Typed,
}

impl Form {
    fn of(draft: &Draft) -> Self {
        let typed = |text: &String| Typed::new(text.clone());
        Self {
            name: typed(&draft.name),
            top: typed(&draft.top),
            bottom: typed(&draft.bottom),
            height: typed(&draft.height),
            water: typed(&draft.water),
            water_at: typed(&draft.water_at),
            rule: RwSignal::new(draft.rule),
            fill: typed(&draft.fill),
            wall: typed(&draft.wall),
            note: typed(&draft.note),
        }
    }

    fn draft(self) -> Draft {
        Draft {
            name: self.name.text.get(),
            top: self.top.text.get(),
            bottom: self.bottom.text.get(),
            height: self.height.text.get(),
            water: self.water.text.get(),
            water_at: self.water_at.text.get(),
            rule: self.rule.get(),
            fill: self.fill.text.get(),
            wall: self.wall.text.get(),
            note: self.note.text.get(),
        }
    }

    fn touch(self) {
        let all = [self.name, self.top, self.height, self.water, self.water_at, self.fill, self.wall];
        all.into_iter().for_each(|t| t.touched.set(true));
    }
}

/// What a form was opened with.
struct Start {
    /// What it would be unchanged.
    same: Draft,
    /// The version it changes.
    over: Option<(Id, Vessel)>,
    name: String,
}

fn start(shop: Workshop, base: &Base) -> Option<Start> {
    let voice = shop.voice();
    let version = shop.state_untracked(|s| {
        base.version(base.thing().and_then(|id| s.vessels.get(id))).map(|v| (v.entry.clone(), v.body.clone()))
    });
    let (same, over, name) = match (base, version) {
        (Base::New, _) => (Draft::default(), None, String::new()),
        (_, None) => return None,
        (Base::Copy(..), Some((_, body))) => {
            let mut draft = Draft::of(&body, voice);
            draft.name = format!("{} (copy)", body.name);
            (draft, None, body.name)
        }
        (Base::Change(_), Some((entry, body))) => {
            (Draft::of(&body, voice), Some((entry, body.clone())), body.name)
        }
    };
    Some(Start { same, over, name })
}

pub(super) fn room(shop: Workshop, base: Base) -> AnyView {
    let address = base.address("vessel");
    let Some(Start { same, over, name }) = start(shop, &base) else {
        return missing("No vessel of this address is in this book.");
    };
    let (unsaved, opened) = match drafts::get(shop, &address) {
        Some(Unsaved::Vessel(draft, opened)) => (Some(draft), opened),
        _ => (None, None),
    };
    let resumed = unsaved.is_some();
    let form = Form::of(unsaved.as_ref().unwrap_or(&same));
    let over = over.map(|(entry, body)| (opened.unwrap_or(entry), body));
    let draft = Memo::new(move |_| form.draft());
    let read = Memo::new(move |_| draft.with(|d| d.read(shop.voice())));
    let changed = Memo::new(move |_| draft.with(|d| *d != same));
    let entry = over.as_ref().map(|(entry, _)| entry.clone());
    let opened = entry.clone();
    draft_kept(shop, address.clone(), changed, move || Unsaved::Vessel(draft.get(), opened.clone()));
    let behind = behind(shop, &base, entry, |s, id| Some(s.vessels.get(id)?.latest()?.entry.clone()));
    let tried = RwSignal::new(false);
    Effect::new(move |_| {
        if tried.get() {
            form.touch();
        }
    });
    let against = Signal::derive(move || {
        read.with(|(vessel, problems)| {
            let refused =
                if problems.is_empty() { check(vessel).err().unwrap_or_default() } else { Vec::new() };
            problems.iter().cloned().chain(refused.iter().map(ToString::to_string)).collect()
        })
    });
    let title = base.title("vessel", &name);
    let origin = base.origin("vessel");
    let save = {
        let address = address.clone();
        Callback::new(move |()| {
            let body = read.with_untracked(|(vessel, _)| vessel.clone());
            save(shop, &base, &address, over.clone(), body);
        })
    };
    view! {
        {page_head("#book", "Book", title)}
        {remarks(resumed, behind)}
        <form class="thing" novalidate on:submit=|e| e.prevent_default()>
            {fields(form)}
            {holds(shop, Signal::derive(move || read.with(|(vessel, _)| vessel.clone())))}
            {area("Note", form.note)}
            {end(shop, End { save_words: "Save vessel", against, tried, changed: changed.into(), address, origin, save })}
        </form>
    }
    .into_any()
}

/// An unchanged vessel makes no version.
fn save(shop: Workshop, base: &Base, address: &str, over: Option<(Id, Vessel)>, body: Vessel) {
    let id = base.id(shop);
    let (over, before) = over.unzip();
    let act = (before.as_ref() != Some(&body)).then(|| Act::Vessel { id: id.clone(), over, body });
    written(shop, "vessel", address, &id, act);
}

fn fields(form: Form) -> AnyView {
    let amount = move || match form.rule.get() {
        FillKind::Weight => mass_field(Field::new("Weight in one vessel"), form.fill),
        FillKind::Share => share_field(Field::new("Share of what it holds").placeholder("85 %"), form.fill),
        FillKind::Headspace => {
            length_field(Field::new("Empty below the rim").placeholder("12 mm"), form.fill)
        }
    };
    view! {
        {text_field("Name of the vessel", form.name, Vec::new())}
        <section aria-labelledby="fill-title">
            <h2 id="fill-title">"Fill"</h2>
            {choice("Filled by", form.rule, &[
                (FillKind::Weight, "Weight"),
                (FillKind::Share, "Share of what it holds"),
                (FillKind::Headspace, "Space below the rim"),
            ])}
            <div class="fields">{amount}</div>
        </section>
        <section aria-labelledby="water-title">
            <h2 id="water-title">"What it holds"</h2>
            <p class="muted">"Weighed with water it is known best: fill it to the brim, and type what the water weighs."</p>
            <div class="fields">
                {mass_field(Field::new("Water to the brim").optional(), form.water)}
                {temperature_field(Field::new("Temperature of the water").optional(), form.water_at)}
            </div>
            <p class="muted">"Or measured inside. A headspace needs these too."</p>
            <div class="fields">
                {length_field(Field::new("Inside, across the top").optional(), form.top)}
                {length_field(
                    Field::new("Inside, across the bottom").optional().hint("Left empty: straight sides."),
                    form.bottom,
                )}
                {length_field(Field::new("Inside, height").optional(), form.height)}
                {length_field(Field::new("Wall").optional().hint("How thick; for how it cools."), form.wall)}
            </div>
        </section>
    }
    .into_any()
}

/// What the vessel holds and takes of a wax, with the why of each.
pub(super) fn holds(shop: Workshop, vessel: Signal<Vessel>) -> AnyView {
    let by_weight = Memo::new(move |_| vessel.with(|v| matches!(v.fill, FillRule::Weight(_))));
    let known = Memo::new(move |_| {
        shop.state(|s| {
            let dense = s.ingredients_shown().into_iter().filter_map(|k| k.body());
            dense.filter(|i| i.density.is_some()).map(|i| i.name.clone()).collect::<Vec<_>>()
        })
    });
    // A wax that is known says more at once than an empty field.
    let wax = RwSignal::new(known.with_untracked(|k| k.first().cloned().unwrap_or_default()));
    let density = Typed::new("");
    let waxes = move || {
        let typed = (String::new(), "a density typed here".to_owned());
        known.get().into_iter().map(|n| (n.clone(), n)).chain(std::iter::once(typed)).collect()
    };
    let chosen = Memo::new(move |_| match wax.get() {
        name if name.is_empty() => density.density().ok(),
        name => shop.state(|s| s.ingredient(&name).and_then(|i| i.density)),
    });
    let figures = move || vessel.with(|v| figures(v, chosen.get(), shop.voice()));
    view! {
        <section class="holds" aria-labelledby="holds-title">
            <h2 id="holds-title">"What goes in"</h2>
            {move || (!by_weight.get()).then(|| view! {
                <div class="fields">
                    {pick("Of which wax", wax, waxes)}
                    {move || wax.with(String::is_empty).then(|| field(
                        Field::new("Density as poured").placeholder("0.86 g/mL").optional(),
                        density,
                        move || {
                            density.density().map(|d| shop.voice().density(d)).map_err(|e| e.to_string())
                        },
                    ))}
                </div>
            })}
            <dl class="particulars" aria-live="polite">{figures}</dl>
        </section>
    }
    .into_any()
}

fn figures(vessel: &Vessel, density: Option<Density>, voice: Voice) -> AnyView {
    let one = |name: &'static str, value: String, why| {
        view! { <div><dt>{name}</dt><dd>{value}{why_button(why)}</dd></div> }
    };
    let known = vessel.water.is_some() || vessel.inside.is_some();
    let holds = known.then(|| capacity(vessel, voice)).map(|found| match found {
        Ok((volume, why)) => {
            one("Holds to the brim", voice.amount(volume, VolumeUnit::Millilitre), why).into_any()
        }
        Err(e) => view! { <div><dd class="muted">{e.to_string()}</dd></div> }.into_any(),
    });
    let takes = match fill(vessel, density, voice) {
        Ok((mass, why)) => one("Fill of one vessel", voice.both(mass), why).into_any(),
        Err(e) => view! { <div><dd class="muted">{e.to_string()}</dd></div> }.into_any(),
    };
    view! { {holds} {takes} }.into_any()
}
