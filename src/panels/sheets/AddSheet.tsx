import './sheets.css';
import { openSheet } from '../../desk/openSheet.ts';
import { addSheetOf } from '../../desk/sheets.ts';
import { outlineRegions } from '../../plan/outline.ts';
import type { Plan, Sheet } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { sheetTitle } from '../../words/index.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';

type Shows = Pick<Sheet, 'part' | 'view'>;

const OFFERED: readonly Shows[] = [
  { part: 'bay', view: 'above' },
  { part: 'whole', view: 'above' },
  { part: 'cargo', view: 'side' },
];

/** A part that the outline does not have is not offered. */
function offeredFor({ outline }: Sheet): readonly Shows[] {
  const zones = outlineRegions(outline).map(({ zone }) => zone);
  return OFFERED.filter(({ part }) => part === 'whole' || zones.includes(part));
}

/** Sheets go by what they show; a second of the same gets a number. */
function nameFor({ sheets }: Plan, shows: Shows): string {
  const title = sheetTitle({ ...shows, name: '' });
  const taken = new Set(sheets.map(sheetTitle));
  if (!taken.has(title)) return '';
  let number = 2;
  while (taken.has(`${title} ${number}`)) number += 1;
  return `${title} ${number}`;
}

/** Other views of the same vehicle to add, and its outline to draw. */
export function AddSheet({ onDone }: { onDone: () => void }) {
  const desk = useDeskStore();
  const plan = useDesk((state) => state.plan);
  const open = useDesk(openSheet);
  return (
    <div className="sheets-add">
      {offeredFor(open).map((shows) => (
        <button
          key={`${shows.part}.${shows.view}`}
          type="button"
          onClick={() => {
            addSheetOf(desk, { ...shows, name: nameFor(plan, shows) });
            onDone();
          }}
        >
          {sheetTitle({ ...shows, name: '' })}
        </button>
      ))}
      <button
        type="button"
        onClick={() => {
          desk.setState({ outlineOf: open.id });
          onDone();
        }}
      >
        {words.sheets.drawOutline}
      </button>
    </div>
  );
}
