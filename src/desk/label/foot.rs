//! The net contents at the foot of a label.

use super::lay::{EDGE, Item, Room, STEP};
use super::width::width;

/// Where the declaration ended up.
pub(super) struct Foot {
    /// What stands above it ends here.
    pub(super) end: i64,
    /// How far its letters reach above the lower edge of the label.
    pub(super) reach: i64,
}

/// The declaration at the foot, as far down as it has its width: it is to stand in the lowest 30 % of the panel. With its
/// own height free above it, twice an N on either side, and nothing below it (16 CFR 500.6).
pub(super) fn foot(lines: &[String], size: i64, room: Room, items: &mut Vec<Item>) -> Option<Foot> {
    let high = size * 6 / 5;
    // Capitals, figures and brackets are no higher than that in the common faces.
    let free = size * 3 / 4;
    let widest = lines.iter().map(|line| width(line, size, true)).max()?;
    let needs = widest + 4 * width("N", size, true);
    let all = high * lines.len() as i64;
    let mut y = room.height - EDGE - all;
    while room.across(y, y + all) < needs {
        y -= STEP;
        if y < EDGE || !room.round {
            return None;
        }
    }
    for (at, line) in (0..).zip(lines) {
        let wide = width(line, size, true);
        let (x, base) = ((room.width - wide) / 2, y + at * high + size * 19 / 20);
        items.push(Item::Words { x, y: base, size, width: wide, bold: true, text: line.clone() });
    }
    Some(Foot { end: y - free, reach: room.height - (y + size * 19 / 20 - free) })
}

/// A declaration in one line, and in as many as it may be parted into: before its metric half, after “Net wt.” and after a
/// count.
pub(super) fn split(text: &str) -> Vec<Vec<String>> {
    let mut ways = vec![vec![text.to_owned()]];
    if let Some((one, two)) = text.split_once(" (") {
        let metric = ["(", two].concat();
        ways.push(vec![one.to_owned(), metric.clone()]);
        if let Some(weight) = one.strip_prefix("Net wt. ") {
            ways.push(vec!["Net wt.".to_owned(), weight.to_owned(), metric.clone()]);
        }
        if let Some((count, each)) = one.split_once(", ") {
            ways.push(vec![[count, ","].concat(), each.to_owned(), metric]);
        }
    } else if let Some((count, each)) = text.split_once(", ") {
        ways.push(vec![[count, ","].concat(), each.to_owned()]);
    }
    ways
}
