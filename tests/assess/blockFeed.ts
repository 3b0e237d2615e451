/** A feed to a block and amplifiers on it, each with a branch and a ground of its own: any lengths, powers and fuses. */
import fc from 'fast-check';
import type { Plan } from '../../src/plan/schema.ts';
import { FIRST_M, type HandAmp } from './byHandFeed.ts';
import { PlanOf } from './planOf.ts';

interface BlockAmp extends HandAmp {
  readonly regulated?: boolean;
}

interface BlockFeed {
  readonly feedM: number;
  readonly amps: readonly BlockAmp[];
  /** SAE sizes held; as a new plan has them when not told. */
  readonly stock?: readonly string[];
}

/** Runs are 'battery-main', 'main-block', then 'block-amp0' and 'amp0-g0' for each amplifier. */
export function blockFeed({ feedM, amps, stock }: BlockFeed): Plan {
  const draft = new PlanOf(stock === undefined ? {} : { stock: stock.map((size) => `sae:${size}`) })
    .battery('battery')
    .fuse('main', 'auto', { zone: 'bay' })
    .block(
      'block',
      amps.map(({ fused }) => (fused ? 'auto' : null)),
    )
    .run('battery.positive', 'main.in', FIRST_M, { zone: 'bay' })
    .run('main.out', 'block.bus', feedM);
  for (const [index, { ratedW, regulated = true, branchM, groundM }] of amps.entries()) {
    draft
      .amplifier(`amp${index}`, { ratedW, regulated })
      .fitting('ground', `g${index}`)
      .run(`block.out${index + 1}`, `amp${index}.supply`, branchM)
      .run(`amp${index}.ground`, `g${index}.body`, groundM);
  }
  return draft.done();
}

export const tenths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min, max }).map((many) => many / 10);

export const anyBlockAmp = (mostW: number) =>
  fc.record({
    ratedW: fc.integer({ min: 30, max: mostW }),
    regulated: fc.boolean(),
    branchM: tenths(1, 30),
    groundM: tenths(1, 15),
    fused: fc.boolean(),
  });
