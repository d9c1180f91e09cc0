// Faults in a browser: from a head that makes no stroke to stops that let it run, by touch; an answer
// by the keyboard alone, and what it did to the order.
import assert from "node:assert/strict";
import { test } from "node:test";
import { inBrowser } from "./driver.mjs";

const stage = inBrowser();

test("a fault is found and mended by touch, and mending it is undone", async () => {
  const driver = await stage.open("pocket");
  await driver.tap("head/6");
  await driver.act("press/find-fault");
  await driver.act("faults/symptom/no_stroke");
  assert.match((await driver.need("faults/cause/both_sensors")).label, /^1\. /);
  await driver.need("faults/cause/both_sensors/caution");
  await driver.need("faults/cause/both_sensors/source");
  await driver.act("faults/fix/both_sensors");
  assert.equal(await driver.thing("faults/fix/both_sensors"), undefined);
  assert.doesNotMatch((await driver.need("faults/cause/both_sensors")).label, /^1\. /);
  await driver.act("faults/undo");
  await driver.need("faults/fix/both_sensors");
  await driver.picture("faults-pocket");
  assert.deepEqual(driver.troubles, []);
  await driver.close();
});

test("a test is answered by the keyboard alone, and it is said what that changes", async () => {
  const driver = await stage.open("desktop");
  await driver.act("place/practice");
  await driver.act("practice/faults");
  await driver.act("faults/symptom/jerky");
  const focused = () => driver.page.evaluate(() =>
    document.activeElement?.closest("[data-name]")?.dataset.name);
  const answers = /^faults\/test\/[a-z_]+\/(?!caution$|answers$)[a-z_]+$/;
  for (let tabs = 0; tabs < 200 && !answers.test(await focused() ?? ""); ++tabs)
    await driver.page.keyboard.press("Tab");
  assert.match(await focused(), answers);
  await driver.page.keyboard.press("Enter");
  await driver.settle();
  assert.match((await driver.need("faults/changed")).label, /^The last answer /);
  await driver.act("faults/forget");
  assert.equal(await driver.thing("faults/changed"), undefined);
  assert.deepEqual(driver.troubles, []);
  await driver.close();
});
