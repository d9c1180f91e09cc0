// A call in a browser: asked through by touch, the reply copied as a link, and that link opened on
// another device, where it shows what to change and keeps nothing.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Driver, inBrowser, until } from "./driver.mjs";

const stage = inBrowser();

async function copied(driver) {
  const origin = new URL(stage.site.address).origin;
  await driver.page.context().grantPermissions(["clipboard-read", "clipboard-write"], { origin });
  await driver.act("call/copy");
  await until("the link is copied", async () => /copied/.test((await driver.thing("notice"))?.label ?? ""));
  return driver.page.evaluate(() => navigator.clipboard.readText());
}

test("a call is asked through, and its reply shows on another device what to change", async () => {
  const helper = await stage.open("pocket");
  await helper.act("place/practice");
  await helper.act("practice/call");
  await helper.act("call/begin");
  await helper.act("call/symptom/no_stroke");
  await helper.act("call/head/6");
  assert.notEqual((await helper.need("call/question")).label, "");
  assert.notEqual((await helper.need("call/why")).label, "");
  await helper.picture("call-pocket");
  await helper.act("call/cause/both_sensors/tell");
  const line = (await helper.need("call/say/1")).label;
  const link = await copied(helper);
  assert.ok(link.startsWith(`${stage.site.address}#reply=1.`), link.slice(0, 80));
  assert.deepEqual(helper.troubles, []);
  await helper.close();

  const caller = await Driver.open(stage.browser, link, "pocket");
  assert.equal((await caller.need("reply/change/1")).label, line);
  await caller.need("reply/before");
  await caller.need("reply/after");
  await caller.picture("reply-pocket");
  await caller.act("reply/set");
  await caller.need("reply/is-set");
  await caller.act("place/jobs");
  assert.equal((await caller.things()).filter(each => each.role === "list_item").length, 1);
  assert.deepEqual(caller.troubles, []);
  await caller.close();
});

test("a call goes on where it was when the page is loaded again", async () => {
  const driver = await stage.open("desktop");
  await driver.act("place/practice");
  await driver.act("practice/call");
  await driver.act("call/begin");
  await driver.act("call/symptom/no_stroke");
  await driver.act("call/head/6");
  await driver.act("call/cause/both_sensors/tell");
  await driver.act("place/press"); // where it is said whether all is saved
  await driver.saved();
  await driver.reload();
  await driver.act("place/practice");
  await driver.act("practice/call");
  const rows = (await driver.things()).filter(each => /^call\/row\/\d+$/.test(each.name));
  assert.equal(rows.length, 1);
  await driver.act(rows[0].name);
  await driver.need("call/say/1");
  assert.deepEqual(driver.troubles, []);
  await driver.close();
});
