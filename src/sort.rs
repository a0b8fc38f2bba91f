//! One sort for the whole app: stable, by merging, and passing over what is in order already.
//!
//! Those of the standard library are compiled anew for every type they are used on, several kilobytes each time. Here the
//! work is done on places in a list, and only the few lines that touch the things themselves are generic.

use std::cmp::Ordering;

/// The places of `len` things in order, equal ones as they stood. `compare` is asked about two places.
pub fn order(len: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..len).collect();
    merge_sort(&mut places, &mut Vec::new(), compare);
    places
}

/// Sorts; equal things stay as they stood.
pub fn by<T>(things: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let at = |a, b| match (things.get(a), things.get(b)) {
        (Some(a), Some(b)) => compare(a, b),
        _ => Ordering::Equal,
    };
    for (a, b) in swaps(order(things.len(), &at)) {
        things.swap(a, b);
    }
}

fn merge_sort(places: &mut [usize], spare: &mut Vec<usize>, compare: &dyn Fn(usize, usize) -> Ordering) {
    if places.len() < 2 {
        return;
    }
    let (left, right) = places.split_at_mut(places.len() / 2);
    merge_sort(left, spare, compare);
    merge_sort(right, spare, compare);
    if let (Some(last), Some(first)) = (left.last(), right.first())
        && compare(*last, *first).is_le()
    {
        return;
    }
    spare.clear();
    let (mut left, mut right) = (left.iter().peekable(), right.iter().peekable());
    while let Some(place) = match (left.peek(), right.peek()) {
        (Some(a), Some(b)) if compare(**a, **b).is_gt() => right.next(),
        (Some(_), _) => left.next(),
        (None, _) => right.next(),
    } {
        spare.push(*place);
    }
    places.copy_from_slice(spare);
}

/// The swaps that bring things into an order, in their turn.
fn swaps(order: Vec<usize>) -> Vec<(usize, usize)> {
    let mut swaps = Vec::new();
    // Where what stands at a place has to go.
    let mut goal = vec![0; order.len()];
    for (to, from) in order.into_iter().enumerate() {
        if let Some(goal) = goal.get_mut(from) {
            *goal = to;
        }
    }
    for at in 0..goal.len() {
        while let Some(to) = goal.get(at).copied().filter(|to| *to != at) {
            swaps.push((at, to));
            goal.swap(at, to);
        }
    }
    swaps
}
