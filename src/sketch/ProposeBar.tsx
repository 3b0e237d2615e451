import './propose.css';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { runAct } from '../desk/acts/index.ts';
import { acceptAllAct, proposeAct, refuseAllAct } from '../desk/acts/propose.ts';
import type { Desk } from '../desk/desk.ts';
import { acceptPart, nameProposedBy, refusePart } from '../desk/proposing.ts';
import { wholePlan } from '../desk/whole.ts';
import { words } from '../words/full.ts';
import { defaultName, nameOfId } from '../words/index.ts';

/** What can be done with a proposal, over the sketch; before there is one, the button that asks for it. */
export default function ProposeBar({ desk }: { desk: Desk }) {
  const proposal = useStore(desk, (state) => state.proposal);
  const selection = useStore(desk, (state) => state.selection);
  const whole = useStore(desk, wholePlan);
  useEffect(() => nameProposedBy(desk, defaultName), [desk]);
  const { proposing } = words;
  if (proposal.length === 0) {
    return (
      <section className="sketch-hand sketch-propose sketch-propose-ask" aria-label={proposing.label}>
        <button
          type="button"
          className="strong"
          aria-keyshortcuts={proposeAct.keys.join(' ')}
          onClick={() => runAct(desk, proposeAct)}
        >
          {proposing.propose}
        </button>
      </section>
    );
  }
  const picked = proposal.find(({ id }) => id === selection?.id);
  const name = picked === undefined ? '' : (nameOfId(whole, picked.id) ?? '');
  return (
    <section className="sketch-hand sketch-propose" aria-label={proposing.label}>
      <p role="status">
        {picked === undefined
          ? `${proposing.parts(proposal.length)} ${proposing.noRemote}`
          : proposing.why(name, picked.why)}
      </p>
      <div className="sketch-propose-acts">
        {picked === undefined ? null : (
          <>
            <button type="button" onClick={() => acceptPart(desk, picked.id)}>
              {proposing.accept}
            </button>
            <button type="button" onClick={() => refusePart(desk, picked.id)}>
              {proposing.refuse}
            </button>
          </>
        )}
        <button
          type="button"
          className="strong"
          aria-keyshortcuts={acceptAllAct.keys.join(' ')}
          onClick={() => runAct(desk, acceptAllAct)}
        >
          {proposing.acceptAll}
        </button>
        <button
          type="button"
          aria-keyshortcuts={refuseAllAct.keys.join(' ')}
          onClick={() => runAct(desk, refuseAllAct)}
        >
          {proposing.refuseAll}
        </button>
      </div>
    </section>
  );
}
