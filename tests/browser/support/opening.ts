/**
 * The page under test, opened for one test or for all of a file, in a context of its own: nothing stored, nothing
 * cached. The files that one worker runs share its browser, which takes longer to start than a page to open.
 */
import type { Browser, BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll, inject, onTestFinished } from 'vitest';
import { launchBrowser, type OpenedPage, openPage, type ViewportName } from '../../support/browser.ts';

let launched: Promise<Browser> | undefined;

/** This worker's browser, launched for the first who asks, and anew once it is gone. It ends with the worker. */
export function sharedBrowser(): Promise<Browser> {
  launched ??= launchBrowser().then((browser) =>
    browser.once('disconnected', () => {
      launched = undefined;
    }),
  );
  return launched;
}

const open = async (screen: ViewportName, options?: BrowserContextOptions): Promise<OpenedPage> =>
  openPage(await sharedBrowser(), inject('pageUrl'), screen, options);

/** A page for the test that is running, also from its `beforeEach`; closed when the test is over, passed or failed. */
export async function openForTest(
  screen: ViewportName = 'tablet',
  options?: BrowserContextOptions,
): Promise<OpenedPage> {
  const opened = await open(screen, options);
  onTestFinished(() => opened.close());
  return opened;
}

/**
 * A page that all tests of the file or `describe` around this share: opened before the first of them, handed to `begin`,
 * which brings it to where they start, and closed after the last.
 */
export function openForAll(
  begin: (opened: OpenedPage) => Promise<void>,
  screen: ViewportName = 'tablet',
  options?: BrowserContextOptions,
): void {
  let opened: OpenedPage | undefined;
  beforeAll(async () => {
    opened = await open(screen, options);
    await begin(opened);
  });
  // a hook of its own: what `beforeAll` returns is not run when `begin` fails
  afterAll(() => opened?.close());
}
