//! The record of a batch: what was planned and weighed, temperatures and times, vessels, what was missed, the notes.

use super::answer::figure;
use super::course::{readings, steps, vessels};
use crate::book::{Act, Batch, Ending};
use crate::dom::*;
use crate::keep;
use crate::pot::{Record, RecordLine};
use crate::quantity::{Exact, Mass, show_both};
use crate::rooms::parts::notes;
use crate::rooms::workshop::Workshop;
use crate::shelf::batch_number;

/// A batch, running or ended, on one page that prints.
pub(in crate::rooms) fn record(batch: &Batch) -> View {
    let shop = Workshop::here();
    let plan = &batch.run.plan;
    let record = batch.run.record(shop.voice());
    let [went_in, filled, left] = batch.run.record_whys(&record, shop.voice());
    let note = batch.ended.as_ref().map(|(_, _, note)| note.clone()).filter(|n| !n.is_empty());
    let cautions: Vec<_> = plan.notes.iter().filter(|n| n.caution).cloned().collect();
    let ended = batch.ended.as_ref().map(|(how, at, _)| {
        let how = match how {
            Ending::Poured => "Poured",
            Ending::GivenUp => "Stopped",
        };
        format!("{how}, {}", keep::time(*at))
    });
    let on = batch.begun_on(keep::ZONE);
    let wick = if plan.wick.is_empty() { String::new() } else { format!(", wick {}", plan.wick) };
    let circumstances = format!(
        "{}{wick}. Vessels {}. {}",
        plan.vessel,
        if plan.warmed { "warmed" } else { "at room temperature" },
        plan.pot.as_ref().map(|p| format!("Pot: {p}.")).unwrap_or_default(),
    );
    el("article")
        .class("record")
        .child(el("h1").child(plan.formula.clone()))
        .child(
            el("p")
                .class("when")
                .child(keep::day(on))
                .child(keep::time_on(on, batch.began).map(|time| [", begun ", &time].concat()))
                .child(". ")
                .child(el("strong").child(ended.unwrap_or_else(|| "Still going on".to_owned())))
                .child("."),
        )
        .child(
            el("p")
                .child("Batch ")
                .child(el("strong").child(batch_number(batch)))
                .child(". ")
                .child(circumstances),
        )
        .child(ways(shop, batch))
        .child(
            el("dl")
                .class("figures")
                .child(el("div").child(el("dt").child("Vessels filled")).child(el("dd").child(format!(
                    "{} of {}",
                    record.vessels.len(),
                    batch.run.planned_vessels()
                ))))
                .child(figure("Went in", record.made, Some(went_in)))
                .child(figure("Filled", record.filled, Some(filled)))
                .child(figure("Left in the pot", record.leftover, Some(left)))
                .child((plan.cure_days > 0).then(|| {
                    let unit = if plan.cure_days == 1 { "day" } else { "days" };
                    el("div")
                        .child(el("dt").child("Cure"))
                        .child(el("dd").child(format!("{} {unit}", plan.cure_days)))
                })),
        )
        .child(note.map(|note| el("p").class("note").child(note)))
        .child(said(&record))
        .child(el("h2").child("What went in"))
        .child(lines(shop, &record.lines))
        .child(super::lots::origins(shop, batch))
        .child(el("h2").child("When and how hot"))
        .child(steps(shop, &record.steps))
        .child(vessels(shop, &record, plan.fill))
        .child(readings(shop, &record.readings))
        .child(notes(&cautions))
        .view()
}

/// What can be done with a record.
fn ways(shop: Workshop, batch: &Batch) -> View {
    let again = format!("#pot/again/{}", batch.id);
    // Ended by mistake: its end is the last thing that was done of it, and can be taken back.
    let pouring = batch.ended.is_none();
    let reopen = move |entry: crate::book::Id| {
        shop.act(Act::Undo { entry });
        shop.go("#pot");
    };
    let changed = !pouring && shop.state(|s| s.changed_since(batch));
    let other = changed.then(|| {
        el("p").class("note").child(
            "The formula has changed since. Poured again, it is the formula of today; as it was then it stands in the Book.",
        )
    });
    let ways = el("div")
        .class("actions")
        .child(if pouring {
            el("a").class("button main").attr("href", "#pot").child("Back to the pour").view()
        } else {
            el("a").class("button main").attr("href", again).child("Pour this again").view()
        })
        .child(el("button").attr("type", "button").on("click", move |_| keep::print()).child("Print"))
        .child((!pouring).then(|| {
            let cost = ["#desk/cost/", &batch.id.0].concat();
            el("a").class("button").attr("href", cost).child("What it cost")
        }))
        .child(batch.ended.as_ref().and(batch.run.entries().last().cloned()).map(|entry| {
            el("button")
                .attr("type", "button")
                .class("quiet")
                .on("click", move |_| reopen(entry.clone()))
                .child("Go on with this pour")
        }));
    group![ways, other]
}

fn said(record: &Record) -> View {
    record
        .said
        .iter()
        .map(|(at, text)| {
            el("p")
                .class("note")
                .child(el("span").class("detail").child(keep::time(*at)).child(" "))
                .child(text.clone())
        })
        .views()
        .view()
}

fn lines(shop: Workshop, lines: &[RecordLine]) -> View {
    let many = lines.iter().any(|l| l.pour > 1);
    el("table")
        .class("stack")
        .child(
            el("thead").child(
                el("tr")
                    .child(el("th").attr("scope", "col").child("Part"))
                    .child(el("th").attr("scope", "col").class("number").child("Planned"))
                    .child(el("th").attr("scope", "col").class("number").child("Weighed"))
                    .child(el("th").attr("scope", "col").class("number").child("Difference"))
                    .child(el("th").attr("scope", "col").class("number").child("of wax"))
                    .child(el("th").attr("scope", "col").class("number").child("of whole")),
            ),
        )
        .child(el("tbody").child(lines.iter().map(|line| row(shop, line, many)).views()))
        .view()
}

fn row(shop: Workshop, line: &RecordLine, many: bool) -> View {
    let voice = shop.voice();
    let division = Some(line.dose.division()).filter(|d| !d.is_zero());
    let shown = |mass: Mass| show_both(mass, voice.mass, division, voice.locale).0.to_string();
    let weighed = match &line.dose {
        _ if line.weighed.is_zero() => "–".to_owned(),
        dose if dose.is_counted() => dose.tell(line.weighed, voice),
        _ => shown(line.weighed),
    };
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
    el("tr")
        .child(el("th").attr("scope", "row").child(line.name.clone()).child(pour))
        .child(el("td").class("number").attr("data-label", "Planned").child(planned))
        .child(
            el("td")
                .class("number")
                .attr("data-label", "Weighed")
                .child(el("span").child(weighed).child(el("span").class("detail").child(asked))),
        )
        .child(el("td").class("number").attr("data-label", "Difference").child(off))
        .child(el("td").class("number").attr("data-label", "of wax").child(share(line.of_wax)))
        .child(el("td").class("number").attr("data-label", "of whole").child(share(line.of_whole)))
        .view()
}
