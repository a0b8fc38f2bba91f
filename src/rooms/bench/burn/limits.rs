//! The workshop's own limits for a candle on trial.

use super::{HERE, noted};
use crate::bench::burn::{Grade, Limits};
use crate::book::Act;
use crate::dom::*;
use crate::rooms::parts::{
    Field, Typed, choice, field, finish, length_field, page_head, press, temperature_field,
};
use crate::rooms::workshop::Workshop;

pub(super) fn page(shop: Workshop) -> View {
    let now = shop.state(|s| s.limits.clone());
    let flame = Typed::amount(Some(now.flame));
    let depth = Typed::amount(Some(now.depth));
    let outside = Typed::amount(Some(now.outside));
    let trim = Typed::amount(Some(now.trim));
    let minutes = [now.full, now.longest, now.rest].map(|m| Typed::new(m.to_string()));
    let grades = [now.soot, now.mushroom, now.hang_up].map(Value::new);
    let save = move || {
        let mut wrong = Vec::new();
        let length = shop.voice().length;
        let [full, longest, rest] = minutes.map(|m| noted("Minutes", m.count(), &mut wrong));
        let lengths = [(flame, "Flame"), (depth, "Pool deep"), (trim, "Trim")]
            .map(|(typed, what)| noted(what, typed.read(length), &mut wrong));
        let outside = noted("Vessel outside", outside.read(shop.temperature_unit()), &mut wrong);
        let [soot, mushroom, hang_up] = grades.map(|g| g.get());
        if let (
            [Some(flame), Some(depth), Some(trim)],
            Some(outside),
            Some(full),
            Some(longest),
            Some(rest),
        ) = (lengths, outside, full, longest, rest)
        {
            let limits = Limits { flame, depth, outside, full, longest, rest, trim, soot, mushroom, hang_up };
            if shop.act(Act::Limits(Box::new(limits))) {
                shop.go(HERE);
            }
        }
        wrong
    };
    let usual = move || {
        if shop.act(Act::Limits(Box::default())) {
            shop.go(HERE);
        }
    };
    let counted = |typed: Typed, label: &'static str, hint: &'static str| {
        let of = Field { keys: "numeric", ..Field::new(label).hint(hint) };
        field(of, typed, move || typed.count().map(|_| String::new()).map_err(|e| e.to_string()))
    };
    let [full, longest, rest] = minutes;
    let [soot, mushroom, hang_up] = grades;
    let allowed = [Grade::None, Grade::Little, Grade::Much].map(|g| (g, g.name()));
    group![
        page_head(HERE, "Burn trials", "My limits".to_owned()),
        el("p").class("lead").child(
            "What a candle of yours has to keep to. Where no standard is named, the usual figure is common practice. Check \
your own copy of the standard that your market asks for.",
        ),
        el("div")
            .class("fields")
            .child(length_field(Field::new("Highest flame").hint("Usually 75 mm (ASTM F2417-23, from memory; your own copy decides)."), flame))
            .child(length_field(Field::new("Deepest pool").hint("Usually ½ in, common practice."), depth))
            .child(temperature_field(Field::new("Vessel outside, hottest").hint("Usually 60 °C, common practice."), outside))
            .child(length_field(Field::new("Trim the wick to").hint("Usually ¼ in, common practice."), trim))
            .child(counted(full, "Full pool within, minutes", "Usually 240, common practice."))
            .child(counted(longest, "Longest burn, minutes", "Usually 240 (EN 15426:2018)."))
            .child(counted(rest, "Shortest rest, minutes", "Usually 60 (EN 15426:2018).")),
        choice("Soot, at most", soot, &allowed),
        choice("Mushroom, at most", mushroom, &allowed),
        choice("Wax left on the wall, at most", hang_up, &allowed),
        finish("Keep these limits", Some(HERE), save),
        el("p").class("away").child(press("quiet", "The usual limits again", usual))
    ]
}
