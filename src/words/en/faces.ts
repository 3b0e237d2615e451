/** The view of this device, and what the faces for a customer and a class say. */
import type { Zone } from '../../plan/schema.ts';

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const view = {
  title: 'View',
  face: 'Who looks at the screen',
  faces: { work: 'Work', customer: 'Customer', class: 'Class' },
  faceHints: {
    work: 'All figures, findings and tools.',
    customer: 'What the system is, what protects the car, what is still to settle.',
    class: 'Larger type; figures can be hidden.',
  },
  theme: 'Light around you',
  themes: { paper: 'Paper', sun: 'Sun', dark: 'Dark' },
  themeHints: {
    paper: 'Calm, for indoors.',
    sun: 'Near-black on white, for glare.',
    dark: 'For the evening.',
  },
  side: 'Hand that draws',
  sides: { right: 'Right', left: 'Left' },
  sideHints: {
    right: 'Tools on the left, where the other hand holds the tablet.',
    left: 'Tools on the right, where the other hand holds the tablet.',
  },
  language: 'Language',
  languageAuto: 'As the browser asks',
  touch: 'Touch',
  bigFingers: 'Big fingers',
} as const;

export const faceBar = {
  now: { customer: 'Customer view', class: 'Class view' },
  leave: 'Back to work',
  hide: 'Hide figures',
  show: 'Show figures',
} as const;

export const classFace = {
  hidden: 'Figures are hidden',
  hiddenHint: 'What do you expect? Show the figures when the class has said.',
  hiddenValue: 'hidden',
} as const;

const PLACES: Readonly<Record<Zone, string | null>> = {
  auto: null,
  bay: 'in the engine bay',
  wing: 'along a fender',
  hot: 'beside hot parts',
  cabin: 'in the cabin',
  cargo: 'in the cargo space',
  under: 'under the body',
};

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** 'A', 'A and B', 'A, B and C'. */
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

export const customer = {
  notFinished: (points: number) => `Not finished: ${plural(points, 'point', 'points')} to settle before building`,
  toMeasure: (lengths: number) => `Not finished: ${plural(lengths, 'length', 'lengths')} to measure in the vehicle`,
  system: 'Your system',
  noAmplifier: 'No amplifier chosen yet.',
  outputOpen: 'output still to be told',
  total: (power: string) => `${power} in all`,
  change: (name: string) => `Change ${name}`,
  changeClose: 'Done',
  protects: 'What protects your car',
  noFuse: 'No fuse drawn yet.',
  ratingOpen: 'rating still to be chosen',
  /** Where a fuse sits: 'In the engine bay, after 40 cm of cable from Battery.' */
  sits(zone: Zone | null, from: { length: string; source: string } | null): string {
    const place = zone === null ? null : PLACES[zone];
    const way = from === null ? null : `after ${from.length} of cable from ${from.source}`;
    const parts = [place, way].filter((part) => part !== null);
    return parts.length === 0 ? '' : `${capitalised(parts.join(', '))}.`;
  },
  covers: (from: string, to: readonly string[]) =>
    `If the cable from ${from} to ${listed(to)} ever touches bare metal, this fuse cuts the current off before the cable is damaged.`,
  coversShared: (from: string, to: readonly string[], ahead: string) =>
    `It guards the cable from ${from} to ${listed(to)} together with ${ahead}: one of the two cuts the current off before the cable is damaged. The limits of the fuse standard do not show that this one opens first.`,
  coversUnshown: (from: string, to: readonly string[]) =>
    `It guards the cable from ${from} to ${listed(to)}. The limits of the fuse standard do not show that it always opens before that cable is damaged.`,
  coversOpen: 'Which cable it protects is still to be settled.',
  before: (length: string) => `The ${length} before it has no fuse of its own.`,
  bare: (source: string, length: string) => `${length} of cable from ${source} has no fuse yet.`,
  feed: 'Cable from the battery',
  feedOpen: 'Still to be chosen.',
  carries: (current: string) => `Up to ${current} at full volume.`,
  open: 'Still to settle',
  topics: {
    protection: (n: number) => `${plural(n, 'point', 'points')} about fuses and what they protect`,
    cable: (n: number) => `${plural(n, 'point', 'points')} about the cables`,
    power: (n: number) => `${plural(n, 'point', 'points')} about power for the amplifiers`,
    ground: (n: number) => `${plural(n, 'point', 'points')} about the way back through the body`,
    detail: (n: number) => `${plural(n, 'further point', 'further points')}`,
  },
  notTold: (items: string) => `Not told yet: ${items}.`,
  notChecked: (items: string) => `Not checked yet: ${items}.`,
} as const;
