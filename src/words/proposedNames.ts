/** Names for what is proposed: a proposal knows where each part stands, a part placed by hand does not tell. */
import type { Purpose } from '../plan/propose/builder.ts';
import type { FittingKind, Plan } from '../plan/schema.ts';
import { words } from './full.ts';
import { defaultName, nameOfId } from './index.ts';
import { numbered, shownName } from './names.ts';

/** 'Main fuse 2' for the first fuse behind another source, 'Amplifier 2 fuse' for one on a branch: never a name twice. */
export function proposedName(kind: FittingKind, plan: Plan, purpose?: Purpose): string {
  const telling = kind === 'fuse' && purpose !== undefined ? fuseName(plan, purpose) : null;
  if (telling === null) return defaultName(kind, plan);
  return numbered(telling, new Set(plan.fittings.map((fitting) => shownName(plan, fitting))));
}

function fuseName(plan: Plan, { why, consumerId }: Purpose): string | null {
  if (why === 'firstFuse') return words.fittings.mainFuse;
  const consumer = consumerId === undefined ? null : nameOfId(plan, consumerId);
  return consumer === null ? null : words.fittings.fuseOf(consumer);
}
