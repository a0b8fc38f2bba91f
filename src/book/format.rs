//! The formats that lines were ever written in, and how one becomes the next.

use crate::wire::Json;

/// The version of the entry format written today.
pub const FORMAT: u32 = 2;

/// What makes of the JSON of one format that of the next.
pub type Link = for<'a> fn(Json<'a>) -> Json<'a>;

/// From format 1 to 2, from 2 to 3 and so on. A link, once landed, is never changed: old books are read through it.
pub const LINKS: [Link; FORMAT as usize - 1] = [one_to_two];

/// Format 2 has more kinds of acts, and nothing else is other than it was. Its number keeps an app that knows only
/// format 1 from writing into a book that has such acts.
fn one_to_two(json: Json) -> Json {
    json
}

/// The JSON of a line of `format` as that of today: only what is stored stays as it was. Through every link from its
/// own on.
pub fn today<'a>(format: u32, json: Json<'a>, links: &[Link]) -> Json<'a> {
    let from = format.saturating_sub(1) as usize;
    links.iter().skip(from).fold(json, |json, link| link(json))
}
