import type { FuseAnswer } from '../../assess/answer.ts';
import type { Link, LinkFamily, Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { NumberField } from '../controls/NumberField.tsx';
import { inputBounds } from '../inputs.ts';
import { useUnits } from '../useDesk.ts';

interface LinkFieldsProps {
  link: Link;
  answer: FuseAnswer | undefined;
  plan: Plan;
  /** Goes before the labels where one panel holds several links. */
  prefix?: string;
  onTake: (link: Link) => void;
}

/** A fuse-link: rating and family worked out, or fixed by hand. */
export function LinkFields({ link, answer, plan, prefix = '', onTake }: LinkFieldsProps) {
  const units = useUnits();
  const { inspector, fittings } = words;
  const named = (label: string) =>
    prefix === '' ? label : `${prefix}: ${label.charAt(0).toLowerCase()}${label.slice(1)}`;
  const worked = answer?.ratingA ?? null;
  const families: { value: LinkFamily | 'auto'; text: string }[] = [
    { value: 'auto', text: inspector.auto },
    ...[...new Set([...plan.settings.linkFamilies, ...(link.family === 'auto' ? [] : [link.family])])].map((value) => ({
      value,
      text: fittings.linkFamilies[value],
    })),
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
          label={named(inspector.fixedRating)}
          value={link.ratingA}
          {...inputBounds('link.ratingA')}
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
