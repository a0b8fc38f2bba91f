//! What is known of one ring of one layer.

/// Stands for «no heat passes», K/W, or m·K/W of what none passes through.
pub(crate) const SHUT: f64 = 1e30;

/// One ring of one layer, seen in one direction. A sweep goes through all of them, so only what is each cell's own
/// stands here.
#[derive(Clone, Copy)]
pub(crate) struct Cell {
    /// kg (1 for air and for the cells beyond the ends, which hold no heat).
    pub(crate) mass: f64,
    pub(crate) wax: bool,
    /// J/kg: of wax from its solidus, of the wall from the room; and what the solution starts from.
    pub(crate) e: f64,
    pub(crate) old: f64,
    /// K above the room, J/(kg·K), solid share.
    pub(crate) theta: f64,
    pub(crate) heat: f64,
    pub(crate) share: f64,
    /// How sharply a front runs through it: 0 in an even mush, 1 where one side is solid and the other liquid.
    pub(crate) sharp: f64,
    /// m·K/W of the half towards the position before, and of the half towards the next.
    pub(crate) before: f64,
    pub(crate) after: f64,
    /// J/K to the room in this step.
    pub(crate) loss: f64,
    /// Of the elimination, and the temperature it gives.
    pub(crate) carry: f64,
    pub(crate) solved: f64,
}

pub(crate) const EMPTY: Cell = Cell {
    mass: 1.0,
    wax: false,
    e: 0.0,
    old: 0.0,
    theta: 0.0,
    heat: 1.0,
    share: 0.0,
    sharp: 0.0,
    before: SHUT,
    after: SHUT,
    loss: 0.0,
    carry: 0.0,
    solved: 0.0,
};

impl Cell {
    /// The resistivity of both halves of a wax cell that is neither solid nor liquid.
    ///
    /// Where a front runs through the cell (`sharp` is the fall of the solid share from the cell before to the cell
    /// after, 1 or −1 at a sharp front, 0 in an even mush), the cell's temperature is that of the front: heat comes to
    /// it through what is solid on one side and what is liquid on the other, not through half a cell of each. This
    /// takes most of the staircase out of the enthalpy method.
    #[inline(always)]
    pub(crate) fn halves(&mut self, sharp: f64, solid: f64, liquid: f64) {
        let size = sharp.abs();
        self.sharp = size;
        let even = (1.0 - size) * (liquid + (solid - liquid) * self.share);
        let through_solid = even + size * 2.0 * self.share * solid;
        let through_liquid = even + size * 2.0 * (1.0 - self.share) * liquid;
        (self.before, self.after) =
            if sharp > 0.0 { (through_solid, through_liquid) } else { (through_liquid, through_solid) };
    }
}
