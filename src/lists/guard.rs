//! Cells that a spreadsheet would take for a formula.

/// True for what a spreadsheet would take for a formula.
fn is_formula(cell: &str) -> bool {
    // A plain number may have its sign.
    let number = |text: &str| {
        text.starts_with(|c: char| c.is_ascii_digit())
            && text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ','))
    };
    match cell.chars().next() {
        // Some take the wide signs of East Asian keyboards for the narrow ones, and skip a tab or the end of a line.
        Some('=' | '@' | '＝' | '＠' | '＋' | '－' | '\t' | '\r' | '\n') => true,
        Some(sign @ ('+' | '-')) => !cell.strip_prefix(sign).is_some_and(number),
        _ => false,
    }
}

/// True for a cell that is written, or was, with an apostrophe before it so that it is text.
fn is_guarded(cell: &str) -> bool {
    is_formula(cell.trim_start_matches('\''))
}

/// Between cells, or rows, for one program or another.
const BETWEEN: [char; 5] = [',', ';', '\t', '\r', '\n'];

/// The pieces of a cell that another program may take for a cell each, since it separates them by another sign; with whether
/// one of them is taken for a formula.
fn pieces(cell: &str) -> impl Iterator<Item = (&str, bool)> {
    let mut rest = cell;
    cell.split_inclusive(BETWEEN).enumerate().map(move |(at, piece)| {
        let blank = rest.trim_start_matches('\'').starts_with(BETWEEN);
        let formula = is_guarded(rest) && (at == 0 || !blank);
        rest = rest.get(piece.len()..).unwrap_or_default();
        (piece, formula)
    })
}

/// The cell with an apostrophe before each of its pieces that would be a formula.
pub(super) fn guarded(cell: &str) -> String {
    pieces(cell).flat_map(|(piece, formula)| [if formula { "'" } else { "" }, piece]).collect()
}

/// The cell as it was before that.
pub(super) fn unguarded(cell: &str) -> String {
    let bare = |(piece, formula): (&str, bool)| match piece.strip_prefix('\'') {
        Some(bare) if formula => bare.to_owned(),
        _ => piece.to_owned(),
    };
    pieces(cell).map(bare).collect()
}
