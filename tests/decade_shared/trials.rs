//! Candles on trial: each burned on four days, looked at, weighed, and judged.

use super::{DAY, Lines, MINUTE};
use potside::bench::burn::{BurnEvent, Grade, Heavy, Look, Trial, Verdict};
use potside::book::{Act, Id};
use potside::quantity::{Amount, Exact, Length, LengthUnit, Mass, MassUnit, Share, ShareUnit};
use potside::quantity::{Temperature, TemperatureUnit};

const FRAGRANCES: [&str; 7] = [
    "Late orchard oil",
    "Salt hedge oil",
    "Cold larder oil",
    "Wet slate oil",
    "First Fern oil",
    "Slow River oil",
    "Grey Barn oil",
];
const WAXES: [&str; 3] = ["Meadow soft wax", "Harbour firm wax", "Meadow soft wax, Harbour firm wax"];
const VESSELS: [(&str, u64); 4] =
    [("Shoulder jar", 78), ("Low tin", 74), ("Plain tumbler", 76), ("Flared bowl", 100)];
const WICKS: [&str; 5] = ["Cotton 8", "Cotton 10", "Cotton 12", "Cotton 14", "Cotton 16"];

/// Tenths of a gram.
fn grams(tenths: u64) -> Amount<Mass> {
    Amount::new(Exact::ratio(tenths.into(), 10), MassUnit::Gram)
}

fn millimetres(whole: u64) -> Amount<Length> {
    Amount::new(Exact::whole(whole.into()), LengthUnit::Millimetre)
}

/// One candle, from its mark to the verdict: eighteen entries.
pub(crate) fn put(lines: &mut Lines, n: u64, at: u64) {
    let trial = Id(format!("trial-{n}"));
    let pick = |of: u64, step: u64| (n / step % of) as usize;
    let (vessel, diameter) = VESSELS[pick(4, 5)];
    let mut left = 4_000 + n % 120;
    let body = Box::new(Trial {
        name: format!("T{n}"),
        fragrance: FRAGRANCES[pick(7, 3)].to_owned(),
        load: Some(Amount::<Share>::new(Exact::whole(i128::from(6 + n % 4)), ShareUnit::Percent)),
        heavy: [Heavy::Light, Heavy::Middle, Heavy::Heavy][pick(3, 3)],
        wax: WAXES[pick(3, 11)].to_owned(),
        vessel: vessel.to_owned(),
        diameter: millimetres(diameter),
        series: String::new(),
        wick: WICKS[pick(5, 1)].to_owned(),
        replicate: 1 + (n % 3) as u32,
        start: grams(left),
        fill: grams(1_800 + n % 60),
    });
    lines.put(at, Act::Trial { id: trial.clone(), over: None, body });
    let mut event = |at: u64, event| {
        lines.put(at, Act::AtTrial { trial: trial.clone(), event });
    };
    for day in 0..4 {
        let lit = at + day * DAY + n % 40 * MINUTE;
        let (seen, out) = (lit + 120 * MINUTE, lit + (180 + n % 60) * MINUTE);
        let throw = Some(1 + (n % 5) as u32);
        event(
            lit,
            BurnEvent::Lit { at: lit, mass: grams(left), trimmed: day > 0 || !n.is_multiple_of(9), throw },
        );
        let look = Look {
            at: seen,
            pool: Some(millimetres(diameter - 12 + day * 3 + n % 4)),
            depth: Some(millimetres(5 + n % 6)),
            flame: Some(millimetres(20 + n % 17)),
            outside: Some(Amount::<Temperature>::new(
                Exact::whole(i128::from(41 + n % 15)),
                TemperatureUnit::Celsius,
            )),
            soot: Some(if n.is_multiple_of(8) { Grade::Little } else { Grade::None }),
            mushroom: Some(if n.is_multiple_of(3) { Grade::Little } else { Grade::None }),
            throw: Some(1 + ((n + day) % 5) as u32),
            ..Look::default()
        };
        event(seen, BurnEvent::Looked(Box::new(look)));
        event(out, BurnEvent::Out { at: out, mass: None, itself: false });
        left -= 140 + (n * 13 + day * 7) % 60;
        event(out + 30 * MINUTE, BurnEvent::Weighed { mass: grams(left), lit: None });
    }
    let verdict = [Verdict::Passed, Verdict::Small, Verdict::Large, Verdict::Passed][pick(4, 1)];
    event(at + 4 * DAY, BurnEvent::Closed { verdict, note: String::new() });
}
