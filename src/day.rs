//! Days of the calendar, apart from any clock and time zone.

use crate::wire::{Flaws, Json, Wire, put_text};
use std::fmt;

/// A day, in milliseconds.
pub const DAY: u64 = 24 * 60 * 60 * 1000;

/// A day by its number from 1970-01-01 on. Written, kept and read as ISO 8601 writes it: `2026-11-25`.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Day(pub u32);

impl Day {
    /// The day at Greenwich of a time in milliseconds since 1970; see [`Zone::day`] for that of a workshop.
    pub fn of(at: u64) -> Self {
        Self(u32::try_from(at / DAY).unwrap_or(u32::MAX))
    }

    /// Its noon at Greenwich, milliseconds since 1970; elsewhere that may be a time of another day.
    pub fn noon(self) -> u64 {
        u64::from(self.0) * DAY + DAY / 2
    }

    /// None where it is no day of the years 1970 to 9999.
    pub fn read(text: &str) -> Option<Self> {
        let (mut numbers, mut at) = ([0; 3], 0);
        for sign in text.trim().bytes() {
            match (sign, numbers.get_mut(at)?) {
                (b'-', _) => at += 1,
                (b'0'..=b'9', number) if *number <= 9999 => *number = *number * 10 + u32::from(sign - b'0'),
                _ => return None,
            }
        }
        let [year, month, day] = numbers;
        let can_be = (1970..=9999).contains(&year) && (1..=12).contains(&month) && (1..=31).contains(&day);
        if at != 2 || !can_be {
            return None;
        }
        let read = Self::from_date(year, month, day);
        (read.date() == (year, month, day)).then_some(read)
    }

    /// Years are counted from March on, so that the odd day of a leap year is their last: 153 days make five months.
    fn from_date(year: u32, month: u32, day: u32) -> Self {
        let years = if month > 2 { year } else { year - 1 };
        let since_march = (month + 9) % 12;
        let days = 365 * years + years / 4 - years / 100 + years / 400 + (153 * since_march + 2) / 5 + day;
        Self(days.saturating_sub(719_469))
    }

    /// Year, month and day.
    pub fn date(self) -> (u32, u32, u32) {
        // Days since 1 March of the year 0; 146 097 of them make 400 years.
        let days = self.0.min(2_932_896) + 719_468;
        let (era, rest) = (days / 146_097, days % 146_097);
        let years = (rest - rest / 1460 + rest / 36_524 - rest / 146_096) / 365;
        let of_year = rest - (365 * years + years / 4 - years / 100);
        let since_march = (5 * of_year + 2) / 153;
        let month = if since_march < 10 { since_march + 3 } else { since_march - 9 };
        let year = 400 * era + years + u32::from(month <= 2);
        (year, month, of_year - (153 * since_march + 2) / 5 + 1)
    }

    /// Year, month and day as the digits of one number: 20261125.
    pub(crate) fn digits(self) -> u32 {
        let (year, month, day) = self.date();
        (year * 100 + month) * 100 + day
    }

    fn text(self) -> String {
        let (digits, mut text) = (self.digits(), String::new());
        put_digits(&mut text, digits / 10_000, 4);
        text.push('-');
        put_digits(&mut text, digits / 100, 2);
        text.push('-');
        put_digits(&mut text, digits, 2);
        text
    }
}

/// Adds the last digits of a number, so many of them.
pub(crate) fn put_digits(out: &mut String, number: u32, digits: u32) {
    if digits > 1 {
        put_digits(out, number / 10, digits - 1);
    }
    out.push(char::from(b'0' + (number % 10) as u8));
}

/// The clock on the wall of a place: from a time in milliseconds since 1970 at Greenwich to those that have gone by on that
/// clock. It is asked for each time, since summer time comes and goes.
#[derive(Clone, Copy, Debug)]
pub struct Zone(pub fn(u64) -> u64);

impl Zone {
    pub const GREENWICH: Self = Self(|at| at);

    /// The day there.
    pub fn day(self, at: u64) -> Day {
        Day::of((self.0)(at))
    }

    /// Hours and minutes there: `14:32`.
    pub fn clock(self, at: u64) -> String {
        let minutes = ((self.0)(at) / 60_000 % (24 * 60)) as u32;
        let mut text = String::new();
        put_digits(&mut text, minutes / 60, 2);
        text.push(':');
        put_digits(&mut text, minutes % 60, 2);
        text
    }

    /// When a day begins there, milliseconds since 1970; where its first hour comes twice, it may be the second of them.
    pub fn start(self, day: Day) -> u64 {
        let midnight = u64::from(day.0).saturating_mul(DAY);
        let before = |at: u64| (midnight.saturating_add(at)).saturating_sub((self.0)(at));
        // By how much the clock is ahead is known of a time only: once more with the time found. Where the two differ the
        // clock is put in between, and one of them may still be the day before.
        let first = before(midnight);
        let second = before(first);
        if self.day(first.min(second)) < day { first.max(second) } else { first.min(second) }
    }
}

/// Two are the same where they are the same function.
impl PartialEq for Zone {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::fn_addr_eq(self.0, other.0)
    }
}

impl Default for Zone {
    fn default() -> Self {
        Self::GREENWICH
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text())
    }
}

impl Wire for Day {
    fn put(&self, out: &mut String) {
        put_text(out, &self.text());
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        Self::read(json.text(flaws)).unwrap_or_else(|| {
            flaws.unlike();
            Self(0)
        })
    }
}
