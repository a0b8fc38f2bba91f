//! The prices of supplies, by a linear programme in which a good may be a mix of its choices (primal simplex).

const SMALL: f64 = 1e-9;
/// More pivots than this find no better prices worth having.
const PIVOTS: usize = 3000;

/// What a row or a column stands for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Part {
    /// A choice, or what the choices of a good leave of the one it starts with.
    Choice,
    /// What is left of a supply.
    Supply(usize),
    /// What is left of a measure until it is worse than that of the best plan so far.
    Measure(usize),
}

/// Each row says what it stands for as a constant and a sum over the columns, which are all zero and may grow.
#[derive(Default)]
pub(super) struct Tableau {
    pub(super) rows: Vec<Row>,
    pub(super) columns: Vec<Part>,
}

pub(super) struct Row {
    pub(super) part: Part,
    pub(super) constant: f64,
    pub(super) terms: Vec<f64>,
}

impl Row {
    fn term(&self, column: usize) -> f64 {
        self.terms.get(column).copied().unwrap_or(0.0)
    }
}

impl Tableau {
    /// Makes what is left of a measure as large as can be, the measures before it being no worse than they may. Gives
    /// the price of each part that is used up.
    pub(super) fn solve(&mut self, measure: usize) -> Vec<(Part, f64)> {
        let goal = self.rows.iter().position(|row| row.part == Part::Measure(measure));
        let Some(goal) = goal else { return Vec::new() };
        for _ in 0..PIVOTS {
            let Some(row) = self.rows.get(goal) else { break };
            let terms = row.terms.iter().copied().enumerate().filter(|(_, term)| *term > SMALL);
            let Some((column, _)) = terms.reduce(|a, b| if b.1 > a.1 { b } else { a }) else { break };
            let mut tightest: Option<(f64, usize)> = None;
            for (at, row) in self.rows.iter().enumerate() {
                // Later measures bind nothing yet.
                let binds = !matches!(row.part, Part::Measure(later) if later >= measure);
                let term = row.term(column);
                if binds && term < -SMALL {
                    let room = row.constant / -term;
                    if tightest.is_none_or(|(least, _)| room < least) {
                        tightest = Some((room, at));
                    }
                }
            }
            let Some((_, at)) = tightest else { break };
            self.pivot(at, column);
        }
        let terms = self.rows.get(goal).map(|row| row.terms.as_slice()).unwrap_or_default();
        let priced = self.columns.iter().zip(terms).filter(|(_, term)| **term < 0.0);
        priced.map(|(part, term)| (*part, -term)).collect()
    }

    /// Row and column change places.
    fn pivot(&mut self, at: usize, column: usize) {
        let Some(mut pivot) = self.rows.get_mut(at).map(|row| Row {
            part: row.part,
            constant: row.constant,
            terms: std::mem::take(&mut row.terms),
        }) else {
            return;
        };
        let by = -pivot.term(column);
        if let Some(part) = self.columns.get_mut(column) {
            std::mem::swap(part, &mut pivot.part);
        }
        pivot.constant /= by;
        for term in &mut pivot.terms {
            *term /= by;
        }
        if let Some(term) = pivot.terms.get_mut(column) {
            *term = -1.0 / by;
        }
        for (_, row) in self.rows.iter_mut().enumerate().filter(|(row, _)| *row != at) {
            let Some(term) = row.terms.get_mut(column) else { continue };
            let by = std::mem::take(term);
            if by == 0.0 {
                continue;
            }
            row.constant += by * pivot.constant;
            for (term, of) in row.terms.iter_mut().zip(&pivot.terms) {
                *term += by * of;
            }
        }
        if let Some(row) = self.rows.get_mut(at) {
            *row = pivot;
        }
    }
}
