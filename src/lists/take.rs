//! Vessels and ingredients out of a list: looked at line by line before any of it is kept.

use super::CsvError;
use super::csv::read;
use super::give::{INGREDIENT, List, VESSEL};
use super::{order, sold};
use crate::bench::Ingredient;
use crate::book::{Act, Id, State};
use crate::quantity::{Length, LengthUnit, Share, ShareUnit, Voice, read as read_amount, read_density};
use crate::shelf::Order;
use crate::text::{key, same};
use crate::vessel::{self, FillKind, Vessel, check};

/// What a list would bring to a book.
#[derive(Clone, PartialEq, Debug)]
pub struct Taken {
    pub found: Vec<Found>,
    /// Columns that are passed over, since no such column is known.
    pub unknown: Vec<String>,
}

/// One row.
#[derive(Clone, PartialEq, Debug)]
pub struct Found {
    /// Of the text, from 1.
    pub line: usize,
    pub name: String,
    /// What it is, or every sentence against it.
    pub body: Result<Body, Vec<String>>,
    /// An order that is here looks the same.
    pub known: bool,
}

/// So many are named.
const NAMED: usize = 5;

impl Taken {
    /// Which orders look as if they were here; nothing is said against them. None where none does.
    pub fn doubled(&self) -> Option<String> {
        let known: Vec<String> = self
            .found
            .iter()
            .filter(|f| f.known)
            .map(|f| ["line ", &f.line.to_string(), ", ", &f.name].concat())
            .collect();
        let (said, rest) = known.split_at(NAMED.min(known.len()));
        let more = match rest.len() {
            0 => String::new(),
            n => ["; and ", &n.to_string(), " more"].concat(),
        };
        let begin = match known.len() {
            0 => return None,
            1 => "1 of these looks as if it was here already: ".to_owned(),
            n => [&n.to_string(), " of these look as if they were here already: "].concat(),
        };
        Some([&begin, &said.join("; "), &more, ". What is taken in stands beside what is here."].concat())
    }
}

#[derive(Clone, PartialEq, Debug)]
pub enum Body {
    Vessel(Vessel),
    Ingredient(Ingredient),
    Order(Order),
}

impl Found {
    /// What would be done to keep it under this id; none where there is something against it.
    pub fn act(&self, id: Id) -> Option<Act> {
        Some(match self.body.as_ref().ok()?.clone() {
            Body::Vessel(body) => Act::Vessel { id, over: None, body },
            Body::Ingredient(body) => Act::Ingredient { id, over: None, body },
            Body::Order(body) => order::act(id, body),
        })
    }
}

/// Why a list is not taken in. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum TakeError {
    Text(CsvError),
    /// The first row does not name this column.
    NoColumn {
        name: &'static str,
        known: String,
    },
    /// Lists of this kind are only given out.
    OnlyGiven,
}

impl std::fmt::Display for TakeError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Text(e) => e.fmt(f),
            Self::NoColumn { name, known } => write!(
                f,
                "The first row does not name a column “{name}”. It names the columns, one of them “{name}”; the others \
                 may be: {known}."
            ),
            Self::OnlyGiven => f.write_str("This list is only given out."),
        }
    }
}

impl std::error::Error for TakeError {}

/// Reads a list of vessels, ingredients or orders with the columns that [`super::give`] writes, in any order; only the
/// first of them must be there. A name that is in the book or earlier in the list is left as it is; rows of orders that
/// name the same order are one.
///
/// # Errors
/// Where the text is no list or has no column of names.
pub fn take(list: List, text: &str, state: &State, voice: Voice) -> Result<Taken, TakeError> {
    let (columns, mut names): (_, Vec<String>) = match list {
        List::Vessels => {
            (VESSEL, state.vessels.values().filter_map(|k| Some(key(&k.body()?.name))).collect())
        }
        List::Ingredients => {
            (INGREDIENT, state.ingredients.values().filter_map(|k| Some(key(&k.body()?.name))).collect())
        }
        List::Orders => (sold::ORDER, Vec::new()),
        _ => return Err(TakeError::OnlyGiven),
    };
    let mut rows = read(text).map_err(TakeError::Text)?.into_iter();
    let (_, head) = rows.next().ok_or(TakeError::Text(CsvError::Empty))?;
    // For each cell of a row, which column it is.
    let places: Vec<_> = head.iter().map(|h| columns.iter().position(|c| same(c, h))).collect();
    if !places.contains(&Some(0)) {
        return Err(TakeError::NoColumn {
            name: columns.first().copied().unwrap_or_default(),
            known: columns.get(1..).unwrap_or_default().join(", "),
        });
    }
    let unknown = head.iter().zip(&places).filter(|(h, p)| p.is_none() && !h.trim().is_empty());
    let unknown = unknown.map(|(h, _)| h.trim().to_owned()).collect();
    let (mut found, mut orders) = (Vec::new(), Vec::new());
    for (line, row) in rows {
        let cell = |column: usize| {
            let at = places.iter().position(|p| *p == Some(column));
            at.and_then(|at| row.get(at)).map_or(String::new(), |c| c.trim().to_owned())
        };
        let name = cell(0);
        let mut body = match list {
            List::Vessels => read_vessel(&cell, voice),
            List::Orders => order::read_order(&cell, state, voice),
            _ => read_ingredient(&cell, voice),
        };
        if row.len() > head.len() && row.iter().skip(head.len()).any(|c| !c.trim().is_empty()) {
            body = Err(vec!["This line has more cells than the first row has names.".to_owned()]);
        }
        if list == List::Orders {
            orders.push(cell(2));
        } else if names.contains(&key(&name)) {
            body = Err(vec![["“", &name, "” is there already; it stays as it is."].concat()]);
        } else if body.is_ok() {
            names.push(key(&name));
        }
        found.push(Found { line, name, body, known: false });
    }
    if list == List::Orders {
        found = order::joined(found, &orders);
        for f in &mut found {
            f.known = matches!(&f.body, Ok(Body::Order(order)) if order::is_here(order, state));
        }
    }
    Ok(Taken { found, unknown })
}

fn read_vessel(cell: &dyn Fn(usize) -> String, voice: Voice) -> Result<Body, Vec<String>> {
    let fill = cell(6);
    // The unit says which way of filling is meant.
    let rule = if fill.contains('%') && read_amount::<Share>(&fill, ShareUnit::Percent, voice.locale).is_ok()
    {
        FillKind::Share
    } else if fill.ends_with(|c: char| c.is_alphabetic() || matches!(c, '"' | '″'))
        && read_amount::<Length>(&fill, LengthUnit::Millimetre, voice.locale).is_ok()
    {
        FillKind::Headspace
    } else {
        FillKind::Weight
    };
    let draft = vessel::Draft {
        name: cell(0),
        top: cell(1),
        bottom: cell(2),
        height: cell(3),
        water: cell(4),
        water_at: cell(5),
        rule,
        fill,
        wall: cell(7),
        note: cell(8),
    };
    let (vessel, mut problems) = draft.read(voice);
    if problems.is_empty() {
        problems.extend(check(&vessel).err().into_iter().flatten().map(|e| e.say(voice)));
    }
    if problems.is_empty() { Ok(Body::Vessel(vessel)) } else { Err(problems) }
}

fn read_ingredient(cell: &dyn Fn(usize) -> String, voice: Voice) -> Result<Body, Vec<String>> {
    let (name, density) = (cell(0), cell(1));
    let mut problems = Vec::new();
    if name.is_empty() {
        problems.push("It has no name. Type one into its first column.".to_owned());
    }
    let density = (!density.is_empty()).then(|| read_density(&density, voice.locale)).transpose();
    let density = density.unwrap_or_else(|e| {
        problems.push(["Density: ", &e.to_string()].concat());
        None
    });
    if problems.is_empty() {
        Ok(Body::Ingredient(Ingredient { name, density, ..Ingredient::default() }))
    } else {
        Err(problems)
    }
}
