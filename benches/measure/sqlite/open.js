// A book opened from SQLite: notes when the page was told that all of it is read.
import { sqlite } from "./page.js";

const ask = sqlite();
const began = performance.now();
const said = await ask({ do: "open", name: "years", pragmas: [] });
const [lines, letters] = await ask({ do: "read" });
window.read = { at: performance.now(), began, lines, letters, said };
