/** Plans that branch from one battery: fuses, blocks and pass-throughs, amplifiers with grounds of their own or shared. */
import fc from 'fast-check';
import type { Plan } from '../../src/plan/schema.ts';
import { PlanOf } from './planOf.ts';

const SIZES = ['auto', 'auto', 'sae:8', 'sae:4', 'sae:1/0', 'mm2:35'] as const;

const anyPiece = fc.record({
  kind: fc.constantFrom('block', 'block', 'fuse', 'passThrough', 'amplifier', 'amplifier', 'amplifier', 'stub'),
  at: fc.nat(),
  size: fc.constantFrom(...SIZES),
  groundSize: fc.constantFrom(...SIZES),
  tapedM: fc.constantFrom(0.1, 0.5, 2, 5),
  ratingA: fc.constantFrom<('auto' | number | null)[]>('auto', 'auto', null, 30, 60, 150),
  ratedW: fc.constantFrom(null, 100, 400, 1000),
  regulated: fc.boolean(),
  ground: fc.constantFrom('own', 'own', 'shared', 'sharedCable', 'none'),
});

/** A plan of up to `most` pieces hung onto one another. */
export const anyTree = (most = 12): fc.Arbitrary<Plan> =>
  fc
    .record({
      pieces: fc.array(anyPiece, { minLength: 1, maxLength: most }),
      main: fc.constantFrom<('auto' | number | null)[]>('auto', 60, 125, null),
      strap: fc.boolean(),
    })
    .map(({ pieces, main, strap }) => {
      const draft = new PlanOf()
        .battery('battery', strap ? {} : { strap: null })
        .fitting('ground', 'shared')
        .fitting('passThrough', 'bundle');
      if (!strap) draft.run('battery.negative', 'shared.body', 0.4);
      if (main !== null) draft.fuse('main', main, { zone: 'bay' }).run('battery.positive', 'main.in', 0.2);
      const open = [main === null ? 'battery.positive' : 'main.out'];
      let bundled = false;
      for (const [
        index,
        { kind, at, size, groundSize, tapedM, ratingA, ratedW, regulated, ground },
      ] of pieces.entries()) {
        const place = at % open.length;
        const from = open[place] ?? '';
        const id = `p${index}`;
        const join = (terminal: string): void => {
          draft.run(from, `${id}.${terminal}`, tapedM, { id: `r${index}`, size });
        };
        if (kind === 'block') {
          draft.block(id, [ratingA, ratingA, null]);
          join('bus');
          open.splice(place, 1, `${id}.out1`, `${id}.out2`, `${id}.out3`);
        } else if (kind === 'fuse') {
          draft.fuse(id, ratingA ?? 'auto');
          join('in');
          open[place] = `${id}.out`;
        } else if (kind === 'passThrough' || kind === 'stub') {
          draft.fitting('passThrough', id);
          join('through');
          if (kind === 'passThrough') open[place] = `${id}.through`;
        } else {
          draft.amplifier(id, { ratedW, regulated });
          join('supply');
          const end = { own: `g${index}.body`, shared: 'shared.body', sharedCable: 'bundle.through', none: null }[
            ground
          ];
          if (ground === 'own') draft.fitting('ground', `g${index}`);
          if (ground === 'sharedCable') bundled = true;
          if (end !== null) draft.run(`${id}.ground`, end, tapedM, { id: `b${index}`, size: groundSize });
        }
      }
      if (bundled) draft.run('bundle.through', 'shared.body', 0.5, { id: 'bundled' });
      return draft.done();
    });
