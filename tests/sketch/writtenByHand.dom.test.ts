/** Labels and the figures at the finger are elements that are kept and changed: what does not change is not touched. */
import { describe, expect, it } from 'vitest';
import type { LabelShape } from '../../src/drawing/shapes.ts';
import { COLOURS } from '../../src/look/tokens.ts';
import { FingerSheet } from '../../src/sketch/fingerSheet.ts';
import { type FingerShown, fingerShown } from '../../src/sketch/fingerShown.ts';
import type { PlacedLabel } from '../../src/sketch/labelLayout.ts';
import { LabelSheet } from '../../src/sketch/labelSheet.ts';

function placed(id: string, title: string, figures: string, kind: LabelShape['kind'] = 'fitting'): PlacedLabel {
  const label: LabelShape = { key: `${kind}.${id}`, kind, id, at: { xM: 0, yM: 0 }, title, figures };
  return { label, xPx: 10, yPx: 20, widthPx: 80, heightPx: 20 };
}

const texts = (host: HTMLElement) => [...host.querySelectorAll('.sketch-label')].map(({ textContent }) => textContent);

describe('labels', () => {
  const look = { selectedId: null, scale: 1, isMoving: false };

  it('keep their elements while they move, and write only what has changed', () => {
    const host = document.createElement('div');
    const sheet = new LabelSheet(host);
    const [fuse, amp] = [placed('fuse', 'Main fuse', '125 A'), placed('amp', 'Amplifier', '300 W')];
    sheet.show([fuse, amp], look);
    const before = [...host.children];
    const changes: MutationRecord[] = [];
    const observer = new MutationObserver((records) => changes.push(...records));
    observer.observe(host, { attributes: true, childList: true, subtree: true, characterData: true });
    sheet.show([{ ...fuse, xPx: 50 }, amp], look);
    changes.push(...observer.takeRecords());
    expect([...host.children]).toEqual(before);
    expect((before[0] as HTMLElement).style.transform).toContain('translate(50px, 20px)');
    expect(changes.some(({ target }) => before[1]?.contains(target) === true)).toBe(false);
    sheet.show([{ ...fuse, label: { ...fuse.label, figures: '150 A' } }, amp], look);
    expect(texts(host)).toEqual(['Main fuse150 A', 'Amplifier300 W']);
  });

  it('go with what they name, and show what is picked out, proposed and grown', () => {
    const host = document.createElement('div');
    const sheet = new LabelSheet(host);
    const ghost = placed('ghost', 'Fuse', '');
    sheet.show([placed('amp', 'Amplifier', ''), { ...ghost, label: { ...ghost.label, isProposed: true } }], look);
    sheet.show([{ ...ghost, label: { ...ghost.label, isProposed: true } }], {
      ...look,
      selectedId: 'ghost',
      scale: 1.25,
    });
    expect(texts(host)).toEqual(['Fuse']);
    const [shown] = host.children;
    expect(shown?.hasAttribute('data-proposed')).toBe(true);
    expect(shown?.getAttribute('data-selected')).toBe('true');
    expect((shown as HTMLElement).style.maxWidth).toBe('95px');
    sheet.show([], look);
    expect(host.children).toHaveLength(0);
  });

  it('that find no place while a finger drags wait in the page unseen, and are gone when it has lifted', () => {
    const host = document.createElement('div');
    const sheet = new LabelSheet(host);
    const [fuse, amp] = [placed('fuse', 'Main fuse', '125 A'), placed('amp', 'Amplifier', '300 W')];
    const seen = () => [...host.children].filter((one) => (one as HTMLElement).style.visibility !== 'hidden');
    const moving = { ...look, isMoving: true };
    sheet.show([fuse, amp], moving);
    const [first] = host.children;
    sheet.show([amp], moving);
    expect(seen().map(({ textContent }) => textContent)).toEqual(['Amplifier300 W']);
    sheet.show([fuse, amp], moving);
    expect(seen()).toHaveLength(2);
    expect(host.children[0]).toBe(first);
    sheet.show([amp], moving);
    sheet.show([amp], look);
    expect(texts(host)).toEqual(['Amplifier300 W']);
  });

  it('of a run say its figures and not its name', () => {
    const host = document.createElement('div');
    new LabelSheet(host).show([placed('run', 'Battery to fuse', '4 AWG · 30 cm', 'run')], look);
    expect(texts(host)).toEqual(['4 AWG · 30 cm']);
  });
});

describe('the figures at the finger', () => {
  const figure = (name: string, value: string, isHazard = false) => ({ name, value, isHazard });
  const size = { widthPx: 600, heightPx: 400 };
  const shown = (figures: FingerShown['figures'], note: string | null = null, isMouse = true): FingerShown | null =>
    fingerShown({
      ...{ at: { xPx: 300, yPx: 300 }, isMouse, size, figures, note, textScale: 1, exact: { xPx: 300, yPx: 300 } },
    });

  it('say the rows and the note, mark what is behind, and go with the finger', () => {
    const host = document.createElement('div');
    const sheet = new FingerSheet(host, null, COLOURS);
    sheet.show(shown([figure('Length', '1 m'), figure('Unprotected', '30 cm', true)], 'Splits the run'), false);
    const list = host.querySelector('dl');
    expect([...(list?.children ?? [])].map(({ textContent }) => textContent)).toEqual([
      ...['Length1 m', 'Unprotected30 cm', 'Splits the run'],
    ]);
    expect(list?.children[1]?.getAttribute('data-hazard')).toBe('true');
    const row = list?.children[0];
    sheet.show(shown([figure('Length', '2 m')]), true);
    expect([...(list?.children ?? [])]).toEqual([row]);
    expect(row?.textContent).toBe('Length2 m');
    expect(list?.dataset.behind).toBe('true');
    sheet.show(null, false);
    expect(host.children).toHaveLength(0);
  });

  it('have a loupe under a fingertip and none under a mouse', () => {
    const host = document.createElement('div');
    const sheet = new FingerSheet(host, document.createElement('div'), COLOURS);
    sheet.show(shown([], null, false), false);
    expect(host.querySelector('.sketch-loupe canvas')).not.toBeNull();
    sheet.show(shown([figure('Length', '1 m')]), false);
    expect(host.querySelector('.sketch-loupe')).toBeNull();
    sheet.clear();
    expect(host.children).toHaveLength(0);
  });
});
