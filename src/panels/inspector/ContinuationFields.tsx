import { openSheet } from '../../desk/openSheet.ts';
import { goToSheet } from '../../desk/sheets.ts';
import type { FittingOf, Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { sheetTitle } from '../../words/index.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { PlaceFields } from './PlaceFields.tsx';
import { useFittingChange } from './useChange.ts';

/** A point of a cable on two sheets: the way to the other one, and where it is on either. */
export function ContinuationFields({ point, plan }: { point: FittingOf<'continuation'>; plan: Plan }) {
  const desk = useDeskStore();
  const openId = useDesk(openSheet).id;
  const { move } = useFittingChange(point.id);
  const { continuation } = words;
  const places = [{ sheetId: point.sheetId, at: point.at }, point.other].flatMap(({ sheetId, at }) => {
    const sheet = plan.sheets.find(({ id }) => id === sheetId);
    return sheet === undefined ? [] : [{ sheet, at }];
  });
  const other = places.find(({ sheet }) => sheet.id !== openId)?.sheet;
  return (
    <>
      <p className="hint">{continuation.hint}</p>
      {other === undefined ? null : (
        <button type="button" className="strong" onClick={() => goToSheet(desk, other.id)}>
          {continuation.goTo(sheetTitle(other))}
        </button>
      )}
      {places.map(({ sheet, at }) => (
        <fieldset key={sheet.id}>
          <legend>{continuation.on(sheetTitle(sheet))}</legend>
          <PlaceFields at={at} sheet={sheet} onTake={(to) => move(to, sheet.id)} />
        </fieldset>
      ))}
    </>
  );
}
