import { useEffect } from 'react';
import { useStore } from 'zustand';
import { answerOf } from '../desk/answer.ts';
import type { PaneId } from '../desk/desk.ts';
import { openSheet } from '../desk/openSheet.ts';
import { fittingById } from '../plan/byId.ts';
import { placeOn, runPoints } from '../plan/runs.ts';
import type { Plan, Point } from '../plan/schema.ts';
import { cameraShowing, setCamera } from './cameras.ts';
import type { Table } from './table.ts';

function placeOf(plan: Plan, id: string, sheetId: string): Point | null {
  const fitting = fittingById(plan, id);
  if (fitting !== undefined) return placeOn(fitting, sheetId);
  const run = plan.runs.find((other) => other.id === id && other.sheetId === sheetId);
  const points = run === undefined ? [] : runPoints(plan, run);
  return points[Math.floor(points.length / 2)] ?? null;
}

/** Choosing a finding brings its first place into view, in the pane that shows the whole where there is one. */
export function FindingInView({ table }: { table: Table }) {
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
  return null;
}
