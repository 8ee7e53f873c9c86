// Takes pictures of every page, look and size: node tests/shots.js CHROMIUM URL FOLDER [PAGES] [SIZES] [LOOKS]
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { browse, open } from './browser.js';

const [chromium, url, folder, pages = 'holds,timber,cut,set,build,over,machine', sizes = '360,820,1440', looks = 'day'] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
await browse(chromium, async (context) => {
  for (const look of looks.split(',')) {
    for (const size of sizes.split(',')) {
      for (const name of pages.split(',')) {
        const { page, faults } = await open(context, url, { width: Number(size), height: size === '360' ? 740 : size === '820' ? 1180 : 900, look, hash: '#' + name });
        await page.waitForTimeout(150);
        await page.screenshot({ path: join(folder, `${name}-${size}-${look}.png`), fullPage: process.env.FULL === '1' });
        if (faults.length > 0) console.log(name, size, look, faults);
        await page.close();
      }
    }
  }
});
