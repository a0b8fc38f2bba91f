//! From a formula, a vessel and a number to the plan of the pours.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::{Workshop, g, line, read};
use potside::pot::{Dose, Plan, Residue, Target, outline};
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

/// A plan is of a formula that was solved, so it is not looked over again for what is wrong with it; what must be read is
/// still all that a look at it finds, whatever stays in the pot.
#[test]
fn what_a_plan_says_of_its_formula_is_what_a_look_at_it_finds() {
    let mut w = Workshop::new();
    w.formula.parts.iter_mut().for_each(|part| part.highest = Some(read("0.1 %")));
    for residue in [Residue::None, Residue::Each(read("300 g"))] {
        w.residue = residue;
        let ask = w.ask(Target::Vessels(7));
        let found = potside::formula::check(ask.formula, ask.recipe).unwrap();
        assert!(found.len() > 3, "{found:?}");
        let (shown, _) = outline(&ask).unwrap();
        let said: Vec<&str> = shown.notes.iter().map(|n| n.text.as_str()).collect();
        for caution in found {
            assert!(said.contains(&caution.say(ask.voice).as_str()), "{caution:?}");
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
