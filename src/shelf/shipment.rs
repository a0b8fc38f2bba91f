//! What of an order may go now.

use super::{Move, Open, OpenLine, Reason};
use crate::book::Batch;
use crate::day::Day;

/// Which candles are fit to be sent.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Fit {
    Finished,
    /// Those too that are cured and not finished.
    Unfinished,
}

impl OpenLine<'_> {
    /// What may go now: all that is missing, or where parts may go what is ready.
    pub fn may_go(&self, in_parts: bool, fit: Fit) -> i64 {
        let missing = self.number - self.sent;
        let ready = match fit {
            Fit::Finished => self.finished,
            Fit::Unfinished => self.ready,
        };
        if ready >= missing || in_parts { ready.min(missing) } else { 0 }
    }
}

impl<'a> Open<'a> {
    /// For each line what may go now, as moves off the shelf: batches whose candles have cured, the first ready first.
    pub fn shipment(&self, today: Day, fit: Fit) -> Vec<Move> {
        let mut moves = Vec::new();
        for line in &self.lines {
            let mut may = line.may_go(self.order.in_parts, fit);
            for share in &line.kept {
                let good = fit == Fit::Unfinished || share.batch.ticked.is_whole();
                let number = if good && share.ready <= today { may.min(share.number) } else { 0 };
                if number > 0 {
                    may -= number;
                    moves.push(Move {
                        batch: share.batch.id.clone(),
                        number: u32::try_from(number).unwrap_or(u32::MAX),
                        reason: Reason::Shipped { order: self.kept.id.clone(), product: line.id.clone() },
                        on: today,
                        note: String::new(),
                    });
                }
            }
        }
        moves
    }

    /// Batches kept for it that are not finished, each once.
    pub fn unfinished(&self) -> Vec<&'a Batch> {
        let mut batches: Vec<&Batch> = Vec::new();
        for share in self.lines.iter().flat_map(|l| &l.kept) {
            if !share.batch.ticked.is_whole() && batches.iter().all(|b| b.id != share.batch.id) {
                batches.push(share.batch);
            }
        }
        batches
    }
}
