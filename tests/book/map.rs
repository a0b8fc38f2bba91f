//! The map of things by their id, held against that of the standard library.

use potside::book::{Id, Map};
use proptest::prelude::*;
use std::collections::BTreeMap;

fn name(n: u8) -> Id {
    Id(format!("thing-{n:x}"))
}

proptest! {
    #[test]
    fn as_the_standard_library_maps(steps in proptest::collection::vec((0_u8..4, 0_u8..40), 0..120)) {
        let (mut ours, mut theirs) = (Map::default(), BTreeMap::new());
        for (at, (step, n)) in steps.into_iter().enumerate() {
            match step {
                0 => {
                    ours.remove(&name(n));
                    theirs.remove(&name(n));
                }
                1 => {
                    ours.retain(|at| at % 3 > 0);
                    theirs.retain(|_, at| *at % 3 > 0);
                }
                _ => {
                    ours.add(&name(n), at);
                    theirs.entry(name(n)).or_insert(at);
                }
            }
            prop_assert_eq!(ours.get(&name(n)), theirs.get(&name(n)));
            prop_assert_eq!(ours.contains_key(&name(n)), theirs.contains_key(&name(n)));
        }
        prop_assert_eq!(ours.iter().collect::<Vec<_>>(), theirs.iter().collect::<Vec<_>>());
        prop_assert_eq!((ours.len(), ours.is_empty()), (theirs.len(), theirs.is_empty()));
    }
}
