/**
 * `npm run shots`: builds and serves the page, and takes a picture of every scene at every screen size into .shots/.
 * `npm run shots -- demo phone` takes only pictures whose name has one of the words; `npm run shots -- --readme` takes
 * the one picture the README shows.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildPage, servePage } from '../src/cli/page.ts';
import { findChromium } from '../src/cli/setup.mjs';
import { savePlan } from '../src/plan/save.ts';
import {
  openDialog,
  openFile,
  openList,
  openMore,
  openWhy,
  selectFirst,
  selectInList,
} from './browser/support/screens.ts';
import { TouchUser } from './browser/support/touch.ts';
import { launchBrowser, type OpenedPage, openPage, VIEWPORTS, type ViewportName } from './support/browser.ts';
import { everyFitting } from './support/everyFitting.ts';
import { drawn } from './support/reading.ts';

interface Scene {
  readonly name: string;
  /** Brings the freshly opened page to what the picture is to show. */
  readonly act: (opened: OpenedPage) => Promise<void>;
}

const SCENES: readonly Scene[] = [
  { name: 'demo', act: async () => undefined },
  { name: 'fuse', act: (opened) => selectFirst(new TouchUser(opened), 'Fuses') },
  { name: 'amplifier', act: (opened) => selectFirst(new TouchUser(opened), 'Amplifiers') },
  { name: 'run', act: (opened) => selectFirst(new TouchUser(opened), 'Runs') },
  { name: 'list', act: (opened) => openList(new TouchUser(opened)) },
  { name: 'why', act: (opened) => openWhy(new TouchUser(opened), 'Feed conductor') },
  { name: 'newPlan', act: (opened) => openDialog(new TouchUser(opened), 'New plan') },
  { name: 'settings', act: (opened) => openDialog(new TouchUser(opened), 'Settings') },
  { name: 'legend', act: (opened) => openDialog(new TouchUser(opened), 'Legend') },
  { name: 'view', act: (opened) => openDialog(new TouchUser(opened), 'Work view', 'View') },
  { name: 'sun', act: (opened) => chosen(opened, { theme: 'sun' }) },
  { name: 'dark', act: (opened) => chosen(opened, { theme: 'dark' }) },
  { name: 'left', act: (opened) => chosen(opened, { side: 'left' }) },
  { name: 'customer', act: (opened) => chosen(opened, { face: 'customer' }) },
  { name: 'customer-dark', act: (opened) => chosen(opened, { face: 'customer', theme: 'dark', side: 'left' }) },
  { name: 'class', act: (opened) => chosen(opened, { face: 'class' }) },
  { name: 'class-asking', act: (opened) => chosen(opened, { face: 'class', figures: 'hidden' }) },
  { name: 'moreFittings', act: (opened) => openMore(new TouchUser(opened)) },
  { name: 'every', act: (opened) => openEvery(new TouchUser(opened)) },
  ...['Battery', 'Alternator', 'Fused take-off', 'Capacitor', 'Battery switch', 'Distribution block'].map((name) => ({
    name: `every-${name.replace(/ /g, '')}`,
    act: async (opened: OpenedPage) => {
      const user = new TouchUser(opened);
      await openEvery(user);
      await selectInList(user, name);
    },
  })),
];

/** A later visit with these choices of the device. */
async function chosen({ page }: OpenedPage, choices: Readonly<Record<string, string>>): Promise<void> {
  await page.evaluate((all) => {
    for (const [name, value] of Object.entries(all)) localStorage.setItem(`feedrun-${name}`, value);
  }, choices);
  await page.reload();
  await page.getByRole('region', { name: 'Answer' }).getByRole('heading', { level: 2 }).first().waitFor();
}

/** The plan with one of every kind in it, opened as a file. */
async function openEvery(user: TouchUser): Promise<void> {
  await openFile(user, 'every.plan.json', savePlan(everyFitting()));
  await user.tap(user.button('Dismiss'));
}

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const OUT_DIR = 'node_modules/.cache/feedrun/shots-page';

interface Shot {
  readonly scene: Scene;
  readonly viewport: ViewportName;
  readonly file: string;
}

function shotsAskedFor(args: readonly string[]): Shot[] {
  const [first] = SCENES;
  if (args.includes('--readme') && first) return [{ scene: first, viewport: 'tablet', file: 'public/feedrun.png' }];
  const viewports = Object.keys(VIEWPORTS) as ViewportName[];
  return SCENES.flatMap((scene) =>
    viewports.map((viewport) => ({ scene, viewport, file: `.shots/${scene.name}-${viewport}.png` })),
  ).filter(({ file }) => args.length === 0 || args.some((word) => file.includes(word)));
}

async function main(): Promise<void> {
  const shots = shotsAskedFor(process.argv.slice(2));
  if (shots.length === 0) throw new Error('No scene and no screen has such a name.');
  const chromium = findChromium(process.env);
  if (chromium) process.env.CHROME_PATH = chromium;
  mkdirSync(join(ROOT, '.shots'), { recursive: true });
  await buildPage(OUT_DIR);
  const served = await servePage(OUT_DIR, '127.0.0.1', 0);
  const browser = await launchBrowser();
  try {
    for (const { scene, viewport, file } of shots) {
      const opened = await openPage(browser, served.url, viewport);
      // the verdict comes with a chunk of its own, and the sheet is drawn with it
      await opened.page.getByRole('region', { name: 'Answer' }).getByRole('heading', { level: 2 }).first().waitFor();
      await scene.act(opened);
      await opened.page.evaluate('document.fonts.ready.then(() => undefined)');
      await drawn(opened.page);
      await opened.page.screenshot({ path: join(ROOT, file) });
      console.log(file);
      for (const fault of opened.faults) console.warn(`  ${fault}`);
      await opened.close();
    }
  } finally {
    await browser.close();
    await served.close();
  }
}

await main();
