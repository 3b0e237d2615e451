import { choose } from '../../look/choices.ts';
import { words } from '../../words/full.ts';
import { Dialog } from '../dialog/Dialog.tsx';
import { SeverityMark } from '../severity/SeverityMark.tsx';
import { FittingIcon } from '../shelf/FittingIcon.tsx';
import { ALL_KINDS } from '../shelf/kinds.ts';
import { useChoice } from '../useChoice.ts';

const RUNS = ['power', 'ground', 'remote', 'factory'] as const;
const SEVERITIES = ['stop', 'fix', 'note'] as const;

/** What the lines, shapes and colours of the sketch mean. */
export default function LegendDialog({ onClose }: { onClose: () => void }) {
  const isWork = useChoice('face') === 'work';
  const { legend, fittings } = words;
  return (
    <Dialog title={legend.title} onClose={onClose} over="answer">
      <div className="legend">
        {isWork ? (
          <button
            type="button"
            onClick={() => {
              choose('guide', 'open');
              onClose();
            }}
          >
            {words.guide.again}
          </button>
        ) : null}
        <h3>{legend.runs}</h3>
        <ul>
          {RUNS.map((kind) => (
            <li key={kind}>
              <span className={`legend-line legend-${kind}`} aria-hidden="true" />
              {legend[kind]}
            </li>
          ))}
          <li>
            <span className="legend-line legend-hazard" aria-hidden="true" />
            {legend.hazard}
          </li>
        </ul>
        <p className="hint">{legend.thickness}</p>
        <h3>{legend.findings}</h3>
        <ul>
          {SEVERITIES.map((severity) => (
            <li key={severity}>
              <SeverityMark severity={severity} wordless />
              {legend[severity]}
            </li>
          ))}
        </ul>
        <h3>{legend.fittings}</h3>
        <ul className="legend-fittings">
          {ALL_KINDS.map((kind) => (
            <li key={kind}>
              <FittingIcon kind={kind} />
              {fittings.kinds[kind]}
            </li>
          ))}
        </ul>
        <p className="caution">{words.airbagCaution}</p>
      </div>
    </Dialog>
  );
}
