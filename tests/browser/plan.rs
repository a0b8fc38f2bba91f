//! From an order through the plan of the pours to what is sent and recalled, by touch, from an empty app, offline.

use crate::browser::{Browser, Engine, GONE};
use crate::flow::{finish, for_sale, from_the_device, own_workshop, tick_all};
use crate::look::{axe, look};
use crate::pour::serve;
use crate::stores::came;

/// Taps the first thing that CSS selects, for what has no words of its own.
async fn first(b: &Browser, selector: &str) {
    let script =
        "const e = document.querySelector(arguments[0]); if (!e) return false; e.click(); return true";
    b.waits(selector, script, vec![serde_json::json!(selector)]).await;
}

/// An order wanted in three days.
async fn order(b: &Browser, who: &str, number: &str) {
    b.room("shelf/order/new").await;
    b.sees("Keep this order").await;
    b.pick("For", who).await;
    b.fill("Orchard jar", number).await;
    let later = "return new Date(Date.now() + 3 * 864e5).toISOString().slice(0, 10)";
    let day = b.client.execute(later, vec![]).await.unwrap();
    b.set("Wanted on", day.as_str().unwrap()).await;
    b.tap("Keep this order").await;
    b.sees(&["Short ", number].concat()).await;
}

/// Nothing goes to the worker any more, and what is to be done at once waits until it is let go; by the clock every batch
/// takes so long that the next has to wait.
const HOLD: &str = "
    const [send, set, now] = [Worker.prototype.postMessage, window.setTimeout, Date.now];
    window.asked = [];
    window.held = [];
    let time = now();
    Worker.prototype.postMessage = (job) => { asked.push(JSON.parse(job[1])); };
    window.setTimeout = (then, pause, ...more) => pause === 0 ? held.push(then) : set(then, pause, ...more);
    Date.now = () => time += 10;
    window.letGo = () => held.splice(0).forEach((then) => then());
    window.letAllGo = () => { let times = 0; for (; held.length > 0; times += 1) letGo(); return times; };
    window.stopHolding = () => {
        letAllGo();
        Worker.prototype.postMessage = send;
        window.setTimeout = set;
        Date.now = now;
    };";

/// On the page of the plan: what is asked is put together a piece at a time, anew after a change in the middle of it, and
/// not at all for who has left; and who leaves while better plans are looked for has that given up.
async fn asked_in_pieces(b: &Browser) {
    let number = async |script: &str| b.client.execute(script, vec![]).await.unwrap().as_u64().unwrap();
    let goods = "return asked.filter((job) => job.goods.length > 0).length";
    // What is held is counted once the change is shown: before that, something else may wait.
    let changed = async || {
        let goals = "return document.querySelector('.goals').innerText";
        let before = b.client.execute(goals, vec![]).await.unwrap();
        first(b, ".goals button").await;
        let shown = "return document.querySelector('.goals').innerText !== arguments[0] && held.length > 0";
        b.waits("begun anew", shown, vec![before]).await;
    };
    b.client.execute(HOLD, vec![]).await.unwrap();
    changed().await;
    for _ in 0..3 {
        b.client.execute("letGo()", vec![]).await.unwrap();
    }
    assert_eq!(number(goods).await, 0, "it is not put together yet");
    changed().await;
    // Four sizes of batch, the ledger, the rest.
    let pieces = number("return letAllGo()").await;
    assert!(pieces >= 6, "put together in {pieces} pieces");
    assert_eq!(number(goods).await, 1, "what was begun before the change is not asked");
    let counts_first = b.client.execute("return asked[0].goals[0]", vec![]).await.unwrap();
    assert_eq!(counts_first, "Short", "and what is asked is of after it");
    b.room("shelf").await;
    assert_eq!(number("return asked.at(-1).goods.length").await, 0, "the search is given up");
    b.room("shelf/plan").await;
    b.waits("begun", "return held.length > 0", vec![]).await;
    b.client.execute("letGo(); letGo()", vec![]).await.unwrap();
    b.room("shelf").await;
    number("return letAllGo()").await;
    assert_eq!(number(goods).await, 1, "who has left asks nothing");
    b.client.execute("stopHolding()", vec![]).await.unwrap();
}

#[tokio::test]
async fn an_order_is_planned_poured_finished_sent_and_recalled() {
    let host = serve("/");
    let address = host.address();
    let b = Browser::start(Engine::Chromium, "plan").await;
    from_the_device(&b, host).await;
    own_workshop(&b).await;
    came(&b, "Plain wax", "W-1", "12").await;
    came(&b, "Apple", "A-7", "40").await;
    b.room("shelf/customer/new").await;
    b.fill("Name", "North Shop").await;
    b.fill("Address and the like", "7 Harbour Row").await;
    b.tap("Keep this customer").await;
    b.sees("North Shop").await;
    for_sale(&b, &[("To have in store", "1"), ("Days until it ships", "0")]).await;
    order(&b, "North Shop", "3").await;
    b.sees("Poured today, solid tomorrow.").await;
    order(&b, "Nobody named", "20").await;
    b.saved().await;

    // 1000 g of wax are there: four candles take 667 g, twenty far more.
    let (axe, mut found) = (axe(), Vec::new());
    b.room("shelf").await;
    b.tap("What to pour next").await;
    b.sees("4 × Orchard jar").await;
    b.sees("3 for North Shop (wanted ").await;
    b.sees(" and 1 to have in store.").await;
    b.sees("4 × Orchard jar: poured today, can ship ").await;
    b.sees("; 3 wanted ").await;
    b.sees("20 × Orchard jar, 20 not there at all.").await;
    b.sees("but the stores lack").await;
    b.sees("No plan is better: that is proven.").await;
    look(&b, &axe, "shelf-plan", &mut found).await;
    for width in [1024, 768, 390] {
        b.size(width, 768).await;
        let show =
            "document.querySelector('.calendar').scrollIntoView({ block: 'start', behavior: 'instant' })";
        b.client.execute(show, vec![]).await.unwrap();
        b.shot(&format!("shelf-calendar-{width}")).await;
    }
    b.size(1024, 768).await;

    // The shopping list says what the best pours would take beyond that, and does so only once it knows.
    let told = "const seen = window.seen = []; new MutationObserver(() => {
        const list = document.querySelector('[aria-labelledby=stores-buy]');
        if (list && seen.at(-1) !== list.innerText) seen.push(list.innerText);
    }).observe(document.body, { subtree: true, childList: true, characterData: true });";
    b.client.execute(told, vec![]).await.unwrap();
    b.room("stores").await;
    b.sees(" more for 24 × Orchard jar").await;
    b.sees("would take beyond what is here.").await;
    let seen = b.client.execute("return window.seen", vec![]).await.unwrap();
    let at_first = seen[0].as_str().unwrap();
    assert!(
        at_first.contains("Looking for what the next pours lack") && !at_first.contains(" more for "),
        "{seen}"
    );
    look(&b, &axe, "stores-lack", &mut found).await;
    b.room("shelf/plan").await;
    b.sees("4 × Orchard jar").await;

    // What is held on to stands, and the rest is planned anew.
    b.tap("More or fewer").await;
    b.sees("So many are poured in any case").await;
    b.fill("How many", "5").await;
    b.tap("Hold on to so many").await;
    b.sees("5 × Orchard jar").await;
    b.sees("You hold on to it.").await;
    // It is kept in the book: the app may be left meanwhile.
    b.saved().await;
    b.client.refresh().await.unwrap();
    b.sees("5 × Orchard jar").await;
    b.sees("You hold on to it.").await;
    b.tap("Let it go").await;
    b.sees("4 × Orchard jar").await;
    b.tap("Not today").await;
    b.sees("No pour would help.").await;
    b.sees("You left it out for today.").await;
    b.saved().await;
    b.client.refresh().await.unwrap();
    b.sees("You left it out for today.").await;
    b.tap("Plan it again").await;
    b.sees("4 × Orchard jar").await;
    // The store before the orders.
    b.sees("in the next. Fewest candles late").await;
    first(&b, ".goals button").await;
    b.sees("in the next. Least short").await;
    b.saved().await;

    asked_in_pieces(&b).await;
    b.room("shelf/plan").await;
    b.tap("Pour it").await;
    b.sees("Start this pour").await;
    b.sees("667").await;
    b.tap("Start this pour").await;
    b.sees("From lot W-1").await;

    // While it is on it counts: as candles to come, and what it takes as taken.
    b.room("shelf").await;
    b.sees("Short 3 candles, being poured; it goes ").await;
    b.sees("Being poured, can ship ").await;
    look(&b, &axe, "shelf-poured", &mut found).await;
    b.tap("North Shop").await;
    b.sees("3 being poured").await;
    look(&b, &axe, "shelf-order-poured", &mut found).await;
    b.room("shelf/plan").await;
    b.sees("No pour would help.").await;
    b.sees("Its candles count here as candles to come").await;
    look(&b, &axe, "shelf-plan-poured", &mut found).await;
    b.room("stores").await;
    b.sees("of it for the pour that is on").await;
    look(&b, &axe, "stores-poured", &mut found).await;
    b.room("pot").await;
    b.sees("From lot W-1").await;
    finish(&b).await;
    b.sees("Vessels filled 4").await;

    b.room("shelf").await;
    first(&b, ".list a[href^=\"#shelf/batch\"]").await;
    b.sees("The wax is solid through").await;
    tick_all(&b).await;
    b.room("shelf").await;
    b.tap("North Shop").await;
    b.tap("Send 3 candles").await;
    b.sees("All of this order is sent.").await;
    b.saved().await;

    // The fragrance turns out bad: who has it, and what stands here is not sent.
    b.room("stores").await;
    b.tap("Apple").await;
    b.tap("Lot A-7").await;
    b.tap("Put on hold").await;
    b.fill("Why", "It smells of solvent").await;
    b.tap("Keep it").await;
    b.sees("This lot is on hold").await;
    b.tap("Recall sheet").await;
    b.sees("Candles with it in them: 4, of 1 batch.").await;
    b.sees("North Shop").await;
    b.sees("7 Harbour Row").await;
    b.sees("On the shelf: 1.").await;
    look(&b, &axe, "plan-recall", &mut found).await;
    b.room("shelf").await;
    b.sees("1 candle on hold: not kept for orders, not to be sent.").await;
    look(&b, &axe, "shelf-held", &mut found).await;
    first(&b, ".list a[href^=\"#shelf/order\"]").await;
    b.sees("a lot that is in them is on hold").await;
    look(&b, &axe, "shelf-order-held", &mut found).await;
    b.saved().await;

    // Neither name nor address went anywhere: they stand in no address of a page, and in nothing that was asked for.
    let been = "return [...navigation.entries().map((e) => e.url), ...performance.getEntriesByType('resource').map((e) => e.name)].join(' ')";
    let been = b.client.execute(been, vec![]).await.unwrap().to_string();
    let asked = b.log("performance").await.iter().map(|l| l["message"].to_string()).collect::<String>();
    assert!(been.contains("#stores/lot/") && asked.contains("Network."), "{been}");
    for named in ["North", "Harbour"] {
        assert!(!been.contains(named) && !asked.contains(named), "{named} is in an address");
    }

    // Where there is no worker, the page itself looks for the pours.
    b.open("about:blank").await;
    b.open(&address).await;
    b.sees("Saved").await;
    b.client
        .execute("window.Worker = class { constructor() { throw new Error('none'); } }", vec![])
        .await
        .unwrap();
    b.room("shelf/plan").await;
    b.sees("What cannot be met, and why").await;
    b.sees("No plan is better: that is proven.").await;
    assert_eq!(b.errors(GONE).await, Vec::<String>::new());
    assert!(found.is_empty(), "{}", found.join("\n"));
    b.end().await;
}
