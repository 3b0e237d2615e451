import './faces.css';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { Headline } from '../summary/Headline.tsx';
import { Summary } from '../summary/Summary.tsx';
import { useChoice } from '../useChoice.ts';
import { useAnswer, usePlan } from '../useDesk.ts';

const FIGURES = ['feed', 'mainFuse', 'worstDrop', 'unprotected'] as const;

function Hidden({ label }: { label: string }) {
  return (
    <li>
      <span className="figure-label">{label}</span>
      <span className="figure-value">
        <span aria-hidden="true">?</span>
        <span className="sr-only">{words.classFace.hiddenValue}</span>
      </span>
    </li>
  );
}

/** Asked before told: the names of the figures, without the figures and without the verdict. */
function Asking() {
  const plan = usePlan();
  const { amplifiers } = useAnswer();
  const { classFace, summary } = words;
  return (
    <>
      <header className="headline">
        <h2>{classFace.hidden}</h2>
        <p>{classFace.hiddenHint}</p>
      </header>
      <div className="answer-scroll">
        <ul className="hidden-figures">
          {FIGURES.map((id) => (
            <Hidden key={id} label={summary[id]} />
          ))}
          {amplifiers.map(({ fittingId }) => (
            <Hidden key={fittingId} label={nameOfId(plan, fittingId) ?? ''} />
          ))}
        </ul>
      </div>
    </>
  );
}

/** The answer for a class: the whole of it, or only what is asked. */
export default function ClassFace() {
  if (useChoice('figures') === 'hidden') return <Asking />;
  return (
    <>
      <Headline />
      <div className="answer-scroll">
        <Summary />
      </div>
    </>
  );
}
