//! Books of every format that was ever written open for ever, and say what they said.

use super::sample::{entry, ingredient};
use potside::book::{Book, Entry, FORMAT, Journal, LINKS, Link, State, crc32c, today};
use potside::wire::{Json, Wire, write};
use serde_json::Value;

const V1: &str = include_str!("../fixtures/v1.journal");

fn json(value: &impl Wire) -> String {
    write(value)
}

/// What a person would read in the book, in lines; of single values only, so that a later field changes nothing.
fn tell(state: &State) -> String {
    let mut told = String::new();
    let mut say = |line: String| told.extend([&line, "\n"]);
    for (id, k) in state.formulas.iter() {
        for (n, v) in k.versions.iter().enumerate() {
            let f = &v.body;
            say(format!(
                "formula {id} version {} of {} at {} over {:?}: {}",
                n + 1,
                v.device,
                v.at,
                v.over,
                f.name
            ));
            say(format!(
                "  melt {} pour {}, {}",
                json(&f.melt_to),
                json(&f.pour.warmed),
                json(&f.pour.unwarmed)
            ));
            say(format!("  usual {} cure {} note {}", json(&f.usual), f.cure_days, json(&f.note)));
            for w in &f.wax {
                say(format!("  wax {} {} flash {}", w.name, json(&w.share), json(&w.flash)));
            }
            for p in &f.parts {
                say(format!("  {:?} {} {} at {}", p.kind, p.name, json(&p.basis), json(&p.add)));
                say(format!(
                    "    {} min, highest {} flash {}",
                    p.stir_minutes,
                    json(&p.highest),
                    json(&p.flash)
                ));
            }
            for v in &f.vessels {
                say(format!("  in {} with {}", v.vessel, v.wick));
            }
        }
    }
    for (id, k) in state.vessels.iter() {
        let v = k.body().expect("it has a version");
        say(format!(
            "vessel {id} put away {}: {} {} wall {} {}",
            k.retired,
            v.name,
            json(&v.fill),
            json(&v.wall),
            v.note
        ));
        say(format!("  water {} inside {}", json(&v.water), json(&v.inside)));
    }
    for (id, s) in state.scales.iter().filter_map(|(id, k)| Some((id, k.body()?))) {
        say(format!("scale {id}: {} {} {} {}", s.name, json(&s.capacity), json(&s.division), json(&s.least)));
    }
    for (id, p) in state.pots.iter().filter_map(|(id, k)| Some((id, k.body()?))) {
        say(format!("pot {id}: {} {}", p.name, json(&p.capacity)));
    }
    for (id, i) in state.ingredients.iter().filter_map(|(id, k)| Some((id, k.body()?))) {
        say(format!(
            "ingredient {id}: {} {} {} {}",
            i.name,
            json(&i.density),
            json(&i.drops),
            json(&i.spoons)
        ));
    }
    say(format!("residue {} tolerance {}", json(&state.settings.residue), json(&state.settings.tolerance)));
    for (id, b) in state.batches.iter() {
        say(format!(
            "batch {id} of {} version {} in {} at {}: {:?}",
            b.formula, b.version, b.vessel, b.began, b.ended
        ));
        let p = &b.run.plan;
        say(format!("  {} × {} of {} in {} with {}", p.vessels, json(&p.fill), p.formula, p.vessel, p.wick));
        for line in p.pours.iter().flat_map(|p| &p.lines) {
            say(format!("  {} {} as {}", line.name, json(&line.exact), json(&line.dose.mass())));
        }
        for event in b.run.events() {
            say(format!("  {}", json(event)));
        }
    }
    for (id, i) in state.ignored.iter() {
        say(format!("ignored {id}: {} {}", i.thing, i.why));
    }
    told
}

/// `v1.txt` was looked over line by line against what was typed in; it is not made anew when a test fails.
#[test]
fn a_book_of_format_1_opens_and_says_what_it_said() {
    let journal = Journal::open(V1.lines().map(str::to_owned).collect(), "k3f9q2mw");
    assert_eq!(journal.damaged(), []);
    assert_eq!(tell(journal.state()), include_str!("../fixtures/v1.txt"));
}

/// Everything in `old` is in `new` as it was; `new` may have more.
pub(crate) fn kept(old: &Value, new: &Value) -> bool {
    match (old, new) {
        (Value::Object(old), Value::Object(new)) => {
            old.iter().all(|(k, v)| new.get(k).map_or(v.is_null(), |n| kept(v, n)))
        }
        (Value::Array(old), Value::Array(new)) => {
            old.len() == new.len() && old.iter().zip(new).all(|(o, n)| kept(o, n))
        }
        (old, new) => old == new,
    }
}

#[test]
fn nothing_of_an_entry_of_format_1_is_lost_on_reading() {
    for line in V1.lines() {
        let entry = Entry::from_line(line).expect("the fixture is whole");
        let old: Value = serde_json::from_str(line).expect("it is JSON");
        let new: Value = serde_json::from_str(&json(&entry.act)).expect("it is JSON");
        assert!(kept(&old["act"], &new), "{line}");
    }
}

/// The line as if it had been written in another format.
fn in_format(line: &str, format: u32) -> String {
    let (body, _) = line.rsplit_once(",\"sum\"").expect("every line has a checksum");
    let body = body.replacen(&format!("{{\"v\":{FORMAT},"), &format!("{{\"v\":{format},"), 1);
    format!("{body},\"sum\":\"{:08x}\"}}", crc32c(body.as_bytes()))
}

#[test]
fn every_format_there_was_is_read() {
    assert_eq!(LINKS.len() + 1, FORMAT as usize);
    let entry = entry("e", 1, ingredient("w", "Meadow wax", 862));
    for format in 1..=FORMAT {
        assert_eq!(Entry::from_line(&in_format(&entry.to_line(), format)), Ok(entry.clone()), "{format}");
    }
    assert!(Entry::from_line(&in_format(&entry.to_line(), FORMAT + 1)).is_err());
}

/// A link that is missing, or gone through twice or in another order, shows in the letters it leaves.
#[test]
fn a_line_goes_through_every_link_from_its_own_format_on() {
    fn leave<'a>(json: Json<'a>, letter: &'static str) -> Json<'a> {
        let Json::List(mut letters) = json else { return json };
        letters.push(Json::Number(letter));
        Json::List(letters)
    }
    fn one(json: Json) -> Json {
        leave(json, "1")
    }
    fn two(json: Json) -> Json {
        leave(json, "2")
    }
    fn three(json: Json) -> Json {
        leave(json, "3")
    }
    let links: [Link; 3] = [one, two, three];
    for (format, want) in [(1, "123"), (2, "23"), (3, "3"), (4, "")] {
        let Json::List(letters) = today(format, Json::List(Vec::new()), &links) else {
            panic!("it stays a list")
        };
        let got: String = letters.iter().map(|l| if let Json::Number(n) = l { n } else { "?" }).collect();
        assert_eq!(got, want, "from format {format}");
    }
}

/// Nothing that is stored is written anew because a later app opened it.
#[test]
fn a_book_of_format_1_goes_on_and_its_lines_stay_as_they_are() {
    let mut book = Book::open(V1.lines().map(str::to_owned).collect(), "k3f9q2mw");
    assert_eq!(book.to_store(), None);
    book.act(ingredient("w", "Chalk wax", 900), 1, 1).expect("it can be written");
    let stored = book.to_store().expect("one waits");
    assert_eq!(stored.len(), 1);
    assert!(stored[0].1.starts_with(&format!("{{\"v\":{FORMAT},")), "{}", stored[0].1);
    let mut lines: Vec<String> = V1.lines().map(str::to_owned).collect();
    lines.push(stored[0].1.clone());
    let again = Journal::open(lines, "k3f9q2mw");
    assert_eq!(again.damaged(), []);
    assert_eq!(again.state(), book.state());
}
