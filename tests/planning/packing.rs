//! Published packings: the planner as a packer of bins, and what of a packing there is in splitting a batch over pots.
//!
//! A batch is of one formula in one vessel, so its vessels all take the same, and the pots it is split over are the same
//! pot filled again: a packing of equal things. The instances of the libraries (OR-Library's binpack1 to 8, BPPLIB) are of
//! things of different sizes, which never share a pot here; of equal things the fewest pots are known beforehand, and
//! that is what is held here. What has different sizes are the batches of a plan, which share the stores: there a packing
//! can be asked of the planner as it is, each bin a supply. An open library's instances of what batches are, knapsacks of
//! several supplies, are in `library`.
//!
//! The worked examples are those of the problem statement “BinPackingEasy” (capacity 300, each with its answer, from an
//! archive of programming contests); only the numbers are taken from it.

use crate::shared::{best, check};
use potside::shelf::planning::{Good, Line, Problem, Size};

/// Things, and the fewest bins of 300 that hold them.
const EXAMPLES: [(&[u64], usize); 4] = [
    (&[150, 150, 150, 150, 150], 3),
    (&[130, 140, 150, 160], 2),
    (&[101, 101, 101, 101, 101, 101, 101, 101, 101], 5),
    (&[101, 200, 101, 101, 101, 101, 200, 101, 200], 6),
];

/// Each thing is ordered once and may be poured from any one bin.
fn packing(things: &[u64], bins: usize) -> Problem {
    let good = |thing: &u64| Good {
        sizes: (0..bins).map(|bin| Size { number: 1, uses: vec![(bin, *thing)] }).collect(),
        ..Good::default()
    };
    let line = |good| Line { order: good, good, number: 1, wanted: None, in_parts: false };
    Problem {
        goods: things.iter().map(good).collect(),
        lines: (0..things.len()).map(line).collect(),
        supplies: vec![300; bins],
        ..Problem::default()
    }
}

#[test]
fn things_are_packed_into_the_fewest_bins() {
    for (things, fewest) in EXAMPLES {
        for bins in 1..=fewest {
            let problem = packing(things, bins);
            let plan = best(&problem);
            assert!(plan.closed(), "{things:?} into {bins}");
            check(&problem, &plan);
            assert_eq!(plan.score.late == 0, bins == fewest, "{things:?} into {bins}: {:?}", plan.score);
        }
    }
}
