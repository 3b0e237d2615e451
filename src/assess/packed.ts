/**
 * An answer as it is sent from one thread to another while a finger drags: what of it reads otherwise than the answer
 * before. Findings, and runs and fuses in brief, come member by member; the tables come by themselves (`tables.ts`). All
 * of it is read when it is first looked at; little is.
 */
import type { Assessment, Finding } from './answer.ts';
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
import { isTable, readTable, TABLES, type TableName } from './tables.ts';

/** Derivations are not sent: nobody opens one while a finger drags, and they are the larger half of an answer. */
type PartName = Exclude<keyof Assessment, 'whys' | 'findings' | TableName>;

/** Lists that are told member by member: runs and fuses are those in brief. */
type ListName = 'findings' | 'runs' | 'fuses';

export interface Packed {
  /** The parts that read otherwise, as JSON. */
  readonly parts: Readonly<Partial<PartTexts>>;
  readonly lists: Readonly<Record<ListName, ListChange>>;
  /** What is said in brief beside those lists. */
  readonly brief: Pick<Brief, 'bare' | 'broken'>;
}

type PartTexts = Readonly<Record<PartName, string>>;

const isPart = (name: keyof Assessment): name is PartName => name !== 'whys' && name !== 'findings' && !isTable(name);

/** What is lazy is worked out here, where nobody waits for it; derivations are not touched. */
function partsOf(answer: Assessment): PartTexts {
  const names = (Object.keys(answer) as (keyof Assessment)[]).filter(isPart);
  return Object.fromEntries(names.map((name) => [name, JSON.stringify(answer[name])])) as PartTexts;
}

/** The parts that differ from `before`. */
function otherParts(before: PartTexts | null, now: PartTexts): Partial<PartTexts> {
  const names = (Object.keys(now) as PartName[]).filter((name) => now[name] !== before?.[name]);
  return Object.fromEntries(names.map((name) => [name, now[name]]));
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
      parts: otherParts(before.parts, now.parts as PartTexts),
      lists: {
        findings: changeOf(before.lists.findings, now.lists.findings),
        runs: changeOf(before.lists.runs, now.lists.runs),
        fuses: changeOf(before.lists.fuses, now.lists.fuses),
      },
      brief: { bare: bareOf(answer), broken: brokenOf(answer) },
    };
  }
}

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

function readersOf({ parts }: Packed, before: Assessment | null): Readers {
  const readers = new Map<PartName, () => unknown>();
  if (before !== null)
    // by what was sent of it, so that no answer holds on to those before it
    for (const name of (Object.keys(before) as (keyof Assessment)[]).filter(isPart))
      readers.set(name, known.get(before)?.get(name) ?? (() => before[name]));
  for (const [name, text] of Object.entries(parts) as [PartName, string][])
    readers.set(
      name,
      once(() => JSON.parse(text)),
    );
  return readers;
}

/**
 * The answer again. `before` is the one that it was packed after; of findings, and of runs and fuses in brief, what reads
 * as it does there is the same object, so that what shows it need not be drawn anew. What is not sent, or has not come yet,
 * comes from `work`, when it is asked for.
 */
export function unpacked(packed: Packed, before: Assessment | null, work: () => Assessment): Assessment {
  const earlier = earlierLists(before);
  const whole = once(work);
  const answer = {} as Assessment;
  const tell = (name: keyof Assessment, get: () => unknown) =>
    Object.defineProperty(answer, name, { enumerable: true, get });
  const readers = readersOf(packed, before);
  for (const [name, read] of readers) tell(name, read);
  for (const name of TABLES)
    tell(
      name,
      once(() => readTable(name, answer, whole)),
    );
  tell(
    'whys',
    once(() => whole().whys),
  );
  const { lists, brief } = packed;
  const members = changed(earlier.findings, lists.findings);
  findings.set(answer, members);
  tell('findings', () => members.all());
  known.set(answer, readers);
  tellBrief(answer, { runs: changed(earlier.runs, lists.runs), fuses: changed(earlier.fuses, lists.fuses), ...brief });
  return answer;
}
