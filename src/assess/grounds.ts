import { type GaugeId, gauge } from '../calc/conductor/gauge.ts';
import { MATERIAL_FIGURES, type Material } from '../calc/tables/materials.ts';
import { exceeds } from './conductor.ts';
import { perModel } from './perModel.ts';

/** What a conductor is made of, and how much of it. */
export interface Metal {
  readonly size: GaugeId;
  readonly material: Material;
}

/**
 * Whether a ground conducts less than its feed, metre for metre: area x conductivity. One number of AWG and SAE in the
 * same metal is one size: an SAE cable of its feed's number is what every shop sells. SAE 4 of 10 % copper-clad
 * aluminium, 18.9 mm2 x 0.629 = 11.9, under SAE 4 of copper, 18.9: true. SAE 2 of it, 30.1 x 0.629 = 18.95: false.
 */
export function conductsLess(ground: Metal, feed: Metal): boolean {
  const [of, than] = [gauge(ground.size), gauge(feed.size)];
  if (ground.material === feed.material && of.awgSize !== null && of.awgSize === than.awgSize) return false;
  const conductance = (areaMm2: number, { material }: Metal): number =>
    areaMm2 * MATERIAL_FIGURES[material].conductivity;
  return exceeds(conductance(than.areaMm2, feed), conductance(of.areaMm2, ground));
}

/** A ground and the feed of the amplifier whose current it returns; indices of cables. */
export interface GroundPair {
  readonly load: number;
  readonly ground: number;
  readonly feed: number;
}

/**
 * Pairs that the rule 'a ground run is no smaller than the feed of its amplifier' compares: the cables at the
 * amplifier's supply, with the cables at its ground and all that return its whole current.
 */
export const groundPairs = perModel(({ circuit, sides, ways }): readonly GroundPair[] => {
  const isCable = (edge: number): boolean => edge < circuit.cables.length;
  const isBack = (cable: number): boolean => sides.back[circuit.cables[cable]?.a ?? -1] === true;
  return circuit.loads.flatMap(({ plus, minus }, load) => {
    const feeds = (sides.at[plus] ?? []).filter(isCable);
    const found = new Set((sides.at[minus] ?? []).filter((edge) => isCable(edge) && isBack(edge)));
    for (let step = ways.stepTo(minus); step !== undefined; step = ways.stepTo(step.from)) {
      if (isCable(step.edge) && isBack(step.edge) && ways.carries(step.edge, load)) found.add(step.edge);
    }
    const grounds = [...found].sort((one, other) => one - other);
    return grounds.flatMap((ground) => feeds.map((feed) => ({ load, ground, feed })));
  });
});
