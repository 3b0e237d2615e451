import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { MAX_TEXT } from '../../src/plan/open.ts';
import { savePlan } from '../../src/plan/save.ts';
import { openPlanFile, planFileName, savePlanFile } from '../../src/storage/file.ts';
import { vanWithFeed } from '../desk/plans.ts';

afterEach(() => vi.restoreAllMocks());

/** Of any script, control characters and signs beyond the first plane included; lone surrogates are no characters. */
const anyCharacter = fc
  .oneof(fc.integer({ min: 0, max: 0x2ff }), fc.integer({ min: 0, max: 0x10ffff }))
  .filter((code) => code < 0xd800 || code > 0xdfff)
  .map((code) => String.fromCodePoint(code));

describe('the name of a plan file', () => {
  it.each([
    ['Sound van', 'Sound-van.plan.json'],
    ['Größe 2/0 – für Łódź', 'Größe-2-0-für-Łódź.plan.json'],
    ['../../etc/passwd', 'etc-passwd.plan.json'],
    ['a:b*c?"<>|\\', 'a-b-c.plan.json'],
    ['車', '車.plan.json'],
    ['', 'plan.plan.json'],
    ['...', 'plan.plan.json'],
  ])('of %j is %s', (name, file) => {
    expect(planFileName(name)).toBe(file);
  });

  it('is short and harmless whatever the plan is called', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200, unit: anyCharacter }), (name) => {
        const file = planFileName(name);
        expect(new TextEncoder().encode(file).length).toBeLessThanOrEqual(255);
        expect(file).toMatch(/^[\p{L}\p{M}\p{N}_-]+\.plan\.json$/u);
      }),
    );
  });
});

describe('saving a file', () => {
  it('hands out the canonical text under the plan name', async () => {
    const blobs: Blob[] = [];
    vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      blobs.push(blob as Blob);
      return 'blob:plan';
    });
    const clicked: string[] = [];
    vi.spyOn(HTMLElement.prototype, 'click').mockImplementation(function (this: HTMLElement) {
      if (this instanceof HTMLAnchorElement) clicked.push(`${this.download} ${this.href}`);
    });
    const plan = vanWithFeed();
    expect(savePlanFile(plan, document)).toBe('Van.plan.json');
    expect(clicked).toEqual(['Van.plan.json blob:plan']);
    expect(await blobs[0]?.text()).toBe(savePlan(plan));
    expect(document.querySelector('a')).toBeNull();
  });
});

describe('opening a file', () => {
  it('gives back the plan that was saved', async () => {
    const plan = vanWithFeed();
    const opened = await openPlanFile(new File([savePlan(plan)], 'van.plan.json'));
    expect(opened.ok && savePlan(opened.plan)).toBe(savePlan(plan));
  });

  it('refuses what is no plan, by its code', async () => {
    expect(await openPlanFile(new File(['hello'], 'x.json'))).toMatchObject({ ok: false, reason: { code: 'notJson' } });
    expect(await openPlanFile(new File([''], 'x.json'))).toMatchObject({ ok: false, reason: { code: 'empty' } });
    expect(await openPlanFile(new File(['{}'], 'x.json'))).toMatchObject({ ok: false, reason: { code: 'notAPlan' } });
  });

  it('refuses too large a file without reading it', async () => {
    const file = new File(['x'], 'film.mp4');
    const text = vi.spyOn(file, 'text');
    Object.defineProperty(file, 'size', { value: 4 * MAX_TEXT });
    expect(await openPlanFile(file)).toMatchObject({ ok: false, reason: { code: 'tooLarge' } });
    expect(text).not.toHaveBeenCalled();
  });

  it('says when a file cannot be read at all', async () => {
    const file = new File(['x'], 'gone.json');
    vi.spyOn(file, 'text').mockRejectedValue(new DOMException('gone', 'NotReadableError'));
    expect(await openPlanFile(file)).toMatchObject({ ok: false, reason: { code: 'unreadable' } });
  });
});
