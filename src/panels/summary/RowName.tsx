import { select } from '../../desk/selection.ts';
import { useDeskStore } from '../useDesk.ts';

interface RowNameProps {
  kind: 'fitting' | 'run';
  id: string;
  name: string;
  isSelected: boolean;
  columns: number;
}

/** The first row of a group: what its figures are of. Pressed, it is picked out on the sketch. */
export function RowName({ kind, id, name, isSelected, columns }: RowNameProps) {
  const desk = useDeskStore();
  return (
    <tr>
      <th scope="rowgroup" colSpan={columns}>
        <button type="button" className="row-name" aria-pressed={isSelected} onClick={() => select(desk, { kind, id })}>
          {name}
        </button>
      </th>
    </tr>
  );
}
