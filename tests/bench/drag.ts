/**
 * `npm run bench:drag`: JavaScript time (of its own thread) of a frame while a fuse is dragged, for 20, 200 and 1,000 fittings, at a quarter
 * of the processor's speed and one pixel per CSS pixel; beside a bare Konva stage that drags the same number of plates,
 * each with the run lines at it, on a layer of their own. Both in one run of one browser. With assessment, stripes, live
 * labels and the panel included the page is to need at most twice the bare stage's time, and at 200 fittings 95 of 100
 * frames less than 16.7 ms.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { buildForRelease, buildPage, servePage } from '../../src/cli/page.ts';
import { findChromium } from '../../src/cli/setup.mjs';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { launchBrowser, VIEWPORTS } from '../support/browser.ts';
import { drawn } from '../support/reading.ts';
import { framesOf } from './frames.ts';
import { planOfRuns } from './planOfRuns.ts';

const COUNTS = [20, 200, 1_000] as const;
const MOVES = 60;
const WARM_MOVES = 20;
const THROTTLE = 4;
const MOST_TIMES_BARE = 2;
const FRAME_MS = 16.7;
const CACHE = 'node_modules/.cache/feedrun/drag';
const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Rows above and below the middle of the board, from a share of them all, m: nothing lies over what is dragged. */
const clearOfMiddle = (share: number): number =>
  Math.round((share < 0.5 ? 3.4 * share : 1.6 + 3.4 * share) * 1e4) / 1e4;

/** A bench board of the largest size with the fittings in rows, and the main fuse in the very middle: where the pane's is. */
function spreadPlan(fittings: number): Plan {
  const plan = planOfRuns(fittings - 1, 'auto');
  const outline = { ...DEFAULT_OUTLINES.bench, lengthM: 12, widthM: 5 };
  const columns = Math.ceil(Math.sqrt((plan.fittings.length * 12) / 5));
  const rows = Math.ceil(plan.fittings.length / columns);
  const at = (index: number) => ({
    xM: Math.round((((index % columns) + 0.5) * 120_000) / columns) / 10_000,
    yM: clearOfMiddle((Math.floor(index / columns) + 0.5) / rows),
  });
  return {
    ...plan,
    sheets: plan.sheets.map((sheet) => ({ ...sheet, outline })),
    fittings: plan.fittings.map((one, index) => ({ ...one, at: one.id === 'main' ? { xM: 6, yM: 2.5 } : at(index) })),
    // as drawn: with the fuse move the unprotected length, every current and every drop
    runs: plan.runs.map((run) =>
      [run.from.fittingId, run.to.fittingId].includes('main') ? { ...run, tapedM: null } : run,
    ),
  };
}

/** The bare stage: what any page that drags this many plates on canvas has to do at least. */
const BARE = `
import Konva from 'konva/lib/Core';
import { Line } from 'konva/lib/shapes/Line';
const count = Number(new URLSearchParams(location.search).get('n'));
const stage = new Konva.Stage({ container: 'root', width: innerWidth, height: innerHeight });
const still = new Konva.Layer({ listening: false });
const moving = new Konva.Layer({ listening: false });
stage.add(still, moving);
const columns = Math.ceil(Math.sqrt(count * 2));
const place = (i) => ({ x: ((i % columns) + 0.5) * innerWidth / columns, y: (Math.floor(i / columns) + 0.5) * 2 * innerHeight / columns });
const line = (points, props) => new Line({ points, stroke: '#222', strokeWidth: 3, lineCap: 'round', perfectDrawEnabled: false, ...props });
for (let i = 1; i < count; i += 1) {
  const a = place(i - 1), b = place(i);
  still.add(line([a.x, a.y, b.x, b.y], { stroke: '#fff', strokeWidth: 7 }), line([a.x, a.y, b.x, b.y], { stroke: '#b00' }));
}
const plate = (at) => {
  const group = new Konva.Group({ x: at.x, y: at.y });
  group.add(line([-11, -11, 11, -11, 11, 11, -11, 11], { closed: true, fill: '#fff', strokeWidth: 1.5 }));
  for (const y of [-5, 0, 5]) group.add(line([-8, y, 8, y], { strokeWidth: 2 }));
  return group;
};
for (let i = 0; i < count; i += 1) still.add(plate(place(i)));
const held = plate({ x: innerWidth / 2, y: innerHeight / 2 });
const ends = [place(0), place(count - 1)];
const lines = ends.map(() => [line([], { stroke: '#fff', strokeWidth: 7 }), line([], { stroke: '#b00' })]);
moving.add(...lines.flat(), held);
const show = (x, y) => {
  held.position({ x, y });
  for (const [k, pair] of lines.entries()) for (const one of pair) one.points([ends[k].x, ends[k].y, x, y]);
  moving.batchDraw();
};
show(innerWidth / 2, innerHeight / 2);
let isDown = false;
addEventListener('pointerdown', () => { isDown = true; });
addEventListener('pointerup', () => { isDown = false; });
addEventListener('pointermove', (event) => { if (isDown) show(event.clientX, event.clientY); });
document.body.dataset.ready = 'yes';
`;

async function buildBare(outDir: string): Promise<void> {
  const root = join(ROOT, CACHE, 'bare');
  rmSync(root, { recursive: true, force: true });
  mkdirSync(root, { recursive: true });
  writeFileSync(join(root, 'main.js'), BARE);
  const style = '<style>body{margin:0}</style>';
  const page = `<!doctype html><title>Bare</title>${style}<div id="root"></div><script type="module" src="./main.js"></script>`;
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
 * JavaScript time of each frame, ms, of a drag from `middle` in a small circle: a move as soon as the one before has been
 * heard, which is with the next frame. Asking the page whether it has drawn would be script in it too.
 */
async function dragged(browser: Browser, page: Page, middle: { x: number; y: number }): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: THROTTLE });
  await page.mouse.move(middle.x, middle.y);
  const step = async (index: number) => {
    const angle = (index * Math.PI) / 15;
    await page.mouse.move(middle.x + 60 * Math.sin(angle), middle.y + 40 * (1 - Math.cos(angle)));
  };
  // a finger moves on whether or not the page has heard that it came down
  await Promise.all([page.mouse.down(), step(1)]);
  for (let index = 2; index <= WARM_MOVES; index += 1) await step(index);
  await browser.startTracing(page, { categories: ['devtools.timeline', 'v8.execute', '__metadata'] });
  for (let index = 1; index <= MOVES; index += 1) await step(WARM_MOVES + index);
  const trace = await browser.stopTracing();
  await page.mouse.up();
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
