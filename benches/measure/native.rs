//! What the domain costs, natively at full speed. A device beside the pot is slower, in WebAssembly, perhaps tenfold: the
//! budget of 1 ms leaves it within one frame.

use crate::formula_shared::{Weighed, formula, g, makes, oz, percent, range, tbsp};
use crate::{line, median};
use potside::desk::hazard::{Ingredient, mix, read_lines};
use potside::formula::{Basis, Formula, Part, PartKind, solve};
use potside::pot::{Mended, restore};
use potside::quantity::{Exact, Locale, Mass, Voice};
use std::hint::black_box;
use std::time::Instant;

const BUDGET_US: f64 = 1000.0;

/// Every basis there is, in ten parts.
fn ten_parts() -> Formula {
    let bases = [
        Basis::Spoon(tbsp("3/4")),
        Basis::OfWax(percent("0.5")),
        Basis::PerWax { amount: g("5"), wax: g("1000") },
        Basis::Drops(3),
        Basis::Drops(6),
        Basis::OfWhole(percent("1.5")),
        Basis::Weight(oz("0.4")),
        Basis::OfWax(percent("4")),
        Basis::OfWax(percent("3")),
        Basis::PerVessel(1),
    ];
    let part = |(index, basis): (usize, Basis)| Part {
        name: format!("Part {index}"),
        kind: PartKind::Other,
        basis,
        add: range("175", "180"),
        stir_minutes: 1,
        note: String::new(),
        highest: None,
        flash: None,
    };
    formula(bases.into_iter().enumerate().map(part).collect())
}

/// Microseconds of one call: the median of 51 rounds of 100.
fn micros<T>(mut call: impl FnMut() -> T) -> f64 {
    let mut round = || {
        let start = Instant::now();
        for _ in 0..100 {
            black_box(call());
        }
        start.elapsed().as_secs_f64() * 1e6 / 100.0
    };
    round();
    median(&mut (0..51).map(|_| round()).collect::<Vec<_>>())
}

/// Changes of the code that no test sees and that `docs/mutants.md` gives no reason for: what its table has left, less what
/// its list names.
fn mutants() {
    let said = include_str!("../../docs/mutants.md");
    let (table, list) = said.split_once("## What is left").expect("the list of what is left");
    let (list, _) = list.split_once("\n## ").unwrap_or((list, ""));
    let last = |row: &str| row.strip_suffix(" |")?.rsplit("| ").next()?.parse::<i32>().ok();
    let many = |named: &str| named.strip_prefix('(')?.split_once(')')?.0.parse::<i32>().ok();
    let left: i32 = table.lines().filter_map(last).sum();
    let reasons: i32 =
        list.lines().filter_map(|l| l.strip_prefix("- ")).map(|named| many(named).unwrap_or(1)).sum();
    line("mutants_unexplained", f64::from(left - reasons), "", Some(0.0));
}

pub(crate) fn figures() {
    mutants();
    let (formula, voice) = (ten_parts(), Voice::default());
    let total = Mass::base(Exact::ratio(18_437, 10));
    let solved = solve(&formula, makes(total), &Weighed, voice).expect("it can be made");
    let took = micros(|| solve(black_box(&formula), makes(black_box(total)), &Weighed, voice));
    line("solve_formula_us", took, "us", Some(BUDGET_US));

    // All is in as planned, but a fifth too much of the last part that is weighed.
    let mut pot: Vec<Mended> = solved
        .waxes
        .iter()
        .map(|wax| (wax, true))
        .chain(solved.parts.iter().map(|part| (part, false)))
        .filter(|(part, _)| part.pieces.is_none())
        .map(|(part, wax)| Mended {
            name: part.name.clone(),
            wax,
            planned: part.mass,
            actual: part.mass,
            division: Mass::base(Exact::ratio(1, 10)),
        })
        .collect();
    let last = pot.last_mut().expect("there are parts");
    last.actual = last.planned.times(Exact::ratio(6, 5));
    let fill = Mass::base(Exact::whole(180));
    assert!(restore(&pot, fill, None, voice).is_some_and(|r| r.factor == Exact::ratio(6, 5)));
    let took = micros(|| restore(black_box(&pot), fill, None, voice));
    line("rebalance_us", took, "us", Some(BUDGET_US));

    // Of NIST's certified sets for linear regression the worst value, error or spread.
    let worst =
        crate::strd::SETS.iter().map(|(set, columns)| crate::strd::worst(set, *columns)).fold(0.0, f64::max);
    line("trial_fit_error_percent", 100.0 * worst, "%", Some(0.01));

    // A fragrance of 60 substances, every kind of rule among them, at 8 % of a candle.
    let classes = [
        "Skin Irrit. 2 H315; Skin Sens. 1B H317",
        "Eye Irrit. 2 H319; Aquatic Chronic 2 H411",
        "Skin Sens. 1A H317; SCL Skin Sens. 1A >= 0.01 %",
        "Acute Tox. 4 H302; Asp. Tox. 1 H304",
        "Aquatic Acute 1 H400; Aquatic Chronic 1 H410; M=10",
        "Repr. 2 H361; STOT RE 2 H373",
    ];
    let lines: Vec<String> =
        (0..60).map(|n| format!("Substance {n}; 0.5 - 1.{} %; {}", n % 10, classes[n % 6])).collect();
    let (substances, errors) = read_lines(&lines.join("\n"), Locale::Point);
    assert!(errors.is_empty() && substances.len() == 60, "{errors:?}");
    let fragrance = Ingredient {
        name: "Fragrance".into(),
        percent: Exact::whole(8),
        sheet: Some(substances),
        harmless: false,
    };
    let candle = [fragrance];
    assert!(!mix(&candle, true).classes.is_empty());
    line("classify_us", micros(|| mix(black_box(&candle), true)), "us", Some(BUDGET_US));
}
