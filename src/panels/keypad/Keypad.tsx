import './keypad.css';
import { Fragment } from 'react';
import { words } from '../../words/full.ts';
import type { ShowLength } from '../../words/units.ts';

interface KeypadProps {
  field: string;
  showLength: ShowLength;
  onKey: (sign: string) => void;
  onBack: () => void;
  onClear: () => void;
  onDone: () => void;
}

/** Three rows of four; the fourth row is Clear, 0, Space and Done. A part of an inch stands at the end of each. */
const ROWS = [
  ['7', '8', '9'],
  ['4', '5', '6', '/'],
  ['1', '2', '3', '.'],
] as const;
/** Of an inch, as a tape is marked; other parts are typed with the stroke: 3/8. */
const FRACTIONS: Readonly<Record<ShowLength, readonly string[]>> = { m: [], 'ft-in': ['1/2', '1/4', '1/8', '1/16'] };
const UNITS: Readonly<Record<ShowLength, readonly string[]>> = {
  m: ['m', 'cm', 'mm', 'ft', 'in'],
  'ft-in': ['ft', 'in', 'm', 'cm', 'mm'],
};

/** A keypad for lengths: large keys, fractions and units, so that no keyboard of the system covers the sketch. */
export function Keypad({ field, showLength, onKey, onBack, onClear, onDone }: KeypadProps) {
  const { keypad } = words;
  const press = (act: () => void) => ({
    type: 'button' as const,
    // the field keeps the focus: leaving it would settle what is half typed
    onPointerDown: (event: { preventDefault(): void }) => event.preventDefault(),
    onClick: act,
  });
  const part = (row: number) => {
    const sign = FRACTIONS[showLength][row];
    return sign === undefined ? null : (
      <button className="keypad-part" {...press(() => onKey(` ${sign} `))}>
        {sign}
      </button>
    );
  };
  return (
    <fieldset className="keypad" aria-label={keypad.label(field)}>
      <div className="keypad-keys">
        {ROWS.map((row, index) => (
          <Fragment key={row[0]}>
            {row.map((sign) => (
              <button key={sign} {...press(() => onKey(sign))}>
                {sign}
              </button>
            ))}
            {row.length === 3 ? (
              <button {...press(onBack)} aria-label={keypad.back}>
                ⌫
              </button>
            ) : null}
            {part(index)}
          </Fragment>
        ))}
        <button className="keypad-word" {...press(onClear)}>
          {keypad.clear}
        </button>
        <button {...press(() => onKey('0'))}>0</button>
        <button {...press(() => onKey(' '))} aria-label={keypad.space}>
          ␣
        </button>
        <button className="keypad-word strong" {...press(onDone)}>
          {keypad.done}
        </button>
        {part(ROWS.length)}
      </div>
      <div className="keypad-units">
        {UNITS[showLength].map((unit) => (
          <button key={unit} {...press(() => onKey(` ${unit} `))}>
            {unit}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
