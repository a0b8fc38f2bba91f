//! What is held on to and left out is kept in the book: until it is poured, and for the day.

use super::shared::{FIRST, Shop, id};
use potside::book::{Act, Ending, Entry, Id, Journal};
use potside::day::{Day, Zone};
use potside::pot::Target;
use potside::shelf::agenda::{Pick, Picks};
use potside::shelf::{Pins, Taken};
use potside::wire;

const DAY: Day = Day(FIRST + 20);

fn pinned(product: &str, pours: &[u32], not_on: Option<Day>) -> Act {
    said(product, Pins { pours: pours.to_vec(), not_on, on: Vec::new() })
}

fn said(product: &str, body: Pins) -> Act {
    Act::Pinned { product: id(product), body }
}

fn numbers(picks: &Picks) -> Vec<(&str, u32)> {
    picks.pinned.iter().map(|p| (p.product.0.as_str(), p.number)).collect()
}

fn shop() -> Shop {
    let mut shop = Shop::new();
    shop.product("Fig", 2, None);
    shop.act(20, pinned("Fig", &[4, 8, 8], Some(DAY)));
    shop
}

#[test]
fn it_is_kept_as_text_and_read_back() {
    for (act, text) in [
        (
            pinned("Fig", &[4, 8], Some(Day(FIRST))),
            r#"{"Pinned":{"product":"Fig","body":{"pours":[4,8],"not_on":"2025-01-01"}}}"#,
        ),
        (pinned("Fig", &[], None), r#"{"Pinned":{"product":"Fig","body":{"pours":[]}}}"#),
        (
            said("Fig", Pins { on: vec![Taken { batch: id("b"), number: 8 }], ..Pins::default() }),
            r#"{"Pinned":{"product":"Fig","body":{"pours":[],"on":[{"batch":"b","number":8}]}}}"#,
        ),
    ] {
        assert_eq!(wire::write(&act), text);
        assert_eq!(wire::read(text), Ok(act));
    }
}

#[test]
fn it_outlives_the_app_and_not_today_is_for_the_day() {
    let shop = shop();
    let lines = shop.book.journal().entries().iter().map(Entry::to_line).collect();
    let again = Journal::open(lines, "another");
    for state in [shop.state(), again.state()] {
        let today = state.picks(DAY);
        assert_eq!(numbers(&today), [("Fig", 4), ("Fig", 8), ("Fig", 8)]);
        assert_eq!(today.dropped, [id("Fig")]);
        assert!(state.picks(Day(DAY.0 + 1)).dropped.is_empty());
    }
}

/// Ended as given up it is not poured; poured before it was said, it was another.
#[test]
fn what_is_poured_is_held_no_more() {
    let mut shop = shop();
    shop.pour("earlier", 19, 8);
    assert_eq!(numbers(&shop.state().picks(DAY)).len(), 3);
    let plan = super::common::Workshop::new().plan(Target::Vessels(8)).unwrap();
    let (formula, version, vessel) = (id("f"), id("e"), id("v"));
    shop.act(21, Act::Began { batch: id("no"), formula, version, vessel, day: None, plan: plan.into() });
    assert_eq!(
        numbers(&shop.state().picks(DAY)),
        [("Fig", 4), ("Fig", 8)],
        "being poured, it counts already"
    );
    shop.act(21, Act::Ended { batch: id("no"), how: Ending::GivenUp, note: String::new() });
    assert_eq!(numbers(&shop.state().picks(DAY)).len(), 3, "given up, it is wanted again");
    shop.pour("one", 22, 8);
    assert_eq!(numbers(&shop.state().picks(DAY)), [("Fig", 4), ("Fig", 8)]);
    // One more was filled than was held on to.
    shop.pour("two", 22, 5);
    assert_eq!(numbers(&shop.state().picks(DAY)), [("Fig", 8)]);
    // What is said next says what is left, and is poured no sooner than it is said.
    let picks = shop.state().picks(DAY);
    let body = shop.state().pins_of(&picks, &id("Fig"), DAY);
    assert_eq!(body, Pins { pours: vec![8], not_on: Some(DAY), on: Vec::new() });
    shop.act(23, Act::Pinned { product: id("Fig"), body });
    assert_eq!(numbers(&shop.state().picks(DAY)), [("Fig", 8)]);
}

/// The plan is changed while a pour is on, as in the room: what is left is held on to, and a pour of four more. Given up, the
/// pour is held on to again; poured, or gone on with, it is not.
#[test]
fn a_pour_that_is_given_up_comes_back_though_the_plan_changed_meanwhile() {
    let mut shop = shop();
    let held =
        |shop: &Shop| numbers(&shop.state().picks(DAY)).into_iter().map(|(_, n)| n).collect::<Vec<_>>();
    let change = |shop: &mut Shop, day: u32, more: &[u32]| {
        let mut picks = shop.state().picks(DAY);
        picks.pinned.extend(more.iter().map(|number| Pick { product: id("Fig"), number: *number }));
        let body = shop.state().pins_of(&picks, &id("Fig"), DAY);
        shop.act(day, said("Fig", body));
    };
    shop.begin("b", 21, 7);
    assert_eq!(held(&shop), [4, 8], "it is the nearest one, of eight");
    change(&mut shop, 22, &[4]);
    change(&mut shop, 23, &[]);
    assert_eq!(held(&shop), [4, 8, 4]);
    let ended = shop.end("b", 24, Ending::GivenUp);
    assert_eq!(held(&shop), [4, 8, 4, 8]);
    shop.act(24, Act::Undo { entry: ended });
    assert_eq!(held(&shop), [4, 8, 4], "it goes on");
    // Changed once more and poured, it is gone for good.
    change(&mut shop, 25, &[]);
    shop.end("b", 25, Ending::Poured);
    assert_eq!(held(&shop), [4, 8, 4]);
    change(&mut shop, 26, &[]);
    assert_eq!(held(&shop), [4, 8, 4]);
    let began = shop.begin("c", 27, 4);
    assert_eq!(held(&shop), [8, 4]);
    change(&mut shop, 28, &[]);
    shop.act(28, Act::Undo { entry: began });
    assert_eq!(held(&shop), [8, 4, 4], "taken back as if it had not begun");
}

#[test]
fn what_is_held_of_other_products_stays_and_it_can_be_undone() {
    let mut shop = shop();
    shop.product("Plum", 0, None);
    let said = shop.act(21, pinned("Plum", &[4], None));
    assert_eq!(numbers(&shop.state().picks(DAY)).len(), 4);
    shop.act(22, pinned("Plum", &[], None));
    assert_eq!(numbers(&shop.state().picks(DAY)).len(), 3);
    let last: Id = shop.book.journal().entries().last().unwrap().id.clone();
    shop.act(22, Act::Undo { entry: last });
    assert_eq!(numbers(&shop.state().picks(DAY)).len(), 4);
    shop.act(22, Act::Undo { entry: said });
    assert_eq!(numbers(&shop.state().picks(DAY)).len(), 3);
}

/// A product that is gone is planned no more, and what was held of it does not stand in the way.
#[test]
fn a_product_that_is_gone_takes_its_pours_along() {
    let mut shop = shop();
    shop.act(21, pinned("nobody", &[4], Some(DAY)));
    shop.act(21, Act::Retire { id: id("Fig"), retired: true });
    let state = shop.state();
    let asked = state.agenda(
        &state.shelf(DAY, Zone::GREENWICH),
        &potside::stores::Ledger::of(state, Zone::GREENWICH),
        &state.picks(DAY),
        potside::quantity::Voice::default(),
    );
    assert!(asked.problem.pinned.is_empty() && asked.refused.is_empty() && asked.items.is_empty());
}
