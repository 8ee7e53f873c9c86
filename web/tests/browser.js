// Starts Debian's Chromium for one test run, in a profile of its own.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const flags = [
  '--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
  '--disable-component-update', '--disable-sync', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
];

export async function browse(executablePath, work) {
  const profile = mkdtempSync(join(tmpdir(), 'scantling-browser-'));
  const context = await chromium.launchPersistentContext(profile, { executablePath, args: flags, headless: true, reducedMotion: 'reduce' });
  try {
    return await work(context);
  } finally {
    await context.close();
    rmSync(profile, { recursive: true, force: true });
  }
}

/** Opens the app and waits until the piece is on show. */
export async function open(context, url, { width = 1440, height = 900, look = 'day', hash = '', still = true } = {}) {
  const page = await context.newPage();
  await page.setViewportSize({ width, height });
  const faults = [];
  page.on('console', (m) => m.type() === 'error' && faults.push(m.text()));
  page.on('pageerror', (e) => faults.push(String(e)));
  await page.addInitScript((l) => localStorage.setItem('scantling.look', l), look);
  await page.goto(url + hash);
  await page.waitForSelector('h1');
  if (still && (await page.locator('.view').count()) > 0) await page.waitForSelector('.view[data-loaded]:not([data-loaded=""])', { timeout: 120000 });
  return { page, faults };
}
