//! What the shopping list says that the pours lack: worked out by hand, and against the search with the stores as they are.

use super::agenda::{TODAY, agenda, shop};
use super::common::{Workshop, read};
use super::shared::{Shop, id};
use potside::bench::Ingredient;
use potside::book::Act;
use potside::day::Zone;
use potside::formula::PartKind;
use potside::quantity::{Amount, Exact, Mass, MassUnit, Money, Voice};
use potside::shelf::agenda::{Agenda, Batches, Pick, Picks};
use potside::shelf::planning::{Plan, Problem, Search};
use potside::stores::{Lack, Ledger, LotEvent, Offer, Pack, Standing, Supply};
use potside::vessel::{FillRule, Vessel};
use proptest::prelude::*;

fn best(problem: Problem) -> Plan {
    let mut search = Search::new(problem);
    while !search.step(10_000) {}
    let plan = search.plan();
    assert!(plan.closed());
    plan
}

fn lacks(shop: &Shop, picks: &Picks) -> (Agenda, Plan, Vec<Lack>) {
    let asked = agenda(shop, picks);
    let plan = best(asked.with_enough());
    let lacks = asked.shortages(&plan);
    (asked, plan, lacks)
}

fn grams(lack: &Lack) -> f64 {
    lack.amount.to_f64()
}

/// Of the formula every four candles take 2.15 oz of fragrance, 60.95 g. Six ordered and two wished are a batch of eight,
/// 121.9 g of which 100 g are there: 21.9 g are lacking; and eight tumblers, of which five are there.
#[test]
fn what_the_best_pours_take_beyond_what_is_there() {
    let mut shop = shop();
    shop.order("o", "Fig", 6, Some(60), false);
    assert!(lacks(&shop, &Picks::default()).2.is_empty(), "what there is no lot of is not counted");
    shop.grams("figs", "Fig leaf", 100);
    shop.pieces("cups", "Tumbler", 5);
    shop.grams("soy", "Soy", 90_000);
    let (asked, plan, found) = lacks(&shop, &Picks::default());
    let names: Vec<_> = found.iter().map(|l| (l.name.as_str(), l.pours.as_str())).collect();
    assert_eq!(names, [("Fig leaf", "8 × Fig"), ("Tumbler", "8 × Fig")]);
    let eight = 2.0 * Mass::in_base(read::<Mass>("2.15 oz").value).to_f64();
    assert!((grams(&found[0]) - (eight - 100.0)).abs() < 0.02, "{found:?}");
    assert_eq!(found[1].amount, Exact::whole(3));
    // Said of what the pours take only.
    let unknown = asked.unknown(&plan);
    assert!(unknown.contains("“Coco”") && unknown.contains("“Cotton 12”"), "{unknown}");
    assert!(!unknown.contains("Soy") && !unknown.contains("Tumbler") && !unknown.contains("Fig leaf"));
    // The stores as they are reach for four: the list is not of that.
    assert_eq!(best(asked.problem.clone()).pours.iter().map(|p| p.number).collect::<Vec<_>>(), [4]);
    // What is held on to, and what is not poured today.
    let pinned = Picks { pinned: vec![Pick { product: id("Fig"), number: 12 }], ..Picks::default() };
    let (_, _, found) = lacks(&shop, &pinned);
    assert_eq!((found[1].amount, found[1].pours.as_str()), (Exact::whole(7), "12 × Fig"));
    let dropped = Picks { dropped: vec![id("Fig")], ..Picks::default() };
    let (asked, plan, found) = lacks(&shop, &dropped);
    assert!(found.is_empty() && asked.unknown(&plan).is_empty());
    // What is on hold is not there; and with enough nothing lacks.
    shop.hold("cups", 1, true);
    assert_eq!(lacks(&shop, &Picks::default()).2[1].amount, Exact::whole(8));
    shop.hold("cups", 2, false);
    shop.grams("more", "Fig leaf", 22);
    shop.pieces("more-cups", "Tumbler", 3);
    assert_eq!(lacks(&shop, &Picks::default()).2, []);
}

/// Batches reckoned one after the other, as the page does between its frames, make the same to ask as all in one go; and
/// what is reckoned is taken as it is.
#[test]
fn batches_reckoned_one_by_one_are_the_same() {
    let mut shop = shop();
    shop.product("Plum", 3, None);
    shop.order("o", "Plum", 6, Some(60), false);
    shop.grams("figs", "Fig leaf", 100);
    let held = |number| Pick { product: id("Plum"), number };
    // A size that is not among the usual ones, one that is, one that no pot holds, and one of a product there is not.
    let picks = Picks {
        pinned: vec![held(12), held(8), held(400), Pick { product: id("none"), number: 4 }],
        dropped: vec![id("Fig")],
        ..Picks::default()
    };
    let (state, voice) = (shop.state(), Voice::default());
    let (shelf, ledger) = (state.shelf(TODAY, Zone::GREENWICH), Ledger::of(state, Zone::GREENWICH));
    let asked = |batches: &Batches| state.agenda_with(batches, &shelf, &ledger, &picks, voice);
    let whole = agenda(&shop, &picks);
    assert_eq!((whole.problem.pinned.len(), whole.refused.len()), (2, 1));
    let mut batches = state.batches(&picks);
    let mut reckoned = 0;
    while state.reckon(&mut batches, voice) {
        reckoned += 1;
        assert_eq!(asked(&batches), whole, "what is not reckoned yet is reckoned when it is asked for");
    }
    assert_eq!(reckoned, 2 * state.settings.sizes().len() + 4);
    // They are not reckoned again: asked in a book whose tumblers take more, they are as they were.
    let fuller = state.vessels.get(&id("v")).and_then(|kept| kept.body()).unwrap();
    let fuller = Vessel { fill: FillRule::Weight(read("190 g")), ..fuller.clone() };
    shop.act(0, Act::Vessel { id: id("v"), over: None, body: fuller });
    assert_ne!(agenda(&shop, &picks).problem, whole.problem);
    let state = shop.state();
    let (shelf, ledger) = (state.shelf(TODAY, Zone::GREENWICH), Ledger::of(state, Zone::GREENWICH));
    assert_eq!(state.agenda_with(&batches, &shelf, &ledger, &picks, voice).problem, whole.problem);
}

/// Of a jug of 3 kg comes a batch of sixteen at most: forty are two of them and one of eight; of many kinds of pours four
/// are named.
#[test]
fn which_pours_is_said() {
    let mut shop = shop();
    shop.product("Fig", 0, None);
    shop.pieces("cups", "Tumbler", 1);
    shop.order("o", "Fig", 40, None, false);
    let (_, _, found) = lacks(&shop, &Picks::default());
    assert_eq!(
        (found[0].amount, found[0].pours.as_str()),
        (Exact::whole(39), "2 pours of 16 × Fig and 8 × Fig")
    );
    let mut shop = self::shop();
    shop.pieces("cups", "Tumbler", 1);
    // Without dye there is a batch of any number.
    let mut plain = Workshop::new().formula;
    plain.parts.retain(|p| p.kind != PartKind::Dye);
    shop.act(0, Act::Formula { id: id("f"), over: None, body: plain });
    let pins = |sizes: &[u32]| {
        let pinned = sizes.iter().map(|number| Pick { product: id("Fig"), number: *number }).collect();
        lacks(&shop, &Picks { pinned, ..Picks::default() }).2[0].pours.clone()
    };
    assert_eq!(pins(&[12, 11, 10, 9, 8]), "12 × Fig, 11 × Fig, 10 × Fig, 9 × Fig and 8 × Fig");
    assert_eq!(pins(&[12, 11, 10, 9, 8, 6]), "12 × Fig, 11 × Fig, 10 × Fig, 9 × Fig and 2 more pours");
}

/// It stands on the list before what is due, with as many packs as that takes at least, at the price of so many.
#[test]
fn it_stands_on_the_shopping_list() {
    let mut shop = shop();
    shop.product("Fig", 0, None);
    shop.pieces("cups", "Tumbler", 90);
    shop.grams("amber", "Amber", 10);
    let gone = LotEvent::WrittenOff { amount: Exact::whole(10), reason: "spilt".into() };
    shop.act(1, Act::AtLot { lot: id("amber"), event: gone });
    shop.grams("figs", "Fig leaf", 100);
    let list = |shop: &Shop, lacks: &[Lack]| {
        let (ledger, state, voice) =
            (Ledger::of(shop.state(), Zone::GREENWICH), shop.state(), Voice::default());
        let row = |s: &Standing| (s.account.name.clone(), s.say_lack(voice), s.order(state));
        ledger.errands(state, lacks, TODAY, voice).iter().map(row).collect::<Vec<_>>()
    };
    assert_eq!(list(&shop, &[]), [("Amber".to_owned(), None, None)], "none of it is left");
    shop.order("o", "Fig", 8, None, false);
    let found = lacks(&shop, &Picks::default()).2;
    let rows = list(&shop, &found);
    assert_eq!(rows[0].1.as_deref(), Some("21.9 g (0.77 oz) more for 8 × Fig"));
    assert_eq!((rows[0].0.as_str(), rows[0].2, rows[1].0.as_str()), ("Fig leaf", None, "Amber"));
    // 21.9 g in packs of 10 g are three, each at the price from two on.
    let supply = Supply {
        lead_days: 0,
        lead_spread: 0,
        order_cost: Money(0),
        keeping: Exact::ZERO,
        pack: Pack::Weight(Amount::new(Exact::whole(10), MassUnit::Gram)),
        offers: [(1, 500), (2, 450), (9, 400)]
            .map(|(from, price)| Offer { from, price: Money(price) })
            .to_vec(),
    };
    let body = Ingredient { name: "Fig leaf".into(), supply: Some(supply), ..Ingredient::default() };
    shop.act(1, Act::Ingredient { id: id("leaf"), over: None, body });
    assert_eq!(list(&shop, &found)[0].2, Some((3, Money(450))));
    assert!(list(&shop, &[]).iter().all(|row| row.2.is_none()), "at no pace no number is best");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    /// Once what lacks is bought, the search with the stores as they are then finds pours as good as with enough of all.
    #[test]
    fn what_is_bought_is_enough(
        orders in proptest::collection::vec((1..30_u32, 0..60_u32), 0..5),
        cups in 0..30_u32, figs in 0..400_i128, spare in 0..9_u32,
    ) {
        let mut shop = shop();
        shop.product("Fig", spare, None);
        shop.pieces("cups", "Tumbler", cups);
        shop.grams("figs", "Fig leaf", figs);
        for (at, (number, wanted)) in orders.iter().enumerate() {
            shop.order(&format!("o{at}"), "Fig", *number, Some(20 + wanted), at % 2 == 0);
        }
        let (asked, plan, found) = lacks(&shop, &Picks::default());
        let mut problem = asked.problem.clone();
        for (stuff, there) in asked.stuffs.iter().zip(&mut problem.supplies) {
            if let Some(lack) = found.iter().find(|l| l.name == stuff.name) {
                let unit = if stuff.name == "Tumbler" { 1 } else { 1_000_000 };
                *there += u64::try_from((lack.amount * Exact::whole(unit)).ceil()).unwrap();
            }
        }
        prop_assert_eq!(best(problem.clone()).score, plan.score);
        // And not more than enough: of any a little less no plan with the same pours can be.
        for (stuff, there) in asked.stuffs.iter().zip(&mut problem.supplies) {
            if found.iter().any(|l| l.name == stuff.name) {
                *there -= 1;
            }
        }
        let again = Agenda { problem, ..asked };
        prop_assert_eq!(again.shortages(&plan).len(), found.len());
    }
}
