//! What is kept as JSON: held against another reader and writer of JSON, and refused where it is not as it should be.

use potside::book::Act;
use potside::formula::{self, PartDraft, PartKind, RangeDraft, VesselWick, WaxDraft, WaxShare};
use potside::pot::{Event, StepKey};
use potside::quantity::{Exact, Mass, Temperature, Voice, Why};
use potside::vessel::{self, FillKind};
use potside::wire::{Flaw, Json, Wire, read, write};
use proptest::prelude::*;
use serde_json::Value;

/// True where both say the same.
fn same(ours: &Json, theirs: &Value) -> bool {
    match (ours, theirs) {
        (Json::Null, Value::Null) => true,
        (Json::Bool(a), Value::Bool(b)) => a == b,
        (Json::Number(a), Value::Number(b)) => a.parse::<f64>().ok() == b.as_f64(),
        (Json::Text(a), Value::String(b)) => a == b,
        (Json::List(a), Value::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b)),
        (Json::Object(a), Value::Object(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|((m, a), (n, b))| m == n && same(a, b))
        }
        _ => false,
    }
}

#[track_caller]
fn agrees(text: &str) {
    match (Json::parse(text), serde_json::from_str::<Value>(text)) {
        (Some(ours), Ok(theirs)) => assert!(same(&ours, &theirs), "{text:?}: {ours:?}, not {theirs}"),
        (ours, theirs) => assert!(ours.is_none() && theirs.is_err(), "{text:?}: {ours:?}, not {theirs:?}"),
    }
}

/// Every sign that JSON must escape, each by itself, comes back and is read by others as it is.
#[test]
fn every_control_sign_comes_back() {
    for code in (0..0x20).chain([0x22, 0x5c, 0x7f, 0x2028]) {
        let text = format!("a{}b", char::from_u32(code).unwrap());
        let written = write(&text);
        assert_eq!(read::<String>(&written).as_ref(), Ok(&text), "{code:#x}");
        assert_eq!(serde_json::from_str::<String>(&written).unwrap(), text, "{code:#x}");
    }
}

#[test]
fn json_is_read_as_others_read_it() {
    for text in [
        "",
        " ",
        "null",
        "nul",
        "nulll",
        "true",
        "false",
        "tru e",
        "0",
        "-0",
        "-",
        "01",
        "1.",
        ".5",
        "1.5e3",
        "1e+2",
        "1E-2",
        "1e",
        "+1",
        "12345678901234567890123",
        "0x1",
        "NaN",
        "[]",
        "[1,]",
        "[,1]",
        "[1 2]",
        "[1, 2 ,3]",
        "[",
        "]",
        "[[]",
        "{}",
        "{,}",
        "{\"a\":1,}",
        "{\"a\" : 1 , \"b\":[{}]}",
        "{\"a\"}",
        "{a:1}",
        "{\"a\":1 \"b\":2}",
        "\"",
        "\"a",
        "\"\\\"\"",
        "\"\\u00be\"",
        "\"\\u00B\"",
        "\"\\u+0be\"",
        "\"\\x\"",
        "\"\\ud83d\\udd6f\"",
        "\"\\ud83d\"",
        "\"\\udd6f\"",
        "\"\\ud83d\\u0041\"",
        "\"\\b\\f\\n\\r\\t\\/\\\\\"",
        "\"a\nb\"",
        "\"\u{7f}¾🕯\"",
        "1 2",
        "\u{feff}1",
        "\u{a0}1",
        "\t\r\n 1 \n",
    ] {
        agrees(text);
    }
    for deep in [1, 126, 127, 128, 129, 100_000] {
        agrees(&format!("{}1{}", "[".repeat(deep), "]".repeat(deep)));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4_000))]

    #[test]
    fn any_text_is_read_as_others_read_it(text in r#"([ \[\]{},:"\\0-9.eE+-]|null|true|"a":|"[a-z\\"]{0,3}"|\\u[dD][89c-f][0-9a-f]{2}){0,14}"#) {
        agrees(&text);
    }

    #[test]
    fn any_text_is_written_as_others_write_it(text in any::<String>()) {
        let json = write(&text);
        prop_assert_eq!(&json, &serde_json::to_string(&text).unwrap());
        prop_assert_eq!(read::<String>(&json), Ok(text));
    }
}

#[track_caller]
fn reads<T: Wire + PartialEq + std::fmt::Debug>(text: &str, want: T, kept: &str) {
    assert_eq!(read::<T>(text).as_ref(), Ok(&want), "{text}");
    assert_eq!(write(&want), kept);
}

#[track_caller]
fn refuses<T: Wire + std::fmt::Debug>(text: &str, flaw: Flaw) {
    assert_eq!(read::<T>(text).err(), Some(flaw), "{text}");
}

#[test]
fn what_may_be_left_out_is() {
    let why = || Why::new("Fill", "a × b", "60 g");
    let short = r#"{"what":"Fill","relation":"a × b","values":[],"result":"60 g"}"#;
    reads(short, why(), short);
    let long = r#"{"what":"Fill","relation":"a × b","values":[],"result":"60 g","rounding":"","source":"","new":[1.5,null]}"#;
    reads(long, why(), short);
    let sourced = r#"{"what":"Fill","relation":"a × b","values":[],"result":"60 g","source":"B.8"}"#;
    reads(sourced, why().from("B.8"), sourced);
    let wax = r#"{"name":"Soft","share":"100 %"}"#;
    let read_wax = read::<WaxShare>(wax).unwrap();
    reads(wax, read_wax, r#"{"name":"Soft","share":"100 %","flash":null}"#);
}

/// A vessel's water as it was written before it was weighed again, and as it is written now.
#[test]
fn water_is_kept_with_every_weighing() {
    let once = r#"{"mass":"300 g","at":"20 °C"}"#;
    let water = read::<vessel::Water>(once).unwrap();
    assert_eq!(water.again, []);
    reads(once, water.clone(), once);
    let twice = r#"{"mass":"300 g","at":"20 °C","again":["302 g","1.5 oz"]}"#;
    let again = read::<vessel::Water>(r#"{"at":"20 °C","mass":"300 g","again":["302 g","1.5 oz"]}"#).unwrap();
    assert_eq!((again.mass, again.at, again.again.len()), (water.mass, water.at, 2));
    reads(twice, again, twice);
}

#[test]
fn kinds_are_written_by_their_name() {
    reads("\"Dye\"", PartKind::Dye, "\"Dye\"");
    reads(" \"Close\" ", StepKey::Close, "\"Close\"");
    let add = StepKey::Add { pour: 1, line: 2 };
    reads(r#"{"Add":{"line":2,"pour":1}}"#, add, r#"{"Add":{"pour":1,"line":2}}"#);
    let did = r#"{"Did":{"step":"Close","weighed":null,"temperature":null,"at":7}}"#;
    let close = Event::Did { step: StepKey::Close, weighed: None, temperature: None, at: 7 };
    reads(r#"{"Did":{"step":"Close","at":7}}"#, close, did);
}

/// A vessel in which nothing went stays empty; a book that says nothing of its weight filled it.
#[test]
fn an_empty_vessel_is_one_that_nothing_went_into() {
    let fill = |weighed| Event::Did {
        step: StepKey::Fill { pour: 0, vessel: 2 },
        weighed,
        temperature: None,
        at: 7,
    };
    let empty = r#"{"Did":{"step":{"Fill":{"pour":0,"vessel":2}},"weighed":"0","temperature":null,"at":7}}"#;
    reads(empty, fill(Some(Mass::ZERO)), empty);
    assert_eq!(read::<Event>(empty).map(|event| event.filled()), Ok(None));
    assert_eq!(fill(None).filled(), Some(7));
    assert_eq!(fill(Some(Mass::base(Exact::ratio(1, 100)))).filled(), Some(7));
    assert_eq!(Event::Said { text: String::new(), at: 7 }.filled(), None);
}

/// Books from before it was asked do not say of which pour a reading is, nor is it written where there is only one.
#[test]
fn a_reading_may_say_its_pour() {
    let read = |pour| Event::Read { temperature: Temperature::celsius(Exact::whole(80)), at: 7, pour };
    let before = r#"{"Read":{"temperature":"80","at":7}}"#;
    reads(before, read(None), before);
    reads(r#"{"Read":{"temperature":"80","at":7,"pour":null}}"#, read(None), before);
    let second = r#"{"Read":{"temperature":"80","at":7,"pour":1}}"#;
    reads(second, read(Some(1)), second);
    refuses::<Event>(r#"{"Read":{"temperature":"80","at":7,"pour":-1}}"#, Flaw::Unlike { at: "pour" });
}

#[test]
fn the_first_flaw_is_told() {
    use Flaw::{NotJson, Twice, Unknown, Unlike};
    refuses::<VesselWick>("{\"vessel\":\"a\"", NotJson);
    refuses::<VesselWick>("{\"vessel\":\"a\"}", Unlike { at: "wick" });
    refuses::<VesselWick>("{\"vessel\":\"a b\",\"wick\":\"\"}", Unlike { at: "vessel" });
    refuses::<VesselWick>("{\"vessel\":\"a\",\"wick\":null}", Unlike { at: "wick" });
    refuses::<VesselWick>("{\"vessel\":\"a\",\"wick\":\"\",\"wick\":\"\"}", Twice { at: "wick" });
    refuses::<VesselWick>("[\"a\",\"b\"]", Unlike { at: "vessel" });
    refuses::<StepKey>("{\"Melt\":{\"pour\":4294967296}}", Unlike { at: "pour" });
    for pour in ["-1", "-0", "1.0", "1e2", "\"1\"", "null", "true", "[1]"] {
        refuses::<StepKey>(&format!("{{\"Melt\":{{\"pour\":{pour}}}}}"), Unlike { at: "pour" });
    }
    refuses::<StepKey>("{\"Melt\":{\"pour\":1},\"Close\":null}", Unknown { at: "", said: String::new() });
    refuses::<StepKey>("{\"Close\":1}", Unlike { at: "" });
    refuses::<StepKey>("\"Melt\"", Unlike { at: "pour" });
    refuses::<Act>("{\"Scorch\":{}}", Unknown { at: "", said: "Scorch".into() });
    let said = "{\"At\":{\"batch\":\"b\",\"event\":{\"Sang\":1}}}";
    refuses::<Act>(said, Unknown { at: "event", said: "Sang".into() });
    refuses::<Vec<bool>>("[true,1]", Unlike { at: "" });
    refuses::<Vec<bool>>("{}", Unlike { at: "" });
}

#[test]
fn every_flaw_can_be_said() {
    let sentences = [
        Flaw::NotJson,
        Flaw::Unlike { at: "wick" },
        Flaw::Twice { at: "wick" },
        Flaw::Unknown { at: "event", said: "Sang".into() },
    ]
    .map(|flaw| flaw.to_string());
    assert_eq!(
        sentences,
        [
            "it is not JSON, or one thing stands in another more than 128 deep",
            "“wick” is missing or not what it can be",
            "“wick” is there twice",
            "“Sang” is not known at “event”",
        ]
    );
}

/// What is typed into a form and not saved is kept between two starts as it stands, readable or not.
#[test]
fn what_is_typed_comes_back() {
    let voice = Voice::default();
    let mut part = PartDraft::new(PartKind::Dye, voice);
    part.amount = "three or \"so\"".into();
    let formula = formula::Draft {
        name: "Half a na".into(),
        wax: vec![WaxDraft { name: "Plain".into(), share: "1oo %".into(), flash: String::new() }],
        parts: vec![part],
        melt_to: "hot".into(),
        warmed: RangeDraft { low: "72".into(), high: "\u{1f525}".into() },
        vessels: vec![("dev-1-2".into(), "medium".into()), (String::new(), String::new())],
        ..formula::Draft::default()
    };
    assert_eq!(read::<formula::Draft>(&write(&formula)).as_ref(), Ok(&formula));
    let vessel =
        vessel::Draft { top: "3 in\n".into(), rule: FillKind::Headspace, ..vessel::Draft::default() };
    assert_eq!(read::<vessel::Draft>(&write(&vessel)).as_ref(), Ok(&vessel));
    refuses::<(bool, bool)>("[true]", Flaw::Unlike { at: "" });
}
