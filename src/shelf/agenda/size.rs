//! The sizes of batch a product may be poured in, and what each takes of the stores.

use super::Stuff;
use crate::book::{Id, Kept, State, Wish};
use crate::formula::{Formula, PartKind};
use crate::pot::{Ask, Plan, Target, keeps_shade};
use crate::quantity::{Exact, Voice};
use crate::shelf::Product;
use crate::shelf::planning::Size;
use crate::stores::{Account, Ledger, Measure};
use crate::{sort, text};

/// Micrograms to a gram: what can be weighed comes out whole.
const MICRO: Exact = Exact::whole(1_000_000);

/// A batch as it would be poured, whatever the stores have. To reckon it is what takes long in asking the planner.
#[derive(Clone, PartialEq, Debug)]
pub struct Takes {
    number: u32,
    /// Each with its grams, and how many where it is counted.
    names: Vec<(String, Exact, u32)>,
    pub(super) depth: u32,
}

/// What is taken of the stores so far, so that each has one number.
pub(super) struct Supplies<'a> {
    pub(super) ledger: &'a Ledger,
    /// Pieces that are there and spoken for all the same.
    finishing: Vec<(&'a str, u64)>,
    /// Accounts by the names that batches have for them: to find one, case and blanks are put aside, and that takes long.
    named: Vec<(String, Option<&'a Account>)>,
    pub(super) stuffs: Vec<Stuff>,
    pub(super) there: Vec<u64>,
    /// What the sizes asked for of late take and there is no lot of.
    pub(super) unknown: Vec<String>,
}

fn units(amount: Exact, measure: Measure) -> Exact {
    match measure {
        Measure::Grams => amount * MICRO,
        Measure::Pieces => amount,
    }
}

fn whole(n: i128) -> u64 {
    u64::try_from(n.max(0)).unwrap_or(u64::MAX)
}

impl Stuff {
    /// So many of the supply's units as an amount.
    pub(super) fn amount(&self, units: u64) -> Exact {
        match self.measure {
            Measure::Grams => Exact::ratio(units.into(), 1_000_000),
            Measure::Pieces => Exact::whole(units.into()),
        }
    }
}

impl<'a> Supplies<'a> {
    /// `finishing`: pieces that are spoken for, by the name of the part.
    pub(super) fn new(ledger: &'a Ledger, finishing: Vec<(&'a str, u64)>) -> Self {
        Self {
            ledger,
            finishing,
            named: Vec::new(),
            stuffs: Vec::new(),
            there: Vec::new(),
            unknown: Vec::new(),
        }
    }

    fn account(&mut self, name: &str) -> Option<&'a Account> {
        if let Some((_, account)) = self.named.iter().find(|(known, _)| known == name) {
            return *account;
        }
        let account = self.ledger.account(name);
        self.named.push((name.to_owned(), account));
        account
    }

    fn place(&mut self, account: &Account) -> usize {
        self.stuffs.iter().position(|s| s.name == account.name).unwrap_or_else(|| {
            self.stuffs.push(Stuff { name: account.name.clone(), measure: account.measure });
            let there = whole(units(account.free(), account.measure).floor());
            let taken = self
                .finishing
                .iter()
                .filter(|(part, _)| account.measure == Measure::Pieces && account.is(part));
            self.there.push(there.saturating_sub(taken.fold(0, |sum: u64, (_, n)| sum.saturating_add(*n))));
            self.stuffs.len() - 1
        })
    }

    /// What a batch takes of what is counted here. What there is no lot of is not bounded.
    pub(super) fn size(&mut self, batch: &Takes) -> Size {
        let mut uses: Vec<(usize, u64)> = Vec::new();
        for (name, grams, pieces) in &batch.names {
            let Some(account) = self.account(name) else {
                let known = name.is_empty() || self.unknown.iter().any(|of| of == name);
                self.unknown.extend((!known).then(|| name.clone()));
                continue;
            };
            let amount = match account.measure {
                Measure::Grams => *grams,
                Measure::Pieces => Exact::whole((*pieces).into()),
            };
            let (at, takes) = (self.place(account), whole(units(amount, account.measure).ceil()));
            match uses.iter_mut().find(|(known, _)| *known == at) {
                Some((_, sum)) => *sum = sum.saturating_add(takes),
                None if takes > 0 => uses.push((at, takes)),
                None => {}
            }
        }
        Size { number: batch.number, uses }
    }
}

impl State {
    /// A batch of so many of a product, with what finishes each candle.
    ///
    /// # Errors
    /// The sentence that says why it cannot be poured: no plan can be made, no pot holds it, the shade is lost.
    pub fn takes(&self, product: &Product, number: u32, voice: Voice) -> Result<Takes, String> {
        let wish = Wish {
            formula: product.formula.clone(),
            vessel: product.vessel.clone(),
            wick: product.wick.clone(),
            target: Target::Vessels(number),
            residue: self.settings.residue.clone(),
            warmed: false,
            pot: None,
            shade: 0,
        };
        let (plan, _) = self.outline(&wish, voice).map_err(|e| e.say(voice))?;
        let many = number.to_string();
        if !self.pots_shown().is_empty() && self.pot_for(&plan).is_none() {
            return Err(["No pot holds ", &many, " in one pour."].concat());
        }
        if !self.keeps_shade(&wish, voice) {
            return Err(["Whole drops do not keep the shade in a batch of ", &many, "."].concat());
        }
        let mut names: Vec<(String, Exact, u32)> = Vec::new();
        names.extend(plan.needs().into_iter().map(|n| (n.name, n.mass.in_base(), n.pieces)));
        let pieces = plan.own().into_iter().chain(product.finish(|part| plan.takes(part)));
        names.extend(pieces.map(|name| (name.clone(), Exact::ZERO, plan.vessels)));
        Ok(Takes { number, names, depth: depth(&plan) })
    }

    /// False where whole drops are off the shade by more than this workshop's tolerance, as the Pot would say.
    fn keeps_shade(&self, wish: &Wish, voice: Voice) -> bool {
        let formula = self.formulas.get(&wish.formula).and_then(Kept::body);
        let vessel = self.vessels.get(&wish.vessel).and_then(Kept::body);
        let (Some(formula), Some(vessel)) = (formula, vessel) else { return true };
        let Ok(fill) = self.fill(vessel, formula, voice) else { return true };
        let ask = Ask {
            formula,
            vessel: &vessel.name,
            wick: &wish.wick,
            fill,
            target: wish.target.clone(),
            residue: &wish.residue,
            warmed: wish.warmed,
            scales: &[],
            pot: None,
            recipe: self,
            shade: wish.shade,
            tolerance: self.settings.tolerance.value,
            voice,
        };
        keeps_shade(&ask).unwrap_or(true)
    }

    /// The smallest pot in use that holds a plan in one pour.
    pub fn pot_for(&self, plan: &Plan) -> Option<Id> {
        let mass = plan.pours.first()?.wanted;
        let pots = self.pots_shown().into_iter().filter_map(|k| Some((k.body()?.capacity.value, &k.id)));
        let fits = pots.filter(|(capacity, _)| plan.pours.len() == 1 && *capacity >= mass);
        fits.min_by(|a, b| a.cmp(b)).map(|(_, id)| id.clone())
    }
}

/// What tells one colour and fragrance from another: the names of the dyes and fragrances.
pub(super) fn kind(formula: &Formula) -> String {
    let named = formula.parts.iter().filter(|p| matches!(p.kind, PartKind::Dye | PartKind::Fragrance));
    let mut names: Vec<String> = named.map(|p| text::key(&p.name)).collect();
    sort::by(&mut names, |a, b| a.cmp(b));
    names.join("\n")
}

/// How dark it is: parts of dye in a million, 1 at least where there is dye whose mass is not known.
fn depth(plan: &Plan) -> u32 {
    let Some(pour) = plan.pours.first() else { return 0 };
    let mut dyes = pour.lines.iter().filter(|l| l.kind == Some(PartKind::Dye)).peekable();
    if dyes.peek().is_none() {
        return 0;
    }
    let share: Exact = dyes.map(|l| l.of_whole.in_base()).sum();
    u32::try_from((share * MICRO).round()).unwrap_or(u32::MAX).max(1)
}
