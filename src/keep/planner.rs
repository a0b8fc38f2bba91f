//! The search for the best pours, in slices: in the worker, or on the page between its frames where there is none.

use crate::apart::apart;
use crate::shelf::planning::{Plan, Problem, Search};
use crate::wire;
use std::cell::RefCell;
use wasm_bindgen::prelude::wasm_bindgen;

/// Sums that a slice makes before it looks up: some tens of milliseconds on a tablet.
const SLICE: usize = 40_000;

/// A search, and the plan that was told of it last.
struct Run {
    search: Search,
    told: String,
}

thread_local! {
    static RUN: RefCell<Option<Run>> = const { RefCell::new(None) };
}

/// With a problem: begins a search, gives up the one that goes on, and has the first plan at once. With nothing: a slice
/// of the search. The plan after a `+` where it is the last, after a `-` where it has changed; nothing where it has not;
/// `!` where the search could not be fetched.
#[wasm_bindgen(js_name = planPours)]
pub async fn slice_here(job: String) -> String {
    the_search().await.map_or_else(|_| "!".to_owned(), |slice| slice(&job))
}

apart!(search, the_search, fn(&str) -> String, slice);

fn slice(job: &str) -> String {
    RUN.with_borrow_mut(|run| {
        if !job.is_empty() {
            let problem = wire::read::<Problem>(job).unwrap_or_default();
            *run = Some(Run { search: Search::new(problem), told: String::new() });
        }
        let Some(Run { search, told }) = run else { return "!".to_owned() };
        let done = !told.is_empty() && search.step(SLICE);
        let plan = wire::write(&search.plan());
        let said = if done {
            ["+", &plan].concat()
        } else if plan == *told {
            String::new()
        } else {
            ["-", &plan].concat()
        };
        *told = plan;
        said
    })
}

/// What a slice said: the plan, and whether it is the last.
pub(super) fn read(said: &str) -> Option<(Plan, bool)> {
    Some((wire::read(said.get(1..)?).ok()?, said.starts_with('+')))
}
