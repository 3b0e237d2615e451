import './alternatives.css';
import { useEffect, useMemo, useState } from 'react';
import { acceptAlternative, alternativesOf } from '../../desk/alternatives.ts';
import { likelyOther, type OtherAmplifier } from '../../plan/alternatives/otherAmplifier.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { proposedName } from '../../words/proposedNames.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { Comparison } from './Comparison.tsx';
import { OtherAmplifierFields } from './OtherAmplifierFields.tsx';

/** The one asked about while it is there to be replaced, else the likely one. */
function stillOther(plan: Plan, asked: OtherAmplifier | null): OtherAmplifier | null {
  const isThere = asked !== null && plan.fittings.some(({ id }) => id === asked.fittingId);
  return isThere ? asked : likelyOther(plan);
}

/** The plan beside other ways to build it: what changes in figures and findings, and one tap to accept one. */
export default function Alternatives({ onClose }: { onClose: () => void }) {
  const desk = useDeskStore();
  // not the draft: a whole plan is worked out for each column
  const plan = useDesk((state) => state.plan);
  const [asked, setAsked] = useState<OtherAmplifier | null>(null);
  const other = stillOther(plan, asked);
  const { fittingId, ratedW } = other ?? { fittingId: '', ratedW: 0 };
  const all = useMemo(
    () => alternativesOf(plan, fittingId === '' ? null : { fittingId, ratedW }, proposedName),
    [plan, fittingId, ratedW],
  );
  const { alternatives } = words;

  useEffect(() => {
    const key = (event: KeyboardEvent) => event.key === 'Escape' && onClose();
    window.addEventListener('keydown', key);
    return () => window.removeEventListener('keydown', key);
  }, [onClose]);

  return (
    <section className="alternatives" aria-label={alternatives.label}>
      <header className="alternatives-head">
        <h2>{alternatives.label}</h2>
        <button type="button" onClick={onClose}>
          {words.topbar.close}
        </button>
      </header>
      <p className="hint">{alternatives.hint}</p>
      <OtherAmplifierFields plan={plan} other={other} onTake={setAsked} />
      <Comparison
        plan={plan}
        alternatives={all}
        onAccept={(alternative) => acceptAlternative(desk, plan, alternative) && onClose()}
      />
    </section>
  );
}
