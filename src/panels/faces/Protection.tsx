import type { Assessment, FuseAnswer } from '../../assess/answer.ts';
import { fittingById } from '../../plan/byId.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { useUnits } from '../useDesk.ts';
import { guardedBy, protectedBy, sharedBy } from './stretch.ts';

/** What a fuse does for which cable, and what of it is not shown. */
function coverSaid(plan: Plan, answer: Assessment, fuse: FuseAnswer): string {
  const { customer } = words;
  const nameOf = (id: string) => nameOfId(plan, id) ?? '';
  const stretch = protectedBy(plan, answer, fuse);
  if (stretch !== null) return customer.covers(nameOf(stretch.fromId), stretch.toIds.map(nameOf));
  const shared = sharedBy(plan, answer, fuse);
  if (shared !== null)
    return customer.coversShared(nameOf(shared.fromId), shared.toIds.map(nameOf), nameOf(shared.aheadId));
  const guarded = guardedBy(plan, answer, fuse);
  return guarded === null
    ? customer.coversOpen
    : customer.coversUnshown(nameOf(guarded.fromId), guarded.toIds.map(nameOf));
}

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
  const lines = [
    customer.sits(answer.zones[fuse.fittingId] ?? null, from),
    coverSaid(plan, answer, fuse),
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
  const isFirst = ({ fittingId, terminal }: FuseAnswer) =>
    answer.sources.some(({ endsAt }) => endsAt?.fittingId === fittingId && endsAt.terminal === terminal);
  // from the battery on: main fuses before what branches off behind them
  const fuses = answer.fuses
    .filter(({ fittingId }) => fittingById(plan, fittingId)?.kind !== 'amplifier')
    .toSorted((one, other) => Number(isFirst(other)) - Number(isFirst(one)));
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
