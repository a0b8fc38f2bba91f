//! A pour that is on counts: its candles as candles to come, and what it takes as taken. The rules are our own.

use super::agenda::{TODAY, agenda, shop};
use super::common::Workshop;
use super::shared::{FIRST, Shop, id};
use potside::book::{Act, Ending, Id, Settings};
use potside::day::{Day, Zone};
use potside::pot::Target;
use potside::quantity::Exact;
use potside::shelf::agenda::{Agenda, Picks};
use potside::shelf::planning::{Plan, Search};
use potside::shelf::{Stock, When};
use potside::stores::{Ledger, Source};

/// The shop with an order of six, to be there in thirty days, and enough of everything for 64 candles.
fn ordered() -> Shop {
    let mut shop = shop();
    shop.grams("coco", "Coco", 4_000);
    shop.grams("soy", "Soy", 9_000);
    shop.grams("figs", "Fig leaf", 1_100);
    shop.pieces("cups", "Tumbler", 64);
    shop.pieces("wicks", "Cotton 12", 64);
    shop.pieces("lids", "Lid", 64);
    shop.product_of("Fig", &["Lid"]);
    shop.order("o", "Fig", 6, Some(50), false);
    shop
}

/// Begins a pour that takes everything from those lots.
fn begin(shop: &mut Shop, batch: &str, vessels: u32) -> Id {
    let began = shop.begin(batch, 20, vessels);
    let lots =
        [("Coco", "coco"), ("Soy", "soy"), ("Fig leaf", "figs"), ("Tumbler", "cups"), ("Cotton 12", "wicks")];
    let sources = lots.map(|(part, lot)| Source { part: part.into(), lots: vec![id(lot)] });
    shop.act(20, Act::TakenFrom { batch: id(batch), sources: sources.into() });
    began
}

/// Being poured, for an order or not.
fn coming(stock: &Stock) -> i64 {
    stock.coming.iter().map(|s| s.left).sum()
}

fn plan(agenda: &Agenda) -> Plan {
    let mut search = Search::new(agenda.problem.clone());
    while !search.step(100_000) {}
    search.plan()
}

/// What is there of each by name, to be planned with.
fn there(agenda: &Agenda) -> Vec<(String, u64)> {
    let names = agenda.stuffs.iter().map(|s| s.name.clone());
    let mut all: Vec<_> = names.zip(agenda.problem.supplies.iter().copied()).collect();
    all.sort();
    all
}

fn numbers(plan: &Plan) -> Vec<u32> {
    plan.pours.iter().map(|p| p.number).collect()
}

/// Eight are planned for six and a spare of two. With eight at the pot nothing more is, and what the stores are said to
/// have is the same before each step, whether it is weighed already or not, and when all is done.
#[test]
fn what_is_being_poured_is_not_planned_again() {
    let mut shop = ordered();
    let before = agenda(&shop, &Picks::default());
    assert_eq!(numbers(&plan(&before)), [8]);
    // By the sum of the pour's own sheet; micrograms of what is weighed.
    let sheet = Workshop::new().plan(Target::Vessels(8)).unwrap().needs();
    let mut left = there(&before);
    for (name, left) in &mut left {
        let of = sheet.iter().find(|n| n.name == *name);
        let used =
            of.map_or(8, |n| u64::try_from((n.mass.in_base() * Exact::whole(1_000_000)).ceil()).unwrap());
        *left -= used;
    }
    begin(&mut shop, "b", 8);
    let mut steps = 0;
    loop {
        let asked = agenda(&shop, &Picks::default());
        assert_eq!(there(&asked), left, "at step {steps}");
        // Poured today it is solid tomorrow and cured 14 days later.
        assert_eq!(asked.problem.goods[0].stock, [(15, 8)]);
        assert_eq!((numbers(&plan(&asked)), plan(&asked).lines[0].on_time), (vec![], 6));
        let shelf = shop.state().shelf(TODAY, Zone::GREENWICH);
        let (line, stock) = (&shelf.orders[0].lines[0], &shelf.stocks[0]);
        assert_eq!((line.short, shelf.orders[0].poured(), stock.short, stock.poured), (6, 6, 6, 6));
        assert_eq!(shelf.orders[0].when(), When::Coming(Day(FIRST + 35)));
        assert_eq!((stock.left(), coming(stock), stock.spare_missing()), (0, 8, 0));
        assert!(
            shelf.orders[0].shipment(TODAY, potside::shelf::Fit::Unfinished).is_empty(),
            "it is not there yet"
        );
        if !shop.step("b", 20) {
            break;
        }
        steps += 1;
    }
    assert!(steps > 15, "{steps}");
    shop.end("b", 20, Ending::Poured);
    let asked = agenda(&shop, &Picks::default());
    assert_eq!((there(&asked), numbers(&plan(&asked))), (left.clone(), vec![]));
    assert_eq!(shop.state().shelf(TODAY, Zone::GREENWICH).stocks[0].poured, 0, "it stands there now");
    // With its last step its lids are counted out, and are not spoken for any more.
    shop.finish("b", 21);
    shop.from("b", "Lid", "lids");
    assert_eq!(there(&agenda(&shop, &Picks::default())), left);
}

/// Poured today, solid, cured, finished: the day an order can ship is the same while its candles are being poured and when
/// they stand there, until they are finished. Days of the workshop, and of the product where it has its own.
#[test]
fn the_day_that_was_said_is_the_same_once_the_pour_has_ended() {
    for (solid, finish, own, day) in [
        (None, None, None, 15),
        (Some(0), None, None, 14),
        (Some(2), Some(3), None, 19),
        (None, Some(1), Some(0), 2),
    ] {
        let mut shop = ordered();
        let settings = Settings { solid_days: solid, finish_days: finish, ..shop.state().settings.clone() };
        shop.act(20, Act::Settings(settings));
        if own.is_some() {
            shop.product("Fig", 0, own);
        }
        let when = |shop: &Shop, day: u32| {
            shop.state().shelf(Day(FIRST + day), Zone::GREENWICH).orders[0].when().day()
        };
        let there = |shop: &Shop| agenda(shop, &Picks::default()).problem.goods[0].stock.clone();
        let said = Day(FIRST + 20 + day);
        let lead = shop.state().shelf(TODAY, Zone::GREENWICH).orders[0].lines[0].lead;
        assert_eq!(lead.from(TODAY), said, "before it is begun");
        begin(&mut shop, "b", 6);
        assert_eq!((when(&shop, 20), there(&shop)), (said, vec![(day, 6)]), "while it is on");
        while shop.step("b", 20) {}
        assert_eq!((when(&shop, 20), there(&shop)), (said, vec![(day, 6)]), "with its last step");
        shop.end("b", 20, Ending::Poured);
        let kept = shop.state().shelf(TODAY, Zone::GREENWICH).orders[0].lines[0].kept[0].ready;
        assert_eq!(when(&shop, 20), said, "ended");
        assert_eq!(kept, Day(said.0 - finish.unwrap_or_default()), "cured by then, and then finished");
        assert_eq!(when(&shop, 21), said, "the next day");
        // Finished while it cures it goes sooner; finished late, later.
        assert_eq!(when(&shop, 60), Day(FIRST + 60 + finish.unwrap_or_default()));
        shop.finish("b", 21);
        let solid = Day(kept.0 - solid.unwrap_or(1));
        assert_eq!(when(&shop, 21), solid.max(Day(FIRST + 21)), "seen to be solid, it is not waited for");
    }
}

/// Given up, or taken back, it is as if it had not been begun, but for what was weighed.
#[test]
fn given_up_or_taken_back_it_is_planned_again() {
    let mut shop = ordered();
    let before = there(&agenda(&shop, &Picks::default()));
    let began = begin(&mut shop, "b", 8);
    assert_ne!(there(&agenda(&shop, &Picks::default())), before);
    shop.act(20, Act::Undo { entry: began });
    let asked = agenda(&shop, &Picks::default());
    assert_eq!((there(&asked), numbers(&plan(&asked))), (before.clone(), vec![8]));

    begin(&mut shop, "c", 8);
    assert!(shop.step("c", 20));
    let ended = shop.end("c", 20, Ending::GivenUp);
    let asked = agenda(&shop, &Picks::default());
    assert_eq!(numbers(&plan(&asked)), [8]);
    let changed: Vec<_> = there(&asked).into_iter().filter(|now| !before.contains(now)).collect();
    assert_eq!(changed.len(), 1, "what was weighed is gone: {changed:?}");
    assert_eq!(shop.state().shelf(TODAY, Zone::GREENWICH).orders[0].when(), When::IfPoured(Day(FIRST + 35)));
    shop.act(20, Act::Undo { entry: ended });
    assert_eq!(numbers(&plan(&agenda(&shop, &Picks::default()))), Vec::<u32>::new(), "it goes on");
}

/// Two tablets, a pour of four on each: the books merged have eight to come, and both take of the same lots.
#[test]
fn two_pours_count_both() {
    let mut shop = ordered();
    let mut other = shop.on("phone");
    begin(&mut shop, "b", 4);
    begin(&mut other, "c", 4);
    let one = shop.state().shelf(TODAY, Zone::GREENWICH).orders[0].when();
    assert_eq!(one, When::IfPoured(Day(FIRST + 35)), "four of six are being poured");
    assert_eq!(numbers(&plan(&agenda(&shop, &Picks::default()))), [4]);
    for entry in other.book.journal().entries() {
        shop.book.hear(entry.to_line());
    }
    let shelf = shop.state().shelf(TODAY, Zone::GREENWICH);
    let names: Vec<_> =
        shelf.orders[0].lines[0].coming.iter().map(|s| (s.batch.id.0.as_str(), s.number)).collect();
    assert_eq!(names, [("b", 4), ("c", 2)]);
    assert_eq!((shelf.orders[0].when(), coming(&shelf.stocks[0])), (When::Coming(Day(FIRST + 35)), 8));
    let asked = agenda(&shop, &Picks::default());
    assert_eq!(numbers(&plan(&asked)), Vec::<u32>::new());
    let ledger = Ledger::of(shop.state(), Zone::GREENWICH);
    let cups = ledger.account("Tumbler").unwrap();
    assert_eq!(
        (cups.left(), cups.reserved(), cups.free()),
        (Exact::whole(64), Exact::whole(8), Exact::whole(56))
    );
}

/// More is to be taken than is there: nothing is below zero. And what is on hold brings no candles.
#[test]
fn what_is_not_there_is_not_set_aside_and_what_is_on_hold_is_not_expected() {
    let mut shop = shop();
    shop.pieces("cups", "Tumbler", 5);
    shop.grams("coco", "Coco", 100);
    shop.order("o", "Fig", 6, Some(50), false);
    begin(&mut shop, "b", 8);
    let ledger = Ledger::of(shop.state(), Zone::GREENWICH);
    for account in &ledger.accounts {
        assert_eq!((account.reserved(), account.free()), (account.left(), Exact::ZERO), "{}", account.name);
    }
    shop.step("b", 20);
    shop.hold("coco", 20, true);
    let shelf = shop.state().shelf(TODAY, Zone::GREENWICH);
    assert_eq!((shelf.stocks[0].poured, shelf.stocks[0].coming.len()), (0, 1));
    assert_eq!(shelf.orders[0].when(), When::IfPoured(Day(FIRST + 35)));
    assert!(agenda(&shop, &Picks::default()).problem.goods[0].stock.is_empty());
}
