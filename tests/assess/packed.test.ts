import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Assessment, RunAnswer } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { bareBriefs, fuseRatingA, isBroken, runBrief } from '../../src/assess/brief.ts';
import { Packer, unpacked } from '../../src/assess/packed.ts';
import { isTable, packTables, TABLES, tellTables } from '../../src/assess/tables.ts';
import { openPlan } from '../../src/plan/open.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { anyPlan } from './anyPlan.ts';
import { charged, fixed, mixed, single, twoBatteries } from './plans.ts';

const PUBLIC = new URL('../../public/', import.meta.url);
const FIXTURES = new URL('../fixtures/plans/', import.meta.url);

function opened(url: URL): Plan {
  const answer = openPlan(readFileSync(url, 'utf8'));
  if (!answer.ok) throw new Error(`${url.pathname}: ${JSON.stringify(answer.reason)}`);
  return answer.plan;
}

const kept = ['v1', 'v2', 'v3', 'v4'].flatMap((version) =>
  readdirSync(new URL(`${version}/`, FIXTURES))
    .filter((name) => name.endsWith('.json'))
    .map((name): [string, Plan] => [`${version}/${name}`, opened(new URL(`${version}/${name}`, FIXTURES))]),
);

const PLANS: [name: string, plan: Plan][] = [
  ...kept,
  ['the example', opened(new URL('demo.plan.json', PUBLIC))],
  ...Object.entries({ single, mixed, twoBatteries, fixed, charged }).map(([name, make]): [string, Plan] => [
    name,
    make(),
  ]),
];

const noWhys = (): never => {
  throw new Error('Derivations were asked for.');
};

/** Its tables as they arrive. */
const sentTables = (answer: Assessment) => structuredClone(packTables(answer));

/** As it arrives, first of all or after another: nothing but what one thread may send to another gets through. */
function sent(answer: Assessment, before: Assessment | null = null) {
  const packer = new Packer();
  if (before !== null) packer.begin(before);
  return structuredClone(packer.pack(answer));
}

/** An answer with each of its parts read, the derivations left out. */
const readParts = ({ whys: _, ...parts }: Assessment) => parts;

/** All but the derivations, read one by one, as nothing asks for more. */
function parts(answer: Assessment): Record<string, unknown> {
  const names = Object.keys(answer).filter((name) => name !== 'whys');
  return Object.fromEntries(names.map((name) => [name, answer[name as keyof Assessment]]));
}

/** All of a run but what bound the choice of its size. */
const sentOf = (run: RunAnswer) =>
  Object.fromEntries(
    (Object.keys(run) as (keyof RunAnswer)[])
      .filter((name) => name !== 'governs' && name !== 'smallest')
      .map((name) => [name, run[name]]),
  );

const runBriefs = (answer: Assessment, { runs }: Plan) => runs.map(({ id }) => runBrief(answer, id));

/** What it says in brief, against the whole of what it says. */
function expectBriefs(answer: Assessment, { runs, fuses, findings, rulesChecked }: Assessment, plan: Plan): void {
  const briefs = runs.map(({ runId, gauge, areaMm2, length, unprotectedM }) => ({
    runId,
    gauge,
    areaMm2,
    length,
    unprotectedM,
  }));
  expect(runBriefs(answer, plan)).toEqual(briefs);
  expect(bareBriefs(answer)).toEqual(briefs.filter(({ unprotectedM }) => unprotectedM > 0));
  expect(runBrief(answer, 'no such run')).toBeUndefined();
  for (const rule of rulesChecked)
    expect(isBroken(answer, rule)).toBe(findings.some((finding) => finding.rule === rule));
  for (const { id } of plan.fittings) {
    const own = fuses.find(({ fittingId, terminal }) => fittingId === id && terminal === null);
    expect(fuseRatingA(answer, id)).toBe(own?.ratingA ?? null);
  }
}

describe.each(PLANS)('the answer to %s, sent and read again', (_, plan) => {
  const answer = assess(plan);
  const text = sent(answer);

  it('is the same in every part, and asks for what is not sent only when it is looked at', () => {
    let asked = 0;
    const read = unpacked(text, null, () => {
      asked += 1;
      return assess(plan);
    });
    tellTables(read, sentTables(answer));
    for (const name of Object.keys(answer) as (keyof Assessment)[])
      if (name !== 'whys' && name !== 'runs') expect(read[name], name).toEqual(answer[name]);
    expect(read.runs.map(sentOf)).toEqual(answer.runs.map(sentOf));
    expect(asked).toBe(0);
    // as a whole too, as a file of it or a test would look at it
    expect(read).toEqual(answer);
    expect(asked).toBe(1);
  });

  it('is the same in every part before its tables have come too: they are worked out then, once', () => {
    let asked = 0;
    const read = unpacked(text, null, () => {
      asked += 1;
      return answer;
    });
    for (const name of Object.keys(answer) as (keyof Assessment)[])
      if (name !== 'whys' && !isTable(name)) expect(read[name], name).toEqual(answer[name]);
    expect(asked).toBe(0);
    for (const name of TABLES) expect(read[name], name).toEqual(answer[name]);
    expect(asked).toBe(1);
    const { runs } = read;
    tellTables(read, sentTables(answer));
    expect(read.runs).toBe(runs);
  });

  it('says in brief what it says in full', () => {
    expectBriefs(unpacked(text, null, noWhys), answer, plan);
    expectBriefs(answer, answer, plan);
  });
});

const isLong = process.env.FEEDRUN_LONG !== undefined;

describe('any plan that opens', () => {
  it('has an answer that is the same sent and read again, in brief too', { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const answer = assess(plan);
        const read = unpacked(sent(answer), null, () => answer);
        tellTables(read, sentTables(answer));
        expect(parts(read)).toEqual(readParts(answer));
        expectBriefs(read, answer, plan);
        expectBriefs(answer, answer, plan);
      }),
      { numRuns: isLong ? 1000 : 60, seed: 20261126 },
    );
  });

  it('is answered for alike whatever was answered before', { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(fc.array(anyPlan, { minLength: 2, maxLength: 4 }), (plans) => {
        const packer = new Packer();
        let before: Assessment | null = null;
        for (const plan of plans) {
          const answer = assess(plan);
          const read = unpacked(structuredClone(packer.pack(answer)), before, () => answer);
          expect(parts(read)).toEqual(readParts(answer));
          expectBriefs(read, answer, plan);
          before = read;
        }
      }),
      { numRuns: isLong ? 300 : 16, seed: 20261127 },
    );
  });
});

describe('an answer after another', () => {
  const read = (plan: Plan, before: Assessment | null) => {
    const answer = assess(plan);
    const now = unpacked(sent(answer, before), before, noWhys);
    tellTables(now, sentTables(answer));
    return now;
  };
  const example = opened(new URL('demo.plan.json', PUBLIC));

  /** The example with one run taped to a length. */
  const taped = (index: number, tapedM: number): Plan => ({
    ...example,
    runs: example.runs.map((run, place) => (place === index ? { ...run, tapedM } : run)),
  });

  it('that reads the same has the same lists', () => {
    const before = read(example, null);
    const now = read(structuredClone(example), before);
    expect(now === before).toBe(false);
    expect(now.findings).toBe(before.findings);
    for (const { id } of example.runs) expect(runBrief(now, id)).toBe(runBrief(before, id));
  });

  it('keeps what reads as it did, finding by finding and run by run, and has the rest anew', () => {
    const before = read(taped(0, 0.92), null);
    const now = read(taped(0, 0.8), before);
    const [old, whole] = [0.92, 0.8].map((tapedM) => assess(taped(0, tapedM)).findings);
    const isSame = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other);

    // the first run is another length now, and the first finding says so; not all the others do
    const [were, are] = [before, now].map((answer) => runBriefs(answer, example));
    expect(are?.[0]?.length.lengthM).toBe(0.8);
    expect(are?.[0]).not.toBe(were?.[0]);
    expect(are?.filter((run, place) => run === were?.[place]).length).toBeGreaterThan(2);
    for (const [place, run] of are?.entries() ?? []) {
      const was = were?.[place];
      expect([run?.runId, run === was]).toEqual([run?.runId, isSame(run, was)]);
    }
    const stop = now.findings.find(({ rule }) => rule === 'unprotected-length');
    expect(stop).toBeDefined();
    expect(before.findings).not.toContain(stop);
    for (const [place, finding] of now.findings.entries()) {
      const sameText = isSame(whole?.[place], old?.[place]);
      expect([finding.id, finding === before.findings[place]]).toEqual([finding.id, sameText]);
    }
    expect(now.findings.some((finding) => before.findings.includes(finding))).toBe(true);
  });

  it('is sent as what differs: of one that reads the same nothing', () => {
    const { parts, lists } = sent(assess(structuredClone(example)), assess(example));
    expect(parts).toEqual({});
    for (const list of Object.values(lists)) expect(list).toEqual({ order: null, places: [], texts: '' });
    const longer = sent(assess(taped(0, 0.8)), assess(taped(0, 0.92)));
    expect(longer.parts.figures).toBeDefined();
    expect(longer.parts.rulesChecked).toBeUndefined();
  });

  it('keeps a part that reads the same as it was read, through any number of answers', () => {
    let asked = 0;
    const first = new Packer();
    const base = assess(example);
    first.begin(base);
    let read: Assessment = base;
    for (const tapedM of [0.8, 0.7, 0.6])
      read = unpacked(first.pack(assess(taped(0, tapedM))), read, () => {
        asked += 1;
        return base;
      });
    expect(read.rulesChecked).toBe(base.rulesChecked);
    expect(read.figures).toEqual(assess(taped(0, 0.6)).figures);
    expect(asked).toBe(0);
  });

  it('after one that was worked out here keeps what reads the same too; after none it has all of it anew', () => {
    const here = assess(example);
    const now = read(example, here);
    expect(now.findings).toEqual(here.findings);
    expect(now.findings).toBe(here.findings);
    const anew = read(example, null);
    expect(anew.findings).toEqual(here.findings);
    expect(anew.findings[0]).not.toBe(here.findings[0]);
  });
});
