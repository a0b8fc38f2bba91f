//! Labels: nothing overlaps or leaves its label at any length of text, and no letter is lower than it may be.

mod refused;

use potside::desk::hazard::{Signal, Statements};
use potside::desk::label::{Content, Design, Face, Item, Laid, Market, Part, Sheet, lay, lettering, width};
use potside::desk::net::{Declaration, Panel, declare, declare_tapers, declare_tapers_metric};
use potside::quantity::{Amount, Exact, Length, LengthUnit, Mass, Volume};
use proptest::prelude::*;

fn mm(tenths: i128) -> Amount<Length> {
    Amount::new(Exact::ratio(tenths, 10), LengthUnit::Millimetre)
}

/// `columns` by `rows` labels of a size in millimetres on A4, 10 mm from the edges, 2 mm between.
fn sheet(width: i128, height: i128, round: bool, columns: u32, rows: u32) -> Sheet {
    Sheet {
        page_width: mm(2100),
        page_height: mm(2970),
        width: mm(width * 10),
        height: mm(height * 10),
        round,
        columns,
        rows,
        left: mm(100),
        top: mm(100),
        across: mm(20),
        down: mm(20),
    }
}

fn statements(contains: &str) -> Statements {
    Statements {
        pictograms: vec![7, 9],
        signal: Signal::Warning,
        contains: vec![contains.to_owned()],
        spare: Vec::new(),
        hazards: vec![("H317", "May cause an allergic skin reaction.".to_owned())],
        precautions: vec![("P102", "Keep out of reach of children.")],
        further: vec!["EUH208: Contains Citral. May produce an allergic reaction.".to_owned()],
    }
}

fn content(name: &str, contains: &str, maker: &str) -> Content {
    let mut content = Content::new(Face::default());
    content.name(name);
    content.fire();
    content.hazards(statements(contains), Some(Volume::base(Exact::whole(250))));
    content.batch("2611-03", "25 November 2026");
    content.maker(maker);
    let mass = Mass::base(Exact::whole(180));
    let panel = Panel::Round { diameter: mm(500).value, height: mm(300).value };
    content.net(Market::Both, &declare(mass), mass, panel);
    content
}

/// Left, top, right and bottom of what is drawn.
fn boxed(item: &Item) -> (i64, i64, i64, i64) {
    match item {
        Item::Words { x, y, size, width, .. } => (*x, y - size * 19 / 20, x + width, y + size / 4),
        Item::Picture { x, y, side, .. } => (*x, *y, x + side, y + side),
        Item::Code { x, y, module, code } => {
            let side = (code.side as i64 + 8) * module;
            (*x, *y, x + side, y + side)
        }
    }
}

fn sound(laid: &Laid) -> Result<(), String> {
    let boxes: Vec<_> = laid.items.iter().map(boxed).collect();
    for (at, one) in boxes.iter().enumerate() {
        if one.0 < 0 || one.1 < 0 || one.2 > laid.width || one.3 > laid.height {
            return Err(format!("{:?} leaves the label", laid.items.get(at)));
        }
        if laid.round {
            let radius = laid.width / 2;
            for (x, y) in [(one.0, one.1), (one.2, one.1), (one.0, one.3), (one.2, one.3)] {
                if (x - radius).pow(2) + (y - radius).pow(2) > radius * radius {
                    return Err(format!("{:?} leaves the circle", laid.items.get(at)));
                }
            }
        }
        for other in boxes.iter().skip(at + 1) {
            if one.0 < other.2 && other.0 < one.2 && one.1 < other.3 && other.1 < one.3 {
                return Err(format!("{one:?} lies on {other:?}"));
            }
        }
    }
    Ok(())
}

#[test]
fn a_front_and_an_underside_fit() {
    let mut front = Content::new(Face::default());
    front.name("Quiet orchard");
    front.maker("Made by A. Maker, 1 Mill Lane, Anytown");
    let mass = Mass::base(Exact::whole(180));
    let panel = Panel::Round { diameter: mm(700).value, height: mm(800).value };
    front.net(Market::Both, &declare(mass), mass, panel);
    let laid = lay(&front, &sheet(70, 50, false, 2, 5)).unwrap();
    sound(&laid).unwrap();
    let net: Vec<(&str, i64)> = laid
        .items
        .iter()
        .filter_map(|i| match i {
            Item::Words { text, size, .. } => Some((text.as_str(), *size)),
            _ => None,
        })
        .take(2)
        .collect();
    // An eighth of an inch for a panel of 10.9 square inches, measured on a small letter: 3.175 ÷ 0.519 = 6.118 mm.
    assert_eq!(net, [("Net wt. 6.34 oz", 6118), ("(180 g)", 6118)]);

    let all = content("Quiet orchard", "Linalool, Citral", "A. Maker, Anytown");
    sound(&lay(&all, &sheet(90, 110, false, 2, 2)).unwrap()).unwrap();
    sound(&lay(&all, &sheet(100, 100, true, 1, 2)).unwrap()).unwrap();
}

/// Two tapers on a label of 85 mm, with the eighth of an inch that a panel of 10.9 square inches asks for.
#[test]
fn tapers_are_declared_in_three_lines_where_it_is_narrow() {
    let parted = |market: Market, declared: &Declaration, width: i128| {
        let mut label = Content::new(Face::default());
        let panel = Panel::Round { diameter: mm(700).value, height: mm(800).value };
        label.net(market, declared, Mass::ZERO, panel);
        let laid = lay(&label, &sheet(width, 60, false, 1, 1)).ok()?;
        sound(&laid).unwrap();
        let text = |item: &Item| match item {
            Item::Words { text, .. } => Some(text.clone()),
            _ => None,
        };
        Some(laid.items.iter().filter_map(text).collect::<Vec<_>>())
    };
    let lines = |width: i128| parted(Market::Both, &declare_tapers(2, mm(2604).value), width);
    assert_eq!(lines(85).unwrap(), ["2 candles,", "each 10 1/4 in", "(26 cm)"]);
    assert_eq!(lines(110).unwrap(), ["2 candles, each 10 1/4 in", "(26 cm)"]);
    assert_eq!(lines(150).unwrap(), ["2 candles, each 10 1/4 in (26 cm)"]);
    assert_eq!(lines(50), None);
    // Where no inches are asked for there are two parts.
    let metric =
        |width: i128| parted(Market::EuropeanUnion, &declare_tapers_metric(12, mm(2604).value), width);
    assert_eq!(metric(110).unwrap(), ["12 candles, each 26 cm"]);
    let narrow: Vec<_> = (20..110).filter_map(metric).filter(|said| said.len() > 1).collect();
    assert!(
        !narrow.is_empty() && narrow.iter().all(|said| said == &["12 candles,", "each 26 cm"]),
        "{narrow:?}"
    );
}

#[test]
fn what_does_not_fit_is_told_with_the_size_that_would() {
    let all = content("Quiet orchard", "Linalool, Citral", "A. Maker, Anytown");
    let small = sheet(60, 40, false, 3, 6);
    let overflow = lay(&all, &small).unwrap_err();
    let needs = overflow.needs.unwrap();
    assert_eq!(
        overflow.to_string(),
        format!(
            "It does not fit without letters below their least height: it needs a height of {needs} mm, and the \
                 label has 40 mm. Take a larger label, or put a part of it on a second one."
        )
    );
    assert!(lay(&all, &sheet(60, needs.into(), false, 1, 1)).is_ok());
    assert!(lay(&all, &sheet(60, i128::from(needs) - 1, false, 1, 1)).is_err());
}

/// Regulation (EU) 2024/2865 (reference values 4c).
#[test]
fn letters_of_the_hazard_part_by_the_volume() {
    for (millilitres, tenths) in
        [(1, 12), (500, 12), (501, 14), (3000, 14), (3001, 18), (50_000, 18), (50_001, 20)]
    {
        assert_eq!(lettering(Volume::base(Exact::whole(millilitres))), mm(tenths).value, "{millilitres}");
    }
}

#[test]
fn no_letter_is_lower_than_it_may_be() {
    // Another face: small letters of 0.45 of the size.
    let mut narrow = Content::new(Face::of(450, 650));
    narrow.hazards(statements("Linalool"), None);
    let laid = lay(&narrow, &sheet(60, 90, false, 1, 1)).unwrap();
    for item in &laid.items {
        if let Item::Words { size, text, .. } = item {
            assert!(size * 450 / 1000 >= 1200 - 1, "{text}");
        }
        if let Item::Picture { side, .. } = item {
            // A square of 10 mm on its corner.
            assert!(*side >= 14_142);
        }
    }
}

/// A few widths of Helvetica's published metrics: "Hello" is 722 + 556 + 222 + 222 + 556.
#[test]
fn a_text_is_as_wide_as_its_letters() {
    assert!((width("Hello", 1_000_000, false) - 2_278_000).abs() < 20_000);
    assert!(width("Hello", 1000, true) > width("Hello", 1000, false));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn nothing_overlaps_at_any_length_of_text(
        name in "\\PC{0,60}", contains in "([A-Za-z0-9,-]{1,40} ){0,12}", maker in "\\PC{0,120}",
        wide in 20i128..140, high in 20i128..180, round in any::<bool>(),
    ) {
        let sheet = sheet(wide, if round { wide } else { high }, round, 1, 1);
        let content = content(&name, &contains, &maker);
        match lay(&content, &sheet) {
            Ok(laid) => prop_assert_eq!(sound(&laid), Ok(())),
            Err(overflow) => prop_assert!(overflow.needs.is_none_or(|n| n > overflow.has)),
        }
    }

    #[test]
    fn labels_of_a_sheet_never_overlap(
        wide in 5i128..120, high in 5i128..120, columns in 1u32..9, rows in 1u32..12,
    ) {
        let design = Design {
            name: "Any".into(), sheet: sheet(wide, high, false, columns, rows), parts: vec![Part::Name],
            market: Market::Both, maker: String::new(), compared: String::new(),
        };
        if design.check().is_ok() {
            let cells = design.sheet.cells();
            let (wide, high) = (wide as i64 * 1000, high as i64 * 1000);
            for (at, one) in cells.iter().enumerate() {
                prop_assert!(one.x >= 0 && one.y >= 0 && one.x + wide <= 210_000 && one.y + high <= 297_000);
                for other in cells.iter().skip(at + 1) {
                    prop_assert!((one.x - other.x).abs() >= wide || (one.y - other.y).abs() >= high);
                }
            }
        }
    }
}
