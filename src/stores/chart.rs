//! The picture of a stock running down: what was there, what is foretold, and the line at which to order.

use super::{Account, Standing};
use crate::day::DAY;
use crate::pot::{HIGH, WIDE, Words};
use crate::quantity::{Exact, Voice};

/// The most days that are shown of the past and of what is to come.
const PAST: u64 = 180;
const AHEAD: u64 = 60;
/// What the words below it take.
const BELOW: i32 = 24;

/// In units of which it is [`WIDE`] across and [`HIGH`] down, from the top left.
#[derive(Clone, PartialEq, Debug)]
pub struct Chart {
    /// What was there, as a path in steps.
    pub stock: String,
    /// How it goes down at the present pace.
    pub ahead: String,
    /// So far down lies the line at which to order.
    pub reorder: Option<i32>,
    /// A line for today, as a path.
    pub today: String,
    pub words: Vec<Words>,
    pub said: String,
}

struct Frame {
    from: u64,
    to: u64,
    most: Exact,
}

impl Frame {
    fn x(&self, at: u64) -> i32 {
        let wide = u64::from(WIDE.unsigned_abs());
        let x = at.saturating_sub(self.from).saturating_mul(wide) / (self.to - self.from).max(1);
        i32::try_from(x).unwrap_or(WIDE).min(WIDE)
    }

    fn y(&self, amount: Exact) -> i32 {
        let down = HIGH - BELOW;
        let up = amount * Exact::whole(down.into()) / self.most;
        down - i32::try_from(up.round()).unwrap_or(0).clamp(0, down)
    }
}

fn point(path: &mut String, x: i32, y: i32) {
    path.push(if path.is_empty() { 'M' } else { 'L' });
    path.push_str(&[&x.to_string(), " ", &y.to_string()].concat());
}

impl Chart {
    /// `now` is in milliseconds since 1970, `day` writes a time as a day. None before there is anything to see.
    pub fn of(standing: &Standing, now: u64, voice: Voice, day: fn(u64) -> String) -> Option<Self> {
        let Account { stock, measure, name, .. } = standing.account;
        let from = stock.first()?.0.max(now.saturating_sub(PAST * DAY));
        let left = standing.account.left();
        let ahead = standing.lasts.map_or(AHEAD / 4, |days| (u64::from(days) + 3).min(AHEAD));
        let order = standing.reorder.as_ref().map(|r| r.at);
        let seen = stock.iter().filter(|(at, _)| *at >= from).map(|(_, there)| *there);
        let most = seen.chain([left, order.unwrap_or_default()]).max()?;
        if most <= Exact::ZERO || from >= now {
            return None;
        }
        let frame = Frame { from, to: now + ahead * DAY, most: most * Exact::ratio(11, 10) };
        let here = frame.x(now);
        let mut line = String::new();
        let mut before = Exact::ZERO;
        for (at, there) in stock {
            if *at >= from && *at <= now {
                point(&mut line, frame.x(*at), frame.y(before));
                point(&mut line, frame.x(*at), frame.y(*there));
            }
            before = *there;
        }
        point(&mut line, here, frame.y(left));
        let mut coming = String::new();
        if let Some(pace) = standing.pace.filter(|p| p.daily > Exact::ZERO) {
            let then = left - pace.daily * Exact::whole(ahead.into());
            point(&mut coming, here, frame.y(left));
            if then.is_negative() {
                let hours = left * Exact::whole(24) / pace.daily;
                let empty =
                    now.saturating_add(u64::try_from(hours.round()).unwrap_or(0).saturating_mul(DAY / 24));
                point(&mut coming, frame.x(empty), frame.y(Exact::ZERO));
            } else {
                point(&mut coming, WIDE, frame.y(then));
            }
        }
        let reorder = order.map(|at| frame.y(at));
        let mut words = vec![
            Words { x: 0, y: HIGH - 5, anchor: "start", text: day(from) },
            Words { x: here.clamp(200, WIDE - 40), y: HIGH - 5, anchor: "middle", text: "today".to_owned() },
        ];
        if let (Some(at), Some(y)) = (order, reorder) {
            let text = ["order at ", &measure.say(at, voice)].concat();
            words.push(Words { x: 4, y: (y - 6).max(14), anchor: "start", text });
        }
        let said = [
            "Picture of the stock of “",
            name,
            "” from ",
            &day(from),
            " to today: ",
            &measure.say(left, voice),
            " left, ",
            &standing.say(),
            ".",
        ]
        .concat();
        let today = ["M", &here.to_string(), " 0V", &(HIGH - BELOW).to_string()].concat();
        Some(Self { stock: line, ahead: coming, reorder, today, words, said })
    }
}
