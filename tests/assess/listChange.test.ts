import fc from 'fast-check';
import { expect, it } from 'vitest';
import { changed, changeOf, textOf } from '../../src/assess/listChange.ts';
import { membersOf } from '../../src/assess/members.ts';

interface One {
  readonly id: string;
  readonly is: number;
}

const idOf = ({ id }: One): string => id;
const told = (before: readonly One[], now: readonly One[]) =>
  structuredClone(changeOf(textOf(before, idOf), textOf(now, idOf)));

const lists = fc.uniqueArray(fc.record({ id: fc.constantFrom(...'abcdefgh'), is: fc.integer({ min: 0, max: 2 }) }), {
  selector: idOf,
});

it('a list told by what differs is the list, and what reads as it did is the same object wherever it stands', () => {
  fc.assert(
    fc.property(fc.array(lists, { minLength: 2, maxLength: 5 }), ([first = [], ...others]) => {
      let [before, members] = [first, membersOf(first, idOf)];
      for (const now of others) {
        const were = new Map(members.all().map((one) => [one.id, one]));
        members = changed(members, told(before, now));
        expect(members.all()).toEqual(now);
        for (const { id, is } of now) {
          const was = were.get(id);
          if (was?.is === is) expect(members.get(id)).toBe(was);
          expect(members.get(id)).toEqual({ id, is });
        }
        expect(members.get('none')).toBeUndefined();
        before = now;
      }
    }),
    { numRuns: 300, seed: 20261127 },
  );
});

it('of one that goes and of others that stand elsewhere then nothing is told but their order', () => {
  const list = [...'abcd'].map((id, is) => ({ id, is }));
  expect(told(list, list.slice(1))).toEqual({ order: [1, 2, 3], places: [], texts: '' });
  expect(told(list, [...list.slice(2), { id: 'e', is: 9 }])).toEqual({
    order: [2, 3, 'e'],
    places: [2],
    texts: '{"id":"e","is":9}',
  });
});

it('that is the same is told by nothing, and stays the same list', () => {
  const list = [...'abcd'].map((id, is) => ({ id, is }));
  const members = membersOf(list, idOf);
  expect(changed(members, told(list, structuredClone(list)))).toBe(members);
});
