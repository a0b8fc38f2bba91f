//! Telling the other tabs what was stored.

use crate::wire;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{BroadcastChannel, MessageEvent};

/// A channel between the tabs that have the same workshop open. Where the browser has none, it is silent.
pub(super) struct Tabs {
    channel: Option<BroadcastChannel>,
}

impl Tabs {
    pub(super) fn new(name: &str) -> Self {
        Self { channel: BroadcastChannel::new(name).ok() }
    }

    /// Tells the other tabs. They also find the lines in the storage, so a message lost costs only time.
    pub(super) fn tell(&self, lines: &[(String, String)]) {
        if let Some(channel) = &self.channel {
            let lines: Vec<String> = lines.iter().map(|(_, line)| line.clone()).collect();
            let _ = channel.post_message(&wire::write(&lines).into());
        }
    }

    /// Calls `hear` with the lines that another tab has stored, as long as the page lives.
    pub(super) fn listen(&self, mut hear: impl FnMut(Vec<String>) + 'static) {
        let Some(channel) = &self.channel else { return };
        let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |message: MessageEvent| {
            let text = message.data().as_string().unwrap_or_default();
            if let Ok(lines) = wire::read::<Vec<String>>(&text) {
                hear(lines);
            }
        });
        channel.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
        on_message.forget();
    }
}
