// Numbers by the program's own pad, names by the phone's keyboard: composition, autocorrect, paste.
import assert from "node:assert/strict";
import { test } from "node:test";
import { COARSE, inBrowser, until } from "./driver.mjs";

const stage = inBrowser();

test("a fraction of an inch is typed", async () => {
  const driver = await stage.open("pocket");
  await driver.tap("head/5");
  await driver.tap("stop/number");
  await driver.pad("28 1/2in");
  await driver.picture("pad");
  await driver.tap("pad/accept");
  assert.equal(await driver.value("stop/number"), "723.9 mm"); // 28.5 * 25.4
  await driver.saved();
  await driver.close();
});

// The text field for the colour of head 5, open and with the focus; answers its input element.
async function colourField(device) {
  const driver = await stage.open(device, COARSE);
  await driver.tap("head/5");
  const section = await driver.thing("head/rename");
  if (!section) await driver.tap("section/head");
  await driver.tap("head/rename");
  const field = driver.page.locator("#mirror input.typed");
  await field.waitFor();
  assert.ok(await field.evaluate(at => at === document.activeElement), "the field has the focus");
  return { driver, field };
}

test("composition and accents arrive as the browser has them", async () => {
  const { driver, field } = await colourField("pocket");
  await field.fill("");
  const session = await driver.page.context().newCDPSession(driver.page);
  await session.send("Input.imeSetComposition", { text: "に", selectionStart: 1, selectionEnd: 1 });
  await session.send("Input.imeSetComposition", { text: "にほ", selectionStart: 2, selectionEnd: 2 });
  await session.send("Input.imeSetComposition", { text: "日本", selectionStart: 2, selectionEnd: 2 });
  await session.send("Input.insertText", { text: "日本" });
  await session.send("Input.insertText", { text: " añil" });
  assert.equal(await field.inputValue(), "日本 añil");
  await driver.picture("typing-phone");
  await driver.page.keyboard.press("Enter");
  await driver.settle();
  assert.match((await driver.need("head/5")).label, /日本 añil$/);
  await driver.close();
});

test("autocorrect and paste replace what was there", async () => {
  const { driver, field } = await colourField("pocket");
  await field.evaluate(at => {
    at.setRangeText("Sail yelow", 0, at.value.length, "end");
    at.dispatchEvent(new InputEvent("input", { inputType: "insertText", data: "w" }));
    // A phone's keyboard replaces a word as one change.
    at.setRangeText("yellow", 5, 10, "end");
    at.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertReplacementText", data: "yellow" }));
  });
  await driver.page.evaluate(() => {
    const at = document.querySelector("#mirror input.typed");
    at.setRangeText(" 12 C", at.value.length, at.value.length, "end");
    at.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertFromPaste" }));
  });
  await driver.page.keyboard.press("Enter");
  await driver.settle();
  assert.match((await driver.need("head/5")).label, /Sail yellow 12 C$/);
  await driver.close();
});

test("a keyboard of keys types, Backspace deletes, Escape leaves all as it was", async () => {
  const { driver, field } = await colourField("desktop");
  const before = await field.inputValue();
  await driver.page.keyboard.type("xy");
  await driver.page.keyboard.press("Backspace");
  assert.equal(await field.inputValue(), `${before}x`);
  await driver.page.keyboard.press("Escape");
  await until("the field has gone", async () => await driver.page.locator("#mirror input.typed").count() === 0);
  await driver.settle();
  assert.ok((await driver.need("head/5")).label.endsWith(before));
  await driver.close();
});

test("a tap elsewhere keeps what was typed", async () => {
  const { driver, field } = await colourField("pocket");
  await field.fill("Sea");
  await driver.tap("head/5");
  assert.match((await driver.need("head/5")).label, /Sea$/);
  await driver.saved();
  await driver.close();
});
