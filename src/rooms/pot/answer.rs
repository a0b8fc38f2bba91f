//! A plan before it is begun: the totals, then every line with its measure, its shares and its why.

use super::dose::dose;
use crate::dom::*;
use crate::formula::PartKind;
use crate::pot::{Line, Plan, Pour};
use crate::quantity::{Mass, Why};
use crate::rooms::parts::{mass, notes, temperature, temperature_range, why_button};
use crate::rooms::workshop::Workshop;

pub(super) fn answer(shop: Workshop, plan: &Plan) -> View {
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
        pours.into_iter().map(|(count, pour)| one(shop, count, many, pour)).views()
    ]
}

/// Pours that are alike, with how many there are of each.
fn alike(pours: &[Pour]) -> Vec<(usize, &Pour)> {
    let mut kinds: Vec<(usize, &Pour)> = Vec::new();
    for pour in pours {
        match kinds.iter_mut().find(|(_, known)| *known == pour) {
            Some((count, _)) => *count += 1,
            None => kinds.push((1, pour)),
        }
    }
    kinds
}

/// A number under its name, and how it came about.
pub(super) fn figure(label: &'static str, value: Mass, why: Option<Why>) -> View {
    el("div")
        .child(el("dt").child(label))
        .child(el("dd").child(mass(value, None)).child(why.map(why_button)))
        .view()
}

fn one(shop: Workshop, count: usize, of: usize, pour: &Pour) -> View {
    let title = (of > 1).then(|| {
        let pours = if count == 1 { "1 pour".to_owned() } else { format!("each of {count} pours") };
        el("h3")
            .class("pour-title")
            .child(format!("For {pours}, {} vessels: ", pour.vessels))
            .child(mass(pour.total, None))
            .child(why_button(pour.why.clone()))
    });
    group![
        title,
        el("ul").class("list doses").child(pour.lines.iter().map(|line| row(shop, line)).views()),
        notes(&pour.notes)
    ]
}

fn row(shop: Workshop, line: &Line) -> View {
    let voice = shop.voice();
    let said = line.dose.said(voice);
    let with = said.with.clone();
    let added = line.add.as_ref().map(|range| format!(", added at {}", temperature_range(range)));
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
        .child(el("p").class("measure").child(dose(said)).child(why_button(line.why.clone())))
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
