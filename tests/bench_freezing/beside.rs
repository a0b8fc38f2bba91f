//! The freezing reckoned beside the page: as numbers there and back, and whatever they are.

use super::*;

#[test]
fn beside_the_page_it_is_the_same() {
    let setup = scene().setup().unwrap();
    let whole = freeze(&setup, &Detail::FINE).unwrap();
    let back = Freezing::of_numbers(&reckon(&job(&setup, &Job::Freeze))).unwrap();
    for measure in Measure::ALL {
        let (a, b) = (measure.of(&whole), measure.of(&back));
        assert_eq!(a.map(|x| x as f32), b.map(|x| x as f32), "{measure:?}");
    }
    assert_eq!(whole.picture.seconds, back.picture.seconds);
    for at in 0..whole.picture.seconds.len() {
        assert_eq!(whole.picture.celsius(at), back.picture.celsius(at));
        assert_eq!(whole.picture.solid(at), back.picture.solid(at));
    }
    assert_eq!(whole.picture.wax_layers, back.picture.wax_layers);

    let pours = vec![45.0, 60.0, 80.0];
    let mut expected = Vec::new();
    map(&setup, &pours, &[40.0], Measure::WallRate, |_, _, v| {
        expected.push(v.map(|v| v as f32));
        true
    });
    let row = reckon(&job(&setup, &Job::Row { measure: Measure::WallRate, vessel: 40.0, pours }));
    let row: Vec<Option<f32>> = row.into_iter().map(|v| (!v.is_nan()).then_some(v)).collect();
    assert_eq!(row, expected);
    assert_eq!(row[0], None, "45 °C is below where this wax is melted");

    // A log made by the same wax in a workshop whose air takes a quarter more.
    let probe = (0.0, 0.03);
    let quick = Scene { factor: 1.25, ..scene() }.setup().unwrap();
    let trace = freeze(&quick, &Detail { probe: Some(probe), ..Detail::FINE }).unwrap().trace;
    let log: Vec<Reading> =
        trace.iter().step_by(12).map(|&(seconds, celsius)| Reading { seconds, celsius }).collect();
    let fitted = reckon(&job(&setup, &Job::LayOver { probe, log: log.clone() }));
    let (direct, reckoned) = lay_over(&setup, &log, probe).unwrap();
    assert_eq!(fitted[..2], [direct.factor as f32, direct.residual as f32]);
    assert_eq!(fitted.len(), 2 + log.len());
    for ((said, exact), read) in fitted[2..].iter().zip(&reckoned).zip(&log) {
        assert_eq!(*said, *exact as f32);
        near(*exact, read.celsius, 1.0);
    }
    near(f64::from(fitted[0]), 1.25, 0.03);
}

#[test]
fn nonsense_is_answered_with_nothing() {
    assert_eq!(reckon(&[]), [0.0; 0]);
    let setup = scene().setup().unwrap();
    let mut cut = job(&setup, &Job::Freeze);
    cut.pop();
    assert_eq!(reckon(&cut), [0.0; 0]);
    assert_eq!(Freezing::of_numbers(&[]), None);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn any_numbers_are_survived(numbers in prop::collection::vec(prop::num::f64::ANY, 0..40), back in prop::collection::vec(prop::num::f32::ANY, 0..60)) {
        let _ = reckon(&numbers);
        let _ = Freezing::of_numbers(&back);
    }
}
