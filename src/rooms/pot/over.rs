//! Too much went in: the two honest ways, each with what it comes to.

use super::pouring::Pouring;
use crate::pot::{Pending, Way};
use crate::quantity::{Mass, Share};
use crate::rooms::parts::{mass, notes, why_button};
use leptos::prelude::*;

pub(super) fn over(p: Pouring) -> AnyView {
    (move || p.pending.with(|o| o.as_ref().map(|o| both_ways(p, o)))).into_any()
}

fn both_ways(p: Pouring, over: &Pending) -> AnyView {
    let voice = p.shop.voice();
    let step = over.step;
    view! {
        <h1 id="step-title" data-step="over">{format!("Too much {}", over.name)}</h1>
        <p class="wanted range"><span class="figure">{format!("+{}", voice.amount(over.over, voice.mass))}</span></p>
        <p>{format!(
            "{} went in, {} was asked. What is in the pot cannot be taken out. There are two ways:",
            voice.both(over.weighed),
            voice.both(over.asked),
        )}</p>
        <div class="ways">
            <section>
                <h2>"Keep it"</h2>
                <p>"The rest goes in as planned. The pot then holds what stands below."</p>
                {notes(&over.keep_notes)}
                <button type="button" class="big" on:click=move |_| p.mend(step, Way::Keep)>"Keep it"</button>
                {shares(over, &over.kept.of_wax, &over.kept.of_whole, p)}
            </section>
            {restoring(p, over)}
        </div>
    }
    .into_any()
}

fn shares(over: &Pending, of_wax: &[Share], of_whole: &[Share], p: Pouring) -> AnyView {
    let voice = p.shop.voice();
    let row = |((line, wax), whole): ((&crate::pot::Mended, &Share), &Share)| {
        view! {
            <tr>
                <th scope="row">{line.name.clone()}</th>
                <td class="number">{voice.share(*wax)}</td>
                <td class="number">{voice.share(*whole)}</td>
            </tr>
        }
    };
    view! {
        <table>
            <thead><tr>
                <th scope="col">"Part"</th>
                <th scope="col" class="number">"of wax"</th>
                <th scope="col" class="number">"of whole"</th>
            </tr></thead>
            <tbody>{over.lines.iter().zip(of_wax).zip(of_whole).map(row).collect_view()}</tbody>
        </table>
    }
    .into_any()
}

fn restoring(p: Pouring, over: &Pending) -> AnyView {
    let step = over.step;
    let Some(restored) = &over.restored else {
        return view! {
            <section>
                <h2>"Restore it"</h2>
                <p>"Vessels are filled from this pot already: what is added now would not reach them, so it can only be kept."</p>
            </section>
        }
        .into_any();
    };
    let row = |(line, add): (&crate::pot::Mended, &Mass)| {
        let words = if line.actual.is_zero() { "instead of what was planned" } else { "more" };
        view! {
            <li><span class="row">
                <span>{line.name.clone()}</span>
                <span>{mass(*add, Some(line.division).filter(|d| !d.is_zero()))}" "<span class="detail">{words}</span></span>
            </span></li>
        }
    };
    let adds = over.lines.iter().zip(&restored.add).filter(|(_, add)| !add.is_zero()).map(row).collect_view();
    view! {
        <section>
            <h2>"Restore it"</h2>
            <p>"Of the others is added until every share is right again."{why_button(restored.why.clone())}</p>
            {notes(&over.restore_notes)}
            <button type="button" class="big" on:click=move |_| p.mend(step, Way::Restore)>"Restore it"</button>
            <ul class="list">{adds}</ul>
            <p class="total">"Then in the pot: "{mass(restored.total, None)}</p>
        </section>
    }
    .into_any()
}
