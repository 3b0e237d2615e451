import { ampacity } from './ampacity.ts';
import { askExternalFuse } from './askExternalFuse.ts';
import { backFed } from './backFed.ts';
import { belowCutOut } from './belowCutOut.ts';
import { bendTooTight } from './bendTooTight.ts';
import { breakingCapacity } from './breakingCapacity.ts';
import { cableChanges } from './cableChanges.ts';
import { cableOverTerminal } from './cableOverTerminal.ts';
import { cannotCarry } from './cannotCarry.ts';
import { capacitorPrecharge } from './capacitorPrecharge.ts';
import { capacitorUnfused } from './capacitorUnfused.ts';
import { chargingDeficit } from './chargingDeficit.ts';
import { cladAsCopper } from './cladAsCopper.ts';
import { contactOverloaded } from './contactOverloaded.ts';
import { dropCables } from './dropCables.ts';
import { dropWhole } from './dropWhole.ts';
import { firewallNoGrommet } from './firewallNoGrommet.ts';
import { fuseInReturn } from './fuseInReturn.ts';
import { fuseOverConductor } from './fuseOverConductor.ts';
import { fuseOverMaker } from './fuseOverMaker.ts';
import { fuseUnderLoad } from './fuseUnderLoad.ts';
import { grommetTooSmall } from './grommetTooSmall.ts';
import { groundMissing } from './groundMissing.ts';
import { groundOnSensor } from './groundOnSensor.ts';
import { groundSmaller } from './groundSmaller.ts';
import { heating } from './heating.ts';
import { holderTooHot } from './holderTooHot.ts';
import { jointHeat } from './jointHeat.ts';
import { linkUnderVoltage } from './linkUnderVoltage.ts';
import { loadUnknown } from './loadUnknown.ts';
import { looseEnd } from './looseEnd.ts';
import { noDevice } from './noDevice.ts';
import { noFuseQualifies } from './noFuseQualifies.ts';
import { noRating } from './noRating.ts';
import { noSizeInStock } from './noSizeInStock.ts';
import { notFed } from './notFed.ts';
import { overloadHeating } from './overloadHeating.ts';
import { parallelOneFuse } from './parallelOneFuse.ts';
import { passThroughShared } from './passThroughShared.ts';
import { positiveEarth } from './positiveEarth.ts';
import { ratingNotHeld } from './ratingNotHeld.ts';
import { ratingsDiffer } from './ratingsDiffer.ts';
import { reducerLength } from './reducerLength.ts';
import type { Rule } from './rule.ts';
import { selectivity } from './selectivity.ts';
import { seriesBatteries } from './seriesBatteries.ts';
import { shortNotCleared } from './shortNotCleared.ts';
import { shortUncertain } from './shortUncertain.ts';
import { sizeNotProven } from './sizeNotProven.ts';
import { smallSeparateRun } from './smallSeparateRun.ts';
import { sourceShort } from './sourceShort.ts';
import { stepDown } from './stepDown.ts';
import { strapSmaller } from './strapSmaller.ts';
import { supplyWiring } from './supplyWiring.ts';
import { switchOpen } from './switchOpen.ts';
import { takeoffOverloaded } from './takeoffOverloaded.ts';
import { tapeDoubtful } from './tapeDoubtful.ts';
import { unmarkedCable } from './unmarkedCable.ts';
import { unprotectedLength } from './unprotectedLength.ts';

/** Every rule, in the order in which findings of equal severity are told. */
export const RULES: readonly Rule[] = [
  sourceShort,
  seriesBatteries,
  positiveEarth,
  noDevice,
  capacitorUnfused,
  unprotectedLength,
  fuseOverConductor,
  stepDown,
  cladAsCopper,
  sizeNotProven,
  parallelOneFuse,
  shortNotCleared,
  breakingCapacity,
  overloadHeating,
  fuseUnderLoad,
  noFuseQualifies,
  noSizeInStock,
  linkUnderVoltage,
  ratingNotHeld,
  holderTooHot,
  contactOverloaded,
  takeoffOverloaded,
  supplyWiring,
  jointHeat,
  fuseInReturn,
  heating,
  ampacity,
  groundMissing,
  notFed,
  noRating,
  cannotCarry,
  belowCutOut,
  chargingDeficit,
  dropCables,
  dropWhole,
  fuseOverMaker,
  groundSmaller,
  strapSmaller,
  groundOnSensor,
  firewallNoGrommet,
  grommetTooSmall,
  bendTooTight,
  cableOverTerminal,
  reducerLength,
  tapeDoubtful,
  passThroughShared,
  cableChanges,
  looseEnd,
  unmarkedCable,
  ratingsDiffer,
  loadUnknown,
  askExternalFuse,
  smallSeparateRun,
  switchOpen,
  capacitorPrecharge,
  shortUncertain,
  backFed,
  selectivity,
];
