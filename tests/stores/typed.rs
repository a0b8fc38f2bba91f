//! A lot, and how it is bought, as they are typed.

use super::shared::whole;
use potside::quantity::{Exact, Money, Voice};
use potside::stores::SupplyDraft;

#[test]
fn a_lot_as_it_is_typed() {
    let draft = potside::stores::Draft {
        ingredient: " Coco ".into(),
        number: "7A".into(),
        got_on: "2025-01-01".into(),
        price: "$84".into(),
        packs: "2".into(),
        holds: "10 lb".into(),
        ..Default::default()
    };
    let (currency, voice) = (Default::default(), Voice::default());
    let lot = draft.read(&currency, None, voice).expect("it is whole");
    assert_eq!((lot.amount, lot.price), (Exact::ratio(45_359_237 * 2, 10_000), Money(8400)));
    assert_eq!((lot.ingredient.as_str(), lot.bought.pack.say(voice)), ("Coco", "10 lb".to_owned()));
    let again = potside::stores::Draft::of(&lot, &currency, voice);
    assert_eq!(again.read(&currency, None, voice), Ok(lot));
    // 1 gal of 0.9 g/mL is 3406.87 g; what one pack weighs counts before what is known.
    let gallon = potside::stores::Draft {
        way: potside::stores::Way::Volume,
        holds: "1 gal".into(),
        packs: "1".into(),
        ..draft.clone()
    };
    let density = potside::quantity::Density::base(Exact::ratio(9, 10));
    let lot = gallon.read(&currency, Some(density), voice).expect("it is whole");
    assert_eq!(lot.amount, Exact::ratio(473_176_473 * 9, 1_250_000));
    let weighed = potside::stores::Draft { weighs: "3.5 kg".into(), ..gallon.clone() };
    assert_eq!(weighed.read(&currency, Some(density), voice).expect("it is whole").amount, whole(3500));
    // Opened and saved it is the same, though no more than tenths of a gram of what a pack weighs are shown.
    let three = potside::stores::Draft { packs: "3".into(), ..gallon.clone() };
    let lot = three.read(&currency, Some(density), voice).expect("it is whole");
    let opened = potside::stores::Draft::of(&lot, &currency, voice);
    assert_eq!(opened.weighs, "3406.9 g");
    let over = |draft: &potside::stores::Draft| draft.read_over(Some(&lot), &currency, None, voice);
    assert_eq!(over(&opened), Ok(lot.clone()));
    let four = potside::stores::Draft { packs: "4".into(), ..opened.clone() };
    assert_eq!(over(&four).unwrap().amount, lot.amount * Exact::ratio(4, 3));
    let typed = potside::stores::Draft { weighs: "3.4 kg".into(), ..opened.clone() };
    assert_eq!(over(&typed).unwrap().amount, whole(10_200));
    let bought = potside::stores::Draft { way: potside::stores::Way::Weight, holds: "1 kg".into(), ..opened };
    assert_eq!(over(&bought).unwrap().amount, whole(3000));
    let cases = potside::stores::Draft {
        way: potside::stores::Way::Pieces,
        holds: "12".into(),
        packs: "3".into(),
        ..draft.clone()
    };
    assert_eq!(cases.read(&currency, None, voice).expect("it is whole").amount, whole(36));
    let wrong = gallon.read(&currency, None, voice).expect_err("its weight is not known");
    assert_eq!(wrong.len(), 1);
    let empty = potside::stores::Draft::default().read(&currency, None, voice).expect_err("nothing is typed");
    insta::assert_debug_snapshot!(empty);
}

/// What comes on the same day, or always to the day, is typed as 0; nothing typed is asked for.
#[test]
fn how_it_is_bought_as_it_is_typed() {
    let draft = SupplyDraft {
        lead_days: "0".into(),
        lead_spread: "0".into(),
        order_cost: "9".into(),
        keeping: "20 %".into(),
        holds: "10 lb".into(),
        offers: [("1".into(), "42".into()), ("5".into(), "38".into()), Default::default()],
        ..SupplyDraft::default()
    };
    let (currency, voice) = (Default::default(), Voice::default());
    let supply = draft.read(&currency, voice).expect("it is whole");
    assert_eq!((supply.lead_days, supply.lead_spread, supply.order_cost), (0, 0, Money(900)));
    let prices: Vec<_> = supply.offers.iter().map(|o| (o.from, o.price)).collect();
    assert_eq!(prices, [(1, Money(4200)), (5, Money(3800))]);
    assert_eq!(SupplyDraft::of(&supply, &currency, voice).read(&currency, voice), Ok(supply));
    let empty = SupplyDraft { lead_days: String::new(), ..draft.clone() };
    assert_eq!(empty.read(&currency, voice).expect_err("no days").len(), 1);
    let down = SupplyDraft {
        offers: [("5".into(), "38".into()), ("1".into(), "42".into()), Default::default()],
        ..draft
    };
    assert!(
        down.read(&currency, voice).expect_err("the larger number first")[0].starts_with("Prices: begin")
    );
}
