//! Lines that no device writes, whole by their checksum: numbers beyond all bounds, fields that are there twice, things within
//! things. Each is set aside with its reason, or says the same however it is written.

use super::sample::{does, ingredient};
use potside::book::{Damage, Entry, Journal, backup, crc32c, read_copy};

fn summed(body: &str) -> String {
    format!("{body},\"sum\":\"{:08x}\"}}", crc32c(body.as_bytes()))
}

#[test]
fn a_whole_line_that_cannot_be_is_set_aside_with_its_reason() {
    let mut journal = Journal::open(vec![], "tablet");
    let entry = does(&mut journal, ingredient("w", "Meadow wax", 862));
    let line = entry.to_line();
    let body = &line[..line.len() - 18];
    assert_eq!(Entry::from_line(&summed(body)), Ok(entry.clone()));
    let cases = [
        ("\"clock\":1", "\"clock\":1e400", "clock"),
        ("\"clock\":1", "\"clock\":1.0", "clock"),
        ("\"clock\":1", "\"clock\":-1", "clock"),
        ("\"clock\":1", "\"clock\":9007199254740993", "its clock"),
        ("\"clock\":1", "\"clock\":18446744073709551616", "clock"),
        ("\"clock\":1", "\"clock\":1,\"clock\":2", "twice"),
        ("\"clock\":1", "\"clock\":01", "not JSON"),
        ("\"at\":1764000000000", "\"at\":1764000000000,\"\\u0061t\":3", "twice"),
        ("\"0.862\"", "\"1e400\"", "density"),
        ("\"id\":\"w\"", "\"id\":\"w\",\"id\":\"v\"", "twice"),
        ("\"id\":\"w\"", "\"id\":\"../w\"", "id"),
        ("\"act\":{", "\"act\":{\"Retire\":{\"id\":\"w\",\"retired\":true},", "not known"),
        ("\"act\":", "\"odd\":[[[[{\"x\":1e400}]]]],\"act\":", ""),
    ];
    for (old, new, reason) in cases {
        let changed = body.replacen(old, new, 1);
        assert_ne!(changed, body, "{old}");
        let hostile = summed(&changed);
        match Entry::from_line(&hostile) {
            Ok(read) => assert!(reason.is_empty() && read == entry, "{hostile}"),
            Err(Damage::Unknown { reason: said }) => {
                assert!(!reason.is_empty() && said.contains(reason), "{said}")
            }
            Err(other) => panic!("{hostile}: {other}"),
        }
        // In a copy it is left out with its line, or taken in as it stands.
        let copy = read_copy(&backup(std::slice::from_ref(&hostile), "tablet", 1), &Journal::default());
        match copy {
            Ok(copy) => assert_eq!((copy.fresh[0].1.as_str(), reason), (hostile.as_str(), "")),
            Err(why) => assert!(why.to_string().ends_with('.') && !reason.is_empty()),
        }
    }
}
