import { drawOutline } from '../../drawing/outline.ts';
import { newSheet } from '../../plan/create.ts';
import { DEFAULT_OUTLINES } from '../../plan/outline.ts';
import { words } from '../../words/full.ts';
import { Picture } from '../picture/Picture.tsx';

export type VehicleKind = keyof typeof DEFAULT_OUTLINES;

/** In the order in which they are offered; the picture is what the sketch will draw. */
const KINDS: readonly VehicleKind[] = ['hatchback', 'saloon', 'estate', 'pickup', 'panelVan', 'smallBus', 'bench'];
const DRAWN = KINDS.map((kind) => {
  const sheet = newSheet({ id: kind, name: '', outline: DEFAULT_OUTLINES[kind], mirrored: false });
  return { kind, ...drawOutline(sheet) };
});

/** The vehicles that the page can draw, one to be chosen. */
export function VehicleTiles({ kind, onTake }: { kind: VehicleKind; onTake: (kind: VehicleKind) => void }) {
  return (
    <fieldset className="choices">
      <legend>{words.newPlanDialog.vehicle}</legend>
      {DRAWN.map((one) => (
        <label key={one.kind} className="choice choice-picture">
          <input type="radio" name="outline" checked={kind === one.kind} onChange={() => onTake(one.kind)} />
          <Picture shapes={one.shapes} bounds={one.bounds} />
          <span>{words.fittings.outlines[one.kind]}</span>
        </label>
      ))}
    </fieldset>
  );
}
