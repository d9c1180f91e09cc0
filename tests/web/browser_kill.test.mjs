// The browser killed at random moments after an edit, with a library of 5 MB: every edit that was
// shown as saved is there, and the database is whole.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { Driver, launchIn, until } from "./driver.mjs";
import { serve } from "./site.mjs";

// Each takes about ten seconds, most of them the browser's own: a few in every check, more by
// CARRIAGEWAY_KILLS.
const KILLS = Number(process.env.CARRIAGEWAY_KILLS ?? 6);
const LIBRARY = 5e6; // bytes
const seed = Number(process.env.CARRIAGEWAY_SEED ?? 20261125);

// Numbers from 0 to 1 that a seed gives back (mulberry32, public domain, by T. Ettinger).
function numbers(state) {
  return () => {
    state = (state + 0x6D2B79F5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

let site, folder;
before(async () => { site = await serve(); folder = mkdtempSync(join(tmpdir(), "carriageway-kill-")); });
after(async () => { await site.close(); rmSync(folder, { recursive: true, force: true }); });

// A job whose heads have outlines of many corners, which make it large.
function largeJob() {
  const job = JSON.parse(readFileSync(process.env.CARRIAGEWAY_DEMO));
  job.name = "Many corners";
  for (const head of job.heads) {
    const half = [(head.image.width_mm ?? 300) / 2, (head.image.length_mm ?? 300) / 2];
    delete head.image.width_mm;
    delete head.image.length_mm;
    head.image.outline_mm = Array.from({ length: 1000 }, (_, i) => [
      half[0] * Math.cos(2 * Math.PI * i / 1000), half[1] * Math.sin(2 * Math.PI * i / 1000)].map(each => Number(each.toFixed(3))));
  }
  const path = join(folder, "large.json");
  writeFileSync(path, JSON.stringify(job));
  return path;
}

// The library as the browser's store holds it, in base64.
const stored = driver => driver.page.evaluate(async () => {
  const promised = request => new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
  const database = await promised(indexedDB.open("carriageway"));
  const work = database.transaction(["about", "chunks"]);
  const [size, parts] = await Promise.all([promised(work.objectStore("about").get("size")), promised(work.objectStore("chunks").getAll())]);
  database.close();
  const bytes = new Uint8Array(await new Blob(parts).arrayBuffer()).subarray(0, size);
  let text = "";
  for (let i = 0; i < bytes.length; i += 32768) text += String.fromCharCode(...bytes.subarray(i, i + 32768));
  return btoa(text);
});

// Another program's word on whether the database is whole.
function integrity(base64) {
  const path = join(folder, "library.db");
  writeFileSync(path, Buffer.from(base64, "base64"));
  return execFileSync("python3", ["-c",
    "import sqlite3,sys; print(sqlite3.connect(sys.argv[1]).execute('pragma integrity_check').fetchone()[0])", path], { encoding: "utf8" }).trim();
}

async function open() {
  const context = await launchIn(join(folder, "profile"), "killed");
  const driver = new Driver(context.pages()[0] ?? await context.newPage(), "killed");
  await driver.go(site.address);
  return { context, driver };
}

const number = text => Number(/[\d.]+/.exec(text)[0]);

test(`${KILLS} kills, seed ${seed}`, async context => {
  const random = numbers(seed);
  {
    const { context: browser, driver } = await open();
    const path = largeJob();
    driver.page.on("filechooser", () => {}); // asks the browser early enough to be told of it
    for (let size = 0; size < LIBRARY; size = (await stored(driver)).length * 3 / 4) {
      const chooser = driver.page.waitForEvent("filechooser");
      await driver.act("place/jobs");
      await driver.act("pick-file");
      await (await chooser).setFiles(path);
      await until("the job is open", async () => (await driver.thing("title"))?.label === "Many corners");
      await driver.saved();
    }
    context.diagnostic(`library of ${Math.round((await stored(driver)).length * 3 / 4)} bytes`);
    await browser.close();
  }
  let least = -1, sent = -1, acknowledged = 0, edits = 0;
  for (let kill = 0; kill <= KILLS; ++kill) {
    const { context: browser, driver } = await open();
    await driver.act("head/5");
    const found = number(await driver.value("stop/number"));
    if (kill > 0) {
      assert.ok(found >= least && found <= sent, `kill ${kill}: ${found} is there, ${least} was shown as saved, ${sent} was done`);
      assert.equal(integrity(await stored(driver)), "ok", `kill ${kill}`);
    }
    if (kill === KILLS) {
      await browser.close();
      break;
    }
    least = sent = found;
    const pid = browserOf(folder);
    const end = Date.now() + random() * 1000;
    while (Date.now() < end) {
      // Some edits follow each other at once, others when the one before is shown as saved.
      sent = number(await driver.page.evaluate(() => {
        document.querySelector('#mirror [data-name="stop/more"]').click();
        return window.carriageway.things().find(each => each.name === "stop/number").value;
      }));
      ++edits;
      const patient = random() < 0.7;
      while (patient && Date.now() < end) {
        if (!await driver.page.evaluate(() => window.carriageway.saved())) continue;
        least = sent;
        ++acknowledged;
        break;
      }
    }
    process.kill(pid, "SIGKILL");
    await browser.close().catch(() => {});
  }
  context.diagnostic(`${KILLS} kills, ${edits} edits, ${acknowledged} times shown as saved in between, none of these lost`);
});

// The browser's own process, by the profile that it was started with.
function browserOf(profile) {
  const found = execFileSync("pgrep", ["-f", "-o", `user-data-dir=${profile}`], { encoding: "utf8" });
  return Number(found.trim().split("\n")[0]);
}
