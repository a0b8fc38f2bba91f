//! Burn trials with the server gone: from first light to a recommended wick, by touch, two candles at once, and a clock that
//! goes on through a restart.

use crate::browser::{Browser, Engine, GONE};
use crate::flow::{from_the_device, series};
use crate::look::{axe, look};
use crate::pour::serve;

/// Seconds on the first clock.
const CLOCK: &str = r#"
const said = document.querySelector(".clock")?.innerText.match(/(\d+):(\d\d):(\d\d)/);
return said ? 3600 * said[1] + 60 * said[2] + Number(said[3]) : null;
"#;

async fn seconds(b: &Browser) -> f64 {
    b.wait_js("a clock", CLOCK, vec![]).await.as_f64().unwrap()
}

async fn clocks(b: &Browser, wanted: u32) {
    let script = "return document.querySelectorAll('.clock').length === arguments[0]";
    b.waits("so many clocks", script, vec![wanted.into()]).await;
}

/// Fills in what a candle is made of and puts it on trial.
pub(crate) async fn on_trial(b: &Browser, mark: &str, wick: &str) {
    b.room("bench/burn/new").await;
    b.fill("Mark on the candle", mark).await;
    b.fill("Fragrance", "Apple").await;
    b.fill("Wax", "Plain wax").await;
    b.fill("Vessel", "Straight jar").await;
    b.fill("Inside across", "70 mm").await;
    b.fill("Wax in it", "180 g").await;
    b.fill("The whole candle", "400 g").await;
    b.pick("Wick", wick).await;
    b.tap("Put it on trial").await;
    b.sees("Light it now").await;
}

/// Lights it, looks once, puts it out, weighs it and closes the trial.
async fn burns(b: &Browser, verdict: &str, grams: &str) {
    b.tap("Light it now").await;
    b.sees("Put it out").await;
    b.fill("Pool across", "69 mm").await;
    b.tap("Keep this look").await;
    b.sees("What it shows").await;
    b.tap("Put it out").await;
    b.fill("After the burn it weighs", grams).await;
    b.tap("Keep this weight").await;
    b.sees("do not decide it yet").await;
    b.tap(verdict).await;
    b.tap("Close this trial").await;
    b.sees("This candle:").await;
}

#[tokio::test]
async fn a_trial_by_touch_from_first_light_to_a_wick() {
    let host = serve("/");
    let address = host.address();
    let mut b = Browser::start(Engine::Chromium, "burn").await;
    from_the_device(&b, host).await;
    b.sees("From the formula to the poured candle").await;
    let (axe, mut found) = (axe(), Vec::new());
    // A scale is tried before anything is weighed on it: what it tells is taken over with a tap.
    b.room("bench/scale/new").await;
    b.fill("Name", "Bench scale").await;
    b.fill("Capacity", "5 kg").await;
    b.fill("Division", "0.1 g").await;
    b.set("What it showed", "99.6 g\n99.5 g\n99.4 g").await;
    b.fill("What it really weighs", "100 g").await;
    b.sees("too little of 100 g. Set it level").await;
    b.tap("Take 20 g as the smallest load").await;
    look(&b, &axe, "scale-tried", &mut found).await;
    b.tap("Keep this scale").await;
    b.sees("in steps of 0.1 g, from 20 g").await;
    b.tap("Bench scale").await;
    b.sees("too little of 100 g").await;
    // Spoons weighed, and later weighed once more: what was weighed before stands there.
    b.room("bench/spoons").await;
    b.fill("What is spooned", "Mica").await;
    b.fill("The scale shows", "32 g").await;
    b.sees("Weigh as many again").await;
    b.tap("Keep this spoon").await;
    b.tap("Weigh again").await;
    b.tap("Weigh once more").await;
    b.client.execute(SECOND, vec!["The scale shows".into(), "40 g".into()]).await.unwrap();
    b.sees("Give or take 11.11 %. Weighed 8 times more, it is good to 5 %.").await;
    look(&b, &axe, "spoons-again", &mut found).await;
    b.tap("Keep this spoon").await;
    b.sees("Weighed 8 times more").await;
    b.room("bench/burn").await;
    b.sees("No candle on trial yet").await;
    series(&b, &["C 8", "C 10"]).await;
    b.tap("Cotton").await;
    b.set("Sizes, the smallest first", "C 8\nC 10\nC 10\nC 12\nC 14").await;
    b.tap("Keep this series").await;
    b.sees("stands there twice").await;
    b.set("Sizes, the smallest first", "C 8\nC 10\nC 12\nC 14").await;
    b.tap("Keep this series").await;
    b.sees("C 8, C 10, C 12, C 14").await;

    // What is wrong gets its sentence and stays typed.
    b.room("bench/burn/new").await;
    b.fill("Mark on the candle", "A1").await;
    b.tap("Put it on trial").await;
    b.sees("Not saved:").await;
    on_trial(&b, "A1", "C 10").await;
    b.sees("before you light it").await;
    b.tap("Light it now").await;
    b.sees("Full pool expected").await;
    b.saved().await;

    // Before there is a second candle, the first guess of its wick; a tap takes it.
    b.room("bench/burn/new").await;
    b.fill("Fragrance", "Apple").await;
    b.fill("Inside across", "70 mm").await;
    b.sees("Which wick to begin with Try C 1").await;
    look(&b, &axe, "burn-guess", &mut found).await;
    b.tap("Take C 1").await;
    let wick = b.wait_js("the wick", WICK, vec![]).await;
    b.sees(&format!("Take {}", wick.as_str().unwrap_or_default())).await;
    assert!(wick.as_str().is_some_and(|w| w.starts_with("C 1")), "{wick}");

    // Two at once; the clocks go on while nobody looks, since they count from the light that is kept.
    on_trial(&b, "A2", "C 8").await;
    b.tap("Light it now").await;
    b.sees("Put it out").await;
    b.saved().await;
    b.room("bench/burn").await;
    clocks(&b, 2).await;
    let before = seconds(&b).await;
    // What is due is told in every room, whatever one is at; on the page of the trials it stands already.
    b.room("shelf").await;
    b.sees("Orders stand here").await;
    assert!(!b.shows("put it out").await);
    let later = "const now = Date.now.bind(Date); Date.now = () => now() + 245 * 60000";
    b.client.execute(later, vec![]).await.unwrap();
    b.sees("A1: It has burned as long as it should: put it out.").await;
    look(&b, &axe, "burn-told-elsewhere", &mut found).await;
    b.tap("See them").await;
    clocks(&b, 2).await;
    b.waits("no notice", "return !document.querySelector('.told').innerText", vec![]).await;
    b.close_and_restart().await;
    b.open(&format!("{address}#bench/burn")).await;
    b.size(1024, 768).await;
    clocks(&b, 2).await;
    let after = seconds(&b).await;
    assert!(after > before, "the clock went on: {before} s, then {after} s");
    assert!(after < before + 600.0, "{before} s, then {after} s");

    look(&b, &axe, "burn-now", &mut found).await;
    b.size(390, 844).await;
    b.tap("Put out A2").await;
    clocks(&b, 1).await;
    b.tap("Look at A1").await;
    b.sees("What you see").await;
    b.fill("Pool across", "30 mm").await;
    b.fill("Flame", "tall").await;
    b.tap("Keep this look").await;
    b.sees("Flame: ").await;
    b.fill("Flame", "3.5 in").await;
    b.tap("Keep this look").await;
    b.sees("not kept").await;
    look(&b, &axe, "burn-candle", &mut found).await;
    b.size(768, 1024).await;
    b.tap("Take the last thing back").await;
    b.waits("no finding", "return !document.body.innerText.includes('not kept')", vec![]).await;
    // It was put out while nobody tapped: not before it was lit.
    b.tap("It was put out earlier").await;
    b.fill("So many minutes ago", "600").await;
    b.tap("It is out since then").await;
    b.sees("It was not lit yet then. Type fewer minutes.").await;
    look(&b, &axe, "burn-earlier", &mut found).await;
    b.size(768, 1024).await;
    b.tap("It went out by itself").await;
    b.fill("After the burn it weighs", "399 g").await;
    b.tap("Keep this weight").await;
    b.sees("By your limits: wick too small").await;
    b.sees("99 % of its wax left").await;
    b.tap("Close this trial").await;
    b.sees("This candle: wick too small.").await;

    // The search goes up, and three that pass settle it.
    b.sees("Try C 1").await;
    b.sees("test before sale").await;
    b.tap("Mark a candle with this wick").await;
    b.sees("A candle on trial").await;
    let wick = b.wait_js("the wick", WICK, vec![]).await;
    let wick = wick.as_str().unwrap_or_default().to_owned();
    assert!(["C 12", "C 14"].contains(&wick.as_str()), "a larger one: {wick}");
    for (mark, grams) in [("B1", "398 g"), ("B2", "397.5 g"), ("B3", "398.2 g")] {
        on_trial(&b, mark, "C 12").await;
        burns(&b, "passed", grams).await;
    }
    b.sees("C 12: passed by you in 3 candles, on 3 burns; none of them burned to its end").await;
    look(&b, &axe, "burn-told", &mut found).await;
    // Put right, put away, and taken out again: what was burned stays with it.
    b.tap("Put it right").await;
    b.fill("Mark on the candle", "B4").await;
    b.tap("Keep this candle").await;
    b.sees("C 12: passed by you in 3 candles, on 3 burns; none of them burned to its end").await;
    b.sees("B4").await;
    b.tap("Put this trial away").await;
    b.room("bench/burn").await;
    b.tap("Put away (1)").await;
    b.tap("Use B4 again").await;
    b.waits("nothing put away", "return !document.body.innerText.includes('Put away')", vec![]).await;
    b.sees("B4").await;
    // A burn that was noted on paper, with its own times; what cannot be is told, and stays typed.
    on_trial(&b, "C1", "C 10").await;
    b.tap("Write down a burn that is over").await;
    b.set("Lit at", "2025-03-01T20:00").await;
    b.set("Out at", "2025-03-01T18:00").await;
    b.fill("Before the burn", "3995 g").await;
    b.fill("After the burn", "390 g").await;
    b.fill("Pool across", "69 mm").await;
    b.tap("Keep this burn").await;
    b.sees("It ended before it was lit.").await;
    b.sees("3995 g is more than the whole candle weighed at first, 400 g.").await;
    look(&b, &axe, "burn-late", &mut found).await;
    b.set("Lit at", "2025-03-01T16:00").await;
    b.fill("Before the burn", "400 g").await;
    b.tap("Keep this burn").await;
    b.sees("2 h 0 min, 0.35 oz, 1 look").await;
    b.sees("Burn rate: 5.00 g an hour").await;
    b.sees("Light it now").await;
    // An earlier one, looked at twice and not weighed: weighed later though it is not the last, taken back with one tap, and
    // brought back with one.
    b.tap("Write down a burn that is over").await;
    b.set("Lit at", "2025-02-27T16:00").await;
    b.set("Out at", "2025-02-27T19:00").await;
    b.fill("Before the burn", "400 g").await;
    b.set("Seen at", "2025-02-27T16:30").await;
    b.fill("Pool across", "700 mm").await;
    b.tap("It was looked at once more").await;
    b.tap("Keep this burn").await;
    b.sees("700 mm is wider than the vessel inside, 70 mm.").await;
    b.fill("Pool across", "30 mm").await;
    b.client.execute(SECOND, vec!["Pool across".into(), "55 mm".into()]).await.unwrap();
    look(&b, &axe, "burn-late-twice", &mut found).await;
    b.tap("Keep this burn").await;
    b.sees("3 h 0 min, not weighed, 2 looks").await;
    b.tap("Write its weight down").await;
    b.fill("After the burn it weighs", "38 g").await;
    b.tap("Keep this weight").await;
    b.sees("38 g is less than the candle weighs without its wax").await;
    b.fill("After the burn it weighs", "385 g").await;
    look(&b, &axe, "burn-weighed-later", &mut found).await;
    b.tap("Keep this weight").await;
    b.sees("3 h 0 min, 0.53 oz, 2 looks").await;
    b.sees("Burn rate: 5.00 g an hour, give or take 0.00.").await;
    // With its weight, which was an entry of its own; and all of it comes back with one tap, also after a start.
    let gone = "return !document.body.innerText.includes('3 h 0 min, 0.53 oz')";
    b.tap("Take this burn back").await;
    b.waits("no earlier burn", gone, vec![]).await;
    b.saved().await;
    b.client.refresh().await.unwrap();
    b.sees("was taken back, with all").await;
    look(&b, &axe, "burn-taken-back", &mut found).await;
    b.tap("Bring this burn back").await;
    b.sees("3 h 0 min, 0.53 oz, 2 looks").await;
    assert!(!b.shows("was taken back, with all").await);
    b.tap("Take this burn back").await;
    b.waits("no earlier burn", gone, vec![]).await;
    b.sees("2 h 0 min, 0.35 oz, 1 look").await;
    for page in ["bench/burn/new", "bench/burn/limits", "bench/burn/wicks/new"] {
        b.room(page).await;
        look(&b, &axe, &page.replace('/', "-"), &mut found).await;
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.saved().await;
    assert_eq!(b.errors(GONE).await, Vec::<String>::new());
    b.end().await;
}

/// What is picked as the wick.
const WICK: &str = r#"
const label = [...document.querySelectorAll("label")].find((l) => l.innerText.trim() === "Wick");
return label?.control?.value || null;
"#;

/// Types into the last field of a label.
pub(crate) const SECOND: &str = r#"
const label = [...document.querySelectorAll("label")].filter((l) => l.innerText.startsWith(arguments[0])).at(-1);
label.control.value = arguments[1];
label.control.dispatchEvent(new Event("input", { bubbles: true }));
"#;
