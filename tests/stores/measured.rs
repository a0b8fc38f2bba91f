//! A lot is kept as it is used.

use super::common::Workshop;
use super::shared::{Shop, grams_of, id};
use potside::book::Act;
use potside::formula::VesselWick;
use potside::stores::{Bought, Lot, Pack};

fn pieces_of(of: &str, number: &str) -> Lot {
    Lot { bought: Bought { packs: 1, pack: Pack::Pieces(12) }, ..grams_of(of, number, 0, 12, 100) }
}

#[test]
fn what_is_weighed_is_bought_by_weight_and_what_is_counted_by_pieces() {
    let mut shop = Shop::new();
    let mut body = Workshop::new().formula;
    body.vessels = vec![VesselWick { vessel: id("v"), wick: "Cotton 12".into() }];
    shop.act(0, Act::Formula { id: id("f"), over: None, body });
    let said = |shop: &Shop, lot: &Lot| shop.state().mismeasured(lot, None).unwrap_or_default();
    let weight = "Choose “Weight” or “Volume” for “Coco”: it is weighed at the pot.";
    assert_eq!(said(&shop, &pieces_of(" Coco", "a")), weight);
    assert_eq!(said(&shop, &grams_of("coco", "a", 0, 500, 100)), "");
    for counted in ["Cotton 12", "Wick tab"] {
        assert_eq!(said(&shop, &pieces_of(counted, "a")), "");
        let text = said(&shop, &grams_of(counted, "a", 0, 500, 100));
        assert!(
            text.starts_with("Choose “Pieces” for “") && text.ends_with("one or more to a candle."),
            "{text}"
        );
    }
    // What is in no formula is kept as the lots there are of it.
    assert_eq!(said(&shop, &pieces_of("Ribbon", "a")) + &said(&shop, &grams_of("Ribbon", "a", 0, 5, 1)), "");
    shop.act(0, Act::Lot { id: id("r"), over: None, body: pieces_of("Ribbon", "r") });
    let by_weight = grams_of("ribbon", "s", 0, 500, 100);
    let other =
        "Choose “Pieces” for “ribbon”: the other lots of it are kept by pieces, and the two do not add up.";
    assert_eq!(said(&shop, &by_weight), other);
    // The only one is put right.
    assert_eq!(shop.state().mismeasured(&by_weight, Some(&id("r"))), None);
}

/// Two lots that were kept the wrong way before it was asked: each can be put right, and one more may be kept as it is used.
#[test]
fn lots_that_are_kept_the_wrong_way_do_not_hold_each_other_fast() {
    let mut shop = Shop::new();
    shop.act(0, Act::Formula { id: id("f"), over: None, body: Workshop::new().formula });
    for lot in ["a", "b"] {
        shop.act(0, Act::Lot { id: id(lot), over: None, body: pieces_of("Coco", lot) });
        shop.act(
            0,
            Act::Lot { id: id(&[lot, "2"].concat()), over: None, body: grams_of("Wick tab", lot, 0, 9, 1) },
        );
    }
    let (wax, tabs) = (grams_of("Coco", "a", 0, 500, 100), pieces_of("Wick tab", "a"));
    for own in [None, Some("a"), Some("b")] {
        assert_eq!(shop.state().mismeasured(&wax, own.map(id).as_ref()), None, "{own:?}");
    }
    for own in [None, Some("a2"), Some("b2")] {
        assert_eq!(shop.state().mismeasured(&tabs, own.map(id).as_ref()), None, "{own:?}");
    }
    assert!(shop.state().mismeasured(&pieces_of("Coco", "c"), None).is_some(), "not one more of them");
}
