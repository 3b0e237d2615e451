import fc from 'fast-check';
import { newFitting, newFittingIn, newRun } from '../../../src/plan/create.ts';
import { addBend } from '../../../src/plan/edits/addBend.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { addOutput } from '../../../src/plan/edits/addOutput.ts';
import { addRun } from '../../../src/plan/edits/addRun.ts';
import { changeFitting } from '../../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../../src/plan/edits/changeRun.ts';
import { changeSettings } from '../../../src/plan/edits/changeSettings.ts';
import { changeSheet } from '../../../src/plan/edits/changeSheet.ts';
import { mirrorSheet } from '../../../src/plan/edits/mirrorSheet.ts';
import { moveBend } from '../../../src/plan/edits/moveBend.ts';
import { moveFitting } from '../../../src/plan/edits/moveFitting.ts';
import { reconnectRun } from '../../../src/plan/edits/reconnectRun.ts';
import { removeBend } from '../../../src/plan/edits/removeBend.ts';
import { removeFitting } from '../../../src/plan/edits/removeFitting.ts';
import { removeOutput } from '../../../src/plan/edits/removeOutput.ts';
import { removeRun } from '../../../src/plan/edits/removeRun.ts';
import { renamePlan } from '../../../src/plan/edits/renamePlan.ts';
import { setInput } from '../../../src/plan/edits/setInput.ts';
import { slideFitting } from '../../../src/plan/edits/slideFitting.ts';
import { splitRun } from '../../../src/plan/edits/splitRun.ts';
import type { Fitting, FittingKind, Plan, Run, TerminalRef } from '../../../src/plan/schema.ts';
import { terminalsOf } from '../../../src/plan/terminals.ts';

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
const kind = fc.constantFrom<FittingKind>('battery', 'fuse', 'passThrough', 'block', 'amplifier', 'ground');

const patchOfRun: fc.Arbitrary<Partial<Run>> = fc.oneof(
  lengthM.map((tapedM) => ({ tapedM })),
  lengthM.map((riseM) => ({ riseM })),
  lengthM.map((slackPercent) => ({ slackPercent: slackPercent + 0 })),
  fc.array(point, { maxLength: 5 }).map((bends) => ({ bends })),
  fc.boolean().map((locked) => ({ locked })),
  fc.boolean().map((sheathed) => ({ sheathed })),
  fc.constant({ tapedM: null }),
);

let made = 0;
/** Ids of this run of the tests; an edit must not use one twice, so each call makes another. */
const freshId = () => `made-${made++}`;

const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.tuple(kind, point, name).map(([which, at, called]): Edit => {
    const id = freshId();
    return (plan) => addFitting(plan, newFittingIn(plan, which, { id, name: called, sheetId: 'sheet', at }));
  }),
  fc.tuple(number, number, fc.array(point, { maxLength: 4 })).map(([from, to, bends]): Edit => {
    const id = freshId();
    return (plan) => {
      const ends = { from: terminal(plan, from), to: terminal(plan, to) };
      return addRun(plan, newRun({ id, name: '', kind: 'power', sheetId: 'sheet', ...ends, bends }));
    };
  }),
  fc.tuple(number, point, fc.constantFrom<FittingKind>('fuse', 'passThrough')).map(([which, at, inline]): Edit => {
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
  fc.tuple(number, name).map(
    ([which, called]): Edit =>
      (plan) =>
        changeFitting(plan, fittingId(plan, which), { name: called }),
  ),
  fc.tuple(number, fc.boolean()).map(
    ([which, locked]): Edit =>
      (plan) =>
        changeFitting(plan, fittingId(plan, which), { locked }),
  ),
  number.map(
    (which): Edit =>
      (plan) =>
        changeFitting(plan, fittingId(plan, which), { ampClass: 'AB' }),
  ),
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
  fc.tuple(number, fc.constantFrom('efficiency', 'ratedW', 'strap.lengthM', 'ccaA', 'kind'), lengthM).map(
    ([which, field, value]): Edit =>
      (plan) =>
        setInput(plan, `${fittingId(plan, which)}.${field}`, value + 0, 'told'),
  ),
  lengthM.map(
    (value): Edit =>
      (plan) =>
        setInput(plan, 'settings.bodyOhm', value + 0, 'measured'),
  ),
  fc.constantFrom<'sae' | 'awg' | 'mm2'>('sae', 'awg', 'mm2').map(
    (sizeSystem): Edit =>
      (plan) =>
        changeSettings(plan, { sizeSystem }),
  ),
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
export const randomEdits: fc.Arbitrary<Edit[]> = fc.array(edit, { maxLength: 25 });
