import type { FittingOf, Plan } from '../../plan/schema.ts';
import { useAnswer } from '../useDesk.ts';
import { LinkFields } from './LinkFields.tsx';
import { useFittingChange } from './useChange.ts';

export function FuseFields({ fuse, plan }: { fuse: FittingOf<'fuse'>; plan: Plan }) {
  const { change } = useFittingChange(fuse.id);
  const answer = useAnswer().fuses.find(({ fittingId }) => fittingId === fuse.id);
  return <LinkFields link={fuse.link} answer={answer} plan={plan} onTake={(link) => change({ link })} />;
}
