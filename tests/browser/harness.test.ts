import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { axe, COLOUR_RULES } from '../support/axe.ts';
import { type OpenedPage, openPage } from '../support/browser.ts';
import { broken, clipped, crowded, overlaps, sidewaysScroll, smallTargets, torn } from '../support/layout.ts';
import { readRecords, untilText } from '../support/reading.ts';
import { sharedBrowser } from './support/opening.ts';

/**
 * The checks that the other browser tests rely on find the faults they are there for: each is shown a page with the
 * fault planted in it, and one without. The pages are its own, so that it says nothing of the page that is built.
 */
const BLANK = '<!doctype html><html lang="en"><title>Blank</title><link rel="icon" href="data:,"></html>';
const server = createServer((request, response) => {
  const found = request.url === '/';
  response.writeHead(found ? 200 : 404, { 'content-type': 'text/html' }).end(found ? BLANK : '');
});
let url = '';
let opened: OpenedPage | undefined;

beforeAll(async () => {
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
});
afterAll(async () => {
  await opened?.close();
  server.close();
});

/** Opens a blank page for its origin where none is open, then shows `body` in its place. */
async function show(body: string, head = ''): Promise<OpenedPage> {
  opened ??= await openPage(await sharedBrowser(), url, 'tablet');
  await opened.page.setContent(
    `<!doctype html><html lang="en"><head><title>Planted</title><meta name="viewport" content="width=device-width">
     <link rel="icon" href="data:,"><style>body { margin: 0 } button { position: absolute; width: 60px; height: 60px }
     ${head}</style></head><body>${body}</body></html>`,
  );
  return opened;
}

describe('a clean page', () => {
  // what went wrong in a page stays written down, so the next test takes another
  afterEach(async () => {
    await opened?.close();
    opened = undefined;
  });

  it('is clean, and stays clean while nothing goes wrong', async () => {
    const { expectClean } = await show('<p>Nothing here</p>');
    expect(() => expectClean()).not.toThrow();
  });

  it.each([
    ['a console error', "console.error('broken')", /console error: broken/],
    ['a console warning', "console.warn('odd')", /console warning: odd/],
    ['a page error', "setTimeout(() => { throw new Error('thrown') })", /page error: thrown/],
    ['a missing file', "fetch('./missing-file.bin').catch(() => 0)", /failed request: .*missing-file\.bin/],
    [
      'an off-origin request',
      "fetch('http://127.0.0.2:9/x').catch(() => 0)",
      /off-origin request: http:\/\/127\.0\.0\.2/,
    ],
  ])('is no longer clean after %s', async (_what, script, wanted) => {
    const { page, expectClean, faults } = await show('');
    await page.evaluate(script);
    await expect.poll(() => faults.join('\n')).toMatch(wanted);
    expect(() => expectClean()).toThrow(wanted);
    expect(() => expectClean([/./])).not.toThrow();
  });
});

describe('layout checks', () => {
  it('find nothing on a page without faults', async () => {
    const { page } = await show(
      '<button style="left: 0; top: 0">A</button><button style="left: 68px; top: 0">B</button>' +
        '<p style="margin-top: 100px">A sentence with <a href="#a">a link</a> in it.</p>',
    );
    expect(await overlaps(page)).toEqual([]);
    expect(await clipped(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await crowded(page)).toEqual([]);
    expect(await sidewaysScroll(page)).toEqual([]);
  });

  it('overlaps: two controls on one another, but not one scrolled out of sight behind the other', async () => {
    const both = '<button style="left: 0; top: 0">A</button><button style="left: 50px; top: 50px">B</button>';
    expect(await overlaps((await show(both)).page)).toHaveLength(1);
    const scrolled =
      '<div style="height: 60px; overflow: auto; position: relative"><button style="top: 60px">A</button></div>' +
      '<button style="top: 60px">B</button>';
    expect(await overlaps((await show(scrolled)).page)).toEqual([]);
  });

  it('clipped: a control cut by its box or by the screen, but not one that scrolling brings back', async () => {
    const box = (overflow: string) =>
      `<div style="height: 40px; overflow: ${overflow}; position: relative"><button>A</button></div>`;
    expect(await clipped((await show(box('hidden'))).page)).toHaveLength(1);
    expect(await clipped((await show(box('auto'))).page)).toEqual([]);
    const fixed = '<button style="position: fixed; bottom: -20px">A</button>';
    expect(await clipped((await show(fixed)).page)).toHaveLength(1);
  });

  it('clipped: text that leaves its box, but not text shortened with dots', async () => {
    const name = 'x'.repeat(200);
    expect(await clipped((await show(`<h1 style="width: 300px">${name}</h1>`)).page)).toHaveLength(1);
    const dots = 'width: 300px; overflow: hidden; text-overflow: ellipsis';
    expect(await clipped((await show(`<h1 style="${dots}">${name}</h1>`)).page)).toEqual([]);
  });

  it('smallTargets: a control under 44 px, but not one whose label makes up for it', async () => {
    expect(await smallTargets((await show('<button style="width: 43px">A</button>')).page)).toHaveLength(1);
    const labelled = '<label style="display: block; height: 48px"><input type="checkbox"> Taped</label>';
    expect(await smallTargets((await show(labelled)).page)).toEqual([]);
  });

  it('smallTargets: under 56 px where fingers are big', async () => {
    const button = (px: number) =>
      `<div data-fingers="big"><button style="width: ${px}px; height: 60px">A</button></div>`;
    expect(await smallTargets((await show(button(50))).page)).toHaveLength(1);
    expect(await smallTargets((await show(button(56))).page)).toEqual([]);
  });

  it('crowded: two controls less than 8 px apart, but not two that only tell', async () => {
    const pair = (px: number, look = '') => {
      const button = (left: number) => `<button class="${look}" style="left: ${left}px; width: 60px">A</button>`;
      return `${button(0)}${button(60 + px)}`;
    };
    expect(await crowded((await show(pair(6))).page)).toHaveLength(1);
    expect(await crowded((await show(pair(0))).page)).toHaveLength(1);
    expect(await crowded((await show(pair(8))).page)).toEqual([]);
    expect(await crowded((await show(pair(0, 'figure'))).page)).toEqual([]);
  });

  it('torn: a word parted at the end of a line, but not where a hyphen may be', async () => {
    const narrow = (text: string) => `<p style="width: 100px; overflow-wrap: anywhere">${text}</p>`;
    expect(await torn((await show(narrow('Hauptsicherungshalter'))).page)).toHaveLength(1);
    expect(await torn((await show(narrow('Haupt\u00adsicherungs\u00adhalter'))).page)).toEqual([]);
    expect(await torn((await show(narrow('two words of it'))).page)).toEqual([]);
  });

  it('broken: text that stands on two lines, but not one that has room on one', async () => {
    const narrow = (text: string) => `<p style="width: 40px">${text}</p>`;
    const { page } = await show(`${narrow('64.9 A')}${narrow('9 A')}`);
    expect(await broken(page.locator('p'))).toEqual(['64.9 A']);
  });

  it('sidewaysScroll: something wider than the screen, or than the panel it is in', async () => {
    const wide = '<div style="width: 1300px; height: 10px"></div>';
    expect(await sidewaysScroll((await show(wide)).page)).not.toEqual([]);
    const panel = `<div style="width: 340px; height: 300px; overflow-y: auto">${wide}</div>`;
    expect(await sidewaysScroll((await show(panel)).page)).toHaveLength(1);
  });
});

it('axe: an unlabelled field is found, a labelled one is not', async () => {
  expect(await axe((await show('<main><h1>A</h1><input></main>')).page)).toHaveLength(1);
  expect(await axe((await show('<main><h1>A</h1><label>B <input></label></main>')).page)).toEqual([]);
});

it('axe, rules of colour alone: grey on grey is found, an unlabelled field is not', async () => {
  const { page } = await show('<main><h1>Grey</h1><input></main>');
  expect(await axe(page, COLOUR_RULES)).toEqual([]);
  await page.addStyleTag({ content: 'h1 { color: #999; background: #888 }' });
  expect(await axe(page, COLOUR_RULES)).toHaveLength(1);
});

describe('the finger', () => {
  const LOG = `<div id="log"></div><script>
    for (const type of ['pointerdown', 'pointermove', 'pointerup', 'pointercancel']) addEventListener(type, (event) => {
      log.append(type.slice(7), event.isPrimary ? '1' : '2', ':', Math.round(event.clientX), ' ');
    });
  </script>`;
  const logged = () => opened?.page.evaluate(() => document.getElementById('log')?.textContent?.trim());
  const showLog = () => show(LOG, 'html { touch-action: none; height: 100% }');

  it('goes down, moves in steps and comes up', async () => {
    const { finger } = await showLog();
    await finger.drag({ x: 100, y: 100 }, { x: 200, y: 100 }, 2);
    expect(await logged()).toBe('down1:100 move1:150 move1:200 up1:200');
  });

  it('is on its way before a press would be a long one, however slowly the page draws', async () => {
    const { page, finger } = await showLog();
    const waitedMs = page.evaluate(
      () =>
        new Promise<number>((told) => {
          let [downMs, isSlow] = [0, true];
          addEventListener('pointerdown', (event) => {
            downMs = event.timeStamp;
          });
          addEventListener('pointermove', (event) => {
            isSlow = event.clientX < 120;
            if (!isSlow) told(event.timeStamp - downMs);
          });
          const slowFrame = () => {
            for (const start = performance.now(); performance.now() - start < 250; );
            if (isSlow) requestAnimationFrame(slowFrame);
          };
          requestAnimationFrame(slowFrame);
        }),
    );
    await finger.drag({ x: 100, y: 100 }, { x: 150, y: 100 });
    // two of its frames: a hand that waits for what it drew takes that long at least
    expect(await waitedMs).toBeLessThan(500);
  });

  it('is joined by a second that can be lifted by itself', async () => {
    const { finger } = await showLog();
    await finger.down({ x: 100, y: 100 }, 1);
    await finger.down({ x: 300, y: 100 }, 2);
    await finger.up(2);
    await finger.move({ x: 120, y: 100 }, 1, 1);
    await finger.up(1);
    expect(await logged()).toBe('down1:100 down2:300 up2:300 move1:120 up1:120');
  });

  it('can be taken away by the system', async () => {
    const { finger } = await showLog();
    await finger.down({ x: 100, y: 100 });
    await finger.cancel();
    expect(await logged()).toBe('down1:100 cancel1:100');
  });
});

describe('reading the page', () => {
  it('waits for text, and says what it read when the text does not come', async () => {
    const { page } = await show('<p id="p">Before</p>');
    await page.evaluate(() => setTimeout(() => document.getElementById('p')?.replaceChildren('2 to stop for'), 100));
    expect(await untilText(page, /\d to stop for/)).toContain('2 to stop for');
    await expect(untilText(page, 'nothing (like) this', 200)).rejects.toThrow('2 to stop for');
  });

  it('reads the records of a browser database without making one', async () => {
    const { page } = await show('');
    expect(await readRecords(page, 'planted', 'plans')).toEqual([]);
    expect(await page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name))).not.toContain(
      'planted',
    );
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          const opening = indexedDB.open('planted', 3);
          opening.onupgradeneeded = () => opening.result.createObjectStore('plans').put({ text: '{}' }, 'a');
          opening.onsuccess = () => {
            opening.result.close();
            done();
          };
        }),
    );
    expect(await readRecords(page, 'planted', 'plans')).toEqual([{ text: '{}' }]);
  });
});
