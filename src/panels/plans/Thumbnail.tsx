import { useMemo } from 'react';
import { drawOutline } from '../../drawing/outline.ts';
import { drawRun } from '../../drawing/runs.ts';
import type { Shape } from '../../drawing/shapes.ts';
import { placeOn } from '../../plan/runs.ts';
import type { Plan } from '../../plan/schema.ts';
import { Picture } from '../picture/Picture.tsx';

/** Radius of the spot that stands for a fitting, m on the sheet: seen, on a picture of a thumb's size. */
const SPOT_M = 0.09;

/** The first sheet of a plan in small: its outline, its runs, a spot for each fitting. */
export function Thumbnail({ plan }: { plan: Plan }) {
  const drawn = useMemo(() => {
    const [sheet] = plan.sheets;
    if (sheet === undefined) return null;
    const { shapes, bounds } = drawOutline(sheet);
    const runs = plan.runs
      .filter(({ sheetId }) => sheetId === sheet.id)
      .map((run): Shape => {
        // no answer is worked out for a list: every cable is drawn as thick as one not sized yet
        const { points, stroke } = drawRun(plan, run, undefined);
        return { kind: 'line', points, closed: false, stroke: { ...stroke, widthPx: 2 }, fill: null };
      });
    const spots = plan.fittings.flatMap((fitting): Shape[] => {
      const at = placeOn(fitting, sheet.id);
      return at === null ? [] : [{ kind: 'circle', x: at.xM, y: at.yM, radius: SPOT_M, stroke: null, fill: 'symbol' }];
    });
    return { shapes: [...shapes, ...runs, ...spots], bounds };
  }, [plan]);
  return <span className="kept-plan-picture">{drawn === null ? null : <Picture {...drawn} />}</span>;
}
