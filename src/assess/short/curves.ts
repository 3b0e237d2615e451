/** The log-log picture of one cable: when its fuses open, against when its insulation is damaged. */
import { type CurvePoint, damageCurve, type FuseCurves, fuseCurves } from '../../calc/fault/curves.ts';
import type { Facts } from '../facts.ts';
import { familyNameOf, ratedLinks } from './links.ts';
import { shortsOf } from './shorts.ts';

export interface ShortCurves {
  /** By fuse that sees a short there, each over its own current; null: no time limits are held. */
  readonly fuses: readonly {
    readonly fittingId: string;
    readonly terminal: string | null;
    readonly ratingA: number;
    readonly curves: FuseCurves | null;
  }[];
  readonly damage: readonly CurvePoint[];
  /** Range of a dead short in the conductor, A. */
  readonly lowestA: number;
  readonly highestA: number;
}

/** Leftmost current of the picture, as a share of the least rating, and how far it goes beyond the highest short. */
const FROM_SHARE = 0.5;
const TO_SHARE = 1.5;

/** Curves of a run; null where no short of it can be told. */
export function shortCurves(facts: Facts, runId: string): ShortCurves | null {
  const { circuit } = facts.model;
  const short = shortsOf(facts).find(({ cable }) => circuit.cables[cable]?.run.id === runId);
  if (short === undefined || !(short.highestA > 0)) return null;
  const links = ratedLinks(facts);
  const seeing = [...new Set(short.ends.flatMap(({ seeing: devices }) => devices.map(({ link }) => link)))];
  const rated = seeing.flatMap((link) => links[link] ?? []);
  const toA = TO_SHARE * short.highestA;
  const fromA = Math.min(FROM_SHARE * Math.min(toA, ...rated.map(({ ratingA }) => ratingA)), short.lowestA);
  return {
    fuses: rated.flatMap((of) => {
      const device = circuit.links[of.link];
      if (device === undefined) return [];
      const curves = fuseCurves({ family: familyNameOf(of), ratingA: of.ratingA }, fromA, toA);
      return [{ fittingId: device.fitting.id, terminal: device.terminal, ratingA: of.ratingA, curves }];
    }),
    damage: damageCurve(short.conductor, toA),
    lowestA: short.lowestA,
    highestA: short.highestA,
  };
}
