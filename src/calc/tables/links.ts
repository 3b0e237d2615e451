import type { SourceId } from '../sources.ts';

export const LINK_FAMILY_IDS = [
  'iso8820-3-F',
  'iso8820-3-C',
  'iso8820-3-E',
  'iso8820-5-SF30',
  'slotted-short',
  'iso8820-5-SF51',
  'ul248-15-T',
  'slotted-long',
  'post-link',
  'thermal-breaker',
] as const;

/** Families whose figures the user tells. */
type OwnFamilyId = 'own1' | 'own2' | 'own3' | 'own4' | 'own5' | 'own6';

export type LinkFamilyId = (typeof LINK_FAMILY_IDS)[number] | OwnFamilyId;

export interface LinkFamily {
  readonly id: LinkFamilyId;
  readonly ratingsA: readonly number[];
  readonly ratingsSource: SourceId;
  readonly ratedV: number;
  /** Largest current the link is proven to break, A d.c.; null: not stated. */
  readonly breakingA: number | null;
  readonly breakingSource: SourceId | null;
  /** Thread of the two bolts, mm; null for blades that plug in. From memory. */
  readonly boltMm: number | null;
}

/**
 * The families of fuse-link, smallest body first (bodies compared from memory). They do not interchange.
 * Sources and trust: ids in each row. Links of a 58 V build exist for types C, E and F; the common 32 V build is listed.
 */
export const LINK_FAMILIES: readonly LinkFamily[] = [
  {
    id: 'iso8820-3-F',
    ratingsA: [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
    ratingsSource: 'bladeRanges',
    ratedV: 32,
    breakingA: 1000,
    breakingSource: 'iso8820part3',
    boltMm: null,
  },
  {
    id: 'iso8820-3-C',
    ratingsA: [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40],
    ratingsSource: 'bladeRanges',
    ratedV: 32,
    breakingA: 1000,
    breakingSource: 'iso8820part3',
    boltMm: null,
  },
  {
    id: 'iso8820-3-E',
    ratingsA: [20, 30, 40, 50, 60, 70, 80, 100],
    ratingsSource: 'bladeRanges',
    ratedV: 32,
    breakingA: 1000,
    breakingSource: 'iso8820part3',
    boltMm: null,
  },
  {
    id: 'iso8820-5-SF30',
    ratingsA: [30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200],
    ratingsSource: 'iso8820part5Memory',
    ratedV: 32,
    breakingA: 2000,
    breakingSource: 'iso8820part5',
    boltMm: 5,
  },
  {
    id: 'slotted-short',
    ratingsA: [30, 40, 50, 60, 80, 100, 125, 150],
    ratingsSource: 'slottedLinks',
    ratedV: 32,
    breakingA: null,
    breakingSource: null,
    boltMm: 5,
  },
  {
    id: 'iso8820-5-SF51',
    ratingsA: [60, 80, 100, 125, 150, 175, 200, 225, 250, 275, 300, 350, 400, 450, 500],
    ratingsSource: 'iso8820part5Memory',
    ratedV: 32,
    breakingA: 2000,
    breakingSource: 'iso8820part5',
    boltMm: 8,
  },
  {
    id: 'ul248-15-T',
    ratingsA: [110, 125, 150, 175, 200, 225, 250, 300, 350, 400],
    ratingsSource: 'ul248part15',
    ratedV: 125,
    breakingA: 20000,
    breakingSource: 'ul248part15',
    boltMm: 8,
  },
  {
    id: 'slotted-long',
    ratingsA: [60, 80, 100, 150, 175, 200, 225, 250, 300, 350, 400, 500],
    ratingsSource: 'slottedLinks',
    ratedV: 32,
    breakingA: null,
    breakingSource: null,
    boltMm: 8,
  },
  {
    id: 'post-link',
    ratingsA: [30, 40, 50, 60, 75, 80, 90, 100, 125, 150, 175, 200, 225, 250, 300],
    ratingsSource: 'postLinks',
    ratedV: 58,
    breakingA: 10_000,
    breakingSource: 'postLinks',
    boltMm: 8,
  },
  {
    id: 'thermal-breaker',
    ratingsA: [30, 40, 50, 60, 70, 80, 100, 120, 150, 200, 250, 300],
    ratingsSource: 'thermalBreakers',
    ratedV: 32,
    breakingA: null,
    breakingSource: null,
    boltMm: 6,
  },
];

/** The family of that id, among those held here and the user's `own`. Throws on one that neither holds. */
export function linkFamily(id: LinkFamilyId, own: readonly LinkFamily[] = []): LinkFamily {
  const family = [...LINK_FAMILIES, ...own].find((candidate) => candidate.id === id);
  if (family === undefined) throw new RangeError(`fuse-links: no family '${id}'`);
  return family;
}
