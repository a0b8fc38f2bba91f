//! A plan in sentences, on a calendar, and from the book.

use super::agenda::{agenda, day, shop};
use super::shared::{Shop, id};
use potside::book::Act;
use potside::quantity::{Exact, Voice};
use potside::shelf::agenda::{Agenda, Pick, Picks, Rows};
use potside::shelf::planning::{Gap, Loss, Measure, Met, Miss, Plan, Pour, Score, Search};

#[test]
fn a_plan_is_told_in_sentences_and_on_a_calendar() {
    let mut shop = shop();
    shop.order("o", "Fig", 6, Some(30), false);
    shop.order("p", "Fig", 3, Some(40), false);
    shop.grams("figs", "Fig leaf", 100);
    let asked = agenda(&shop, &Picks::default());
    let pour = Pour {
        good: 0,
        number: 8,
        pinned: true,
        serves: vec![(0, 6)],
        spare: 1,
        surplus: 1,
        without: Loss { late: 6, unmet: 6, short: 1 },
    };
    let figs = asked.stuffs.iter().position(|s| s.name == "Fig leaf").unwrap();
    let miss = Miss::Supply { number: 4, lacks: vec![(figs, 21_900_000)] };
    let late = Met { late: 6, ready: Some(15), miss: Some(Miss::Date { ready: 15 }), ..Met::default() };
    let plan = Plan {
        pours: vec![pour.clone()],
        lines: vec![late, Met { unmet: 3, miss: Some(miss), ..Met::default() }],
        score: Score { late: 9, unmet: 3, short: 0, pours: 1, surplus: 1, changes: 0 },
        gap: Some(Gap { measure: Measure::Surplus, least: 0 }),
        lacks: Vec::new(),
    };
    assert_eq!(asked.what(&pour), "8 × Fig");
    assert_eq!(
        asked.why(&pour, &day),
        "6 for an order (wanted 2025-01-31), 1 to have in store and 1 more, since batches are whole. You hold on to it. \
         Without it: 6 candles not met and 1 candle short in store."
    );
    let missed = asked.missed(&plan, &day, Voice::default());
    let sentences: Vec<&str> = missed.iter().map(|(_, said)| said.as_str()).collect();
    assert_eq!(
        sentences,
        [
            "An order (wanted 2025-01-31): 6 × Fig, 6 late, on 2025-02-05. What is poured today can ship on 2025-02-05 at \
             the earliest.",
            "An order (wanted 2025-02-10): 3 × Fig, 3 not there at all. A pour of 4 would do, but the stores lack \
             21.9 g (0.77 oz) of “Fig leaf” beside what is poured here."
        ]
    );
    let many = Met { unmet: 3, miss: Some(Miss::Most), ..Met::default() };
    let many = Plan { lines: vec![Met::default(), many], ..plan.clone() };
    assert!(asked.missed(&many, &day, Voice::default())[0].1.ends_with(
        "3 not there at all. At most 2048 candles of one kind are planned at once: pour some, then plan again."
    ));
    assert_eq!(
        asked.score(&plan.score),
        "1 pour, 9 candles late or not met, none short in store, 1 candle in store beyond the wish."
    );
    assert_eq!(
        asked.proven(&plan),
        "A better plan may be found: this one has 1 candle in store beyond the wish, and none goes below 0."
    );
    assert_eq!(asked.proven(&Plan { gap: None, ..plan.clone() }), "No plan is better: that is proven.");
    // Fifteen days long, the longest: to the edge; wanted on the tenth, which is two thirds, and too late.
    let rows = Rows::of(&asked, &plan, &day).unwrap();
    let wide = potside::pot::WIDE;
    assert_eq!((rows.rows[0].bar.1, rows.rows[0].marks.as_slice()), (wide, &[(wide * 10 / 15, true)][..]));
    assert_eq!(
        rows.rows[0].said,
        "8 × Fig: poured today, can ship 2025-02-05; 6 wanted 2025-01-31, too late."
    );
    assert!(Rows::of(&asked, &Plan::default(), &day).is_none());
    let unit = asked.stuffs[figs].measure.say(Exact::ONE, Voice::default());
    assert!(unit.starts_with("1.0 g") || unit.starts_with("1 g"), "{unit}");
}

/// An order for four with three there is short one, and with a smallest batch of four the plan is one pour of four,
/// leaving three: `common practice, no source`.
#[test]
fn from_the_book_to_the_best_pours() {
    let mut shop = shop();
    let product = shop.state().products.get(&id("Fig")).unwrap().body().unwrap().clone();
    let body = potside::shelf::Product { spare: 0, ..product };
    shop.act(0, Act::Product { id: id("Fig"), over: None, body });
    shop.pour("b", 0, 3);
    shop.finish("b", 2);
    shop.order("o", "Fig", 4, Some(60), false);
    let best = |shop: &Shop, picks: &Picks| {
        let asked = agenda(shop, picks);
        let mut search = Search::new(asked.problem.clone());
        while !search.step(10_000) {}
        let plan = search.plan();
        assert!(plan.closed());
        (asked, plan)
    };
    let numbers = |plan: &Plan| plan.pours.iter().map(|p| (p.number, p.surplus)).collect::<Vec<_>>();
    let (asked, plan) = best(&shop, &Picks::default());
    assert_eq!(numbers(&plan), [(4, 3)]);
    assert_eq!(
        asked.why(&plan.pours[0], &day),
        "1 for an order (wanted 2025-03-02) and 3 more, since batches are whole. Without it: 4 candles not met."
    );
    assert!(asked.missed(&plan, &day, Voice::default()).is_empty());
    // What the person holds on to is poured, and nothing beside it.
    let picks = Picks { pinned: vec![Pick { product: id("Fig"), number: 8 }], ..Picks::default() };
    let (_, plan) = best(&shop, &picks);
    assert_eq!(numbers(&plan), [(8, 7)]);
    // Left out, it is said to be; without the fragrance, what lacks.
    let picks = Picks { dropped: vec![id("Fig")], ..Picks::default() };
    let (asked, plan) = best(&shop, &picks);
    assert!(plan.pours.is_empty());
    let missed = |asked: &Agenda, plan: &Plan| asked.missed(plan, &day, Voice::default()).pop().unwrap().1;
    assert!(missed(&asked, &plan).ends_with("You left it out for today."));
    shop.grams("figs", "Fig leaf", 10);
    let (asked, plan) = best(&shop, &Picks::default());
    let said = missed(&asked, &plan);
    assert!(said.contains("the stores lack 51.") && said.contains(" of “Fig leaf”"), "{said}");
}
