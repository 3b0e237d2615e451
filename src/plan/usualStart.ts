/** What a new plan may begin with: a battery and amplifiers at their usual places, nothing joined yet. */

import { addFitting } from './edits/addFitting.ts';
import { newFittingIn } from './newFitting.ts';
import { type BatteryPlace, usualPlaces } from './outlinePlaces.ts';
import type { Fitting, FittingKind, Plan, Point } from './schema.ts';

export interface UsualStart {
  /** null: none is placed. */
  readonly battery: BatteryPlace | null;
  /** Rated outputs, W, an amplifier each. */
  readonly amplifiersW: readonly number[];
}

/** The plan with those on its first sheet. 'front' and [300, 500]: a battery in the bay and two amplifiers in the cargo. */
export function withUsualStart(
  plan: Plan,
  { battery, amplifiersW }: UsualStart,
  nameOf: (kind: FittingKind, plan: Plan) => string,
  newId: () => string,
): Plan {
  const [sheet] = plan.sheets;
  if (sheet === undefined) return plan;
  const places = usualPlaces(sheet.outline, sheet.mirrored, battery ?? 'front', Math.max(1, amplifiersW.length));
  const place = (to: Plan, kind: FittingKind, at: Point, told: (fitting: Fitting) => Fitting): Plan =>
    addFitting(to, told(newFittingIn(to, kind, { id: newId(), name: nameOf(kind, to), sheetId: sheet.id, at })));
  const started = battery === null ? plan : place(plan, 'battery', places.battery, (fitting) => fitting);
  return amplifiersW.reduce(
    (to, value, index) =>
      place(to, 'amplifier', places.amplifiers[index] ?? places.block, (fitting) =>
        fitting.kind === 'amplifier' ? { ...fitting, ratedW: { value, origin: 'told' } } : fitting,
      ),
    started,
  );
}
