// The walk round the press in a browser: broken off by a reload and gone on with, and two halves of
// two people put together from a file.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { COARSE, inBrowser, until } from "./driver.mjs";

const stage = inBrowser();

const demo = () => JSON.parse(readFileSync(process.env.CARRIAGEWAY_DEMO, "utf8"));

async function openWalk(driver) {
  await driver.act("day");
  await driver.act("day/walk");
  await driver.need("walk/progress");
}

// What the walk says of a place: [done, of].
const counted = thing => /(\d+) of (\d+)/.exec(thing.value).slice(1).map(Number);

// The other half: two numbers of head 3 (station 6), and one that head 2 (station 5) has here too.
// Marks stand by head, and for one head in the order of their fields.
function otherHalf() {
  const by = { time_ms: 1700000200000, initials: "CD" };
  const job = demo();
  job.walk = [
    { head: 2, field: "squeegee.gauge_marks", done: true, real: { value: 1.4 }, ...by },
    { head: 3, field: "squeegee.width_mm", done: true, ...by },
    { head: 3, field: "squeegee.angle_deg", done: true, ...by }];
  return job;
}

// Drops a job file on the page, as another person sent it.
async function drop(driver, job) {
  await driver.page.evaluate(text => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], "other-half.json", { type: "application/json" }));
    for (const type of ["dragenter", "dragover", "drop"])
      document.getElementById("canvas").dispatchEvent(new DragEvent(type, { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }, JSON.stringify(job));
  await until("the two halves are shown", () => driver.thing("merge/about"));
  await driver.settle();
}

// Notes that the gauge of head 2 was really set to another mark.
async function noteGauge(driver, marks) {
  await driver.act("walk/go/5");
  await driver.act("walk/number/squeegee.gauge_marks");
  await driver.pad(marks);
  await driver.act("pad/accept");
  assert.match(await driver.value("walk/number/squeegee.gauge_marks"), new RegExp(`^${marks.replace(".", "\\.")} marks`));
}

for (const device of ["small", "desktop"])
  test(`a walk that is broken off by a reload is gone on with, ${device}`, async () => {
    const driver = await stage.open(device, COARSE);
    await openWalk(driver);
    assert.equal((await driver.need("walk/head")).label, "Head 2 · Base white");
    await driver.tap("walk/tick/squeegee.angle_deg");
    assert.equal((await driver.need("walk/tick/squeegee.angle_deg")).chosen, true);
    await driver.act("walk/tick-all");
    await driver.act("walk/go-on");
    await driver.tap("walk/tick/flood.angle_deg");
    await driver.picture(`walk-${device}`);
    const [done, of] = counted(await driver.need("walk/progress"));
    await driver.act("day/close");
    await driver.saved();
    await driver.reload();

    await driver.act("day");
    assert.match(await driver.value("day/walk"), new RegExp(`${done} of ${of} .*Head 5 · Sail yellow`));
    await driver.act("day/walk");
    assert.equal((await driver.need("walk/head")).label, "Head 5 · Sail yellow");
    assert.equal((await driver.need("walk/tick/flood.angle_deg")).chosen, true);
    assert.equal((await driver.need("walk/tick/squeegee.angle_deg")).chosen, false);
    for (let places = 0; places < 20 && await driver.thing("walk/tick-all"); ++places) {
      await driver.act("walk/tick-all");
      await driver.act("walk/go-on");
    }
    assert.equal((await driver.need("walk/status")).label, `Everything is set: ${of} numbers`);
    await driver.act("day/close");
    await driver.saved();
    await driver.reload();
    await driver.act("day");
    assert.equal(await driver.value("day/walk"), `Everything is set: ${of} numbers`);
    assert.deepEqual(driver.troubles, []);
    await driver.close();
  });

for (const theirs of [false, true])
  test(`two halves at odds are put together, and ${theirs ? "theirs" : "mine"} is chosen`, async () => {
    const driver = await stage.open("pocket");
    await openWalk(driver);
    await driver.act("walk/all");
    await noteGauge(driver, "1.2");
    await drop(driver, otherHalf());
    assert.equal(await driver.value("merge/takes/head/6"), "Numbers of the walk: 2");
    assert.equal((await driver.need("merge/1")).label, "Head 5 · Sail yellow: squeegee gauge, as set");
    assert.match(await driver.value("merge/1/mine"), /^1\.2 marks/);
    assert.match(await driver.value("merge/1/theirs"), /^1\.4 marks.*CD/);
    if (theirs) await driver.tap("merge/1/theirs");
    assert.equal((await driver.need("merge/1/theirs")).chosen, theirs);
    await driver.picture(`merge-${theirs ? "theirs" : "mine"}`);
    await driver.tap("merge/accept");
    await driver.act("walk/all");
    const other = await driver.need("walk/other/1");
    assert.match(other.label, /Head 5 · Sail yellow/);
    assert.match(other.value, theirs ? /1\.4 marks/ : /1\.2 marks/);
    assert.deepEqual(counted(await driver.need("walk/go/6")), [2, 16]);
    await driver.act("day/close");
    await driver.saved();
    await driver.reload();
    await openWalk(driver);
    await driver.act("walk/all");
    assert.equal(await driver.value("walk/other/1"), other.value);
    assert.deepEqual(driver.troubles, []);
    await driver.close();
  });

test("what is noted already is told apart from what is new, and one step takes the halves apart", async () => {
  const driver = await stage.open("desktop");
  await openWalk(driver);
  await drop(driver, otherHalf());
  assert.equal(await driver.thing("merge/1"), undefined);
  await driver.act("merge/accept");
  const [done] = counted(await driver.need("walk/progress"));
  assert.equal(done, 3);
  await driver.page.evaluate(text => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], "again.json", { type: "application/json" }));
    document.getElementById("canvas").dispatchEvent(new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }, JSON.stringify(otherHalf()));
  await until("it is said", async () => /nothing new/.test((await driver.thing("notice"))?.label ?? ""));
  await driver.act("day/undo");
  assert.equal(counted(await driver.need("walk/progress"))[0], 0);
  await driver.close();
});
