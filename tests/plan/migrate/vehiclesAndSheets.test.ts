/** From version 2 to version 3: what is added is written down by hand here; nothing else may change. */
import { describe, expect, it } from 'vitest';
import { isJsonObject, type JsonObject } from '../../../src/plan/migrate/step.ts';
import { vehiclesAndSheets } from '../../../src/plan/migrate/vehiclesAndSheets.ts';
import { keptFiles } from '../support/kept.ts';

function parsed(text: string): JsonObject {
  const document: unknown = JSON.parse(text);
  if (!isJsonObject(document)) throw new Error('It is an object');
  return document;
}

const sheet = (outline: object) => ({
  id: 'a',
  name: '',
  outline,
  scale: { value: 1, origin: 'told' },
  mirrored: true,
});

describe('a file of version 2', () => {
  it.each(keptFiles(2))('%s: only its sheets change', (_, text) => {
    const before = parsed(text);
    expect({ ...vehiclesAndSheets.up(before), sheets: before.sheets }).toEqual(before);
  });

  it('a van keeps its measures; axles are where it was drawn with them', () => {
    const outline = { kind: 'panelVan', lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 };
    expect(vehiclesAndSheets.up({ sheets: [sheet(outline)] })).toEqual({
      sheets: [
        {
          ...sheet({
            ...{ kind: 'vehicle', body: 'panelVan', lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 },
            // 0.66 of a bay of 1 m; 4.4 m less 0.95 m less 0.66 m
            ...{ frontAxleM: 0.66, wheelbaseM: 2.79, heightM: 1.85, sillM: 0.12 },
          }),
          part: 'whole',
          view: 'above',
        },
      ],
    });
  });

  it('the shortest van with the longest bay still has axles within bounds', () => {
    const outline = { kind: 'panelVan', lengthM: 2, widthM: 1, bayM: 3, cabM: 0.5 };
    expect(vehiclesAndSheets.up({ sheets: [sheet(outline)] })).toMatchObject({
      sheets: [{ outline: { frontAxleM: 1.98, wheelbaseM: 0.3 } }],
    });
  });

  it('a bench stays a bench, and what is no outline is left for the schema', () => {
    const bench = { kind: 'bench', lengthM: 2, widthM: 0.8 };
    expect(vehiclesAndSheets.up({ sheets: [sheet(bench)] })).toMatchObject({ sheets: [{ outline: bench }] });
    const odd = { kind: 'panelVan', lengthM: 'long' };
    expect(vehiclesAndSheets.up({ sheets: [sheet(odd), 7] })).toMatchObject({ sheets: [{ outline: odd }, 7] });
    expect(vehiclesAndSheets.up({ sheets: 'none' })).toEqual({ sheets: 'none' });
  });
});
