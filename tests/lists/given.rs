//! Every list as it is given out.

use super::{rows, theirs, workshop};
use potside::bench::burn::{BurnEvent, Grade, Heavy, Look, Trial, Verdict, WickSeries, missed};
use potside::book::{Act, Book, Id};
use potside::day::{Day, Zone};
use potside::desk::hazard::SafetySheet;
use potside::lists::{LISTS, List, give, write};
use potside::quantity::{Amount, Exact, LengthUnit, Locale, MassUnit, Money, Voice};
use potside::stores::{Bought, Lot, LotEvent, Pack};

/// Every list of the demo workshop, whole.
#[test]
fn every_list_given_out() {
    let journal = workshop();
    let mut all = String::new();
    for (list, title, file) in LISTS {
        let text = write(&give(*list, journal.state(), Zone::GREENWICH, Voice::default()), Locale::Point);
        // The same for the other reader.
        assert_eq!(rows(&text), theirs(text.trim_start_matches('\u{feff}')), "{title}");
        let widths: Vec<_> = rows(&text).iter().map(Vec::len).collect();
        assert!(widths.windows(2).all(|w| w[0] == w[1]), "{file}: {widths:?}");
        all += &format!("{title} ({file}.csv)\n{}\n", text.trim_start_matches('\u{feff}').replace('\r', ""));
    }
    insta::assert_snapshot!(all);
}

/// What the demo has none of: a lot counted, written off, held and released; a trial with all that can happen to it; what
/// was put away. Nothing of it is a formula to a spreadsheet.
#[test]
fn what_was_seen_and_counted() {
    let mut book = Book::open(Vec::new(), "tablet");
    let id = |id: &str| Id(id.into());
    let gram = |n: i128| Amount::new(Exact::whole(n), MassUnit::Gram);
    let at = |minutes: u64| 1_764_000_000_000 + minutes * 60_000;
    let lot = Lot {
        ingredient: "=Soft wax".into(),
        number: "-7/A".into(),
        supplier: String::new(),
        got_on: Day::of(at(0)),
        best_before: None,
        price: Money(2_000),
        bought: Bought { packs: 1, pack: Pack::Weight(gram(5_000)) },
        amount: Exact::whole(5_000),
    };
    let why = |reason: &str| reason.to_owned();
    let trial = Trial {
        name: "@A1".into(),
        fragrance: String::new(),
        load: None,
        heavy: Heavy::default(),
        wax: "Soft wax".into(),
        vessel: "Jar".into(),
        diameter: Amount::new(Exact::whole(70), LengthUnit::Millimetre),
        series: String::new(),
        wick: "8".into(),
        replicate: 1,
        start: gram(400),
        fill: gram(180),
    };
    let happened = |event| Act::AtTrial { trial: Id("t".into()), event };
    let to_lot = |event| Act::AtLot { lot: Id("l".into()), event };
    let acts = vec![
        Act::Lot { id: id("l"), over: None, body: lot },
        to_lot(LotEvent::Counted { left: Exact::whole(4_900), reason: why("+two spoons were spilt") }),
        to_lot(LotEvent::WrittenOff { amount: Exact::whole(100), reason: why("burnt") }),
        to_lot(LotEvent::Held { reason: why("smells of smoke") }),
        to_lot(LotEvent::Released { reason: why("it was the room") }),
        Act::Trial { id: id("t"), over: None, body: Box::new(trial) },
        happened(BurnEvent::Lit { at: at(0), mass: gram(400), trimmed: false, throw: Some(2) }),
        happened(BurnEvent::Looked(Box::new(Look {
            at: at(61),
            soot: Some(Grade::Little),
            note: "=flickers".into(),
            ..Look::default()
        }))),
        happened(BurnEvent::Out { at: at(240), mass: None, itself: true }),
        happened(BurnEvent::Weighed { mass: gram(380), lit: None }),
        happened(missed(
            BurnEvent::Lit { at: at(1500), mass: gram(380), trimmed: true, throw: None },
            vec![Look { at: at(1600), soot: Some(Grade::None), ..Look::default() }],
            BurnEvent::Out { at: at(1620), mass: None, itself: false },
        )),
        happened(BurnEvent::Weighed { mass: gram(372), lit: Some(at(1500)) }),
        happened(BurnEvent::Closed { verdict: Verdict::Small, note: "drowned".into() }),
        Act::Retire { id: id("t"), retired: true },
        Act::Wicks {
            id: id("w"),
            over: None,
            body: WickSeries { name: "Cotton".into(), sizes: vec!["-8".into(), "-10, thick".into()] },
        },
        Act::Retire { id: id("w"), retired: true },
        Act::Safety {
            id: id("s"),
            over: None,
            body: SafetySheet {
                ingredient: "Fig".into(),
                lines: "# from the sheet\n\n＝x; 5 %; Skin Sens. 1 H317\n".into(),
                dated: "2025".into(),
            },
        },
    ];
    for (n, act) in (1..).zip(acts) {
        book.act(act, at(u64::from(n)), n).unwrap();
    }
    let mut all = String::new();
    for list in [List::LotEvents, List::Seen, List::Wicks, List::Safety, List::Labels] {
        let text = write(&give(list, book.state(), Zone::GREENWICH, Voice::default()), Locale::Point);
        for cell in theirs(text.trim_start_matches('\u{feff}')).iter().flatten() {
            assert!(!cell.starts_with(['=', '@', '+', '＝']), "{cell}");
        }
        all += text.trim_start_matches('\u{feff}');
    }
    insta::assert_snapshot!(all.replace('\r', ""));
    // Thirteen hours ahead it was the next morning.
    let ahead = Zone(|at| at + 13 * 3_600_000);
    let seen = give(List::Seen, book.state(), ahead, Voice::default());
    assert_eq!(seen[1][1..3], ["2025-11-25", "05:00"]);
    let lots = give(List::LotEvents, book.state(), ahead, Voice::default());
    assert_eq!(lots[1][2], "2025-11-25");
}
