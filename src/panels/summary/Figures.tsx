import type { Assessment, RuleId } from '../../assess/answer.ts';
import { runBrief } from '../../assess/brief.ts';
import { words } from '../../words/answer.ts';
import { Term, TermNote } from '../help/Term.tsx';
import { useTerm } from '../help/useTerm.ts';
import { usePlan, useUnits } from '../useDesk.ts';
import { useOpenWhy } from '../why/useWhy.ts';
import { figureSaid } from './figureSaid.ts';

/** Why a figure is missing: no answer is an answer too. */
function missing(id: FigureId, { findings }: Assessment): string {
  const has = (rule: RuleId) => findings.some((finding) => finding.rule === rule);
  if (id === 'feed' && has('no-size-in-stock')) return words.summary.noFeed;
  if (id === 'mainFuse' && has('no-fuse-qualifies')) return words.summary.noFuse;
  return words.summary.notWorkedOut;
}

type FigureId = 'feed' | 'mainFuse' | 'worstDrop' | 'unprotected';

const TERMS = {
  feed: 'conductor',
  mainFuse: 'mainFuse',
  worstDrop: 'drop',
  unprotected: 'unprotectedLength',
} as const;

/** Signs that have room beside one another in the large type: '12.34 m', and not '12 ft 11 1/8 in'. */
const SHORT = 9;

interface LargeFigureProps {
  id: FigureId;
  label: string;
  value: string;
  governs: string;
  isHazard: boolean;
  why: string | null;
}

/** Its label says what the word means, its value why it is what it is. */
function LargeFigure({ id, label, value, governs, isHazard, why }: LargeFigureProps) {
  const openWhy = useOpenWhy();
  const help = useTerm();
  return (
    <li className={isHazard ? 'figure-hazard' : undefined}>
      <div className="figure-label">
        <Term id={TERMS[id]} help={help} word={label} />
      </div>
      <TermNote help={help} />
      <button
        type="button"
        className="figure-large"
        disabled={why === null}
        onClick={() => why !== null && openWhy(why, label)}
      >
        <span className="sr-only">{label}</span>
        <span className={value.length > SHORT ? 'figure-value figure-value-long' : 'figure-value'} data-figure={id}>
          {value}
        </span>
        <span className="figure-governs">{governs}</span>
      </button>
    </li>
  );
}

/** The four large figures, each with what governs it. */
export function Figures({ answer }: { answer: Assessment }) {
  const units = useUnits();
  const { feed, mainFuse, worstDrop, unprotected } = answer.figures;
  const { systemV } = usePlan().settings;
  const percent = typeof worstDrop.value === 'number' ? (100 * worstDrop.value) / systemV : null;
  const area = runBrief(answer, feed.places[0]?.id ?? '')?.areaMm2 ?? null;
  const all = [
    {
      id: 'feed',
      label: words.summary.feed,
      figure: feed,
      // a metric size is its area
      extra: area === null || String(feed.value).startsWith('mm2:') ? '' : units.area(area),
    },
    { id: 'mainFuse', label: words.summary.mainFuse, figure: mainFuse, extra: '' },
    {
      id: 'worstDrop',
      label: words.summary.worstDrop,
      figure: worstDrop,
      extra: percent === null ? '' : units.percent(percent),
    },
    { id: 'unprotected', label: words.summary.unprotected, figure: unprotected, extra: '' },
  ] as const;
  return (
    <ul className="figures" aria-label={words.summary.figures}>
      {all.map(({ id, label, figure, extra }) => (
        <LargeFigure
          key={id}
          id={id}
          label={label}
          value={figureSaid(figure, units)}
          governs={[
            figure.value === null && figure.governs === null ? missing(id, answer) : extra,
            figure.governs === null ? '' : words.governs(figure.governs),
            figure.provisional ? words.summary.provisional : '',
          ]
            .filter((part) => part !== '')
            .join(', ')}
          isHazard={id === 'unprotected' && Number(figure.value) > 0}
          why={figure.why}
        />
      ))}
    </ul>
  );
}
