// Starts the app and keeps it offline. What it tells the views is written down in DEVELOPERS.md.
const page = document.documentElement;
const tell = (name, detail) => window.dispatchEvent(new CustomEvent(`potside:${name}`, { detail }));

const shell = document.getElementById("shell");

// On the first start laying out the storage takes longer than loading the module: so both at once. The module opens it
// anew, as it does where this fails; the name, the layout's number and the store are those of src/keep. Where it has to be
// laid out there was no book: only the storage itself knows that for certain.
try {
  const asked = indexedDB.open("potside", 1);
  const told = (book) => {
    page.dataset.book ??= book;
    tell("book");
  };
  asked.onupgradeneeded = () => {
    asked.result.createObjectStore("entries");
    told("none");
  };
  asked.onsuccess = () => {
    asked.result.close();
    told("some");
  };
  asked.onerror = () => told("some");
} catch {
  // Storage is denied: the module says so.
}
// Where nothing is kept, src/keep/prefs.rs asks this. The first answer takes long: so it is made while the module is coming
// or, where nothing of Potside is kept and the first screen shows no numbers, once that screen is there.
const warm = () => {
  try {
    if (!localStorage.getItem("potside.prefs")) (0.5).toLocaleString(navigator.language);
  } catch {}
};

// Puts the shell in the place of the app, with a sentence.
function stop(sentence, error) {
  console.error(error);
  shell.dataset.failed = "";
  shell.querySelector("#shell-note").textContent = sentence;
  document.getElementById("app").replaceChildren(shell);
  delete page.dataset.started;
}

async function start() {
  const wasm = document.getElementById("potside-wasm").href;
  let code, init;
  try {
    // Compiled while its script is on the way. Where that cannot be done, as from a host that names its type wrongly, the
    // script is given the address and tries by itself.
    code = window.WebAssembly?.compileStreaming?.(fetch(wasm)).catch(() => wasm);
    const module = import(document.getElementById("potside-js").href);
    // Asked after both have begun: the browser's answer is waited for.
    try {
      if (localStorage.getItem("potside.device") !== null) warm();
    } catch {}
    init = (await module).default;
  } catch (error) {
    return stop("Potside's files did not arrive. Check the connection, then reload the page.", error);
  }
  try {
    await init({ module_or_path: (await code) ?? wasm });
    shell.remove();
    page.dataset.started = "";
  } catch (error) {
    stop(
      "Potside could not start. It needs a browser from 2024 or newer: Chrome, Edge or Firefox, or Safari on iPadOS 17.4. " +
        "If yours is, reload the page. What you have saved is still there.",
      error,
    );
  }
}

// After a fault inside the module nothing in it can be trusted: say so at once and let nobody go on tapping.
function watch(error) {
  if (error instanceof WebAssembly.RuntimeError && "started" in page.dataset) {
    stop("Potside has stopped because of a fault of its own. What was marked as saved is saved. Reload the page to go on.", error);
  }
}
window.addEventListener("error", (event) => watch(event.error));
window.addEventListener("unhandledrejection", (event) => watch(event.reason));

function cannotKeep(sentence) {
  page.dataset.offline = "cannot";
  page.dataset.offlineReason = sentence;
  tell("cannot-keep", sentence);
}

async function keep() {
  if (!window.isSecureContext) {
    return cannotKeep("Opened this way, Potside cannot keep itself for use without a connection: that needs an https address, or localhost.");
  }
  if (!navigator.serviceWorker) {
    return cannotKeep("This browser does not let Potside keep itself for use without a connection. A private window is the usual reason: open it in an ordinary one.");
  }
  const workers = navigator.serviceWorker;
  let applying = false;
  workers.addEventListener("controllerchange", () => {
    if (applying) location.reload();
  });
  try {
    const registration = await workers.register("./sw.js", { updateViaCache: "none" });
    const ready = () => {
      page.dataset.offline = "ready";
      tell("offline-ready");
    };
    const waiting = () => {
      page.dataset.update = "ready";
      tell("update-ready");
    };
    const follow = (worker) => {
      const first = !registration.active;
      worker.addEventListener("statechange", () => {
        if (worker.state === "installed" && !first) waiting();
        if (worker.state === "activated") ready();
        if (worker.state === "redundant" && first) {
          cannotKeep("Potside could not save all of its files for use without a connection. It works now; reload the page to try again.");
        }
      });
    };
    if (registration.active) ready();
    if (registration.waiting) waiting();
    if (registration.installing) follow(registration.installing);
    registration.addEventListener("updatefound", () => follow(registration.installing));
    // The user's word: the waiting version takes over, then this page is loaded again, once.
    window.addEventListener("potside:apply-update", () => {
      applying = true;
      if (registration.waiting) registration.waiting.postMessage("apply");
      else location.reload();
    });
    // A tablet's page may stay open for weeks: look for a new version when it comes back to the front.
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible" && navigator.onLine) registration.update().catch(() => {});
    });
  } catch (error) {
    console.warn(error);
    cannotKeep("Potside could not save itself for use without a connection. It works now; reload the page to try again.");
  }
}

// What keeps it offline begins once the first screen has been painted: it would take its time from that.
start().then(() =>
  setTimeout(() => {
    warm();
    keep();
  }, 100),
);
