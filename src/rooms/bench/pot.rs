//! A melting pot of the workshop: new, changed, or put away.

use super::HERE;
use super::scale::put_away;
use crate::bench::MeltingPot;
use crate::book::{Act, Id};
use crate::dom::*;
use crate::rooms::parts::{Field, Typed, finish, mass_field, page_head, text_field};
use crate::rooms::workshop::Workshop;

fn read(shop: Workshop, name: Typed, capacity: Typed) -> Result<MeltingPot, Vec<String>> {
    let capacity = capacity.read(shop.mass_unit()).map_err(|e| vec![format!("What it holds: {e}")])?;
    let pot = MeltingPot { name: name.get(), capacity };
    match pot.check() {
        Ok(()) => Ok(pot),
        Err(errors) => Err(errors.iter().map(ToString::to_string).collect()),
    }
}

pub(super) fn page(shop: Workshop, id: &Id) -> View {
    let kept = shop.state(|s| s.pots.get(id).cloned());
    let known = kept.as_ref().and_then(|k| k.body());
    let name = Typed::new(known.map_or("", |p| p.name.as_str()));
    let capacity = Typed::amount(known.map(|p| p.capacity));
    let over = kept.as_ref().and_then(|k| k.latest()).map(|v| v.entry.clone());
    let old = kept.as_ref().map(|k| k.id.clone());
    let save = {
        let old = old.clone();
        move || match read(shop, name, capacity) {
            Ok(body) => {
                let id = old.clone().unwrap_or_else(|| shop.new_id());
                if shop.act(Act::Pot { id, over: over.clone(), body }) {
                    shop.go(HERE);
                }
                Vec::new()
            }
            Err(wrong) => wrong,
        }
    };
    group![
        page_head(HERE, "Bench", if old.is_some() { "Pot" } else { "A new pot" }.to_owned()),
        el("p").class("lead").child(
            "A batch too large for the pot is split into equal pours. Leave room to stir \
and for the foam.",
        ),
        text_field("Name", name, Vec::new()),
        mass_field(
            Field::new("What it safely holds").placeholder("4 kg").hint("Weight of wax, with room to stir."),
            capacity,
        ),
        finish("Keep this pot", Some(HERE), save),
        old.map(|id| put_away(shop, id, "Put this pot away"))
    ]
}
