// Times under a CPU four times slower, printed and not judged: they depend on the machine.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DEVICES, Driver, inBrowser, until } from "./driver.mjs";

const stage = inBrowser();

const percentile = (values, share) => [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))];

test("first interactive frame, and frames while a stop is dragged", async context => {
  const page = await (await stage.browser.newContext({ ...DEVICES.phone, locale: "en-GB" })).newPage();
  // How long each animation frame's work takes, and how far apart frames are.
  await page.addInitScript(() => {
    window.work = [];
    window.starts = [];
    const ask = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = run => ask(time => {
      const began = performance.now();
      run(time);
      window.starts.push(began);
      window.work.push(performance.now() - began);
    });
  });
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  const driver = new Driver(page, "phone");
  await page.goto(stage.site.address);
  const first = await until("the first frame", () => page.evaluate(() => window.carriageway?.frames() > 0 && Math.max(...window.starts.slice(-1))), 90);
  context.diagnostic(`navigation to first interactive frame, CPU 4 times slower: ${Math.round(first)} ms`);
  await driver.settle();
  await driver.tap("head/5");
  await page.evaluate(() => { window.work.length = window.starts.length = 0; });
  const { x, y } = await driver.middle("head/5/machine-stop");
  const there = Driver.path([x, y], [x, y - 40], 40), back = Driver.path([x, y - 40], [x, y + 40], 80);
  const again = [...back].reverse();
  await driver.touch([[...there, ...back, ...again, ...back, ...again]], { delay: 16 });
  const { work, apart } = await page.evaluate(() => ({ work: window.work, apart: window.starts.slice(1).map((at, i) => at - window.starts[i]) }));
  await driver.settle();
  assert.ok(work.length > 10, `${work.length} frames`);
  const ms = value => `${value.toFixed(1)} ms`;
  context.diagnostic(`${work.length} frames while dragging: work in the page's thread p50 ${ms(percentile(work, 0.5))}, p99 ${ms(percentile(work, 0.99))}; between frames p50 ${ms(percentile(apart, 0.5))}, p99 ${ms(percentile(apart, 0.99))}`);
  await driver.close();
});
