// What assistive technology gets: the browser's own accessibility tree holds the drawing list's
// things with their verdicts and values, and the demonstration can be put right by role and name.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { createRequire } from "node:module";
import { isDeepStrictEqual } from "node:util";
import { COARSE, inBrowser, until } from "./driver.mjs";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const stage = inBrowser();

const spoken = thing => thing.label + (thing.value ? `: ${thing.value}` : "");

// What a thing must be in the accessibility tree (roles as Chromium names them, after WAI-ARIA).
function expected(thing) {
  switch (thing.role) {
    case "button": return { role: "button", name: spoken(thing) };
    case "list_item": return { role: "button", name: spoken(thing) };
    case "tab": return { role: "tab", name: spoken(thing) };
    case "slider": return { role: "slider", name: thing.label, value: `${thing.now} ${thing.value}` };
    case "textbox": return { role: "textbox", name: thing.label, value: thing.value ?? "" };
    case "image": return { role: "image", name: spoken(thing) };
    case "region": return { role: "region", name: thing.label };
    default: return thing.acts ? { role: "button", name: spoken(thing) } : { role: "StaticText", name: spoken(thing) };
  }
}

const plain = text => text.replace(/\s+/g, " ").trim();
const line = ({ role, name, value }) => [role, plain(name), value === undefined ? "" : plain(value)].join(" | ");

// The lines that the accessibility tree has now.
async function heard(session) {
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  const found = [];
  const wanted = new Set(["button", "tab", "slider", "textbox", "searchbox", "image", "region", "StaticText"]);
  // Only what the mirror holds: the page's own heading and announcements stand beside it.
  const byId = new Map(nodes.map(node => [node.nodeId, node]));
  for (const node of nodes) {
    if (node.ignored) continue;
    let role = node.role?.value;
    if (role === "searchbox") role = "textbox";
    if (!wanted.has(role) && role !== "textbox") continue;
    if (role === "StaticText") {
      const parent = byId.get(node.parentId);
      if (parent?.role?.value !== "paragraph") continue;
    }
    const isInput = role === "textbox" || role === "slider";
    let value = node.value?.value;
    // The protocol leaves out the text of a slider's value: it is read off the node's own element.
    if (role === "slider") value = `${value} ${await valueText(session, node.backendDOMNodeId)}`;
    found.push(line({ role, name: node.name?.value ?? "", value: isInput ? String(value ?? "") : undefined }));
  }
  return found;
}

// The things and the number of their elements, in one moment.
const shown = driver => driver.page.evaluate(() => ({
  things: window.carriageway.things(), elements: document.querySelectorAll("#mirror [data-name]").length,
}));

// The two are read one after the other, so they are of one moment only when nothing has changed: the
// word for what is saved, above all, changes by itself.
async function compare(driver, moment) {
  const session = await driver.page.context().newCDPSession(driver.page);
  const { before, found } = await until(`${moment}: the things stay the same while the tree is read`, async () => {
    await driver.settle();
    if (!await driver.page.evaluate(() => window.carriageway.saved())) return false;
    const before = await shown(driver), found = await heard(session), after = await shown(driver);
    return isDeepStrictEqual(before, after) && { before, found };
  }, 60);
  assert.equal(before.elements, before.things.length, `${moment}: one element for each thing`);
  assert.deepEqual(found.sort(), before.things.map(expected).map(line).sort(), moment);
  await session.detach();
}

async function valueText(session, backendNodeId) {
  await session.send("DOM.getDocument");
  const { nodeIds: [nodeId] } = await session.send("DOM.pushNodesByBackendIdsToFrontend", { backendNodeIds: [backendNodeId] });
  const { attributes } = await session.send("DOM.getAttributes", { nodeId });
  return attributes[attributes.indexOf("aria-valuetext") + 1];
}

async function axe(driver, moment) {
  await driver.page.evaluate(AXE);
  const result = await driver.page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  assert.deepEqual(result.violations.map(each => `${each.id}: ${each.help} (${each.nodes.map(node => node.html).slice(0, 3).join("; ")})`), [], moment);
}

test("the demonstration is put right by role and name alone", async () => {
  const driver = await stage.open("phone", { locale: "en-GB", ...COARSE });
  const mirror = driver.page.locator("#mirror");
  const press = async (role, name) => {
    await mirror.getByRole(role, { name, exact: false }).first().dispatchEvent("click");
    await driver.settle();
  };
  await compare(driver, "at the start");
  await axe(driver, "at the start");
  assert.match(await mirror.innerText(), /3 of 6 heads fit to run/);

  // A stop is moved by its slider, and the result is announced.
  await press("button", /^Head 5/);
  await compare(driver, "at head 5");
  await axe(driver, "at head 5");
  const slider = mirror.getByRole("slider", { name: /machine stop/ });
  await slider.focus();
  for (let i = 0; i < 44; ++i) await driver.page.keyboard.press("ArrowUp");
  await driver.settle();
  assert.equal(await slider.getAttribute("aria-valuetext"), "723 mm");
  assert.match(await driver.page.locator("[aria-live]").first().innerText(), /Fit to run/);

  // The others by the button that names the remedy.
  await press("button", "Whole press");
  for (let tries = 0; tries < 8; ++tries) {
    const fix = mirror.getByRole("button", { name: /^(Set the stops|Stop \d|Shorten)/ });
    if (await fix.count() === 0) break;
    await fix.first().dispatchEvent("click");
    await driver.settle();
  }
  assert.match(await mirror.innerText(), /6 of 6 heads fit to run/);
  await compare(driver, "at the end");
  await axe(driver, "at the end");
  await driver.close();
});

test("Tab walks through the mirror in order, and the ring shows where", async () => {
  const driver = await stage.open("desktop");
  const order = (await driver.page.evaluate(() => [...document.querySelectorAll("#mirror button, #mirror input")]
    .filter(each => each.tabIndex >= 0).map(each => each.dataset.name ?? each.closest("[data-name]")?.dataset.name)));
  const walked = [];
  for (let i = 0; i < order.length; ++i) {
    await driver.page.keyboard.press("Tab");
    walked.push(await driver.page.evaluate(() => document.activeElement.dataset.name ?? document.activeElement.closest("[data-name]")?.dataset.name));
  }
  assert.deepEqual(walked, order);
  await driver.page.keyboard.press("Shift+Tab");
  await driver.settle();
  await driver.picture("focus-ring");
  // Enter presses what has the focus.
  await driver.element("head/5").focus();
  await driver.page.keyboard.press("Enter");
  await driver.settle();
  assert.equal((await driver.need("head/5")).chosen, true);
  assert.deepEqual(driver.troubles, []);
  await driver.close();
});
