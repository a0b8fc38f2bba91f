//! An exact number: a reduced fraction of two 128-bit integers.

mod sums;

use super::wide::Wide;
use std::cmp::Ordering;
use std::fmt;

/// A reduced fraction, `den > 0`, numerator and denominator at most `i128::MAX` in size.
///
/// Arithmetic is exact wherever the reduced result fits, which holds for every chain of conversions and for
/// every plan of typed amounts. A result that does not fit is settled: rounded to a binary fraction that is off
/// by no more than 2⁻⁶¹, or 2⁻¹²⁷ of its own size where that is more; what is larger than `i128::MAX` becomes
/// that. Comparison is always exact. Nothing panics and nothing wraps.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Exact {
    num: i128,
    den: i128,
}

/// Binary places that a settled result keeps.
const PLACES: u32 = 60;

const fn gcd(mut a: u128, mut b: u128) -> u128 {
    while b != 0 {
        if a <= u64::MAX as u128 && b <= u64::MAX as u128 {
            // Where nearly every number ends up, and several times as fast.
            let (mut a, mut b) = (a as u64, b as u64);
            while b != 0 {
                (a, b) = (b, a % b);
            }
            return a as u128;
        }
        (a, b) = (b, a % b);
    }
    a
}

/// A division that leaves nothing over: most are of small numbers, and of those by one.
const fn over(n: u128, by: u128) -> u128 {
    if by == 1 {
        n
    } else if n <= u64::MAX as u128 && by <= u64::MAX as u128 {
        (n as u64 / by as u64) as u128
    } else {
        n / by
    }
}

/// The size of `n`, which is never `i128::MIN` inside a number; that one is taken as the next.
const fn size(n: i128) -> i128 {
    if n == i128::MIN { i128::MAX } else { n.abs() }
}

impl Exact {
    pub const ZERO: Self = Self::whole(0);
    pub const ONE: Self = Self::whole(1);

    /// A whole number (`i128::MIN` is taken as `-i128::MAX`).
    pub const fn whole(n: i128) -> Self {
        Self { num: if n < 0 { -size(n) } else { n }, den: 1 }
    }

    /// `num / den`, reduced; zero where `den` is zero (constants and tests use literals, input goes through
    /// [`Exact::checked_div`]). `i128::MIN` is taken as `-i128::MAX`.
    pub const fn ratio(num: i128, den: i128) -> Self {
        if den == 0 {
            return Self::ZERO;
        }
        let (n, d) = (size(num), size(den));
        let (n, d) = (n.unsigned_abs(), d.unsigned_abs());
        let g = gcd(n, d);
        Self::signed((num < 0) != (den < 0), over(n, g).cast_signed(), over(d, g).cast_signed())
    }

    const fn signed(negative: bool, num: i128, den: i128) -> Self {
        Self { num: if negative { -num } else { num }, den }
    }

    /// Numerator and denominator of the reduced fraction.
    pub const fn parts(self) -> (i128, i128) {
        (self.num, self.den)
    }

    /// The nearest exact number to a measured or computed float, to 12 decimal places; none for NaN,
    /// infinities and what is beyond any pot.
    pub fn near(x: f64) -> Option<Self> {
        (x.is_finite() && x.abs() < 1e15).then(|| Self::ratio((x * 1e12).round() as i128, 1_000_000_000_000))
    }

    pub fn to_f64(self) -> f64 {
        self.num as f64 / self.den as f64
    }

    pub const fn is_zero(self) -> bool {
        self.num == 0
    }

    pub const fn is_negative(self) -> bool {
        self.num < 0
    }

    pub const fn is_whole(self) -> bool {
        self.den == 1
    }

    pub const fn abs(self) -> Self {
        Self { num: size(self.num), den: self.den }
    }

    /// The quotient, or none where `by` is zero.
    pub fn checked_div(self, by: Self) -> Option<Self> {
        (by.num != 0).then(|| self / by)
    }

    /// The largest whole number not above this one.
    pub const fn floor(self) -> i128 {
        self.num.div_euclid(self.den)
    }

    /// The smallest whole number not below this one.
    pub const fn ceil(self) -> i128 {
        -(-self.num).div_euclid(self.den)
    }

    /// The nearest whole number; a half goes to the even one (NIST SP 811, B.7.1).
    pub fn round(self) -> i128 {
        let (low, rest) = (self.floor(), self.num.rem_euclid(self.den));
        low + match rest.cmp(&(self.den - rest)) {
            Ordering::Less => 0,
            Ordering::Greater => 1,
            Ordering::Equal => low.rem_euclid(2),
        }
    }

    /// The nearest multiple of `step`; a half goes to the even multiple. Unchanged where `step` is zero.
    pub fn round_to(self, step: Self) -> Self {
        match self.checked_div(step) {
            Some(n) => Self::whole(n.round()) * step,
            None => self,
        }
    }

    /// Decimal places with which it can be written out, none where it never ends.
    pub const fn places(self) -> Option<u32> {
        let (mut den, mut twos, mut fives) = (self.den, 0, 0);
        while den % 2 == 0 {
            (den, twos) = (den / 2, twos + 1);
        }
        while den % 5 == 0 {
            (den, fives) = (den / 5, fives + 1);
        }
        if den != 1 {
            return None;
        }
        Some(if twos > fives { twos } else { fives })
    }

    const fn top(self) -> u128 {
        self.num.unsigned_abs()
    }

    const fn bottom(self) -> u128 {
        self.den.unsigned_abs()
    }

    /// `num / den`, both without a common factor: exact where it fits, settled where not.
    fn fitted(negative: bool, num: Wide, den: Wide) -> Self {
        if let (Some(num), Some(den)) = (num.narrow(), den.narrow()) {
            return Self::signed(negative, num, den);
        }
        let (whole, mut rest) = num.divided(den);
        let Some(mut scaled) = whole.narrow() else {
            return Self::signed(negative, i128::MAX, 1);
        };
        let mut places = 0;
        while places < PLACES && scaled < 1 << 126 {
            rest = rest.doubled();
            scaled *= 2;
            if rest >= den {
                rest = rest.minus(den);
                scaled += 1;
            }
            places += 1;
        }
        let up = i128::from(rest.doubled() >= den);
        let settled = Self::ratio(scaled.saturating_add(up), 1 << places);
        if negative { -settled } else { settled }
    }
}

impl Default for Exact {
    fn default() -> Self {
        Self::ZERO
    }
}

impl From<u32> for Exact {
    fn from(n: u32) -> Self {
        Self::whole(n.into())
    }
}

impl fmt::Debug for Exact {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.den == 1 { write!(f, "{}", self.num) } else { write!(f, "{}/{}", self.num, self.den) }
    }
}
