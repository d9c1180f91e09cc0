// Puts the page together: finds out what this tab may do, reads the library, starts the program.
import { arrive, ended, endSplash } from "./arrival.js";
import { awake } from "./awake.js";
import { copy, give, pick, share, useFiles, watchDrops } from "./files.js";
import { callable, connect, stop, tell, waits } from "./line.js";
import { mirror } from "./mirror.js";
import { keepOffline, update } from "./offline.js";
import { OneTab } from "./one_tab.js";
import { Store } from "./store.js";
import { watchSurface } from "./surface.js";
import { field } from "./text_field.js";
import { afterFirstTurn, due, later } from "./turns.js";

const LIBRARY = "/library/library.db";
const FLUSH = 4000;  // ms for the last edits to reach the store before a reload

const id = `${Date.now()} ${Math.random()}`;
const store = new Store(id);
const tab = new OneTab(flush, () => tell("reader"));
let module = null;
let unkept = false;  // the last keep did not succeed
let keeping = 0;     // keeps under way

// Tells the program to hand over what it hasn't kept yet, and settles when the store has it.
async function flush() {
  tell("hidden");
  await store.quiet();
}

async function keep() {
  let outcome = "another";
  ++keeping;
  if (tab.writes) {
    try {
      outcome = await store.keep(module.FS.readFile(LIBRARY));
    } catch (fault) {
      outcome = `failed: ${fault?.message ?? fault}`;
    }
    if (outcome === "another") tab.lose();
    unkept = outcome !== "";
  }
  if (outcome === "another") outcome = `failed: ${window.carriagewayWord("another_tab")}`;
  --keeping;
  return tell("kept", outcome);
}

// What is still going on by itself, as words; none of them: the page rests until something happens.
function busy() {
  const all = {
    "the splash": !ended(), "a turn": due(), "something to tell": waits(), "the store": keeping > 0,
    "the program": module._carriageway_rests() !== 1,
  };
  return Object.keys(all).filter(each => all[each]).join(", ");
}

// For tests, and for whoever wants to know: the things of the last frame and how many frames there were.
function expose() {
  window.carriageway = {
    busy,
    frames: () => module._carriageway_frames(),
    saved: () => module._carriageway_saved() === 1,
    things: () => {
      const at = module._carriageway_things();
      const text = module.UTF8ToString(at);
      module._free(at);
      return JSON.parse(text);
    },
  };
}

function heading(text) {
  document.title = text;
  document.getElementById("heading").textContent = text;
}

// The only places where edits would be lost without a word: what the store has refused, unless the
// person has chosen to leave, and those to a job from a link that nobody has kept.
let leaving = false;
window.addEventListener("beforeunload", event => {
  const refused = unkept && tab.writes && !leaving;
  if (refused || module?._carriageway_unkept?.()) event.preventDefault();
});

async function renew() {
  await Promise.race([flush(), new Promise(resolve => setTimeout(resolve, FLUSH))]);
  leaving = true;
  update();
}

// What the program calls. surface and dark are added by surface.js.
const page = {
  mirror: callable(mirror),
  field: callable(field),
  keep: callable(keep),
  title: callable(heading),
  awake: callable(awake),
  later: callable(later),
  pick: callable(pick),
  give: callable(give),
  copy: callable(copy),
  share: callable(share),
  takeOver: callable(() => tab.takeOver()),
  update: callable(renew),
  persist: callable(() => { navigator.storage?.persist?.().catch(() => {}); }),
  can: callable(what => what === "share" && typeof navigator.share === "function"),
  linkBase: callable(() => location.origin + location.pathname + location.search),
  linkTaken: callable(() => history.replaceState(history.state, "", location.pathname + location.search)),
};

function watchPage() {
  const hide = () => tell("hidden");
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "hidden") hide(); });
  window.addEventListener("pagehide", hide);
  document.addEventListener("freeze", hide);
  // A page brought back from the browser's memory may have lost its lock to another tab meanwhile.
  window.addEventListener("pageshow", event => { if (event.persisted) location.reload(); });
  window.addEventListener("hashchange", tellLink);
  // Long presses and right clicks belong to the program, except in the field being typed in.
  document.addEventListener("contextmenu", event => { if (!event.target.closest?.(".typed")) event.preventDefault(); });
  // Trackpads pinch by wheel events with Ctrl; some browsers by gestures of their own.
  document.addEventListener("wheel", event => { if (event.ctrlKey) event.preventDefault(); }, { passive: false });
  for (const kind of ["gesturestart", "gesturechange"]) document.addEventListener(kind, event => event.preventDefault());
}

function tellLink() {
  if (location.hash.length > 1) tell("link", location.hash.slice(1));
}

function fault(reason) {
  window.carriagewayProblem("stopped_title", "stopped", reason?.message || String(reason));
}

async function start() {
  window.carriagewayStarted = true;
  watchSurface(page);
  watchDrops();
  watchPage();
  const library = tab.begin().then(writes => store.take(writes));
  const arrived = Promise.all([import("./carriageway.js"), arrive("carriageway.wasm")]);
  let parts;
  try {
    parts = await arrived;
  } catch (reason) {
    console.error(reason);
    return window.carriagewayProblem("arrival_title", "arrival", reason.message);
  }
  const [[{ default: factory }, wasm], bytes] = [parts, await library];
  tell(tab.writes ? "writer" : "reader");
  tellLink();
  afterFirstTurn(() => {
    endSplash();
    keepOffline();
  });
  try {
    await factory({
      page,
      canvas: document.getElementById("canvas"),
      instantiateWasm(imports, done) {
        WebAssembly.instantiate(wasm, imports).then(instance => done(instance, wasm), stop);
        return {};
      },
      preRun: [made => {
        module = made;
        useFiles(made.FS);
        for (const folder of ["/library", "/incoming"]) if (!made.FS.analyzePath(folder).exists) made.FS.mkdir(folder);
        if (bytes) made.FS.writeFile(LIBRARY, bytes);
      }],
      onAbort: stop,
    });
    connect(module, fault);
    expose();
  } catch (reason) {
    console.error(reason);
    fault(reason);
  }
}

if (!window.carriagewayCannot) start();
