//! Every sum with its limit.

use super::SOURCE;
use super::acute::{Acute, OF_GHS, OF_UNION, TABLE};
use super::class::{Class, class};
use super::detail::Organs;
use super::identity::elicited;
use super::label::is_sensitiser;
use super::mix::{Mixed, Sum};
use super::rule::{Rule, Way};
use super::substance::Substance;
use crate::desk::net::plain;
use crate::quantity::{Exact, Share, Voice, Why, decimal};

/// A limit, what stands against it, and whether it is reached.
#[derive(Clone, PartialEq, Debug)]
pub struct Finding {
    pub class: Class,
    /// What it is about: the class, or what is named on the label.
    pub title: String,
    pub reached: bool,
    /// True where a solid is not classed for it, however much there is.
    pub exempt: bool,
    /// `7.2 of 10 %`
    pub said: String,
    pub why: Why,
}

/// A number that was typed, without zeros at its end.
fn typed(value: Exact, voice: Voice) -> String {
    plain(value, 3, voice.locale)
}

pub(super) fn percent(value: Exact, voice: Voice) -> String {
    voice.share(Share::base(value / Exact::whole(100)))
}

/// A number beside what it is held against, to as many places as it takes to tell the two apart: 0.0999 % does not reach
/// 0.10 %.
fn apart(value: Exact, limit: Exact, usual: &dyn Fn(Exact) -> String, unit: &str, voice: Voice) -> String {
    let shown = usual(value);
    let bare = |shown: &str| shown.strip_suffix(unit).unwrap_or(shown).trim_end_matches('0').to_owned();
    if value == limit || bare(&shown) != bare(&usual(limit)) {
        return shown;
    }
    let steps = (3..=MOST_PLACES).map(|places| Exact::ratio(1, 10_i128.pow(places)));
    let to = |number: Exact, step: Exact| decimal(number, step, voice.locale);
    let finer = steps.filter(|step| to(value, *step) != to(limit, *step)).map(|step| to(value, step)).next();
    finer.map_or(shown, |finer| [&finer, unit].concat())
}

const MOST_PLACES: u32 = 12;

impl Substance {
    /// M-factors, specific limits and acute toxicity estimates as they were read, to be compared with the sheet.
    pub fn figures(&self, voice: Voice) -> Vec<String> {
        let mut said = Vec::new();
        for (m, of) in self.m.iter().zip(["M acute ", "M chronic "]) {
            said.extend(m.map(|m| [of, &typed(m, voice)].concat()));
        }
        for (group, category, limit) in &self.limits {
            let name = class(*group, *category).map_or("", |class| class.name);
            said.push([name, " from ", &typed(*limit, voice), " %"].concat());
        }
        let words =
            |organs: &Organs| [organs.names.clone(), organs.way().into_iter().collect()].concat().join(", ");
        for (organs, of) in self.detail.organs.iter().zip(["STOT SE: ", "STOT RE: "]) {
            let words = words(organs);
            said.extend((!words.is_empty()).then(|| [of, &words].concat()));
        }
        said.extend(self.letters().map(str::to_owned));
        for (dose, route) in self.doses.iter().zip(&TABLE) {
            said.extend(dose.map(|dose| {
                let ate =
                    dose.map_or("not toxic".to_owned(), |ate| [&typed(ate, voice), " ", route.unit].concat());
                ["ATE ", route.name, ": ", &ate].concat()
            }));
        }
        said
    }
}

/// Every limit against which something in the mixture stands, in the order of the regulation, and from which share on
/// allergens are named.
pub fn findings(mixed: &Mixed, voice: Voice) -> Vec<Finding> {
    let acute = mixed.acute.iter().filter_map(|acute| estimate(mixed, acute, OF_UNION, voice));
    let sums = mixed.sums.iter().filter_map(|sum| finding(mixed, sum, sum.of()?, voice));
    acute.chain(sums).chain(named(mixed, voice)).collect()
}

/// Which allergens stand on the label, and from which share on: in the line of EUH208, or where the candle is classed for it
/// among the names.
fn named(mixed: &Mixed, voice: Voice) -> Option<Finding> {
    let all = elicited(mixed);
    let classed = mixed.classes.iter().any(|class| is_sensitiser(class));
    let title = if classed { "Allergens to be named" } else { "Allergens to be named (EUH208)" };
    let count = all.iter().filter(|(substance, limit)| substance.percent >= *limit).count();
    let said = [&count.to_string(), " of ", &all.len().to_string()].concat();
    let relation =
        "each for itself: its % against the share from which on an allergen that is in the candle is named";
    let mut why =
        Why::new(title, relation, &said).from(source("Annex I, Table 3.4.6, and Annex II, 2.8 and 2.10"));
    for (substance, limit) in &all {
        let value = apart(substance.percent, *limit, &|value| percent(value, voice), " %", voice);
        let verdict = if substance.percent >= *limit { ": named" } else { ": not named" };
        why =
            why.with(&substance.name, [value.as_str(), ", from ", &percent(*limit, voice), verdict].concat());
    }
    let class = all.first()?.0.classes.iter().find(|class| is_sensitiser(class))?;
    Some(Finding { class, title: title.to_owned(), reached: count > 0, exempt: false, said, why })
}

/// The same for the categories that only the GHS has, where the mixture has no class of the Union for that hazard.
pub fn further(mixed: &Mixed, voice: Voice) -> Vec<Finding> {
    let acute = mixed.further.acute.iter().filter_map(|acute| estimate(mixed, acute, OF_GHS, voice));
    let sums = mixed.further.sums.iter().filter_map(|sum| finding(mixed, sum, sum.of()?, voice));
    acute.chain(sums).collect()
}

/// Where a limit stands: an annex is that of the regulation.
fn source(place: &str) -> String {
    if place.starts_with("Annex") { [place, "; ", SOURCE].concat() } else { place.to_owned() }
}

fn estimate(mixed: &Mixed, acute: &Acute, last: u8, voice: Voice) -> Option<Finding> {
    let route = acute.of()?;
    let category = acute.category.unwrap_or(last);
    let class = class(route.group, category)?;
    let bound = route.bound(category)?;
    let ate = apart(acute.ate, bound, &|value| voice.number(value), "", voice);
    let ate = [&ate, " ", route.unit].concat();
    let said = ["ATE ", &ate, ", ", route.name, ": up to ", &typed(bound, voice), " counts"].concat();
    let many = acute.unknown > Exact::whole(10);
    let relation = if many { "(100 − % unknown) ÷ Σ (% ÷ ATE)" } else { "100 ÷ Σ (% ÷ ATE)" };
    let mut why = Why::new(["Acute toxicity, ", route.name].concat(), relation, &ate).from(source(
        if last == OF_UNION {
            "Annex I, 3.1.3.6"
        } else {
            "GHS of the United Nations, Revision 10 (2023), 3.1.3.6, from memory"
        },
    ));
    for (place, ate) in &acute.parts {
        if let Some(substance) = mixed.substances.get(*place) {
            let shown =
                [&percent(substance.percent, voice), " at ", &typed(*ate, voice), " ", route.unit].concat();
            why = why.with(&substance.name, shown);
        }
    }
    if !acute.unknown.is_zero() {
        why = why.with("unknown by this route", percent(acute.unknown, voice));
    }
    Some(Finding { title: class.say(), class, reached: acute.category.is_some(), exempt: false, said, why })
}

/// Annex I, 3.10.3.3.1.2, from memory: 10 % of such substances, and that viscosity.
const SOLID: &str = "; only a liquid is classed for it (kinematic viscosity up to 20.5 mm²/s at 40 °C), and a candle is solid";

fn finding(mixed: &Mixed, sum: &Sum, rule: &Rule, voice: Voice) -> Option<Finding> {
    let class = class(rule.group, rule.category)?;
    let alone = matches!(rule.way, Way::Each | Way::Apart);
    let limit = percent(rule.limit, voice);
    let value = apart(sum.value, rule.limit, &|value| percent(value, voice), " %", voice);
    let of = if alone { " at most, of " } else { " in all, of " };
    let said = [value.as_str(), of, &limit, if sum.exempt { SOLID } else { "" }].concat();
    let relation = if alone {
        "the largest of (% × how many times it counts): each substance for itself"
    } else {
        "Σ (% × how many times it counts)"
    };
    let verdict = match (sum.exempt, sum.is_reached()) {
        (true, _) => SOLID,
        (_, true) => ": reached",
        (_, false) => ": not reached",
    };
    let mut why = Why::new(class.say(), relation, value)
        .rounded(["the limit is ", &limit, verdict].concat())
        .from(source(rule.source));
    for (place, weight) in &sum.parts {
        if let Some(substance) = mixed.substances.get(*place) {
            let mut shown = percent(substance.percent, voice);
            if *weight != Exact::ONE {
                shown = [&shown, " × ", &typed(*weight, voice)].concat();
            }
            why = why.with(&substance.name, shown);
        }
    }
    Some(Finding { title: class.say(), class, reached: sum.is_reached(), exempt: sum.exempt, said, why })
}
