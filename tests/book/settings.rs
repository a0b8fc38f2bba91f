//! The workshop's choices: what they are where nothing is said, and what they cannot be.

use potside::book::Settings;
use potside::quantity::{Amount, Exact, ShareUnit, Voice};

fn check(settings: Settings) -> Result<(), String> {
    settings.check(Voice::default())
}

#[track_caller]
fn refused(settings: Settings, begins: &str) {
    let why = check(settings).unwrap_err();
    assert!(why.starts_with(begins), "{why}");
}

#[test]
fn the_usual_sizes_are_those_where_none_are_said() {
    assert_eq!(Settings::default().sizes(), [4, 8, 16, 24]);
    let own = Settings { batches: Some(vec![6, 12]), ..Settings::default() };
    assert_eq!(own.sizes(), [6, 12]);
    assert_eq!(check(Settings::default()), Ok(()));
}

#[test]
fn sizes_are_one_to_eight_and_none_of_them_empty_or_too_large() {
    let sizes = |batches: &[u32]| Settings { batches: Some(batches.to_vec()), ..Settings::default() };
    for good in [&[1][..], &[10_000], &[1, 2, 3, 4, 5, 6, 7, 8]] {
        assert_eq!(check(sizes(good)), Ok(()), "{good:?}");
    }
    for wrong in [&[][..], &[0], &[4, 0], &[10_001], &[4, 10_001], &[1, 2, 3, 4, 5, 6, 7, 8, 9]] {
        refused(sizes(wrong), "Type one to 8 sizes of batch, each of 1 to 10000 candles");
    }
}

#[test]
fn days_are_at_most_sixty() {
    for days in [Some(60), None] {
        let settings = Settings { solid_days: days, finish_days: days, ..Settings::default() };
        assert_eq!(check(settings), Ok(()));
    }
    for (solid_days, finish_days) in
        [(Some(61), None), (None, Some(61)), (Some(1), Some(61)), (Some(900), None)]
    {
        let settings = Settings { solid_days, finish_days, ..Settings::default() };
        refused(settings, "Type at most 60 days until the wax is solid");
    }
}

/// From a tenth of a per cent to twenty (our own choice).
#[test]
fn a_tolerance_is_one_to_weigh_by() {
    let percent = |num, den| Settings {
        tolerance: Amount::new(Exact::ratio(num, den), ShareUnit::Percent),
        ..Settings::default()
    };
    for (num, den) in [(1, 10), (2, 1), (20, 1)] {
        assert_eq!(check(percent(num, den)), Ok(()), "{num}/{den}");
    }
    refused(percent(9, 100), "A tolerance of 0.09 % is finer than any scale here weighs.");
    refused(percent(201, 10), "A tolerance of 20.1 % would let a wrong dose pass.");
}
