//! The one sort, held against that of the standard library.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::indexing_slicing)]

use potside::sort::{by, order};
use proptest::prelude::*;

proptest! {
    /// Equal ones stay as they stood: only the number is compared, the place tells them apart.
    #[test]
    fn as_the_standard_library_sorts(numbers in proptest::collection::vec(0_u8..20, 0..200)) {
        let mut ours: Vec<(usize, u8)> = numbers.iter().copied().enumerate().collect();
        let mut theirs = ours.clone();
        by(&mut ours, |a, b| a.1.cmp(&b.1));
        theirs.sort_by_key(|n| n.1);
        prop_assert_eq!(&ours, &theirs);
        let places = order(numbers.len(), &|a, b| numbers[a].cmp(&numbers[b]));
        prop_assert_eq!(places, theirs.iter().map(|n| n.0).collect::<Vec<_>>());
    }
}

/// What is nearly in order takes few comparisons: a book's entries are.
#[test]
fn passes_over_what_is_in_order() {
    let asked = std::cell::Cell::new(0_u32);
    let mut numbers: Vec<u32> = (0..100_000).collect();
    by(&mut numbers, |a, b| {
        asked.set(asked.get() + 1);
        a.cmp(b)
    });
    assert!(numbers.is_sorted());
    assert!(asked.get() < 100_000, "{} comparisons", asked.get());
}
