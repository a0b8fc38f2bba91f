//! Invented workshops of any size for the planner, drawn the same in tests/tables/planning.py.

use potside::shelf::planning::{Goal, Good, Line, Problem, Size};

pub(crate) const WAXES: usize = 3;
pub(crate) const VESSELS: usize = 5;
pub(crate) const DYES: usize = 8;

/// The linear congruential generator of Numerical Recipes; its low bits are poor and are not used.
struct Drawn(u32);

impl Drawn {
    fn below(&mut self, end: u32) -> u32 {
        self.0 = self.0.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (self.0 >> 8) % end
    }
}

/// What a workshop is drawn from.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Shape {
    pub(crate) seed: u32,
    pub(crate) goods: u32,
    pub(crate) orders: u32,
    /// Of a hundred supplies so many are short.
    pub(crate) scarce: u32,
    /// Which goal is first; the others follow as usual.
    pub(crate) first: u32,
}

/// Micrograms of wax in each vessel.
const FILLS: [u64; VESSELS] = [118_350_000, 163_200_000, 171_417_000, 226_796_185, 311_844_754];

pub(crate) fn workshop(shape: &Shape) -> Problem {
    let mut drawn = Drawn(shape.seed);
    let fragrances = (shape.goods as usize).div_ceil(2);
    // Waxes, vessels, wicks (one for each vessel), dyes, fragrances.
    let (wicks, dyes) = (WAXES + VESSELS, WAXES + 2 * VESSELS);
    let scents = dyes + DYES;
    let mut used = vec![0_u64; scents + fragrances];
    let mut goods = Vec::new();
    for _ in 0..shape.goods {
        let wax = drawn.below(WAXES as u32) as usize;
        let vessel = drawn.below(VESSELS as u32) as usize;
        let scent = drawn.below(fragrances as u32) as usize;
        // One in four is not dyed.
        let dye = drawn.below(DYES as u32 + 3) as usize;
        let load = u64::from(60 + drawn.below(5) * 10);
        let drops = u64::from(10 + drawn.below(30));
        let mut sizes = Vec::new();
        for number in [4, 8, 16, 24] {
            if number == 24 && vessel == VESSELS - 1 {
                continue;
            }
            // What sticks to the pot is lost, whatever the size.
            let whole = FILLS[vessel] * u64::from(number) + 5_000_000;
            let oil = whole * load / 1000;
            let mut uses = vec![(wax, whole - oil), (WAXES + vessel, u64::from(number))];
            uses.push((wicks + vessel, u64::from(number)));
            if dye < DYES {
                // Whole drops: a tenth of those in ten candles, rounded.
                uses.push((dyes + dye, (u64::from(number) * drops + 5) / 10));
            }
            uses.push((scents + scent, oil));
            sizes.push(Size { number, uses });
        }
        let takes = 2 + drawn.below(14);
        let batches = drawn.below(3);
        let stock = (0..batches).map(|_| (drawn.below(12), 1 + drawn.below(8))).collect();
        let spare = drawn.below(5);
        let kind = (scent * (DYES + 1) + dye.min(DYES)) as u32;
        goods.push(Good { takes, stock, spare, sizes, kind, depth: dye as u32 });
    }
    let mut lines = Vec::new();
    for order in 0..shape.orders as usize {
        let wanted = drawn.below(40);
        let wanted = wanted.checked_sub(3).filter(|wanted| *wanted > 0);
        let in_parts = drawn.below(5) == 0;
        let wholesale = drawn.below(8) == 0;
        for _ in 0..=drawn.below(3) {
            let good = drawn.below(shape.goods) as usize;
            let number = if wholesale { 6 * (1 + drawn.below(3)) } else { 1 + drawn.below(4) };
            for (supply, use_) in &goods[good].sizes[0].uses {
                used[*supply] += use_ * u64::from(number) / 4;
            }
            lines.push(Line { order, good, number, wanted, in_parts });
        }
    }
    let supplies = used.iter().map(|used| {
        let short = drawn.below(100) < shape.scarce;
        let percent = if short { 30 + drawn.below(60) } else { 130 + drawn.below(200) };
        used * u64::from(percent) / 100
    });
    let supplies = supplies.collect();
    let goals = vec![Goal::ALL[shape.first as usize]];
    Problem { goods, lines, supplies, goals, pinned: Vec::new() }
}
