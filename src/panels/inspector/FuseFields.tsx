import type { FittingOf, Plan } from '../../plan/schema.ts';
import { useAnswer } from '../useDesk.ts';
import { LinkFields } from './LinkFields.tsx';
import { useFittingChange } from './useChange.ts';

/** A fuse in its holder, or a breaker, which is a device of its own. */
export function FuseFields({ fuse, plan }: { fuse: FittingOf<'fuse' | 'breaker'>; plan: Plan }) {
  const { change } = useFittingChange(fuse.id);
  const answer = useAnswer().fuses.find(({ fittingId }) => fittingId === fuse.id);
  return (
    <LinkFields
      link={fuse.link}
      seat={fuse.kind === 'breaker' ? 'breaker' : 'holder'}
      answer={answer}
      plan={plan}
      onTake={(link) => change({ link })}
    />
  );
}
