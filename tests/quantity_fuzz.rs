//! 100,000 random texts into every field's reader: none panics, and what is read is in range and reads back.
#![allow(clippy::indexing_slicing)]

use potside::pot::Dose;
use potside::quantity::*;
use potside::wire;

/// Pieces of what people type, right and wrong.
const PIECES: &[&str] = &[
    "0",
    "1",
    "2",
    "12",
    "123",
    "234",
    "500",
    "999",
    "1000",
    "00",
    "15",
    "/",
    "/4",
    "1/2",
    "1/3",
    "7/8",
    "/0",
    ".",
    ",",
    "'",
    "’",
    " ",
    "\u{a0}",
    "\u{202f}",
    "-",
    "−",
    "+",
    "½",
    "¼",
    "¾",
    "⅓",
    "⅞",
    "⅟",
    "g",
    "kg",
    "oz",
    "lb",
    "lbs.",
    "#",
    "fl oz",
    "mL",
    "tsp",
    "tbsp",
    "cup",
    "mm",
    "cm",
    "in",
    "ft",
    "'",
    "\"",
    "°",
    "º",
    "C",
    "F",
    "°F",
    "℃",
    "%",
    "‰",
    "e",
    "x",
    "$",
    "١",
    "𝟙",
    "é",
    "\u{301}",
    "\u{200b}",
    "g/mL",
    "kg/m³",
    "\0",
    "\n",
    "99999999999999999999",
    "🕯",
    "(",
    "~",
];

/// Random numbers by xorshift, the same on every run: a failure names its text.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, below: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 33) as usize % below
    }

    /// Mostly pieces strung together; sometimes any characters at all, sometimes too many.
    fn text(&mut self) -> String {
        match self.roll(20) {
            0 => (0..self.roll(80)).filter_map(|_| char::from_u32(self.roll(0x11_0000) as u32)).collect(),
            1 => (0..60 + self.roll(10)).map(|_| PIECES[self.roll(10)]).collect(),
            _ => (0..self.roll(9)).map(|_| PIECES[self.roll(PIECES.len())]).collect(),
        }
    }
}

fn with_texts(seed: u64, check: impl Fn(&str, Locale)) {
    let mut dice = Dice(seed);
    for _ in 0..100_000 {
        let locale = if dice.roll(2) == 0 { Locale::Point } else { Locale::Comma };
        check(&dice.text(), locale);
    }
}

fn field<Q: Quantity>(text: &str, locale: Locale) {
    for &default in Q::Unit::all().iter().take(2) {
        match read::<Q>(text, default, locale) {
            Ok(amount) => {
                assert!(amount.value.check().is_ok(), "{text:?}");
                let shown = show_exact(amount, locale);
                assert_eq!(read::<Q>(&shown, default, locale), Ok(amount), "{text:?} shown as {shown:?}");
            }
            Err(error) => {
                let sentence = error.to_string();
                assert!(sentence.ends_with('.') && sentence.len() > 10, "{text:?}: {sentence}");
            }
        }
    }
}

#[test]
fn weights() {
    with_texts(1, field::<Mass>);
}

#[test]
fn volumes() {
    with_texts(2, field::<Volume>);
}

#[test]
fn lengths() {
    with_texts(3, field::<Length>);
}

#[test]
fn shares() {
    with_texts(4, field::<Share>);
}

#[test]
fn temperatures() {
    with_texts(5, field::<Temperature>);
}

#[test]
fn densities() {
    with_texts(6, |text, locale| {
        field::<Density>(text, locale);
        let density =
            read::<Density>(text, DensityUnit::GramPerMillilitre, locale).map(|amount| amount.value);
        assert_eq!(read_density(text, locale), density, "{text:?}");
    });
}

/// What went in of drops and of a spoon measure: a count, a measure or a weight.
#[test]
fn what_went_in() {
    let mass = |milligrams| Mass::base(Exact::ratio(milligrams, 1000));
    for dose in [Dose::Drops { drops: 6, mass: mass(126) }, Dose::Spoon { eighths: 36, mass: mass(11_977) }] {
        with_texts(11, |text, locale| {
            let voice = Voice { locale, ..Voice::default() };
            match dose.read(text, voice) {
                Ok(mass) => {
                    assert!(mass.check().is_ok(), "{text:?}: {mass:?}");
                    assert!(!dose.tell(mass, voice).is_empty());
                }
                Err(error) => {
                    let sentence = error.to_string();
                    assert!(sentence.ends_with('.') && sentence.len() > 10, "{text:?}: {sentence}");
                }
            }
        });
    }
}

#[test]
fn numbers_and_counts() {
    with_texts(7, |text, locale| {
        assert!(read_number(text, locale).map_or(true, |n| !n.is_negative()), "{text:?}");
        assert!(read_count(text, locale).map_or(true, |n| (1..=100_000).contains(&n)), "{text:?}");
    });
}

#[test]
fn prices() {
    let currency = Currency::default();
    with_texts(8, |text, locale| {
        assert!(currency.read(text, locale).map_or(true, |price| price >= Money::ZERO), "{text:?}");
    });
}

/// What stands in a book that someone has changed by hand.
#[test]
fn the_book() {
    with_texts(9, |text, _| {
        let json = wire::write(&text.to_owned());
        let _ = wire::read::<Exact>(&json);
        if let Ok(amount) = wire::read::<Amount<Temperature>>(&json) {
            assert_eq!(wire::read(&wire::write(&amount)), Ok(amount), "{text:?}");
        }
    });
}

/// Enough of the random texts are read for the checks above to mean something.
#[test]
fn the_texts_are_near_valid() {
    let mut dice = Dice(10);
    let read =
        (0..10_000).filter(|_| read::<Mass>(&dice.text(), MassUnit::Gram, Locale::Point).is_ok()).count();
    assert!(read > 300, "only {read} of 10,000");
}
