//! A quiet sound and a short vibration, as far as the browser and the device have them: nothing depends on either.

use js_sys::{Function, Reflect};
use std::cell::RefCell;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{AudioContext, AudioContextState};

/// Hz, of the full loudness, and seconds until it is loud and until it is gone.
const PITCH: f32 = 660.0;
const LOUD: f32 = 0.08;
const SWELL: f64 = 0.02;
const LONG: f64 = 0.3;
/// Milliseconds.
const SHAKE: u32 = 200;

thread_local! {
    static SPEAKER: RefCell<Option<AudioContext>> = const { RefCell::new(None) };
}

/// To be called at a tap: a browser lets a page sound only once it was tapped.
pub fn ready_sound() {
    SPEAKER.with_borrow_mut(|speaker| {
        if let Some(speaker) = speaker.as_ref() {
            // A browser quiets a page that was away.
            if speaker.state() != AudioContextState::Running {
                let _ = speaker.resume();
            }
        } else {
            *speaker = AudioContext::new().ok();
        }
    });
}

/// Sounds and shakes once.
pub fn chime() {
    let _ = SPEAKER.with_borrow(|speaker| speaker.as_ref().map_or(Ok(()), sound));
    if let Some(navigator) = web_sys::window().map(|w| w.navigator())
        && let Ok(vibrate) = Reflect::get(&navigator, &"vibrate".into())
        && let Some(vibrate) = vibrate.dyn_ref::<Function>()
    {
        let _ = vibrate.call1(&navigator, &SHAKE.into());
    }
}

fn sound(speaker: &AudioContext) -> Result<(), JsValue> {
    let (tone, volume) = (speaker.create_oscillator()?, speaker.create_gain()?);
    let (now, loud) = (speaker.current_time(), volume.gain());
    tone.frequency().set_value(PITCH);
    // From silence and back to it, or it clicks.
    loud.set_value_at_time(0.0, now)?;
    loud.linear_ramp_to_value_at_time(LOUD, now + SWELL)?;
    loud.linear_ramp_to_value_at_time(0.0, now + LONG)?;
    tone.connect_with_audio_node(&volume)?;
    volume.connect_with_audio_node(&speaker.destination())?;
    tone.start()?;
    tone.stop_with_when(now + LONG)
}
