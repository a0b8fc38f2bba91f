//! What the stores lack for the pours that would be best if they lacked nothing.

use super::Agenda;
use super::say::sum;
use crate::quantity::Exact;
use crate::shelf::planning::{Plan, Pour, Problem, Size};
use crate::stores::Lack;

/// So many kinds of pours are named; of the rest it is said how many there are.
const NAMED: usize = 4;

impl Agenda {
    /// The same, asked as if there were enough of everything.
    pub fn with_enough(&self) -> Problem {
        Problem { supplies: Vec::new(), ..self.problem.clone() }
    }

    fn size(&self, pour: &Pour) -> Option<&Size> {
        let pinned = self.problem.pinned.iter().filter(|p| p.good == pour.good).map(|p| &p.size);
        let sizes = self.problem.goods.get(pour.good).map_or(&[][..], |good| &good.sizes);
        pinned.chain(sizes).find(|size| size.number == pour.number)
    }

    /// What a plan takes beyond what there is, and for which of its pours.
    pub fn shortages(&self, plan: &Plan) -> Vec<Lack> {
        let mut all = Vec::new();
        for (at, (stuff, there)) in self.stuffs.iter().zip(&self.problem.supplies).enumerate() {
            let (mut takes, mut pours) = (0_u64, Vec::new());
            for pour in &plan.pours {
                let uses = self.size(pour).map_or(&[][..], |size| &size.uses);
                let used = uses.iter().filter(|(supply, _)| *supply == at).map(|(_, n)| *n);
                let used = used.fold(0, u64::saturating_add);
                if used > 0 {
                    takes = takes.saturating_add(used);
                    pours.push(pour);
                }
            }
            let amount: Exact = stuff.amount(takes.saturating_sub(*there));
            if !amount.is_zero() {
                all.push(Lack { name: stuff.name.clone(), amount, pours: self.named(&pours) });
            }
        }
        all
    }

    /// `8 × Fig, 2 pours of 4 × Rose and 3 more pours`.
    fn named(&self, pours: &[&Pour]) -> String {
        let mut kinds: Vec<(&Pour, u32)> = Vec::new();
        for pour in pours {
            match kinds.iter_mut().find(|(p, _)| (p.good, p.number) == (pour.good, pour.number)) {
                Some((_, times)) => *times += 1,
                None => kinds.push((pour, 1)),
            }
        }
        // One more is as short as to say that there is one more.
        let named = if kinds.len() == NAMED + 1 { NAMED + 1 } else { NAMED };
        let mut parts = Vec::new();
        for (pour, times) in kinds.iter().take(named) {
            let of = if *times > 1 { [&times.to_string(), " pours of "].concat() } else { String::new() };
            parts.push(of + &self.what(pour));
        }
        let rest: u32 = kinds.iter().skip(named).map(|(_, times)| times).sum();
        if rest > 0 {
            parts.push([&rest.to_string(), " more pours"].concat());
        }
        sum(parts)
    }

    /// Of what the pours of a plan take, the book has no lot of these: it cannot tell whether there is enough.
    pub fn unknown(&self, plan: &Plan) -> String {
        let mut names: Vec<&String> = Vec::new();
        for item in plan.pours.iter().filter_map(|pour| self.items.get(pour.good)) {
            for name in &item.unknown {
                if !names.contains(&name) {
                    names.push(name);
                }
            }
        }
        sum(names.into_iter().map(|name| ["“", name, "”"].concat()).collect())
    }
}
