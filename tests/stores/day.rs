//! The stores by the calendar of the workshop: what is used in the evening is used that day, and a lot is there from the
//! morning on which it came, not from the evening before.

use super::shared::{FIRST, Shop, at, grams_of, id, whole};
use super::zones::{AUCKLAND, LOS_ANGELES};
use potside::book::Act;
use potside::day::{Day, Zone};
use potside::pot::{Event, StepKey};
use potside::quantity::{Mass, Money, Voice};
use potside::stores::{Chart, Ledger};

const HOUR: u64 = 3_600_000;

/// Weighs so many grams out of a lot, so many hours from noon of a day at Greenwich.
fn used(shop: &mut Shop, batch: &str, day: u32, hours: u64, grams: i128, lot: &str) {
    shop.begin(batch, day);
    shop.from(batch, day, "Coco", &[lot]);
    let (step, weighed) = (StepKey::Wax { pour: 0, line: 0 }, Some(Mass::base(whole(grams))));
    let event = Event::Did { step, weighed, temperature: None, at: at(day) + hours * HOUR };
    shop.act(day, Act::At { batch: id(batch), event });
}

/// 10 g every evening at eight in Los Angeles, which is four in the morning of the next day at Greenwich: on the evening of
/// the thirtieth day all of the last thirty are counted, 10 g each, and no day was without.
#[test]
fn what_goes_in_the_evening_goes_that_day() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 1000, 1000);
    for day in 1..=30 {
        used(&mut shop, &format!("p{day:02}"), day, 16, 10, "a");
    }
    let pace = |zone: Zone| {
        let ledger = Ledger::of(shop.state(), zone);
        ledger.accounts[0].pace(Day(FIRST + 30), zone).unwrap()
    };
    assert_eq!((pace(LOS_ANGELES).daily, pace(LOS_ANGELES).spread), (whole(10), 0.0));
    assert!(pace(Zone::GREENWICH).daily < whole(10), "that evening is tomorrow there");
}

/// The same in the mornings of Auckland, which are of the day before at Greenwich.
#[test]
fn what_goes_in_the_morning_goes_that_day() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 1000, 1000);
    // The first day on which the book knows of it is the first there.
    for day in 2..=30 {
        // Nine in the morning.
        used(&mut shop, &format!("p{day:02}"), day - 1, 8, 10, "a");
    }
    let ledger = Ledger::of(shop.state(), AUCKLAND);
    let pace = ledger.accounts[0].pace(Day(FIRST + 30), AUCKLAND).unwrap();
    assert_eq!((pace.daily, pace.spread), (whole(10), 0.0));
}

/// 100 g at 1.00 were there, and on the evening before 100 g at 3.00 came 50 g were used: they cost 0.50 by the average of
/// what was there, and not 1.00 as if the dearer lot had come already.
#[test]
fn a_lot_is_there_from_the_day_it_came() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 100, 100);
    shop.act(9, Act::Lot { id: id("b"), over: None, body: grams_of("Coco", "b", 10, 100, 300) });
    used(&mut shop, "p", 9, 16, 50, "a");
    let average = |zone: Zone| Ledger::of(shop.state(), zone).accounts[0].takes[0].average;
    assert_eq!((average(LOS_ANGELES), average(Zone::GREENWICH)), (Money(50), Money(100)));
}

/// The picture begins on the day that stands on the lot.
#[test]
fn the_picture_begins_on_the_day_of_the_first_lot() {
    let mut shop = Shop::new();
    shop.lot("a", "Coco", 0, 1000, 1000);
    used(&mut shop, "p", 20, 0, 100, "a");
    for (zone, write) in [
        (LOS_ANGELES, (|at| LOS_ANGELES.day(at).to_string()) as fn(u64) -> String),
        (AUCKLAND, |at| AUCKLAND.day(at).to_string()),
    ] {
        let ledger = Ledger::of(shop.state(), zone);
        let standing = ledger.standing(&ledger.accounts[0], shop.state(), Day(FIRST + 30), Voice::default());
        let chart = Chart::of(&standing, at(30), Voice::default(), write).unwrap();
        assert_eq!(chart.words[0].text, "2025-01-01");
    }
}
