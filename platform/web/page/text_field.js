// The text field being typed in: a visible input over the drawn one, so that the phone's keyboard,
// composition, accents, autocorrect and paste work as everywhere. Its value is the truth: all of it
// goes to the program at every change.
import { tell } from "./line.js";
import { giveBack, lend, rearranging } from "./mirror.js";

let name = "";       // of the field, "" when nothing is typed in
let element = null;
let composing = false;

// text: {"name", "label", "text", "box", "size", "ink", "paper"} or "" for none.
export function field(text) {
  if (!text) return leave();
  const told = JSON.parse(text);
  if (told.name !== name) {
    if (name) leave();
    enter(told);
  }
  dress(told);
  // What the person has typed is newer than what the program tells of it.
  if (!composing && element.value !== told.text) write(told.text);
  if (document.activeElement !== element && document.hasFocus()) element.focus({ preventScroll: true });
}

function enter(told) {
  element = lend(told);
  name = told.name;
  composing = false;
  element.readOnly = false;
  element.classList.add("typed");
  element.enterKeyHint = told.name === "search" ? "search" : "done";
  element.autocapitalize = told.name === "search" ? "none" : "sentences";
  element.value = told.text;
  // Phones open their keyboard only for a focus within the touch itself.
  element.focus({ preventScroll: true });
  element.setSelectionRange(element.value.length, element.value.length);
}

function write(text) {
  const at = element.selectionStart;
  element.value = text;
  element.setSelectionRange(Math.min(at, text.length), Math.min(at, text.length));
}

function dress(told) {
  const [x0, y0, x1, y1] = told.box, style = element.style;
  style.left = `${x0}px`;
  style.top = `${y0}px`;
  style.width = `${Math.max(1, x1 - x0)}px`;
  style.height = `${Math.max(1, y1 - y0)}px`;
  // A smaller font makes phones zoom into the page.
  style.fontSize = `${Math.max(16, told.size || 16)}px`;
  style.color = told.ink;
  style.caretColor = told.ink;
  style.backgroundColor = told.paper;
  if (element.getAttribute("aria-label") !== told.label) element.setAttribute("aria-label", told.label ?? "");
}

function leave() {
  if (!name) return;
  const left = element;
  name = "";
  element = null;
  composing = false;
  left.readOnly = true;
  left.classList.remove("typed");
  for (const property of ["fontSize", "color", "caretColor", "backgroundColor"]) left.style[property] = "";
  giveBack();
  // A finger's keyboard closes with the focus; with a keyboard of keys, Tab goes on from here.
  if (document.activeElement === left && matchMedia("(pointer: coarse)").matches) left.blur();
}

const ours = event => element !== null && event.target === element;

const root = document.getElementById("mirror");
root.addEventListener("input", event => { if (ours(event)) tell("edit", element.value); });
root.addEventListener("compositionstart", event => { if (ours(event)) composing = true; });
root.addEventListener("compositionend", event => {
  if (!ours(event)) return;
  composing = false;
  tell("edit", element.value);
});
root.addEventListener("keydown", event => {
  if (!ours(event)) return;
  // Enter and Escape of a composition belong to it.
  if (event.isComposing || event.keyCode === 229) return;
  if (event.key !== "Enter" && event.key !== "Escape") return;
  event.preventDefault();
  event.stopPropagation();
  tell(event.key === "Enter" ? "accept" : "cancel");
});
root.addEventListener("focusout", event => {
  if (ours(event) && document.hasFocus() && !rearranging()) tell("accept");
});

// A touch or click on the drawing ends typing. The browser's own focus change, which follows a mouse
// button or comes late after a touch, would take the focus from a field that this very tap has opened.
const canvas = document.getElementById("canvas");
canvas.addEventListener("pointerdown", () => {
  if (document.activeElement !== document.body) document.activeElement?.blur?.();
});
canvas.addEventListener("mousedown", event => event.preventDefault());
