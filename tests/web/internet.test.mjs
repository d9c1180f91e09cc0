// The page asks nothing of anybody but the host that it came from, and its own rules would not let it.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DEVICES, Driver, inBrowser, until } from "./driver.mjs";

// Also what the service worker asks for.
process.env.PW_EXPERIMENTAL_SERVICE_WORKER_NETWORK_EVENTS = "1";

const stage = inBrowser();

// Where every request of a context goes, from now on.
function asked(context) {
  const addresses = [];
  context.on("request", request => addresses.push({ url: request.url(), worker: request.serviceWorker() !== null }));
  const sockets = page => page.on("websocket", socket => addresses.push({ url: socket.url(), worker: false }));
  context.pages().forEach(sockets);
  context.on("page", sockets);
  return addresses;
}

// Those that leave this machine or go to another host on it.
const elsewhere = addresses => addresses.map(each => new URL(each.url))
  .filter(url => !["data:", "blob:", "about:"].includes(url.protocol) && url.origin !== new URL(stage.site.address).origin)
  .map(url => url.href);

test("nothing is asked of another host", async () => {
  const context = await stage.browser.newContext({ ...DEVICES.pocket, locale: "en-GB" });
  const addresses = asked(context);
  const driver = new Driver(await context.newPage(), "pocket");
  await driver.go(stage.site.address);
  await until("everything is cached", () => driver.page.evaluate(async () =>
    (await navigator.serviceWorker.ready).active?.state === "activated" && (await caches.keys()).length > 0));
  // Edits, a job's file, a link, the library after a new start.
  await driver.act("set-every-stop");
  await driver.act("head/6");
  await driver.act("stop/more");
  await driver.act("back");
  await driver.saved();
  await driver.act("place/jobs");
  const job = (await driver.things()).find(each => each.role === "list_item" && each.chosen).name;
  await driver.act(job);
  await driver.act(`${job}/export`);
  await driver.act(`${job}/share`);
  await driver.act("share/copy");
  await driver.reload();
  await driver.act("place/practice");

  assert.ok(addresses.length > 5, `${addresses.length} requests are known of`);
  assert.ok(addresses.some(each => each.worker), "the service worker's are among them");
  assert.deepEqual(elsewhere(addresses), []);

  // What would be one is seen, and the page's own rules refuse it.
  const refused = await driver.page.evaluate(() => fetch("https://elsewhere.invalid/").then(() => "", error => String(error)));
  assert.notEqual(refused, "");
  const other = await context.newPage();
  await other.evaluate(() => fetch("https://elsewhere.invalid/").catch(() => {}));
  await until("it is seen", () => elsewhere(addresses).includes("https://elsewhere.invalid/"));
  await driver.close();
});
