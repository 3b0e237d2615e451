import { useStore } from 'zustand';
import { answeredPlan, type Desk, shownPlan } from '../desk/desk.ts';
import { type Live, liveOf } from './live.ts';
import type { Scene } from './useScene.ts';

/**
 * What the gesture makes of the scene, now: heard with every frame of a drag. Only for what has to be drawn with every
 * frame; the panes around it stay as they are meanwhile.
 */
export function useLive(desk: Desk, scene: Scene): Live {
  const shown = useStore(desk, shownPlan);
  const answered = useStore(desk, answeredPlan);
  return liveOf(scene, shown, answered);
}
