// The mirror: the things of the drawing as real elements, for assistive technology, the keyboard and
// tests. Elements are kept by name and changed in place, so that focus stays where it is.
import { tell } from "./line.js";
import { arrange, place } from "./mirror_order.js";
import { fill, kindOf, make } from "./mirror_element.js";

const root = document.getElementById("mirror");
const live = document.getElementById("live");

const things = new Map();  // name -> {thing, kind, element}
let order = [];
let typed = "";            // the name of the text field being typed in: text_field.js has its element
let updating = false;      // focus moves that are our own doing are not told

// text: {"language", "order", "things", "live"}, see carriageway's drawing list.
export function mirror(text) {
  const told = JSON.parse(text);
  const focused = document.activeElement?.closest?.("#mirror [data-name]")?.dataset.name ?? "";
  updating = true;
  try {
    if (told.language) document.documentElement.lang = told.language;
    let moved = Boolean(told.order);
    for (const thing of told.things ?? []) moved = take(thing) || moved;
    if (told.order) keepOnly(told.order);
    if (moved) arrange(root, order, things);
    refocus(focused);
  } finally {
    updating = false;
  }
  if (told.live) announce(told.live);
}

// Takes one thing in; answers whether elements have to be put in order again.
function take(thing) {
  const known = things.get(thing.name), kind = kindOf(thing);
  const same = known?.kind === kind;
  const entry = same ? known : { kind, element: make(kind, thing.name) };
  const moved = !same || known.thing.parent !== thing.parent;
  if (known && !same) known.element.remove();
  entry.thing = thing;
  things.set(thing.name, entry);
  if (thing.name !== typed) refresh(entry);
  return moved;
}

function refresh(entry) {
  fill(entry.element, entry.kind, entry.thing);
  place(entry.element, entry.thing);
}

function keepOnly(names) {
  order = names.includes(typed) || !typed ? names : [...names, typed];
  const wanted = new Set(order);
  for (const [name, entry] of things) {
    if (wanted.has(name)) continue;
    entry.element.remove();
    things.delete(name);
  }
}

// An element that had to be moved or made anew loses the focus; a thing that is gone gives it up.
function refocus(name) {
  if (!name) return;
  const element = things.get(name)?.element;
  if (document.activeElement === element) return;
  element?.focus({ preventScroll: true });
  if (document.activeElement !== element) tell("focus", "");
}

// The same words twice are two announcements, which a reader only notices when the text changes.
function announce(words) {
  live.textContent = live.textContent === words ? `${words}\u00a0` : words;
}

// The element that the field of this name is typed into, made here if the program named it first.
export function lend(field) {
  if (typed && typed !== field.name) giveBack();
  typed = field.name;
  const known = things.get(field.name);
  if (known?.kind === "textbox") return known.element;
  take({ parent: known?.thing.parent ?? "", role: "textbox", name: field.name, label: field.label, value: field.text, box: field.box, enabled: true });
  if (!order.includes(field.name)) order = [...order, field.name];
  updating = true;
  arrange(root, order, things);
  updating = false;
  return things.get(field.name).element;
}

// Whether a focus that goes is the mirror's own doing.
export const rearranging = () => updating;

// Typing has ended: the element is a mirrored thing again.
export function giveBack() {
  const entry = things.get(typed);
  typed = "";
  if (entry) refresh(entry);
}

root.addEventListener("click", event => {
  const element = event.target.closest("[data-name]");
  if (!element || element.dataset.name === typed || element.getAttribute("aria-disabled") === "true") return;
  if (element.localName === "button" || element.localName === "input") tell("act", element.dataset.name);
});

root.addEventListener("focusin", event => {
  const name = event.target.dataset?.name;
  if (name && !updating) tell("focus", name);
});

root.addEventListener("focusout", event => {
  // A window that loses the focus keeps its focused element.
  if (updating || !document.hasFocus() || root.contains(event.relatedTarget)) return;
  tell("focus", "");
});

// Keys that the browser makes something of at the focused element, so that they must not also reach
// the program's own listener at the window.
root.addEventListener("keydown", event => {
  const name = event.target.dataset?.name;
  if (!name || name === typed || event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.target.localName === "button") {
    if (event.key === "Enter" || event.key === " ") event.stopPropagation();
    return;
  }
  const entry = things.get(name);
  const slider = entry?.kind === "slider", steps = slider ? stepsOf(event) : 0;
  const taken = event.key === "Enter" || (slider && /^(Arrow|Page|Home|End)/.test(event.key));
  if (!taken) return;
  event.preventDefault();
  event.stopPropagation();
  if (entry.element.getAttribute("aria-disabled") === "true") return;
  if (steps) tell("step", name, steps);
  else if (event.key === "Enter" && !event.repeat) tell("act", name);
});
root.addEventListener("keyup", event => {
  if (event.target.localName === "button" && (event.key === "Enter" || event.key === " ")) event.stopPropagation();
});

function stepsOf(event) {
  const up = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key] ?? 0;
  return up ? up * (event.shiftKey ? 10 : 1) : { PageUp: 10, PageDown: -10 }[event.key] ?? 0;
}

// Assistive technology moves a slider by its value.
root.addEventListener("input", event => {
  const entry = things.get(event.target.dataset?.name);
  if (entry?.kind !== "slider") return;
  const steps = Math.max(-20, Math.min(20, Math.round(Number(entry.element.value) - Number(entry.element.dataset.now))));
  // The program says where it stands; until then it hasn't moved.
  entry.element.value = entry.element.dataset.now;
  if (steps && entry.element.getAttribute("aria-disabled") !== "true") tell("step", entry.thing.name, steps);
});
