//! Reckoning beside the page, in a worker that has the same module loaded; on the page itself where there is no worker.

use super::page::{after, element};
use crate::apart::apart;
use crate::heat;
use js_sys::{Array, Float32Array, Float64Array, Object, Reflect};
use leptos::task::spawn_local;
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, wasm_bindgen};
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

#[derive(Default)]
struct Beside {
    /// None before the first job, and again once it has failed.
    worker: Option<Worker>,
    failed: bool,
    next: u32,
    asked: Vec<Asked>,
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
        if beside.worker.is_none() && !beside.failed {
            beside.worker = start();
            beside.failed = beside.worker.is_none();
        }
        beside.next += 1;
        let id = beside.next;
        let message = Array::of2(&id.into(), &Float64Array::from(job.as_slice()));
        let sent = beside.worker.as_ref().is_some_and(|w| w.post_message(&message).is_ok());
        beside.asked.push(Asked { id, job, then });
        sent
    });
    if !sent {
        after(0, give_up);
    }
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
        (!beside.asked.is_empty()).then(|| beside.asked.remove(0))
    });
    if let Some(asked) = next {
        spawn_local(async move {
            (asked.then)(reckon_here(asked.job).await);
            after(0, give_up);
        });
    }
}
