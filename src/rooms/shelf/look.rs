//! Has the best pours looked for, and again after each change. What is asked is put together in pieces between the frames:
//! with many products all of it takes so long that a key would be waited for.

use crate::dom::*;
use crate::keep;
use crate::rooms::parts::later;
use crate::rooms::workshop::Workshop;
use crate::shelf::agenda::{Agenda, Batches, Picks};
use crate::shelf::planning::{Plan, Problem};
use leptos::prelude::on_cleanup;
use std::rc::Rc;

/// Milliseconds: a piece takes no longer than this and one batch more.
const PIECE: u64 = 6;

/// Gets each plan, none where what looks for them could not be fetched, and true with the last. Where nothing is sold the
/// plan is empty.
type Tell = Box<dyn Fn(&Rc<Agenda>, Option<Plan>, bool)>;

/// Who wants the plans.
pub(in crate::rooms) struct Looker {
    pub(in crate::rooms) shop: Workshop,
    /// Called whenever it is begun anew.
    pub(in crate::rooms) begin: Box<dyn Fn()>,
    /// What is asked of the planner.
    pub(in crate::rooms) ask: fn(&Agenda) -> Problem,
    pub(in crate::rooms) tell: Tell,
}

/// A question that is put together.
#[derive(Clone)]
struct Question {
    looker: Rc<Looker>,
    /// How often was asked, and how often when this question was: after a change it is another, and none on a page that was left.
    asked: Value<u32>,
    mine: u32,
}

/// Looks for the best pours as long as the page is there.
pub(in crate::rooms) fn look(looker: Looker) {
    let (looker, asked) = (Rc::new(looker), Value::new(0));
    watch(move || {
        let shop = looker.shop;
        shop.state(|_| ());
        shop.voice();
        asked.update(|n| *n += 1);
        untrack(|| (looker.begin)());
        let question = Question { looker: looker.clone(), asked, mine: asked.get_untracked() };
        // What is there already is shown before.
        later(0, move || question.begin());
    });
    on_cleanup(keep::give_up_planning);
}

impl Question {
    fn is_wanted(&self) -> bool {
        self.asked.try_untracked() == Some(self.mine)
    }

    fn begin(self) {
        if self.is_wanted() {
            let picks = self.picks();
            let batches = self.looker.shop.state_untracked(|s| s.batches(&picks));
            self.gather(batches);
        }
    }

    fn picks(&self) -> Picks {
        self.looker.shop.state_untracked(|s| s.picks(keep::today()))
    }

    /// Reckons batches for a while, then lets the page do what waits.
    fn gather(self, mut batches: Batches) {
        if !self.is_wanted() {
            return;
        }
        let shop = self.looker.shop;
        let voice = untrack(|| shop.voice());
        let until = keep::now() + PIECE;
        while shop.state_untracked(|s| s.reckon(&mut batches, voice)) {
            if keep::now() >= until {
                return later(0, move || self.gather(batches));
            }
        }
        later(0, move || {
            // The ledger may have to be reckoned too.
            untrack(|| shop.ledger().with(|_| ()));
            later(0, move || self.ask(&batches));
        });
    }

    fn ask(self, batches: &Batches) {
        if !self.is_wanted() {
            return;
        }
        let (shop, picks) = (self.looker.shop, self.picks());
        let agenda = untrack(|| {
            shop.ledger().with(|ledger| {
                let voice = shop.voice();
                shop.state_untracked(|s| {
                    s.agenda_with(batches, &s.shelf(keep::today(), keep::ZONE), ledger, &picks, voice)
                })
            })
        });
        let agenda = Rc::new(agenda);
        if agenda.items.is_empty() {
            return (self.looker.tell)(&agenda, Some(Plan::default()), true);
        }
        let problem = (self.looker.ask)(&agenda);
        keep::plan(&problem, move |plan, done| {
            // What was asked meanwhile is answered by its own plan.
            let wanted = self.is_wanted();
            if wanted {
                (self.looker.tell)(&agenda, plan, done);
            }
            wanted
        });
    }
}
