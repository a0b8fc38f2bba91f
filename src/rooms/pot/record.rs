//! The record of a batch: what was planned and weighed, temperatures and times, vessels, what was missed, the notes.

use crate::book::{Act, Batch, Ending};
use crate::keep;
use crate::pot::{Record, RecordLine, RecordStep, RecordVessel};
use crate::quantity::{Exact, Mass, show_both};
use crate::rooms::parts::{mass, notes};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

/// A batch, running or ended, on one page that prints.
pub(in crate::rooms) fn record(batch: &Batch) -> AnyView {
    let shop = Workshop::here();
    let plan = &batch.run.plan;
    let record = batch.run.record(shop.voice());
    let note = batch.ended.as_ref().map(|(_, _, note)| note.clone()).filter(|n| !n.is_empty());
    let cautions: Vec<_> = plan.notes.iter().filter(|n| n.caution).cloned().collect();
    let ended = batch.ended.as_ref().map(|(how, at, _)| {
        let how = match how {
            Ending::Poured => "Poured",
            Ending::GivenUp => "Stopped",
        };
        format!("{how}, {}", keep::time(*at))
    });
    let wick = if plan.wick.is_empty() { String::new() } else { format!(", wick {}", plan.wick) };
    let circumstances = format!(
        "{}{wick}. Vessels {}. {}",
        plan.vessel,
        if plan.warmed { "warmed" } else { "at room temperature" },
        plan.pot.as_ref().map(|p| format!("Pot: {p}.")).unwrap_or_default(),
    );
    view! {
        <article class="record">
            <h1>{plan.formula.clone()}</h1>
            <p class="when">
                {keep::day(batch.began)}", begun "{keep::time(batch.began)}". "
                <strong>{ended.unwrap_or_else(|| "Still going on".to_owned())}</strong>"."
            </p>
            <p>{circumstances}</p>
            {ways(shop, batch)}
            <dl class="figures">
                <div><dt>"Vessels filled"</dt><dd>{format!("{} of {}", record.vessels.len(), plan.vessels)}</dd></div>
                {figure("Went in", record.made)}
                {figure("Filled", record.filled)}
                {figure("Left in the pot", record.leftover)}
                <div><dt>"Cure"</dt><dd>{format!("{} days", plan.cure_days)}</dd></div>
            </dl>
            {note.map(|note| view! { <p class="note">{note}</p> })}
            {said(&record)}
            <h2>"What went in"</h2>
            {lines(shop, &record.lines)}
            <h2>"When and how hot"</h2>
            {steps(shop, &record.steps)}
            {vessels(shop, &record.vessels, plan.fill)}
            {readings(shop, &record)}
            {notes(&cautions)}
        </article>
    }
    .into_any()
}

fn figure(label: &'static str, value: Mass) -> AnyView {
    view! { <div><dt>{label}</dt><dd>{mass(value, None)}</dd></div> }.into_any()
}

/// What can be done with a record.
fn ways(shop: Workshop, batch: &Batch) -> AnyView {
    let again = format!("#pot/again/{}", batch.id);
    // Ended by mistake: its end is the last thing that was done of it, and can be taken back.
    let pouring = batch.ended.is_none();
    let reopen = move |entry: crate::book::Id| {
        shop.act(Act::Undo { entry });
        shop.go("#pot");
    };
    view! {
        <div class="actions">
            {if pouring {
                view! { <a class="button main" href="#pot">"Back to the pour"</a> }.into_any()
            } else {
                view! { <a class="button main" href=again>"Pour this again"</a> }.into_any()
            }}
            <button type="button" on:click=move |_| keep::print()>"Print"</button>
            {batch.ended.as_ref().and(batch.entries.last().cloned()).map(|entry| view! {
                <button type="button" class="quiet" on:click=move |_| reopen(entry.clone())>"Go on with this pour"</button>
            })}
        </div>
    }
    .into_any()
}

fn said(record: &Record) -> AnyView {
    record
        .said
        .iter()
        .map(|(at, text)| view! { <p class="note"><span class="detail">{keep::time(*at)}" "</span>{text.clone()}</p> })
        .collect_view()
        .into_any()
}

fn lines(shop: Workshop, lines: &[RecordLine]) -> AnyView {
    let many = lines.iter().any(|l| l.pour > 1);
    view! {
        <table class="stack">
            <thead><tr>
                <th scope="col">"Part"</th>
                <th scope="col" class="number">"Planned"</th>
                <th scope="col" class="number">"Weighed"</th>
                <th scope="col" class="number">"Difference"</th>
                <th scope="col" class="number">"of wax"</th>
                <th scope="col" class="number">"of whole"</th>
            </tr></thead>
            <tbody>{lines.iter().map(|line| row(shop, line, many)).collect_view()}</tbody>
        </table>
    }
    .into_any()
}

fn row(shop: Workshop, line: &RecordLine, many: bool) -> AnyView {
    let voice = shop.voice();
    let division = Some(line.dose.division()).filter(|d| !d.is_zero());
    let shown = |mass: Mass| show_both(mass, voice.mass, division, voice.locale).0.to_string();
    let weighed = if line.weighed.is_zero() { "–".to_owned() } else { shown(line.weighed) };
    // What was not weighed in is taken as it was asked.
    let asked = (!line.known && !line.weighed.is_zero()).then_some(" as asked");
    let off = if line.weighed.is_zero() || line.off.is_zero() {
        "–".to_owned()
    } else if line.off.in_base() > Exact::ZERO {
        format!("+{}", shown(line.off))
    } else {
        shown(line.off)
    };
    let share = |s: crate::quantity::Share| if s.is_zero() { "–".to_owned() } else { voice.share(s) };
    let said = line.dose.said(voice);
    let planned = format!("{} {}", said.number, said.unit);
    let pour = many.then(|| format!(", pour {}", line.pour));
    view! {
        <tr>
            <th scope="row">{line.name.clone()}{pour}</th>
            <td class="number" data-label="Planned">{planned}</td>
            <td class="number" data-label="Weighed"><span>{weighed}<span class="detail">{asked}</span></span></td>
            <td class="number" data-label="Difference">{off}</td>
            <td class="number" data-label="of wax">{share(line.of_wax)}</td>
            <td class="number" data-label="of whole">{share(line.of_whole)}</td>
        </tr>
    }
    .into_any()
}

fn steps(shop: Workshop, steps: &[RecordStep]) -> AnyView {
    let voice = shop.voice();
    // Vessels have a list of their own.
    let steps = steps.iter().filter(|s| !matches!(s.key, crate::pot::StepKey::Fill { .. }));
    let row = |step: &RecordStep| {
        let temperature = step.temperature.map(|t| voice.amount(t, voice.temperature));
        let wanted = step.wanted.as_ref().map(|w| format!(" (wanted {w})"));
        view! {
            <li>
                <span class="time">{keep::time(step.at)}</span>
                <span class="title">{step.title.clone()}</span>
                <span class="detail">{temperature}{wanted}</span>
                {step.missed.clone().map(|missed| view! { <p class="note">{missed}</p> })}
            </li>
        }
    };
    view! { <ol class="list times">{steps.map(row).collect_view()}</ol> }.into_any()
}

fn vessels(shop: Workshop, vessels: &[RecordVessel], fill: Mass) -> AnyView {
    let voice = shop.voice();
    let weighed: Vec<&RecordVessel> = vessels.iter().filter(|v| v.known).collect();
    if vessels.is_empty() {
        return ().into_any();
    }
    let each = if weighed.is_empty() {
        view! { <p>{format!("{} filled with {} each, as planned.", vessels.len(), voice.both(fill))}</p> }
            .into_any()
    } else {
        let row = |v: &&RecordVessel| {
            let place = if v.pour > 1 {
                format!("Pour {}, vessel {}", v.pour, v.vessel)
            } else {
                format!("Vessel {}", v.vessel)
            };
            view! { <li><span class="title">{place}</span><span class="detail">{mass(v.mass, None)}</span></li> }
        };
        view! {
            <ol class="list times">{weighed.iter().map(row).collect_view()}</ol>
            {(weighed.len() < vessels.len()).then(|| view! {
                <p class="muted">{format!("The others were filled with {} as planned.", voice.both(fill))}</p>
            })}
        }
        .into_any()
    };
    view! { <h2>"Vessels"</h2>{each} }.into_any()
}

fn readings(shop: Workshop, record: &Record) -> AnyView {
    let voice = shop.voice();
    if record.readings.is_empty() {
        return ().into_any();
    }
    let one = |(at, t): &(u64, crate::quantity::Temperature)| {
        view! { <li>{keep::time(*at)}" "<strong>{voice.amount(*t, voice.temperature)}</strong></li> }
    };
    view! {
        <h2>"Thermometer"</h2>
        <ol class="readings">{record.readings.iter().map(one).collect_view()}</ol>
    }
    .into_any()
}
