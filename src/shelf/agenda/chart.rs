//! The plan on a calendar: a row a pour, from today until it can ship, with marks for the days it is wanted.

use super::{Agenda, Days};
use crate::day::Day;
use crate::pot::{WIDE, Words};
use crate::shelf::planning::Plan;

/// How high a row is, and what the words below take.
const HIGH: i32 = 52;
const BELOW: i32 = 30;
/// So many days are shown at least.
const LEAST: u32 = 7;

/// One pour.
#[derive(Clone, PartialEq, Debug)]
pub struct Row {
    /// The bar: its top, its width, its height.
    pub bar: (i32, i32, i32),
    /// Where a day is on which some of it is wanted; true where it is not ready then.
    pub marks: Vec<(i32, bool)>,
    /// What the picture shows of it.
    pub said: String,
}

/// In units of which it is [`WIDE`] across.
#[derive(Clone, PartialEq, Debug)]
pub struct Rows {
    pub high: i32,
    pub rows: Vec<Row>,
    pub words: Vec<Words>,
    pub said: String,
}

impl Rows {
    /// None where nothing is poured.
    pub fn of(agenda: &Agenda, plan: &Plan, day: Days) -> Option<Self> {
        let wanted = |line: &usize| agenda.wants.get(*line).and_then(|w| w.wanted);
        let mut last = Day(agenda.today.0.saturating_add(LEAST));
        for pour in &plan.pours {
            let days = pour.serves.iter().filter_map(|(line, _)| wanted(line));
            last = last.max(agenda.ready(pour)).max(days.max().unwrap_or(last));
        }
        let x = |to: Day| {
            let (days, all) = (to.0.saturating_sub(agenda.today.0), last.0 - agenda.today.0);
            i32::try_from(u64::from(days) * u64::from(WIDE.unsigned_abs()) / u64::from(all.max(1)))
                .unwrap_or(WIDE)
        };
        let (mut rows, mut words) = (Vec::new(), Vec::new());
        let mut top = 0;
        for pour in &plan.pours {
            let ready = agenda.ready(pour);
            let mut said = [&agenda.what(pour), ": poured today, can ship ", &day(ready)].concat();
            let mut marks = Vec::new();
            for (line, number) in &pour.serves {
                let Some(wanted) = wanted(line) else { continue };
                let late = wanted < ready;
                let how = if late { ", too late" } else { "" };
                said.extend(["; ", &number.to_string(), " wanted ", &day(wanted), how]);
                let mark = (x(wanted), late);
                if !marks.contains(&mark) {
                    marks.push(mark);
                }
            }
            said.push('.');
            words.push(Words { x: 2, y: top + 18, anchor: "start", text: agenda.what(pour) });
            rows.push(Row { bar: (top + 26, x(ready).max(4), 16), marks, said });
            top += HIGH;
        }
        let high = top + BELOW;
        words.push(Words { x: 0, y: high - 6, anchor: "start", text: "today".to_owned() });
        words.push(Words { x: WIDE, y: high - 6, anchor: "end", text: day(last) });
        let said =
            ["Calendar of the pours. ", &rows.iter().map(|r| r.said.as_str()).collect::<Vec<_>>().join(" ")];
        let said = said.concat();
        (!rows.is_empty()).then_some(Self { high, rows, words, said })
    }
}
