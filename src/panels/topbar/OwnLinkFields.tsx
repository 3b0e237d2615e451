import { MAX_NAME, type OwnLink } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { writeRatings } from '../../words/ratings.ts';
import { Choice } from '../controls/Choice.tsx';
import { Field } from '../controls/Field.tsx';
import { NumberField } from '../controls/NumberField.tsx';
import { readNumbers } from '../controls/readNumbers.ts';
import { TextField } from '../controls/TextField.tsx';
import { useDraft } from '../controls/useDraft.ts';
import { inputBounds } from '../inputs.ts';

/** A family of links as it is being told: what is missing yet is null. */
export type ToldLink = Omit<OwnLink, 'family' | 'ratedV'> & { ratedV: number | null };

const SEATS = ['holder', 'post', 'breaker'] as const;
const MAX_RATINGS = 60;

/** The figures of one family of the user's own. */
export function OwnLinkFields({ link, onTake }: { link: ToldLink; onTake: (patch: Partial<ToldLink>) => void }) {
  const text = words.fieldLabels.settings;
  const ratings = useDraft<number[]>(
    writeRatings(link.ratingsA),
    (typed) => {
      const bounds = inputBounds('settings.ownLinks.ratingsA');
      const read = readNumbers(typed, bounds, text.ownRatings, text.ownRatingsHint);
      return read.ok && read.value.length === 0 ? { ok: false, error: text.ownRatingsMissing } : read;
    },
    (ratingsA) => onTake({ ratingsA: ratingsA.slice(0, MAX_RATINGS) }),
  );
  return (
    <>
      <div className="field-pair">
        <TextField
          label={text.ownName}
          value={link.name}
          maxLength={MAX_NAME}
          onTake={(name) => name !== '' && onTake({ name })}
        />
        <Choice
          label={text.ownSeat}
          value={link.seat}
          options={SEATS.map((value) => ({ value, text: text.ownSeats[value] }))}
          onTake={(seat) => onTake({ seat })}
        />
      </div>
      <Field label={text.ownRatings} draft={ratings} hint={text.ownRatingsHint} />
      <div className="field-pair">
        <NumberField
          label={text.ownBreaking}
          term="breakingCapacity"
          hint={text.ownBreakingHint}
          value={link.breakingA}
          {...inputBounds('settings.ownLinks.breakingA')}
          mayBeEmpty
          onTake={(breakingA) => onTake({ breakingA })}
        />
        <NumberField
          label={text.ownVolts}
          value={link.ratedV}
          {...inputBounds('settings.ownLinks.ratedV')}
          mayBeEmpty={link.ratedV === null}
          onTake={(ratedV) => ratedV !== null && onTake({ ratedV })}
        />
      </div>
    </>
  );
}
