/** A proposal as it is kept beside its plan, and read back. The page that reads it may be newer, and the plan another. */
import * as v from 'valibot';
import { id } from '../schema/fields.ts';
import { fittingSchema, type Plan, runSchema } from '../schema.ts';
import { type Proposal, type Proposed, stillOpen, type WhyProposed } from './proposal.ts';

const WHYS: Readonly<Record<WhyProposed, true>> = {
  firstFuse: true,
  throughWall: true,
  divides: true,
  branchFuse: true,
  groundBeside: true,
  groundSource: true,
  feeds: true,
  moved: true,
};

const why = v.picklist(Object.keys(WHYS) as WhyProposed[]);

const partSchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('fitting'), id, fitting: fittingSchema, why }),
  v.strictObject({ kind: v.literal('run'), id, run: runSchema, why }),
]);

const isOfItsId = (part: Proposed): boolean => part.id === (part.kind === 'fitting' ? part.fitting : part.run).id;

/** What of a kept text is still a proposal for that plan; nothing for a text that is none. Never throws. */
export function readProposal(text: string, plan: Plan): Proposal {
  const found = new Map<string, Proposed>();
  for (const part of listIn(text)) {
    const { success, output } = v.safeParse(partSchema, part);
    if (success && isOfItsId(output) && !found.has(output.id)) found.set(output.id, output);
  }
  return stillOpen(plan, [...found.values()]);
}

function listIn(text: string): readonly unknown[] {
  try {
    const list: unknown = JSON.parse(text);
    return Array.isArray(list) ? list : [];
  } catch {
    return [];
  }
}
