import type { FuseAnswer } from '../../assess/answer.ts';
import type { Link, LinkFamily, Plan } from '../../plan/schema.ts';
import { familyName } from '../../words/answer.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { NumberField } from '../controls/NumberField.tsx';
import { inputBounds } from '../inputs.ts';
import { useUnits } from '../useDesk.ts';

interface LinkFieldsProps {
  link: Link;
  answer: FuseAnswer | undefined;
  plan: Plan;
  /** Where it sits: a post and a breaker take only their own kind, and what the user holds for them. */
  seat?: 'holder' | 'post' | 'breaker';
  /** Goes before the labels where one panel holds several links. */
  prefix?: string;
  onTake: (link: Link) => void;
}

const SEATED: Readonly<Record<'post' | 'breaker', LinkFamily>> = { post: 'post-link', breaker: 'thermal-breaker' };

/** Families that fit the seat, the one chosen among them. */
function familiesFor({ settings }: Plan, seat: 'holder' | 'post' | 'breaker', chosen: Link['family']): LinkFamily[] {
  const seated: readonly LinkFamily[] = Object.values(SEATED);
  const own = settings.ownLinks.filter((one) => one.seat === seat).map(({ family }) => family);
  const elsewhere: readonly LinkFamily[] = settings.ownLinks
    .filter((one) => one.seat !== seat)
    .map((one) => one.family);
  const fitting =
    seat === 'holder'
      ? settings.linkFamilies.filter((family) => !seated.includes(family) && !elsewhere.includes(family))
      : [SEATED[seat], ...own];
  return [...new Set([...fitting, ...(chosen === 'auto' ? [] : [chosen])])];
}

/** A fuse-link: rating and family worked out, or fixed by hand. */
export function LinkFields({ link, answer, plan, seat = 'holder', prefix = '', onTake }: LinkFieldsProps) {
  const units = useUnits();
  const { inspector } = words;
  const named = (label: string) => (prefix === '' ? label : inspector.ofPart(prefix, label));
  const worked = answer?.ratingA ?? null;
  const families: { value: LinkFamily | 'auto'; text: string }[] = [
    { value: 'auto', text: inspector.auto },
    ...familiesFor(plan, seat, link.family).map((value) => ({ value, text: familyName(plan, value) })),
  ];
  return (
    <>
      <Choice
        label={named(inspector.rating)}
        value={link.ratingA === 'auto' ? 'auto' : 'fixed'}
        options={[
          {
            value: 'auto',
            text:
              worked === null || link.ratingA !== 'auto'
                ? inspector.auto
                : `${inspector.auto}: ${units.current(worked)}`,
          },
          { value: 'fixed', text: inspector.fixedRating },
        ]}
        onTake={(way) => onTake({ ...link, ratingA: way === 'auto' ? 'auto' : (worked ?? answer?.neededA ?? 100) })}
      />
      {link.ratingA === 'auto' ? null : (
        <NumberField
          label={named(inspector.fixedRatingA)}
          value={link.ratingA}
          {...inputBounds('fuse.link.ratingA')}
          onTake={(ratingA) => ratingA !== null && onTake({ ...link, ratingA })}
        />
      )}
      <Choice
        label={named(inspector.family)}
        value={link.family}
        options={families}
        onTake={(family) => onTake({ ...link, family })}
      />
    </>
  );
}
