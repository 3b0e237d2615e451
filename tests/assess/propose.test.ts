/** What is proposed for a plan assesses without stop or fix, wherever the battery is and whoever drives. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { newPlan } from '../../src/plan/create.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES, outlineRegions } from '../../src/plan/outline.ts';
import { canPropose } from '../../src/plan/propose/lacking.ts';
import { withProposal } from '../../src/plan/propose/proposal.ts';
import { proposeFeed } from '../../src/plan/propose/propose.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Fitting, FittingKind, Outline, Plan, Point } from '../../src/plan/schema.ts';

const NAMES = { fitting: (kind: FittingKind, { fittings }: Plan) => `${kind} ${fittings.length}` };

const counter = () => {
  let count = 0;
  return () => {
    count += 1;
    return `p${count}`;
  };
};

type AmpClass = 'D' | 'AB';

function empty(outline: Outline, mirrored: boolean): Plan {
  return newPlan({ id: 'plan', name: 'Plan', sheetId: 'sheet', outline, mirrored });
}

function put(plan: Plan, kind: FittingKind, id: string, at: Point, change = (f: Fitting): Fitting => f): Plan {
  return addFitting(plan, change(newFittingIn(plan, kind, { id, name: id, sheetId: 'sheet', at })));
}

const amplifier =
  (ampClass: AmpClass, ratedW: number) =>
  (fitting: Fitting): Fitting =>
    fitting.kind !== 'amplifier'
      ? fitting
      : {
          ...fitting,
          ampClass,
          ratedW: { value: ratedW, origin: 'told' },
          efficiency: { value: ampClass === 'D' ? 0.8 : 0.55, origin: 'told' },
          loadOhm: 2,
          externalFuseMaxA: 300,
        };

/** In rows of two behind the middle of what is hindmost: cargo, else the cabin, else the board. */
function withAmplifiers(plan: Plan, watts: readonly number[], ampClass: AmpClass): Plan {
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  const last = outlineRegions(sheet.outline).at(-1);
  const [fromXM, toXM] = [last?.fromXM ?? 0, last?.toXM ?? 0];
  return watts.reduce((before, ratedW, index) => {
    const xM = fromXM + (toXM - fromXM) * (index < 2 ? 0.55 : 0.85);
    const yM = sheet.outline.widthM * (index % 2 === 0 ? 0.3 : 0.7);
    return put(before, 'amplifier', `amp${index}`, { xM, yM }, amplifier(ampClass, ratedW));
  }, plan);
}

const accepted = (plan: Plan): Plan => withProposal(plan, proposeFeed(plan, 'sheet', NAMES, counter()));

const faults = (plan: Plan): string[] =>
  assess(plan)
    .findings.filter(({ severity }) => severity !== 'note')
    .map(({ rule, severity, places, params }) => `${severity} ${rule} ${places[0]?.id} ${JSON.stringify(params)}`);

const isLong = process.env.FEEDRUN_LONG !== undefined;
const ONE_TO_FOUR: readonly (readonly [AmpClass, readonly number[]])[] = [
  ['AB', [600]],
  ['D', [600, 300]],
  ['AB', [600, 300, 300, 300]],
];
const MORE: typeof ONE_TO_FOUR = [
  ['D', [600]],
  ['AB', [600, 300]],
  ['D', [300, 300, 300, 300]],
  ['AB', [300, 300, 300, 300]],
  ['D', [600, 300, 300, 300]],
];
const SETS = isLong ? [...ONE_TO_FOUR, ...MORE] : ONE_TO_FOUR;
const BODIES = ['hatchback', 'saloon', 'estate', 'pickup', 'panelVan', 'smallBus'] as const;
const SPOTS = {
  front: ({ lengthM, widthM, bayM }: { lengthM: number; widthM: number; bayM: number }, side: number) => ({
    xM: 0.55 * bayM,
    yM: side * widthM + 0 * lengthM,
  }),
  seat: ({ widthM, bayM }: { widthM: number; bayM: number }, side: number) => ({
    xM: bayM + 0.9,
    yM: (1 - side) * 0.9 * widthM,
  }),
  rear: ({ lengthM, widthM }: { lengthM: number; widthM: number }, side: number) => ({
    xM: lengthM - 0.35,
    yM: (1 - side) * widthM,
  }),
};

describe('a proposal accepted whole', () => {
  for (const body of BODIES) {
    for (const mirrored of [false, true]) {
      for (const [place, spot] of Object.entries(SPOTS)) {
        it(`of a ${body}, ${mirrored ? 'right' : 'left'}-hand drive, battery ${place}: no stop, no fix`, () => {
          const outline = DEFAULT_OUTLINES[body];
          const found: string[] = [];
          for (const [ampClass, watts] of SETS) {
            const bare = put(empty(outline, mirrored), 'battery', 'battery', spot(outline, mirrored ? 0.22 : 0.78));
            const plan = accepted(withAmplifiers(bare, watts, ampClass));
            found.push(...faults(plan).map((fault) => `${ampClass} ${watts.join('+')}: ${fault}`));
            expect(canPropose(plan, 'sheet')).toBe(false);
            expect(proposeFeed(plan, 'sheet', NAMES, counter())).toEqual([]);
          }
          expect(found).toEqual([]);
        });
      }
    }
  }
});

describe('a proposal for a bench and an own outline', () => {
  const own: Outline = {
    kind: 'own',
    ...{ lengthM: 5, widthM: 2, heightM: 2, bayM: 1.2, cabM: 2 },
    edge: [
      { xM: 0, yM: 0.5 },
      { xM: 1, yM: 0 },
      { xM: 5, yM: 0.3 },
      { xM: 5, yM: 1.7 },
      { xM: 1, yM: 2 },
      { xM: 0, yM: 1.5 },
    ],
  };
  for (const [what, outline, at] of [
    ['bench', DEFAULT_OUTLINES.bench, { xM: 0.36, yM: 0.4 }],
    ['own', own, { xM: 0.7, yM: 1.4 }],
  ] as const) {
    it(`${what}: no stop, no fix`, () => {
      const bare = put(empty(outline, false), 'battery', 'battery', at);
      expect(faults(accepted(withAmplifiers(bare, [600, 300], 'D')))).toEqual([]);
    });
  }
});

describe('a proposal for anything placed anywhere', () => {
  const KINDS = ['battery', 'amplifier', 'fuse', 'block', 'passThrough', 'ground', 'load', 'jumpPost', 'bus'] as const;
  const coordinate = fc.double({ min: -2, max: 7, noNaN: true });
  const things = fc.array(fc.tuple(fc.constantFrom(...KINDS), coordinate, coordinate), { maxLength: 9 });

  it('has ids of its own, and gives a plan that opens again', () => {
    fc.assert(
      fc.property(things, fc.constantFrom(...BODIES, 'bench' as const), fc.boolean(), (placed, body, mirrored) => {
        const plan = placed.reduce(
          (before, [kind, xM, yM], index) => put(before, kind, `f${index}`, { xM, yM }),
          empty(DEFAULT_OUTLINES[body], mirrored),
        );
        const proposal = proposeFeed(plan, 'sheet', NAMES, counter());
        expect(new Set(proposal.map(({ id }) => id)).size).toBe(proposal.length);
        const whole = withProposal(plan, proposal);
        expect(whole.fittings.length + whole.runs.length).toBe(plan.fittings.length + proposal.length);
        expect(openPlan(savePlan(whole))).toMatchObject({ ok: true });
        expect(canPropose(whole, 'sheet')).toBe(false);
        expect(proposeFeed(whole, 'sheet', NAMES, counter())).toEqual([]);
      }),
      { numRuns: isLong ? 1000 : 60 },
    );
  });
});
