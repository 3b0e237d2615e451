/**
 * An answer as it is sent from one thread to another while a finger drags: what of it reads otherwise than the answer
 * before. Findings, and runs and fuses in brief, come member by member. The other parts come as bytes, which cost nothing
 * to hand over. All of it is read when it is first looked at; little is.
 */
import type { Assessment, Finding, RunAnswer } from './answer.ts';
import {
  type Brief,
  bareOf,
  briefOf,
  brokenOf,
  type FuseBrief,
  fuseBriefsOf,
  fuseIdOf,
  type RunBrief,
  runBriefsOf,
  runIdOf,
  tellBrief,
} from './brief.ts';
import { changed, changeOf, type ListChange, type ListText, textOf } from './listChange.ts';
import { type Members, membersOf } from './members.ts';
import { once } from './perModel.ts';

/** Derivations are not sent: nobody opens one while a finger drags, and they are the larger half of an answer. */
type PartName = Exclude<keyof Assessment, 'whys' | 'findings'>;

/** Lists that are told member by member: runs and fuses are those in brief. */
type ListName = 'findings' | 'runs' | 'fuses';

export interface Packed {
  /** The parts that read otherwise, one after another, as JSON in UTF-8. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Where in them each of those begins and ends; null for a part that reads as it did. */
  readonly parts: Readonly<Record<PartName, readonly [from: number, to: number] | null>>;
  readonly lists: Readonly<Record<ListName, ListChange>>;
  /** What is said in brief beside those lists. */
  readonly brief: Pick<Brief, 'bare' | 'broken'>;
}

/** What bound the choice of a run's size takes longer to work out than all the rest: it is not sent either. */
const NOT_SENT = ['governs', 'smallest'] as const;

const sentOf = (run: RunAnswer): object =>
  Object.fromEntries(
    (Object.keys(run) as (keyof RunAnswer)[])
      .filter((name) => !NOT_SENT.some((other) => other === name))
      .map((name) => [name, run[name]]),
  );

type PartTexts = Readonly<Record<PartName, string>>;

/** The parts that differ from `before`, one after another. */
function bytesOf(before: PartTexts | null, now: PartTexts): Pick<Packed, 'bytes' | 'parts'> {
  const encoder = new TextEncoder();
  const names = Object.keys(now) as PartName[];
  const told = names
    // a run knows of its own answer what was not sent with it
    .filter((name) => name === 'runs' || now[name] !== before?.[name])
    .map((name) => ({ name, own: encoder.encode(now[name]) }));
  const bytes = new Uint8Array(told.reduce((sum, { own }) => sum + own.length, 0));
  const places = new Map<PartName, readonly [number, number]>();
  let from = 0;
  for (const { name, own } of told) {
    bytes.set(own, from);
    places.set(name, [from, from + own.length]);
    from += own.length;
  }
  return {
    bytes,
    parts: Object.fromEntries(names.map((name) => [name, places.get(name) ?? null])) as Packed['parts'],
  };
}

/** What is lazy is worked out here, where nobody waits for it; derivations are not touched. */
function partsOf(answer: Assessment): PartTexts {
  const names = (Object.keys(answer) as (keyof Assessment)[]).filter((name) => name !== 'whys' && name !== 'findings');
  const texts = names.map((name) => [name, JSON.stringify(name === 'runs' ? answer.runs.map(sentOf) : answer[name])]);
  return Object.fromEntries(texts) as PartTexts;
}

interface Read {
  /** null before the first answer. */
  readonly parts: PartTexts | null;
  readonly lists: Readonly<Record<ListName, ListText>>;
}

const readingOf = (answer: Assessment): Read => ({
  parts: partsOf(answer),
  lists: {
    findings: textOf(answer.findings, findingIdOf),
    runs: textOf(runBriefsOf(answer), runIdOf),
    fuses: textOf(fuseBriefsOf(answer), fuseIdOf),
  },
});

const findingIdOf = ({ id }: Finding): string => id;

const NO_TEXT: ListText = { ids: [], texts: [] };

/** Sends answers, each by what differs from the one before it. */
export class Packer {
  #before: Read = { parts: null, lists: { findings: NO_TEXT, runs: NO_TEXT, fuses: NO_TEXT } };

  /** The answer that the other side has already. */
  begin(answer: Assessment): void {
    this.#before = readingOf(answer);
  }

  pack(answer: Assessment): Packed {
    const [before, now] = [this.#before, readingOf(answer)];
    this.#before = now;
    return {
      ...bytesOf(before.parts, now.parts as PartTexts),
      lists: {
        findings: changeOf(before.lists.findings, now.lists.findings),
        runs: changeOf(before.lists.runs, now.lists.runs),
        fuses: changeOf(before.lists.fuses, now.lists.fuses),
      },
      brief: { bare: bareOf(answer), broken: brokenOf(answer) },
    };
  }
}

/** Runs with what was not sent, worked out when it is first read. */
const runsOf = (runs: RunAnswer[], whole: () => Assessment): RunAnswer[] =>
  runs.map((run, place) => {
    for (const name of NOT_SENT)
      Object.defineProperty(run, name, { enumerable: true, get: () => whole().runs[place]?.[name] ?? null });
    return run;
  });

/** Findings of an answer that came in pieces. */
const findings = new WeakMap<Assessment, Members<Finding>>();

const findingsOf = (answer: Assessment): Members<Finding> =>
  findings.get(answer) ?? membersOf(answer.findings, findingIdOf);

function earlierLists(before: Assessment | null) {
  if (before !== null) return { findings: findingsOf(before), ...briefOf(before) };
  return {
    findings: membersOf<Finding>([], findingIdOf),
    runs: membersOf<RunBrief>([], runIdOf),
    fuses: membersOf<FuseBrief>([], fuseIdOf),
  };
}

type Readers = ReadonlyMap<PartName, () => unknown>;

/** How each part of an answer that came in pieces is read. */
const known = new WeakMap<Assessment, Readers>();

/** How the part of an answer before is read: by what was sent of it, so that no answer holds on to those before it. */
function earlierReader(before: Assessment, name: PartName): () => unknown {
  return known.get(before)?.get(name) ?? (() => before[name]);
}

/**
 * The answer again. `before` is the one that it was packed after; of findings, and of runs and fuses in brief, what reads
 * as it does there is the same object, so that what shows it need not be drawn anew. What is not sent comes from `work`,
 * when it is asked for.
 */
export function unpacked(
  { bytes, parts, lists, brief }: Packed,
  before: Assessment | null,
  work: () => Assessment,
): Assessment {
  const earlier = earlierLists(before);
  const whole = once(work);
  const answer = {} as Assessment;
  const tell = (name: keyof Assessment, get: () => unknown) =>
    Object.defineProperty(answer, name, { enumerable: true, get });
  const readers = new Map<PartName, () => unknown>();
  for (const [name, place] of Object.entries(parts) as [PartName, Packed['parts'][PartName]][]) {
    if (place === null && before === null) throw new Error(`The part ${name} was not sent.`);
    const read = () => JSON.parse(new TextDecoder().decode(bytes.subarray(...(place ?? []))));
    const reader = place === null && before !== null ? earlierReader(before, name) : once(read);
    readers.set(name, reader);
    tell(name, name === 'runs' ? once(() => runsOf(reader() as RunAnswer[], whole)) : reader);
  }
  tell(
    'whys',
    once(() => whole().whys),
  );
  const members = changed(earlier.findings, lists.findings);
  findings.set(answer, members);
  tell('findings', () => members.all());
  known.set(answer, readers);
  tellBrief(answer, { runs: changed(earlier.runs, lists.runs), fuses: changed(earlier.fuses, lists.fuses), ...brief });
  return answer;
}
