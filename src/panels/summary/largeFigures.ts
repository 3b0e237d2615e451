/** The four large figures in words, each with what governs it. */
import type { Assessment } from '../../assess/answer.ts';
import { isBroken, runBrief } from '../../assess/brief.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/answer.ts';
import { nameOfId, unitsFor } from '../../words/index.ts';
import { figureSaid } from './figureSaid.ts';

export const LARGE_FIGURES = ['feed', 'mainFuse', 'worstDrop', 'unprotected'] as const;

export type LargeFigureId = (typeof LARGE_FIGURES)[number];

/** Why a figure is missing: no answer is an answer too. */
function missing(id: LargeFigureId, answer: Assessment): string {
  if (id === 'feed' && isBroken(answer, 'no-size-in-stock')) return words.summary.noFeed;
  if (id === 'mainFuse' && isBroken(answer, 'no-fuse-qualifies')) return words.summary.noFuse;
  return words.summary.notWorkedOut;
}

/** Which fuse, where it could be another: the one named 'Main fuse' may be that of a lighter feed. */
function whichFuse(id: string, plan: Plan): string {
  const fuses = plan.fittings.filter(({ kind }) => kind === 'fuse');
  return fuses.length > 1 ? (nameOfId(plan, id) ?? '') : '';
}

/** The same figure another way: the area of a size by number, the name of a fuse, the drop as a share. */
function otherwise(id: LargeFigureId, answer: Assessment, plan: Plan): string {
  const { value, places } = answer.figures[id];
  const units = unitsFor(plan);
  if (id === 'mainFuse') return whichFuse(places[0]?.id ?? '', plan);
  if (id === 'worstDrop' && typeof value === 'number') return units.percent((100 * value) / plan.settings.systemV);
  if (id !== 'feed') return '';
  const area = runBrief(answer, places[0]?.id ?? '')?.areaMm2 ?? null;
  // a metric size is its area
  return area === null || String(value).startsWith('mm2:') ? '' : units.area(area);
}

export const valueSaid = (id: LargeFigureId, answer: Assessment, plan: Plan): string =>
  figureSaid(answer.figures[id], unitsFor(plan));

/** What stands under a figure: the same another way, what set it, what it hangs on. */
export function governsOf(id: LargeFigureId, answer: Assessment, plan: Plan): string {
  const { value, governs, provisional } = answer.figures[id];
  return [
    value === null && governs === null ? missing(id, answer) : otherwise(id, answer, plan),
    governs === null ? '' : words.governs(governs),
    provisional ? words.summary.provisional : '',
  ]
    .filter((part) => part !== '')
    .join(', ');
}
