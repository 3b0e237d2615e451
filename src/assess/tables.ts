/**
 * Long lists of figures, which nobody reads until the finger rests. While it drags they are left out of an answer that is
 * sent from one thread to another, and come by themselves when they are asked for: they are nine tenths of it.
 */
import type { Assessment, RunAnswer } from './answer.ts';

export const TABLES = ['runs', 'fuses', 'amplifiers', 'supply', 'shorts'] as const;

export type TableName = (typeof TABLES)[number];

export const isTable = (name: string): name is TableName => TABLES.some((table) => table === name);

/** As JSON in UTF-8: bytes cost nothing to hand over. */
export type Tables = Readonly<Record<TableName, Uint8Array<ArrayBuffer>>>;

/** What bound the choice of a run's size takes longer to work out than all the rest: it is not sent either. */
const NOT_SENT = ['governs', 'smallest'] as const;

const sentOf = (run: RunAnswer): object =>
  Object.fromEntries(
    (Object.keys(run) as (keyof RunAnswer)[])
      .filter((name) => !NOT_SENT.some((other) => other === name))
      .map((name) => [name, run[name]]),
  );

/** Runs with what was not sent, worked out when it is first read. */
const runsOf = (runs: RunAnswer[], whole: () => Assessment): RunAnswer[] =>
  runs.map((run, place) => {
    for (const name of NOT_SENT)
      Object.defineProperty(run, name, { enumerable: true, get: () => whole().runs[place]?.[name] ?? null });
    return run;
  });

/** The tables of an answer, to be sent. */
export function packTables(answer: Assessment): Tables {
  const encoder = new TextEncoder();
  const bytesOf = (name: TableName) =>
    encoder.encode(JSON.stringify(name === 'runs' ? answer.runs.map(sentOf) : answer[name]));
  return {
    runs: bytesOf('runs'),
    fuses: bytesOf('fuses'),
    amplifiers: bytesOf('amplifiers'),
    supply: bytesOf('supply'),
    shorts: bytesOf('shorts'),
  };
}

const told = new WeakMap<Assessment, Tables>();

/** Tells the tables of an answer that came without them. One that was read before has been worked out here. */
export function tellTables(answer: Assessment, tables: Tables): void {
  told.set(answer, tables);
}

/** The table of an answer that came without it: as it was told, else from the `whole`. Read when it is first looked at. */
export function readTable(name: TableName, answer: Assessment, whole: () => Assessment): unknown {
  const tables = told.get(answer);
  if (tables === undefined) return whole()[name];
  const table = JSON.parse(new TextDecoder().decode(tables[name]));
  return name === 'runs' ? runsOf(table, whole) : table;
}
