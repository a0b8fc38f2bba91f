//! The workshop's rates.

use super::HERE;
use crate::book::Act;
use crate::desk::{Aim, Ask, CHANNELS, FIELDS, Rates};
use crate::dom::*;
use crate::rooms::parts::{Field, Typed, choice, field, finish, page_head};
use crate::rooms::workshop::Workshop;

pub(super) fn page(shop: Workshop) -> View {
    let rates = shop.state(|s| s.rates.clone());
    let texts: Vec<Typed> = rates.texts(shop.voice()).into_iter().map(Typed::new).collect();
    let timed = Value::new(rates.timed);
    let markup = [&rates.retail, &rates.wholesale].map(|c| Value::new(matches!(c.aim, Aim::Markup(_))));
    let mut parts = Vec::new();
    for (at, ((heading, label, hint, ask), typed)) in FIELDS.into_iter().zip(&texts).enumerate() {
        if !heading.is_empty() {
            parts.push(el("h2").child(heading).view());
        }
        if at == 2 {
            parts.push(choice(
                "Work of a batch by",
                timed,
                &[(false, "Minutes"), (true, "The times of its steps")],
            ));
        }
        if let Some((_, markup)) = CHANNELS.into_iter().zip(markup).find(|(first, _)| *first == at) {
            parts.push(choice(
                "Profit as a share of the",
                markup,
                &[(false, "Price: margin"), (true, "Cost: markup")],
            ));
        }
        let keys = match ask {
            Ask::Sign => "text",
            Ask::Count => "numeric",
            Ask::Money | Ask::Number | Ask::Percent => "decimal",
        };
        parts.push(field(Field { keys, ..Field::new(label).hint(hint) }, *typed, || Ok(String::new())));
    }
    let save = move || {
        let typed: Vec<String> = texts.iter().map(|t| t.get()).collect();
        let rates = Rates::read(&typed, timed.get(), markup.map(|m| m.get()), shop.voice());
        match rates.and_then(|r| shop.state(|s| s.refuses(&r).map_or(Ok(r), |why| Err(vec![why])))) {
            Ok(rates) => {
                if shop.act(Act::Rates(Box::new(rates))) {
                    shop.go("#desk/cost");
                }
                Vec::new()
            }
            Err(wrong) => wrong,
        }
    };
    group![
        page_head(HERE, "Desk", "Rates".to_owned()),
        el("p").class("lead").child("They are in the book and hold for every cost and price from now on, those of past batches too. What is not known stays zero."),
        el("div").class("rates").child(parts),
        finish("Keep these rates", Some(HERE), save)
    ]
}
