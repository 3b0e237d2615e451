import { acceptPart, refusePart } from '../../desk/proposing.ts';
import { words } from '../../words/full.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';

/** Whether a fitting or run is proposed, and no part of the plan yet. */
export const useIsProposed = (id: string): boolean => useDesk((state) => state.proposal.some((part) => part.id === id));

/** How many fittings or runs that are shown are only proposed. */
export const useProposedCount = (kind: 'fitting' | 'run'): number =>
  useDesk((state) => state.proposal.filter((part) => part.kind === kind).length);

/** Beside the name of what is no part of the plan yet. */
export const ProposedMark = () => <span className="list-proposed">{words.proposing.mark}</span>;

/** Takes one proposed thing into the plan, or puts it away. */
export function ProposedActs({ id, name, onSaid }: { id: string; name: string; onSaid: (said: string) => void }) {
  const desk = useDeskStore();
  const { proposing } = words;
  return (
    <>
      <button
        type="button"
        aria-label={proposing.acceptOne(name)}
        onClick={() => {
          if (acceptPart(desk, id)) onSaid(proposing.accepted(name));
        }}
      >
        {proposing.accept}
      </button>
      <button
        type="button"
        aria-label={proposing.refuseOne(name)}
        onClick={() => {
          refusePart(desk, id);
          onSaid(proposing.refused(name));
        }}
      >
        {proposing.refuse}
      </button>
    </>
  );
}
