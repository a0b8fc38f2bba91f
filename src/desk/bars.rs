//! The picture of what a candle costs: a bar for each part, the largest first.

use super::Cost;
use crate::quantity::{Currency, Money, Voice};
use crate::sort;

/// One part: how long its bar is in hundredths of the longest, and its words.
#[derive(Clone, PartialEq, Debug)]
pub struct Bar {
    pub length: i32,
    pub words: String,
}

impl Cost {
    /// What one candle costs by part, the largest first, with the picture in a sentence.
    pub fn bars(&self, currency: &Currency, voice: Voice) -> (Vec<Bar>, String) {
        let say = |m: Money| currency.show(m, voice.locale);
        let mut parts: Vec<(Money, &str)> =
            self.parts().into_iter().zip(self.items.iter().map(|i| i.name.as_str())).collect();
        sort::by(&mut parts, |a, b| b.0.cmp(&a.0));
        let most = parts.first().map_or(1, |(m, _)| m.0.max(1));
        let mut said = ["What one candle costs: ", &say(self.dearest()), "."].concat();
        let mut bars = Vec::new();
        for (cost, name) in parts {
            let words = [name, " ", &say(cost)].concat();
            said.push_str(&[" ", &words, "."].concat());
            let length = i128::from(cost.0) * 100 / i128::from(most);
            bars.push(Bar { length: i32::try_from(length).unwrap_or(100).max(1), words });
        }
        (bars, said)
    }
}
