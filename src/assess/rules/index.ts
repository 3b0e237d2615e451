import { ampacity } from './ampacity.ts';
import { askExternalFuse } from './askExternalFuse.ts';
import { belowCutOut } from './belowCutOut.ts';
import { cableChanges } from './cableChanges.ts';
import { cannotCarry } from './cannotCarry.ts';
import { dropCables } from './dropCables.ts';
import { dropWhole } from './dropWhole.ts';
import { firewallNoGrommet } from './firewallNoGrommet.ts';
import { fuseOverConductor } from './fuseOverConductor.ts';
import { fuseOverMaker } from './fuseOverMaker.ts';
import { fuseUnderLoad } from './fuseUnderLoad.ts';
import { groundMissing } from './groundMissing.ts';
import { groundSmaller } from './groundSmaller.ts';
import { heating } from './heating.ts';
import { loadUnknown } from './loadUnknown.ts';
import { looseEnd } from './looseEnd.ts';
import { noDevice } from './noDevice.ts';
import { noFuseQualifies } from './noFuseQualifies.ts';
import { noRating } from './noRating.ts';
import { noSizeInStock } from './noSizeInStock.ts';
import { notFed } from './notFed.ts';
import { passThroughShared } from './passThroughShared.ts';
import { ratingsDiffer } from './ratingsDiffer.ts';
import type { Rule } from './rule.ts';
import { smallSeparateRun } from './smallSeparateRun.ts';
import { sourceShort } from './sourceShort.ts';
import { stepDown } from './stepDown.ts';
import { unmarkedCable } from './unmarkedCable.ts';
import { unprotectedLength } from './unprotectedLength.ts';

/** Every rule, in the order in which findings of equal severity are told. */
export const RULES: readonly Rule[] = [
  sourceShort,
  noDevice,
  unprotectedLength,
  fuseOverConductor,
  stepDown,
  fuseUnderLoad,
  noFuseQualifies,
  noSizeInStock,
  heating,
  ampacity,
  groundMissing,
  notFed,
  noRating,
  cannotCarry,
  belowCutOut,
  dropCables,
  dropWhole,
  fuseOverMaker,
  groundSmaller,
  firewallNoGrommet,
  passThroughShared,
  cableChanges,
  looseEnd,
  unmarkedCable,
  ratingsDiffer,
  loadUnknown,
  askExternalFuse,
  smallSeparateRun,
];
