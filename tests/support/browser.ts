/**
 * The real browser, as the browser tests and the pictures use it. Knows nothing of the page's code: only what a
 * person in front of the page could see, touch or find in the browser's own tools.
 */
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { Finger } from './finger.ts';
import { drawn } from './reading.ts';

/** The screens the page is laid out for; all but the last are held in the hand. */
export const VIEWPORTS = {
  tablet: { width: 1180, height: 820 },
  tabletPortrait: { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
  phoneSideways: { width: 844, height: 390 },
  projector: { width: 1920, height: 1080 },
} as const;

export type ViewportName = keyof typeof VIEWPORTS;

/** A page in a browser context of its own (nothing stored, nothing cached), and what went wrong in it so far. */
export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly finger: Finger;
  /** Console errors and warnings, page errors, failed and off-origin requests, in the order they came. */
  readonly faults: readonly string[];
  /** Throws when there are faults, apart from those a test brought about itself and names by a pattern. */
  expectClean(expected?: readonly RegExp[]): void;
  close(): Promise<void>;
}

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Starts the system's Chromium, at CHROME_PATH (the test run sets it to the one it found on PATH). */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = process.env.CHROME_PATH;
  if (!executablePath) {
    throw new Error('No Chromium for the browser tests: install one (npm test does on Debian) or set CHROME_PATH.');
  }
  return chromium.launch({ executablePath, args: FLAGS });
}

/** Writes every fault of every page of a context into a list. */
function recordFaults(context: BrowserContext, origin: string): string[] {
  const faults: string[] = [];
  context.on('console', (message) => {
    const kind = message.type();
    if (kind === 'error' || kind === 'warning') faults.push(`console ${kind}: ${message.text()}`);
  });
  context.on('weberror', (error) => faults.push(`page error: ${error.error().message}`));
  context.on('request', (request) => {
    const url = new URL(request.url());
    const isLocal = ['data:', 'blob:'].includes(url.protocol) || url.origin === origin;
    if (!isLocal) faults.push(`off-origin request: ${request.url()}`);
  });
  context.on('requestfailed', (request) => {
    faults.push(`failed request: ${request.url()}: ${request.failure()?.errorText ?? 'no reason given'}`);
  });
  context.on('response', (response) => {
    if (response.status() >= 400) faults.push(`failed request: ${response.url()}: status ${response.status()}`);
  });
  return faults;
}

/**
 * Opens `url` on one of these screens, by default with touch where that screen is held in the hand.
 * Motion is reduced, so that a layout is measured where it comes to rest; `options` may say otherwise.
 */
export async function openPage(
  browser: Browser,
  url: string,
  viewport: ViewportName,
  options: BrowserContextOptions = {},
): Promise<OpenedPage> {
  const inHand = viewport !== 'projector';
  const context = await browser.newContext({
    viewport: VIEWPORTS[viewport],
    hasTouch: inHand,
    isMobile: inHand,
    reducedMotion: 'reduce',
    locale: 'en',
    ...options,
  });
  const faults = recordFaults(context, new URL(url).origin);
  const page = await context.newPage();
  await page.goto(url);
  await drawn(page);
  const finger = await Finger.on(page);
  return {
    page,
    context,
    finger,
    faults,
    expectClean(expected = []) {
      const left = faults.filter((fault) => !expected.some((pattern) => pattern.test(fault)));
      if (left.length > 0) throw new Error(`The page is not clean:\n${left.join('\n')}`);
    },
    close: () => context.close(),
  };
}
