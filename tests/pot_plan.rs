//! From a formula, a vessel and a number to the plan of the pours.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::{Workshop, g, line, read};
use potside::formula::Basis;
use potside::pot::{Dose, Plan, PlanError, Residue, Target, outline, shades};
use potside::quantity::{Amount, Exact, Mass, MassUnit, Quantity, Share, Voice, Why, show_both};
use potside::wire;
use proptest::prelude::*;

/// One sentence a line: what is measured, how, and what is said.
fn sheet(plan: &Plan) -> String {
    let v = Voice::default();
    let mut out = format!(
        "{} in {}, {}: {} vessels of {}, {} in all, {} stays behind\n",
        plan.formula,
        plan.vessel,
        plan.wick,
        plan.vessels,
        v.mass(plan.fill),
        v.mass(plan.total),
        v.mass(plan.residue)
    );
    for note in &plan.notes {
        out += &format!("! {}\n", note.text);
    }
    for pour in &plan.pours {
        out += &format!("pour of {}: {} of {}\n", pour.vessels, v.mass(pour.total), v.mass(pour.wanted));
        for note in &pour.notes {
            out += &format!("  ! {}\n", note.text);
        }
        for line in &pour.lines {
            let how = match &line.dose {
                Dose::Weigh { scale, loads, .. } => format!("{scale} in {loads}"),
                Dose::Unweighable { .. } => "unweighable".into(),
                Dose::Drops { drops, .. } => format!("{drops} drops"),
                Dose::Spoon { eighths, .. } => format!("{eighths} eighths of a teaspoon"),
                Dose::Count { pieces } => format!("{pieces} pieces"),
            };
            out += &format!(
                "  {}: {} [{how}] of {}, {} of wax, {} of whole\n",
                line.name,
                v.mass(line.dose.mass()),
                v.mass(line.exact),
                v.share(line.of_wax),
                v.share(line.of_whole)
            );
            for note in &line.notes {
                out += &format!("    ! {}\n", note.text);
            }
        }
    }
    out
}

fn laid_out(why: &Why, depth: usize, out: &mut String) {
    let pad = "  ".repeat(depth);
    *out += &format!("{pad}{} = {} = {}\n", why.what, why.relation, why.result);
    if !why.rounding.is_empty() {
        *out += &format!("{pad}  rounded {}\n", why.rounding);
    }
    for value in &why.values {
        *out += &format!("{pad}  {}: {}\n", value.name, value.shown);
        if let Some(why) = &value.why {
            laid_out(why, depth + 2, out);
        }
    }
}

#[test]
fn a_whole_plan() {
    let mut w = Workshop::new();
    w.residue = Residue::OfFilled(read("2%"));
    let plan = w.plan(Target::Vessels(14)).unwrap();
    let mut text = sheet(&plan);
    laid_out(&plan.why, 0, &mut text);
    for line in &plan.pours[0].lines {
        laid_out(&line.why, 0, &mut text);
    }
    insta::assert_snapshot!(text);
}

#[test]
fn half_the_vessels_halve_everything() {
    // Common practice, no source: 2.15 oz of fragrance for 4 is 61 g, 4.30 oz for 8; ¾ tbsp for 4 is 1½ tbsp for 8.
    let w = Workshop::new();
    let (four, eight) = (w.plan(Target::Vessels(4)).unwrap(), w.plan(Target::Vessels(8)).unwrap());
    let (of_four, of_eight) = (line(&four, "Fig leaf"), line(&eight, "Fig leaf"));
    assert_eq!(of_four.exact, Mass::of(Exact::ratio(215, 100), MassUnit::Ounce));
    assert_eq!(of_eight.exact, Mass::of(Exact::ratio(430, 100), MassUnit::Ounce));
    assert_eq!(of_four.exact.round_to(g(1, 1)), g(61, 1));
    assert!(matches!(line(&four, "Hardener").dose, Dose::Spoon { eighths: 18, .. }));
    assert!(matches!(line(&eight, "Hardener").dose, Dose::Spoon { eighths: 36, .. }));
    assert!(matches!(line(&eight, "Red").dose, Dose::Drops { drops: 6, .. }));
    assert!(matches!(line(&eight, "Blue").dose, Dose::Drops { drops: 12, .. }));
    for (a, b) in four.pours[0].lines.iter().zip(&eight.pours[0].lines) {
        assert_eq!(a.exact.times(Exact::whole(2)), b.exact);
    }
    let (grams, ounces) = show_both(of_eight.exact, MassUnit::Gram, Some(g(1, 10)), Default::default());
    assert_eq!((grams.to_string(), ounces.to_string()), ("121.9 g".into(), "4.30 oz".into()));
}

#[test]
fn the_hotter_goes_in_first() {
    // Common practice, no source: additives at about 188 °F, dye while hot, fragrance at 175–180 °F.
    let w = Workshop::new();
    let plan = w.plan(Target::Vessels(4)).unwrap();
    let names: Vec<&str> = plan.pours[0].lines.iter().map(|l| l.name.as_str()).collect();
    assert_eq!(names, ["Coco", "Soy", "Sun guard", "Hardener", "Red", "Blue", "Fig leaf", "Wick tab"]);
    assert!(plan.notes.iter().any(|n| n.text.contains("“Sun guard” goes in hotter than “Fig leaf”")));
}

#[test]
fn pours_are_as_equal_as_whole_vessels_allow() {
    let mut w = Workshop::new();
    // 3 kg holds 16 vessels of 180 g with 20 g staying behind.
    w.pot.as_mut().unwrap().capacity = read("3000 g");
    w.residue = Residue::Each(read("20 g"));
    let plan = w.plan(Target::Vessels(17)).unwrap();
    assert_eq!(plan.pours.iter().map(|p| p.vessels).collect::<Vec<_>>(), [9, 8]);
    assert_eq!(plan.residue, g(40, 1));
    assert_eq!(plan.total, g(17 * 180 + 40, 1));
    let plan = w.plan(Target::Vessels(16)).unwrap();
    assert_eq!(plan.pours.len(), 1);
    w.pot = None;
    assert_eq!(w.plan(Target::Vessels(1000)).unwrap().pours.len(), 1);
}

#[test]
fn as_far_as_it_goes() {
    let mut w = Workshop::new();
    // 2.15 oz for 4 vessels: 30 oz is enough for 55 and a bit.
    let plan = w.plan(Target::Left { ingredient: "Fig leaf".into(), mass: read("30 oz") }).unwrap();
    assert_eq!(plan.vessels, 55);
    assert!(takes(&plan, "Fig leaf") <= Mass::of(Exact::whole(30), MassUnit::Ounce));
    // 2.15 oz is 60.95 g, enough for 4; but in tenths of a gram the plan would take 61.0 g.
    w.scales[1].division = read("0.1 g");
    let exactly = w.plan(Target::Left { ingredient: "Fig leaf".into(), mass: read("2.15 oz") }).unwrap();
    assert_eq!(exactly.vessels, 3);
    // With one less it still says why there are so many.
    let vessels = exactly.why.values.iter().find(|v| v.name == "vessels").unwrap();
    assert_eq!(vessels.shown, "3");
    assert!(vessels.why.as_ref().is_some_and(|why| why.what.contains("Fig leaf")), "{:?}", vessels.why);
    let enough = w.plan(Target::Left { ingredient: "Fig leaf".into(), mass: read("61.0 g") }).unwrap();
    assert_eq!(enough.vessels, 4);
}

/// What of an ingredient a plan takes.
fn takes(plan: &Plan, name: &str) -> Mass {
    plan.pours.iter().flat_map(|p| &p.lines).filter(|l| l.name == name).map(|l| l.dose.mass()).sum()
}

#[test]
fn what_is_left_is_enough_though_every_pot_rounds_up() {
    let mut w = Workshop::new();
    w.formula.parts.truncate(1);
    w.formula.parts[0].basis = Basis::OfWax(read("8.3 %"));
    w.fill = g(20, 1);
    w.pot.as_mut().unwrap().capacity = read("400 g");
    w.scales.truncate(1);
    w.scales[0].least = read("1 g");
    // Of 400 g in a pot of twenty 30.66 g are weighed as 31, in up to thirteen pots: one vessel less is not enough.
    for left in [399, 397, 368, 276] {
        let mass = Amount::new(Exact::whole(left), MassUnit::Gram);
        let plan = w.plan(Target::Left { ingredient: "Fig leaf".into(), mass }).unwrap();
        assert!(takes(&plan, "Fig leaf") <= mass.value, "{left}: {:?}", takes(&plan, "Fig leaf"));
        assert!(plan.vessels > 170);
    }
}

#[test]
fn a_total_is_never_exceeded_in_pots_of_one_vessel() {
    let mut w = Workshop::new();
    w.fill = g(100, 1);
    w.residue = Residue::Each(read("50 g"));
    w.pot.as_mut().unwrap().capacity = read("150 g");
    // Six pots of one vessel are 900 g; nine vessels in one pot would be 950 g.
    let plan = w.plan(Target::Total(read("1000 g"))).unwrap();
    assert_eq!((plan.vessels, plan.pours.len(), plan.total), (6, 6, g(900, 1)));
    let told = "Of the 1000.0 g (35.27 oz) asked for, whole vessels in such a pot use 900.0 g (31.75 oz).";
    assert!(plan.notes.iter().any(|n| n.text == told), "{:?}", plan.notes);
    refused(
        &w,
        Target::Total(read("149 g")),
        "149.0 g (5.26 oz) fills no vessel: one needs 150.0 g (5.29 oz) in the pot. Ask for more.",
    );
}

#[test]
fn a_total_fills_whole_vessels() {
    let w = Workshop::new();
    let plan = w.plan(Target::Total(read("2 kg"))).unwrap();
    assert_eq!((plan.vessels, plan.total), (11, g(2000, 1)));
    assert!(
        plan.notes
            .iter()
            .any(|n| n.text == "That fills 11 vessels and leaves 20.0 g (0.71 oz), too little for one more.")
    );
    let doses: Mass = plan.pours.iter().map(|p| p.total).sum();
    assert!((doses - g(2000, 1)).in_base().abs() < Exact::ONE);
}

#[track_caller]
fn refused(w: &Workshop, target: Target, expected: &str) {
    let error: PlanError = w.plan(target).unwrap_err();
    assert_eq!(error.to_string(), expected);
}

#[test]
fn what_cannot_be_planned_is_said_plainly() {
    let mut w = Workshop::new();
    refused(&w, Target::Vessels(0), "That fills no vessel. Ask for at least one.");
    refused(&w, Target::Vessels(u32::MAX), "That is more than 10000 vessels. Plan it as several batches.");
    refused(
        &w,
        Target::Total(read("100 g")),
        "100.0 g (3.53 oz) fills no vessel: one needs 180.0 g (6.35 oz) in the pot. Ask for more.",
    );
    refused(
        &w,
        Target::Left { ingredient: "Fig leaf".into(), mass: read("1 g") },
        "1 g of “Fig leaf” is not enough for one vessel. Get more of it, or take a smaller vessel.",
    );
    refused(
        &w,
        Target::Left { ingredient: "Cedar".into(), mass: read("1 g") },
        "“Cedar” is not in this formula. Choose one of its waxes or parts.",
    );
    w.pot.as_mut().unwrap().capacity = read("150 g");
    refused(
        &w,
        Target::Vessels(2),
        "“Jug” holds 150 g, but one vessel needs 180.0 g (6.35 oz) in it. Take a larger pot or a smaller vessel.",
    );
    refused(
        &w,
        Target::Total(read("2 kg")),
        "“Jug” holds 150 g, but one vessel needs 180.0 g (6.35 oz) in it. Take a larger pot or a smaller vessel.",
    );
    w.fill = Mass::ZERO;
    refused(&w, Target::Vessels(2), "The fill of this vessel is zero. Say how full it is made, in the Book.");
}

#[test]
fn the_ways_out_of_what_cannot_be_weighed() {
    let mut w = Workshop::new();
    w.scales.truncate(1);
    let plan = w.plan(Target::Vessels(1)).unwrap();
    let guard = line(&plan, "Sun guard");
    assert!(matches!(guard.dose, Dose::Unweighable { .. }));
    insta::assert_snapshot!(guard.notes[0].text);
    w.scales.clear();
    let plan = w.plan(Target::Vessels(1)).unwrap();
    assert!(line(&plan, "Soy").notes[0].text.contains("Add your scales at the Bench"));
}

#[test]
fn a_spoon_measure_that_does_not_come_out() {
    // ¾ tbsp for four is 4½ eighths of a teaspoon for one, so it is weighed where a scale can: 2.25/4 tsp · 4.93 mL · 0.54.
    let mut w = Workshop::new();
    let said = |w: &Workshop| {
        let plan = w.plan(Target::Vessels(1)).unwrap();
        let line =
            plan.pours[0].lines.iter().find(|l| ["Hardener", "Powder"].contains(&l.name.as_str())).unwrap();
        (matches!(line.dose, Dose::Spoon { .. }), line.notes[0].text.clone())
    };
    let opening = |name| format!("0.56 tsp of “{name}”: the nearest measure, ½ tsp, is off by 11.11 %.");
    assert_eq!(said(&w), (false, opening("Hardener") + " So it is weighed."));
    // Without a scale it is spooned. For n vessels 4½·n eighths are whole where n is even; from 7 on half of one is less than
    // 2 %.
    let scales = std::mem::take(&mut w.scales);
    let spooned = opening("Hardener") + " A batch of 2, 4, 6 or 7 vessels can be spooned.";
    assert_eq!(said(&w), (true, spooned));
    // Nor can it be weighed where it is not known what a spoon weighs.
    w.scales = scales;
    w.formula.parts[2].name = "Powder".into();
    let (spoon, text) = said(&w);
    assert!(
        spoon
            && text
                .ends_with(" Or weigh level spoons of it at the Bench, so that it can be weighed instead.")
    );
}

#[test]
fn the_choices_of_drops_are_said_nearest_first() {
    let w = Workshop::new();
    // 5.25 and 10.5 drops.
    let seven = w.ask(Target::Vessels(7));
    let said = shades(&seven).unwrap();
    assert_eq!(
        said,
        [
            "Red 5 drops for 5.25, Blue 10 drops for 10.50: 4.8 % too weak, the hue is kept",
            // 16/15.75, and 5/16 against a third.
            "Red 5 drops for 5.25, Blue 11 drops for 10.50: 1.6 % too strong, the share of Red among the colours is off by −6.2 %",
            // 17/15.75, and 6/17.
            "Red 6 drops for 5.25, Blue 11 drops for 10.50: 7.9 % too strong, the share of Red among the colours is off by +5.9 %"
        ]
    );
    assert_eq!(outline(&seven).unwrap().1, said);
    // Of several pots those of the first: 4 and 3 vessels.
    let w = Workshop {
        pot: Some(potside::bench::MeltingPot { name: "Jug".into(), capacity: read("800 g"), body: None }),
        ..w
    };
    let several = w.ask(Target::Vessels(7));
    assert_eq!(shades(&several).unwrap(), Vec::<String>::new());
    assert_eq!(outline(&several).unwrap().1, Vec::<String>::new());
}

#[test]
fn drops_say_how_far_off_and_what_to_do() {
    let w = Workshop::new();
    let notes: Vec<String> = [1, 2, 3, 4, 5, 6, 7, 8]
        .into_iter()
        .map(|n| {
            let plan = w.plan(Target::Vessels(n)).unwrap();
            let said = line(&plan, "Red").notes.iter().map(|n| n.text.clone()).collect::<Vec<_>>().join(" ");
            format!("{n}: {said}")
        })
        .collect();
    insta::assert_snapshot!(notes.join("\n"));
}

/// What is shown at each key is the plan that is kept, but for how the pours and their lines came about.
#[test]
fn an_outline_is_the_plan_without_its_whys() {
    let mut w = Workshop::new();
    let asked = [
        Target::Vessels(1),
        Target::Vessels(7),
        Target::Vessels(40),
        Target::Total(read("3 lb")),
        Target::Left { ingredient: "Fig leaf".into(), mass: read("90 g") },
        Target::Vessels(0),
    ];
    for residue in [Residue::None, Residue::Each(read("30 g"))] {
        w.residue = residue;
        for (target, shade) in asked.iter().flat_map(|target| [(target, 0), (target, 1), (target, 9)]) {
            let mut ask = w.ask(target.clone());
            ask.shade = shade;
            let told = potside::pot::plan(&ask);
            let Ok((shown, _)) = outline(&ask) else {
                assert_eq!(outline(&ask).unwrap_err(), told.unwrap_err());
                continue;
            };
            let mut told = told.unwrap();
            for pour in &mut told.pours {
                assert_ne!(std::mem::take(&mut pour.why), Why::default());
                for line in &mut pour.lines {
                    assert_ne!(std::mem::take(&mut line.why), Why::default(), "{}", line.name);
                }
            }
            assert_eq!(*shown, told);
        }
    }
}

#[test]
fn a_plan_is_kept_whole() {
    let w = Workshop::new();
    for n in [1, 3, 7, 40] {
        let plan = w.plan(Target::Vessels(n)).unwrap();
        let text = wire::write(&plan);
        assert_eq!(wire::read::<Plan>(&text).unwrap(), plan);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn every_plan_keeps_its_law(vessels in 1_u32..300, capacity in 400_i128..9000, percent in 0_i128..5, each in any::<bool>()) {
        let mut w = Workshop::new();
        w.pot.as_mut().unwrap().capacity = Amount::new(Exact::whole(capacity), MassUnit::Gram);
        w.residue = if each { Residue::Each(read("15 g")) } else { Residue::OfFilled(read(&format!("{percent} %"))) };
        let plan = w.plan(Target::Vessels(vessels)).unwrap();
        prop_assert_eq!(plan.pours.iter().map(|p| p.vessels).sum::<u32>(), vessels);
        let (least, most) = (plan.pours.iter().map(|p| p.vessels).min(), plan.pours.iter().map(|p| p.vessels).max());
        prop_assert!(most.unwrap() - least.unwrap() <= 1);
        let mut total = Mass::ZERO;
        for pour in &plan.pours {
            let exact: Mass = pour.lines.iter().map(|l| l.exact).sum();
            prop_assert!(exact <= g(capacity, 1));
            total = total + exact;
            prop_assert_eq!(pour.lines.iter().map(|l| l.dose.mass()).sum::<Mass>(), pour.total);
            for line in pour.lines.iter() {
                if let Dose::Weigh { mass, division, capacity, loads, .. } = &line.dose {
                    prop_assert!((*mass - line.exact).in_base().abs() < division.in_base());
                    prop_assert!(mass.times(Exact::ratio(1, (*loads).into())) <= *capacity);
                }
            }
            if pour.total != pour.wanted {
                prop_assert!(!pour.notes.is_empty());
            }
        }
        prop_assert_eq!(total, plan.total);
    }

    #[test]
    fn a_total_is_kept(total in 150_i128..9000, fill in 20_i128..300, capacity in 300_i128..2000, stays in 0_i128..60) {
        let mut w = Workshop::new();
        let grams = |n| Amount::new(Exact::whole(n), MassUnit::Gram);
        w.pot.as_mut().unwrap().capacity = grams(capacity);
        w.fill = g(fill, 1);
        w.residue = Residue::Each(grams(stays));
        if let Ok(plan) = w.plan(Target::Total(grams(total))) {
            prop_assert!(plan.total <= g(total, 1));
            let exact = |p: &potside::pot::Pour| p.lines.iter().map(|l| l.exact).sum::<Mass>();
            prop_assert!(plan.pours.iter().all(|p| exact(p) <= g(capacity, 1)));
            prop_assert_eq!(plan.pours.iter().map(exact).sum::<Mass>(), plan.total);
        }
    }

    #[test]
    fn scaling_there_and_back_is_the_identity(n in 1_u32..40, k in 2_u32..9) {
        let mut w = Workshop::new();
        w.pot = None;
        let (one, many) = (w.plan(Target::Vessels(n)).unwrap(), w.plan(Target::Vessels(n * k)).unwrap());
        for (a, b) in one.pours[0].lines.iter().zip(&many.pours[0].lines) {
            prop_assert_eq!(a.exact, b.exact.times(Exact::ratio(1, k.into())));
            prop_assert_eq!((a.of_wax, a.of_whole), (b.of_wax, b.of_whole));
        }
    }
}

#[test]
fn the_tolerance_is_the_workshops() {
    let mut w = Workshop::new();
    w.tolerance = Share::base(Exact::ratio(1, 2));
    let plan = w.plan(Target::Vessels(3)).unwrap();
    assert!(line(&plan, "Red").notes.is_empty());
}
