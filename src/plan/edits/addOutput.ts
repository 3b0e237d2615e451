import { fittingById } from '../byId.ts';
import { autoLink } from '../newFitting.ts';
import type { Link, Plan } from '../schema.ts';
import { withFitting } from './replaced.ts';

/** Adds an output to a distribution block, fused unless `link` is null, under the first free terminal name. */
export function addOutput(plan: Plan, blockId: string, link: Link | null = autoLink()): Plan {
  const block = fittingById(plan, blockId);
  if (block?.kind !== 'block') return plan;
  const used = new Set(block.outputs.map(({ terminal }) => terminal));
  let number = 1;
  while (used.has(`out${number}`)) number += 1;
  return withFitting(plan, block, { ...block, outputs: [...block.outputs, { terminal: `out${number}`, link }] });
}
