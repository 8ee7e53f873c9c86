// Writes the notices of everything that is bundled into the pages.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';

const bundled = ['svelte', 'three', '@fontsource-variable/atkinson-hyperlegible-next', 'esm-env', 'clsx', 'devalue'];
const parts = [];
for (const name of bundled) {
  const folder = new URL(`./node_modules/${name}/`, import.meta.url);
  let about;
  try {
    about = JSON.parse(readFileSync(new URL('package.json', folder), 'utf8'));
  } catch {
    continue; // not installed, hence not bundled
  }
  const licence = readdirSync(folder).find((f) => /^licen[cs]e/i.test(f));
  const text = licence ? readFileSync(new URL(licence, folder), 'utf8').trim() : '(the package carries no licence text)';
  parts.push(`${about.name} ${about.version}\n${about.license}\n\n${text}\n`);
}
writeFileSync(new URL('./dist/app/THIRD-PARTY.txt', import.meta.url), parts.join(`\n${'-'.repeat(72)}\n\n`));
