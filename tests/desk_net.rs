//! Net contents: 16 CFR 500 and 501, Directive 76/211/EEC, NIST Handbook 133.

use potside::desk::net::{
    Panel, declare, declare_metric, declare_tapers, declare_tapers_metric, enforced, eu_height, eu_letters,
    no_length, nothing, overstated, us_height, us_letters, us_place,
};
use potside::quantity::{Exact, Length, LengthUnit, Mass, Voice};

fn g(thousandths: i128) -> Mass {
    Mass::base(Exact::ratio(thousandths, 1000))
}

fn mm(tenths: i128) -> Length {
    Length::base(Exact::ratio(tenths, 10))
}

#[track_caller]
fn declared(thousandths: i128, text: &str) {
    assert_eq!(declare(g(thousandths)).text, text);
}

/// Largest whole units and three digits (16 CFR 500.9, 500.19(b); reference values 1c and 2a).
#[test]
fn a_weight_in_both_systems() {
    declared(170_097, "Net wt. 6 oz (170 g)");
    // 57 g would say 0.3 g too much.
    declared(56_699, "Net wt. 2 oz (56 g)");
    declared(226_796, "Net wt. 8 oz (226 g)");
    declared(180_000, "Net wt. 6.34 oz (180 g)");
    declared(453_591, "Net wt. 15.99 oz (453 g)");
    declared(453_592, "Net wt. 1 lb (453 g)");
    // 18 oz is said as 1 lb 2 oz.
    declared(510_300, "Net wt. 1 lb 2 oz (510 g)");
    declared(1_234_567, "Net wt. 2 lb 11.54 oz (1.23 kg)");
    declared(9_870, "Net wt. 0.34 oz (9.8 g)");
    // Three digits from 10 kg on as well, never more than there is.
    declared(9_999_999, "Net wt. 22 lb 0.73 oz (9.99 kg)");
    declared(10_000_000, "Net wt. 22 lb 0.73 oz (10 kg)");
    declared(12_345_678, "Net wt. 27 lb 3.48 oz (12.3 kg)");
    declared(123_456_789, "Net wt. 272 lb 2.81 oz (123 kg)");
    // The examples in 16 CFR 500.27: 4 oz (113 g), 1 lb 4 oz (566 g), 1 lb 4.4 oz (578 g).
    declared(113_398, "Net wt. 4 oz (113 g)");
    declared(566_990, "Net wt. 1 lb 4 oz (566 g)");
    declared(578_330, "Net wt. 1 lb 4.4 oz (578 g)");
}

/// NIST SP 1038, 4.4.1.2: the larger of the two is enforced. 8 oz = 226.796 g.
#[test]
fn the_larger_of_two_is_enforced() {
    let eight = Exact::whole(8);
    assert_eq!(enforced(eight, Exact::whole(226)), g(226_796));
    assert_eq!(enforced(eight, Exact::whole(227)), g(227_000));
    assert_eq!(declare(g(226_796)).enforced, Some(g(226_796)));
}

/// A weight that somebody types for a fill is held against it.
#[test]
fn more_than_the_fill_is_told() {
    let told = |declared: i128| overstated(g(declared), g(180_000), Voice::default());
    assert_eq!((told(180_000), told(100)), (None, None));
    let said = told(180_001).unwrap();
    assert!(
        said.starts_with("It declares 180.0 g (6.35 oz), and the vessel is filled with 180.0 g"),
        "{said}"
    );
    assert!(told(226_796).unwrap().contains("226.8 g (8.00 oz)"));
}

/// 16 CFR 501.7 and 500.11: count and length, no weight, no diameter.
#[test]
fn tapers_go_by_count_and_length() {
    for (count, tenths, text) in [
        (2, 2540, "2 candles, each 10 in (25.4 cm)"),
        (1, 2670, "1 candle, 10 1/2 in (26.7 cm)"),
        (6, 3048, "6 candles, each 1 ft (30.4 cm)"),
        (6, 3556, "6 candles, each 1 ft 2 in (35.5 cm)"),
        (1, 127, "1 candle, 1/2 in (1.2 cm)"),
    ] {
        assert_eq!(declare_tapers(count, mm(tenths)).text, text);
    }
}

/// In the European Union neither ounces nor inches are asked for.
#[test]
fn metric_alone_where_that_is_enough() {
    for (thousandths, text) in
        [(180_000, "180 g"), (9_870, "9.8 g"), (1_234_567, "1.23 kg"), (12_345_678, "12.3 kg")]
    {
        let said = declare_metric(g(thousandths));
        assert_eq!(said.text, text);
        assert!(said.enforced.unwrap() <= g(thousandths));
    }
    assert_eq!(declare_tapers_metric(2, mm(2540)).text, "2 candles, each 25.4 cm");
    assert_eq!(declare_tapers_metric(1, mm(1999)).text, "1 candle, 19.9 cm");
}

/// By the factor of 16 CFR 500.19, 0.01 oz is 0.283495 g: the least that is not declared as 0 oz.
#[test]
fn nothing_is_not_declared() {
    assert!(nothing(g(0)).is_some() && nothing(g(283)).is_some());
    assert!(nothing(g(284)).is_none());
    assert_eq!(declare(g(284)).text, "Net wt. 0.01 oz (0.2 g)");
    assert!(no_length(mm(0)).is_some() && no_length(mm(15)).is_some());
    assert!(no_length(mm(16)).is_none());
    assert_eq!(declare_tapers(1, mm(16)).text, "1 candle, 1/16 in (0.1 cm)");
}

/// 16 CFR 500.21: areas computed in the reference values, section 2a; heights as 21 CFR 101.7(i) has them too.
#[test]
fn letters_by_the_panel() {
    for (diameter, height, hundredths, tenths_of_inch_16) in
        [(700, 800, 1091, 2), (800, 900, 1402, 2), (600, 600, 701, 2), (500, 300, 292, 1)]
    {
        let panel = Panel::Round { diameter: mm(diameter), height: mm(height) };
        assert_eq!((panel.square_inches() * Exact::whole(100)).round(), hundredths);
        assert_eq!(us_height(panel, false), Length::base(Exact::ratio(254 * tenths_of_inch_16, 160)));
        assert_eq!(panel.lowest().is_none(), hundredths <= 500);
    }
    let inch = |n: i128| Length::base(Exact::ratio(254 * n, 10));
    for (square, sixteenths) in [(5, 1), (6, 2), (25, 2), (26, 3), (100, 3), (101, 4), (400, 4), (401, 8)] {
        let panel = Panel::Flat { width: inch(square), height: inch(1) };
        assert_eq!(us_height(panel, false), Length::base(Exact::ratio(254 * sixteenths, 160)), "{square}");
        assert_eq!(us_height(panel, true), Length::base(Exact::ratio(254 * (sixteenths + 1), 160)));
    }
    let panel = Panel::Round { diameter: mm(700), height: mm(800) };
    assert_eq!(panel.lowest(), Some(mm(240)));
}

/// What is told of the panel and of the letters: the areas of the reference values, section 2a, with the height that each
/// asks for; square centimetres by the exact inch.
#[test]
fn panel_and_letters_are_told_with_their_rule() {
    let voice = Voice::default();
    for (diameter, height, area, least) in [
        (700, 800, "10.91 square inches (70.4 cm²)", "1/8 in (3.2 mm)"),
        (600, 600, "7.01 square inches (45.2 cm²)", "1/8 in (3.2 mm)"),
        (500, 300, "2.92 square inches (18.8 cm²)", "1/16 in (1.6 mm)"),
        (1500, 1500, "43.83 square inches (282.7 cm²)", "3/16 in (4.8 mm)"),
    ] {
        let panel = Panel::Round { diameter: mm(diameter), height: mm(height) };
        let asked = us_letters(panel, voice);
        assert!(
            asked.said.contains(area) && asked.said.contains(&format!("at least {least} high")),
            "{}",
            asked.said
        );
        let of = asked.why.values[0].why.as_deref().unwrap();
        assert_eq!(of.relation, "40 % of height × circumference");
        for why in [of, &asked.why] {
            assert!(why.source.starts_with("16 CFR 500.21") && why.source.contains("2026"), "{}", why.source);
        }
    }
    for (grams, said) in [(50, "2.0 mm"), (200, "3.0 mm"), (1000, "4.0 mm"), (1010, "6.0 mm")] {
        let asked = eu_letters(g(grams * 1000), voice);
        assert!(asked.said.contains(&format!("at least {said} high")), "{}", asked.said);
        let ounces = Voice { mass: potside::quantity::MassUnit::Ounce, ..voice };
        assert_eq!(eu_letters(g(grams * 1000), ounces), asked, "a nominal quantity is metric");
        assert!(asked.why.source.contains("76/211/EEC, Annex I, 3.1") && asked.why.source.contains("2026"));
    }
}

/// 16 CFR 500.6: the lowest 30 % of 80 mm are 24 mm. Where the label goes follows from how high it has its declaration.
#[test]
fn the_place_of_a_label_follows_from_its_declaration() {
    let panel = Panel::Round { diameter: mm(700), height: mm(800) };
    let place = |reach: i128, own: bool| us_place(panel, own, mm(reach), Voice::default()).unwrap();
    let low = place(150, false);
    assert!(low.holds);
    assert!(low.said.contains("within 24.0 mm of the foot of the vessel"), "{}", low.said);
    assert!(
        low.said.ends_with("stick it with that edge no higher than 9.0 mm above the foot."),
        "{}",
        low.said
    );
    assert!(place(240, false).holds && !place(241, false).holds);
    assert!(place(241, false).said.contains("which is too high"), "{}", place(241, false).said);
    // Never rounded towards what is not allowed.
    let third = us_place(panel, false, Length::base(Exact::ratio(31, 3)), Voice::default()).unwrap();
    assert!(
        third.said.contains("they reach 10.4 mm") && third.said.contains("no higher than 13.6 mm"),
        "{}",
        third.said
    );
    let inches = Voice { length: LengthUnit::Inch, ..Voice::default() };
    let third = us_place(panel, false, Length::base(Exact::ratio(31, 3)), inches).unwrap();
    assert!(third.said.contains("within 0.94 in") && third.said.contains("reach 0.41 in"), "{}", third.said);
    assert!(third.said.contains("no higher than 0.53 in"), "{}", third.said);
    // The label alone is its own panel: nothing of a vessel.
    let own = Panel::Flat { width: mm(800), height: mm(500) };
    let own = |reach: i128| us_place(own, true, mm(reach), Voice::default()).unwrap();
    assert!(own(150).holds && !own(151).holds && !own(150).said.contains("vessel"), "{}", own(150).said);
    // 5 square inches and less may have it anywhere.
    let tin = Panel::Round { diameter: mm(500), height: mm(300) };
    assert_eq!(us_place(tin, false, mm(290), Voice::default()), None);
}

/// Directive 76/211/EEC, Annex I, 3.1; the border belongs to the smaller height.
#[test]
fn figures_of_the_nominal_quantity() {
    for (grams, height) in [(5, 2), (50, 2), (51, 3), (200, 3), (201, 4), (1000, 4), (1010, 6)] {
        assert_eq!(eu_height(g(grams * 1000)), mm(height * 10), "{grams}");
    }
    // What stands there in grams counts: in ounces 200.9 g are 7.08 oz, or 200.7 g; and 1.009 kg are declared as 1 kg.
    for (tenths, least, quantity) in
        [(509, "2.0 mm", "50 g"), (2007, "3.0 mm", "200 g"), (10_090, "4.0 mm", "1 kg")]
    {
        let said = eu_letters(g(tenths * 100), Voice::default()).said;
        let both =
            said.contains(&format!("at least {least} high")) && said.contains(&format!(" of {quantity}"));
        assert!(both, "{said}");
    }
}
