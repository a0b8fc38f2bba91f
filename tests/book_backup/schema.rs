//! Backups held against the schema that is published with them.

use super::{MADE, V1, lines};
use potside::book::{backup, backup_with, crc32c, demo};
use potside::day::Zone;
use potside::photo::{MOST_BYTES, Photo};
use serde_json::{Value, json};

fn schema() -> Value {
    serde_json::from_str(include_str!("../../docs/backup.schema.json")).unwrap()
}

/// Whether a value follows a schema: the keywords that ours has, and none passed over in silence.
fn follows(schema: &Value, whole: &Value, value: &Value) -> bool {
    schema.as_object().unwrap().iter().all(|(word, wants)| match word.as_str() {
        "$schema" | "$defs" | "title" | "description" => true,
        "$ref" => {
            let target = wants.as_str().unwrap().trim_start_matches('#');
            follows(whole.pointer(target).unwrap(), whole, value)
        }
        "const" => value == wants,
        "anyOf" => wants.as_array().unwrap().iter().any(|one| follows(one, whole, value)),
        "type" => match wants.as_str().unwrap() {
            "object" => value.is_object(),
            "array" => value.is_array(),
            "string" => value.is_string(),
            "integer" => value.is_u64() || value.is_i64(),
            other => panic!("no type {other} here"),
        },
        "required" => {
            let has = |name: &Value| value.get(name.as_str().unwrap()).is_some();
            !value.is_object() || wants.as_array().unwrap().iter().all(has)
        }
        "properties" => wants
            .as_object()
            .unwrap()
            .iter()
            .all(|(name, one)| value.get(name).is_none_or(|field| follows(one, whole, field))),
        "additionalProperties" => {
            assert_eq!(wants, &json!(false));
            let known = schema["properties"].as_object().unwrap();
            value.as_object().is_none_or(|fields| fields.keys().all(|name| known.contains_key(name)))
        }
        "items" => value.as_array().is_none_or(|all| all.iter().all(|one| follows(wants, whole, one))),
        "minProperties" => value.as_object().is_none_or(|o| o.len() as u64 >= wants.as_u64().unwrap()),
        "maxProperties" => value.as_object().is_none_or(|o| o.len() as u64 <= wants.as_u64().unwrap()),
        "minimum" => value.as_f64().is_none_or(|n| n >= wants.as_f64().unwrap()),
        "maximum" => value.as_f64().is_none_or(|n| n <= wants.as_f64().unwrap()),
        "pattern" => value.as_str().is_none_or(|text| fits(wants.as_str().unwrap(), text)),
        other => panic!("no keyword {other} here"),
    })
}

/// Patterns of the one shape `^[signs]{least,most}$`.
fn fits(pattern: &str, text: &str) -> bool {
    let (signs, counts) = pattern.strip_prefix("^[").unwrap().split_once("]{").unwrap();
    let (least, most) = counts.strip_suffix("}$").unwrap().split_once(',').unwrap();
    let mut allowed = Vec::new();
    let signs: Vec<char> = signs.chars().collect();
    let mut at = 0;
    while at < signs.len() {
        if signs.get(at + 1) == Some(&'-') && at + 2 < signs.len() {
            allowed.extend(signs[at]..=signs[at + 2]);
            at += 3;
        } else {
            allowed.push(signs[at]);
            at += 1;
        }
    }
    (least.parse().unwrap()..=most.parse().unwrap()).contains(&text.len())
        && text.chars().all(|c| allowed.contains(&c))
}

#[track_caller]
pub(crate) fn is_backup(text: &str, yes: bool) {
    let value: Value = serde_json::from_str(text).unwrap();
    assert_eq!(follows(&schema(), &schema(), &value), yes, "{text:.400}");
}

/// The file with another body and the checksum that belongs to it.
pub(crate) fn summed(body: &str) -> String {
    format!("{body},\"sum\":\"{:08x}\"}}\n", crc32c(body.as_bytes()))
}

/// A text in the place of a photo's: the schema knows its signs and its length, not what it shows.
#[test]
fn photos_follow_the_schema_too() {
    let photo = |name: &str, jpeg: &str| Photo { name: name.to_owned(), jpeg: jpeg.to_owned() };
    let good = "0123456789abcdef".repeat(4);
    for (name, jpeg, yes) in [
        (good.as_str(), "/9j/4AAQ", true),
        (&good, &"A".repeat(MOST_BYTES.div_ceil(3) * 4), true),
        (&good, &"A".repeat(MOST_BYTES.div_ceil(3) * 4 + 4), false),
        (&good, "<svg>", false),
        (&good[1..], "/9j/4AAQ", false),
        (&good.to_uppercase(), "/9j/4AAQ", false),
    ] {
        let photos = [photo(name, jpeg), photo(&good, "/9j/4AAQ")];
        is_backup(&backup_with(&lines(V1), &photos, "k3f9q2mw", MADE).0, yes);
    }
}

#[test]
fn every_backup_follows_the_schema() {
    let mut random = 7;
    let demo: Vec<String> = demo("k3f9q2mw", MADE, Zone::GREENWICH, || {
        random = u32::wrapping_add(random, 0x9e37_79b9);
        random
    })
    .into_iter()
    .map(|(_, line)| line)
    .collect();
    for lines in [Vec::new(), lines(V1), demo.clone(), vec!["odd \"\u{1}\n".to_owned(), V1.to_owned()]] {
        is_backup(&backup(&lines, "k3f9q2mw", MADE), true);
    }
}

/// Each field left out, of another type, beyond its bounds; and one too many.
#[test]
fn the_schema_refuses_what_is_broken() {
    let good: Value = serde_json::from_str(&backup(&lines(V1), "k3f9q2mw", MADE)).unwrap();
    let broken = |change: &dyn Fn(&mut Value)| {
        let mut value = good.clone();
        change(&mut value);
        is_backup(&value.to_string(), false);
    };
    for field in good.as_object().unwrap().keys() {
        broken(&|v| drop(v.as_object_mut().unwrap().remove(field)));
        broken(&|v| v[field] = json!({"odd": 1}));
        broken(&|v| v[field] = json!(-1));
    }
    broken(&|v| v["more"] = json!(1));
    broken(&|v| v["set_aside"] = json!([1]));
    broken(&|v| v["sum"] = json!("0123456G"));
    broken(&|v| v["device"] = json!("no name"));
    for field in ["v", "id", "clock", "at", "device", "act", "sum"] {
        broken(&|v| drop(v["entries"][3].as_object_mut().unwrap().remove(field)));
        broken(&|v| v["entries"][3][field] = json!([]));
    }
    broken(&|v| v["entries"][0]["v"] = json!(0));
    broken(&|v| v["entries"][0]["act"] = json!({"One": 1, "Two": 2}));
    broken(&|v| v["entries"][0]["more"] = json!(1));
    broken(&|v| *v = json!([]));
}
