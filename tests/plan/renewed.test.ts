import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differing } from '../../src/plan/differing.ts';
import { renewed } from '../../src/plan/renewed.ts';

interface Member {
  readonly is: number;
}

let made = 0;
const member = (): Member => {
  made += 1;
  return { is: made };
};
const listOf = (length: number): Member[] => Array.from({ length }, member);

/** As anyone would tell it who goes through both. */
const told = (one: readonly Member[], other: readonly Member[]): number[] | null =>
  one.length === other.length ? [...one.keys()].filter((place) => one[place] !== other[place]) : null;

describe('a list of which a member is renewed', () => {
  it('has it in the place of the other, and is the list that it was for the rest', () => {
    const list = listOf(3);
    const now = member();
    const next = renewed(list, list[1] as Member, now);
    expect(next).toEqual([list[0], now, list[2]]);
    expect(list[1]).not.toBe(now);
    expect(differing(list, next)).toEqual([1]);
    expect(differing(next, list)).toEqual([1]);
    expect(differing(next, next)).toEqual([]);
  });

  it('holds the same members where there is none to be renewed', () => {
    const list = listOf(2);
    expect(renewed(list, member(), member())).toEqual(list);
  });

  it('differs from one of another length in more than places', () => {
    const list = listOf(2);
    expect(differing(list, listOf(3))).toBeNull();
    expect(differing(renewed(list, list[0] as Member, member()), [...list, member()])).toBeNull();
  });

  it('of the same lists again differs nowhere once each member is back', () => {
    const list = listOf(4);
    const [first, other] = [list[0] as Member, member()];
    const back = renewed(renewed(list, first, other), other, first);
    expect(differing(list, back)).toEqual([]);
  });

  it('differs from any that is of the same kin, or of none, where a look at each member finds it', () => {
    const step = fc.record({
      from: fc.nat(),
      place: fc.nat(),
      back: fc.boolean(),
      by: fc.constantFrom('renew', 'copy'),
    });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), fc.array(step, { maxLength: 40 }), (length, steps) => {
        const first = listOf(length);
        const lists: Member[][] = [first];
        for (const { from, place, back, by } of steps) {
          const list = lists[from % lists.length] as Member[];
          const at = place % length;
          const now = back ? (first[at] as Member) : member();
          // a copy knows nothing of where it came from
          if (by === 'copy') lists.push(list.with(at, now));
          else if (!list.includes(now)) lists.push(renewed(list, list[at] as Member, now));
        }
        for (const one of lists)
          for (const other of lists) expect(differing(one, other)?.toSorted((a, b) => a - b)).toEqual(told(one, other));
      }),
      { numRuns: 200, seed: 20261127 },
    );
  });
});
