import type { Point } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { LengthField } from '../keypad/LengthField.tsx';
import { useDesk } from '../useDesk.ts';

/** Furthest a place may be from the corner of the sheet: the document's bound. */
const MAX_COORDINATE_M = 100;

/** Where something is, by two typed lengths. */
export function PlaceFields({ at, onTake }: { at: Point; onTake: (at: Point) => void }) {
  const outline = useDesk((state) => state.plan.sheets[0]?.outline.kind ?? 'vehicle');
  const axes = words.inspector.axes[outline];
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
