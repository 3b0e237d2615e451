import { between } from '../../geom/point.ts';
import { MAX_BENDS, type OutlineOf } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { LengthField } from '../keypad/LengthField.tsx';
import { withCorner, withNewCorner, withoutCorner } from './grips.ts';

interface CornerFieldsProps {
  own: OutlineOf<'own'>;
  index: number;
  onTake: (own: OutlineOf<'own'>) => void;
  onSelect: (index: number) => void;
}

/** One corner by its two lengths, and the way to the others: all that a finger does, without one. */
export function CornerFields({ own, index, onTake, onSelect }: CornerFieldsProps) {
  const { outlineEditor: say } = words;
  const count = own.edge.length;
  const [corner, next] = [own.edge[index], own.edge[(index + 1) % count]];
  if (corner === undefined || next === undefined) return null;
  const take = (at: typeof corner) => onTake(withCorner(own, index, at));
  return (
    <fieldset className="outline-fields">
      <legend>{say.corner(index + 1, count)}</legend>
      <div className="outline-acts">
        <button type="button" onClick={() => onSelect((index + count - 1) % count)}>
          {say.previous}
        </button>
        <button type="button" onClick={() => onSelect((index + 1) % count)}>
          {say.next}
        </button>
      </div>
      <LengthField
        key={`x${index}`}
        label={say.x}
        valueM={corner.xM}
        minM={0}
        maxM={own.lengthM}
        onTake={(xM) => xM !== null && take({ ...corner, xM })}
      />
      <LengthField
        key={`y${index}`}
        label={say.y}
        valueM={corner.yM}
        minM={0}
        maxM={own.widthM}
        onTake={(yM) => yM !== null && take({ ...corner, yM })}
      />
      <div className="outline-acts">
        <button
          type="button"
          disabled={count >= MAX_BENDS}
          onClick={() => {
            onTake(withNewCorner(own, index, between(corner, next, 0.5)));
            onSelect(index + 1);
          }}
        >
          {say.addCorner}
        </button>
        <button
          type="button"
          disabled={count <= 3}
          onClick={() => {
            onTake(withoutCorner(own, index));
            onSelect(Math.max(0, index - 1));
          }}
        >
          {say.removeCorner}
        </button>
      </div>
    </fieldset>
  );
}
