//! NIST's certified data for linear regression, read from tests/tables/strd.tsv.

use potside::bench::burn::{Line, least_squares};

const TABLE: &str = include_str!("../tables/strd.tsv");

/// Which powers of x each model has.
pub const SETS: [(&str, &[i32]); 5] = [
    ("NoInt1", &[1]),
    ("NoInt2", &[1]),
    ("Norris", &[0, 1]),
    ("Pontius", &[0, 1, 2]),
    ("Wampler5", &[0, 1, 2, 3, 4, 5]),
];

fn rows(kind: &str, set: &str) -> Vec<Vec<f64>> {
    let lines = TABLE.lines().filter(|l| !l.starts_with('#')).map(|l| l.split('\t').collect::<Vec<_>>());
    let of = lines.filter(|l| l[0] == kind && l[1] == set);
    of.map(|l| l[2..].iter().map(|n| n.parse().unwrap()).collect()).collect()
}

/// What comes out for a set, its certified values with their errors, and the certified spread.
pub fn fitted(set: &str, powers: &[i32]) -> (Line, Vec<Vec<f64>>, f64) {
    let points = rows("point", set);
    let y: Vec<f64> = points.iter().map(|p| p[0]).collect();
    let columns: Vec<Vec<f64>> =
        powers.iter().map(|power| points.iter().map(|p| p[1].powi(*power)).collect()).collect();
    let line = least_squares(&columns, &y).unwrap();
    let spread = &rows("spread", set)[0];
    assert_eq!(f64::from(line.freedom), spread[1], "{set}");
    (line, rows("certified", set), spread[0])
}

/// The largest relative error of a set's values, errors and spread.
pub fn worst(set: &str, powers: &[i32]) -> f64 {
    let (line, certified, spread) = fitted(set, powers);
    let off = |got: f64, wanted: f64| ((got - wanted) / wanted).abs();
    let mut worst = off((line.squares / f64::from(line.freedom)).sqrt(), spread);
    for ((value, error), row) in line.values.iter().zip(&line.errors).zip(certified) {
        worst = worst.max(off(*value, row[1])).max(off(*error, row[2]));
    }
    worst
}
