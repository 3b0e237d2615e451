import type { AmpacityCase } from '../calc/conductor/ampacity.ts';
import { polygonHolds } from '../geom/polygon.ts';
import { sheetOf } from '../plan/drawnLength.ts';
import { type MarkedArea, zoneAt, zoneStretches } from '../plan/outline.ts';
import { runPoints } from '../plan/runs.ts';
import type { Fitting, Plan, Run, Settings, Zone } from '../plan/schema.ts';

export type MarkedZone = Exclude<Zone, 'auto'>;

/** A part of a run in one zone. */
export interface Stretch {
  readonly zone: MarkedZone;
  readonly lengthM: number;
}

const AIR = { bay: 'bayC', wing: 'wingC', hot: 'hotC', cabin: 'cabinC', cargo: 'cargoC', under: 'underC' } as const;

/** Temperature of the air in a zone, degC. */
export const ambientC = (settings: Settings, zone: MarkedZone): number => settings[AIR[zone]].value;

/**
 * Which of the two ways of derating a zone has: the rule's own engine-space factor in the bay, along a wing and beside
 * hot parts of it; the air temperature elsewhere.
 */
export const ampacityZone = (zone: MarkedZone): AmpacityCase['zone'] =>
  zone === 'bay' || zone === 'wing' || zone === 'hot' ? 'bay' : 'other';

/** The areas marked on a sheet, the hottest first: where two overlap, the worse holds. */
function areasOf({ areas, settings }: Plan, sheetId: string): MarkedArea<MarkedZone>[] {
  return areas
    .flatMap(({ sheetId: on, zone, outline }) =>
      on === sheetId && zone !== 'auto' ? [{ zone, corners: outline }] : [],
    )
    .sort((one, other) => ambientC(settings, other.zone) - ambientC(settings, one.zone));
}

/** The zone of a fitting: as marked, else the area it stands in, else from where it stands in the outline. */
export function fittingZone(plan: Plan, fitting: Fitting): MarkedZone {
  if (fitting.zone !== 'auto') return fitting.zone;
  const outline = sheetOf(plan, fitting.sheetId)?.outline;
  const area = areasOf(plan, fitting.sheetId).find(({ corners }) => polygonHolds(corners, fitting.at));
  return area?.zone ?? (outline === undefined ? 'cabin' : zoneAt(outline, fitting.at));
}

/**
 * The zones a run passes through (marked areas before the outline's own), in order, with the share of its length in each. The whole length is shared out in
 * proportion to the drawn line: slack, rise and a taped length have no place of their own.
 */
export function stretchesOf(plan: Plan, run: Run, lengthM: number): Stretch[] {
  if (run.zone !== 'auto') return [{ zone: run.zone, lengthM }];
  const outline = sheetOf(plan, run.sheetId)?.outline;
  const line = runPoints(plan, run);
  const [start] = line;
  if (outline === undefined || start === undefined) return [{ zone: 'cabin', lengthM }];
  const areas = areasOf(plan, run.sheetId);
  const parts = zoneStretches(outline, line, areas);
  const drawnM = parts.reduce((sum, part) => sum + part.lengthM, 0);
  if (drawnM === 0) {
    const area = areas.find(({ corners }) => polygonHolds(corners, start));
    return [{ zone: area?.zone ?? zoneAt(outline, start), lengthM }];
  }
  return parts.map((part) => ({ zone: part.region ?? 'cabin', lengthM: (lengthM * part.lengthM) / drawnM }));
}
