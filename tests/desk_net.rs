//! Net contents: 16 CFR 500 and 501, Directive 76/211/EEC, NIST Handbook 133.

use potside::desk::net::{
    Panel, declare, declare_metric, declare_tapers, declare_tapers_metric, enforced, eu_height, eu_letters,
    eu_test, eu_tne, no_length, nothing, overstated, us_height, us_letters, us_mav, us_place, us_test,
};
use potside::quantity::{Exact, Length, LengthUnit, Mass, Voice};
use proptest::prelude::*;

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
    for (grams, said) in [(50, "2.0 mm"), (200, "3.0 mm"), (1000, "4.0 mm"), (1001, "6.0 mm")] {
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
    for (grams, height) in [(5, 2), (50, 2), (51, 3), (200, 3), (201, 4), (1000, 4), (1001, 6)] {
        assert_eq!(eu_height(g(grams * 1000)), mm(height * 10), "{grams}");
    }
}

/// Published: 250 → 9 and 400 → 12 (Justervesenet); the rest computed in the reference values, section 2c.
#[test]
fn tolerable_negative_errors() {
    for (grams, tenths) in [
        (250, 90),
        (400, 120),
        (30, 27),
        (33, 30),
        (75, 45),
        (110, 50),
        (170, 77),
        (180, 81),
        (220, 90),
        (310, 93),
        (500, 150),
        (650, 150),
        (50, 45),
        (100, 45),
        (200, 90),
        (300, 90),
        (1000, 150),
        (10_000, 1500),
    ] {
        assert_eq!(eu_tne(g(grams * 1000)), Some(g(tenths * 100)), "{grams}");
    }
    assert_eq!((eu_tne(g(4999)), eu_tne(g(10_000_001))), (None, None));
}

/// Handbook 133, Table 2-5: 113 g and 7.2 g are its own example (2.2.1, 2026 edition); the others from memory, to 5 lb and
/// above.
#[test]
fn maximum_allowable_variations() {
    for (grams, tenths) in [
        (30, 30),
        (36, 36),
        (53, 36),
        (54, 54),
        (113, 72),
        (170, 108),
        (226, 127),
        (453, 199),
        (570, 217),
        (571, 235),
        (680, 254),
        (907, 317),
        (1360, 426),
        (2267, 635),
        (4535, 997),
    ] {
        assert_eq!(us_mav(g(grams * 1000)), Some(g(tenths * 100)), "{grams}");
    }
    assert_eq!(us_mav(g(10_520_000)), None);
}

/// The same table has its rows in pounds (from memory as well): times 453.59237 and cut to three digits, each is the row in
/// grams. A row remembered wrongly on one side would not be.
#[test]
fn the_rows_in_pounds_are_those_in_grams() {
    // Hundredths of a pound at which a row begins; its variation in thousandths of a pound.
    let rows = [
        (8, 8),
        (12, 12),
        (18, 16),
        (26, 20),
        (34, 24),
        (46, 28),
        (58, 32),
        (70, 36),
        (84, 40),
        (94, 44),
        (108, 48),
        (126, 52),
        (140, 56),
        (154, 60),
        (170, 64),
        (188, 70),
        (214, 78),
        (248, 86),
        (276, 94),
        (320, 110),
        (390, 120),
        (470, 140),
        (580, 150),
        (680, 170),
        (790, 190),
        (940, 220),
        (1170, 250),
        (1430, 280),
        (1770, 310),
    ];
    let pound = Exact::ratio(45_359_237, 100_000);
    let cut = |grams: Exact| {
        let step = match grams {
            g if g >= Exact::whole(1000) => Exact::whole(10),
            g if g >= Exact::whole(100) => Exact::ONE,
            _ => Exact::ratio(1, 10),
        };
        Exact::whole((grams / step).floor()) * step
    };
    for (from, allowed) in rows {
        let from = Exact::whole(cut(pound * Exact::ratio(from, 100)).floor());
        let allowed = Mass::base(cut(pound * Exact::ratio(allowed, 1000)));
        assert_eq!(us_mav(Mass::base(from)), Some(allowed), "from {from:?} g");
        let below = us_mav(Mass::base(from - Exact::ratio(1, 1000))).unwrap();
        assert!(below < allowed, "below {from:?} g");
    }
}

#[test]
fn batches_pass_and_fail() {
    let voice = Voice::default();
    let fills = |grams: &[i128]| grams.iter().map(|n| g(n * 100)).collect::<Vec<_>>();
    let us = |grams: &[i128], declared: i128| {
        us_test(&fills(grams), g(declared * 1000), 60, voice).unwrap().passes.unwrap()
    };
    let eu = |grams: &[i128], declared: i128| {
        eu_test(&fills(grams), g(declared * 1000), voice).unwrap().passes.unwrap()
    };
    assert!(us(&[1800, 1810, 1795, 1800], 180));
    // 0.1 g short on average: within chance for four that spread by 0.8 g.
    assert!(us(&[1790, 1808, 1798, 1800], 180) && !us(&[1799, 1799, 1799, 1799], 180));
    // One is 11 g short, more than 10.8 g, however full the others are.
    assert!(!us(&[1690, 1850, 1850, 1850], 180) && us(&[1692, 1850, 1850, 1850], 180));
    assert!(eu(&[1800, 1810, 1795, 1800], 180));
    assert!(!eu(&[1790, 1808, 1798, 1800], 180));
    // 8.1 g short is tolerable, more is for one in forty.
    assert!(eu(&[1719, 1850, 1850], 180) && !eu(&[1718, 1850, 1850], 180));
    let mut forty = vec![1850; 39];
    forty.push(1700);
    assert!(eu(&forty, 180));
    forty[39] = 1637;
    assert!(!eu(&forty, 180));
    assert!(us_test(&[], g(1), 1, voice).is_none() && eu_test(&[], g(1), voice).is_none());
}

/// Above the end of the table the average is told and the shortage of one is to be looked up: neither passed nor failed,
/// unless the average is short.
#[test]
fn above_the_table_it_cannot_be_told() {
    let test = |tenths: i128| us_test(&[g(tenths * 100); 4], g(11_000_000), 9, Voice::default()).unwrap();
    let full = test(110_010);
    assert_eq!((full.passes, full.rules[0].0, full.rules[1].0), (None, Some(true), None));
    assert!(full.rules[1].1.contains("10.52 kg") && full.why.result == "cannot be told here", "{full:?}");
    assert_eq!(test(109_990).passes, Some(false));
}

/// Handbook 133, Table 2-1: Student's t at 97.5 % over √n, of a table of t with three places (any has it).
#[test]
fn the_factors_are_those_of_student() {
    for (n, t) in [
        (2_usize, 12.706),
        (3, 4.303),
        (4, 3.182),
        (5, 2.776),
        (6, 2.571),
        (7, 2.447),
        (8, 2.365),
        (9, 2.306),
        (10, 2.262),
        (11, 2.228),
        (12, 2.201),
        (24, 2.069),
        (48, 2.012),
    ] {
        let fills: Vec<Mass> = (0..n).map(|at| g(if at % 2 == 0 { 100_500 } else { 99_500 })).collect();
        let grams = |mass: &Mass| mass.in_base().to_f64();
        let mean = fills.iter().map(grams).sum::<f64>() / n as f64;
        let squares: f64 = fills.iter().map(|mass| (grams(mass) - mean).powi(2)).sum();
        let edge = mean + t / (n as f64).sqrt() * (squares / (n as f64 - 1.0)).sqrt();
        let at = |grams: f64, lot: usize| {
            let declared = Mass::base(Exact::near(grams).unwrap());
            us_test(&fills, declared, lot, Voice::default()).unwrap().rules[0].0.unwrap()
        };
        assert!(at(edge - 0.001, n + 1) && !at(edge + 0.001, n + 1), "{n}");
        // All that were filled are no sample.
        assert!(at(mean - 0.001, n) && !at(mean + 0.001, n), "{n}");
    }
}

/// The steps of Handbook 133, 2.3.7 (from memory), for a lot of 60 labelled 8 oz (226 g), 226.796 g: errors of twelve packages
/// drawn at random, in tenths of a gram. Mean and standard deviation by Python 3, `statistics.mean` and `.stdev`:
/// −1.05 g and 1.91904 g; the sample error limit is 0.635 times that, 1.21859 g. So it passes, and each 0.2 g lower it does not.
#[test]
fn a_sample_by_the_steps_of_the_handbook() {
    let errors = [-31, 12, -8, -40, 5, -22, 17, -15, -3, -36, 9, -14];
    let test = |lower: i128, lot: usize| {
        let fills: Vec<Mass> = errors.iter().map(|tenths| g(226_796 + (tenths - lower) * 100)).collect();
        us_test(&fills, declare(g(226_796)).enforced.unwrap(), lot, Voice::default()).unwrap()
    };
    let drawn = test(0, 60);
    assert_eq!(drawn.passes, Some(true), "{drawn:?}");
    let shown = |name: &str| drawn.why.values.iter().find(|v| v.name == name).unwrap().shown.clone();
    assert_eq!(
        [shown("standard deviation"), shown("factor"), shown("allowed for chance")],
        ["1.919 g", "0.635", "1.219 g"]
    );
    let said = "the average is 1.050 g short, no more than the 1.219 g that chance allows a sample";
    assert_eq!(drawn.rules[0].1, said);
    assert_eq!(test(2, 60).passes, Some(false));
    assert!(test(2, 60).rules[0].1.contains("1.250 g short, more than the 1.219 g"));
    // The same twelve as the whole of a batch: the average is short, and chance has no part in it.
    let whole = test(0, 12);
    assert_eq!((whole.passes, whole.rules[0].0), (Some(false), Some(false)));
    assert!(whole.why.relation.contains("all were weighed"), "{}", whole.why.relation);
    // One short by 12.8 g, more than the 12.7 g of its row, fails the lot whatever the average.
    let mut fills = vec![g(240_000); 11];
    fills.push(g(226_796 - 12_800));
    assert_eq!(us_test(&fills, g(226_796), 60, Voice::default()).unwrap().passes, Some(false));
    fills[11] = g(226_796 - 12_700);
    assert_eq!(us_test(&fills, g(226_796), 60, Voice::default()).unwrap().passes, Some(true));
}

proptest! {
    #[test]
    fn net_contents_are_never_overstated(thousandths in 1_000i128..20_000_000) {
        let mass = g(thousandths);
        let said = declare(mass);
        prop_assert!(said.enforced.unwrap() <= mass, "{} of {thousandths} mg", said.text);
        // What stands on the label, read back, is no more than there is and off by little.
        let ounces = said.text.split(" (").next().unwrap().trim_start_matches("Net wt. ");
        let read = potside::quantity::read::<Mass>(ounces, potside::quantity::MassUnit::Ounce, potside::quantity::Locale::Point).unwrap();
        // The factor of the law and the ounce itself part in the seventh digit.
        let nearly = read.value.times(Exact::ratio(999_999, 1_000_000));
        prop_assert!(nearly <= mass && mass - read.value < g(300), "{ounces}");
    }

    #[test]
    fn the_tolerable_error_never_falls_as_the_quantity_grows(grams in 5_000i128..9_990_000, more in 1i128..10_000) {
        prop_assert!(eu_tne(g(grams)) <= eu_tne(g(grams + more)));
    }
}
