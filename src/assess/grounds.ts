import { perModel } from './perModel.ts';

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
  const cables = [...circuit.cables.keys()];
  const endsAt = (cable: number, node: number): boolean =>
    circuit.cables[cable]?.a === node || circuit.cables[cable]?.b === node;
  return circuit.loads.flatMap(({ plus, minus }, load) => {
    const feeds = cables.filter((cable) => endsAt(cable, plus));
    const isBack = (cable: number): boolean => sides.back[circuit.cables[cable]?.a ?? -1] === true;
    const grounds = cables.filter(
      (cable) => isBack(cable) && (endsAt(cable, minus) || ways.behind[cable]?.includes(load) === true),
    );
    return grounds.flatMap((ground) => feeds.map((feed) => ({ load, ground, feed })));
  });
});
