/** What is marked on the sketch, and brought into view: the selection, and the places of the finding looked at. */
import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { answerOf } from '../desk/answer.ts';
import { answeredPlan, type PaneId, type Selection } from '../desk/desk.ts';
import { openSheet } from '../desk/openSheet.ts';
import { fittingById } from '../plan/byId.ts';
import { placeOn, runPoints } from '../plan/runs.ts';
import type { Plan, Point } from '../plan/schema.ts';
import { cameraShowing, setCamera } from './cameras.ts';
import type { Marked } from './paint/marks.ts';
import type { Table } from './table.ts';

const NO_PLACES: ReadonlySet<string> = new Set();

/** The places of the finding looked at, and what is picked out. */
export function useMarked({ desk, seen }: Table): Marked {
  const selected = useStore(desk, (state) => state.selection);
  /** The fitting that is being placed is picked out before it is part of the plan. */
  const aimedId = useStore(seen, ({ state }) => (state.name === 'place.aiming' ? state.fitting.id : null));
  const findingId = useStore(desk, (state) => state.findingId);
  // where no finding is looked at, the answer marks nothing
  const plan = useStore(desk, (state) => (state.findingId === null ? null : answeredPlan(state)));
  return useMemo(() => {
    const finding = plan === null ? undefined : answerOf(plan).findings.find(({ id }) => id === findingId);
    const places = finding === undefined ? NO_PLACES : new Set(finding.places.map(({ id }) => id));
    const selection: Selection | null = aimedId === null ? selected : { kind: 'fitting', id: aimedId };
    return { selection, places, placeColour: finding?.severity ?? 'note' };
  }, [selected, aimedId, findingId, plan]);
}

function placeOf(plan: Plan, id: string, sheetId: string): Point | null {
  const fitting = fittingById(plan, id);
  if (fitting !== undefined) return placeOn(fitting, sheetId);
  const run = plan.runs.find((other) => other.id === id && other.sheetId === sheetId);
  const points = run === undefined ? [] : runPoints(plan, run);
  return points[Math.floor(points.length / 2)] ?? null;
}

/** Choosing a finding brings its first place into view, in the pane that shows the whole where there is one. */
export function useFindingInView(table: Table): void {
  const { desk, panes } = table;
  const findingId = useStore(desk, (state) => state.findingId);
  useEffect(() => {
    if (findingId === null) return;
    const state = desk.getState();
    const { plan, cameras } = state;
    const first = answerOf(plan).findings.find(({ id }) => id === findingId)?.places[0];
    const at = first === undefined ? null : placeOf(plan, first.id, openSheet(state).id);
    const pane: PaneId = panes.sizeOf('whole') === null ? 'bay' : 'whole';
    const [camera, size] = [cameras[pane], panes.sizeOf(pane)];
    if (at === null || camera === null || size === null) return;
    const shown = cameraShowing(camera, size, at);
    if (shown !== camera) setCamera(desk, pane, shown);
  }, [desk, panes, findingId]);
}
