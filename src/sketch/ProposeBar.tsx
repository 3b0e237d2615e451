import './propose.css';
import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { runAct } from '../desk/acts/index.ts';
import { acceptAllAct, proposeAct, refuseAllAct } from '../desk/acts/propose.ts';
import { answerOf } from '../desk/answer.ts';
import type { Desk } from '../desk/desk.ts';
import { acceptPart, nameProposedBy, refusePart } from '../desk/proposing.ts';
import { wholePlan } from '../desk/whole.ts';
import type { Plan } from '../plan/schema.ts';
import { bareSentenceOf } from '../words/answer.ts';
import { words } from '../words/full.ts';
import { nameOfId } from '../words/index.ts';
import { proposedName } from '../words/proposedNames.ts';
import { type Clock, pageClock } from './input/clock.ts';

/** A tap that comes sooner is the second of two, and was meant for what stood there before, ms. */
const QUIET_MS = 400;

/** Whether it is no longer ago than that since something else is to be tapped here. */
function useQuiet(shown: number, clock: Clock): boolean {
  const [heard, setHeard] = useState<number | null>(null);
  useEffect(() => clock.after(QUIET_MS, () => setHeard(shown)), [clock, shown]);
  return heard !== shown;
}

/** What no feed settles: what stays wrong with all of it accepted; '' where nothing does. */
function leftBy(whole: Plan): string {
  const [gravest, ...others] = answerOf(whole).findings.filter(({ severity }) => severity !== 'note');
  return gravest === undefined ? '' : words.proposing.leaves(1 + others.length, bareSentenceOf(gravest, whole));
}

interface Choice {
  text: string;
  keys?: readonly string[];
  run: () => void;
}

/** What is said beside the buttons, from its beginning whenever it is something else. */
function Said({ text }: { text: string }) {
  const place = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (text !== '' && place.current !== null) place.current.scrollTop = 0;
  }, [text]);
  return (
    <p ref={place} role="status">
      {text}
    </p>
  );
}

/** What can be done with a proposal; before there is one, the button that asks for it. */
export default function ProposeBar({ desk, clock = pageClock }: { desk: Desk; clock?: Clock }) {
  const proposal = useStore(desk, (state) => state.proposal);
  const selection = useStore(desk, (state) => state.selection);
  const whole = useStore(desk, wholePlan);
  const isQuiet = useQuiet(proposal.length, clock);
  useEffect(() => nameProposedBy(desk, proposedName), [desk]);
  const { proposing } = words;
  const button = ({ text, keys, run }: Choice, className?: string) => (
    <button
      type="button"
      className={className}
      aria-keyshortcuts={keys?.join(' ')}
      onClick={() => {
        if (!isQuiet) run();
      }}
    >
      {text}
    </button>
  );
  const bar = { 'aria-label': proposing.label, 'data-quiet': isQuiet || undefined };
  if (proposal.length === 0) {
    const ask = { text: proposing.propose, keys: proposeAct.keys, run: () => runAct(desk, proposeAct) };
    return (
      <section className="sketch-hand sketch-propose" {...bar}>
        {button(ask, 'strong')}
      </section>
    );
  }
  const picked = proposal.find(({ id }) => id === selection?.id);
  const accept: Choice =
    picked === undefined
      ? { text: proposing.acceptAll, keys: acceptAllAct.keys, run: () => runAct(desk, acceptAllAct) }
      : { text: proposing.accept, run: () => acceptPart(desk, picked.id) };
  const refuse: Choice =
    picked === undefined
      ? { text: proposing.refuseAll, keys: refuseAllAct.keys, run: () => runAct(desk, refuseAllAct) }
      : { text: proposing.refuse, run: () => refusePart(desk, picked.id) };
  return (
    <section className="sketch-hand sketch-propose" {...bar}>
      <Said
        text={
          picked === undefined
            ? `${proposing.parts(proposal.length)} ${leftBy(whole)} ${proposing.noRemote}`
            : proposing.why(nameOfId(whole, picked.id) ?? '', picked.why)
        }
      />
      {/* refusing stands farthest from where the button was that asked for it */}
      <div className="sketch-acts">
        {button(accept, 'strong')}
        {button(refuse)}
      </div>
    </section>
  );
}
