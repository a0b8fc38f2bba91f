//! The quiet sound and the shake before a gate, listened to where they leave the page; and silence, where a person wants it.

use crate::browser::{Browser, Engine};
use crate::flow::{demo, read_twice};
use crate::host::Host;
use crate::pour::serve;
use serde_json::{Value, json};

/// An ear on whatever goes to the loudspeaker: the loudest it was, and the pitch it then had in Hz. And a hand on the device.
const EAR: &str = r#"
window.heard = { loud: 0, pitch: 0, shaken: [] };
const connect = AudioNode.prototype.connect;
AudioNode.prototype.connect = function (to, ...more) {
  if (to === this.context.destination) {
    const ear = new AnalyserNode(this.context, { fftSize: 4096, smoothingTimeConstant: 0 });
    connect.call(this, ear);
    const wave = new Float32Array(ear.fftSize), tones = new Float32Array(ear.frequencyBinCount);
    setInterval(() => {
      ear.getFloatTimeDomainData(wave);
      const loud = wave.reduce((most, a) => Math.max(most, Math.abs(a)), 0);
      if (loud <= heard.loud) return;
      ear.getFloatFrequencyData(tones);
      heard.loud = loud;
      heard.pitch = tones.indexOf(Math.max(...tones)) * this.context.sampleRate / ear.fftSize;
    }, 10);
  }
  return connect.call(this, to, ...more);
};
Navigator.prototype.vibrate = (ms) => heard.shaken.push(ms) > 0;
"#;

async fn heard(b: &Browser) -> Value {
    b.client.execute("return heard", vec![]).await.unwrap()
}

/// In the demo workshop, with an ear on it.
async fn listening(host: &Host, name: &str) -> Browser {
    let b = Browser::start(Engine::Chromium, name).await;
    b.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": EAR })).await.unwrap();
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    demo(&b).await;
    b
}

/// To where the dye may nearly go in.
async fn nearly(b: &Browser) {
    b.tap("Start this pour").await;
    b.sees("Step 1 of").await;
    read_twice(b).await;
    b.sees("Add Plum dye 180–188 °F").await;
    assert_eq!(heard(b).await["loud"], 0, "it is not near yet");
    let on = "const now = Date.now.bind(Date); Date.now = () => now() + 50000";
    b.client.execute(on, vec![]).await.unwrap();
    b.sees("Nearly at 188 °F: add Plum dye.").await;
}

#[tokio::test]
async fn a_gate_is_heard_and_felt_before_it_is_reached() {
    let host = serve("/");
    let b = listening(&host, "heard").await;
    b.room("pot").await;
    nearly(&b).await;
    let loud = "return heard.loud > 0.07 ? heard : null";
    let sound = b.wait_js("a sound", loud, vec![]).await;
    // As quiet as it says, and the tone that it says; the ear tells apart what is 12 Hz or less apart.
    let (loud, pitch) = (sound["loud"].as_f64().unwrap(), sound["pitch"].as_f64().unwrap());
    assert!(loud <= 0.081, "{loud}");
    assert!((pitch - 660.0).abs() <= 12.0, "{pitch} Hz");
    assert_eq!(sound["shaken"], json!([200]));
    b.end().await;
}

#[tokio::test]
async fn a_device_that_is_to_be_quiet_is() {
    let host = serve("/");
    let b = listening(&host, "unheard").await;
    b.room("desk").await;
    b.sees("Sound and vibration at the pot").await;
    b.tap("Off").await;
    b.room("pot").await;
    nearly(&b).await;
    tokio::time::sleep(std::time::Duration::from_millis(600)).await;
    let heard = heard(&b).await;
    assert_eq!((&heard["loud"], &heard["shaken"]), (&json!(0), &json!([])));
    b.end().await;
}
