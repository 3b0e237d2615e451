import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { TermId } from '../../words/en/glossary.ts';
import { words } from '../../words/full.ts';
import { parseLength } from '../../words/length.ts';
import { type ShowLength, unitsOf } from '../../words/units.ts';
import { Field } from '../controls/Field.tsx';
import { useDraft } from '../controls/useDraft.ts';
import { useDesk } from '../useDesk.ts';
import { Keypad } from './Keypad.tsx';
import { useAfterPress } from './useAfterPress.ts';

interface LengthFieldProps {
  label: string;
  /** null shows an empty field. */
  valueM: number | null;
  minM: number;
  maxM: number;
  /** null only where `mayBeEmpty`. */
  onTake: (m: number | null) => void;
  mayBeEmpty?: boolean;
  /** What is wrong with the value where it can be read but does not go with others. */
  problem?: string | null;
  hint?: string;
  mark?: string;
  term?: TermId;
  /** How lengths are shown, where it is not a length of the open plan. */
  showLength?: ShowLength;
  /** Asked about what it holds, and seen above the keys. */
  question?: ReactNode;
}

function KeypadIcon() {
  return (
    <svg className="icon" viewBox="0 0 28 28" width="28" height="28" aria-hidden="true" focusable="false">
      <path
        d="M7 5h2v2H7zM13 5h2v2h-2zM19 5h2v2h-2zM7 11h2v2H7zM13 11h2v2h-2zM19 11h2v2h-2zM7 17h2v2H7zM13 17h2v2h-2zM19 17h2v2h-2zM13 23h2v2h-2z"
        fill="currentColor"
        stroke="currentColor"
        strokeWidth="1.2"
      />
    </svg>
  );
}

/** What was pressed has the focus and waits for no click. */
const takesText = (to: EventTarget | null): boolean => to instanceof HTMLInputElement && to.type === 'text';

/** A length in any unit people write it in, with a keypad of our own where fingers are big. */
export function LengthField({
  label,
  valueM,
  minM,
  maxM,
  onTake,
  mayBeEmpty = false,
  problem = null,
  hint,
  mark,
  term,
  showLength: told,
  question,
}: LengthFieldProps) {
  const ofPlan = useDesk((state) => state.plan.settings.showLength);
  const showLength = told ?? ofPlan;
  const units = unitsOf(showLength, words.locale);
  const bigFingers = useDesk((state) => state.bigFingers);
  const [isOpen, setOpen] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const putAway = () => setOpen(false);
  const putAwayAfterPress = useAfterPress(isOpen, putAway);

  useEffect(() => {
    if (!isOpen) return;
    const page = place.current?.closest('.answer')?.parentElement;
    // a flag, and no look from the page down for keys: that would be one with every frame of a drag
    page?.toggleAttribute('data-typing', true);
    place.current?.scrollIntoView({ block: 'start' });
    return () => {
      page?.toggleAttribute('data-typing', false);
    };
  }, [isOpen]);

  const draft = useDraft<number | null>(
    valueM === null ? '' : units.lengthField(valueM),
    (text) => {
      if (mayBeEmpty && text.trim() === '') return { ok: true, value: null };
      const read = parseLength(text, showLength === 'm' ? 'm' : 'in', { minM, maxM });
      if (read.ok) return { ok: true, value: read.m };
      const { lengthProblem, inDoubt, kept, noneKept } = words.fields;
      const error =
        read.problem === 'inDoubt'
          ? inDoubt(label, text.trim(), units.lengthField(read.readings[0]), units.lengthField(read.readings[1]))
          : lengthProblem(read.problem, label, units.length(minM), units.length(maxM));
      return { ok: false, error: `${error} ${valueM === null ? noneKept : kept}` };
    },
    onTake,
  );
  return (
    <div className="length-field" ref={place} data-feet={showLength === 'ft-in' || undefined}>
      <Field
        label={label}
        draft={{ ...draft, error: draft.error ?? problem }}
        // the system's keyboard stays away while our own keypad is there
        inputMode={bigFingers ? 'none' : 'text'}
        onFocus={() => bigFingers && setOpen(true)}
        onLeave={(to) => {
          if (to instanceof Node && place.current?.contains(to)) return;
          if (takesText(to)) putAway();
          else putAwayAfterPress();
        }}
        {...(hint === undefined ? {} : { hint })}
        {...(mark === undefined ? {} : { mark })}
        {...(term === undefined ? {} : { term })}
        below={question}
        behind={
          <button
            type="button"
            className="keypad-open"
            aria-expanded={isOpen}
            aria-label={`${words.keypad.open}: ${label}`}
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => {
              if (!isOpen) place.current?.querySelector('input')?.focus();
              setOpen(!isOpen);
            }}
          >
            <KeypadIcon />
          </button>
        }
      />
      {isOpen ? (
        <Keypad
          field={label}
          showLength={showLength}
          onKey={(sign) => draft.change(`${draft.text}${sign}`.replace(/^\s+|(\s)\s+/g, '$1'))}
          // a unit or a fraction came with one key, and goes with one
          onBack={() => draft.change(draft.text.trimEnd().replace(/(?:[a-z]+|(?<!\d)1\/(?:2|4|8|16)|.)$/i, ''))}
          onClear={() => draft.change('')}
          onDone={() => {
            if (draft.settle()) putAway();
          }}
        />
      ) : null}
    </div>
  );
}
