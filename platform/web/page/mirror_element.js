// One mirrored thing as an element: which one, and what it says.

// What a screen reader says of a thing.
const spoken = thing => (thing.value ? `${thing.label}: ${thing.value}` : thing.label) ?? "";

// The kind of element for a thing; another kind needs another element.
export function kindOf(thing) {
  switch (thing.role) {
    case "button": case "tab": case "slider": case "textbox": case "region": return thing.role;
    case "list_item": return thing.acts ? "list_button" : "list_text";
    case "image": return thing.acts ? "button" : "image";
    default: return thing.acts ? "button" : "text";
  }
}

const tags = {
  button: "button", tab: "button", list_button: "button", list_text: "li", slider: "input",
  textbox: "input", text: "p", image: "div", region: "section",
};

export function make(kind, name) {
  const element = document.createElement(tags[kind]);
  element.dataset.name = name;
  if (kind !== "region") element.className = "thing";
  if (element.localName === "button") element.type = "button";
  if (kind === "tab") element.setAttribute("role", "tab");
  if (kind === "image") element.setAttribute("role", "img");
  if (kind === "slider") {
    element.type = "range";
    element.step = "1";
  }
  if (kind === "textbox") {
    element.type = "text";
    element.readOnly = true;
    element.autocomplete = "off";
  }
  return element;
}

// Sets an attribute, or removes it; touches nothing that is right already, because every change is
// news to a screen reader.
function set(element, attribute, value) {
  if (value === null) {
    if (element.hasAttribute(attribute)) element.removeAttribute(attribute);
  } else if (element.getAttribute(attribute) !== value) element.setAttribute(attribute, value);
}

export function fill(element, kind, thing) {
  const words = spoken(thing);
  if (kind === "text" || kind === "list_text") {
    if (element.textContent !== words) element.textContent = words;
    return;
  }
  set(element, "aria-label", kind === "slider" || kind === "textbox" || kind === "region" ? thing.label ?? "" : words);
  if (kind === "region") return;
  set(element, "aria-description", thing.hint || null);
  if (kind === "image") return;
  set(element, "aria-disabled", thing.enabled === false ? "true" : null);
  if (kind === "tab") set(element, "aria-selected", thing.chosen ? "true" : "false");
  else set(element, "aria-current", thing.chosen ? "true" : null);
  if (kind === "slider") fillSlider(element, thing);
  if (kind === "textbox" && element.value !== (thing.value ?? "")) element.value = thing.value ?? "";
}

function fillSlider(element, thing) {
  set(element, "min", String(thing.least ?? 0));
  set(element, "max", String(thing.most ?? 0));
  set(element, "aria-valuetext", thing.value || null);
  const now = String(thing.now ?? 0);
  if (element.dataset.asked === now && element.value === element.dataset.now) return;
  element.value = now;
  element.dataset.asked = now;
  // The browser rounds to whole steps: steps are counted from what it made of it.
  element.dataset.now = element.value;
}
