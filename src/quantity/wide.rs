//! 256-bit unsigned whole numbers: just enough for a product of two 128-bit ones to be compared and divided.

/// `high · 2¹²⁸ + low`; the derived order is the numeric one.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Wide {
    high: u128,
    low: u128,
}

impl Wide {
    pub(super) const fn of(n: u128) -> Self {
        Self { high: 0, low: n }
    }

    pub(super) fn product(a: u128, b: u128) -> Self {
        let (low, high) = a.carrying_mul(b, 0);
        Self { high, low }
    }

    /// The sum; callers keep both below 2²⁵⁵.
    pub(super) const fn plus(self, other: Self) -> Self {
        let (low, carry) = self.low.overflowing_add(other.low);
        Self { high: self.high.wrapping_add(other.high).wrapping_add(carry as u128), low }
    }

    /// The difference; callers keep `other` at or below `self`.
    pub(super) const fn minus(self, other: Self) -> Self {
        let (low, borrow) = self.low.overflowing_sub(other.low);
        Self { high: self.high.wrapping_sub(other.high).wrapping_sub(borrow as u128), low }
    }

    pub(super) const fn doubled(self) -> Self {
        Self { high: self.high << 1 | self.low >> 127, low: self.low << 1 }
    }

    const fn bit(self, at: u32) -> bool {
        if at < 128 { self.low >> at & 1 == 1 } else { self.high >> (at - 128) & 1 == 1 }
    }

    /// Quotient and remainder by long division, bit by bit: it is only met where 128 bits did not do.
    pub(super) fn divided(self, by: Self) -> (Self, Self) {
        let (mut quotient, mut rest) = (Self::of(0), Self::of(0));
        for at in (0..256).rev() {
            quotient = quotient.doubled();
            rest = rest.doubled();
            rest.low |= u128::from(self.bit(at));
            if rest >= by {
                rest = rest.minus(by);
                quotient.low |= 1;
            }
        }
        (quotient, rest)
    }

    /// As a signed 128-bit number, where it fits.
    pub(super) fn narrow(self) -> Option<i128> {
        if self.high == 0 { i128::try_from(self.low).ok() } else { None }
    }
}
