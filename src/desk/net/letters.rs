//! How high the letters of a declaration stand, and where on its panel: what is found, with its rule.

use super::declare::declare_metric;
use super::panel::{Panel, eu_height, us_height};
use crate::quantity::{Exact, Length, LengthUnit, Mass, Quantity, Voice, Why, decimal};

/// What is asked of a declaration, and how that came about.
#[derive(Clone, PartialEq, Debug)]
pub struct Asked {
    pub said: String,
    /// False where the label does not do it.
    pub holds: bool,
    pub why: Why,
}

/// 16 CFR 500.21 and 500.6, and what they were held against.
const OF_PANEL: &str =
    "16 CFR 500.21, compared on 26 November 2026 with 21 CFR 101.7(i), which has the same steps";
const OF_PLACE: &str = "16 CFR 500.6, compared on 27 November 2026 with 21 CFR 101.7(f) (text of 12 September 2026), which has the same 30 % and 5 \
square inches";
const OF_FIGURES: &str = "Directive 76/211/EEC, Annex I, 3.1, as gathered on 25 November 2026";

impl Panel {
    fn why(self, voice: Voice) -> Why {
        let area =
            [&decimal(self.square_inches(), Exact::ratio(1, 100), voice.locale), " square inches"].concat();
        let what = "Area of the principal display panel";
        let said = |length: Length| short(length, voice);
        let why = match self {
            Self::Round { diameter, height } => Why::new(what, "40 % of height × circumference", area)
                .with("diameter outside: the widest inside, and the wall twice", said(diameter))
                .with("height outside: the inside, and a base as thick as the wall", said(height)),
            Self::Flat { width, height } => Why::new(what, "height × width of the label", area)
                .with("width", said(width))
                .with("height", said(height)),
        };
        why.from(OF_PANEL)
    }
}

/// In inches or in millimetres, as the workshop measures.
fn short(length: Length, voice: Voice) -> String {
    let inch = voice.length == LengthUnit::Inch;
    voice.amount(length, if inch { LengthUnit::Inch } else { LengthUnit::Millimetre })
}

/// The least height of the letters in the United States.
pub fn us_letters(panel: Panel, voice: Voice) -> Asked {
    let height = us_height(panel, false);
    let (above, below) = height.to(LengthUnit::Inch).parts();
    let millimetres = voice.amount(height, LengthUnit::Millimetre);
    let least = [&above.to_string(), "/", &below.to_string(), " in (", &millimetres, ")"].concat();
    let area = panel.why(voice);
    let square = Exact::ratio(64_516, 10_000) * panel.square_inches();
    let metric = decimal(square, Exact::ratio(1, 10), voice.locale);
    let said = [
        "United States: letters and figures at least ",
        &least,
        " high, the small ones too. The principal display panel has ",
        &area.result,
        " (",
        &metric,
        " cm²).",
    ]
    .concat();
    let steps = "up to 5 square inches 1/16 in, to 25 1/8 in, to 100 3/16 in, to 400 1/4 in, above 1/2 in";
    let result = area.result.clone();
    let why = Why::new("Least height of letters and figures", steps, least)
        .with_why("principal display panel", result, area)
        .from(OF_PANEL);
    Asked { said, holds: true, why }
}

/// The least height of the figures of a nominal quantity in the European Union.
pub fn eu_letters(nominal: Mass, voice: Voice) -> Asked {
    let least = voice.amount(eu_height(nominal), LengthUnit::Millimetre);
    let quantity = declare_metric(nominal).text;
    let said =
        ["European Union: figures at least ", &least, " high, for a nominal quantity of ", &quantity, "."];
    let said = said.concat();
    let steps = "up to 50 g 2 mm, to 200 g 3 mm, to 1 kg 4 mm, above 6 mm";
    let why = Why::new("Least height of the figures", steps, least).with("nominal quantity", quantity);
    Asked { said, holds: true, why: why.from(OF_FIGURES) }
}

/// Where the declaration has to stand, and where so the label: in the lowest 30 % of the panel. `reach` is how far its
/// letters reach above the lower edge of the label; `own`: the label is all that is known of the panel. None where the panel
/// is so small that it may stand anywhere.
pub fn us_place(panel: Panel, own: bool, reach: Length, voice: Voice) -> Option<Asked> {
    let lowest = panel.lowest()?;
    let holds = reach <= lowest;
    // Rounded so that nobody sticks it too high.
    let step = if voice.length == LengthUnit::Inch { Exact::ratio(254, 1000) } else { Exact::ratio(1, 10) };
    let rounded = |length: Length, up: bool| {
        let steps = length.in_base() / step;
        Length::base(Exact::whole(if up { steps.ceil() } else { steps.floor() }) * step)
    };
    let (most, reached) = (short(rounded(lowest, false), voice), short(rounded(reach, true), voice));
    let of = if own { " of the lower edge of the label" } else { " of the foot of the vessel" };
    let mut said = [
        "United States: the net contents stand in the lowest 30 % of the panel, within ",
        &most,
        of,
        ", in lines parallel to the base. On this label they reach ",
        &reached,
        " above its lower edge",
    ]
    .concat();
    let mut why = Why::new("Place of the net contents", "reach ≤ 30 % of the height of the panel", "")
        .with("lowest 30 %", most)
        .with("reach above the lower edge of the label", reached)
        .from(OF_PLACE);
    why.result = if holds { "can be kept" } else { "cannot be kept" }.to_owned();
    if !holds {
        said.push_str(
            ", which is too high: take a wider label, on which they need fewer lines, or a higher one.",
        );
        if !own {
            said = said.replace(", or a higher one.", ", or print them on one of their own.");
        }
    } else if own {
        said.push('.');
    } else {
        let edge = short(rounded(lowest - reach, false), voice);
        said.push_str(&[": stick it with that edge no higher than ", &edge, " above the foot."].concat());
        why = why.with("lower edge of the label above the foot, at most", edge);
    }
    Some(Asked { said, holds, why })
}
