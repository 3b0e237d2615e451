/**
 * An answer as it is sent from one thread to another: each part as text, read when it is first looked at. While a finger
 * drags few parts are, and text costs next to nothing to hand over. What is looked at always comes member by member:
 * most read as they did before.
 */
import type { Assessment, Finding } from './answer.ts';
import { type Brief, shorten, tellBrief } from './brief.ts';
import { once } from './perModel.ts';

/** Derivations are not sent: nobody opens one while a finger drags, and they are the larger half of an answer. */
type PartName = Exclude<keyof Assessment, 'whys' | 'findings'>;

/** Lists of which every member is looked at. */
interface Lists {
  readonly findings: readonly Finding[];
  readonly runs: Brief['runs'];
  readonly fuses: Brief['fuses'];
}

type Texts = readonly string[];

export interface Packed {
  readonly parts: Readonly<Record<PartName, string>>;
  readonly lists: Readonly<Record<keyof Lists, Texts>>;
}

const textsOf = (list: readonly unknown[]): Texts => list.map((member) => JSON.stringify(member));

export function packed({ whys: _, findings, ...parts }: Assessment): Packed {
  const brief = shorten(parts);
  return {
    // what is lazy is worked out here, where nobody waits for it
    parts: Object.fromEntries(
      Object.entries(parts).map(([name, part]) => [name, JSON.stringify(part)]),
    ) as Packed['parts'],
    lists: { findings: textsOf(findings), runs: textsOf(brief.runs), fuses: textsOf(brief.fuses) },
  };
}

interface Read {
  readonly texts: Packed['lists'];
  readonly lists: Lists;
}

/** What reads as it did before is the same object as then; the list too, when all of it does. */
function listOf<T>(texts: Texts, before: Texts, values: readonly T[]): readonly T[] {
  const list = texts.map((text, place): T => (text === before[place] ? (values[place] as T) : JSON.parse(text)));
  const isSame = list.length === values.length && list.every((member, place) => member === values[place]);
  return isSame ? values : list;
}

const NOTHING: Read = { texts: { findings: [], runs: [], fuses: [] }, lists: { findings: [], runs: [], fuses: [] } };

const known = new WeakMap<Assessment, Read>();

/**
 * The answer again. Of findings, and of runs and fuses in brief, what reads as it does in `before` is the same object as
 * there, so that what shows it need not be drawn anew. Derivations come from `whys`, when they are asked for.
 */
export function unpacked(
  { parts, lists: texts }: Packed,
  before: Assessment | null,
  whys: () => Assessment['whys'],
): Assessment {
  const earlier = (before === null ? undefined : known.get(before)) ?? NOTHING;
  const lists: Lists = {
    findings: listOf(texts.findings, earlier.texts.findings, earlier.lists.findings),
    runs: listOf(texts.runs, earlier.texts.runs, earlier.lists.runs),
    fuses: listOf(texts.fuses, earlier.texts.fuses, earlier.lists.fuses),
  };
  const answer = { findings: lists.findings };
  for (const [name, text] of Object.entries(parts))
    Object.defineProperty(answer, name, { enumerable: true, get: once(() => JSON.parse(text)) });
  const whole = Object.defineProperty(answer, 'whys', { enumerable: true, get: once(whys) }) as Assessment;
  known.set(whole, { texts, lists });
  tellBrief(whole, lists);
  return whole;
}
