// Without a network, and when a newer version arrives.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { Driver, launch, until } from "./driver.mjs";
import { serve, SITE } from "./site.mjs";

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

const cached = driver => driver.page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state === "activated" && (await caches.keys()).length > 0);

test("a reload without a network opens the program with all edits", async () => {
  const site = await serve();
  const driver = await Driver.open(browser, site.address, "pocket", { serviceWorkers: "allow" });
  await driver.act("set-every-stop");
  await driver.saved();
  await until("everything is cached", () => cached(driver));
  await site.close();
  await driver.reload();
  assert.match(JSON.stringify(await driver.need("title")), /6 of 6/);
  await driver.act("head/6");
  await driver.act("stop/more");
  await driver.act("back");
  await driver.saved();
  await driver.close();
});

test("a newer version is offered, and starts when the person says so", async () => {
  const folder = mkdtempSync(join(tmpdir(), "carriageway-site-"));
  cpSync(SITE, folder, { recursive: true });
  const site = await serve(folder);
  const driver = await Driver.open(browser, site.address, "desktop", { serviceWorkers: "allow" });
  await until("everything is cached", () => cached(driver));
  const old = (await driver.page.evaluate(() => caches.keys())).sort().join();
  await driver.act("set-every-stop");
  // What the build would do: other bytes, their hash, another version.
  const style = join(folder, "page.css"), worker = join(folder, "service_worker.js");
  const hash = () => `sha256-${createHash("sha256").update(readFileSync(style)).digest("base64")}`;
  const before = hash();
  writeFileSync(style, `${readFileSync(style, "utf8")}\n:root { --newer: 1; }\n`);
  const text = readFileSync(worker, "utf8"), version = /VERSION = "([0-9a-f]+)"/.exec(text)[1];
  assert.ok(text.includes(before));
  writeFileSync(worker, text.replace(before, hash()).replace(version, "0123456789abcdef"));
  await driver.reload();
  await until("the offer", async () => await driver.thing("notice/update"));
  assert.equal(await newer(driver), "", "the old version goes on");
  await driver.picture("update");
  const loaded = driver.page.waitForEvent("load");
  await driver.element("notice/update").dispatchEvent("click");
  await loaded;
  await driver.started();
  assert.equal(await newer(driver), "1");
  assert.match(JSON.stringify(await driver.need("title")), /6 of 6/);
  await until("the old cache has gone", async () => (await driver.page.evaluate(() => caches.keys())).sort().join() !== old);
  await driver.close();
  await site.close();
  rmSync(folder, { recursive: true });
});

const newer = driver => driver.page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue("--newer").trim());
