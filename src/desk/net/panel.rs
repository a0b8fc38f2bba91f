//! The principal display panel, and how high the letters of the declaration stand.

use super::declare::in_grams;
use crate::quantity::{Exact, Length, Mass};

/// The side that is seen when the candle is sold.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Panel {
    /// The outside of a round vessel.
    Round { diameter: Length, height: Length },
    /// One whole side.
    Flat { width: Length, height: Length },
}

const PI: Exact = Exact::ratio(3_141_592_653_589_793, 1_000_000_000_000_000);
/// 16 CFR 500.19(a): an inch is exactly 25.4 mm.
const SQUARE_INCH: Exact = Exact::ratio(64_516, 100);
const SIXTEENTH: Exact = Exact::ratio(254, 160);

impl Panel {
    /// Its area in square inches: height × width, or of a cylinder 40 % of height × circumference (16 CFR 500.21(a)).
    pub fn square_inches(self) -> Exact {
        let square = match self {
            Self::Round { diameter, height } => {
                Exact::ratio(2, 5) * PI * diameter.in_base() * height.in_base()
            }
            Self::Flat { width, height } => width.in_base() * height.in_base(),
        };
        square / SQUARE_INCH
    }

    /// How far above the lower edge the declaration may reach: the lowest 30 % (16 CFR 500.6); none where the panel has
    /// 5 square inches or less (as in 21 CFR 101.7(f)).
    pub fn lowest(self) -> Option<Length> {
        let (Self::Round { height, .. } | Self::Flat { height, .. }) = self;
        (self.square_inches() > Exact::whole(5)).then(|| height.times(Exact::ratio(3, 10)))
    }
}

/// Sixteenths of an inch up to this many square inches: 16 CFR 500.21(b), compared on 26 November 2026 with 21 CFR
/// 101.7(i), which has the same five steps and the same sixteenth more for what is moulded.
const HEIGHTS: [(i128, i128); 4] = [(5, 1), (25, 2), (100, 3), (400, 4)];

/// The least height of letters and figures in the United States. `moulded`: blown, embossed or moulded on the surface.
pub fn us_height(panel: Panel, moulded: bool) -> Length {
    let area = panel.square_inches();
    let sixteenths = HEIGHTS.iter().find(|(most, _)| area <= Exact::whole(*most)).map_or(8, |found| found.1);
    Length::base(SIXTEENTH * Exact::whole(sixteenths + i128::from(moulded)))
}

/// Millimetres up to this many grams (Directive 76/211/EEC, Annex I, 3.1; the border belongs to the smaller height).
const EU_HEIGHTS: [(i128, i128); 3] = [(50, 2), (200, 3), (1000, 4)];

/// The least height of the figures of the nominal quantity in the European Union: that which stands there in grams, though
/// what is declared in ounces beside it may be some tenths more.
pub fn eu_height(nominal: Mass) -> Length {
    let grams = in_grams(nominal);
    let height = EU_HEIGHTS.iter().find(|(most, _)| grams <= Exact::whole(*most)).map_or(6, |found| found.1);
    Length::base(Exact::whole(height))
}
