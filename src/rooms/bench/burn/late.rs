//! A burn that nobody tapped, written down whole when it is over.

use super::light::{throws, weighed};
use super::{HERE, address, does, look};
use crate::bench::burn::{BurnEvent, Course, Trial, missed};
use crate::book::Id;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{Field, Typed, choice, finish, live, mass_field, missing_page, page_head, press};
use crate::rooms::workshop::Workshop;
use js_sys::Date;

#[derive(Clone, Copy)]
struct Form {
    lit: Value<String>,
    out: Value<String>,
    before: Typed,
    after: Typed,
    trimmed: Value<bool>,
    throw: Value<Option<u32>>,
    itself: Value<bool>,
    looks: Value<Vec<Seen>>,
}

/// One look, and when it was.
#[derive(Clone, Copy)]
struct Seen {
    key: u32,
    at: Value<String>,
    look: look::Form,
}

/// A day and time of this device as the browser's own field writes it, milliseconds since 1970.
fn time(text: &str) -> Option<u64> {
    let at = Date::new(&text.into()).get_time();
    (at >= 0.0).then_some(at as u64)
}

impl Form {
    fn another_look(self) {
        self.looks.update(|all| {
            let key = all.last().map_or(1, |last| last.key + 1);
            all.push(Seen { key, at: Value::new(String::new()), look: look::Form::new() });
        });
    }

    fn burn(self, shop: Workshop, trial: &Trial, course: &Course) -> Result<BurnEvent, Vec<String>> {
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
        let mut looks = Vec::new();
        for seen in self.looks.get() {
            // Without a time of its own it was seen at the end.
            let at = time(&seen.at.get()).unwrap_or(out);
            if at < lit || at > out {
                wrong.push("It was seen while it did not burn. Check the time.".to_owned());
            }
            match seen.look.look(shop, trial, at) {
                Ok(look) => looks.extend(look),
                Err(why) => wrong.extend(why),
            }
        }
        let (trimmed, throw, itself) = (self.trimmed.get(), self.throw.get(), self.itself.get());
        match before {
            Some(mass) if wrong.is_empty() => {
                let lit = BurnEvent::Lit { at: lit, mass, trimmed, throw };
                Ok(missed(lit, looks, BurnEvent::Out { at: out, mass: after, itself }))
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
        before: Typed::new(""),
        after: Typed::new(""),
        trimmed: Value::new(true),
        throw: Value::new(None),
        itself: Value::new(false),
        looks: Value::new(Vec::new()),
    };
    form.another_look();
    let (name, id) = (trial.name.clone(), id.clone());
    let save = move || {
        let course = shop.state_untracked(|s| s.course_of(&id));
        match form.burn(shop, &trial, &course) {
            Ok(burn) => {
                if does(shop, &id, burn) {
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
        each(move || form.looks.get(), |seen| u64::from(seen.key), move |seen| a_look(form, seen)),
        el("p").child(press("", "It was looked at once more", move || form.another_look())),
        finish("Keep this burn", Some(HERE), save)
    ]
}

fn a_look(form: Form, seen: Seen) -> View {
    let remove = move || form.looks.update(|all| all.retain(|other| other.key != seen.key));
    let more_than_one = move || form.looks.with(|all| all.len() > 1);
    el("div")
        .class("a-look")
        .child(el("div").class("fields").child(time_field(
            "Seen at",
            "Left empty: at its end.",
            true,
            seen.at,
        )))
        .child(seen.look.fields())
        .child(live(move || {
            more_than_one().then(|| press("quiet remove", "Leave this look out", remove)).view()
        }))
        .view()
}
