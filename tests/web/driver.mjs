// Drives the program in Chromium as a person would: things are found by their stable name in the
// list that the page mirrors, and touched where they were drawn.
import assert from "node:assert/strict";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { after, before } from "node:test";
import { chromium } from "playwright-core";
import { serve } from "./site.mjs";

const ARGUMENTS = ["--no-sandbox", "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
  "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run", "--disable-quic"];

export const DEVICES = {
  small: { viewport: { width: 320, height: 568 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true },
  phone: { viewport: { width: 393, height: 851 }, deviceScaleFactor: 2.75, hasTouch: true, isMobile: true },
  landscape: { viewport: { width: 851, height: 393 }, deviceScaleFactor: 2.75, hasTouch: true, isMobile: true },
  tablet: { viewport: { width: 820, height: 1180 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true },
  // As cheap to draw as can be, for tests that look at something else: a phone of large pixels, and
  // the least window.
  pocket: { viewport: { width: 393, height: 851 }, deviceScaleFactor: 1, hasTouch: true, isMobile: true },
  killed: { viewport: { width: 400, height: 600 }, deviceScaleFactor: 1, hasTouch: false, isMobile: false },
  desktop: { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1, hasTouch: false, isMobile: false },
};

// For tests that look at something else than pixels, so long as no pictures are kept: without a
// graphics chip each device pixel takes its time.
export const COARSE = process.env.CARRIAGEWAY_PICTURES ? {} : { deviceScaleFactor: 1 };

const options = { executablePath: process.env.CARRIAGEWAY_CHROMIUM ?? "/usr/bin/chromium", args: ARGUMENTS };
export const launch = () => chromium.launch(options);
// With a profile of its own, which lasts beyond the browser.
export const launchIn = (folder, device) => chromium.launchPersistentContext(folder, { ...options, ...DEVICES[device] });

// A browser and a served site for the tests of one file: {browser, site, open(device, more)}.
export function inBrowser() {
  const stage = { open: (device, more) => Driver.open(stage.browser, stage.site.address, device, more) };
  before(async () => Object.assign(stage, { browser: await launch(), site: await serve() }));
  after(async () => {
    await stage.browser.close();
    await stage.site.close();
  });
  return stage;
}

export const pause = ms => new Promise(resolve => setTimeout(resolve, ms));

// Asks until `ask` answers something true, and answers it. `what` may be a function: what is said when
// it never does.
export async function until(what, ask, seconds = 20) {
  const end = Date.now() + seconds * 1000;
  for (;;) {
    const answer = await ask();
    if (answer) return answer;
    if (Date.now() >= end) assert.fail(`not within ${seconds} s: ${typeof what === "function" ? what() : what}`);
    await pause(25);
  }
}

// What the page still does and how many frames it has shown, once it has had the opportunity to lay
// itself out and show a frame. A tab in the background may have none: then after a while.
const state = page => page.evaluate(() => new Promise(done => {
  const answer = () => done({ busy: window.carriageway.busy(), frames: window.carriageway.frames() });
  requestAnimationFrame(() => setTimeout(answer));
  setTimeout(answer, 1000);
}));

export class Driver {
  constructor(page, device) {
    this.page = page;
    this.device = device;
    this.skipsFirstSteps = true;
    this.troubles = [];
    page.on("pageerror", error => this.troubles.push(error.message));
    page.on("console", said => { if (said.type() === "error") this.troubles.push(said.text()); });
  }

  // A page of a fresh context of this browser, with the program running. Nothing is fetched a second
  // time to be kept for later, unless `more` allows service workers.
  static async open(browser, address, device = "phone", more = {}, skipsFirstSteps = true) {
    const context = await browser.newContext({ ...DEVICES[device], locale: "en-GB", serviceWorkers: "block", ...more });
    const driver = new Driver(await context.newPage(), device);
    driver.skipsFirstSteps = skipsFirstSteps;
    await driver.slower();
    await driver.go(address);
    return driver;
  }

  async go(address) {
    await this.page.goto(address);
    await this.started();
  }
  async started() {
    await until("the program has started", () => this.page.evaluate(() => window.carriageway?.frames() > 0).catch(() => false), 60);
    if (this.skipsFirstSteps) await this.skipFirstSteps();
    await this.settle();
  }
  // The first start of a library shows its first steps, with a head that pulses: most tests go on
  // at once. What is said then about where they are is closed as well.
  async skipFirstSteps() {
    const click = name => this.page.evaluate(wanted => {
      const element = document.querySelector(`#mirror [data-name="${wanted}"]`);
      element?.click();
      return element !== null;
    }, name);
    if (!await click("first/skip")) return;
    await until("the first steps are gone", async () => !await this.thing("first/skip"));
    // The mirror may not have its element yet when the drawing has it.
    await until("what is said of them is closed", async () => {
      if (!await this.thing("notice/close")) return true;
      await click("notice/close");
      return false;
    });
  }
  async reload() {
    await this.page.reload();
    await this.started();
  }
  close() { return this.page.context().close(); }

  frames() { return this.page.evaluate(() => window.carriageway.frames()); }
  things() { return this.page.evaluate(() => window.carriageway.things()); }
  async thing(name) { return (await this.things()).find(each => each.name === name); }
  async need(name) {
    const found = await this.thing(name);
    assert.ok(found, `there is a thing named ${name}`);
    return found;
  }
  async value(name) { return (await this.need(name)).value; }

  // Lets every movement come to rest, by the page's own word: twice, with no frame in between.
  async settle() {
    let before = {};
    await until(() => `rest, because of ${before.busy || `frames, ${before.frames} so far`}`, async () => {
      const now = await state(this.page);
      const rests = now.busy === "" && before.busy === "" && now.frames === before.frames;
      before = now;
      return rests;
    }, 60);
  }

  // A slower machine for all of this page's life, to look for what depends on speed:
  // CARRIAGEWAY_SLOWER=10 is ten times.
  async slower(rate = Number(process.env.CARRIAGEWAY_SLOWER ?? 1)) {
    if (rate === 1) return;
    const session = await this.page.context().newCDPSession(this.page);
    await session.send("Emulation.setCPUThrottlingRate", { rate });
  }
  async saved() { await until("saved", async () => (await this.thing("saved"))?.label === "Saved" || (await this.thing("saved"))?.label === "Guardado"); }

  // The middle of what is drawn of a thing, in CSS px; scrolls a list to it where that is needed.
  async middle(name) {
    const window = this.page.viewportSize();
    for (let tries = 0; tries < 80; ++tries) {
      const thing = await this.need(name);
      const [x0, y0, x1, y1] = thing.box, x = (x0 + x1) / 2, y = (y0 + y1) / 2;
      const clip = thing.clip ?? [0, 0, window.width, window.height];
      const low = clip[1] + Math.min(20, (clip[3] - clip[1]) / 4), high = clip[3] - Math.min(20, (clip[3] - clip[1]) / 4);
      if (y >= low && y <= high) return { x, y };
      await this.page.mouse.move((clip[0] + clip[2]) / 2, (clip[1] + clip[3]) / 2);
      await this.page.mouse.wheel(0, y < low ? -100 : 100);
      await this.settle();
    }
    throw new Error(`${name} can't be scrolled into sight`);
  }

  async tap(name) {
    const { x, y } = await this.middle(name);
    if (DEVICES[this.device].hasTouch) await this.page.touchscreen.tap(x, y);
    else await this.page.mouse.click(x, y);
    await this.settle();
  }

  // What fingers do, in steps: each path is a list of [x, y]; all fingers move together.
  async touch(paths, { lift = true, delay = 16 } = {}) {
    const session = this.session ??= await this.page.context().newCDPSession(this.page);
    const points = step => paths.map((path, id) => ({ id, x: path[step][0], y: path[step][1] }));
    await session.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: points(0) });
    // A finger doesn't wait for the page: what it does is sent on time and answered when it may be.
    const sent = [];
    for (let step = 1; step < paths[0].length; ++step) {
      sent.push(session.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: points(step) }));
      await pause(delay);
    }
    if (lift) sent.push(this.lift());
    await Promise.all(sent);
  }
  lift() {
    return this.session.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  }
  static path(from, to, steps = 12) {
    return Array.from({ length: steps + 1 }, (_, i) => [from[0] + (to[0] - from[0]) * i / steps, from[1] + (to[1] - from[1]) * i / steps]);
  }
  async drag(name, by, more) {
    const { x, y } = await this.middle(name);
    await this.touch([Driver.path([x, y], [x + by[0], y + by[1]])], more);
    if (more?.lift !== false) await this.settle();
  }

  // Acts as assistive technology does: by the element itself, without touching the drawing.
  element(name) { return this.page.locator(`#mirror [data-name="${name}"]`); }
  async act(name) {
    await this.element(name).dispatchEvent("click");
    await this.settle();
  }

  // The number pad, key by key.
  async pad(text) {
    const names = { ".": "point", "/": "slash", " ": "space", "-": "minus" };
    for (const key of text.match(/mm|in|cm|./g))
      await this.tap(`pad/${{ in: "inch" }[key] ?? names[key] ?? key}`);
  }

  // For looking at, where CARRIAGEWAY_PICTURES names a folder.
  async picture(name) {
    const folder = process.env.CARRIAGEWAY_PICTURES;
    if (!folder) return;
    mkdirSync(folder, { recursive: true });
    await this.page.screenshot({ path: join(folder, `${name}.png`) });
  }
}
