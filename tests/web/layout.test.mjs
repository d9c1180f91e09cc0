// Every place at every size, in both languages and themes: nothing overflows, targets are large.
import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { COARSE, inBrowser } from "./driver.mjs";

const stage = inBrowser();

async function check(driver, where) {
  const page = await driver.page.evaluate(() => ({
    width: document.documentElement.scrollWidth, height: document.documentElement.scrollHeight,
    right: innerWidth, bottom: innerHeight, x: scrollX, y: scrollY,
  }));
  assert.ok(page.width <= page.right && page.height <= page.bottom, `${where}: the page is ${page.width} by ${page.height} in ${page.right} by ${page.bottom}`);
  assert.ok(page.x === 0 && page.y === 0, `${where}: the page has scrolled`);
  for (const thing of await driver.things()) {
    if (!thing.acts) continue;
    const [x0, y0, x1, y1] = thing.target;
    assert.ok(x1 - x0 > 43.9 && y1 - y0 > 43.9, `${where}: ${thing.name} is ${x1 - x0} by ${y1 - y0}`);
    const clip = thing.clip ?? [0, 0, page.right, page.bottom];
    assert.ok(thing.box[0] >= clip[0] - 1 && thing.box[2] <= clip[2] + 1 || thing.name.startsWith("head/"),
      `${where}: ${thing.name} spans ${thing.box[0]} to ${thing.box[2]} in ${clip[0]} to ${clip[2]}`);
  }
}

for (const device of ["small", "phone", "landscape", "tablet", "desktop"])
  for (const [locale, scheme] of [["en-GB", "light"], ["es-MX", "dark"]])
    describe(device, () => {
      test(`${locale}, ${scheme}`, async () => {
        const driver = await stage.open(device, { locale, colorScheme: scheme, ...(scheme === "dark" && device !== "phone" ? COARSE : {}) });
        const name = `${device}-${locale.slice(0, 2)}-${scheme}`;
        await check(driver, "the press");
        await driver.picture(`${name}-press`);
        await driver.act("head/6");
        await check(driver, "head 6");
        await driver.picture(`${name}-head`);
        await driver.act("stop/number");
        await check(driver, "the number pad");
        await driver.picture(`${name}-pad`);
        await driver.act("pad/cancel");
        await driver.act("place/jobs");
        await check(driver, "the jobs");
        await driver.picture(`${name}-jobs`);
        assert.equal(await driver.page.evaluate(() => document.documentElement.lang), locale.slice(0, 2));
        assert.deepEqual(driver.troubles, []);
        await driver.close();
      });
    });

test("a turned phone keeps what is being done", async () => {
  const driver = await stage.open("phone", COARSE);
  await driver.tap("head/5");
  const { width, height } = driver.page.viewportSize();
  await driver.page.setViewportSize({ width: height, height: width });
  await driver.settle();
  await check(driver, "turned");
  assert.equal((await driver.need("head/5")).chosen, true);
  await driver.close();
});
