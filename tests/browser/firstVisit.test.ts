import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import { middleOf } from '../support/finger.ts';
import { drawn, readRecords, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { areaMm2, STOCK } from './support/publishedTables.ts';
import {
  type FigureLabel,
  figureButton,
  headline,
  metres,
  savedText,
  shownValue,
  undoDepth,
  untilSaved,
  withoutIds,
} from './support/reading.ts';
import { openFile, openWhy } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';
import { readWhy, workOut } from './support/whys.ts';

/** What a newcomer meets: the example with its answer, the reasons behind it, and a page that loses nothing. */
let opened: OpenedPage;
let user: TouchUser;
let example: string;

const EXAMPLE_NAME = 'Carnival sound van';

beforeAll(async () => {
  example = await (await fetch(new URL('demo.plan.json', inject('pageUrl')))).text();
});
beforeEach(async () => {
  opened = await openForTest();
  user = new TouchUser(opened);
  await untilText(opened.page, /\d to stop for/);
});

const planName = (): Promise<string> => opened.page.getByRole('textbox', { name: 'Plan name' }).inputValue();

/** Places a ground point in the cargo space. */
async function change(): Promise<void> {
  const whole = await user.pane('Whole vehicle').boundingBox();
  if (whole === null) throw new Error('The whole vehicle is not to be seen.');
  await user.take('Ground', 'Fittings');
  await opened.finger.tap({ x: whole.x + whole.width * 0.62, y: whole.y + whole.height * 0.8 });
}

describe('the first visit', () => {
  it('shows the example and its one mistake', async () => {
    const { page } = opened;
    expect(await planName()).toBe(EXAMPLE_NAME);
    expect(await headline(page)).toBe('1 to stop for');
    // battery (0.55, 1.40), bend (0.30, 1.30), fuse (0.30, 0.75), with 10 cm of rise: as the file of the example has it
    const unprotectedM = Math.hypot(0.25, 0.1) + 0.55 + 0.1;
    expect(metres(await shownValue(page, 'Longest unprotected'))).toBe(Number(unprotectedM.toPrecision(3)));
    const findings = page.getByRole('region', { name: 'Findings' });
    const urgent = findings.getByRole('button', { name: /^(Stop|Fix)/ });
    expect(await urgent.count()).toBe(1);
    expect(await urgent.first().innerText()).toContain('The first fuse is 91.9 cm of cable from Battery.');
    // beyond 450 mm of bare cable: our rules, section 6
    expect(await urgent.first().innerText()).toContain('Bring it within 45 cm.');
    // looked at only: nothing is kept yet
    expect(await readRecords(page, 'feedrun', 'plans')).toEqual([]);
    opened.expectClean();
  });

  it('a first change makes a copy, and the next visit opens that', async () => {
    const { page } = opened;
    await change();
    await untilText(page, `You are working on your own copy of ${EXAMPLE_NAME}.`);
    const mine = await untilSaved(page, (text) => text.includes('"Ground point"'));
    const idOf = (text: string) => /"id": "([^"]+)"/.exec(text)?.[1];
    expect(idOf(mine)).not.toBe(idOf(example));
    // taken back, it is the example but for its id
    await user.tap(user.button(/^Undo:/));
    const back = await untilSaved(page, (text) => !text.includes('"Ground point"'));
    expect(withoutIds(back)).toBe(withoutIds(example));
    await user.tap(user.button(/^Redo:/));
    await untilSaved(page, (text) => text === mine);

    await page.reload();
    await untilText(page, /\d to stop for/);
    await untilText(page, 'Ground point');
    expect(await planName()).toBe(EXAMPLE_NAME);
    expect(await savedText(page)).toBe(mine);
    expect(await undoDepth(page)).toBe(0);
    opened.expectClean();
  });
});

describe('a file that is no good', () => {
  const [battery = '', fuse = ''] = ['XriEoAfn', '2DJ2K54x'];
  const BAD: readonly (readonly [what: string, spoil: (text: string) => string, says: string])[] = [
    ['empty', () => '', 'the file is empty.'],
    ['of something else', () => 'Dear diary', 'it is not the text of a plan (line 1, '],
    ['cut off', (text) => text.slice(0, text.length / 2), 'the file stops in the middle.'],
    [
      'of a newer version',
      (text) => text.replace('"version": 4', '"version": 5'),
      'it is version 5, and this page knows 4',
    ],
    [
      'with a run to nowhere',
      (text) => text.replace(`"fittingId": "${battery}"`, '"fittingId": "nowhere"'),
      "fitting 'nowhere' is named and not there, at ",
    ],
    [
      'with one id twice',
      (text) => text.replace(`"id": "${fuse}"`, `"id": "${battery}"`),
      `'${battery}' stands for two things`,
    ],
    ['with an endless number', (text) => text.replace('"xM": 0.55', '"xM": 1e999'), 'is no number, at '],
  ];

  /** Drags a file from outside onto the sheet, through the browser's own input path. */
  async function dragIn(path: string): Promise<void> {
    const { page } = opened;
    const session = await opened.context.newCDPSession(page);
    const at = await middleOf(user.pane('Engine bay'));
    const data = { items: [], files: [path], dragOperationsMask: 1 };
    for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
      await session.send('Input.dispatchDragEvent', { type, ...at, data });
    }
    await drawn(page);
  }

  it('is refused in one line, opened or dragged in, and the open plan stays as it was', async () => {
    const { page } = opened;
    await change();
    const mine = await untilSaved(page, (text) => text.includes('"Ground point"'));
    const shown = await page.getByRole('list', { name: 'Figures' }).innerText();
    const folder = mkdtempSync(join(tmpdir(), 'plan-'));
    try {
      for (const [index, [what, spoil, says]] of BAD.entries()) {
        const bad = spoil(example);
        expect(bad, what).not.toBe(example);
        const name = `bad-${index}.plan.json`;
        if (index % 2 === 0) await openFile(user, name, bad);
        else {
          writeFileSync(join(folder, name), bad);
          await dragIn(join(folder, name));
        }
        await untilText(page, says);
        const message = page.getByRole('status').filter({ hasText: 'Not opened: ' });
        expect(await message.count(), what).toBe(1);
        expect(await message.getByRole('paragraph').innerText(), what).toMatch(
          /^Not opened: [^\n]+\. [^\n]+\. Your open plan is as it was\.$/,
        );
        expect(await savedText(page), what).toBe(mine);
        expect(await planName(), what).toBe(EXAMPLE_NAME);
        expect(await page.getByRole('list', { name: 'Figures' }).innerText(), what).toBe(shown);
        expect(await undoDepth(page), what).toBe(1);
        await user.tap(user.button('Dismiss'));
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
    // and a good one opens
    await openFile(user, 'good.plan.json', example.replace(EXAMPLE_NAME, 'Ferry van'));
    await untilText(page, 'Ferry van is open.');
    expect(await planName()).toBe('Ferry van');
    opened.expectClean();
  });
});

describe('why', () => {
  const dialogOf = (label: FigureLabel) => opened.page.getByRole('dialog', { name: `${label}: why` });

  /** What a figure comes to, worked out from what its reason shows. */
  async function workedOut(label: FigureLabel): Promise<number> {
    return workOut(await readWhy(dialogOf(label)));
  }

  /** The area of a conductor shown by its gauge, mm2: SAE J1127. */
  function areaShown(text: string): number {
    const size = STOCK.find((one) => text === `SAE ${one}`);
    if (size === undefined) throw new Error(`'${text}' is no size in stock.`);
    return areaMm2(size);
  }

  it('each of the four figures follows from what is shown, and closing the reason changes nothing', async () => {
    const { page } = opened;
    const labels = ['Feed conductor', 'Main fuse', 'Worst drop', 'Longest unprotected'] as const;
    const worked: Partial<Record<FigureLabel, number>> = {};
    const shown: Partial<Record<FigureLabel, string>> = {};
    // what lies below the first look comes by itself, and last
    await untilText(page, 'What was checked');
    const before = await page.getByRole('region', { name: 'Answer' }).innerText();
    for (const label of labels) {
      shown[label] = await shownValue(page, label);
      await openWhy(user, label);
      worked[label] = await workedOut(label);
      await user.tap(dialogOf(label).getByRole('button', { name: 'Close' }));
      expect(await page.getByRole('dialog').count()).toBe(0);
    }
    expect(await page.getByRole('region', { name: 'Answer' }).innerText()).toBe(before);
    expect(await undoDepth(page)).toBe(0);

    expect(worked['Feed conductor']).toBeCloseTo(areaShown(shown['Feed conductor'] ?? ''), 3);
    expect(`${worked['Main fuse']} A`).toBe(shown['Main fuse']);
    expect(`${worked['Worst drop']?.toFixed(2)} V`).toBe(shown['Worst drop']);
    expect(Number(worked['Longest unprotected']?.toPrecision(3))).toBe(metres(shown['Longest unprotected'] ?? ''));
    opened.expectClean();
  });

  it('an assumption changed in a reason changes the figure, and can be taken back', async () => {
    const { page } = opened;
    const label = 'Feed conductor';
    const before = areaShown(await shownValue(page, label));
    await openWhy(user, label);
    const limit = dialogOf(label).getByLabel('limit of voltage drop', { exact: true });
    expect(await limit.inputValue()).toBe('0.03');
    await user.write(limit, '0.02');
    await expect.poll(async () => areaShown(await shownValue(page, label))).toBeGreaterThan(before);
    expect(await workedOut(label)).toBeCloseTo(areaShown(await shownValue(page, label)), 3);
    await user.tap(dialogOf(label).getByRole('button', { name: 'Close' }));

    expect(await undoDepth(page)).toBe(1);
    await user.tap(user.button(/^Undo:/));
    await expect.poll(async () => areaShown(await shownValue(page, label))).toBe(before);
    expect(await figureButton(page, label).isEnabled()).toBe(true);
    const back = await untilSaved(page, (text) => text.includes('"value": 0.03,'));
    expect(withoutIds(back)).toBe(withoutIds(example));
    opened.expectClean();
  });
});
