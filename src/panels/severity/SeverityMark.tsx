import type { Severity } from '../../assess/answer.ts';
import { words } from '../../words/answer.ts';

/** Octagon, triangle, circle: told apart without colour. */
const SHAPES: Readonly<Record<Severity, string>> = {
  stop: 'M7.5 2h9L22 7.5v9L16.5 22h-9L2 16.5v-9z',
  fix: 'M12 2.5 22.5 21.5h-21z',
  note: 'M12 2.5a9.5 9.5 0 1 0 0 19 9.5 9.5 0 0 0 0-19z',
};
const SIGNS: Readonly<Record<Severity, string>> = {
  stop: 'M7 12h10',
  fix: 'M12 9v6M12 17.6v.9',
  note: 'M12 11v6M12 7v.9',
};

/** Severity as a shape, with its word behind it unless that stands there anyway. */
export function SeverityMark({ severity, wordless = false }: { severity: Severity; wordless?: boolean }) {
  return (
    <span className={`severity severity-${severity}`}>
      <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true" focusable="false">
        <path className="severity-shape" d={SHAPES[severity]} />
        <path className="severity-sign" d={SIGNS[severity]} fill="none" strokeWidth="2.4" strokeLinecap="round" />
      </svg>
      {wordless ? null : <span className="severity-word">{words.headline.severities[severity]}</span>}
    </span>
  );
}
