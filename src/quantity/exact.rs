//! An exact number: a reduced fraction of two 128-bit integers.

use std::cmp::Ordering;
use std::fmt;
use std::ops::{Add, Div, Mul, Neg, Sub};

/// A reduced fraction, `den > 0`.
///
/// All arithmetic is exact while numerator and denominator fit 128 bits, which holds for every chain of
/// conversions and for every plan of typed amounts. Past that the operands are settled to 10⁻¹⁸ and the
/// result is good to that; nothing panics and nothing wraps.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Exact {
    num: i128,
    den: i128,
}

/// What operands are settled to when a result would not fit.
const SETTLED: i128 = 1_000_000_000_000_000_000;
/// No operand above this survives settling; far beyond any pot.
const LARGEST: i128 = 1_000_000_000_000_000_000;

const fn gcd(a: i128, b: i128) -> i128 {
    let (mut a, mut b) = (a.unsigned_abs(), b.unsigned_abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    if a > i128::MAX as u128 { 1 } else { a as i128 }
}

impl Exact {
    pub const ZERO: Self = Self::whole(0);
    pub const ONE: Self = Self::whole(1);

    /// A whole number.
    pub const fn whole(n: i128) -> Self {
        Self { num: n, den: 1 }
    }

    /// `num / den`, reduced; zero where `den` is zero (constants and tests use literals, input goes through
    /// [`Exact::checked_div`]).
    pub const fn ratio(num: i128, den: i128) -> Self {
        if den == 0 {
            return Self::ZERO;
        }
        let g = gcd(num, den);
        let g = if g == 0 { 1 } else { g };
        let sign = if den < 0 { -1 } else { 1 };
        Self { num: sign * (num / g), den: sign * (den / g) }
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

    pub fn abs(self) -> Self {
        if self.num < 0 { -self } else { self }
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
        let low = self.floor();
        match (self - Self::whole(low)).cmp(&Self::ratio(1, 2)) {
            Ordering::Less => low,
            Ordering::Greater => low + 1,
            Ordering::Equal => low + low.rem_euclid(2),
        }
    }

    /// The nearest multiple of `step`; a half goes to the even multiple. Unchanged where `step` is zero.
    pub fn round_to(self, step: Self) -> Self {
        match self.checked_div(step) {
            Some(n) => Self::whole(n.round()) * step,
            None => self,
        }
    }

    fn settle(self) -> Self {
        if self.den <= SETTLED && self.num.abs() <= LARGEST * SETTLED {
            let scaled = (self.num / self.den).clamp(-LARGEST, LARGEST);
            let rest = self.num % self.den;
            let rest = rest.checked_mul(SETTLED).map_or(0, |r| r / self.den);
            return Self::ratio(scaled * SETTLED + rest, SETTLED);
        }
        let whole = (self.num / self.den).clamp(-LARGEST, LARGEST);
        let shift = (self.den / SETTLED).max(1);
        let rest = (self.num % self.den) / shift;
        let den = self.den / shift;
        let rest = rest.checked_mul(SETTLED).map_or(0, |r| r / den.max(1));
        Self::ratio(whole * SETTLED + rest, SETTLED)
    }

    fn try_mul(self, by: Self) -> Option<Self> {
        // Cancelling across first keeps both products as small as they can be.
        let (g, h) = (gcd(self.num, by.den).max(1), gcd(by.num, self.den).max(1));
        Some(Self {
            num: (self.num / g).checked_mul(by.num / h)?,
            den: (self.den / h).checked_mul(by.den / g)?,
        })
    }

    fn try_add(self, other: Self) -> Option<Self> {
        let g = gcd(self.den, other.den).max(1);
        let (a, b) = (other.den / g, self.den / g);
        let num = self.num.checked_mul(a)?.checked_add(other.num.checked_mul(b)?)?;
        let den = self.den.checked_mul(a)?;
        Some(Self::ratio(num, den))
    }
}

impl Add for Exact {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        self.try_add(other)
            .or_else(|| self.settle().try_add(other.settle()))
            .unwrap_or(Self::whole(if self.is_negative() { -LARGEST } else { LARGEST }))
    }
}

impl Mul for Exact {
    type Output = Self;
    fn mul(self, by: Self) -> Self {
        self.try_mul(by)
            .or_else(|| self.settle().try_mul(by.settle()))
            .unwrap_or_else(|| Self::near(self.to_f64() * by.to_f64()).unwrap_or(Self::whole(LARGEST)))
    }
}

impl Neg for Exact {
    type Output = Self;
    fn neg(self) -> Self {
        Self { num: -self.num, den: self.den }
    }
}

impl Sub for Exact {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Div for Exact {
    type Output = Self;
    /// Division by zero gives zero: callers that can meet it use [`Exact::checked_div`].
    fn div(self, by: Self) -> Self {
        self.mul(Self::ratio(by.den, by.num))
    }
}

impl PartialOrd for Exact {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Exact {
    fn cmp(&self, other: &Self) -> Ordering {
        (*self - *other).num.cmp(&0)
    }
}

impl fmt::Debug for Exact {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.den == 1 { write!(f, "{}", self.num) } else { write!(f, "{}/{}", self.num, self.den) }
    }
}
