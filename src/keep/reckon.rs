//! Reckoning beside the page, in a worker that has the same module loaded; on the page itself where there is no worker.

use super::page::{after, element};
use super::planner;
use crate::apart::apart;
use crate::heat;
use crate::shelf::planning::{Plan, Problem};
use crate::wire;
use js_sys::{Array, Float32Array, Float64Array, Object, Reflect};
use leptos::task::spawn_local;
use std::cell::RefCell;
use wasm_bindgen::prelude::{Closure, wasm_bindgen};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{MessageEvent, Worker, WorkerOptions, WorkerType};

/// What the worker calls in its own copy of the module.
#[wasm_bindgen(js_name = reckon)]
pub async fn reckon_here(job: Vec<f64>) -> Vec<f32> {
    the_reckoning().await.map_or_else(|_| Vec::new(), |reckon| reckon(&job))
}

apart!(heat, the_reckoning, fn(&[f64]) -> Vec<f32>, heat::reckon);

type Then = Box<dyn FnOnce(Vec<f32>)>;

/// Jobs that are out, in order; each with what is done with its answer.
struct Asked {
    id: u32,
    job: Vec<f64>,
    then: Then,
}

/// A plan and whether it is the last; none where the search could not be fetched. True as long as plans are wanted.
type Tell = Box<dyn FnMut(Option<Plan>, bool) -> bool>;

/// The search that goes on: the last one asked for.
struct Planning {
    id: u32,
    job: String,
    tell: Tell,
}

#[derive(Default)]
struct Beside {
    /// None before the first job, and again once it has failed.
    worker: Option<Worker>,
    failed: bool,
    next: u32,
    asked: Vec<Asked>,
    planning: Option<Planning>,
}

impl Beside {
    /// Sends a job with a number of its own; that number, and whether there is a worker to do it.
    fn send(&mut self, job: &JsValue) -> (u32, bool) {
        if self.worker.is_none() && !self.failed {
            self.worker = start();
            self.failed = self.worker.is_none();
        }
        self.next += 1;
        let message = Array::of2(&self.next.into(), job);
        (self.next, self.worker.as_ref().is_some_and(|w| w.post_message(&message).is_ok()))
    }
}

thread_local! {
    static BESIDE: RefCell<Beside> = RefCell::default();
}

/// Has a job done (see [`heat::reckon`]) and gives its answer to `then`, later.
pub fn reckon(job: Vec<f64>, then: impl FnOnce(Vec<f32>) + 'static) {
    ask(job, Box::new(then));
}

fn ask(job: Vec<f64>, then: Then) {
    let sent = BESIDE.with_borrow_mut(|beside| {
        let (id, sent) = beside.send(&Float64Array::from(job.as_slice()));
        beside.asked.push(Asked { id, job, then });
        sent
    });
    if !sent {
        after(0, give_up);
    }
}

/// Has the best pours looked for; `tell` gets a good plan at once and then better ones, with true at the last, for as
/// long as it answers true. One search goes on at a time: the last one asked for.
pub fn plan(problem: &Problem, tell: impl FnMut(Option<Plan>, bool) -> bool + 'static) {
    look(wire::write(problem), Box::new(tell));
}

/// No more plans are wanted. Nothing to look for takes the place of the search that goes on: it is over at once.
pub fn give_up_planning() {
    if BESIDE.with_borrow(|beside| beside.planning.is_some()) {
        plan(&Problem::default(), |_, _| false);
    }
}

fn look(job: String, tell: Tell) {
    let (id, sent) = BESIDE.with_borrow_mut(|beside| {
        let (id, sent) = beside.send(&job.as_str().into());
        beside.planning = Some(Planning { id, job: job.clone(), tell });
        (id, sent)
    });
    if !sent {
        after(0, move || look_here(id, job));
    }
}

/// A slice of the search on the page itself, then the next.
fn look_here(id: u32, job: String) {
    let wanted = move || BESIDE.with_borrow(|beside| beside.planning.as_ref().is_some_and(|p| p.id == id));
    if wanted() {
        spawn_local(async move {
            let said = planner::slice_here(job).await;
            if planned(id, &said) {
                after(0, move || look_here(id, String::new()));
            }
        });
    }
}

/// Tells what a slice has found. False when nothing more is to come or wanted.
fn planned(id: u32, said: &str) -> bool {
    let Some(mut planning) = BESIDE.with_borrow_mut(|b| b.planning.take_if(|p| p.id == id)) else {
        return false;
    };
    let goes_on = said.is_empty()
        || match planner::read(said) {
            Some((plan, done)) => (planning.tell)(Some(plan), done) && !done,
            None => {
                (planning.tell)(None, true);
                false
            }
        };
    if goes_on {
        // Whoever was told may have asked anew.
        BESIDE.with_borrow_mut(|b| {
            b.planning.get_or_insert(planning);
        });
    }
    goes_on
}

fn start() -> Option<Worker> {
    let options = WorkerOptions::new();
    options.set_type(WorkerType::Module);
    let worker = Worker::new_with_options("reckon.js", &options).ok()?;
    let told: Closure<dyn Fn(MessageEvent)> = Closure::new(|event: MessageEvent| answered(&event));
    worker.set_onmessage(Some(told.as_ref().unchecked_ref()));
    told.forget();
    let failed: Closure<dyn Fn()> = Closure::new(give_up);
    worker.set_onerror(Some(failed.as_ref().unchecked_ref()));
    failed.forget();
    let files = Object::new();
    for (name, id) in [("js", "potside-js"), ("wasm", "potside-wasm")] {
        let href = Reflect::get(element(id)?.as_ref(), &"href".into()).ok()?;
        Reflect::set(&files, &name.into(), &href).ok()?;
    }
    worker.post_message(&files).ok()?;
    Some(worker)
}

fn answered(event: &MessageEvent) {
    let data: Array = event.data().unchecked_into();
    let id = data.get(0).as_f64().unwrap_or_default();
    let planning = BESIDE.with_borrow(|b| b.planning.as_ref().is_some_and(|p| f64::from(p.id) == id));
    if planning || data.get(1).is_string() {
        planned(id as u32, data.get(1).as_string().as_deref().unwrap_or("!"));
        return;
    }
    let answer = data.get(1).dyn_into::<Float32Array>().map(|a| a.to_vec());
    let asked = BESIDE.with_borrow_mut(|beside| {
        let at = beside.asked.iter().position(|a| f64::from(a.id) == id)?;
        Some(beside.asked.remove(at))
    });
    match (asked, answer) {
        (Some(asked), Ok(answer)) => (asked.then)(answer),
        (Some(asked), Err(_)) => (asked.then)(Vec::new()),
        (None, _) => {}
    }
}

/// No worker here: what is out is done on the page, one job after the other.
fn give_up() {
    let next = BESIDE.with_borrow_mut(|beside| {
        beside.worker = None;
        beside.failed = true;
        if let Some(planning) = &beside.planning {
            let (id, job) = (planning.id, planning.job.clone());
            after(0, move || look_here(id, job));
        }
        (!beside.asked.is_empty()).then(|| beside.asked.remove(0))
    });
    if let Some(asked) = next {
        spawn_local(async move {
            (asked.then)(reckon_here(asked.job).await);
            after(0, give_up);
        });
    }
}
