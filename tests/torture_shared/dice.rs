//! Chance that can be had again: the same seed gives the same run, and a failure names its seed.

/// SplitMix64 (Steele, Lea, Flood 2014).
pub(crate) struct Dice(u64);

impl Dice {
    /// The chance of one case of a run, apart from that of every other.
    pub(crate) fn of(seed: u64, case: u64) -> Self {
        let mut dice = Self(seed);
        let seed = dice.next();
        Self(seed ^ case.wrapping_mul(0xd134_2543_de82_ef95))
    }

    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Below this; zero below zero.
    pub(crate) fn roll(&mut self, below: usize) -> usize {
        (self.next() % below.max(1) as u64) as usize
    }

    /// True once in so many times.
    pub(crate) fn once_in(&mut self, times: usize) -> bool {
        self.roll(times) == 0
    }

    pub(crate) fn pick<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        &all[self.roll(all.len())]
    }

    pub(crate) fn shuffle<T>(&mut self, all: &mut [T]) {
        for at in (1..all.len()).rev() {
            all.swap(at, self.roll(at + 1));
        }
    }
}
