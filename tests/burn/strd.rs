//! NIST's certified data for linear regression, read from tests/tables/strd.tsv: all eleven sets. The burn rate, the pool and
//! the trend are fitted by the same function of any columns, so every one of them applies.

use potside::bench::burn::{Line, least_squares};

const TABLE: &str = include_str!("../tables/strd.tsv");

/// What a set's columns are.
#[derive(Clone, Copy)]
pub enum Columns {
    /// These powers of x.
    Powers(&'static [i32]),
    /// One of ones, and one for each number after y.
    Several,
}

const SIXTH: Columns = Columns::Powers(&[0, 1, 2, 3, 4, 5]);

/// By what NIST calls their difficulty: two lower, three average, six higher.
pub const SETS: [(&str, Columns); 11] = [
    ("Norris", Columns::Powers(&[0, 1])),
    ("Pontius", Columns::Powers(&[0, 1, 2])),
    ("NoInt1", Columns::Powers(&[1])),
    ("NoInt2", Columns::Powers(&[1])),
    ("Filip", Columns::Powers(&[0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10])),
    ("Longley", Columns::Several),
    ("Wampler1", SIXTH),
    ("Wampler2", SIXTH),
    ("Wampler3", SIXTH),
    ("Wampler4", SIXTH),
    ("Wampler5", SIXTH),
];

fn rows(kind: &str, set: &str) -> Vec<Vec<f64>> {
    let lines = TABLE.lines().filter(|l| !l.starts_with('#')).map(|l| l.split('\t').collect::<Vec<_>>());
    let of = lines.filter(|l| l[0] == kind && l[1] == set);
    of.map(|l| l[2..].iter().map(|n| n.parse().unwrap()).collect()).collect()
}

/// What comes out for a set, its certified values with their errors, and the certified spread.
pub fn fitted(set: &str, columns: Columns) -> (Line, Vec<Vec<f64>>, f64) {
    let points = rows("point", set);
    let y: Vec<f64> = points.iter().map(|p| p[0]).collect();
    let column = |of: &dyn Fn(&[f64]) -> f64| points.iter().map(|p| of(&p[1..])).collect::<Vec<f64>>();
    let columns: Vec<Vec<f64>> = match columns {
        Columns::Powers(powers) => powers.iter().map(|power| column(&|x| x[0].powi(*power))).collect(),
        Columns::Several => {
            let ones = column(&|_| 1.0);
            let each = (0..points[0].len() - 1).map(|place| column(&|x| x[place]));
            std::iter::once(ones).chain(each).collect()
        }
    };
    let line = least_squares(&columns, &y).unwrap();
    let spread = &rows("spread", set)[0];
    assert_eq!(f64::from(line.freedom), spread[1], "{set}");
    (line, rows("certified", set), spread[0])
}

/// The largest relative error of a set's values, errors and spread. Where nothing is left over the errors are certified as
/// nothing: there they count against the values, and the spread against the largest y.
pub fn worst(set: &str, columns: Columns) -> f64 {
    let (line, certified, spread) = fitted(set, columns);
    let off =
        |got: f64, wanted: f64, of: f64| ((got - wanted) / if wanted == 0.0 { of } else { wanted }).abs();
    let largest = rows("point", set).iter().map(|p| p[0].abs()).fold(0.0, f64::max);
    let mut worst = off((line.squares / f64::from(line.freedom)).sqrt(), spread, largest);
    for ((value, error), row) in line.values.iter().zip(&line.errors).zip(certified) {
        worst = worst.max(off(*value, row[1], 1.0)).max(off(*error, row[2], row[1]));
    }
    worst
}
