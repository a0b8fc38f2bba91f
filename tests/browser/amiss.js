// Taps and types on whatever is there, by chance from a seed: as a child with the tablet would. Answers with what it did.
const [seed, steps, done] = arguments;
const WORDS = ["", "0", "-1", "1", "2", "4", "12", "3.5", "1/2", "¾", "2 1/4 oz", "1 lb 3 oz", "1,5 kg", "188F", "70 C", "1 g", "30 g",
  "200 g", "165 F", "8 %", "100 %", "-5%", "50 mm", "3 in", "$12.50", "5 min", "9:30", "99999999999", "1e9", "0.0000001", "∞",
  "1.234.567,8", "2026-11-27", "2026-02-30", "abc", "  ", "<b>x</b>", "💥", "١٢", "a".repeat(400), "H317",
  "Alpha; 10-20 %; Skin Sens. 1B H317"];
// What ends all: it takes the workshop itself away.
const END = /Leave the demo|Remove the demo|Erase|another workshop/i;
let x = seed >>> 0;
const any = (n) => ((x ^= x << 13), (x >>>= 0), (x ^= x >>> 17), (x ^= x << 5), (x >>>= 0), x % n);
const seen = (e) => e.getClientRects().length > 0 && !e.disabled && getComputedStyle(e).visibility !== "hidden" && e.type !== "file";
const wait = (ms) => new Promise((then) => setTimeout(then, ms));
const fire = (e, name) => e.dispatchEvent(new Event(name, { bubbles: true }));
const did = [];
(async () => {
  for (let step = 0; step < steps; step++) {
    const root = document.querySelector("dialog[open]") ?? document;
    const all = [...root.querySelectorAll("a, button, input, select, textarea, summary")].filter((e) => seen(e) && !END.test(e.innerText));
    const here = all.filter((e) => e.closest("#room"));
    const from = here.length > 0 && any(6) > 0 ? here : all;
    const e = from[any(Math.max(from.length, 1))];
    if (!e) {
      location.hash = "pot";
      await wait(100);
      continue;
    }
    let typed = "";
    const name = (e.innerText || e.getAttribute("aria-label") || e.labels?.[0]?.innerText || "").replace(/\s+/g, " ").slice(0, 50);
    did.push(`${location.hash} ${e.tagName} ${name}`);
    if (e.tagName === "SELECT") {
      e.selectedIndex = any(e.options.length);
      typed = e.value;
      fire(e, "change");
    } else if (e.type === "range") {
      e.value = Number(e.min) + (any(1000) / 1000) * (Number(e.max) - Number(e.min));
      fire(e, "input");
    } else if (["text", "search", "number", "textarea", "date", "time", "datetime-local"].includes(e.type)) {
      typed = WORDS[any(WORDS.length)];
      e.focus();
      e.value = typed;
      fire(e, "input");
      if (any(4) === 0) fire(e, "change");
    } else {
      e.click();
    }
    if (typed) did[did.length - 1] += ` = ${typed.slice(0, 40)}`;
    await wait([0, 5, 20, 60, 150][any(5)]);
  }
  const wide = document.documentElement.scrollWidth > innerWidth + 1;
  const empty = (document.querySelector("#room")?.innerText ?? "").trim().length < 10;
  done([did, wide ? "wider than the page" : empty ? "nothing on the page" : null]);
})();
