// Where mirrored elements stand: in the document (reading order, regions, lists) and in the window.

const groups = new Map();  // "parent/kind/number" -> the <ul> or tablist around consecutive ones

// Puts every element where the order wants it. order lists parents before what lies in them.
export function arrange(root, order, things) {
  const inside = new Map([["", []]]);
  for (const name of order) {
    const entry = things.get(name);
    if (!entry) continue;
    if (entry.kind === "region") inside.set(name, []);
    const parent = entry.thing.parent && inside.has(entry.thing.parent) && entry.thing.parent !== name ? entry.thing.parent : "";
    inside.get(parent).push(entry);
  }
  const used = new Set();
  for (const [parent, entries] of inside) {
    const container = parent ? things.get(parent).element : root;
    const own = parent ? [] : [...root.children].filter(child => child.id);
    line(container, [...own, ...grouped(parent, entries, things, used)]);
  }
  for (const [key, group] of groups) {
    if (used.has(key)) continue;
    group.remove();
    groups.delete(key);
  }
}

// Consecutive list items share a list, consecutive tabs a tablist.
function grouped(parent, entries, things, used) {
  const out = [];
  let open = null;
  const close = () => {
    if (open) line(open.group, open.members);
    open = null;
  };
  for (const { kind, element } of entries) {
    const wrap = kind === "tab" ? "tablist" : kind.startsWith("list_") ? "list" : "";
    if (open && open.wrap !== wrap) close();
    if (!wrap) {
      out.push(element);
      continue;
    }
    if (!open) {
      open = { wrap, members: [], group: groupFor(parent, wrap, things, used) };
      out.push(open.group);
    }
    open.members.push(kind === "list_button" ? itemAround(element) : element);
  }
  close();
  return out;
}

function groupFor(parent, wrap, things, used) {
  let number = 0;
  while (used.has(`${parent}/${wrap}/${number}`)) ++number;
  const key = `${parent}/${wrap}/${number}`;
  used.add(key);
  let group = groups.get(key);
  if (!group) {
    group = document.createElement(wrap === "list" ? "ul" : "div");
    // Some browsers forget that an unmarked list is one.
    group.setAttribute("role", wrap);
    groups.set(key, group);
  }
  const label = things.get(parent)?.thing.label ?? "";
  if (wrap === "tablist" && group.getAttribute("aria-label") !== label) group.setAttribute("aria-label", label);
  return group;
}

function itemAround(element) {
  if (element.parentNode?.localName === "li") return element.parentNode;
  const item = document.createElement("li");
  item.append(element);
  return item;
}

// Makes these the children of a container, in this order, without moving the one that has the focus
// in it (moving an element takes the focus away, which a screen reader would say).
function line(container, wanted) {
  const wants = new Set(wanted);
  for (const child of [...container.children]) if (!wants.has(child)) child.remove();
  const fixed = wanted.find(node => node.parentNode === container && node.contains(document.activeElement));
  let cursor = container.firstElementChild;
  for (const node of wanted) {
    while (node === fixed && cursor !== fixed) {
      const next = cursor.nextElementSibling;
      container.append(cursor);
      cursor = next;
    }
    if (node === cursor) cursor = cursor.nextElementSibling;
    else container.insertBefore(node, cursor);
  }
}

// Puts an element at its box, kept within the window and at least one CSS pixel large: what is
// scrolled away waits at the edge, and can still be reached and read.
export function place(element, thing) {
  if (element.localName === "section" || !thing.box) return;
  const [x0, y0, x1, y1] = thing.box;
  const [left, width] = clamped(x0, x1, document.documentElement.clientWidth);
  const [top, height] = clamped(y0, y1, document.documentElement.clientHeight);
  const style = element.style;
  style.left = `${left}px`;
  style.top = `${top}px`;
  style.width = `${width}px`;
  style.height = `${height}px`;
}

function clamped(from, to, limit) {
  const start = Math.max(0, Math.min(from, limit - 1));
  return [start, Math.max(1, Math.min(to, limit) - start)];
}
