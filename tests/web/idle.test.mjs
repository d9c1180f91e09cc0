// A page left alone draws nothing; a lost graphics context comes back by itself.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DEVICES, Driver, inBrowser, pause, until } from "./driver.mjs";

const stage = inBrowser();

test("ten seconds untouched draw no frame", async () => {
  const driver = await stage.open("phone");
  await driver.saved(); // the first start stores the demonstration
  await driver.settle();
  const before = await driver.frames();
  await pause(10000);
  assert.equal(await driver.frames() - before, 0);
  await driver.close();
});

test("the first start shows its first steps, once, and after three pulses draws no frame", async () => {
  const context = await stage.browser.newContext({ ...DEVICES.phone, locale: "en-GB", serviceWorkers: "block" });
  const driver = new Driver(await context.newPage(), "phone");
  driver.skipsFirstSteps = false;
  await driver.go(stage.site.address); // until the pulses are over
  await driver.saved();
  await driver.settle();
  assert.match((await driver.need("first/step")).label, /^1 of 3/);
  const before = await driver.frames();
  await pause(3000);
  assert.equal(await driver.frames() - before, 0);
  await driver.act("first/skip");
  await driver.saved();
  await driver.reload();
  assert.equal(await driver.thing("first/step"), undefined);
  await driver.close();
});

test("a lost context is restored with the same picture", async () => {
  const driver = await stage.open("phone");
  await driver.tap("head/5");
  await driver.settle();
  const before = await driver.page.screenshot();
  await driver.page.evaluate(() => {
    window.loss = document.getElementById("canvas").getContext("webgl2").getExtension("WEBGL_lose_context");
    window.loss.loseContext();
  });
  await pause(300);
  await driver.act("back"); // goes on without a picture
  await driver.act("head/5");
  await driver.page.evaluate(() => window.loss.restoreContext());
  await until("the same picture", async () => (await driver.page.screenshot()).equals(before));
  assert.deepEqual(driver.troubles.filter(each => !/CONTEXT_LOST|context/i.test(each)), []);
  await driver.close();
});
