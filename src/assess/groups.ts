/** Runs that pass-throughs join into one cable: where more than one cable goes in, and where the pieces are unlike. */
import { fittingById } from '../plan/byId.ts';
import type { Fitting } from '../plan/schema.ts';
import { THROUGH_KINDS } from '../plan/terminals.ts';
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';

interface SharedPassThrough {
  readonly node: number;
  readonly fitting: Fitting;
  readonly cables: readonly number[];
}

/** Pass-throughs where more than two ends meet: one cable goes in at one side and out at the other. */
export const sharedPassThroughs = perModel(({ plan, circuit, sides }: Model): readonly SharedPassThrough[] =>
  circuit.places.flatMap((place, node): SharedPassThrough[] => {
    const fitting = place === null ? undefined : fittingById(plan, place.fittingId);
    if (fitting === undefined || !THROUGH_KINDS.has(fitting.kind)) return [];
    const cables = (sides.at[node] ?? []).filter((edge) => edge < circuit.cables.length);
    // one that comes back to where it left has both its ends here
    const ends = cables.flatMap((cable) =>
      [circuit.cables[cable]?.a, circuit.cables[cable]?.b].filter((end) => end === node),
    );
    return ends.length > 2 ? [{ node, fitting, cables }] : [];
  }),
);

/** Cables of more than one piece, as indices of their runs; without those that meet others in a pass-through. */
export function joinedCables(model: Model): (readonly number[])[] {
  const meeting = new Set(sharedPassThroughs(model).flatMap(({ cables }) => cables));
  return model.circuit.groups.filter((pieces) => pieces.length > 1 && !pieces.some((piece) => meeting.has(piece)));
}
