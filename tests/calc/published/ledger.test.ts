import { describe, expect, it } from 'vitest';
import chart from '../../fixtures/published/contestChart.json' with { type: 'json' };
import ledger from '../../fixtures/published/exampleLedger.json' with { type: 'json' };
import kValues from '../../fixtures/published/kValues.json' with { type: 'json' };
import examples from '../../fixtures/published/workedExamples.json' with { type: 'json' };

/** The parts that the tests of this folder read, by the name that the ledger gives them. */
const PARTS: Readonly<Record<string, unknown>> = {
  ...examples,
  'kValues.json': kValues,
  'contestChart.json': chart,
};

/** Whether a figure stands anywhere in a part as one that was printed. */
function holds(part: unknown, figure: number | string): boolean {
  if (part === figure) return true;
  return typeof part === 'object' && part !== null && Object.values(part).some((inner) => holds(inner, figure));
}

describe('the ledger of published worked examples', () => {
  const shown = ledger.examples.flatMap(({ id, title, shownIn, printed }) =>
    shownIn === undefined || printed === undefined ? [] : [{ id, title, shownIn, printed }],
  );

  it('has 35, each once, and each either shown or given a reason', () => {
    expect(new Set(ledger.examples.map(({ id }) => id)).size).toBe(35);
    for (const { shownIn, notOurs } of ledger.examples) expect([shownIn, notOurs].filter(Boolean)).toHaveLength(1);
  });

  it.each(shown)('$id, $title: $printed stands in $shownIn', ({ shownIn, printed }) => {
    expect(holds(PARTS[shownIn], printed)).toBe(true);
  });

  it('says of the three printed in error that they are, and of no other', () => {
    const errors = [...examples.tableDropErrors.map(({ printedV }) => printedV), examples.onderdonk.printedA];
    const ofLedger = shown.filter(({ id }) => ledger.printedInError.includes(id)).map(({ printed }) => printed);
    expect(ofLedger).toEqual(errors);
  });

  it('leaves three out, which do not belong to the power feed of a vehicle', () => {
    const left = ledger.examples.filter(({ notOurs }) => notOurs !== undefined).map(({ id }) => id);
    expect(left).toEqual(['FAA-ex2a', 'PREECE-1', 'CLASSB-1']);
  });
});
