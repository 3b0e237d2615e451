import type { RuleId } from '../../../assess/answer.ts';
import { cable } from './cable.ts';
import type { FindingTable } from './finding.ts';
import { fit } from './fit.ts';
import { links } from './links.ts';
import { plan } from './plan.ts';
import { protection } from './protection.ts';
import { short } from './short.ts';
import { supply } from './supply.ts';

export const findings: FindingTable<RuleId> = {
  ...protection,
  ...links,
  ...cable,
  ...fit,
  ...plan,
  ...short,
  ...supply,
};

/** Added where a drawn length decides the verdict. */
export const provisional = 'Provisional: tape it.';

/** Added where an assumption decides the verdict. */
export const decidedBy = (names: readonly string[]): string =>
  names.length === 0 ? '' : `Decided by an assumption: ${names.join(', ')}.`;

/** Around what does not hold as assumed, and would with a value halved or doubled. */
export const looming = (names: readonly string[], sentence: string): string =>
  `Not as assumed, but with another value for ${names.join(' or ')}: ${sentence}`;

/** A place that the plan no longer holds. */
export const unnamed = 'something';
