//! One set-up, as it stands in its fields.

use crate::bench::{POURED, PROPERTIES, Properties, Property, Scene, Start, Stuff};
use crate::book::Id;
use crate::dom::*;
use crate::heat::Base;
use crate::keep;
use crate::quantity::{Exact, Temperature, read_number};
use crate::rooms::parts::{Field, Pick, Typed, choice, field, pick, temperature_field};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy, PartialEq)]
enum Warm {
    No,
    Typed,
    Oven,
}

/// The fields of one set-up.
#[derive(Clone, Copy)]
pub(super) struct Form {
    vessel: Value<String>,
    stuff: Value<String>,
    vegetable: Value<bool>,
    /// A wax of the book, by name: what is known of it is filled in.
    wax: Value<String>,
    solid: Typed,
    liquid: Typed,
    /// What is typed for each of [`PROPERTIES`].
    properties: [Typed; PROPERTIES.len()],
    pub(super) pour: Typed,
    warm: Value<Warm>,
    pub(super) vessel_at: Typed,
    minutes: Typed,
    room: Typed,
    base: Value<String>,
    covered: Value<bool>,
    tray: Value<bool>,
    draught: Value<bool>,
}

const STUFF: [(&str, Stuff, &str); 4] = [
    ("glass", Stuff::Glass, "Glass"),
    ("stoneware", Stuff::Stoneware, "Stoneware"),
    ("steel", Stuff::Steel, "Steel tin"),
    ("aluminium", Stuff::Aluminium, "Aluminium tin"),
];

const BASES: [(&str, Base, &str); 3] = [
    ("wood", Base::Wood, "Wood"),
    ("metal", Base::Metal, "Metal, bare"),
    ("rack", Base::Rack, "A wire rack, air beneath"),
];

impl Form {
    pub(super) fn new(shop: Workshop, warmed: bool) -> Self {
        let first = |s: &crate::book::State| {
            s.vessels_shown().iter().find(|k| k.body().is_some_and(known)).map(|k| k.id.0.clone())
        };
        let fahrenheit = shop.temperature_unit() == crate::quantity::TemperatureUnit::Fahrenheit;
        let t = |f: &'static str, c: &'static str| Typed::new(if fahrenheit { f } else { c });
        Self {
            vessel: Value::new(shop.state_untracked(first).unwrap_or_default()),
            stuff: Value::new("glass".to_owned()),
            vegetable: Value::new(true),
            wax: Value::new(String::new()),
            solid: Typed::new(""),
            liquid: Typed::new(""),
            properties: std::array::from_fn(|_| Typed::new("")),
            pour: if warmed { t("165 °F", "74 °C") } else { t("175 °F", "79 °C") },
            warm: Value::new(if warmed { Warm::Typed } else { Warm::No }),
            vessel_at: t("120 °F", "50 °C"),
            minutes: Typed::new("15"),
            // As it was typed at the pot today.
            room: match shop.prefs().with_untracked(|p| p.room_at(keep::now())) {
                Some(at) => Typed::new(shop.voice().amount(at, shop.temperature_unit())),
                None => t("72 °F", "22 °C"),
            },
            base: Value::new("wood".to_owned()),
            covered: Value::new(false),
            tray: Value::new(false),
            draught: Value::new(false),
        }
    }

    /// The set-up that is described, or the first sentence that says why it is none.
    pub(super) fn scene(self, shop: Workshop, factor: f64) -> Result<Scene, String> {
        let at = |typed: Typed| -> Result<Temperature, String> {
            let read = typed.read::<Temperature>(shop.temperature_unit());
            read.map(|t| t.value).map_err(|e| e.to_string())
        };
        let vessel = self.vessel.with(|id| shop.state(|s| s.vessels.get(&Id(id.clone()))?.body().cloned()));
        let vessel = vessel.ok_or_else(|| "Choose a vessel of your book.".to_owned())?;
        let melting = match (self.solid.is_empty(), self.liquid.is_empty()) {
            (true, true) => None,
            _ => Some((at(self.solid)?, at(self.liquid)?)),
        };
        let mut properties = Properties::default();
        for (typed, property) in self.properties.iter().zip(&mut properties) {
            if !typed.is_empty() {
                *property = Some(number(*typed, shop)?.to_f64());
            }
        }
        let start = match self.warm.get() {
            Warm::No => Start::AsTheRoom,
            Warm::Typed => Start::At(at(self.vessel_at)?),
            Warm::Oven => {
                let minutes = self.minutes.count().map_err(|e| e.to_string())?;
                Start::Oven(at(self.vessel_at)?, minutes)
            }
        };
        Ok(Scene {
            vessel,
            stuff: self.stuff.with(|k| chosen(&STUFF, k)).unwrap_or(Stuff::Glass),
            vegetable: self.vegetable.get(),
            melting,
            properties,
            pour: at(self.pour)?,
            start,
            room: at(self.room)?,
            base: self.base.with(|k| chosen(&BASES, k)).unwrap_or(Base::Wood),
            covered: self.covered.get(),
            tray: self.tray.get(),
            draught: self.draught.get(),
            factor,
        })
    }

    /// A field for each property, with what holds while it is empty.
    fn properties(self, shop: Workshop) -> View {
        let one = |(typed, property): (&Typed, &'static Property)| {
            let typed = *typed;
            let of = Field { keys: "decimal", ..Field::new([property.words, ", ", property.unit].concat()) };
            let usual = move || ["Usual: ", &property.usual(self.vegetable.get(), shop.voice())].concat();
            group![field(of.optional(), typed, move || if typed.is_empty() {
                Ok(usual())
            } else {
                number(typed, shop).map(|_| String::new())
            })]
        };
        self.properties.iter().zip(&PROPERTIES).map(one).views().view()
    }

    /// Sets the pour and the vessel to a point of the map.
    pub(super) fn set(self, pour: String, vessel: String) {
        self.pour.text.set(pour);
        self.vessel_at.text.set(vessel);
        self.warm.set(Warm::Typed);
    }

    pub(super) fn fields(self, shop: Workshop) -> View {
        let vessels = move || -> Vec<Pick> {
            let one = |k: &&crate::book::Kept<crate::vessel::Vessel>| {
                let vessel = k.body()?;
                let short = if known(vessel) { "" } else { " (inside or wall not measured)" };
                Some((k.id.0.clone(), [&vessel.name, short].concat()))
            };
            shop.state(|s| s.vessels_shown().iter().filter_map(one).collect())
        };
        let waxes = move || -> Vec<Pick> {
            let known = shop.state(|s| {
                let name = |(name, _): (&str, _)| (name.to_owned(), name.to_owned());
                s.densities().into_iter().map(name).collect::<Vec<Pick>>()
            });
            [(String::new(), "none".to_owned())].into_iter().chain(known).collect()
        };
        let filled = Value::new(String::new());
        watch(move || {
            let wax = self.wax.get();
            let density = shop
                .state_untracked(|s| s.densities().into_iter().find(|(name, _)| *name == wax).map(|d| d.1));
            let Some(typed) = self.properties.get(POURED) else { return };
            let known = density.map(|d| untrack(|| shop.voice()).number(d.in_base()));
            // What was filled in goes with its wax; what was typed stays.
            if known.is_some() || untrack(|| typed.text.get() == filled.get()) {
                let text = known.unwrap_or_default();
                filled.set(text.clone());
                typed.text.set(text);
            }
        });
        let warm = move || match self.warm.get() {
            Warm::No => View::Nothing,
            Warm::Typed => temperature_field(Field::new("Vessel at"), self.vessel_at),
            Warm::Oven => group![
                temperature_field(Field::new("Oven at"), self.vessel_at),
                field(Field { keys: "numeric", ..Field::new("Minutes in it") }, self.minutes, move || {
                    self.minutes.count().map(|_| String::new()).map_err(|e| e.to_string())
                })
            ],
        };
        group![
            el("div")
                .class("fields two")
                .child(pick("Vessel", self.vessel, vessels))
                .child(pick("Made of", self.stuff, || words(&STUFF)))
                .child(choice("Wax", self.vegetable, &[(true, "Vegetable"), (false, "Paraffin")]))
                .child(pick("Its density from", self.wax, waxes))
                .child(temperature_field(Field::new("Pour at"), self.pour))
                .child(choice(
                    "Vessel",
                    self.warm,
                    &[(Warm::No, "As the room"), (Warm::Typed, "Warmed"), (Warm::Oven, "From an oven")],
                ))
                .child(warm)
                .child(temperature_field(Field::new("Room"), self.room))
                .child(pick("Stands on", self.base, || words(&BASES))),
            el("details").child(el("summary").child("Cover, tray, air, melting range")).child(
                el("div")
                    .class("fields two")
                    .child(choice("Top", self.covered, &[(false, "Open"), (true, "Covered")]))
                    .child(choice("Set out", self.tray, &[(false, "Alone"), (true, "Close together")]))
                    .child(choice("Air", self.draught, &[(false, "Still"), (true, "A fan")]))
                    .child(temperature_field(
                        Field::new("Solid below")
                            .optional()
                            .hint("From the supplier's sheet. Left empty: the usual."),
                        self.solid,
                    ))
                    .child(temperature_field(Field::new("Melted above").optional(), self.liquid)),
            ),
            el("details")
                .child(el("summary").child("Properties of the wax"))
                .child(el("div").class("fields two").child(self.properties(shop)))
        ]
    }
}

fn number(typed: Typed, shop: Workshop) -> Result<Exact, String> {
    typed.text.with(|text| read_number(text, shop.locale())).map_err(|e| e.to_string())
}

/// Whether enough of it is measured to say how it cools.
fn known(vessel: &crate::vessel::Vessel) -> bool {
    vessel.inside.is_some() && vessel.wall.is_some()
}

fn chosen<T: Copy>(of: &[(&str, T, &str)], key: &str) -> Option<T> {
    of.iter().find(|(k, ..)| *k == key).map(|(_, value, _)| *value)
}

fn words<T>(of: &[(&str, T, &str)]) -> Vec<Pick> {
    of.iter().map(|(key, _, words)| ((*key).to_owned(), (*words).to_owned())).collect()
}
