//! Rows of cells as text and back.

use super::guard::{guarded, unguarded};
use crate::quantity::Locale;
use std::fmt;

/// The longest text that is read, in bytes.
pub const LARGEST: usize = 5_000_000;
/// The most rows, the head among them.
pub const MOST_ROWS: usize = 20_000;
/// The most cells in a row.
pub const MOST_CELLS: usize = 200;

/// Why a text is not read. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum CsvError {
    Empty,
    TooLong {
        bytes: usize,
    },
    TooManyRows,
    TooManyCells {
        line: usize,
    },
    /// A cell begins with a quotation mark and none ends it.
    Open {
        line: usize,
    },
}

impl fmt::Display for CsvError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str(
                "There is no row in this. The first row names the columns, each further one is a line of the list.",
            ),
            Self::TooLong { bytes } => write!(
                f,
                "This has {bytes} bytes; a list may have {LARGEST}. Split it into several files, then take in each."
            ),
            Self::TooManyRows => {
                write!(f, "This has more than {MOST_ROWS} rows. Split it into several files, then take in each.")
            }
            Self::TooManyCells { line } => write!(
                f,
                "Line {line} has more than {MOST_CELLS} cells. Check how the cells are separated: a comma, a semicolon \
                 or a tab."
            ),
            Self::Open { line } => write!(
                f,
                "The quotation mark that begins a cell in line {line} is never closed. Close it, then try again."
            ),
        }
    }
}

impl std::error::Error for CsvError {}

/// Rows as text. Cells are separated as spreadsheets in this locale expect it: a semicolon where the comma is in
/// numbers. What begins like a formula gets an apostrophe before it, which [`read`] takes away: a cell, and what stands in
/// one after a sign that may be between cells elsewhere.
pub fn write(rows: &[Vec<String>], locale: Locale) -> String {
    // So that spreadsheets know the letters.
    let mut out = String::from("\u{feff}");
    let between = if locale == Locale::Comma { ';' } else { ',' };
    for row in rows {
        for (at, cell) in row.iter().enumerate() {
            if at > 0 {
                out.push(between);
            }
            put(&mut out, cell, row.len() == 1);
        }
        out.push_str("\r\n");
    }
    out
}

fn put(out: &mut String, cell: &str, alone: bool) {
    let text = guarded(cell);
    let plain = cell.trim() == cell
        && !cell.contains([',', ';', '\t', '"', '\r', '\n'])
        && !(alone && cell.is_empty());
    if plain {
        out.push_str(&text);
        return;
    }
    out.push('"');
    for part in text.split_inclusive('"') {
        out.push_str(part);
        if part.ends_with('"') {
            out.push('"');
        }
    }
    out.push('"');
}

/// The sign between cells: of comma, semicolon and tab the one that is most often in the first line with any of
/// them, outside of quotation marks.
fn between(text: &str) -> char {
    let mut counts = [(',', 0), (';', 0), ('\t', 0)];
    let mut quoted = false;
    for sign in text.chars() {
        match sign {
            '"' => quoted = !quoted,
            '\n' | '\r' if !quoted && counts.iter().any(|(_, n)| *n > 0) => break,
            _ if quoted => {}
            _ => counts.iter_mut().filter(|(c, _)| *c == sign).for_each(|(_, n)| *n += 1),
        }
    }
    let mut best = (',', 0);
    for (sign, count) in counts {
        if count > best.1 {
            best = (sign, count);
        }
    }
    best.0
}

struct Reader {
    /// Rows with the line on which each begins, from 1; without those in which every cell is empty.
    rows: Vec<(usize, Vec<String>)>,
    row: Vec<String>,
    cell: String,
    line: usize,
    began: usize,
}

impl Reader {
    fn end_cell(&mut self) -> Result<(), CsvError> {
        let cell = std::mem::take(&mut self.cell);
        if self.row.len() == MOST_CELLS {
            return Err(CsvError::TooManyCells { line: self.began });
        }
        self.row.push(unguarded(&cell));
        Ok(())
    }

    fn end_row(&mut self) -> Result<(), CsvError> {
        self.end_cell()?;
        let row = std::mem::take(&mut self.row);
        if row.iter().any(|cell| !cell.trim().is_empty()) {
            if self.rows.len() == MOST_ROWS {
                return Err(CsvError::TooManyRows);
            }
            self.rows.push((self.began, row));
        }
        self.began = self.line;
        Ok(())
    }
}

/// The rows of a text, each with the number of its line from 1; empty ones are left out. Comma, semicolon or tab may be
/// between cells.
///
/// # Errors
/// Where there is no row, where it is too large, or a quotation mark is open.
pub fn read(text: &str) -> Result<Vec<(usize, Vec<String>)>, CsvError> {
    if text.len() > LARGEST {
        return Err(CsvError::TooLong { bytes: text.len() });
    }
    let text = text.trim_start_matches('\u{feff}');
    let between = between(text);
    let mut reader = Reader { rows: Vec::new(), row: Vec::new(), cell: String::new(), line: 1, began: 1 };
    let mut signs = text.chars().peekable();
    // Where the quotation mark is that is open now.
    let mut open = None;
    // A quotation mark opens a cell only at its beginning.
    let mut fresh = true;
    while let Some(sign) = signs.next() {
        let ended = sign == '\n' || sign == '\r';
        if ended && !(sign == '\r' && signs.peek() == Some(&'\n')) {
            reader.line += 1;
        }
        match sign {
            '"' if open.is_some() => {
                if signs.next_if_eq(&'"').is_some() {
                    reader.cell.push('"');
                } else {
                    open = None;
                }
            }
            _ if open.is_some() => reader.cell.push(sign),
            '"' if fresh => {
                open = Some(reader.line);
                fresh = false;
            }
            _ if sign == between => {
                reader.end_cell()?;
                fresh = true;
            }
            '\r' if signs.peek() == Some(&'\n') => {}
            _ if ended => {
                reader.end_row()?;
                fresh = true;
            }
            _ => {
                reader.cell.push(sign);
                fresh = false;
            }
        }
    }
    if let Some(line) = open {
        return Err(CsvError::Open { line });
    }
    if !reader.cell.is_empty() || !reader.row.is_empty() || !fresh {
        reader.end_row()?;
    }
    if reader.rows.is_empty() { Err(CsvError::Empty) } else { Ok(reader.rows) }
}
