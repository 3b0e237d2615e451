/** Whether a capacitor is a source like any other: what it drives through a short, against what its conductors bear. */

import { damageI2tA2s } from '../../calc/fault/adiabatic.ts';
import { faultsTo } from '../../calc/network/fault.ts';
import { type CapacitorLoop, capacitorFuseRatio } from '../../calc/supply/capacitor.ts';
import { ANY_SIZE } from '../conductor.ts';
import type { Facts } from '../facts.ts';
import { cableOf } from '../model.ts';
import { per } from '../perModel.ts';
import { faultConductor } from '../short/conductor.ts';
import { faultNetwork, returnOf } from '../short/net.ts';
import { unprotectedOf } from '../unprotected.ts';

/** The cable that bears least of what its capacitor would drive through it. */
interface WeakestCable {
  readonly cable: number;
  /** I2t over what the cable bears: from 1 up the capacitor is a source. */
  readonly ratio: number;
  readonly loop: CapacitorLoop;
}

/** Index among the circuit's starts of a capacitor. */
const startOf = ({ model }: Pick<Facts, 'model'>, capacitor: number): number =>
  model.circuit.starts.findIndex(({ fitting }) => fitting.id === model.circuit.capacitors[capacitor]?.fitting.id);

/** Cables of its return: those on its negative post, and what they are one cable with. */
function returnCables({ model }: Facts, minus: number): number[] {
  const { cables, groups } = model.circuit;
  const own = cables.filter(({ a, b }) => a === minus || b === minus).map(({ group }) => group);
  return [...new Set(own.flatMap((group) => groups[group] ?? []))];
}

/** A cable as a short finds it; null where it cannot be told, or is at its limit before the short begins. */
function conductorOf(facts: Facts, index: number): CapacitorLoop['conductors'][number] | null {
  const cable = facts.model.circuit.cables[index];
  const size = facts.choice.trialSizes[index] ?? ANY_SIZE;
  const hot = faultConductor(facts, index, size);
  if (cable === undefined || hot === null) return null;
  const conductor = { cable: cableOf(cable, size), startC: hot.startC };
  return damageI2tA2s(conductor.cable, conductor.startC) > 0 ? conductor : null;
}

/**
 * RULES 8, by capacitor: the cable ahead of its first device, or of its return, that bears least of what a dead short
 * would drive through it; null where none of its cables can be told. A short right at a cable's near end has the least
 * resistance in its loop, and so the most heat: conductors at 20 degC, the own resistance of the capacitor included.
 */
export const weakestCables = per((facts: Facts): readonly (WeakestCable | null)[] => {
  const { model } = facts;
  const { circuit, settings } = model;
  return circuit.capacitors.map(({ fitting, plus, minus }, capacitor) => {
    if (model.shorted) return null;
    const volts = settings.chargingV.value;
    const network = faultNetwork(facts, { extreme: 'highest' });
    const faults = faultsTo(
      { ...network, injections: [], sources: [{ plus, minus, volts, ohm: fitting.esrOhm.value }] },
      returnOf(model).node,
    );
    if (!faults.ok) return null;
    const ahead = unprotectedOf(model, startOf(facts, capacitor)).cables.map((cable) => ({
      cable,
      nodes: [circuit.cables[cable]?.a ?? -1, circuit.cables[cable]?.b ?? -1],
    }));
    const back = returnCables(facts, minus).map((cable) => ({ cable, nodes: [plus] }));
    let weakest: WeakestCable | null = null;
    for (const { cable, nodes } of [...ahead, ...back]) {
      const loopOhm = Math.min(...nodes.map((node) => faults.ohm[node] ?? Infinity));
      const conductor = conductorOf(facts, cable);
      if (!(loopOhm > 0) || loopOhm === Infinity || conductor === null) continue;
      const loop = { farads: fitting.capacitanceF.value, volts, loopOhm, conductors: [conductor] };
      const ratio = capacitorFuseRatio(loop);
      if (weakest === null || ratio > weakest.ratio) weakest = { cable, ratio, loop };
    }
    return weakest;
  });
});

/** By start of the circuit: false for a capacitor that its own cables bear a short of. */
export function countedStarts(facts: Facts): boolean[] {
  const { circuit } = facts.model;
  const counted = circuit.starts.map(() => true);
  for (const [capacitor, weakest] of weakestCables(facts).entries()) {
    if (weakest !== null && weakest.ratio < 1) counted[startOf(facts, capacitor)] = false;
  }
  return counted;
}
