/** A kind of cable at a size: figures that hang on no plan, worked once for each. */
import { type AmpacityCase, ampacityA } from '../calc/conductor/ampacity.ts';
import type { GaugeId } from '../calc/conductor/gauge.ts';
import { type Warming, warmingOf } from '../calc/conductor/heating.ts';
import { resistancePerMOhm } from '../calc/conductor/resistance.ts';
import { type Thermal, thermalOf } from '../calc/conductor/thermal.ts';
import type { Cable } from './circuit.ts';
import { cableOf } from './model.ts';
import { once } from './perModel.ts';

const BASE_C = 20;
const SPAN_K = 100;

interface Wire {
  readonly warming: Warming;
  /** Resistance of a metre at 20 degC, and what each degree adds: it is linear in temperature; ohm, ohm per K. */
  readonly ohmPerM20: number;
  readonly ohmPerMK: number;
  readonly thermal: () => Thermal;
  /** In air of that temperature, A. */
  ampacityA(zone: AmpacityCase['zone'], ambientC: number): number;
}

function wireFor(kind: ReturnType<typeof cableOf>): Wire {
  const ohmPerM20 = resistancePerMOhm(kind.gauge, kind.material, BASE_C);
  const known = new Map<string, number>();
  return {
    warming: warmingOf(kind),
    ohmPerM20,
    ohmPerMK: (resistancePerMOhm(kind.gauge, kind.material, BASE_C + SPAN_K) - ohmPerM20) / SPAN_K,
    thermal: once(() => thermalOf(kind)),
    ampacityA(zone, ambientC) {
      const key = `${zone}${ambientC}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      const amps = ampacityA({ ...kind, zone, ambientC });
      known.set(key, amps);
      return amps;
    },
  };
}

const wires = new Map<string, Wire>();

/** The wire of a cable at a size. */
export function wireOf(cable: Cable, size: GaugeId): Wire {
  const kind = cableOf(cable, size);
  const { gauge, material, insulationC, loom, carpet, bundled } = kind;
  const key = `${gauge} ${material} ${insulationC} ${loom} ${carpet} ${bundled}`;
  const before = wires.get(key);
  if (before !== undefined) return before;
  const wire = wireFor(kind);
  wires.set(key, wire);
  return wire;
}
