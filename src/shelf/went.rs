//! Why candles cannot have gone, or come back, as it is written down.

use super::{Move, Reason};
use crate::book::{Kept, State};

/// `1 candle`, `4 candles`.
pub(super) fn candles(n: impl Into<i64>) -> String {
    let n = n.into();
    if n == 1 { "1 candle".to_owned() } else { [&n.to_string(), " candles"].concat() }
}

impl State {
    /// Why this cannot be by what the book has of the batch: more would go than there are, or come back than went out. A
    /// count may say anything.
    pub fn refuses_move(&self, body: &Move) -> Option<String> {
        let batch = self.batches.get(&body.batch)?;
        let left = self.left_of(batch);
        match body.reason {
            Reason::Missing | Reason::Found => None,
            Reason::Returned => {
                let out = self.out_of(body).max(0);
                (i64::from(body.number) > out).then(|| {
                    let advice = " went out of this batch and did not come back yet. Look at the batch number on those that \
                                  came; or, if the book is wrong, count what is there.";
                    [&candles(out), advice].concat()
                })
            }
            Reason::Shipped { .. } | Reason::Broken | Reason::Sample | Reason::Gift => (left + body.adds()
                < 0)
            .then(|| ["Left: ", &candles(left), ". Count them, if that is not so."].concat()),
        }
    }

    /// Candles of the batch that somebody has, as far as it is written down.
    fn out_of(&self, body: &Move) -> i64 {
        let kept = self.moves.values().filter(|k| !k.retired).filter_map(Kept::body);
        let of_it = kept.filter(|m| m.batch == body.batch).map(|m| match m.reason {
            Reason::Shipped { .. } | Reason::Gift | Reason::Sample => i64::from(m.number),
            Reason::Returned => -i64::from(m.number),
            Reason::Broken | Reason::Missing | Reason::Found => 0,
        });
        of_it.sum()
    }
}
