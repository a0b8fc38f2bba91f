//! Lists as text for a spreadsheet (CSV, RFC 4180): every list given out, vessels, ingredients and orders taken in.

mod csv;
mod give;
mod guard;
mod made;
mod order;
mod seen;
mod sold;
mod take;

pub use csv::{CsvError, LARGEST, MOST_CELLS, MOST_ROWS, read, write};
pub use give::{LISTS, List, give};
pub use take::{Body, Found, TakeError, Taken, take};
