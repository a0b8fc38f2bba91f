//! What an act says, told field by field in words, whatever kind of thing it is about: as it is written.

use crate::wire::Json;

/// What it is of, and what it says: `("parts, Orchard oil, basis", "of wax 8 %")`.
pub type Said = (String, String);

/// One field that is not the same everywhere: what each says of it, in their order; none where one says nothing.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Difference {
    pub of: String,
    pub values: Vec<Option<String>>,
}

/// What an id in a text is called.
pub(super) type Names<'a> = &'a dyn Fn(&str) -> Option<String>;

/// Everything that is said, in order.
pub(super) fn said(json: &Json, names: Names) -> Vec<Said> {
    let mut out = Vec::new();
    say(json, "", names, &mut out);
    out
}

fn say(json: &Json, of: &str, names: Names, out: &mut Vec<Said>) {
    let mut put = |value: &str| out.push((of.to_owned(), value.to_owned()));
    match json {
        Json::Nothing | Json::Null => {}
        Json::Bool(true) => put("yes"),
        Json::Bool(false) => put("no"),
        Json::Number(number) => put(number),
        Json::Text(text) if text.is_empty() => {}
        Json::Text(text) => put(&names(text).unwrap_or_else(|| text.to_string())),
        Json::List(items) => list(items, of, names, out),
        Json::Object(fields) => match fields.as_slice() {
            // One of several kinds, with what it holds.
            [(kind, held)] if kind.starts_with(|c: char| c.is_ascii_uppercase()) => {
                let first = out.len();
                say(held, of, names, out);
                match out.get_mut(first..) {
                    Some([(same, value)]) if same == of => *value = [&words(kind), " ", value].concat(),
                    _ => out.insert(first, (of.to_owned(), words(kind))),
                }
            }
            fields => {
                for (name, value) in fields {
                    say(value, &within(of, &words(name)), names, out);
                }
            }
        },
    }
}

/// Each item under its name, or its number where it has none; and the order of those with names.
fn list(items: &[Json], of: &str, names: Names, out: &mut Vec<Said>) {
    let mut order: Vec<String> = Vec::new();
    for (at, item) in items.iter().enumerate() {
        let number = (at + 1).to_string();
        let name = match named(item, names) {
            Some(name) if order.contains(&name) => [&name, " ", &number].concat(),
            Some(name) => name,
            None => number,
        };
        say(item, &within(of, &name), names, out);
        order.push(name);
    }
    if items.len() > 1 && items.iter().any(|item| named(item, names).is_some()) {
        out.push((within(of, "order"), order.join(", ")));
    }
}

fn named(item: &Json, names: Names) -> Option<String> {
    let Json::Object(fields) = item else { return None };
    fields.iter().find_map(|(field, value)| match (field.as_ref(), value) {
        ("name" | "vessel" | "part", Json::Text(text)) => {
            Some(names(text).unwrap_or_else(|| text.to_string()))
        }
        _ => None,
    })
}

fn within(of: &str, name: &str) -> String {
    if of.is_empty() { name.to_owned() } else { [of, ", ", name].concat() }
}

/// `stir_minutes` and `OfWax` as words.
pub(super) fn words(name: &str) -> String {
    let mut words = String::new();
    for sign in name.chars() {
        if sign.is_ascii_uppercase() && !words.is_empty() {
            words.push(' ');
        }
        words.push(if sign == '_' { ' ' } else { sign.to_ascii_lowercase() });
    }
    words
}

/// Where several tellings are not the same: in the order of the last one, then what only earlier ones say.
pub(super) fn differences(all: &[Vec<Said>]) -> Vec<Difference> {
    let mut found: Vec<Difference> = Vec::new();
    for (of, _) in all.iter().rev().flatten() {
        if found.iter().any(|d| d.of == *of) {
            continue;
        }
        let value = |one: &Vec<Said>| one.iter().find(|(field, _)| field == of).map(|(_, said)| said.clone());
        found.push(Difference { of: of.clone(), values: all.iter().map(value).collect() });
    }
    found.retain(|d| d.values.iter().any(|value| d.values.first() != Some(value)));
    found
}
