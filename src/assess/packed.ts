/**
 * An answer as it is sent from one thread to another: each part as text, read when it is first looked at. While a finger
 * drags few parts are, and text costs next to nothing to hand over. What is looked at always comes member by member:
 * most read as they did before.
 */
import type { Assessment, Finding, RunAnswer } from './answer.ts';
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

/** What bound the choice of a run's size takes longer to work out than all the rest: it is not sent either. */
const NOT_SENT = ['governs', 'smallest'] as const;

const sentOf = (run: RunAnswer): object =>
  Object.fromEntries(
    (Object.keys(run) as (keyof RunAnswer)[])
      .filter((name) => !NOT_SENT.some((other) => other === name))
      .map((name) => [name, run[name]]),
  );

const textsOf = (list: readonly unknown[]): Texts => list.map((member) => JSON.stringify(member));

export function packed({ whys: _, findings, ...parts }: Assessment): Packed {
  return {
    // what is lazy is worked out here, where nobody waits for it
    parts: Object.fromEntries(
      Object.entries({ ...parts, runs: parts.runs.map(sentOf) }).map(([name, part]) => [name, JSON.stringify(part)]),
    ) as Packed['parts'],
    lists: textsIn({ findings, ...shorten(parts) }),
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

const textsIn = ({ findings, runs, fuses }: Lists): Packed['lists'] => ({
  findings: textsOf(findings),
  runs: textsOf(runs),
  fuses: textsOf(fuses),
});

/** How an answer reads, one that was worked out here too. */
function readOf(answer: Assessment): Read {
  const before = known.get(answer);
  if (before !== undefined) return before;
  const lists = { findings: answer.findings, ...shorten(answer) };
  const read = { texts: textsIn(lists), lists };
  known.set(answer, read);
  return read;
}

/** Runs with what was not sent, worked out when it is first read. */
const runsOf = (text: string, whole: () => Assessment): RunAnswer[] =>
  (JSON.parse(text) as RunAnswer[]).map((run, place) => {
    for (const name of NOT_SENT)
      Object.defineProperty(run, name, { enumerable: true, get: () => whole().runs[place]?.[name] ?? null });
    return run;
  });

/**
 * The answer again. Of findings, and of runs and fuses in brief, what reads as it does in `before` is the same object as
 * there, so that what shows it need not be drawn anew. What is not sent comes from `work`, when it is asked for.
 */
export function unpacked(
  { parts, lists: texts }: Packed,
  before: Assessment | null,
  work: () => Assessment,
): Assessment {
  const earlier = before === null ? NOTHING : readOf(before);
  const lists: Lists = {
    findings: listOf(texts.findings, earlier.texts.findings, earlier.lists.findings),
    runs: listOf(texts.runs, earlier.texts.runs, earlier.lists.runs),
    fuses: listOf(texts.fuses, earlier.texts.fuses, earlier.lists.fuses),
  };
  const whole = once(work);
  const answer = { findings: lists.findings };
  const tell = (name: keyof Assessment, read: () => unknown) =>
    Object.defineProperty(answer, name, { enumerable: true, get: once(read) });
  for (const [name, text] of Object.entries(parts) as [PartName, string][])
    tell(name, () => (name === 'runs' ? runsOf(text, whole) : JSON.parse(text)));
  tell('whys', () => whole().whys);
  known.set(answer as Assessment, { texts, lists });
  tellBrief(answer as Assessment, lists);
  return answer as Assessment;
}
