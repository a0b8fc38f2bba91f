//! When candles can ship, by the calendar of the workshop: evenings and mornings that are another day at Greenwich, a change
//! of the clock, and what the Shelf, a batch's page and the lists say of the same batch.

use super::shared::{Shop, id};
use super::zones::{AUCKLAND, LOS_ANGELES};
use potside::book::{Act, Batch, Ending};
use potside::day::{Day, Zone};
use potside::lists::{List, give};
use potside::pot::{Event, StepKey};
use potside::quantity::Voice;
use potside::shelf::{Reason, batch_number};
use std::cell::Cell;

const MINUTE: u64 = 60_000;
const HOUR: u64 = 60 * MINUTE;
/// 24 November 2026, 18:30 in Los Angeles, which is 2:30 on the 25th at Greenwich.
const EVENING: u64 = 1_795_573_800_000;
/// 25 November 2026, 8:30 in Auckland, which is 19:30 on the 24th at Greenwich.
const MORNING: u64 = 1_795_548_600_000;

fn day(text: &str) -> Day {
    Day::read(text).unwrap()
}

/// A pour that began at a time and was in the vessels so many minutes later, with its day written down or not.
fn pour(shop: &mut Shop, batch: &str, at: u64, on: Option<&str>, minutes: u64) {
    let mut act = shop.began(batch, 4);
    if let Act::Began { day: written, .. } = &mut act {
        *written = on.map(day);
    }
    shop.book.act(act, at, 1).unwrap();
    while let Some(step) = shop.state().batches.get(&id(batch)).unwrap().run.now() {
        if step.key == StepKey::Close {
            break;
        }
        let event =
            Event::Did { step: step.key, weighed: None, temperature: None, at: at + minutes * MINUTE };
        shop.book.act(Act::At { batch: id(batch), event }, at + minutes * MINUTE, 2).unwrap();
    }
    let end = Act::Ended { batch: id(batch), how: Ending::Poured, note: String::new() };
    shop.book.act(end, at + minutes * MINUTE, 3).unwrap();
}

fn of<'a>(shop: &'a Shop, name: &str) -> &'a Batch {
    shop.state().batches.get(&id(name)).unwrap()
}

/// The day a batch is ready, which the Shelf, its page and the list say alike.
#[track_caller]
fn ready(shop: &Shop, name: &str, zone: Zone) -> String {
    let batch = of(shop, name);
    let page = shop.state().sells_on(batch, zone).unwrap();
    let shelf = shop.state().shelf(Day(0), zone);
    let stand = shelf.stocks[0].stands.iter().find(|s| s.batch.id.0 == name).unwrap();
    assert_eq!(stand.ready, page, "as on the Shelf");
    let list = give(List::Shelf, shop.state(), zone, Voice::default());
    let row = list.iter().find(|row| row[0] == batch_number(batch)).unwrap();
    assert_eq!(row[6], page.to_string(), "as in the list");
    page.to_string()
}

fn begun(shop: &Shop, zone: Zone) -> Vec<String> {
    let pours = give(List::Pours, shop.state(), zone, Voice::default());
    let lines = give(List::PourLines, shop.state(), zone, Voice::default());
    let mut days: Vec<String> = pours.iter().skip(1).map(|row| row[1].clone()).collect();
    let mut of_lines: Vec<String> = lines.iter().skip(1).map(|row| row[1].clone()).collect();
    for all in [&mut days, &mut of_lines] {
        all.sort();
        all.dedup();
    }
    assert_eq!(days, of_lines);
    days
}

/// Poured on the 24th, solid on the 25th, cured for 14 days on the 9th: by hand.
#[test]
fn an_evening_in_los_angeles() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, None);
    pour(&mut shop, "kept", EVENING, Some("2026-11-24"), 60);
    pour(&mut shop, "before", EVENING, None, 60);
    assert!(batch_number(of(&shop, "kept")).starts_with("261124-"));
    assert!(batch_number(of(&shop, "before")).starts_with("261125-"), "as it was printed");
    for name in ["kept", "before"] {
        assert_eq!(ready(&shop, name, LOS_ANGELES), "2026-12-09", "{name}");
    }
    assert_eq!(begun(&shop, LOS_ANGELES), ["2026-11-24"]);
    // On a journey the day that is known stays.
    for zone in [Zone::GREENWICH, AUCKLAND] {
        assert_eq!(ready(&shop, "kept", zone), "2026-12-09");
        assert_eq!(begun(&shop, zone), ["2026-11-24", "2026-11-25"]);
    }
}

#[test]
fn a_morning_in_auckland() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, None);
    pour(&mut shop, "kept", MORNING, Some("2026-11-25"), 60);
    assert!(batch_number(of(&shop, "kept")).starts_with("261125-"));
    assert_eq!(ready(&shop, "kept", AUCKLAND), "2026-12-10");
    assert_eq!(begun(&shop, AUCKLAND), ["2026-11-25"]);
    // On the 9th there it is the 8th at Greenwich, and they are not ready on either.
    shop.order("o", "Fig", 4, None, false);
    let may = |today: &str| {
        let shelf = shop.state().shelf(day(today), AUCKLAND);
        shelf.orders[0].lines[0].ready
    };
    assert_eq!((may("2026-12-09"), may("2026-12-10")), (0, 4));
}

/// Begun before midnight and filled after it: the number is of the day it began, cure counts from the day it was filled.
#[test]
fn a_pour_past_midnight() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, None);
    pour(&mut shop, "late", EVENING + 5 * HOUR, Some("2026-11-24"), 60);
    assert!(batch_number(of(&shop, "late")).starts_with("261124-"));
    assert_eq!(of(&shop, "late").poured_on(LOS_ANGELES), Some(day("2026-11-25")));
    assert_eq!(ready(&shop, "late", LOS_ANGELES), "2026-12-10");
}

/// On 8 March 2026 the clocks of Los Angeles are put forward, on 1 November back. Poured on 25 February at 23:30, candles
/// are ready on 12 March, though fifteen times 24 hours later it is 0:30 on the 13th there; poured on 24 October at 0:30, on
/// 8 November, though so many hours later it is still the 7th.
#[test]
fn a_change_of_the_clock() {
    for (began, clock, poured, after) in [
        (1_772_089_800_000, "23:10", "2026-02-25", "2026-03-12"),
        (1_792_825_800_000, "00:10", "2026-10-24", "2026-11-08"),
    ] {
        let mut shop = Shop::new();
        shop.product("Fig", 0, None);
        assert_eq!((LOS_ANGELES.clock(began).as_str(), LOS_ANGELES.day(began)), (clock, day(poured)));
        pour(&mut shop, "b", began, Some(poured), 20);
        assert_eq!(ready(&shop, "b", LOS_ANGELES), after);
        let hours = LOS_ANGELES.day(began + 20 * MINUTE + 15 * 24 * HOUR);
        assert_ne!(hours, day(after), "counted in hours it is another day");
    }
}

thread_local! {
    static ASKED: Cell<u32> = const { Cell::new(0) };
}

/// A calendar that counts how often it is asked.
const COUNTED: Zone = Zone(|at| {
    ASKED.set(ASKED.get() + 1);
    at
});

/// After years most batches are gone from the shelf: only of those that stand there the calendar is asked, each time as
/// often, however many orders wait for them.
#[test]
fn the_calendar_is_asked_only_of_what_is_there() {
    let mut shop = Shop::new();
    shop.product("Fig", 0, None);
    for n in 0..30 {
        let name = format!("b{n:02}");
        shop.pour(&name, n, 2);
        if n < 27 {
            shop.moved(n, &name, 2, Reason::Broken);
        }
        if n % 3 == 0 {
            shop.order(&format!("o{n}"), "Fig", 3, None, false);
        }
    }
    ASKED.set(0);
    let shelf = shop.state().shelf(Day(super::shared::FIRST + 60), COUNTED);
    assert_eq!(shelf.stocks[0].stands.len(), 3);
    assert!((1..=3 * 3).contains(&ASKED.get()), "{}", ASKED.get());
}
