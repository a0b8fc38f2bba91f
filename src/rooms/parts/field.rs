//! A labelled field that says back how it read what was typed, or what is wrong with it.

use crate::dom::*;
use crate::quantity::{Amount, AmountError, Density, Quantity, read, read_count, read_density, show_exact};
use crate::rooms::workshop::Workshop;

/// A typed text and what it reads as. The text stays as typed whatever it reads as.
#[derive(Clone, Copy)]
pub struct Typed {
    pub text: Value<String>,
    /// Set once the person has left the field or tried to save: only then does an empty field complain.
    pub touched: Value<bool>,
}

impl Typed {
    pub fn new(text: impl Into<String>) -> Self {
        Self { text: Value::new(text.into()), touched: Value::new(false) }
    }

    /// An amount as it was typed, to be changed.
    pub fn amount<Q: Quantity>(amount: Option<Amount<Q>>) -> Self {
        Self::new(amount.map(|a| show_exact(a, Workshop::here().locale())).unwrap_or_default())
    }

    pub fn read<Q: Quantity>(self, unit: Q::Unit) -> Result<Amount<Q>, AmountError> {
        self.text.with(|t| read(t, unit, Workshop::here().locale()))
    }

    pub fn count(self) -> Result<u32, AmountError> {
        self.text.with(|t| read_count(t, Workshop::here().locale()))
    }

    pub fn density(self) -> Result<Density, AmountError> {
        self.text.with(|t| read_density(t, Workshop::here().locale()))
    }

    pub fn is_empty(self) -> bool {
        self.text.with(|t| t.trim().is_empty())
    }

    pub fn get(self) -> String {
        self.text.get().trim().to_owned()
    }
}

/// What a field shows and how it behaves.
#[derive(Clone)]
pub struct Field {
    pub label: String,
    pub hint: String,
    /// Keyboard on a tablet: "decimal", "numeric" or "text".
    pub keys: &'static str,
    pub placeholder: String,
    /// Left empty it is not wrong.
    pub optional: bool,
    /// Names offered while typing.
    pub offers: Vec<String>,
}

impl Field {
    pub fn new(label: impl Into<String>) -> Self {
        Self {
            label: label.into(),
            hint: String::new(),
            keys: "decimal",
            placeholder: String::new(),
            optional: false,
            offers: Vec::new(),
        }
    }
    pub fn text(label: impl Into<String>) -> Self {
        Self { keys: "text", ..Self::new(label) }
    }
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = hint.into();
        self
    }
    #[must_use]
    pub fn placeholder(mut self, text: impl Into<String>) -> Self {
        self.placeholder = text.into();
        self
    }
    #[must_use]
    pub fn optional(mut self) -> Self {
        self.optional = true;
        self
    }
    #[must_use]
    pub fn offers(mut self, names: Vec<String>) -> Self {
        self.offers = names;
        self
    }
}

/// What a text reads as (`Ok("61.0 g")`, may be empty) or what is wrong with it, a whole sentence.
type Echo = Box<dyn Fn() -> Result<String, String>>;

/// `echo` says what the text reads as; see [`Echo`].
pub fn field(field: Field, typed: Typed, echo: impl Fn() -> Result<String, String> + 'static) -> View {
    labelled(field, typed, Box::new(echo))
}

/// The label of the field of this id.
pub(super) fn label_of(id: &str, words: String, optional: bool) -> View {
    let mark = optional.then(|| el("span").class("optional").child(" optional"));
    el("label").attr("for", id.to_owned()).child(words).child(mark).view()
}

/// Not generic, so that the page carries it once.
fn labelled(field: Field, typed: Typed, echo: Echo) -> View {
    let id = Workshop::here().fresh_dom_id();
    let (said, list) = (format!("{id}-said"), format!("{id}-list"));
    let optional = field.optional;
    let echo = Derived::new(move || {
        if typed.is_empty() && (optional || !typed.touched.get()) { Ok(String::new()) } else { echo() }
    });
    let wrong = move || echo.with(Result::is_err);
    let hint = field.hint.clone();
    let offers = field.offers;
    let has_offers = !offers.is_empty();
    el("div")
        .class("field")
        .flag("wrong", wrong)
        .child(label_of(&id, field.label, optional))
        .child(
            el("input")
                .attr("id", id)
                .attr("type", "text")
                .attr("inputmode", field.keys)
                .attr("autocomplete", "off")
                .attr("autocapitalize", if field.keys == "text" { "sentences" } else { "off" })
                .attr("spellcheck", "false")
                .attr("enterkeyhint", "done")
                .attr("placeholder", field.placeholder)
                .attr("list", has_offers.then(|| list.clone()))
                .attr("aria-describedby", said.clone())
                .attr("aria-invalid", move || wrong().then_some("true"))
                .prop("value", typed.text)
                .on("input", move |e| typed.text.set(text_of(&e)))
                .on("blur", move |_| typed.touched.set(true)),
        )
        .child(has_offers.then(|| {
            el("datalist")
                .attr("id", list)
                .child(offers.into_iter().map(|o| el("option").attr("value", o)).views())
        }))
        .child(el("p").class("said").attr("id", said).attr("aria-live", "polite").child(move || {
            match echo.get() {
                Ok(said) if said.is_empty() => hint.clone(),
                Ok(said) | Err(said) => said,
            }
        }))
        .view()
}
