import { useLayoutEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { PaneSize } from '../desk/camera.ts';
import { answeredPlan, type Camera, type Selection, shownPlan } from '../desk/desk.ts';
import { LabelPlaces } from './labelPlaces.ts';
import { LabelSheet } from './labelSheet.ts';
import { liveOf } from './live.ts';
import { merged } from './merged.ts';
import type { Table } from './table.ts';
import type { Scene } from './useScene.ts';

interface LabelsProps {
  table: Pick<Table, 'desk' | 'late'>;
  scene: Scene;
  camera: Camera;
  size: PaneSize;
  selection: Selection | null;
  scale: number;
}

/**
 * Names and figures as page text over the stage: figures of one width, sharp at every zoom. Hears of every frame of a
 * gesture by itself, and changes by hand what it moves: no frame waits for the page to be worked through.
 */
export function Labels({ table, scene, camera, size, selection, scale }: LabelsProps) {
  const sheet = useRef<HTMLDivElement>(null);
  const [places] = useState(() => new LabelPlaces());
  const shown = useRef<{ still: LabelSheet; live: LabelSheet } | null>(null);
  const late = useStore(table.late);
  const keep = selection?.id ?? null;

  useLayoutEffect(() => {
    const element = sheet.current;
    if (element === null) return;
    const [still, live] = [document.createElement('div'), document.createElement('div')];
    element.append(still, live);
    shown.current = { still: new LabelSheet(still), live: new LabelSheet(live) };
    return () => {
      element.replaceChildren();
      shown.current = null;
    };
  }, []);

  useLayoutEffect(() => {
    const { desk } = table;
    let isOver = false;
    // what was asked for last may come due when another scene is on the page already: it would bring this one back
    const ask = merged(() => {
      if (!isOver) write();
    });
    const write = () => {
      const state = desk.getState();
      const answered = answeredPlan(state);
      const live = liveOf(scene, shownPlan(state), answered);
      const placed = places.of({ scene, camera, size, keep, scale }, live, answered, late, ask);
      const look = { selectedId: keep, scale, isMoving: scene.changed.size > 0 };
      shown.current?.still.show(placed.still, look);
      shown.current?.live.show(placed.live, look);
      sheet.current?.setAttribute('data-behind', String(state.isBehind));
    };
    write();
    const leave = desk.subscribe((now, before) => {
      const isOther = now.draft !== before.draft || now.answered !== before.answered;
      if (isOther || now.isBehind !== before.isBehind) ask();
    });
    return () => {
      isOver = true;
      leave();
    };
  }, [table, late, places, scene, camera, size, keep, scale]);

  return <div className="sketch-labels" ref={sheet} aria-hidden="true" />;
}
