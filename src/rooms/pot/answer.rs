//! A plan before it is begun: the totals, then every line with its measure, its shares and its why.

use super::ask::Asked;
use super::dose::dose;
use crate::dom::*;
use crate::formula::PartKind;
use crate::pot::{Dose, Line, Plan, Pour};
use crate::quantity::{Mass, Why};
use crate::rooms::parts::{mass, notes, temperature, temperature_range, why_asked, why_button};
use crate::rooms::workshop::Workshop;

pub(super) fn answer(shop: Workshop, asked: Asked, plan: &Plan) -> View {
    let pours = alike(&plan.pours);
    let many = plan.pours.len();
    let vessels = if plan.vessels == 1 { "1 vessel".to_owned() } else { format!("{} vessels", plan.vessels) };
    let wick = if plan.wick.is_empty() { String::new() } else { [", wick ", &plan.wick].concat() };
    group![
        el("p").class("only-print").child([&plan.formula, ": ", &plan.vessel, &wick].concat()),
        el("p")
            .class("sum")
            .attr("role", "status")
            .child(el("strong").class("figure").child(vessels.clone()))
            .child((many > 1).then(|| format!(" in {many} pours"))),
        el("dl")
            .class("figures")
            .child(figure("In the pot, in all", plan.total, Some(plan.why.clone())))
            .child(figure("In each vessel", plan.fill, plan.why_of("fill")))
            .child(
                (!plan.residue.is_zero()).then(|| {
                    figure("Stays in the pot", plan.residue, plan.why_of("what stays in the pot"))
                })
            ),
        notes(&plan.notes),
        el("p").class("muted").child(format!(
            "Melt to {}, pour at {} into {} vessels.",
            temperature(plan.melt_to.value),
            temperature_range(&plan.pour),
            if plan.warmed { "warmed" } else { "unwarmed" },
        )),
        pours.into_iter().map(|kind| one(shop, asked, &kind, many)).views()
    ]
}

/// Pours that are alike.
struct Kind<'a> {
    pour: &'a Pour,
    /// Which of all pours the first of them is, and how many there are.
    first: usize,
    count: usize,
}

fn alike(pours: &[Pour]) -> Vec<Kind<'_>> {
    let mut kinds: Vec<Kind> = Vec::new();
    for (first, pour) in pours.iter().enumerate() {
        match kinds.iter_mut().find(|kind| kind.pour == pour) {
            Some(kind) => kind.count += 1,
            None => kinds.push(Kind { pour, first, count: 1 }),
        }
    }
    kinds
}

/// Asks how something in the plan came about. Only then is the plan made with all that: it would take most of the time at
/// each key.
fn ask_why(shop: Workshop, asked: Asked, what: &str, of: impl Fn(&Plan) -> Option<Why> + 'static) -> View {
    why_asked(what, move || of(&untrack(|| asked.plan(shop)).ok()?))
}

/// A number under its name, and how it came about.
pub(super) fn figure(label: &'static str, value: Mass, why: Option<Why>) -> View {
    el("div")
        .child(el("dt").child(label))
        .child(el("dd").child(mass(value, None)).child(why.map(why_button)))
        .view()
}

fn one(shop: Workshop, asked: Asked, kind: &Kind, of: usize) -> View {
    let Kind { pour, first, count } = *kind;
    let title = (of > 1).then(|| {
        let pours = if count == 1 { "1 pour".to_owned() } else { format!("each of {count} pours") };
        el("h3")
            .class("pour-title")
            .child(format!("For {pours}, {} vessels: ", pour.vessels))
            .child(mass(pour.total, None))
            .child(ask_why(shop, asked, "This pot", move |plan| Some(plan.pours.get(first)?.why.clone())))
    });
    let rows = pour.lines.iter().enumerate().map(|(at, line)| {
        let why = move |plan: &Plan| Some(plan.pours.get(first)?.lines.get(at)?.why.clone());
        row(shop, line, ask_why(shop, asked, &line.name, why))
    });
    group![title, el("ul").class("list doses").child(rows.views()), notes(&pour.notes)]
}

fn row(shop: Workshop, line: &Line, why: View) -> View {
    let voice = shop.voice();
    let said = line.dose.said(voice);
    let with = said.with.clone();
    // What is counted is set in the vessels, not added to the pot.
    let added = line.add.as_ref().filter(|_| !matches!(line.dose, Dose::Count { .. }));
    let added = added.map(|range| format!(", added at {}", temperature_range(range)));
    let stirred = (line.stir_minutes > 0).then(|| format!(", stirred {} min", line.stir_minutes));
    let shares = (!line.exact.is_zero()).then(|| {
        format!("{} of the wax, {} of the whole", voice.share(line.of_wax), voice.share(line.of_whole))
    });
    el("li")
        .child(
            el("p")
                .class("title")
                .child(line.name.clone())
                .child(" ")
                .child(el("span").class("detail").child(kind(line.kind))),
        )
        .child(el("p").class("measure").child(dose(said)).child(why))
        .child(el("p").class("detail").child(with).child(added).child(stirred))
        .child(el("p").class("detail").child(shares))
        .child(notes(&line.notes))
        .view()
}

fn kind(kind: Option<PartKind>) -> &'static str {
    match kind {
        None => "wax",
        Some(PartKind::Fragrance) => "fragrance",
        Some(PartKind::Dye) => "dye",
        Some(PartKind::Additive) => "additive",
        Some(PartKind::Other) => "",
    }
}
