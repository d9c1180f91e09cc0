// Fingers: drag a stop and read the new coverage, pinch from press to head, long press, fling, taps
// at a low frame rate.
import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { COARSE, Driver, inBrowser, pause } from "./driver.mjs";

const stage = inBrowser();

const covered = thing => Number(/([\d.]+) %/.exec(thing.value)[1]);

for (const device of ["small", "phone", "landscape", "tablet"]) {
  describe(device, () => {
    test("a stop is dragged, and the coverage follows the finger", async () => {
      const driver = await stage.open(device, device === "phone" ? {} : COARSE);
      await driver.tap("head/5");
      const before = await driver.need("head/5");
      const stop = await driver.need("head/5/machine-stop");
      // Away from the other stop, along the rail.
      const other = await driver.need("head/5/operator-stop");
      const mid = thing => [(thing.box[0] + thing.box[2]) / 2, (thing.box[1] + thing.box[3]) / 2];
      const [a, b] = [mid(other), mid(stop)], long = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const inward = [(a[0] - b[0]) / long * 30, (a[1] - b[1]) / long * 30];
      await driver.drag("head/5/machine-stop", inward, { lift: false });
      await driver.settle();
      const during = await driver.need("head/5");
      assert.ok(covered(during) < covered(before), `${covered(during)} % while it is held, ${covered(before)} % before`);
      await driver.lift();
      await driver.settle();
      assert.equal(covered(await driver.need("head/5")), covered(during));
      assert.notEqual((await driver.need("head/5/machine-stop")).value, stop.value);
      await driver.picture(`drag-${device}`);
      await driver.tap("undo");
      assert.equal((await driver.need("head/5/machine-stop")).value, stop.value);
      assert.deepEqual(driver.troubles, []);
      await driver.close();
    });
  });
}

test("the mirror is told ten times a second at most while a stop is dragged, and of where it rests", async () => {
  const driver = await stage.open("phone", COARSE);
  await driver.tap("head/5");
  const before = await driver.frames();
  const { x, y } = await driver.middle("head/5/machine-stop");
  await driver.page.evaluate(() => {
    window.told = [];
    window.began = performance.now();
    const changed = () => { if (window.told.at(-1) !== performance.now()) window.told.push(performance.now()); };
    new MutationObserver(changed).observe(document.getElementById("mirror"), { subtree: true, childList: true, attributes: true, characterData: true });
  });
  const down = Driver.path([x, y], [x, y + 60], 40);
  await driver.touch([[...down, ...[...down].reverse(), ...down]], { lift: false });
  await driver.settle();
  const told = await driver.page.evaluate(() => window.told), frames = await driver.frames() - before;
  // The first at once, from then on none within a tenth of a second.
  const seconds = (told.at(-1) - await driver.page.evaluate(() => window.began)) / 1000;
  assert.ok(told.length > 1 && told.length <= 10 * seconds + 1, `${told.length} times in ${seconds} s, ${frames} frames`);
  // Held still, the elements say what the drawing shows; let go, too.
  const element = () => driver.element("head/5/machine-stop").getAttribute("aria-valuetext");
  const held = await driver.value("head/5/machine-stop");
  assert.equal(await element(), held);
  await driver.lift();
  await driver.settle();
  assert.equal(await driver.value("head/5/machine-stop"), held);
  assert.equal(await element(), held);
  await driver.close();
});

test("two fingers zoom the drawing about themselves", async () => {
  const driver = await stage.open("phone", COARSE);
  const { x, y } = await driver.middle("head/5");
  const size = async () => { const [x0, , x1] = (await driver.need("head/5")).box; return x1 - x0; };
  const small = await size();
  await driver.touch([Driver.path([x - 20, y], [x - 38, y]), Driver.path([x + 20, y], [x + 38, y])]);
  await driver.settle();
  assert.ok(Math.abs(await size() / small - 1.9) < 0.1, `${await size()} CSS px across, ${small} before`);
  const now = await driver.need("head/5");
  const drift = Math.hypot((now.box[0] + now.box[2]) / 2 - x, (now.box[1] + now.box[3]) / 2 - y);
  assert.ok(drift < 3, `what lay between the fingers has moved ${drift} CSS px`);
  // On to one head: much closer, by fingers that start apart.
  await driver.touch([Driver.path([x - 20, y - 20], [x - 110, y - 80]), Driver.path([x + 20, y + 20], [x + 110, y + 80])]);
  await driver.settle();
  const head = (await driver.need("head/5")).box;
  assert.ok(head[2] - head[0] > 150 && head[3] - head[1] > 150, `the head fills the view: ${head}`);
  await driver.picture("pinch");
  await driver.close();
});

test("two fingers move the drawing", async () => {
  const driver = await stage.open("phone", COARSE);
  const before = (await driver.need("head/5")).box;
  const { x, y } = await driver.middle("head/5");
  await driver.touch([Driver.path([x - 40, y - 60], [x - 100, y - 140]), Driver.path([x + 40, y - 60], [x - 20, y - 140])]);
  await driver.settle();
  const moved = (await driver.need("head/5")).box;
  assert.ok(Math.abs(moved[0] - before[0] + 60) < 8 && Math.abs(moved[1] - before[1] + 80) < 8, `${before} to ${moved}`);
  await driver.close();
});

test("a long press explains and does nothing else", async () => {
  const driver = await stage.open("phone", COARSE);
  const { x, y } = await driver.middle("head/6");
  await driver.touch([[[x, y], [x, y]]], { lift: false });
  await pause(800);
  await driver.lift();
  await driver.settle();
  assert.match((await driver.need("notice")).label, /Head 6/);
  assert.equal((await driver.need("head/6")).chosen, false);
  await driver.close();
});

test("a list runs on after a fling, and a touch stops it", async () => {
  const driver = await stage.open("small", COARSE);
  await driver.tap("place/jobs");
  const top = async () => (await driver.need("search")).box[1];
  const start = await top();
  await driver.touch([Driver.path([160, 420], [160, 300], 5)], { delay: 8 });
  const lifted = await top();
  await driver.settle();
  const rest = await top();
  assert.ok(lifted < start && rest < lifted - 10, `${start}, ${lifted} when the finger left, ${rest} at rest`);
  await driver.close();
});

test("no tap is lost while frames are slow", async () => {
  const driver = await stage.open("phone", COARSE);
  const session = await driver.page.context().newCDPSession(driver.page);
  await driver.tap("head/5");
  const number = async () => Number(/[\d.]+/.exec(await driver.value("stop/number"))[0]);
  const before = await number();
  const { x, y } = await driver.middle("stop/more");
  await session.send("Emulation.setCPUThrottlingRate", { rate: 20 });
  for (let i = 0; i < 7; ++i) await driver.page.touchscreen.tap(x, y);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await driver.settle();
  assert.equal(await number(), before + 7);
  await driver.close();
});

test("mouse and wheel work too", async () => {
  const driver = await stage.open("desktop");
  await driver.tap("head/5");
  const before = await driver.value("head/5/machine-stop");
  const { x, y } = await driver.middle("head/5/machine-stop");
  await driver.page.mouse.move(x, y);
  await driver.page.mouse.down();
  await driver.page.mouse.move(x + 20, y + 20, { steps: 8 });
  await driver.page.mouse.up();
  await driver.settle();
  assert.notEqual(await driver.value("head/5/machine-stop"), before);
  const width = async () => { const [x0, , x1] = (await driver.need("head/5")).box; return x1 - x0; };
  const small = await width();
  await driver.page.mouse.wheel(0, -300);
  await driver.settle();
  assert.ok(await width() > 1.2 * small);
  await driver.close();
});
