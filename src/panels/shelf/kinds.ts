/** Kinds of fittings in the order in which they are offered: the common ones in sight, the rest by what they do. */
import type { FittingKind } from '../../plan/schema.ts';

type KindGroup = 'common' | 'sources' | 'protection' | 'joining' | 'loads' | 'sheets';

const GROUP_OF: Readonly<Record<FittingKind, KindGroup>> = {
  battery: 'common',
  fuse: 'common',
  passThrough: 'common',
  block: 'common',
  amplifier: 'common',
  ground: 'common',
  alternator: 'sources',
  jumpPost: 'sources',
  takeOff: 'sources',
  charger: 'sources',
  capacitor: 'sources',
  breaker: 'protection',
  switch: 'protection',
  relay: 'protection',
  bus: 'joining',
  reducer: 'joining',
  load: 'loads',
  continuation: 'sheets',
};

export const ALL_KINDS = Object.keys(GROUP_OF) as FittingKind[];

export const kindsIn = (group: KindGroup): FittingKind[] => ALL_KINDS.filter((kind) => GROUP_OF[kind] === group);

/** Not in sight on the shelf. A continuation point is made with its sheets, not placed by itself. */
export const MORE_GROUPS = ['sources', 'protection', 'joining', 'loads'] as const satisfies KindGroup[];

export const isCommon = (kind: FittingKind): boolean => GROUP_OF[kind] === 'common';
