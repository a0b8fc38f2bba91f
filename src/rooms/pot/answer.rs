//! A plan before it is begun: the totals, then every line with its measure, its shares and its why.

use super::dose::dose;
use crate::formula::PartKind;
use crate::pot::{Line, Plan, Pour};
use crate::quantity::Mass;
use crate::rooms::parts::{mass, notes, temperature, temperature_range, why_button};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

pub(super) fn answer(shop: Workshop, plan: &Plan) -> AnyView {
    let pours = alike(&plan.pours);
    let many = plan.pours.len();
    let vessels = if plan.vessels == 1 { "1 vessel".to_owned() } else { format!("{} vessels", plan.vessels) };
    view! {
        <p class="sum" role="status">
            <strong class="figure">{vessels.clone()}</strong>
            {(many > 1).then(|| format!(" in {many} pours"))}
        </p>
        <dl class="figures">
            {figure("In the pot, in all", plan.total, Some(why_button(plan.why.clone())))}
            {figure("In each vessel", plan.fill, None)}
            {(!plan.residue.is_zero()).then(|| figure("Stays in the pot", plan.residue, None))}
        </dl>
        {notes(&plan.notes)}
        {pours.into_iter().map(|(count, pour)| one(shop, count, many, pour)).collect_view()}
        <p class="muted">
            {format!(
                "Melt to {}, pour at {} into {} vessels.",
                temperature(plan.melt_to.value),
                temperature_range(&plan.pour),
                if plan.warmed { "warmed" } else { "unwarmed" },
            )}
        </p>
    }
    .into_any()
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

fn figure(label: &'static str, value: Mass, why: Option<AnyView>) -> AnyView {
    view! { <div><dt>{label}</dt><dd>{mass(value, None)}{why}</dd></div> }.into_any()
}

fn one(shop: Workshop, count: usize, of: usize, pour: &Pour) -> AnyView {
    let title = (of > 1).then(|| {
        let pours = if count == 1 { "1 pour".to_owned() } else { format!("each of {count} pours") };
        view! {
            <h3 class="pour-title">
                {format!("For {pours}, {} vessels: ", pour.vessels)}{mass(pour.total, None)}
                {why_button(pour.why.clone())}
            </h3>
        }
    });
    view! {
        {title}
        <ul class="list doses">{pour.lines.iter().map(|line| row(shop, line)).collect_view()}</ul>
        {notes(&pour.notes)}
    }
    .into_any()
}

fn row(shop: Workshop, line: &Line) -> AnyView {
    let voice = shop.voice();
    let said = line.dose.said(voice);
    let with = said.with.clone();
    let added = line.add.as_ref().map(|range| format!(", added at {}", temperature_range(range)));
    let shares = (!line.exact.is_zero()).then(|| {
        format!("{} of the wax, {} of the whole", voice.share(line.of_wax), voice.share(line.of_whole))
    });
    view! {
        <li>
            <p class="title">{line.name.clone()}" "<span class="detail">{kind(line.kind)}</span></p>
            <p class="measure">{dose(said)}{why_button(line.why.clone())}</p>
            <p class="detail">{with}{added}</p>
            <p class="detail">{shares}</p>
            {notes(&line.notes)}
        </li>
    }
    .into_any()
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
