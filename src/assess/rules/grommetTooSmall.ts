import { bundleAcrossMm } from '../../calc/conductor/bundle.ts';
import { outsideMm } from '../../calc/conductor/dimensions.ts';
import { type GaugeId, isGaugeId } from '../../calc/conductor/gauge.ts';
import type { Fitting, FittingOf, Run } from '../../plan/schema.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { type Facts, sizeOf } from '../facts.ts';
import { REMOTE_LEAD } from '../overrun.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/**
 * Outside diameters are reckoned on the thick side; thin walls make this share of them. Source: ISO 6722 of 16 mm2,
 * 7.2 mm thin (read) over 8.3 mm thick (from memory).
 */
const THIN_SHARE = 7.2 / 8.3;

type Hole = FittingOf<'passThrough'> & { readonly grommetInsideMm: number };

const isHole = (fitting: Fitting): fitting is Hole =>
  fitting.kind === 'passThrough' && fitting.grommetInsideMm !== null;

/** The size that counts for a run: as decided; a lead that carries nothing as it is marked, or as the smallest that may run alone. */
function sizeOfRun(run: Run, decided: GaugeId | null | undefined): GaugeId | null {
  if (decided !== undefined && (decided !== null || run.kind !== 'remote')) return decided;
  const { size } = run.conductor;
  if (size !== 'auto' && isGaugeId(size)) return size;
  return run.kind === 'remote' ? REMOTE_LEAD : null;
}

/** Cables from the ends that meet in the hole: what comes in goes out again, the thick with the thick. */
const cablesOf = (endsMm: readonly number[]): number[] =>
  endsMm.toSorted((one, other) => other - one).filter((_, place) => place % 2 === 0);

/** By pass-through, the outside diameters of the cables in it, mm; what no size is decided of is left out. */
function cablesIn(facts: Facts, holes: readonly Hole[]): Map<string, number[]> {
  const { circuit, plan } = facts.model;
  const decided = new Map(circuit.cables.map(({ run }, cable) => [run.id, sizeOf(facts, cable)]));
  const ends = new Map(holes.map(({ id }) => [id, { power: [] as number[], leads: [] as number[] }]));
  for (const run of plan.runs) {
    for (const { fittingId } of [run.from, run.to]) {
      const here = ends.get(fittingId);
      const size = here === undefined ? null : sizeOfRun(run, decided.get(run.id));
      if (here === undefined || size === null) continue;
      (run.kind === 'remote' ? here.leads : here.power).push(outsideMm(size));
    }
  }
  return new Map([...ends].map(([id, { power, leads }]) => [id, [...cablesOf(power), ...cablesOf(leads)]]));
}

/**
 * 33 CFR 183.445(a): what keeps a metal edge off a cable must be there. All cables of a pass-through go together through
 * its grommet, where its inside is told: not even with thin walls: fix; only if their walls are thin: note.
 */
export const grommetTooSmall: Rule = {
  id: 'grommet-too-small',
  sensitive: false,
  check: (facts) => {
    const holes = facts.model.plan.fittings.filter(isHole);
    if (holes.length === 0) return [];
    const inside = cablesIn(facts, holes);
    return holes.flatMap((hole): Finding[] => {
      const outsides = inside.get(hole.id) ?? [];
      const neededMm = bundleAcrossMm(outsides);
      if (!exceeds(neededMm, hole.grommetInsideMm)) return [];
      return [
        finding('grommet-too-small', {
          severity: exceeds(THIN_SHARE * neededMm, hole.grommetInsideMm) ? 'fix' : 'note',
          places: [fittingPlace(hole)],
          params: { neededMm, insideMm: hole.grommetInsideMm, cables: outsides.length },
          source: 'cfr183445',
        }),
      ];
    });
  },
};
