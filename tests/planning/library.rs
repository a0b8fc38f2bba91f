//! Instances of an open library: which batches to pour of what the stores have is a knapsack with several supplies where
//! each thing is poured once or not at all.
//!
//! J. E. Beasley's OR-Library, file mknap1 (instances 3, 6 and 7 of its seven; of Petersen, Operations Research 15, 1967),
//! each with the best value the file gives. The library stands under the MIT licence (from memory); only numbers are taken
//! from it. Its instances of bin packing are not here: `packing` says why.

use crate::knapsack::{Thing, knapsack};
use crate::shared::{best, check};
use potside::shelf::planning::MOST;

/// What it is worth, what there is of each supply, what each thing is worth, what each takes of each supply.
struct Instance {
    best: u32,
    supplies: &'static [u64],
    worth: &'static [u32],
    takes: &'static [&'static [u64]],
}

const INSTANCES: [Instance; 3] = [
    Instance {
        best: 4015,
        supplies: &[550, 700, 130, 240, 280, 310, 110, 205, 260, 275],
        worth: &[100, 220, 90, 400, 300, 400, 205, 120, 160, 580, 400, 140, 100, 1300, 650],
        takes: &[
            &[8, 24, 13, 80, 70, 80, 45, 15, 28, 90, 130, 32, 20, 120, 40],
            &[8, 44, 13, 100, 100, 90, 75, 25, 28, 120, 130, 32, 40, 160, 40],
            &[3, 6, 4, 20, 20, 30, 8, 3, 12, 14, 40, 6, 3, 20, 5],
            &[5, 9, 6, 40, 30, 40, 16, 5, 18, 24, 60, 16, 11, 30, 25],
            &[5, 11, 7, 50, 40, 40, 19, 7, 18, 29, 70, 21, 17, 30, 25],
            &[5, 11, 7, 55, 40, 40, 21, 9, 18, 29, 70, 21, 17, 35, 25],
            &[0, 0, 1, 10, 4, 10, 0, 6, 0, 6, 32, 3, 0, 70, 10],
            &[3, 4, 5, 20, 14, 20, 6, 12, 10, 18, 42, 9, 12, 100, 20],
            &[3, 6, 9, 30, 29, 20, 12, 12, 10, 30, 42, 18, 18, 110, 20],
            &[3, 8, 9, 35, 29, 20, 16, 15, 10, 30, 42, 20, 18, 120, 20],
        ],
    },
    Instance {
        best: 10618,
        supplies: &[600, 500, 500, 500, 600],
        worth: &[
            560, 1125, 300, 620, 2100, 431, 68, 328, 47, 122, 322, 196, 41, 25, 425, 4260, 416, 115, 82, 22,
            631, 132, 420, 86, 42, 103, 215, 81, 91, 26, 49, 420, 316, 72, 71, 49, 108, 116, 90,
        ],
        takes: &[
            &[
                40, 91, 10, 30, 160, 20, 3, 12, 3, 18, 9, 25, 1, 1, 10, 280, 10, 8, 1, 1, 49, 8, 21, 6, 1, 5,
                10, 8, 2, 1, 0, 10, 42, 6, 4, 8, 0, 10, 1,
            ],
            &[
                16, 92, 41, 16, 150, 23, 4, 18, 6, 0, 12, 8, 2, 1, 0, 200, 20, 6, 2, 1, 70, 9, 22, 4, 1, 5,
                10, 6, 4, 0, 4, 12, 8, 4, 3, 0, 10, 0, 6,
            ],
            &[
                38, 39, 32, 71, 80, 26, 5, 40, 8, 12, 30, 15, 0, 1, 23, 100, 0, 20, 3, 0, 40, 6, 8, 0, 6, 4,
                22, 4, 6, 1, 5, 14, 8, 2, 8, 0, 20, 0, 0,
            ],
            &[
                8, 71, 30, 60, 200, 18, 6, 30, 4, 8, 31, 6, 3, 0, 18, 60, 21, 4, 0, 2, 32, 15, 31, 2, 2, 7,
                8, 2, 8, 0, 2, 8, 6, 7, 1, 0, 0, 20, 8,
            ],
            &[
                38, 52, 30, 42, 170, 9, 7, 20, 0, 3, 21, 4, 1, 2, 14, 310, 8, 4, 6, 1, 18, 15, 38, 10, 4, 8,
                6, 0, 0, 3, 0, 10, 6, 1, 3, 0, 3, 5, 4,
            ],
        ],
    },
    Instance {
        best: 16537,
        supplies: &[800, 650, 550, 550, 650],
        worth: &[
            560, 1125, 300, 620, 2100, 431, 68, 328, 47, 122, 322, 196, 41, 25, 425, 4260, 416, 115, 82, 22,
            631, 132, 420, 86, 42, 103, 215, 81, 91, 26, 49, 420, 316, 72, 71, 49, 108, 116, 90, 738, 1811,
            430, 3060, 215, 58, 296, 620, 418, 47, 81,
        ],
        takes: &[
            &[
                40, 91, 10, 30, 160, 20, 3, 12, 3, 18, 9, 25, 1, 1, 10, 280, 10, 8, 1, 1, 49, 8, 21, 6, 1, 5,
                10, 8, 2, 1, 0, 10, 42, 6, 4, 8, 0, 10, 1, 40, 86, 11, 120, 8, 3, 32, 28, 13, 2, 4,
            ],
            &[
                16, 92, 41, 16, 150, 23, 4, 18, 6, 0, 12, 8, 2, 1, 0, 200, 20, 6, 2, 1, 70, 9, 22, 4, 1, 5,
                10, 6, 4, 0, 4, 12, 8, 4, 3, 0, 10, 0, 6, 28, 93, 9, 30, 22, 0, 36, 45, 13, 2, 2,
            ],
            &[
                38, 39, 32, 71, 80, 26, 5, 40, 8, 12, 30, 15, 0, 1, 23, 100, 0, 20, 3, 0, 40, 6, 8, 0, 6, 4,
                22, 4, 6, 1, 5, 14, 8, 2, 8, 0, 20, 0, 0, 6, 12, 6, 80, 13, 6, 22, 14, 0, 1, 2,
            ],
            &[
                8, 71, 30, 60, 200, 18, 6, 30, 4, 8, 31, 6, 3, 0, 18, 60, 21, 4, 0, 2, 32, 15, 31, 2, 2, 7,
                8, 2, 8, 0, 2, 8, 6, 7, 1, 0, 0, 20, 8, 14, 20, 2, 40, 6, 1, 14, 20, 12, 0, 1,
            ],
            &[
                38, 52, 30, 42, 170, 9, 7, 20, 0, 3, 21, 4, 1, 2, 14, 310, 8, 4, 6, 1, 18, 15, 38, 10, 4, 8,
                6, 0, 0, 3, 0, 10, 6, 1, 3, 0, 3, 5, 4, 0, 30, 12, 16, 18, 3, 16, 22, 30, 4, 0,
            ],
        ],
    },
];

/// The most that things are worth which fit together.
fn worth(things: &[Thing], supplies: &[u64]) -> u32 {
    // So many candles of one kind are not planned for at once: what is worth more is tried in and out.
    if let Some(at) = things.iter().position(|(number, _)| *number > MOST) {
        let mut rest = things.to_vec();
        let (number, takes) = rest.remove(at);
        let without = worth(&rest, supplies);
        let left = supplies.iter().zip(&takes).map(|(left, used)| left.checked_sub(*used));
        let with = left.collect::<Option<Vec<u64>>>().map(|left| number + worth(&rest, &left));
        return without.max(with.unwrap_or(0));
    }
    let problem = knapsack(things, supplies);
    let plan = best(&problem);
    assert!(plan.closed());
    check(&problem, &plan);
    things.iter().map(|(number, _)| number).sum::<u32>() - plan.score.late
}

#[test]
fn instances_of_an_open_library_are_solved_to_their_best() {
    for instance in &INSTANCES {
        let of = |thing: usize| instance.takes.iter().map(|of| of[thing]).collect();
        let things: Vec<Thing> = instance.worth.iter().enumerate().map(|(at, n)| (*n, of(at))).collect();
        assert_eq!(worth(&things, instance.supplies), instance.best);
    }
}
