//! What is declared on a label, and by what.

use crate::desk::net::{no_length, nothing};
use crate::dom::*;
use crate::quantity::{Length, Mass};
use crate::rooms::parts::{Field, Typed, choice, length_field, live, mass_field, stepper};
use crate::rooms::workshop::Workshop;

/// A weight, or count and length; neither where the app is to say it.
type Declared = (Option<Mass>, Option<(u32, Length)>);

#[derive(Clone, Copy)]
pub(super) struct Net {
    weight: Typed,
    /// By count and length, not by weight.
    tapers: Value<bool>,
    count: Typed,
    length: Typed,
}

impl Net {
    pub(super) fn new() -> Self {
        Self {
            weight: Typed::new(""),
            tapers: Value::new(false),
            count: Typed::new("2"),
            length: Typed::new("10 in"),
        }
    }

    /// What is typed, or every sentence that says why it cannot be read.
    pub(super) fn read(self, shop: Workshop) -> Result<Declared, Vec<String>> {
        if self.tapers.get() {
            let (count, length) = (self.count.count(), self.length.read::<Length>(shop.voice().length));
            let length = length.map_err(|e| e.to_string()).and_then(|length| {
                no_length(length.value).map_or(Ok(length.value), |why| Err(why.to_owned()))
            });
            return match (count, length) {
                (Ok(count), Ok(length)) => Ok((None, Some((count, length)))),
                (count, length) => {
                    let count = count.err().map(|e| ["Candles in a package: ", &e.to_string()].concat());
                    let length = length.err().map(|e| ["Length of one: ", &e].concat());
                    Err(count.into_iter().chain(length).collect())
                }
            };
        }
        if self.weight.is_empty() {
            return Ok((None, None));
        }
        let read = self.weight.read::<Mass>(shop.mass_unit()).map_err(|why| why.to_string());
        let read =
            read.and_then(|weight| nothing(weight.value).map_or(Ok(weight.value), |why| Err(why.to_owned())));
        match read {
            Ok(weight) => Ok((Some(weight), None)),
            Err(why) => Err(vec![["Net weight to declare: ", &why].concat()]),
        }
    }

    pub(super) fn fields(self) -> View {
        let weight = move || {
            let declared = Field::new("Net weight to declare")
                .optional()
                .hint("Left empty, it is rounded down from the average of the batch; where not every candle was weighed, from no \
more than the planned fill.");
            mass_field(declared, self.weight)
        };
        let tapers = move || {
            el("div")
                .class("fields")
                .child(stepper("Candles in a package", "candles", self.count))
                .child(length_field(Field::new("Length of one").placeholder("10 in"), self.length))
                .view()
        };
        group![
            choice(
                "Declared by",
                self.tapers,
                &[(false, "Weight"), (true, "Count and length: tapers, decorative candles")],
            ),
            live(move || if self.tapers.get() { tapers() } else { weight() })
        ]
    }
}
