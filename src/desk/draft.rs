//! The workshop's rates while they are typed: a table of fields, so that the form and the reading are one list.

use super::price::{read_percent, say_percent};
use super::{Aim, Channel, Rates};
use crate::quantity::{Currency, Exact, Money, Voice, read_count, read_number};

/// What a field asks for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Ask {
    Sign,
    Count,
    Money,
    Number,
    Percent,
}

/// Heading (where one begins), label, hint, what it asks for.
pub const FIELDS: [(&str, &str, &str, Ask); 19] = [
    ("Currency", "Sign", "Any you like. Nothing is converted.", Ask::Sign),
    ("", "Decimals", "2 for most, 0 for the yen.", Ask::Count),
    ("Work", "An hour of work", "What you pay yourself or someone else.", Ask::Money),
    ("", "Minutes for a batch", "Setting up and cleaning, whatever its size.", Ask::Number),
    ("", "Minutes more for each candle", "Wicking, filling, trimming, labels.", Ask::Number),
    ("Overhead and losses", "Overhead of a batch", "Power, gloves, paper.", Ask::Money),
    ("", "Overhead of an hour of work", "Room, insurance, tools.", Ask::Money),
    ("", "Candles that cannot be sold", "Of a hundred: test burns, breakage, seconds.", Ask::Percent),
    ("", "Packaging of a candle", "What is not in the stores.", Ask::Money),
    ("", "Paid every month", "Whatever is made: for the break-even number.", Ask::Money),
    ("", "Waits without running out", "Of a hundred waits for a delivery: 95 is usual.", Ask::Percent),
    ("Retail", "Profit", "", Ask::Percent),
    ("", "Fee of the price", "Market place, card.", Ask::Percent),
    ("", "Fee for each", "", Ask::Money),
    ("", "Shipping you pay for each", "", Ask::Money),
    ("Wholesale", "Profit", "", Ask::Percent),
    ("", "Fee of the price", "", Ask::Percent),
    ("", "Fee for each", "", Ask::Money),
    ("", "Shipping you pay for each", "", Ask::Money),
];

/// So many decimals of a price are kept at most.
const MOST: u32 = 6;

/// A number as it would be typed.
fn plain(number: Exact, voice: Voice) -> String {
    say_percent(number * Exact::ratio(1, 100), voice).trim_end_matches(" %").to_owned()
}

/// The first field of a way of selling: retail, wholesale.
pub const CHANNELS: [usize; 2] = [11, 15];

impl Rates {
    /// The fields as they would be typed.
    pub fn texts(&self, voice: Voice) -> Vec<String> {
        let coins = |m: Money| self.currency.show(m, voice.locale);
        let share = |s: Exact| say_percent(s, voice);
        let mut texts = vec![
            self.currency.symbol.clone(),
            self.currency.digits.to_string(),
            coins(self.hour),
            plain(self.batch_minutes, voice),
            plain(self.candle_minutes, voice),
            coins(self.overhead_batch),
            coins(self.overhead_hour),
            share(self.loss),
            coins(self.packaging),
            coins(self.month),
            share(self.service),
        ];
        for channel in [&self.retail, &self.wholesale] {
            let (Aim::Margin(profit) | Aim::Markup(profit)) = channel.aim;
            texts.extend([
                share(profit),
                share(channel.fee),
                coins(channel.fee_each),
                coins(channel.shipping),
            ]);
        }
        texts
    }

    /// `texts` in the order of [`FIELDS`]; `markup` where the profit of a way of selling is one.
    ///
    /// # Errors
    /// Every sentence that says what is wrong.
    pub fn read(texts: &[String], timed: bool, markup: [bool; 2], voice: Voice) -> Result<Self, Vec<String>> {
        let text = |at: usize| texts.get(at).map(|t| t.trim()).unwrap_or_default();
        let mut wrong = Vec::new();
        let mut currency = Currency { symbol: text(0).to_owned(), digits: 2 };
        let mut numbers = Vec::new();
        for (at, (_, label, _, ask)) in FIELDS.into_iter().enumerate() {
            let number = match ask {
                Ask::Sign => Ok(Exact::ZERO),
                Ask::Count => {
                    let count = if text(at) == "0" { Ok(0) } else { read_count(text(at), voice.locale) };
                    count.map(|n| {
                        if n > MOST {
                            wrong.push([label, ": type 0 to 6."].concat());
                        }
                        currency.digits = n.min(MOST);
                        Exact::whole(n.into())
                    })
                }
                Ask::Money => currency.read(text(at), voice.locale).map(|m| Exact::whole(m.0.into())),
                Ask::Number => read_number(text(at), voice.locale),
                Ask::Percent => match read_percent(text(at), voice) {
                    Ok(share) => Ok(share),
                    Err(why) => {
                        wrong.push([label, ": ", &why].concat());
                        Ok(Exact::ZERO)
                    }
                },
            };
            let number = number.map_err(|e| wrong.push([label, ": ", &e.to_string()].concat()));
            let number = number.unwrap_or_default();
            if number.is_negative() {
                wrong.push([label, ": type zero or more."].concat());
            }
            numbers.push(number);
        }
        let number = |at: usize| numbers.get(at).copied().unwrap_or_default();
        let money = |at: usize| super::cost::coins(number(at));
        let [retail, wholesale] = [(0, markup[0]), (1, markup[1])].map(|(n, markup)| {
            let at = CHANNELS.get(n).copied().unwrap_or_default();
            let profit = number(at);
            Channel {
                aim: if markup { Aim::Markup(profit) } else { Aim::Margin(profit) },
                fee: number(at + 1),
                fee_each: money(at + 2),
                shipping: money(at + 3),
            }
        });
        if number(7) >= Exact::ONE {
            wrong.push("Candles that cannot be sold: type less than 100 %.".to_owned());
        }
        if wrong.is_empty() {
            Ok(Self {
                hour: money(2),
                timed,
                batch_minutes: number(3),
                candle_minutes: number(4),
                overhead_batch: money(5),
                overhead_hour: money(6),
                loss: number(7),
                packaging: money(8),
                month: money(9),
                service: number(10),
                currency,
                retail,
                wholesale,
            })
        } else {
            Err(wrong)
        }
    }
}
