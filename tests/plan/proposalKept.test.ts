import { describe, expect, it } from 'vitest';
import { newRun } from '../../src/plan/create.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import { readProposal } from '../../src/plan/propose/kept.ts';
import type { Proposal } from '../../src/plan/propose/proposal.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { emptyVan } from '../desk/plans.ts';

const van = (): Plan => {
  const plan = emptyVan();
  const place = { id: 'battery', name: 'Battery', sheetId: 'sheet-1', at: { xM: 0.5, yM: 1 } };
  return addFitting(plan, newFittingIn(plan, 'battery', place));
};

const fuse = newFittingIn(van(), 'fuse', { id: 'fuse', name: 'Fuse', sheetId: 'sheet-1', at: { xM: 0.7, yM: 1 } });
const run = {
  ...newRun({
    ...{ id: 'run', name: '', kind: 'power', sheetId: 'sheet-1', bends: [{ xM: 0.6, yM: 1.1 }] },
    from: { fittingId: 'battery', terminal: 'positive' },
    to: { fittingId: 'fuse', terminal: 'in' },
  }),
  tapedM: 2.7432,
};
const PARTS: Proposal = [
  { kind: 'fitting', id: 'fuse', fitting: fuse, why: 'moved' },
  { kind: 'run', id: 'run', run, why: 'feeds' },
];

describe('a kept proposal', () => {
  it('is read back as it was, with what was taped on it', () => {
    expect(readProposal(JSON.stringify(PARTS), van())).toEqual(PARTS);
  });

  it('loses what no longer fits its plan, and the runs that ended at it', () => {
    const without = { ...van(), fittings: [] };
    expect(readProposal(JSON.stringify(PARTS), without).map(({ id }) => id)).toEqual(['fuse']);
    const taken = addFitting(van(), fuse);
    expect(readProposal(JSON.stringify(PARTS), taken).map(({ id }) => id)).toEqual(['run']);
    const elsewhere = [{ ...PARTS[0], fitting: { ...fuse, sheetId: 'gone' } }, PARTS[1]];
    expect(readProposal(JSON.stringify(elsewhere), van())).toEqual([]);
  });

  it('loses what is no part, one by one', () => {
    const [first, second] = PARTS;
    const odd = [
      { ...first, why: 'because' },
      { ...first, id: 'other' },
      { ...first, fitting: { ...fuse, kind: 'teapot' } },
      { ...second, run: { ...run, bends: 'none' } },
      null,
      7,
    ];
    expect(readProposal(JSON.stringify([...odd, first, first, second]), van())).toEqual(PARTS);
  });

  it('is nothing where the text is none', () => {
    for (const text of ['', 'damaged', '{}', 'null', '[[', '"x"']) expect(readProposal(text, van())).toEqual([]);
  });
});
