// Exercises in a browser: one by touch at the press, one by the keyboard alone; the own job is as it
// was, after a reload as well.
import assert from "node:assert/strict";
import { test } from "node:test";
import { inBrowser } from "./driver.mjs";

const stage = inBrowser();

// Tab until a thing has the keyboard, then Enter.
async function byKeys(driver, name) {
  const focused = () => driver.page.evaluate(() => 
    document.activeElement?.closest("[data-name]")?.dataset.name);
  for (let tabs = 0; tabs < 200 && await focused() !== name; ++tabs) await driver.page.keyboard.press("Tab");
  assert.equal(await focused(), name);
  await driver.page.keyboard.press("Enter");
  await driver.settle();
}

test("a fault is looked for by touch, and nothing says what it is until it is marked", async () => {
  const driver = await stage.open("pocket");
  const title = (await driver.need("title")).label;
  await driver.tap("place/practice");
  await driver.act("exercise/start/find-fault");
  await driver.need("exercise/asked");
  for (const gone of ["set-every-stop", "share", "day"])
    assert.equal(await driver.thing(gone), undefined);
  await driver.tap("exercise/claim/1");
  assert.equal((await driver.need("exercise/claim/1")).chosen, true);
  await driver.picture("exercise-pocket");
  await driver.tap("exercise/mark");
  assert.match((await driver.need("exercise/score")).label, /of 100 points/);
  await driver.need("exercise/line/1");
  await driver.act("exercise/all");
  await driver.tap("place/press");
  assert.equal((await driver.need("title")).label, title);
  await driver.reload();
  assert.equal((await driver.need("title")).label, title);
  assert.deepEqual(driver.troubles, []);
  await driver.close();
});

test("a number is chosen by the keyboard alone", async () => {
  const driver = await stage.open("desktop");
  await driver.act("place/practice");
  await byKeys(driver, "exercise/start/trainee-angle");
  await driver.need("exercise/number/1");
  await byKeys(driver, "exercise/number/1");
  assert.equal((await driver.need("exercise/number/1")).chosen, true);
  await byKeys(driver, "exercise/mark");
  assert.match((await driver.need("exercise/score")).label, /of 100 points/);
  assert.deepEqual(driver.troubles, []);
  await driver.close();
});
