//! What holds of every amount, however it is shown.

use Locale::{Comma, Point};
use MassUnit::*;
use potside::quantity::*;
use potside::wire::{self, write};
use proptest::prelude::*;

/// Numbers that people can type: up to 15 digits, or a fraction down to thousandths.
fn typed() -> impl Strategy<Value = Exact> {
    prop_oneof![
        (0_i128..1_000_000_000_000_000, 0_u32..=15)
            .prop_map(|(digits, places)| Exact::ratio(digits, 10_i128.pow(places))),
        (0_i128..1_000_000, 0_i128..1000, 1_i128..=1000)
            .prop_map(|(whole, n, d)| Exact::whole(whole) + Exact::ratio(n % d, d)),
        (0_i128..100, 0_i128..8).prop_map(|(whole, eighths)| Exact::whole(whole) + Exact::ratio(eighths, 8)),
    ]
}

/// What is shown exactly reads back the same, in every unit and both locales, wherever the amount is in range.
fn reads_back<Q: Quantity>(number: Exact) -> Result<(), TestCaseError> {
    for &unit in Q::Unit::all() {
        let amount = Amount::<Q>::new(number, unit);
        if amount.value.check().is_err() {
            continue;
        }
        for locale in [Point, Comma] {
            let shown = show_exact(amount, locale);
            for &default in Q::Unit::all() {
                prop_assert_eq!(read::<Q>(&shown, default, locale), Ok(amount), "{}", shown);
            }
        }
    }
    Ok(())
}

fn any_exact() -> impl Strategy<Value = Exact> {
    (any::<i128>(), prop_oneof![1_i128..1000, any::<i128>()]).prop_map(|(num, den)| Exact::ratio(num, den))
}

fn is_kept<Q: Quantity>(number: Exact) -> Result<(), TestCaseError> {
    for &unit in Q::Unit::all() {
        for amount in [Amount::<Q>::new(number, unit), Amount { value: Q::from_base(number), unit }] {
            let json = write(&amount);
            prop_assert_eq!(wire::read::<Amount<Q>>(&json).ok(), Some(amount), "{}", json);
        }
    }
    Ok(())
}

proptest! {
    #[test]
    fn parse_after_show_is_the_identity(number in typed()) {
        reads_back::<Mass>(number)?;
        reads_back::<Volume>(number)?;
        reads_back::<Length>(number)?;
        reads_back::<Share>(number)?;
        reads_back::<Density>(number)?;
        reads_back::<Temperature>(number)?;
        reads_back::<Temperature>(-number)?;
    }

    #[test]
    fn any_amount_is_kept_exactly(wild in any_exact(), tame in typed()) {
        for number in [wild, tame] {
            is_kept::<Mass>(number)?;
            is_kept::<Volume>(number)?;
            is_kept::<Temperature>(number)?;
            is_kept::<Share>(number)?;
            is_kept::<Density>(number)?;
        }
    }

    #[test]
    fn what_is_shown_is_within_half_a_step(number in typed(), step in 1_i128..500) {
        let step = Exact::ratio(step, 100);
        let shown = read_number(&decimal(number, step, Point), Point);
        if let Ok(shown) = shown {
            prop_assert!((shown - number).abs() * Exact::whole(2) <= step);
        }
    }

    /// Showing anything at all does not panic.
    #[test]
    fn anything_can_be_shown(number in any_exact(), step in any_exact()) {
        let mass = Mass::base(number);
        let _ = (decimal(number, step, Point), show_both(mass, Ounce, Some(Mass::base(step)), Comma));
        for &unit in VolumeUnit::all() {
            let volume = Volume::base(number);
            let _ = (show(volume, unit, None, Point), show_exact(Amount { value: volume, unit }, Comma));
        }
    }
}
