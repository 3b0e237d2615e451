import fc from 'fast-check';
import { newRun } from '../../../src/plan/create.ts';
import { addBend } from '../../../src/plan/edits/addBend.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { addOutput } from '../../../src/plan/edits/addOutput.ts';
import { addRun } from '../../../src/plan/edits/addRun.ts';
import { changeFitting, type FittingPatch } from '../../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../../src/plan/edits/changeRun.ts';
import { changeSettings } from '../../../src/plan/edits/changeSettings.ts';
import { changeSheet } from '../../../src/plan/edits/changeSheet.ts';
import { mirrorSheet } from '../../../src/plan/edits/mirrorSheet.ts';
import { moveBend } from '../../../src/plan/edits/moveBend.ts';
import { moveFitting } from '../../../src/plan/edits/moveFitting.ts';
import { passFitting, runsBeyond } from '../../../src/plan/edits/passFitting.ts';
import { reconnectRun } from '../../../src/plan/edits/reconnectRun.ts';
import { removeBend } from '../../../src/plan/edits/removeBend.ts';
import { removeFitting } from '../../../src/plan/edits/removeFitting.ts';
import { removeOutput } from '../../../src/plan/edits/removeOutput.ts';
import { removeRun } from '../../../src/plan/edits/removeRun.ts';
import { renamePlan } from '../../../src/plan/edits/renamePlan.ts';
import { setInput } from '../../../src/plan/edits/setInput.ts';
import { slideFitting } from '../../../src/plan/edits/slideFitting.ts';
import { splitRun } from '../../../src/plan/edits/splitRun.ts';
import { newFitting, newFittingIn } from '../../../src/plan/newFitting.ts';
import {
  type Fitting,
  type FittingOf,
  fittingSchema,
  type LinkFamily,
  type OwnLink,
  type Plan,
  type Run,
  runSchema,
  type Settings,
  type TerminalRef,
} from '../../../src/plan/schema.ts';
import { INLINE_KINDS, terminalsOf } from '../../../src/plan/terminals.ts';

export type Edit = (plan: Plan) => Plan;

/** The item of a list that a number stands for, whatever the list's length by then. */
const pick = <T>(items: readonly T[], number: number): T | undefined => items[number % Math.max(1, items.length)];
const fittingId = (plan: Plan, number: number) => pick(plan.fittings, number)?.id ?? 'none';
const runId = (plan: Plan, number: number) => pick(plan.runs, number)?.id ?? 'none';

function terminal(plan: Plan, number: number): TerminalRef {
  const all = plan.fittings.flatMap((fitting: Fitting) =>
    terminalsOf(fitting).map((name) => ({ fittingId: fitting.id, terminal: name })),
  );
  return pick(all, number) ?? { fittingId: 'none', terminal: 'in' };
}

const number = fc.nat(1000);
// mostly on the sheet, now and then far off it, beyond the bounds, or no number at all
const coordinate = fc.oneof(
  { weight: 20, arbitrary: fc.double({ min: -1, max: 6, noNaN: true }) },
  { weight: 1, arbitrary: fc.double({ min: -200, max: 200 }) },
);
const point = fc.record({ xM: coordinate, yM: coordinate });
const lengthM = fc.oneof(
  { weight: 10, arbitrary: fc.double({ min: 0, max: 25, noNaN: true }) },
  { weight: 1, arbitrary: fc.double({ min: -1, max: 200 }) },
);
const name = fc.oneof(
  fc.string({ maxLength: 8 }),
  fc.constantFrom('\ud83d', '🚐', 'a\u0000b', '\u202e', 'x'.repeat(201), '__proto__'),
);
const kind = fc.constantFrom(...fittingSchema.options.map(({ entries }) => entries.kind.literal));
// some that are told, some not, some out of bounds
const figure = fc.option(fc.constantFrom(-1, 0, 0.00004, 0.5, 1, 25, 150, 1e9, Number.NaN));
const gauge = fc.option(fc.constantFrom('sae:4', 'mm2:35', 'mm2:36', 'four'));
const family = fc.constantFrom<(LinkFamily | 'auto')[]>('auto', 'iso8820-3-E', 'thermal-breaker', 'own1', 'own2');
const link = fc.record({ ratingA: fc.constantFrom<(number | 'auto')[]>('auto', 60, 0), family });
const told = <T>(value: T) => ({ value, origin: 'told' as const });

const patchOfFitting: fc.Arbitrary<FittingPatch> = fc.oneof(
  name.map((called) => ({ name: called })),
  fc.boolean().map((locked) => ({ locked })),
  gauge.map((takes) => ({ takes })),
  gauge.map((outputsTake) => ({ outputsTake })),
  link.map((one) => ({ link: one })),
  fc.option(link).map((postLink) => ({ postLink })),
  fc.array(fc.option(link), { maxLength: 3 }).map((links) => ({
    outputs: links.map((one, index) => ({ terminal: `out${index + 1}`, link: one })),
  })),
  fc.constantFrom<'D' | 'AB'>('D', 'AB').map((ampClass) => ({ ampClass })),
  fc.constantFrom<'one' | 'two'>('one', 'two').map((supplyInputs) => ({ supplyInputs })),
  fc
    .constantFrom<FittingOf<'battery'>['chemistry'][]>('leadAcid', 'lithium', 'supercapacitor')
    .map((chemistry) => ({ chemistry })),
  fc
    .constantFrom<FittingOf<'battery'>['ccaStandard'][]>('sae', 'en', 'din', 'iec', 'ca')
    .map((ccaStandard) => ({ ccaStandard })),
  figure.map((value) => ({ internalOhm: value === null ? null : told(value) })),
  fc.option(fc.boolean()).map((sensedNegative) => ({ sensedNegative })),
  figure.map((grommetInsideMm) => ({ grommetInsideMm })),
  figure.map((ratedA) => ({ ratedA })),
  figure.map((fuseA) => ({ fuseA })),
  figure.map((duty) => ({ duty })),
  figure.map((value) => ({ lengthM: told(value ?? 0.1) })),
  figure.map((value) => ({ cable: { lengthM: told(value ?? 1), areaMm2: told(25) } })),
  fc.boolean().map((closed) => ({ closed })),
  fc.boolean().map((precharged) => ({ precharged })),
);

const patchOfSettings: fc.Arbitrary<Partial<Settings>> = fc.oneof(
  fc.constantFrom<Settings['sizeSystem'][]>('sae', 'awg', 'mm2').map((sizeSystem) => ({ sizeSystem })),
  fc.constantFrom<Settings['systemV'][]>(12, 24).map((systemV) => ({ systemV })),
  fc.array(family, { maxLength: 3 }).map((families) => ({ linkFamilies: families.filter((one) => one !== 'auto') })),
  fc.array(fc.constantFrom<OwnLink['family'][]>('own1', 'own2'), { maxLength: 3 }).map((families) => ({
    ownLinks: families.map((one) => ({
      ...{ family: one, name: '', seat: 'holder' as const, ratingsA: [60, 100], breakingA: null, ratedV: 32 },
    })),
  })),
);

const runKind = fc.constantFrom(...runSchema.entries.kind.options);

const patchOfRun: fc.Arbitrary<Partial<Run>> = fc.oneof(
  lengthM.map((tapedM) => ({ tapedM })),
  lengthM.map((riseM) => ({ riseM })),
  lengthM.map((slackPercent) => ({ slackPercent: slackPercent + 0 })),
  fc.array(point, { maxLength: 5 }).map((bends) => ({ bends })),
  fc.boolean().map((locked) => ({ locked })),
  fc.boolean().map((sheathed) => ({ sheathed })),
  fc.constant({ tapedM: null }),
  runKind.map((which) => ({ kind: which })),
  fc.constantFrom(0, 1, 1.5, 7, 101).map((bundled) => ({ bundled })),
  figure.map((bendRadiusMm) => ({ bendRadiusMm })),
  figure.map((fromJointOhm) => ({ fromJointOhm })),
  figure.map((toJointOhm) => ({ toJointOhm })),
  fc
    .record({ size: fc.option(gauge, { nil: 'auto' }), count: fc.constantFrom(null, 0, 19), isCopper: fc.boolean() })
    .map(({ size, count, isCopper }) => ({
      conductor: {
        size: size ?? 'auto',
        material: told('copper' as const),
        insulationC: told(75 as const),
        strands: count === null ? null : { count, diameterMm: 0.4 },
        copperThrough: isCopper,
      },
    })),
);

const inputField = fc.constantFrom(
  ...['efficiency', 'ratedW', 'idleA', 'strap.lengthM', 'ccaA', 'internalOhm', 'capacityAh', 'cable.lengthM', 'kind'],
  ...['lengthM', 'currentA', 'ratedA', 'hotShare', 'vehicleA', 'usedA', 'outputV', 'outputMaxA', 'contactOhm'],
  ...['capacitanceF', 'esrOhm', 'postLink.ratingA', 'takes'],
);

let made = 0;
/** Ids of this run of the tests; an edit must not use one twice, so each call makes another. */
const freshId = () => `made-${made++}`;

const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.tuple(kind, point, name).map(([which, at, called]): Edit => {
    const id = freshId();
    return (plan) => addFitting(plan, newFittingIn(plan, which, { id, name: called, sheetId: 'sheet', at }));
  }),
  fc.tuple(number, number, fc.array(point, { maxLength: 4 }), runKind).map(([from, to, bends, which]): Edit => {
    const id = freshId();
    return (plan) => {
      const ends = { from: terminal(plan, from), to: terminal(plan, to) };
      return addRun(plan, newRun({ id, name: '', kind: which, sheetId: 'sheet', ...ends, bends }));
    };
  }),
  fc.tuple(number, point, fc.constantFrom(...INLINE_KINDS)).map(([which, at, inline]): Edit => {
    const [id, rest] = [freshId(), freshId()];
    return (plan) =>
      splitRun(plan, runId(plan, which), at, newFitting(inline, { id, name: '', sheetId: 'sheet', at }), rest);
  }),
  fc.tuple(number, point).map(
    ([which, at]): Edit =>
      (plan) =>
        moveFitting(plan, fittingId(plan, which), at),
  ),
  fc.tuple(number, point).map(
    ([which, at]): Edit =>
      (plan) =>
        slideFitting(plan, fittingId(plan, which), at),
  ),
  fc.tuple(number, number, point).map(([which, onto, at]): Edit => {
    const rest = freshId();
    return (plan) => {
      // few fittings sit in a cable that goes on: the first that does, from a random one on
      for (const [index] of plan.fittings.entries()) {
        const id = fittingId(plan, which + index);
        const target = pick(runsBeyond(plan, id), onto);
        if (target !== undefined) return passFitting(plan, id, target.run.id, at, rest);
      }
      return plan;
    };
  }),
  number.map(
    (which): Edit =>
      (plan) =>
        removeFitting(plan, fittingId(plan, which)),
  ),
  number.map(
    (which): Edit =>
      (plan) =>
        removeRun(plan, runId(plan, which)),
  ),
  fc.tuple(number, patchOfRun).map(
    ([which, patch]): Edit =>
      (plan) =>
        changeRun(plan, runId(plan, which), patch),
  ),
  fc.tuple(number, fc.nat(5), point).map(
    ([which, index, at]): Edit =>
      (plan) =>
        addBend(plan, runId(plan, which), index, at),
  ),
  fc.tuple(number, fc.nat(5), point).map(
    ([which, index, at]): Edit =>
      (plan) =>
        moveBend(plan, runId(plan, which), index, at),
  ),
  fc.tuple(number, fc.nat(5)).map(
    ([which, index]): Edit =>
      (plan) =>
        removeBend(plan, runId(plan, which), index),
  ),
  fc.tuple(number, fc.constantFrom<'from' | 'to'>('from', 'to'), number).map(
    ([which, end, to]): Edit =>
      (plan) =>
        reconnectRun(plan, runId(plan, which), end, terminal(plan, to)),
  ),
  {
    weight: 4,
    arbitrary: fc.tuple(number, patchOfFitting).map(
      ([which, patch]): Edit =>
        (plan) => {
          // most kinds refuse most patches: the first fitting that takes it, from a random one on
          for (const [index] of plan.fittings.entries()) {
            const after = changeFitting(plan, fittingId(plan, which + index), patch);
            if (after !== plan) return after;
          }
          return plan;
        },
    ),
  },
  number.map(
    (which): Edit =>
      (plan) =>
        addOutput(plan, fittingId(plan, which)),
  ),
  fc.tuple(number, fc.nat(4)).map(
    ([which, out]): Edit =>
      (plan) =>
        removeOutput(plan, fittingId(plan, which), `out${out}`),
  ),
  fc.tuple(number, inputField, lengthM).map(
    ([which, field, value]): Edit =>
      (plan) =>
        setInput(plan, `${fittingId(plan, which)}.${field}`, value + 0, 'told'),
  ),
  lengthM.map(
    (value): Edit =>
      (plan) =>
        setInput(plan, 'settings.bodyOhm', value + 0, 'measured'),
  ),
  {
    weight: 3,
    arbitrary: patchOfSettings.map(
      (patch): Edit =>
        (plan) =>
          changeSettings(plan, patch),
    ),
  },
  fc.constant<Edit>((plan) => mirrorSheet(plan, 'sheet')),
  name.map(
    (called): Edit =>
      (plan) =>
        changeSheet(plan, 'sheet', { name: called }),
  ),
  name.map(
    (called): Edit =>
      (plan) =>
        renamePlan(plan, called),
  ),
);

/** Up to 25 acts on a plan, some of which are to be refused. */
export const randomEdits: fc.Arbitrary<Edit[]> = fc.array(edit, { maxLength: 25, size: 'max' });
