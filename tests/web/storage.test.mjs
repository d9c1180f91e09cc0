// What is kept, and what is said when it can't be.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Driver, inBrowser, until } from "./driver.mjs";

const stage = inBrowser();

test("a reload keeps every edit", async () => {
  const driver = await stage.open("pocket");
  await driver.act("set-every-stop");
  await driver.act("head/8");
  for (let i = 0; i < 5; ++i) await driver.act("stop/more");
  const stop = await driver.value("stop/number");
  await driver.saved();
  await driver.reload();
  await driver.act("head/8");
  assert.equal(await driver.value("stop/number"), stop);
  assert.deepEqual(driver.troubles, []);
  await driver.close();
});

test("storage that is denied is said, and a job can still be saved as a file", async () => {
  const context = await stage.browser.newContext({ locale: "en-GB" });
  await context.addInitScript(() => Object.defineProperty(window, "indexedDB", { get() { throw new DOMException("denied", "SecurityError"); } }));
  const driver = new Driver(await context.newPage(), "desktop");
  await driver.go(stage.site.address);
  await driver.act("set-every-stop");
  await driver.act("place/jobs");
  assert.match(JSON.stringify(await driver.things()), /keep nothing/);
  await driver.close();
});

test("a full store is said; what follows is kept again when there is room", async () => {
  const driver = await stage.open("desktop");
  await driver.act("set-every-stop");
  await driver.saved();
  // The store's own put fails as it does when there is no room.
  await driver.page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    window.room = () => { IDBObjectStore.prototype.put = put; };
    IDBObjectStore.prototype.put = () => { throw new DOMException("no room", "QuotaExceededError"); };
  });
  await driver.act("head/6");
  await driver.act("stop/more");
  const stop = await driver.value("stop/number");
  await driver.act("place/jobs");
  await until("it is said", async () => /no room/.test(JSON.stringify(await driver.things())));
  await driver.picture("full-store");
  await driver.page.evaluate(() => window.room());
  await driver.act("retry-saving");
  await driver.act("place/press");
  await driver.act("back");
  await driver.saved();
  await driver.reload();
  await driver.act("head/6");
  assert.equal(await driver.value("stop/number"), stop);
  await driver.close();
});
