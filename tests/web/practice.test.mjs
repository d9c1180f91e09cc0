// Exercises in a browser, in both languages: one by touch at the press, one by the keyboard alone;
// the own job is as it was, after a reload as well.
import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { inBrowser } from "./driver.mjs";

const stage = inBrowser();
const languages = [
  { locale: "en-GB", name: "English", score: /^\d+ of 100 points/ },
  { locale: "es-MX", name: "Spanish", score: /^\d+ de 100 puntos/ },
];

// Tab until a thing has the keyboard, then Enter.
async function byKeys(driver, name) {
  const focused = () => driver.page.evaluate(() =>
    document.activeElement?.closest("[data-name]")?.dataset.name);
  for (let tabs = 0; tabs < 200 && await focused() !== name; ++tabs) await driver.page.keyboard.press("Tab");
  assert.equal(await focused(), name);
  await driver.page.keyboard.press("Enter");
  await driver.settle();
}

for (const { locale, name, score } of languages) {
  describe(name, () => {
    test("a fault is looked for by touch, and nothing says what it is until it is marked", async () => {
      const driver = await stage.open("pocket", { locale });
      const title = (await driver.need("title")).label;
      await driver.tap("place/practice");
      await driver.act("exercise/start/find-fault");
      await driver.need("exercise/asked");
      for (const gone of ["set-every-stop", "share", "day"])
        assert.equal(await driver.thing(gone), undefined);
      await driver.tap("exercise/claim/1");
      assert.equal((await driver.need("exercise/claim/1")).chosen, true);
      await driver.picture(`exercise-pocket-${locale.slice(0, 2)}`);
      await driver.tap("exercise/mark");
      assert.match((await driver.need("exercise/score")).label, score);
      await driver.need("exercise/line/1");
      await driver.act("exercise/all");
      await driver.tap("place/press");
      assert.equal((await driver.need("title")).label, title);
      await driver.reload();
      assert.equal((await driver.need("title")).label, title);
      assert.deepEqual(driver.troubles, []);
      await driver.close();
    });

    test("a number is chosen by the keyboard alone", async () => {
      const driver = await stage.open("desktop", { locale });
      await byKeys(driver, "place/practice");
      await byKeys(driver, "exercise/start/trainee-angle");
      await driver.need("exercise/number/1");
      await byKeys(driver, "exercise/number/1");
      assert.equal((await driver.need("exercise/number/1")).chosen, true);
      await byKeys(driver, "exercise/mark");
      assert.match((await driver.need("exercise/score")).label, score);
      assert.deepEqual(driver.troubles, []);
      await driver.close();
    });
  });
}
