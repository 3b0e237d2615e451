/**
 * `npm run bench:drag`: JavaScript time (of its own thread) of a frame while a fuse is dragged, for 20, 200 and 1,000
 * fittings, at a quarter of the processor's speed and one pixel per CSS pixel; beside a bare Konva stage with the same
 * shapes, which drags the fuse with its runs on a layer of their own (`bareStage.ts`). Both in one run of one browser.
 * With assessment, stripes, live labels and the panel included the page is to need at most twice the bare stage's time,
 * and at 200 fittings 95 of 100 frames less than 16.7 ms.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { buildForRelease, buildPage, servePage } from '../../src/cli/page.ts';
import { findChromium } from '../../src/cli/setup.mjs';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { launchBrowser, VIEWPORTS } from '../support/browser.ts';
import { drawn } from '../support/reading.ts';
import { framesOf } from './frames.ts';
import { spreadPlan } from './spreadPlan.ts';

const COUNTS = [20, 200, 1_000] as const;
const MOVES = 240;
/** So that the browser has compiled what runs with each of them. */
const WARM_MOVES = 70;
/** Every second frame: with one in each, drawing takes both processors, and the throttle goes without its own time. */
const MOVE_MS = 33;
const THROTTLE = 4;
const MOST_TIMES_BARE = 2;
const FRAME_MS = 16.7;
const CACHE = 'node_modules/.cache/feedrun/drag';
const ROOT = fileURLToPath(new URL('../..', import.meta.url));

async function buildBare(outDir: string): Promise<void> {
  const root = join(ROOT, CACHE, 'bare');
  rmSync(root, { recursive: true, force: true });
  mkdirSync(root, { recursive: true });
  const style = '<style>body{margin:0}</style>';
  const script = `<script type="module" src="${join(ROOT, 'tests/bench/bareStage.ts')}"></script>`;
  const page = `<!doctype html><title>Bare</title>${style}<div id="root"></div>${script}`;
  writeFileSync(join(root, 'index.html'), page);
  await buildForRelease({ root, configFile: false, build: { outDir, emptyOutDir: true, target: 'es2022' } });
}

/** Hands a plan to the page as a file dropped onto it. */
async function drop(page: Page, plan: Plan): Promise<void> {
  await page.evaluate((text) => {
    const carried = new DataTransfer();
    carried.items.add(new File([text], 'drag.plan.json', { type: 'application/json' }));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
  }, savePlan(plan));
  await page.getByText('Plan is open.').waitFor({ timeout: 60_000 });
  await drawn(page);
}

/**
 * JavaScript time of each frame, ms, of a drag from `middle` in a small circle, one move to a frame. The moves go straight
 * to the browser, and the page is asked nothing meanwhile: either would be script in it too, up to 8 ms a frame in a large
 * page.
 */
async function dragged(browser: Browser, page: Page, middle: { x: number; y: number }): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: THROTTLE });
  const tell = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', index: number) => {
    const angle = (index * Math.PI) / 15;
    const [x, y] = [middle.x + 60 * Math.sin(angle), middle.y + 40 * (1 - Math.cos(angle))];
    const buttons = type === 'mouseReleased' ? 0 : 1;
    return session.send('Input.dispatchMouseEvent', { type, x, y, button: 'left', buttons, clickCount: 1 });
  };
  const step = async (index: number) => {
    await Promise.all([tell('mouseMoved', index), setTimeout(MOVE_MS)]);
  };
  // a finger moves on whether or not the page has heard that it came down
  await Promise.all([tell('mousePressed', 0), step(1)]);
  for (let index = 2; index <= WARM_MOVES; index += 1) await step(index);
  await browser.startTracing(page, { categories: ['devtools.timeline', 'v8.execute', '__metadata'] });
  for (let index = 1; index <= MOVES; index += 1) await step(WARM_MOVES + index);
  const trace = await browser.stopTracing();
  await tell('mouseReleased', WARM_MOVES + MOVES);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  return framesOf(trace.toString('utf8'));
}

async function pageFrames(browser: Browser, url: string, fittings: number): Promise<number[]> {
  const context = await browser.newContext({ viewport: VIEWPORTS.tablet, deviceScaleFactor: 1, locale: 'en' });
  const page = await context.newPage();
  await page.goto(url);
  await page.getByText('Longest unprotected').first().waitFor();
  await drop(page, spreadPlan(fittings));
  const box = await page.locator('.sketch-pane').first().boundingBox();
  if (box === null) throw new Error('The sketch has no pane.');
  const frames = await dragged(browser, page, { x: box.x + box.width / 2, y: box.y + box.height / 2 });
  // by its label: to look for a role a thousand rows of tables would have to be read
  await page.locator('button[aria-label^="Undo:"][aria-label$="1 step"]').waitFor({ timeout: 60_000 });
  await context.close();
  return frames;
}

async function bareFrames(browser: Browser, url: string, fittings: number): Promise<number[]> {
  const context = await browser.newContext({ viewport: VIEWPORTS.tablet, deviceScaleFactor: 1 });
  const page = await context.newPage();
  await page.goto(`${url}?n=${fittings}`);
  await page.locator('body[data-ready]').waitFor();
  const { width, height } = VIEWPORTS.tablet;
  const frames = await dragged(browser, page, { x: width / 2, y: height / 2 });
  await context.close();
  return frames;
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

const chromium = findChromium(process.env);
if (chromium) process.env.CHROME_PATH = chromium;
const [pageDir, bareDir] = [`${CACHE}/page`, join(ROOT, CACHE, 'bareBuilt')];
await buildPage(pageDir);
await buildBare(bareDir);
const [served, bare] = [await servePage(pageDir, '127.0.0.1', 0), await servePage(bareDir, '127.0.0.1', 0)];
const browser = await launchBrowser();
console.log(
  `JavaScript time (of its own thread) of a frame while a fuse is dragged, ms, ${THROTTLE}x throttle, ${MOVES} frames`,
);
console.log('  fittings   page p50    p95   bare p50    p95   times p50    p95');
let isMet = true;
for (const fittings of COUNTS) {
  const [own, floor] = [await pageFrames(browser, served.url, fittings), await bareFrames(browser, bare.url, fittings)];
  const [p50, p95, floor50, floor95] = [own, floor].flatMap((frames) => [
    quantile(frames, 0.5),
    quantile(frames, 0.95),
  ]);
  if (p50 === undefined || p95 === undefined || floor50 === undefined || floor95 === undefined) continue;
  const cells = [p50, p95, floor50, floor95].map((ms) => ms.toFixed(1).padStart(8));
  const times = [p50 / floor50, p95 / floor95].map((ratio) => ratio.toFixed(2).padStart(8));
  console.log(`  ${String(fittings).padStart(8)} ${[...cells, ...times].join('')}`);
  isMet &&= p50 <= MOST_TIMES_BARE * floor50 && p95 <= MOST_TIMES_BARE * floor95;
  if (fittings === 200) isMet &&= p95 < FRAME_MS;
}
await browser.close();
await Promise.all([served.close(), bare.close()]);
if (!isMet) {
  console.error(
    `Expected: at most ${MOST_TIMES_BARE} times the bare stage, and p95 under ${FRAME_MS} ms at 200 fittings.`,
  );
  process.exitCode = 1;
}
