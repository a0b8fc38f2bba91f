//! Exact numbers, against big rationals as the oracle.
#![allow(clippy::unwrap_used)]

use num_rational::BigRational;
use potside::quantity::Exact;
use potside::wire;
use proptest::prelude::*;

fn big(n: Exact) -> BigRational {
    let (num, den) = n.parts();
    format!("{num}/{den}").parse().unwrap()
}

/// The exact number of a big one, where both its parts fit.
fn fits(n: &BigRational) -> Option<Exact> {
    let n = n.reduced();
    let (num, den) =
        (n.numer().to_string().parse::<i128>().ok()?, n.denom().to_string().parse::<i128>().ok()?);
    (num != i128::MIN).then(|| Exact::ratio(num, den))
}

fn power_of_two(places: u32) -> BigRational {
    format!("1/{}", 1_u128 << places).parse().unwrap()
}

fn size(n: BigRational) -> BigRational {
    if n < zero() { -n } else { n }
}

fn zero() -> BigRational {
    "0/1".parse().unwrap()
}

/// What the type promises of any result: exact where it fits, otherwise within 2⁻⁶¹ or 2⁻¹²⁷ of its size, or the
/// largest there is.
#[track_caller]
fn promised(got: Exact, want: BigRational) {
    let (num, den) = got.parts();
    assert!(den > 0 && num != i128::MIN, "{got:?} is not in form");
    if let Some(fitting) = fits(&want) {
        assert_eq!(got, fitting, "exact where it fits");
        return;
    }
    let largest = big(Exact::whole(i128::MAX));
    if size(want.clone()) >= largest {
        assert_eq!(got.abs(), Exact::whole(i128::MAX));
        assert_eq!(got.is_negative(), want < zero());
        return;
    }
    let off = size(big(got) - want.clone());
    let allowed = power_of_two(61).max(size(want.clone()) * power_of_two(127));
    assert!(off <= allowed, "{got:?} is too far from {want}");
}

/// Any `i128`, with the edges and small numbers often.
fn any_whole() -> impl Strategy<Value = i128> {
    prop_oneof![
        any::<i128>(),
        any::<i64>().prop_map(i128::from),
        -1000_i128..1000,
        prop::sample::select(vec![
            i128::MIN,
            i128::MIN + 1,
            i128::MAX,
            i128::MAX - 1,
            1 << 126,
            1 << 64,
            0,
            1,
            -1,
            i128::MIN / 3,
            10_i128.pow(18),
            10_i128.pow(38),
            45_359_237,
            473_176_473,
        ]),
    ]
}

fn any_exact() -> impl Strategy<Value = Exact> {
    (any_whole(), any_whole()).prop_map(|(num, den)| Exact::ratio(num, den))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    #[test]
    fn sums_keep_their_promise(a in any_exact(), b in any_exact()) {
        promised(a + b, big(a) + big(b));
        promised(a - b, big(a) - big(b));
    }

    #[test]
    fn products_keep_their_promise(a in any_exact(), b in any_exact()) {
        promised(a * b, big(a) * big(b));
    }

    #[test]
    fn quotients_keep_their_promise(a in any_exact(), b in any_exact()) {
        match a.checked_div(b) {
            Some(got) => promised(got, big(a) / big(b)),
            None => {
                prop_assert!(b.is_zero());
                prop_assert_eq!(a / b, Exact::ZERO);
            }
        }
    }

    #[test]
    fn the_order_is_exact(a in any_exact(), b in any_exact()) {
        prop_assert_eq!(a.cmp(&b), big(a).cmp(&big(b)));
        prop_assert_eq!(a.min(b) <= a.max(b), true);
    }

    #[test]
    fn whole_neighbours(a in any_exact()) {
        prop_assert_eq!(Exact::whole(a.floor()), fits(&big(a).floor()).unwrap());
        prop_assert_eq!(Exact::whole(a.ceil()), fits(&big(a).ceil()).unwrap());
        let (near, half) = (Exact::whole(a.round()), "1/2".parse::<BigRational>().unwrap());
        let off = size(big(a) - big(near));
        prop_assert!(off < half || (off == half && a.round() % 2 == 0));
    }

    #[test]
    fn rounding_to_a_step(a in -10_i128.pow(12)..10_i128.pow(12), b in 1_i128..10_000, step in 1_i128..5000, of in 1_i128..1000) {
        let (number, step) = (Exact::ratio(a, b), Exact::ratio(step, of));
        let rounded = number.round_to(step);
        prop_assert!((rounded / step).is_whole());
        prop_assert!((rounded - number).abs() * Exact::whole(2) <= step);
    }

    /// Everything else that can be called, on anything at all: nothing panics.
    #[test]
    fn nothing_panics(a in any_exact(), b in any_exact(), n in any_whole(), x in any::<f64>()) {
        let _ = (a.round_to(b), a.to_f64(), a.places(), (-a).abs(), Exact::whole(n), Exact::near(x));
        let _: Exact = [a, b, a, b, a].into_iter().sum();
        let back: Exact = wire::read(&wire::write(&a)).unwrap();
        prop_assert_eq!(back, a);
    }
}

#[test]
fn the_number_that_has_no_opposite() {
    assert_eq!(Exact::whole(i128::MIN), Exact::whole(-i128::MAX));
    assert_eq!(-Exact::whole(i128::MIN), Exact::whole(i128::MAX));
    assert_eq!(Exact::ratio(i128::MIN, i128::MIN), Exact::ONE);
    assert_eq!(Exact::ratio(i128::MIN, i128::MAX), Exact::whole(-1));
    assert_eq!(Exact::whole(i128::MAX) + Exact::ONE, Exact::whole(i128::MAX));
}

/// A half goes to the even digit: NIST SP 811 (2008), B.7.1.
#[test]
fn halves_to_even() {
    for (num, den, want) in [(1, 2, 0), (3, 2, 2), (5, 2, 2), (-1, 2, 0), (-3, 2, -2), (7, 4, 2), (-7, 4, -2)]
    {
        assert_eq!(Exact::ratio(num, den).round(), want, "{num}/{den}");
    }
}

/// Also where it is over more than 64 bits.
#[test]
fn zero_over_anything_is_zero() {
    for den in [1, 7, i128::from(i64::MAX), 1 << 64, 1 << 96, i128::MAX] {
        for den in [den, -den] {
            assert_eq!(Exact::ratio(0, den), Exact::ZERO, "over {den}");
        }
        assert_eq!(Exact::ratio(1, den) - Exact::ratio(1, den), Exact::ZERO, "over {den}");
        assert_eq!(Exact::ZERO * Exact::ratio(1, den), Exact::ZERO, "over {den}");
    }
}

#[test]
fn places_of_a_decimal() {
    for (num, den, want) in [
        (1, 1, Some(0)),
        (1, 2, Some(1)),
        (1, 8, Some(3)),
        (1, 20, Some(2)),
        (1, 3, None),
        (7, 30, None),
        (45_359_237, 1_600_000, Some(9)),
        (1, 1 << 126, Some(126)),
    ] {
        assert_eq!(Exact::ratio(num, den).places(), want, "{num}/{den}");
    }
}

#[test]
fn near_a_float() {
    assert_eq!(Exact::near(0.1), Some(Exact::ratio(1, 10)));
    assert_eq!(Exact::near(-2.15), Some(Exact::ratio(-215, 100)));
    for x in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e15, -1e300] {
        assert_eq!(Exact::near(x), None, "{x}");
    }
}
