//! Pictures drawn by us: the hazard pictograms from the regulation's description (CLP, Annex V), and three for fire.
//!
//! Each is drawn in a square of 100 by 100.

/// How a path is drawn.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Stroke {
    /// Filled black.
    Black,
    /// Filled white.
    White,
    /// A red line around white: the diamond.
    Frame,
    /// A black line, not filled.
    Line,
}

/// A picture, by its place in the table.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Picture(u8);

type Paths = &'static [(Stroke, &'static str)];

const DIAMOND: (Stroke, &str) = (Stroke::Frame, "M50 3.5L96.5 50L50 96.5L3.5 50Z");

/// What it shows, in words for who cannot see it, and its paths.
const TABLE: [(&str, Paths); 9] = [
    (
        "Corrosion",
        &[
            DIAMOND,
            (
                Stroke::Black,
                "M22 62h26v5h-26zM52 62h9l4 4h13v5h-26zM27 31l19-7 2 4-19 7zM56 26l3-4 19 9-3 4z\
M35 38l2.5 5a2.5 2.5 0 1 1-5 0zM35 49l2.5 5a2.5 2.5 0 1 1-5 0zM68 38l2.5 5a2.5 2.5 0 1 1-5 0zM68 49l2.5 5a2.5 2.5 0 1 1-5 0z",
            ),
            (Stroke::White, "M31 61h8l-4 4zM64 61h8l-4 6z"),
        ],
    ),
    (
        "Skull and crossed bones",
        &[
            DIAMOND,
            (
                Stroke::Black,
                "M50 20c-11 0-17 7-17 16 0 6 3 9 6 11v7h22v-7c3-2 6-5 6-11 0-9-6-16-17-16z\
M26 57l3-3 45 18-1 4-4 1-44-17zM74 57l-3-3-45 18 1 4 4 1 44-17z",
            ),
            (
                Stroke::White,
                "M42 33a4.5 4.5 0 1 0 .1 0zM58 33a4.5 4.5 0 1 0 .1 0zM50 43l2.5 5h-5zM45 49h1.5v5H45zM49.3 50h1.5v4h-1.5zM53.5 49H55v5h-1.5z",
            ),
        ],
    ),
    ("Exclamation mark", &[DIAMOND, (Stroke::Black, "M44 22h12l-2.5 34h-7zM50 62a6.5 6.5 0 1 0 .1 0z")]),
    (
        "Health hazard",
        &[
            DIAMOND,
            (
                Stroke::Black,
                "M50 17a9 9 0 0 1 4.5 16.500c-.5 2 .5 3.5 2.5 4.500l11 5c4 2 6 5 6 9l-1 17L50 92 27 69l-1-17c0-4 2-7 6-9l11-5c2-1 3-2.5 2.5-4.500A9 9 0 0 1 50 17z",
            ),
            (Stroke::White, "M50 42l3 10 9-5-5 9 10 3-10 3 5 9-9-5-3 10-3-10-9 5 5-9-10-3 10-3-5-9 9 5z"),
        ],
    ),
    (
        "Environment",
        &[
            DIAMOND,
            (
                Stroke::Black,
                "M33 66V48l-8-8 2-2 6 5V28h3v10l6-7 2 2-8 9v24zM16 66h50v3H16zM47 60c6-9 17-11 26-5l8-5-3 8 3 8-8-4c-9 5-20 4-26-2z",
            ),
            (Stroke::White, "M54 57.500a1.8 1.8 0 1 0 .1 0z"),
        ],
    ),
    (
        "An eye watches a candle",
        &[
            (Stroke::Line, "M6 42C20 20 48 20 62 42C48 62 20 62 6 42ZM68 66h24v28h-24z"),
            (Stroke::Black, "M34 31a11 11 0 1 0 .1 0zM80 36c8 10 8 20 0 26c-8-6-8-16 0-26z"),
            (Stroke::White, "M37 35a3.5 3.5 0 1 0 .1 0z"),
        ],
    ),
    (
        "A candle away from a curtain",
        &[
            (
                Stroke::Line,
                "M6 8h40M10 8c0 30 4 50-4 84M24 8c0 30 4 50-4 84M38 8c0 30 4 50-4 84M66 60h26v34h-26zM46 50h10M50 45l-6 5 6 5",
            ),
            (Stroke::Black, "M79 26c9 11 9 23 0 30c-9-7-9-19 0-30z"),
        ],
    ),
    (
        "A candle away from a child and a pet",
        &[
            (
                Stroke::Line,
                "M22 26v30M22 34l-13 12M22 34l13 12M22 56l-9 24M22 56l9 24M68 62h24v32h-24zM36 84h18M38 84v10M52 84v10M36 84l-3-8M54 84l5-5M54 10L46 94",
            ),
            (
                Stroke::Black,
                "M22 6a10 10 0 1 0 .1 0zM58 76a5 5 0 1 0 .1 0zM80 30c8 10 8 22 0 29c-8-7-8-19 0-29z",
            ),
        ],
    ),
    (
        "Safety alert",
        &[
            (Stroke::Black, "M50 6L97 90H3Z"),
            (Stroke::White, "M45 34h10l-2 30h-6zM50 70a5.5 5.5 0 1 0 .1 0z"),
        ],
    ),
];

impl Picture {
    /// The sign that something may hurt, then one picture for each message of [`super::FIRE`].
    pub const FIRE: [Self; 4] = [Self(8), Self(5), Self(6), Self(7)];

    /// The GHS pictogram of this number, none where candles have none of it.
    pub const fn hazard(number: u8) -> Option<Self> {
        match number {
            5..=9 => Some(Self(number - 5)),
            _ => None,
        }
    }

    pub fn name(self) -> &'static str {
        TABLE.get(usize::from(self.0)).map_or("", |picture| picture.0)
    }

    pub fn paths(self) -> &'static [(Stroke, &'static str)] {
        TABLE.get(usize::from(self.0)).map_or(&[], |picture| picture.1)
    }
}
