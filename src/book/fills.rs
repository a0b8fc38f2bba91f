//! What is known of what is in the candles of a label: what was weighed, and what was only planned.

use super::Batch;
use crate::quantity::{Exact, Mass, Voice};

#[derive(Default)]
pub(super) struct Fills {
    /// Only what was weighed.
    pub weighed: Vec<Mass>,
    /// How many of the batch were filled, weighed or not; none of no batch.
    pub filled: Option<usize>,
    /// What one was to be filled with.
    pub planned: Option<Mass>,
}

impl Fills {
    pub fn of(batch: &Batch, voice: Voice) -> Self {
        let vessels = batch.run.record(voice).vessels;
        // What was not weighed stands in the record with the fill that was planned, which proves nothing.
        let weighed = vessels.iter().filter(|vessel| vessel.known).map(|vessel| vessel.mass).collect();
        Self { weighed, filled: Some(vessels.len()), planned: Some(batch.run.plan.fill) }
    }

    /// What may be declared: the average where all were weighed. Of those that were not, nobody knows that they are as
    /// full as the others, so no more than was planned is declared then.
    pub fn allows(&self) -> Option<Mass> {
        let mean = self.mean();
        match (mean, self.planned) {
            (Some(mean), Some(planned)) if Some(self.weighed.len()) != self.filled => Some(mean.min(planned)),
            _ => mean.or(self.planned),
        }
    }

    /// None of nothing.
    fn mean(&self) -> Option<Mass> {
        let count = Exact::ONE.checked_div(Exact::whole(self.weighed.len() as i128))?;
        Some(self.weighed.iter().copied().sum::<Mass>().times(count))
    }

    /// How many were weighed, their average and the smallest; or that nothing was. None of no batch.
    pub fn say(&self, voice: Voice) -> Option<String> {
        let (filled, count) = (self.filled?, self.weighed.len());
        let candles = if filled == 1 { " candle" } else { " candles" };
        let mut said =
            ["As filled, by the record: ", &count.to_string(), " of ", &filled.to_string()].concat();
        said.push_str(candles);
        said.push_str(" weighed");
        if let (Some(mean), Some(smallest)) = (self.mean(), self.weighed.iter().min()) {
            let found = [", on average ", &voice.both(mean), ", the smallest ", &voice.both(*smallest), "."];
            said.push_str(&found.concat());
            if count < filled {
                said.push_str(OTHERS);
            }
            return Some(said);
        }
        let planned = self.planned.map_or_else(String::new, |fill| [", ", &voice.both(fill)].concat());
        Some([&said, NOTHING, &planned, ". Weigh the candles as you fill them."].concat())
    }
}

const OTHERS: &str = " What is in the others is not known, so no more than the planned fill is declared, unless you type \
a weight.";

const NOTHING: &str = ". What is in them, and whether the batch would pass, cannot be told from the record. What is declared \
rests on the planned fill";
