//! Laying a label out: from the top down, the net contents at the foot; nothing smaller than it may be.

use super::block::Block;
use super::content::Content;
use super::foot::{foot, split};
use super::picture::Picture;
use super::width::{line, width};
use super::{Sheet, micrometres};
use crate::desk::code::Code;
use std::fmt;

/// Something drawn, in micrometres from the corner of the label.
#[derive(Clone, PartialEq, Debug)]
pub enum Item {
    /// `x` is its left end, `y` its base line; it is to be drawn exactly `width` wide.
    Words {
        x: i64,
        y: i64,
        size: i64,
        width: i64,
        bold: bool,
        text: String,
    },
    Picture {
        x: i64,
        y: i64,
        side: i64,
        picture: Picture,
    },
    Code {
        x: i64,
        y: i64,
        module: i64,
        code: Code,
    },
}

/// A label laid out.
#[derive(Clone, PartialEq, Debug)]
pub struct Laid {
    pub width: i64,
    pub height: i64,
    pub round: bool,
    pub items: Vec<Item>,
    /// How far the letters of the declaration reach above the lower edge; none where there is none.
    pub reach: Option<i64>,
}

/// What stands on it needs more room than there is. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Overflow {
    pub round: bool,
    /// Whole millimetres: the height (of a round label the diameter) it has, and that which would do; none where not
    /// even three times as much would.
    pub has: i64,
    pub needs: Option<i64>,
}

impl fmt::Display for Overflow {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let what = if self.round { "a diameter" } else { "a height" };
        match self.needs {
            Some(needs) => write!(
                f,
                "It does not fit without letters below their least height: it needs {what} of {needs} mm, and the label \
has {} mm. Take a larger label, or put a part of it on a second one.",
                self.has
            ),
            None => f.write_str(
                "It does not fit, and a larger label of this width would not do. Take a wider label, or put a part of it on \
a second one.",
            ),
        }
    }
}

impl std::error::Error for Overflow {}

/// Kept free along the edge.
pub(super) const EDGE: i64 = 1500;
/// Between blocks.
pub(super) const GAP: i64 = 900;
/// How finely a place is looked for on a round label.
pub(super) const STEP: i64 = 250;

/// The room of one label.
#[derive(Clone, Copy)]
pub(super) struct Room {
    pub(super) width: i64,
    pub(super) height: i64,
    pub(super) round: bool,
}

impl Room {
    /// How wide it is between two heights, and where that begins.
    pub(super) fn across(self, top: i64, bottom: i64) -> i64 {
        if !self.round {
            return self.width - 2 * EDGE;
        }
        let radius = self.width / 2;
        let far = (radius - top).abs().max((bottom - radius).abs());
        let reach = radius - EDGE;
        if far >= reach { 0 } else { 2 * (reach * reach - far * far).isqrt() }
    }

    fn widest(self) -> i64 {
        self.width - 2 * EDGE
    }
}

/// Puts a block at `y` or below, ends at `end` at the latest: what is drawn, and where it ends.
fn put(block: &Block, room: Room, y: i64, end: i64, items: &mut Vec<Item>) -> Option<i64> {
    match block {
        Block::Words { text, size, bold } => {
            let (mut y, mut rest) = (y, text.as_str());
            // A line is 1.2 of the size high: the least that Regulation (EU) 2024/2865 allows.
            let high = size * 6 / 5;
            while !rest.trim().is_empty() {
                if y + high > end {
                    return None;
                }
                let across = room.across(y, y + high);
                let Some((words, more)) = line(rest, *size, *bold, across, room.widest()) else {
                    y += STEP;
                    continue;
                };
                let wide = width(words, *size, *bold);
                let (x, base) = ((room.width - wide) / 2, y + size * 19 / 20);
                let text = words.to_owned();
                items.push(Item::Words { x, y: base, size: *size, width: wide, bold: *bold, text });
                (y, rest) = (y + high, more);
            }
            Some(y)
        }
        Block::Pictures { pictures, side, gap } => {
            let wide = pictures.len() as i64 * (side + gap) - gap;
            let y = place(room, y, end, wide, *side)?;
            for (at, picture) in (0..).zip(pictures) {
                let x = (room.width - wide) / 2 + at * (side + gap);
                items.push(Item::Picture { x, y, side: *side, picture: *picture });
            }
            Some(y + side)
        }
        Block::Code { code, module } => {
            let side = Block::code_side(code, *module);
            let y = place(room, y, end, side, side)?;
            items.push(Item::Code { x: (room.width - side) / 2, y, module: *module, code: code.clone() });
            Some(y + side)
        }
    }
}

/// The first height from `y` on at which something so wide and high has its place.
fn place(room: Room, mut y: i64, end: i64, wide: i64, high: i64) -> Option<i64> {
    while y + high <= end {
        if room.across(y, y + high) >= wide {
            return Some(y);
        }
        if !room.round {
            return None;
        }
        y += STEP;
    }
    None
}

fn try_in(content: &Content, level: usize, room: Room) -> Option<Laid> {
    let mut items = Vec::new();
    let (mut end, mut reach) = (room.height - EDGE, None);
    if let Some((text, size)) = &content.net {
        let foot = split(text).iter().find_map(|lines| foot(lines, *size, room, &mut items))?;
        (end, reach) = (foot.end, Some(foot.reach));
    }
    let net = items.len();
    let mut y = EDGE;
    for (at, block) in content.blocks(level).iter().enumerate() {
        y = put(block, room, if at == 0 { y } else { y + GAP }, end, &mut items)?;
    }
    // What is free is shared above and below, where nothing depends on the height.
    let free = (end - y).max(0) / 2;
    if !room.round {
        for item in items.iter_mut().skip(net) {
            let (Item::Words { y, .. } | Item::Picture { y, .. } | Item::Code { y, .. }) = item;
            *y += free;
        }
    }
    Some(Laid { width: room.width, height: room.height, round: room.round, items, reach })
}

/// Lays a label out: name and pictures as large as there is room for, everything else at its own height.
///
/// # Errors
/// Where it does not fit, with the size that would do.
pub fn lay(content: &Content, sheet: &Sheet) -> Result<Laid, Overflow> {
    let room = Room {
        width: micrometres(sheet.width.value),
        height: micrometres(sheet.height.value),
        round: sheet.round,
    };
    for level in 0..Content::LEVELS {
        if let Some(laid) = try_in(content, level, room) {
            return Ok(laid);
        }
    }
    let has = room.height / 1000;
    let grown = |more: i64| Room {
        width: if room.round { room.width + more * 1000 } else { room.width },
        height: room.height + more * 1000,
        ..room
    };
    let most = (2 * has).clamp(20, 300);
    let needs = (1..=most).find(|more| try_in(content, Content::LEVELS - 1, grown(*more)).is_some());
    Err(Overflow { round: room.round, has, needs: needs.map(|more| has + more) })
}
