//! How lots, what happens to them, and the rates are kept. The format is frozen: these lines must read for ever.

use super::shared::{grams_of, id};
use potside::book::Act;
use potside::day::Day;
use potside::desk::Rates;
use potside::quantity::{Amount, Exact, Money, VolumeUnit};
use potside::stores::{Bought, Lot, LotEvent, Pack, Source};
use potside::wire::{read, write};

#[track_caller]
fn is_kept(act: Act, line: &str) {
    assert_eq!(write(&act), line);
    assert_eq!(read::<Act>(line), Ok(act));
}

#[test]
fn acts_of_the_stores() {
    is_kept(
        Act::Lot { id: id("l"), over: None, body: grams_of("Meadow wax", "M-7", 0, 5000, 4200) },
        r#"{"Lot":{"id":"l","body":{"ingredient":"Meadow wax","number":"M-7","got_on":"2025-01-01","price":4200,"bought":{"packs":1,"pack":{"Weight":"5000 g"}},"amount":"5000"}}}"#,
    );
    let lot = Lot {
        supplier: "Hill & Co".into(),
        best_before: Some(Day(20_500)),
        price: Money(9900),
        bought: Bought { packs: 2, pack: Pack::Volume(Amount::new(Exact::ONE, VolumeUnit::Gallon)) },
        ..grams_of("Fig", "F1", 31, 6700, 0)
    };
    is_kept(
        Act::Lot { id: id("l"), over: Some(id("e")), body: lot },
        r#"{"Lot":{"id":"l","over":"e","body":{"ingredient":"Fig","number":"F1","supplier":"Hill & Co","got_on":"2025-02-01","best_before":"2026-02-16","price":9900,"bought":{"packs":2,"pack":{"Volume":"1 gal"}},"amount":"6700"}}}"#,
    );
    for (event, line) in [
        (
            LotEvent::Counted { left: Exact::ratio(1, 2), reason: "c".into() },
            r#"{"Counted":{"left":"0.5","reason":"c"}}"#,
        ),
        (
            LotEvent::WrittenOff { amount: Exact::whole(3), reason: "w".into() },
            r#"{"WrittenOff":{"amount":"3","reason":"w"}}"#,
        ),
        (LotEvent::Held { reason: "h".into() }, r#"{"Held":{"reason":"h"}}"#),
        (LotEvent::Released { reason: "r".into() }, r#"{"Released":{"reason":"r"}}"#),
    ] {
        is_kept(Act::AtLot { lot: id("l"), event }, &format!(r#"{{"AtLot":{{"lot":"l","event":{line}}}}}"#));
    }
    is_kept(
        Act::TakenFrom { batch: id("b"), sources: vec![Source { part: "Fig".into(), lots: vec![id("l")] }] },
        r#"{"TakenFrom":{"batch":"b","sources":[{"part":"Fig","lots":["l"]}]}}"#,
    );
    is_kept(Act::Worked { batch: id("b"), minutes: 50 }, r#"{"Worked":{"batch":"b","minutes":50}}"#);
    is_kept(
        Act::Rates(Box::default()),
        r#"{"Rates":{"currency":{"symbol":"$","digits":2},"hour":0,"timed":false,"batch_minutes":"0","candle_minutes":"0","overhead_batch":0,"overhead_hour":0,"loss":"0","packaging":0,"retail":{"aim":{"Margin":"0.6"},"fee":"0","fee_each":0,"shipping":0},"wholesale":{"aim":{"Margin":"0.3"},"fee":"0","fee_each":0,"shipping":0},"month":0,"service":"0.95"}}"#,
    );
    assert_eq!(Rates::default(), *Box::<Rates>::default());
}

#[test]
fn pieces_and_cases() {
    let pack = Pack::Pieces(12);
    assert_eq!(write(&pack), r#"{"Pieces":12}"#);
    assert_eq!(read(r#"{"Pieces":12}"#), Ok(pack));
}

/// Days that are known: ISO 8601 names the first, the others follow from the calendar (leap years 2000 and 2024, not 2100).
#[test]
fn days() {
    for (number, text) in [
        (0, "1970-01-01"),
        (11_016, "2000-02-29"),
        (19_782, "2024-02-29"),
        (20_089, "2025-01-01"),
        (47_541, "2100-03-01"),
        (2_932_896, "9999-12-31"),
    ] {
        assert_eq!((Day(number).to_string().as_str(), Day::read(text)), (text, Some(Day(number))));
    }
    for day in (0..60_000).step_by(7) {
        assert_eq!(Day::read(&Day(day).to_string()), Some(Day(day)));
    }
    for text in [
        "",
        "2025",
        "2025-13-01",
        "2025-02-29",
        "2100-02-29",
        "2025-00-10",
        "2025-01-00",
        "2025-1-1-1",
        "2025-1-1-",
        "-2025-1-1",
        "2025-1-",
        "2025--1",
        "2025-1-1é",
        "1969-12-31",
        "x",
        // Found by altering texts by chance: it was reckoned with before it was refused.
        "2025-1-4294967295",
    ] {
        assert_eq!(Day::read(text), None, "{text}");
    }
    assert_eq!(Day::of(Day(20_000).noon()), Day(20_000));
}
