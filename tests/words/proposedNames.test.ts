/** What the parts of a proposed feed are called: a proposal knows where each of them stands. */
import { afterEach, describe, expect, it } from 'vitest';
import { newPlan, newRun } from '../../src/plan/create.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { withProposal } from '../../src/plan/propose/proposal.ts';
import { proposeFeed } from '../../src/plan/propose/propose.ts';
import { type FittingKind, MAX_NAME, type Plan } from '../../src/plan/schema.ts';
import { speakIn } from '../../src/words/language.ts';
import { proposedName } from '../../src/words/proposedNames.ts';

type Placed = readonly [kind: FittingKind, name: string, xM: number, yM: number];

const placed = (...things: Placed[]): Plan =>
  things.reduce(
    (plan, [kind, name, xM, yM], index) =>
      addFitting(plan, newFittingIn(plan, kind, { id: `f${index}`, name, sheetId: 's', at: { xM, yM } })),
    newPlan({ id: 'p', name: 'P', sheetId: 's', outline: DEFAULT_OUTLINES.hatchback, mirrored: false }),
  );

function accepted(plan: Plan): Plan {
  let count = 0;
  const newId = () => {
    count += 1;
    return `n${count}`;
  };
  return withProposal(plan, proposeFeed(plan, 's', { fitting: proposedName }, newId));
}

const fusesOf = ({ fittings }: Plan): string[] =>
  fittings.filter(({ kind }) => kind === 'fuse').map(({ name }) => name);

/** The name of the first fuse on the way from that fitting. */
function fuseBehind({ fittings, runs }: Plan, id: string): string | undefined {
  const first = runs.find(({ kind, from }) => kind === 'power' && from.fittingId === id);
  return fittings.find((fitting) => fitting.id === first?.to.fittingId)?.name;
}

const TWO_BATTERIES: Placed[] = [
  ['battery', 'Battery', 0.6, 1.39],
  ['battery', 'Battery 2', 3.6, 0.3],
  ['amplifier', 'Amplifier', 3.3, 1.2],
];

/** A bar feeds what it serves by fuses of their own. */
const withBar = (...things: Placed[]): Plan => {
  const plan = placed(
    ['battery', 'Battery', 0.6, 1.39],
    ['fuse', 'Main fuse', 0.8, 1.39],
    ['bus', 'Bar', 3, 1],
    ...things,
  );
  const run = (id: string, from: string, to: string) => {
    const end = (text: string) => ({ fittingId: text.split('.')[0] ?? '', terminal: text.split('.')[1] ?? '' });
    return newRun({ id, name: '', kind: 'power', sheetId: 's', from: end(from), to: end(to), bends: [] });
  };
  return { ...plan, runs: [run('r1', 'f0.positive', 'f1.in'), run('r2', 'f1.out', 'f2.bus')] };
};

afterEach(() => speakIn('en'));

describe('the names of a proposed feed', () => {
  it('call the fuse that stands first behind each source a main fuse, and no two alike', () => {
    const plan = accepted(placed(...TWO_BATTERIES));
    expect(fusesOf(plan)).toEqual(['Main fuse', 'Main fuse 2']);
    expect(fuseBehind(plan, 'f0')).toBe('Main fuse');
    expect(fuseBehind(plan, 'f1')).toBe('Main fuse 2');
  });

  it('do so in German', async () => {
    await speakIn('de');
    expect(fusesOf(accepted(placed(...TWO_BATTERIES)))).toEqual(['Hauptsicherung', 'Hauptsicherung 2']);
  });

  it('call it so where another fuse lies about already', () => {
    const plan = accepted(placed(...TWO_BATTERIES, ['fuse', 'Spare', 3.4, 1.5]));
    expect(fusesOf(plan)).toEqual(['Spare', 'Main fuse', 'Main fuse 2']);
  });

  it('say of a branch fuse what it protects, each input by a name of its own', async () => {
    const plan = withBar(['amplifier', 'Bass', 3.5, 0.5], ['load', 'Horn', 3.5, 1.5]);
    expect(fusesOf(accepted(plan))).toEqual(['Main fuse', 'Bass fuse', 'Horn fuse']);
    const two = changeFitting(plan, 'f3', { supplyInputs: 'two' });
    expect(fusesOf(accepted(two))).toEqual(['Main fuse', 'Bass fuse', 'Bass fuse 2', 'Horn fuse']);
    await speakIn('de');
    expect(fusesOf(accepted(plan))).toEqual(['Main fuse', 'Sicherung Bass', 'Sicherung Horn']);
  });

  it('call what it protects by its kind where that has no name', () => {
    expect(fusesOf(accepted(withBar(['amplifier', '', 3.5, 0.5])))).toEqual(['Main fuse', 'Amplifier fuse']);
  });

  it('fall back on the plain name where the plan would refuse one that long', () => {
    const plan = accepted(withBar(['amplifier', 'B'.repeat(MAX_NAME), 3.5, 0.5]));
    expect(fusesOf(plan)).toEqual(['Main fuse', 'Fuse']);
  });
});
