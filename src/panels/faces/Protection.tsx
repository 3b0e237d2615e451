import type { Assessment, FuseAnswer } from '../../assess/answer.ts';
import { fittingById } from '../../plan/byId.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { useUnits } from '../useDesk.ts';
import { protectedBy } from './stretch.ts';

function Fuse({ fuse, plan, answer }: { fuse: FuseAnswer; plan: Plan; answer: Assessment }) {
  const units = useUnits();
  const { customer, fittings } = words;
  const nameOf = (id: string) => nameOfId(plan, id) ?? '';
  const owner = nameOf(fuse.fittingId);
  const source = answer.sources.find(
    ({ endsAt }) => endsAt?.fittingId === fuse.fittingId && endsAt.terminal === fuse.terminal,
  );
  const ahead = source === undefined || !(source.unprotectedM > 0) ? null : units.length(source.unprotectedM);
  const from = source === undefined || ahead === null ? null : { length: ahead, source: nameOf(source.fittingId) };
  const stretch = protectedBy(plan, answer, fuse);
  const lines = [
    customer.sits(answer.zones[fuse.fittingId] ?? null, from),
    stretch === null ? customer.coversOpen : customer.covers(nameOf(stretch.fromId), stretch.toIds.map(nameOf)),
    ahead === null ? '' : customer.before(ahead),
  ];
  return (
    <li>
      <h4>
        <span>{fuse.terminal === null ? owner : fittings.terminalOf(owner, fuse.terminal)}</span>
        <b>{fuse.ratingA === null ? customer.ratingOpen : units.current(fuse.ratingA)}</b>
      </h4>
      <p>{lines.filter((line) => line !== '').join(' ')}</p>
    </li>
  );
}

/** Each fuse in plain words: where it is, its rating, what it protects; and cable that none does. */
export function Protection({ plan, answer }: { plan: Plan; answer: Assessment }) {
  const units = useUnits();
  const { customer } = words;
  const bare = answer.sources.filter(({ endsAt, unprotectedM }) => endsAt === null && unprotectedM > 0);
  const fuses = answer.fuses.filter(({ fittingId }) => fittingById(plan, fittingId)?.kind !== 'amplifier');
  return (
    <section className="customer-part">
      <h3>{customer.protects}</h3>
      {fuses.length === 0 ? <p>{customer.noFuse}</p> : null}
      <ul className="customer-fuses">
        {fuses.map((fuse) => (
          <Fuse key={`${fuse.fittingId}.${fuse.terminal ?? ''}`} fuse={fuse} plan={plan} answer={answer} />
        ))}
        {bare.map(({ fittingId, unprotectedM }) => (
          <li key={fittingId}>{customer.bare(nameOfId(plan, fittingId) ?? '', units.length(unprotectedM))}</li>
        ))}
      </ul>
    </section>
  );
}
