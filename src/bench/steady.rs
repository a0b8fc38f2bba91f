//! A scale tried: the same thing weighed again and again, and where one is to be had, a weight that is known.

use super::{Scale, ScaleTrial};
use crate::quantity::{Amount, Exact, Mass, Quantity, Voice, Why, read};

/// How a scale shows the same thing again.
#[derive(Clone, PartialEq, Debug)]
pub struct Steady {
    /// Standard deviation of one weighing.
    pub spread: Mass,
    /// The smallest load that it weighs to 1 %, in whole divisions.
    pub least: Amount<Mass>,
    /// So much more than the known weight is shown; less where negative. None where no weight is known.
    pub off: Option<Mass>,
    pub said: String,
    /// What is to be done about it, where it shows a known weight wrongly.
    pub caution: Option<String>,
    pub why: Why,
}

/// Fewer readings tell no spread; ten are what the pharmacopoeia asks for.
const FEW: usize = 3;
const MANY: usize = 10;
const MOST: usize = 100;
/// A load is wanted to this share.
const GOOD: Exact = Exact::ratio(1, 100);

impl ScaleTrial {
    /// Readings, one on each line, and the known weight, which may be left empty. None where no reading is typed. Without a
    /// unit that of `voice` is meant: what the scale shows.
    ///
    /// # Errors
    /// A sentence for the first line that cannot be read, where there are too few or they are not of one thing, and for the
    /// known weight.
    pub fn read(readings: &str, known: &str, voice: Voice) -> Result<Option<Self>, String> {
        let mass = |text: &str| read::<Mass>(text, voice.mass, voice.locale).map_err(|e| e.to_string());
        let mut all = Vec::new();
        for (at, line) in readings.lines().enumerate().filter(|(_, l)| !l.trim().is_empty()) {
            all.push(mass(line.trim()).map_err(|why| ["Line ", &(at + 1).to_string(), ": ", &why].concat())?);
        }
        match all.len() {
            0 => return Ok(None),
            n if n < FEW => {
                return Err("Weigh it three times at least, better ten: one reading on each line.".to_owned());
            }
            n if n > MOST => return Err("A hundred readings are enough: leave the others out.".to_owned()),
            _ => {}
        }
        let least = all.iter().min_by(|a, b| a.value.cmp(&b.value));
        let most = all.iter().max_by(|a, b| a.value.cmp(&b.value));
        if let Some((least, most)) = least.zip(most)
            && most.value > least.value.times(Exact::whole(2))
        {
            let range = ["They go from ", &voice.typed(*least), " to ", &voice.typed(*most)].concat();
            return Err(
                [&range, ": that is not one thing weighed again. Check the lines and their units."].concat()
            );
        }
        let known = match known.trim() {
            "" => None,
            text => Some(mass(text).map_err(|why| ["What it weighs: ", &why].concat())?),
        };
        Ok(Some(Self { readings: all, known }))
    }
}

impl Scale {
    /// What its trial tells; none where it was not tried, or has no division.
    ///
    /// The smallest load is that of USP, general chapter 41, “Balances” (1 August 2019): 2 × s ÷ 0.10 %, with 1 % in its
    /// place. A spread below 0.41 of a division cannot be seen and is taken as that: 820 divisions for 0.10 %, 82 for 1 %.
    pub fn steady(&self, voice: Voice) -> Option<Steady> {
        let trial = self.trial.as_ref().filter(|t| t.readings.len() >= FEW)?;
        let division = self.division.value.in_base();
        let grams = || trial.readings.iter().map(|r| r.value.in_base());
        let count = Exact::whole(trial.readings.len() as i128);
        let mean = grams().sum::<Exact>().checked_div(count)?;
        let squares: f64 = grams().map(|g| (g - mean).to_f64().powi(2)).sum();
        let spread = Exact::near((squares / (trial.readings.len() - 1) as f64).sqrt())?;
        let seen = spread.max(division * Exact::ratio(41, 100));
        let divisions = (seen * Exact::whole(2) / GOOD).checked_div(division)?.ceil();
        // In the unit that the scale shows.
        let unit = self.division.unit;
        let voice = Voice { mass: unit, ..voice };
        let least = Mass::base(division * Exact::whole(divisions));
        let least = Amount::new(least.to(unit), unit);
        let spread = Mass::base(spread);
        let why = Why::new("Smallest load to 1 %", "2 × s ÷ 1 %, in whole divisions", voice.typed(least))
            .with("weighings", trial.readings.len().to_string())
            .with("on average", voice.mass(Mass::base(mean)))
            .with("they stray by s", voice.mass(spread))
            .with("s counts at least 0.41 of a division", voice.mass(Mass::base(seen)))
            .from("USP, general chapter 41, “Balances” (2019), which asks for 0.10 %");
        let off = trial.known.map(|known| Mass::base(mean - known.value.in_base()));
        let number = trial.readings.len();
        let mut said = [
            &number.to_string(),
            " weighings of one thing stray by ",
            &voice.mass(spread),
            ": from ",
            &voice.typed(least),
            " on a load is good to 1 %.",
        ]
        .concat();
        if let Some(more) = MANY.checked_sub(number).filter(|more| *more > 0) {
            said.push_str(&[" ", &more.to_string(), " more make it ten, which tell it surely."].concat());
        }
        let mut caution = None;
        if let Some((off, known)) = off.zip(trial.known) {
            let size = voice.mass(Mass::base(off.in_base().abs()));
            if off.in_base().abs() <= division {
                said.push_str(" What is known of its weight it shows to the division.");
            } else {
                let how = if off.in_base().is_negative() { " too little" } else { " too much" };
                let of = [" of ", &voice.typed(known), ". "].concat();
                let ways = "Set it level, let it warm up, and try again; if it stays so, have it adjusted before you pour by it.";
                caution = Some(["It shows ", &size, how, &of, ways].concat());
            }
        }
        Some(Steady { spread, least, off, said, caution, why })
    }
}
