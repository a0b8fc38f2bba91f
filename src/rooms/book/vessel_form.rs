//! The vessel form, and what the vessel holds while it is typed.

use super::base::{Base, End, behind, draft_kept, end, remarks, written};
use super::drafts::{self, Unsaved};
use super::missing;
use crate::book::{Act, Id};
use crate::dom::*;
use crate::quantity::{Amount, Density, Exact, Mass, Quantity, TemperatureUnit, Voice, VolumeUnit};
use crate::rooms::parts::{
    Field, Typed, area, choice, field, length_field, mass_field, page_head, pick, share_field,
    temperature_field, text_field, why_button,
};
use crate::rooms::workshop::Workshop;
use crate::vessel::{Draft, FillKind, FillRule, Vessel, Water, capacity, check, fill, read_weighings};

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    top: Typed,
    bottom: Typed,
    height: Typed,
    water: Typed,
    water_at: Typed,
    rule: Value<FillKind>,
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
            rule: Value::new(draft.rule),
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

pub(super) fn room(shop: Workshop, base: Base) -> View {
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
    let draft = Derived::new(move || form.draft());
    let read = Derived::new(move || draft.with(|d| d.read(shop.voice())));
    let changed = Derived::new(move || draft.with(|d| *d != same));
    let entry = over.as_ref().map(|(entry, _)| entry.clone());
    let opened = entry.clone();
    draft_kept(shop, address.clone(), changed, move || Unsaved::Vessel(draft.get(), opened.clone()));
    let behind = behind(shop, &base, entry, |s, id| Some(s.vessels.get(id)?.latest()?.entry.clone()));
    let tried = Value::new(false);
    watch(move || {
        if tried.get() {
            form.touch();
        }
    });
    let against = Derived::new(move || {
        read.with(|(vessel, problems)| {
            let refused =
                if problems.is_empty() { check(vessel).err().unwrap_or_default() } else { Vec::new() };
            problems.iter().cloned().chain(refused.iter().map(|e| e.say(shop.voice()))).collect()
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
    group![
        page_head("#book", "Book", title),
        remarks(resumed, behind),
        el("form")
            .class("thing")
            .attr("novalidate", true)
            .on("submit", |e| e.prevent_default())
            .child(fields(form))
            .child(holds(shop, Derived::new(move || read.with(|(vessel, _)| vessel.clone()))))
            .child(area("Note", form.note))
            .child(end(
                shop,
                End { save_words: "Save vessel", against, tried, changed, address, origin, save },
            ))
    ]
}

/// An unchanged vessel makes no version.
fn save(shop: Workshop, base: &Base, address: &str, over: Option<(Id, Vessel)>, body: Vessel) {
    let id = base.id(shop);
    let (over, before) = over.unzip();
    let act = (before.as_ref() != Some(&body)).then(|| Act::Vessel { id: id.clone(), over, body });
    written(shop, "vessel", address, &id, act);
}

fn fields(form: Form) -> View {
    let amount = move || match form.rule.get() {
        FillKind::Weight => mass_field(Field::new("Weight in one vessel"), form.fill),
        FillKind::Share => share_field(Field::new("Share of what it holds").placeholder("85 %"), form.fill),
        FillKind::Headspace => {
            length_field(Field::new("Empty below the rim").placeholder("12 mm"), form.fill)
        }
    };
    group![
        text_field("Name of the vessel", form.name, Vec::new()),
        el("section")
            .attr("aria-labelledby", "fill-title")
            .child(el("h2").attr("id", "fill-title").child("Fill"))
            .child(choice(
                "Filled by",
                form.rule,
                &[
                    (FillKind::Weight, "Weight"),
                    (FillKind::Share, "Share of what it holds"),
                    (FillKind::Headspace, "Space below the rim"),
                ],
            ))
            .child(el("div").class("fields").child(amount)),
        el("section")
            .attr("aria-labelledby", "water-title")
            .child(el("h2").attr("id", "water-title").child("What it holds"))
            .child(el("p").class("muted").child(
                "Weighed with water it is known best: fill it to the brim, and type what the \
water weighs.",
            ))
            .child(
                el("div").class("fields").child(water_field(form.water)).child(temperature_field(
                    Field::new("Temperature of the water").optional(),
                    form.water_at,
                )),
            )
            .child(el("p").class("muted").child("Or measured inside. A headspace needs these too."))
            .child(
                el("div")
                    .class("fields")
                    .child(length_field(Field::new("Inside, across the top").optional(), form.top))
                    .child(length_field(
                        Field::new("Inside, across the bottom")
                            .optional()
                            .hint("Left empty: straight sides."),
                        form.bottom,
                    ))
                    .child(length_field(Field::new("Inside, height").optional(), form.height))
                    .child(length_field(
                        Field::new("Wall").optional().hint("How thick; for how it cools."),
                        form.wall,
                    )),
            )
    ]
}

/// One weighing or several.
fn water_field(typed: Typed) -> View {
    let shop = Workshop::here();
    let of = Field { keys: "text", ..Field::new("Water to the brim") }
        .placeholder(Mass::EXAMPLE)
        .hint("Weighed several times: a semicolon between the weights.")
        .optional();
    field(of, typed, move || {
        let voice = shop.voice();
        let mut masses = typed.text.with(|t| read_weighings(t, voice))?.into_iter();
        let mass = masses.next().ok_or_else(String::new)?;
        let at = Amount::new(Exact::ZERO, TemperatureUnit::Celsius);
        Ok(voice.both(Water { mass, at, again: masses.collect() }.mean()))
    })
}

/// What the vessel holds and takes of a wax, with the why of each.
pub(super) fn holds(shop: Workshop, vessel: Derived<Vessel>) -> View {
    let by_weight = Derived::new(move || vessel.with(|v| matches!(v.fill, FillRule::Weight(_))));
    let known = Derived::new(move || {
        shop.state(|s| {
            let dense = s.ingredients_shown().into_iter().filter_map(|k| k.body());
            dense.filter(|i| i.density.is_some()).map(|i| i.name.clone()).collect::<Vec<_>>()
        })
    });
    // A wax that is known says more at once than an empty field.
    let wax = Value::new(known.with_untracked(|k| k.first().cloned().unwrap_or_default()));
    let density = Typed::new("");
    let waxes = move || {
        let typed = (String::new(), "a density typed here".to_owned());
        known.get().into_iter().map(|n| (n.clone(), n)).chain(std::iter::once(typed)).collect()
    };
    let chosen = Derived::new(move || match wax.get() {
        name if name.is_empty() => density.density().ok(),
        name => shop.state(|s| s.ingredient(&name).and_then(|i| i.density)),
    });
    let figures = move || vessel.with(|v| figures(v, chosen.get(), shop.voice()));
    el("section")
        .class("holds")
        .attr("aria-labelledby", "holds-title")
        .child(el("h2").attr("id", "holds-title").child("What goes in"))
        .child(move || {
            (!by_weight.get()).then(|| {
                el("div").class("fields").child(pick("Of which wax", wax, waxes)).child(move || {
                    wax.with(String::is_empty).then(|| {
                        field(
                            Field::new("Density as poured")
                                .placeholder("0.86 g/mL")
                                .hint("Only to look at what goes in. To keep it for a wax, type it at the Bench.")
                                .optional(),
                            density,
                            move || {
                                density.density().map(|d| shop.voice().density(d)).map_err(|e| e.to_string())
                            },
                        )
                    })
                })
            })
        })
        .child(el("dl").class("particulars").attr("aria-live", "polite").child(figures))
        .view()
}

fn figures(vessel: &Vessel, density: Option<Density>, voice: Voice) -> View {
    let one = |name: &'static str, value: String, why| {
        el("div").child(el("dt").child(name)).child(el("dd").child(value).child(why_button(why)))
    };
    let known = vessel.water.is_some() || vessel.inside.is_some();
    let holds = known.then(|| capacity(vessel, voice)).map(|found| match found {
        Ok((volume, why)) => {
            one("Holds to the brim", voice.amount(volume, VolumeUnit::Millilitre), why).view()
        }
        Err(e) => el("div").child(el("dd").class("muted").child(e.say(voice))).view(),
    });
    let takes = match fill(vessel, density, voice) {
        Ok((mass, why)) => one("Fill of one vessel", voice.both(mass), why).view(),
        Err(e) => el("div").child(el("dd").class("muted").child(e.say(voice))).view(),
    };
    group![holds, takes]
}
