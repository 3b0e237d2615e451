import { openSheet } from '../../desk/openSheet.ts';
import type { Outline, Point, Sheet } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { LengthField } from '../keypad/LengthField.tsx';
import { useDesk } from '../useDesk.ts';

/** Furthest a place may be from the corner of the sheet: the document's bound. */
const MAX_COORDINATE_M = 100;

/** From what the places of a sheet are measured. */
export const axesOf = ({ outline, view }: Sheet): Outline['kind'] | 'side' => (view === 'side' ? 'side' : outline.kind);

/** Where something is, by two typed lengths. */
export function PlaceFields({ at, onTake, sheet }: { at: Point; onTake: (at: Point) => void; sheet?: Sheet }) {
  const open = useDesk(openSheet);
  const axes = words.inspector.axes[axesOf(sheet ?? open)];
  return (
    <div className="field-pair">
      <LengthField
        label={axes.x}
        valueM={at.xM}
        minM={0}
        maxM={MAX_COORDINATE_M}
        onTake={(xM) => xM !== null && onTake({ ...at, xM })}
      />
      <LengthField
        label={axes.y}
        valueM={at.yM}
        minM={0}
        maxM={MAX_COORDINATE_M}
        onTake={(yM) => yM !== null && onTake({ ...at, yM })}
      />
    </div>
  );
}
