import type { Fitting, Plan } from '../../plan/schema.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** Terminals of a fitting that a run must end at for it to do anything, and how many ends it takes. */
function wanted(fitting: Fitting): readonly { terminal: string; ends: number }[] {
  switch (fitting.kind) {
    case 'fuse':
      return [
        { terminal: 'in', ends: 1 },
        { terminal: 'out', ends: 1 },
      ];
    case 'passThrough':
    case 'continuation':
      return [{ terminal: 'through', ends: 2 }];
    case 'block':
      return [{ terminal: 'bus', ends: 1 }];
    case 'ground':
      return [{ terminal: 'body', ends: 1 }];
    default:
      // amplifiers and batteries have rules of their own
      return [];
  }
}

function endsAt(plan: Plan): Map<string, number> {
  const ends = new Map<string, number>();
  for (const { from, to } of plan.runs) {
    for (const { fittingId, terminal } of [from, to]) {
      const key = `${fittingId}.${terminal}`;
      ends.set(key, (ends.get(key) ?? 0) + 1);
    }
  }
  return ends;
}

/** A fitting with a terminal that nothing ends at: unfinished, worth knowing. */
export const looseEnd: Rule = {
  id: 'loose-end',
  sensitive: false,
  check: ({ model: { plan } }) => {
    const ends = endsAt(plan);
    return plan.fittings.flatMap((fitting) => {
      // a block fed over one of its outputs still has its bus joined
      const joined =
        fitting.kind === 'block'
          ? fitting.outputs.reduce((sum, { terminal }) => sum + (ends.get(`${fitting.id}.${terminal}`) ?? 0), 0)
          : 0;
      const loose = wanted(fitting).filter(
        (want) => (ends.get(`${fitting.id}.${want.terminal}`) ?? 0) + joined < want.ends,
      );
      if (loose.length === 0) return [];
      return [
        finding('loose-end', {
          severity: 'note',
          places: [fittingPlace(fitting)],
          params: { terminals: loose.map(({ terminal }) => terminal) },
          source: 'feedrunRules',
        }),
      ];
    });
  },
};
