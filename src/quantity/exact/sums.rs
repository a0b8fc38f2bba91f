//! Exact numbers added, multiplied and compared.

use super::{Exact, gcd, over, size};
use crate::quantity::wide::Wide;
use std::cmp::Ordering;
use std::ops::{Add, Div, Mul, Neg, Sub};

impl Exact {
    /// The sum where nothing in it is larger than 64 bits, so that it fits before it is reduced.
    fn small_sum(self, other: Self) -> Option<Self> {
        let small = |n: i128| i64::try_from(n).ok().map(i128::from);
        let (a, b) = (small(self.num)?, small(other.num)?);
        let (mine, theirs) = (small(self.den)?.unsigned_abs(), small(other.den)?.unsigned_abs());
        let shared = gcd(mine, theirs);
        let more = over(theirs, shared);
        let sum = a * more.cast_signed() + b * over(mine, shared).cast_signed();
        // What can still cancel is a factor of `shared` (Knuth, TAOCP 4.5.1).
        let common = gcd(sum.unsigned_abs(), shared);
        let den = over(mine, common) * more;
        Some(Self::signed(sum < 0, over(sum.unsigned_abs(), common).cast_signed(), den.cast_signed()))
    }
}

impl Add for Exact {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        if self.den == 1
            && other.den == 1
            && let Some(sum) = self.num.checked_add(other.num)
        {
            return Self::whole(sum);
        }
        if let Some(sum) = self.small_sum(other) {
            return sum;
        }
        // The same with as many bits as it takes, over the least common denominator.
        let shared = gcd(self.bottom(), other.bottom());
        let (mine, theirs) = (other.bottom() / shared, self.bottom() / shared);
        let (a, b) = (Wide::product(self.top(), mine), Wide::product(other.top(), theirs));
        let (negative, sum) = match (self.is_negative() == other.is_negative(), a >= b) {
            (true, _) => (self.is_negative(), a.plus(b)),
            (false, true) => (self.is_negative(), a.minus(b)),
            (false, false) => (other.is_negative(), b.minus(a)),
        };
        if sum == Wide::of(0) {
            return Self::ZERO;
        }
        if let (Some(num), Some(den)) = (sum.narrow(), Wide::product(self.bottom(), mine).narrow()) {
            return Self::ratio(if negative { -num } else { num }, den);
        }
        let common = match sum.divided(Wide::of(shared)).1.narrow() {
            Some(rest) => gcd(rest.unsigned_abs(), shared),
            None => 1,
        };
        Self::fitted(negative, sum.divided(Wide::of(common)).0, Wide::product(self.bottom() / common, mine))
    }
}

impl Mul for Exact {
    type Output = Self;
    fn mul(self, by: Self) -> Self {
        if self.num == 0 || by.num == 0 {
            return Self::ZERO;
        }
        // Cancelling across leaves nothing in common.
        let (g, h) = (gcd(self.top(), by.bottom()), gcd(by.top(), self.bottom()));
        Self::fitted(
            self.is_negative() != by.is_negative(),
            Wide::product(over(self.top(), g), over(by.top(), h)),
            Wide::product(over(self.bottom(), h), over(by.bottom(), g)),
        )
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
        if by.num == 0 {
            return Self::ZERO;
        }
        self * Self::signed(by.is_negative(), by.den, size(by.num))
    }
}

impl PartialOrd for Exact {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Exact {
    fn cmp(&self, other: &Self) -> Ordering {
        let sizes =
            || Wide::product(self.top(), other.bottom()).cmp(&Wide::product(other.top(), self.bottom()));
        match (self.is_negative(), other.is_negative()) {
            (false, true) => Ordering::Greater,
            (true, false) => Ordering::Less,
            (false, false) => sizes(),
            (true, true) => sizes().reverse(),
        }
    }
}

impl std::iter::Sum for Exact {
    fn sum<I: Iterator<Item = Self>>(numbers: I) -> Self {
        numbers.fold(Self::ZERO, Add::add)
    }
}
