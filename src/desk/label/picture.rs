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
                "M29 37l16-7 2.2 5-16 7zM71 37l-16-7-2.2 5 16 7z\
M33 44l2.5 5a2.5 2.5 0 1 1-5 0zM33 53l2.5 5a2.5 2.5 0 1 1-5 0zM67 44l2.5 5a2.5 2.5 0 1 1-5 0zM67 52l2.5 5a2.5 2.5 0 1 1-5 0z\
M25 63h21v4.5h-21zM52 65c0-1.5 1-2.2 2.5-2.2h9.5l3.5 2.5 3.5-3.5c2-1.5 4 .5 2.6 2.5l-6.6 6h-12.5c-1.5 0-2.5-2.5-2.5-5.3z",
            ),
            (Stroke::White, "M29 62.5h8l-2 1.5-1 1.5-1-.8-1 1.6z M62 62h7l-1.5 3-2 .6z"),
        ],
    ),
    (
        "Skull and crossed bones",
        &[
            DIAMOND,
            (Stroke::Line, "M34 59.5L66 71M66 59.5L34 71"),
            (
                Stroke::Black,
                "M50 19c-11 0-17 7-17 16 0 6 3 9 6 11v7h22v-7c3-2 6-5 6-11 0-9-6-16-17-16z\
M33 56.5a2.6 2.6 0 1 0 .1 0zM31.5 59.5a2.6 2.6 0 1 0 .1 0zM67 56.5a2.6 2.6 0 1 0 .1 0zM68.5 59.5a2.6 2.6 0 1 0 .1 0z\
M32.5 68a2.6 2.6 0 1 0 .1 0zM34.5 70a2.6 2.6 0 1 0 .1 0zM67.5 68a2.6 2.6 0 1 0 .1 0zM65.5 70a2.6 2.6 0 1 0 .1 0z",
            ),
            (
                Stroke::White,
                "M42 32a4.5 4.5 0 1 0 .1 0zM58 32a4.5 4.5 0 1 0 .1 0zM50 42l2.5 5h-5zM45 48h1.5v5H45zM49.3 49h1.5v4h-1.5zM53.5 48H55v5h-1.5z",
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
                "M50 17a9 9 0 0 1 4.5 16.5c-.5 2 .5 3.5 2.5 4.5l11 5c4 2 6 5 6 9l-1 15L50 90 27 67l-1-15c0-4 2-7 6-9l11-5c2-1 3-2.5 2.5-4.5A9 9 0 0 1 50 17z",
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
                "M34 63V48l-8-7 1.8-2 6.2 4.5V26h3v9l6-6 2 2-8 8.5v4l6-4 1.5 2-7.5 6.5v15zM24 63h34v3H24z\
M43 57c6-9 16-10 24-4.5l9-4.5-3.5 7.5 3.5 7.5-9-3c-8 4.5-18 4-24-3z",
            ),
            (Stroke::White, "M50 54a1.8 1.8 0 1 0 .1 0z"),
        ],
    ),
    (
        "An eye watches a candle",
        &[
            (Stroke::Line, "M6 36C20 13 48 13 62 36C48 59 20 59 6 36ZM68 62h26v32h-26zM81 56v6"),
            (Stroke::Black, "M34 24a12 12 0 1 0 .1 0zM81 30c8 10 8 21 0 27c-8-6-8-17 0-27z"),
            (Stroke::White, "M38 28a4 4 0 1 0 .1 0z"),
        ],
    ),
    (
        "A candle away from a curtain",
        &[
            (Stroke::Line, "M5 9h40M68 62h26v32h-26zM81 56v6M44 48h16M48 43l-5 5 5 5M56 43l5 5-5 5"),
            (
                Stroke::Black,
                "M9 11h31c0 32-3 48-11 58 5 7 5 14 3 25H9c3-28 2-56 0-83zM81 30c8 10 8 21 0 27c-8-6-8-17 0-27z",
            ),
            (
                Stroke::White,
                "M17 15h2c2 26 2 51-1 75h-2c2-24 2-49 1-75zM26 15h2c1 24-1 40-5 52l-1-1c3-13 5-28 4-51zM34 15h2c0 22-3 37-8 48l-1-2c4-11 7-25 7-46z",
            ),
        ],
    ),
    (
        "A candle away from a child and a pet",
        &[
            (Stroke::Line, "M24 52l9 9M71 62h23v32h-23zM82.5 56v6M38 40h25M43 35l-5 5 5 5M58 35l5 5-5 5"),
            (
                Stroke::Black,
                "M17 22a10.5 10.5 0 1 0 .1 0zM10.5 46h13l5.5 27h-5v21h-5.5v-19h-3v19h-5.5v-21h-5z\
M40 74l-6-8 2-1.5 7 6h9l2-11 3.5 4h4.5l3 3-2 3h-4.5l-2.5 6v18.5h-4v-13h-8v13h-4z\
M82.5 30c8 10 8 21 0 27c-8-6-8-17 0-27z",
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
