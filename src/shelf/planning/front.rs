//! Which of many points no other beats: a tree of boxes, so that each need not be compared with each.

/// Points of a leaf.
const LEAF: usize = 12;

/// Points with so many coordinates each, one after the other, and the last of them different in all.
pub(super) struct Points<'a> {
    pub(super) coordinates: &'a [u64],
    pub(super) wide: usize,
}

struct Tree<'a> {
    points: &'a Points<'a>,
    places: Vec<usize>,
    /// For each box, the least of each coordinate in it.
    corners: Vec<u64>,
}

impl Points<'_> {
    fn at(&self, place: usize) -> &[u64] {
        self.coordinates.get(place * self.wide..(place + 1) * self.wide).unwrap_or_default()
    }

    /// The places of those that none is below in all coordinates, or none of which it is true that it `beats` them.
    pub(super) fn front(&self, beats: &dyn Fn(usize, usize) -> bool) -> Vec<usize> {
        let len = self.coordinates.len().checked_div(self.wide).unwrap_or(0);
        let mut places: Vec<usize> = (0..len).collect();
        let mut tree = Tree { points: self, places: Vec::new(), corners: Vec::new() };
        tree.build(&mut places, 0, 0);
        tree.places = places;
        (0..len).filter(|place| !tree.is_beaten(*place, beats)).collect()
    }
}

impl Tree<'_> {
    fn build(&mut self, places: &mut [usize], node: usize, depth: usize) {
        let wide = self.points.wide;
        let mut corner = vec![u64::MAX; wide];
        for place in places.iter() {
            corner.iter_mut().zip(self.points.at(*place)).for_each(|(least, of)| *least = (*least).min(*of));
        }
        if self.corners.len() < (node + 1) * wide {
            self.corners.resize((node + 1) * wide, u64::MAX);
        }
        if let Some(cell) = self.corners.get_mut(node * wide..(node + 1) * wide) {
            cell.copy_from_slice(&corner);
        }
        if places.len() > LEAF {
            let points = self.points;
            let along = depth % wide;
            let middle = places.len() / 2;
            places.select_nth_unstable_by_key(middle, |place| points.at(*place).get(along).copied());
            let (left, right) = places.split_at_mut(middle);
            self.build(left, 2 * node + 1, depth + 1);
            self.build(right, 2 * node + 2, depth + 1);
        }
    }

    fn is_beaten(&self, place: usize, beats: &dyn Fn(usize, usize) -> bool) -> bool {
        let wide = self.points.wide;
        let point = self.points.at(place);
        let below = |of: &[u64]| of.iter().zip(point).all(|(a, b)| a <= b);
        let mut open = vec![(0, 0, self.places.len())];
        while let Some((node, from, to)) = open.pop() {
            if !self.corners.get(node * wide..(node + 1) * wide).is_some_and(below) {
                continue;
            }
            let here = self.places.get(from..to).unwrap_or_default();
            if here.len() > LEAF {
                let middle = from + here.len() / 2;
                open.push((2 * node + 2, middle, to));
                open.push((2 * node + 1, from, middle));
            } else if here
                .iter()
                .any(|other| *other != place && below(self.points.at(*other)) && beats(*other, place))
            {
                return true;
            }
        }
        false
    }
}
