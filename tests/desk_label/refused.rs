//! Sheets that cannot be, and what a label may not be used for.

use super::{content, mm, sheet};
use potside::desk::label::{Cell, Content, Design, Face, Item, Market, Part, Sheet, SheetError, lay};
use potside::quantity::{Locale, Voice};
use potside::wire::{read, write};

#[track_caller]
fn refused(change: impl FnOnce(&mut Design), errors: &[SheetError]) {
    let mut design = Design {
        name: "Front".into(),
        sheet: sheet(60, 40, false, 3, 6),
        parts: vec![Part::Name],
        market: Market::Both,
        maker: String::new(),
        compared: String::new(),
    };
    assert_eq!(design.check(), Ok(()));
    assert_eq!(read(&write(&design)), Ok(design.clone()));
    change(&mut design);
    assert_eq!(design.check(), Err(errors.to_vec()));
    assert!(errors.iter().all(|e| e.say(Voice::default()).ends_with('.')));
}

#[test]
fn a_sheet_that_cannot_be_is_told_with_the_readers_sign() {
    let comma = Voice { locale: Locale::Comma, ..Voice::default() };
    let wide = SheetError::TooWide { needs: 2155, has: 2100 }.say(comma);
    assert!(wide.contains("need 215,5 mm of width, and the page has 210,0 mm."), "{wide}");
}

/// That the fire-safety part was compared with one's own copy of the standard is asked for until it is said, and kept.
#[test]
fn fire_safety_is_to_be_compared_with_the_standard() {
    let mut design = Design {
        name: "Underside".into(),
        sheet: sheet(60, 40, false, 3, 6),
        parts: vec![Part::Name],
        market: Market::Both,
        maker: String::new(),
        compared: String::new(),
    };
    assert_eq!(design.compared(), None);
    design.parts.push(Part::Fire);
    assert!(design.compared().unwrap().starts_with("Nobody has compared the fire safety"));
    assert!(!write(&design).contains("compared"));
    design.compared = " My copy of 2021 ".into();
    assert_eq!(design.compared().unwrap(), "Fire safety compared by you with: My copy of 2021.");
    assert_eq!(read(&write(&design)), Ok(design));
}

/// CLP, Annex I, Table 1.3: 52 × 74 mm, either way up; round, π ÷ 4 × 70² is 3848.5 mm² and the rectangle 3848.
#[test]
fn a_label_too_small_for_hazards_says_so() {
    let small = |content: &Content, width: i128, height: i128, round: bool| {
        let said = content.remarks(&sheet(width, height, round, 1, 1));
        said.iter().any(|s| s.contains("52 × 74 mm"))
    };
    let all = content("Quiet orchard", "Linalool", "A. Maker");
    for (width, height, round, is) in [
        (52, 74, false, false),
        (74, 52, false, false),
        (51, 90, false, true),
        (60, 73, false, true),
        (70, 70, true, false),
        (69, 69, true, true),
    ] {
        assert_eq!(small(&all, width, height, round), is, "{width} × {height}");
    }
    assert!(!small(&Content::new(Face::default()), 20, 20, false), "no hazards on it");
}

#[test]
fn a_batch_without_a_number_has_no_code_of_it() {
    let drawn = |number: &str, day: &str| {
        let mut label = Content::new(Face::default());
        label.batch(number, day);
        let sheet = sheet(60, 60, false, 1, 1);
        let laid = lay(&label, &sheet).unwrap();
        let code = laid.items.iter().any(|i| matches!(i, Item::Code { .. }));
        let text = laid.items.iter().find_map(|i| match i {
            Item::Words { text, .. } => Some(text.clone()),
            _ => None,
        });
        (code, text.unwrap_or_default(), label.remarks(&sheet))
    };
    assert_eq!(drawn("2611-03", "1 Dec"), (true, "Batch 2611-03, 1 Dec".to_owned(), vec![]));
    assert_eq!(drawn("2611-03", " ").1, "Batch 2611-03");
    let (code, text, said) = drawn(" ", "1 Dec");
    assert_eq!((code, text.as_str()), (false, "1 Dec"));
    assert!(said[0].starts_with("No batch number"), "{said:?}");
    assert!(!drawn("", "").0);
    let (code, _, said) = drawn(&"7a".repeat(32), "");
    assert!(!code && said[0].contains("too long for a QR code"), "{said:?}");
}

#[test]
fn sheets_that_cannot_be() {
    refused(|d| d.name.clear(), &[SheetError::NoName]);
    refused(|d| d.sheet.rows = 0, &[SheetError::NoLabels]);
    refused(|d| d.sheet.rows = 400, &[SheetError::TooMany]);
    refused(|d| d.sheet.width = mm(0), &[SheetError::NoSize]);
    refused(|d| d.sheet.columns = 4, &[SheetError::TooWide { needs: 2560, has: 2100 }]);
    refused(|d| d.sheet.rows = 7, &[SheetError::TooHigh { needs: 3020, has: 2970 }]);
    refused(
        |d| {
            d.sheet.round = true;
            d.parts.clear();
        },
        &[SheetError::RoundIsNotSquare, SheetError::NothingOnIt],
    );
    assert_eq!(sheet(60, 40, false, 3, 6).cells().last(), Some(&Cell { x: 134_000, y: 220_000 }));
    // Found by altering books by chance: a hostile copy's sheet filled the memory.
    for (columns, rows) in [(u32::MAX, u32::MAX), (u32::MAX, 1), (1, u32::MAX), (0, u32::MAX)] {
        assert!(sheet(60, 40, false, columns, rows).cells().len() <= 500, "{columns} × {rows}");
    }
    // Lengths that no sum holds.
    let far = 10_i128.pow(20);
    let huge = Sheet { page_width: mm(far), left: mm(far), across: mm(far), ..sheet(far, far, true, 500, 1) };
    refused(
        |d| d.sheet = huge.clone(),
        &[
            SheetError::TooWide { needs: 100_000_000, has: 100_000 },
            SheetError::TooHigh { needs: 100_100, has: 2970 },
        ],
    );
    assert_eq!(huge.cells().len(), 500);
    assert!(lay(&content("Quiet orchard", "Linalool", "A. Maker"), &huge).is_ok());
}
