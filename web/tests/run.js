// Tests the app in a browser: node tests/run.js CHROMIUM URL FILE PICTURES
// URL is of a server of a fresh copy of the demonstration piece, FILE its design document.
import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { browse, open } from './browser.js';

const [chromium, url, file, pictures] = process.argv.slice(2);
const axe = readFileSync(fileURLToPath(import.meta.resolve('axe-core')).replace(/[^/]*$/, 'axe.min.js'), 'utf8');
const text = () => readFileSync(file, 'utf8');
const names = ['holds', 'timber', 'cut', 'set', 'build', 'over', 'machine'];
const sizes = [[360, 740], [820, 1180], [1440, 900]];
const wait = { timeout: 120000 };
mkdirSync(pictures, { recursive: true });

const figures = (page) => page.locator('.overall .figure').allInnerTexts();
/** Waits until nothing is being worked out. */
const settled = (page) => page.waitForFunction(() => !document.querySelector('main.stale'), null, wait);

/** A change in a field changes the plan and one value of the file; undo takes it back. */
async function change(context) {
  const { page, faults } = await open(context, url);
  const before = text();
  const was = await figures(page);
  const field = page.getByLabel('Needles, overall length', { exact: true });
  assert.equal(await field.inputValue(), '350');
  await field.fill('360');
  await page.waitForFunction((old) => document.querySelectorAll('.overall .figure')[1].innerText !== old, was[1], wait);
  await settled(page);
  assert.equal(text(), before.replace('length = 350\n', 'length = 360\n'), 'only the one value of the file changes');
  const now = await figures(page);
  assert.equal(now[0], was[0]);
  assert.ok(Math.abs(parseFloat(now[1]) - parseFloat(was[1]) - 10) < 0.3, `ten longer makes it about ten deeper: ${was[1]} to ${now[1]}`);

  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForFunction((old) => document.querySelectorAll('.overall .figure')[1].innerText === old, was[1], wait);
  assert.equal(text(), before, 'undo gives the file back');

  // Steppers count presses even while the plan is being worked out.
  const more = page.getByRole('button', { name: 'Needles, overall length: more' });
  for (let i = 0; i < 3; i++) await more.click();
  assert.equal(await field.inputValue(), '365');
  await page.waitForFunction(() => !document.querySelector('main.stale'), null, wait);
  await page.waitForTimeout(400);
  await settled(page);
  assert.match(text(), /length = 365\n/);
  // Slow machines send a press by itself: undo them one by one.
  for (let i = 0; i < 3 && (await field.inputValue()) !== '350'; i++) {
    const shown = await field.inputValue();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.waitForFunction((old) => ![...document.querySelectorAll('input')].some((i) => i.value === old), shown, wait);
    await settled(page);
  }
  assert.equal(await field.inputValue(), '350');

  // A value that cannot be taken is told at its field; file and figures stay.
  const mid = text();
  await field.fill('9999');
  await field.press('Enter');
  await page.waitForSelector('[role=alert]', wait);
  assert.equal(await field.getAttribute('aria-invalid'), 'true');
  assert.equal(text(), mid);
  await field.fill('350');
  await field.press('Enter');
  await page.waitForFunction(() => !document.querySelector('[role=alert]'), null, wait);
  await settled(page);

  // Words as typed by a maker.
  await field.fill('14 1/8 in');
  await field.press('Enter');
  await page.waitForFunction((old) => document.querySelectorAll('.overall .figure')[1].innerText !== old, was[1], wait);
  await settled(page);
  assert.match(text(), /length = "14 1\/8 in"\n/);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForFunction((old) => document.querySelectorAll('.overall .figure')[1].innerText === old, was[1], wait);
  assert.deepEqual(faults.filter((f) => !f.includes('422')), []);
  await page.close();
}

/** What other hands do to the file is shown without asking. */
async function elsewhere(context) {
  const { page } = await open(context, url);
  const before = text();
  writeFileSync(file, before.replace('count = 3', 'count = 2'));
  await page.waitForFunction(() => [...document.querySelectorAll('input')].some((i) => i.value === '2'), null, wait);
  writeFileSync(file, before);
  await page.waitForFunction(() => ![...document.querySelectorAll('input')].some((i) => i.value === '2'), null, wait);
  await page.close();
}

/** When the command does not answer the page says so, and takes nothing for done. */
async function lost(context) {
  const { page } = await open(context, url);
  const before = text();
  await page.route('**/api/inputs', (route) => route.abort());
  await page.getByRole('button', { name: 'Drawers: more' }).click();
  await page.waitForSelector('.banner[role=alert]', wait);
  await page.waitForFunction(() => [...document.querySelectorAll('input')].some((i) => i.value === '3'), null, wait);
  assert.equal(text(), before);
  await page.unroute('**/api/inputs');
  await page.getByRole('button', { name: 'Drawers: more' }).click();
  await page.waitForFunction(() => !document.querySelector('.banner'), null, wait);
  await settled(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForFunction(() => [...document.querySelectorAll('input')].some((i) => i.value === '3'), null, wait);
  await settled(page);
  assert.equal(text(), before);
  await page.close();
}

/** A part is chosen in a list, shown with its drawing and in its places, by keyboard alone. */
async function choose(context) {
  const { page } = await open(context, url, { hash: '#timber' });
  const mark = page.locator('td button', { hasText: /^A1/ }).first();
  await mark.focus();
  await page.keyboard.press('Enter');
  await page.waitForSelector('.part svg');
  assert.equal(await mark.getAttribute('aria-pressed'), 'true');
  assert.match(await page.locator('.part').innerText(), /Where it stands/);
  await page.keyboard.press('Tab');
  await page.locator('.view').focus();
  for (const key of ['ArrowLeft', 'ArrowUp', '+', '-']) await page.keyboard.press(key);
  const slider = page.locator('input[type=range]');
  await slider.focus();
  await page.keyboard.press('End');
  assert.equal(await slider.inputValue(), '1');
  await page.locator('canvas').screenshot({ path: join(pictures, 'view-apart.png') });
  // A press on the middle of the piece chooses what is there.
  await page.getByRole('button', { name: 'Close' }).first().click();
  await slider.focus();
  await page.keyboard.press('Home');
  await page.waitForTimeout(300);
  const box = await page.locator('canvas').boundingBox();
  await page.mouse.click(box.x + box.width * 0.55, box.y + box.height * 0.4);
  await page.waitForSelector('.part');
  await page.close();
}

/** At the machine: a figure ticked and a step done are still so after a reload. */
async function machine(context) {
  const { page } = await open(context, url, { width: 820, height: 1180, hash: '#build' });
  await page.getByRole('link', { name: 'At the machine' }).click();
  await page.waitForSelector('.machine');
  assert.match(await page.locator('.machine').innerText(), /Stop the machine before you touch this screen/);
  for (let i = 0; i < 60 && (await page.locator('.machine label input[type=checkbox]').count()) === 0; i++) {
    await page.getByRole('button', { name: 'Done' }).click();
  }
  const size = await page.locator('.machine .number').first().evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
  assert.equal(size, 72, 'figures to set are 72 px high');
  await page.locator('.machine label input').first().check();
  for (const b of await page.locator('.machine nav button').all()) {
    const box = await b.boundingBox();
    assert.ok(box.height >= 72, 'buttons for gloves');
  }
  const back = await page.locator('.machine nav .back').boundingBox();
  const done = await page.locator('.machine nav .done').boundingBox();
  assert.ok(back.x + back.width + 16 <= done.x, 'Back stands left of Done, apart');
  await page.reload();
  await page.waitForSelector('.machine label input');
  assert.ok(await page.locator('.machine label input').first().isChecked());
  await page.getByRole('link', { name: 'Back to the bench' }).click();
  await page.waitForSelector('ol input[type=checkbox]');
  assert.ok(await page.locator('ol input[type=checkbox]').first().isChecked());
  await page.close();
}

/** Every page, look and size: no violations, nothing wider than the screen, touch targets. */
async function everywhere(context) {
  const bad = [];
  for (const look of ['day', 'evening', 'sun']) {
    for (const [width, height] of sizes) {
      // Every look has the same places: other sizes of the other looks in the long run only.
      if (look !== 'day' && width !== 820 && process.env.LONG !== '1') continue;
      const { page, faults } = await open(context, url, { width, height, look, still: false });
      await page.evaluate(axe);
      for (const name of names) {
        await page.evaluate((h) => (location.hash = h), name);
        await page.waitForSelector(name === 'machine' ? '.machine' : `nav a[href="#${name}"][aria-current]`);
        if (width < 640 && name !== 'machine') {
          const folded = page.locator('aside h2 button[aria-expanded=false]');
          while ((await folded.count()) > 0) await folded.first().click();
        }
        await page.waitForTimeout(100);
        const where = `${name} ${width} ${look}`;
        const { violations } = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
        for (const v of violations) bad.push(`${where}: ${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160)).join(' | ')}`);
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        if (over > 0) bad.push(`${where}: ${over} px wider than the screen`);
        const small = await page.evaluate(() => [...document.querySelectorAll('button, input:not([type=checkbox]):not([type=range])')].filter((e) => {
          const b = e.getBoundingClientRect();
          return b.width > 0 && (b.height < 32 || b.width < 32);
        }).map((e) => e.outerHTML.slice(0, 120)));
        if (small.length > 0) bad.push(`${where}: too small to touch: ${small.slice(0, 3).join(' | ')}`);
        await page.screenshot({ path: join(pictures, `${name}-${width}-${look}.png`) });
      }
      for (const f of faults) bad.push(`${width} ${look}: ${f}`);
      await page.close();
    }
  }
  assert.deepEqual(bad, []);
}

await browse(chromium, async (context) => {
  for (const test of [change, elsewhere, lost, choose, machine, everywhere]) {
    const start = Date.now();
    context.setDefaultTimeout(120000);
    try {
      await test(context);
      console.log(`ok ${test.name} (${Date.now() - start} ms)`);
    } catch (e) {
      process.exitCode = 1;
      console.log(`FAILED ${test.name}: ${e.stack}`);
      const page = context.pages().at(-1);
      await page?.screenshot({ path: join(pictures, `failed-${test.name}.png`) }).catch(() => {});
    }
    for (const page of context.pages().slice(1)) await page.close();
  }
});
