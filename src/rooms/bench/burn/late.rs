//! A burn that nobody tapped, written down whole when it is over.

use super::light::{throws, weighed};
use super::{HERE, address, does, look};
use crate::bench::burn::{BurnEvent, Course, Trial};
use crate::book::Id;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{Field, Typed, choice, finish, mass_field, missing_page, page_head};
use crate::rooms::workshop::Workshop;
use js_sys::Date;

#[derive(Clone, Copy)]
struct Form {
    lit: Value<String>,
    out: Value<String>,
    seen: Value<String>,
    before: Typed,
    after: Typed,
    trimmed: Value<bool>,
    throw: Value<Option<u32>>,
    itself: Value<bool>,
    look: look::Form,
}

/// A day and time of this device as the browser's own field writes it, milliseconds since 1970.
fn time(text: &str) -> Option<u64> {
    let at = Date::new(&text.into()).get_time();
    (at >= 0.0).then_some(at as u64)
}

impl Form {
    /// What happened, in its order.
    fn events(self, shop: Workshop, trial: &Trial, course: &Course) -> Result<Vec<BurnEvent>, Vec<String>> {
        let mut wrong = Vec::new();
        let times = (time(&self.lit.get()), time(&self.out.get()));
        let (Some(lit), Some(out)) = times else {
            return Err(vec![
                "Choose the day and time at which it was lit, and at which it was out.".to_owned(),
            ]);
        };
        wrong.extend(course.missed(lit, out, keep::now()).err());
        let before = weighed("Before the burn", self.before, trial, None, &mut wrong);
        let weight = before.map(|b| b.value);
        let after = (!self.after.is_empty())
            .then(|| weighed("After the burn", self.after, trial, weight, &mut wrong))
            .flatten();
        // Without a time of its own it was seen at the end.
        let at = time(&self.seen.get()).unwrap_or(out);
        if at < lit || at > out {
            wrong.push("It was seen while it did not burn. Check the time.".to_owned());
        }
        let look = self.look.look(shop, trial, at).unwrap_or_else(|why| {
            wrong.extend(why);
            None
        });
        match before {
            Some(mass) if wrong.is_empty() => {
                let (trimmed, throw) = (self.trimmed.get(), self.throw.get());
                let mut events = vec![BurnEvent::Lit { at: lit, mass, trimmed, throw }];
                events.extend(look.map(|look| BurnEvent::Looked(Box::new(look))));
                events.push(BurnEvent::Out { at: out, mass: after, itself: self.itself.get() });
                Ok(events)
            }
            _ => Err(wrong),
        }
    }
}

fn time_field(label: &'static str, hint: &'static str, optional: bool, value: Value<String>) -> View {
    let id = Workshop::here().fresh_dom_id();
    let said = [&id, "-said"].concat();
    el("div")
        .class("field")
        .child(
            el("label")
                .attr("for", id.clone())
                .child(label)
                .child(optional.then(|| el("span").class("optional").child(" optional"))),
        )
        .child(
            el("input")
                .attr("id", id)
                .attr("type", "datetime-local")
                .attr("aria-describedby", said.clone())
                .prop("value", value)
                .on("input", move |e| value.set(text_of(&e))),
        )
        .child(el("p").class("said").attr("id", said).child(hint))
        .view()
}

pub(super) fn page(shop: Workshop, id: &Id) -> View {
    let Some(trial) = shop.state_untracked(|s| s.trials.get(id)?.body().cloned()) else {
        return missing_page(HERE, "Burn trials", "There is no candle of this address in this book.");
    };
    let text = || Value::new(String::new());
    let form = Form {
        lit: text(),
        out: text(),
        seen: text(),
        before: Typed::new(""),
        after: Typed::new(""),
        trimmed: Value::new(true),
        throw: Value::new(None),
        itself: Value::new(false),
        look: look::Form::new(),
    };
    let (name, id) = (trial.name.clone(), id.clone());
    let save = move || {
        let course = shop.state_untracked(|s| s.course_of(&id));
        match form.events(shop, &trial, &course) {
            Ok(events) => {
                if events.into_iter().all(|event| does(shop, &id, event)) {
                    shop.go(&address(&id));
                }
                Vec::new()
            }
            Err(wrong) => wrong,
        }
    };
    group![
        page_head(HERE, "Burn trials", [&name, ": a burn that is over"].concat()),
        el("p")
            .class("lead")
            .child("For a burn that was noted on paper, or that nobody tapped when it was lit."),
        el("div")
            .class("fields")
            .child(time_field("Lit at", "By this device's clock.", false, form.lit))
            .child(time_field("Out at", "When the flame was out.", false, form.out))
            .child(mass_field(
                Field::new("Before the burn").hint("The candle with its vessel, cold."),
                form.before
            ))
            .child(mass_field(
                Field::new("After the burn").hint("Left empty: not weighed.").optional(),
                form.after
            )),
        choice("The wick", form.trimmed, &[(true, "was trimmed"), (false, "was not trimmed")]),
        choice("It", form.itself, &[(false, "was put out"), (true, "went out by itself")]),
        choice("Cold throw", form.throw, &throws()),
        el("h2").child("What was seen of it"),
        el("div").class("fields").child(time_field("Seen at", "Left empty: at its end.", true, form.seen)),
        form.look.fields(),
        finish("Keep this burn", Some(HERE), save)
    ]
}
