//! What a candle has to keep to, as this workshop sets it.

use super::Grade;
use crate::quantity::{Amount, Exact, Length, LengthUnit, Temperature, TemperatureUnit};
use crate::wire::wire_struct;

/// The workshop's own limits. The usual ones are where a published standard or the trade puts them; [`super::judge`] names
/// which.
#[derive(Clone, PartialEq, Debug)]
pub struct Limits {
    /// The highest flame.
    pub flame: Amount<Length>,
    /// The deepest melt pool.
    pub depth: Amount<Length>,
    /// The hottest the vessel may be outside.
    pub outside: Amount<Temperature>,
    /// By then the pool is from wall to wall, in minutes.
    pub full: u32,
    /// The longest burn, in minutes.
    pub longest: u32,
    /// The shortest rest between two burns, in minutes.
    pub rest: u32,
    /// The length a wick is trimmed to before it is lit.
    pub trim: Amount<Length>,
    /// The most that is put up with.
    pub soot: Grade,
    pub mushroom: Grade,
    pub hang_up: Grade,
}

wire_struct!(Limits { flame, depth, outside, full, longest, rest, trim, soot, mushroom, hang_up });

/// Flame: ASTM F2417 (`from memory`; a summary of EN 15493 has the same 75 mm). Burns of 240 min with 60 min between:
/// EN 15426:2018. Trim of ¼ in, pool of ½ in, 60 °C outside, the rest: `common practice, no source`.
impl Default for Limits {
    fn default() -> Self {
        let inches = |n, d| Amount::<Length>::new(Exact::ratio(n, d), LengthUnit::Inch);
        Self {
            flame: Amount::new(Exact::whole(75), LengthUnit::Millimetre),
            depth: inches(1, 2),
            outside: Amount::<Temperature>::new(Exact::whole(60), TemperatureUnit::Celsius),
            full: 240,
            longest: 240,
            rest: 60,
            trim: inches(1, 4),
            soot: Grade::Little,
            mushroom: Grade::Little,
            hang_up: Grade::Little,
        }
    }
}
