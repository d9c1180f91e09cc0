// Two tabs on one library: one writes, the other looks, and can take over.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Driver, inBrowser, until } from "./driver.mjs";

const stage = inBrowser();

const second = async (first, address) => {
  const driver = new Driver(await first.page.context().newPage(), "desktop");
  await driver.go(address);
  return driver;
};

test("the second tab is told, looks, takes over; the first turns to looking", async () => {
  const first = await stage.open("desktop");
  await first.act("set-every-stop");
  await first.saved();
  const other = await second(first, stage.site.address);
  assert.match((await other.need("notice")).label, /another tab/);
  await other.picture("second-tab");
  // Looking changes nothing.
  await other.act("head/6");
  const stop = await other.value("stop/number");
  await other.act("stop/more");
  assert.equal(await other.value("stop/number"), stop);
  // The first one's last edit reaches the second one.
  await first.page.bringToFront();
  await first.act("head/6");
  await first.act("stop/more");
  const last = await first.value("stop/number");
  await other.page.bringToFront();
  await other.act("notice/close").catch(() => {});
  await until("the offer", async () => await other.thing("notice/take-over"));
  const loaded = other.page.waitForEvent("load");
  await other.element("notice/take-over").dispatchEvent("click");
  await loaded;
  await other.started();
  await other.act("head/6");
  assert.equal(await other.value("stop/number"), last);
  await other.act("stop/more");
  assert.notEqual(await other.value("stop/number"), last);
  await other.act("back");
  await other.saved();
  await first.page.bringToFront();
  await until("the first is told", async () => /another tab/.test((await first.thing("notice"))?.label ?? ""));
  await first.act("stop/more");
  assert.equal(await first.value("stop/number"), last);
  await first.close();
});

test("a tab that doesn't answer loses the library all the same", async () => {
  const first = await stage.open("desktop");
  await first.act("set-every-stop");
  await first.saved();
  const other = await second(first, stage.site.address);
  // Deaf to the question, as a tab is that the system has put to sleep.
  await first.page.evaluate(() => { setTimeout(() => { const end = performance.now() + 9000; while (performance.now() < end); }, 0); });
  const loaded = other.page.waitForEvent("load", { timeout: 20000 });
  await other.element("notice/take-over").dispatchEvent("click");
  await loaded;
  await other.started();
  assert.equal(await other.thing("notice/take-over"), undefined);
  await first.close();
});
