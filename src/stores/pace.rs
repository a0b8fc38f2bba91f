//! How fast an ingredient goes, for how long what is left lasts, and when to order.

use super::{Account, Holding, Supply};
use crate::day::{DAY, Day, Zone};
use crate::quantity::{Exact, Voice, Why};

/// The pace is that of so many last days, or of all since the first lot was here and in the book; with fewer than the least
/// it is not told (our own choice).
const WINDOW: u32 = 90;
const LEAST: u32 = 7;

/// Standard normal quantiles (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1): the share of waits without
/// running out, in thousandths, and how many standard deviations are kept for it, in ten-thousandths.
const NORMAL: [(i128, i128); 5] = [(900, 12_816), (950, 16_449), (975, 19_600), (990, 23_263), (999, 30_902)];

/// How fast it goes: what was used a day, and how much that differs from day to day.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Pace {
    pub daily: Exact,
    /// Standard deviation of a day's use.
    pub spread: f64,
    pub days: u32,
}

/// When to order: at so much left.
#[derive(Clone, PartialEq, Debug)]
pub struct Reorder {
    pub at: Exact,
    pub why: Why,
}

impl Account {
    /// By the days of this zone. None before there is enough to tell it from.
    pub fn pace(&self, today: Day, zone: Zone) -> Option<Pace> {
        let first = self.known_since(zone)?;
        let days = today.0.checked_sub(first.0)?.min(WINDOW);
        if days < LEAST {
            return None;
        }
        let mut used = vec![Exact::ZERO; days as usize];
        // Nowhere is it another day than at Greenwich by more than one: what is older is not asked for its own.
        let since = u64::from(today.0.saturating_sub(days + 1)).saturating_mul(DAY);
        for take in self.takes.iter().filter(|t| t.at >= since) {
            // Of the first day and of today only a part is told: together they are one day.
            let ago = today.0.checked_sub(zone.day(take.at).0);
            let ago = ago.map(|ago| if ago == days && today.0 - days == first.0 { 0 } else { ago });
            if let Some(day) = ago.and_then(|ago| used.get_mut(ago as usize)) {
                *day = *day + take.amount;
            }
        }
        let count = Exact::whole(days.into());
        let daily = used.iter().copied().sum::<Exact>() / count;
        let mean = daily.to_f64();
        let squares: f64 = used.iter().map(|u| (u.to_f64() - mean) * (u.to_f64() - mean)).sum();
        Some(Pace { daily, spread: (squares / f64::from(days - 1)).sqrt(), days })
    }
}

impl Account {
    /// The day from which on the book knows what was used: the first lot was here, and was written down or taken from. What
    /// was bought long before the book was begun was used, and nobody wrote it down.
    fn known_since(&self, zone: Zone) -> Option<Day> {
        let took = self.takes.first().map_or(u64::MAX, |take| take.at);
        // A calendar takes its time: it is asked of one lot only.
        let day = |h: &&Holding| h.lot.got_on.max(Zone::GREENWICH.day(h.written.min(took)));
        let first = self.lots.iter().min_by_key(day)?;
        Some(first.lot.got_on.max(zone.day(first.written.min(took))))
    }
}

impl Pace {
    /// Full days that so much lasts; none where nothing is used.
    pub fn lasts(self, left: Exact) -> Option<u32> {
        let days = left.checked_div(self.daily)?;
        u32::try_from(days.floor()).ok()
    }

    /// Order when no more than this is left: what goes while one waits, and a reserve for when it goes faster or comes
    /// later: pace × wait + z × √(wait × spread of a day² + pace² × spread of the wait²), z the standard normal quantile.
    pub fn reorder(self, supply: &Supply, service: Exact, account: &Account, voice: Voice) -> Reorder {
        let thousandths = service * Exact::whole(1000);
        let (share, z) = NORMAL
            .into_iter()
            .find(|(share, _)| Exact::whole(*share) >= thousandths)
            .unwrap_or((999, 30_902));
        let (wait, late) = (f64::from(supply.lead_days), f64::from(supply.lead_spread));
        let daily = self.daily.to_f64();
        let spread = (wait * self.spread * self.spread + daily * daily * late * late).sqrt();
        let spread = Exact::near(spread).unwrap_or(Exact::ZERO);
        let reserve = Exact::whole((spread * Exact::ratio(z, 10_000)).ceil());
        let goes = self.daily * Exact::whole(supply.lead_days.into());
        let at = Exact::whole((goes + reserve).ceil());
        let say = |amount: Exact| account.measure.say(amount, voice);
        let days = |n: u32| if n == 1 { "1 day".to_owned() } else { format!("{n} days") };
        let why = Why::new(
            format!("When to order “{}”", account.name),
            "pace × wait + z × √(wait × spread of a day² + pace² × spread of the wait²)",
            say(at),
        )
        .with("pace a day", say(Exact::whole(self.daily.round())))
        .with("told from the last", days(self.days))
        .with("wait for a delivery", days(supply.lead_days))
        .with("it comes sooner or later by", days(supply.lead_spread))
        .with("waits without running out", format!("{} of 1000", share))
        .with("z", voice.number(Exact::ratio(z, 10_000)))
        .with("reserve", say(reserve))
        .from("Normal approximation; z from NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1");
        Reorder { at, why }
    }
}
