import { words } from '../../words/full.ts';
import type { ShowLength } from '../../words/units.ts';
import { useDesk, useUnits } from '../useDesk.ts';

/** A tape this many times longer or shorter than the drawing is neither a detour nor a short cut. */
const MUCH_OTHER = 5;
const NEAR = 2;
/** What a number typed for the smaller unit of a tape makes in the larger: centimetres in a metre, inches in a foot. */
const PARTS: Readonly<Record<ShowLength, number>> = { m: 100, 'ft-in': 12 };
/** A decimal sign one place too far ahead, or millimetres for centimetres. */
const PLACE = 10;

/**
 * The length that was meant where the smaller unit was forgotten: 55 m on 0.6 m drawn gives 0.55; or where the smaller
 * one or a decimal sign is wrong: 9 cm on 0.92 m gives 0.9. Null where the tape may be right.
 */
function meantM(tapedM: number, drawnM: number, showLength: ShowLength): number | null {
  const parts = PARTS[showLength];
  const isNear = (meant: number): boolean => meant <= drawnM * NEAR && meant >= drawnM / NEAR;
  if (tapedM > drawnM * MUCH_OTHER) return [tapedM / parts].find(isNear) ?? null;
  return tapedM < drawnM / MUCH_OTHER ? ([tapedM * parts, tapedM * PLACE].find(isNear) ?? null) : null;
}

/** Asks about a tape of which a unit or a decimal sign seems to be wrong, with the likely length to take. */
export function TapeDoubt(props: { tapedM: number; drawnM: number; onTake: (m: number) => void }) {
  const { tapedM, drawnM, onTake } = props;
  const units = useUnits();
  const showLength = useDesk((state) => state.plan.settings.showLength);
  const meant = meantM(tapedM, drawnM, showLength);
  const { tapeDoubt, tapeMeant } = words.inspector;
  return (
    <div role="status">
      {meant === null ? null : (
        <p className="tape-doubt">
          <span>{tapeDoubt(units.length(tapedM), units.length(meant))}</span>
          <button
            type="button"
            className="strong"
            // the field keeps the focus: with it the keypad would go, and this from under the finger
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => onTake(meant)}
          >
            {tapeMeant(units.length(meant))}
          </button>
        </p>
      )}
    </div>
  );
}
