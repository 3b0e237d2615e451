/** The shipped example by the names that the language spoken now has for what is in it. */
import type { Plan } from '../plan/schema.ts';
import { words } from './answer.ts';
import { exampleNames as inFile } from './en/exampleNames.ts';

const KEYS = Object.keys(inFile) as (keyof typeof inFile)[];

/** A name that is not the file's own stays as it is. */
export function namedExample(plan: Plan): Plan {
  const said = new Map<string, string>(KEYS.map((key) => [inFile[key], words.exampleNames[key]]));
  const named = <T extends { readonly name: string }>(part: T): T => ({
    ...part,
    name: said.get(part.name) ?? part.name,
  });
  return named({ ...plan, sheets: plan.sheets.map(named), fittings: plan.fittings.map(named) });
}
