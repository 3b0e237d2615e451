/** Everything a button or a key can do, in one list: long, and looked through only when a key is pressed. */
import type { Act } from './act.ts';
import { addBendAct } from './addBend.ts';
import { handMove, handPlaces, handRun, stepBack } from './hand.ts';
import { redoAct, undoAct } from './history.ts';
import { lockSelected } from './lockSelected.ts';
import { mirror } from './mirror.ts';
import { nudges } from './nudge.ts';
import { acceptAllAct, proposeAct, refuseAllAct } from './propose.ts';
import { removeSelected } from './removeSelected.ts';
import { selectNext, selectPrevious } from './selectStep.ts';
import { nextSheet, previousSheet } from './sheetStep.ts';
import { swapPane, toggleBigFingers, toggleSnap } from './toggles.ts';
import { zoomFit, zoomIn, zoomOut } from './zoom.ts';

export const ACTS: readonly Act[] = [
  undoAct,
  redoAct,
  stepBack,
  removeSelected,
  lockSelected,
  addBendAct,
  ...nudges,
  selectNext,
  selectPrevious,
  handMove,
  handRun,
  ...handPlaces,
  toggleSnap,
  toggleBigFingers,
  swapPane,
  nextSheet,
  previousSheet,
  zoomIn,
  zoomOut,
  zoomFit,
  mirror,
  proposeAct,
  acceptAllAct,
  refuseAllAct,
];
