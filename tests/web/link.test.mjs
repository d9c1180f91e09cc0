// A job travels in a link: shown on one device, opened on another, kept only when the person says so.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Driver, inBrowser, until } from "./driver.mjs";

const stage = inBrowser();

// The link that the share sheet copies.
async function copied(driver) {
  await driver.page.context().grantPermissions(["clipboard-read", "clipboard-write"], { origin: new URL(stage.site.address).origin });
  await driver.act("place/jobs");
  const job = (await driver.things()).find(each => each.role === "list_item" && each.chosen);
  await driver.act(job.name);
  await driver.act(`${job.name}/share`);
  await driver.picture(`share-${driver.device}`);
  await driver.act("share/copy");
  await until("the link is copied", async () => /copied/.test((await driver.thing("notice"))?.label ?? ""));
  return driver.page.evaluate(() => navigator.clipboard.readText());
}

for (const device of ["pocket", "desktop"])
  test(`a link's round trip, ${device}`, async () => {
    const first = await stage.open(device);
    await first.act("head/6");
    await first.act("finding/6/0/fix");
    const stop = await first.value("stop/number");
    const link = await copied(first);
    assert.ok(link.startsWith(`${stage.site.address}#job=1.`), link.slice(0, 80));
    await first.close();

    const second = await Driver.open(stage.browser, link, device);
    assert.match(JSON.stringify(await second.things()), /Not kept/i);
    await second.picture(`visit-${device}`);
    await second.act("head/6");
    assert.equal(await second.value("stop/number"), stop);
    await second.act("back");
    // Nothing of it is in the library until it is kept.
    await second.act("place/jobs");
    assert.equal((await second.things()).filter(each => each.role === "list_item").length, 1);
    await second.act("place/press");
    await second.act("visit/keep");
    await second.saved();
    await second.act("place/jobs");
    assert.equal((await second.things()).filter(each => each.role === "list_item").length, 2);
    assert.equal(await second.page.evaluate(() => location.hash), "");
    await second.reload();
    await second.act("place/press").catch(() => {});
    await second.act("head/6");
    assert.equal(await second.value("stop/number"), stop);
    assert.deepEqual(second.troubles, []);
    await second.close();
  });

test("a job from a link asks before it goes, once it has been changed and until it is kept", async () => {
  const first = await stage.open("pocket");
  const link = await copied(first);
  await first.close();
  const driver = await Driver.open(stage.browser, link, "pocket");
  const { page } = driver;
  const asked = [];
  // The person stays.
  page.on("dialog", dialog => { asked.push(dialog.type()); dialog.dismiss(); });
  const loaded = () => page.waitForEvent("load");
  const leave = () => page.evaluate(() => { setTimeout(() => location.reload()); });

  await driver.tap("head/6");  // only looked at; browsers ask nobody who has not touched the page
  let again = loaded();
  await leave();
  await again;
  await driver.started();
  assert.match(JSON.stringify(await driver.things()), /Not kept/i);
  assert.deepEqual(asked, []);

  await driver.tap("head/6");
  await driver.tap("stop/more");
  const stop = await driver.value("stop/number");
  await leave();
  await until("it asks", () => asked.length > 0);
  assert.deepEqual(asked, ["beforeunload"]);
  await driver.settle();
  assert.equal(await driver.value("stop/number"), stop);

  await driver.act("back");
  await driver.act("visit/keep");
  await driver.saved();
  again = loaded();
  await leave();
  await again;
  await driver.started();
  await driver.act("head/6");
  assert.equal(await driver.value("stop/number"), stop);
  assert.deepEqual(asked, ["beforeunload"]);
  await driver.close();
});

test("a link that is cut off is refused with a reason, and nothing is lost", async () => {
  const driver = await Driver.open(stage.browser, `${stage.site.address}#job=1.AAAA`, "pocket", {}, false);
  assert.ok((await driver.need("notice")).label.length > 20);
  assert.match((await driver.need("title")).label, /regatta/);
  await driver.close();
});

test("a job file is picked, dropped and taken out again", async () => {
  const { readFileSync } = await import("node:fs");
  const driver = await stage.open("desktop", { acceptDownloads: true });
  const demo = JSON.parse(readFileSync(process.env.CARRIAGEWAY_DEMO, "utf8"));
  demo.name = "From a file";
  await driver.act("place/jobs");
  const chooser = driver.page.waitForEvent("filechooser");
  await driver.act("pick-file");
  await (await chooser).setFiles({ name: "a.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(demo)) });
  await until("it is open", async () => (await driver.thing("title"))?.label === "From a file");
  demo.name = "Dropped";
  await driver.page.evaluate(text => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], "b.json", { type: "application/json" }));
    for (const type of ["dragenter", "dragover", "drop"])
      document.getElementById("canvas").dispatchEvent(new DragEvent(type, { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }, JSON.stringify(demo));
  await until("it is open", async () => (await driver.thing("title"))?.label === "Dropped");
  await driver.act("place/jobs");
  const job = (await driver.things()).find(each => each.role === "list_item" && each.chosen);
  await driver.act(job.name);
  const download = driver.page.waitForEvent("download");
  await driver.act(`${job.name}/export`);
  const file = await (await download).path();
  assert.equal(JSON.parse(readFileSync(file, "utf8")).name, "Dropped");
  await driver.close();
});
