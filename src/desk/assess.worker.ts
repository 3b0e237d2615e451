/** Works out answers beside the page, so that no frame of a drag has to wait for one. */
import { assess } from '../assess/assess.ts';
import { type Packed, packed } from '../assess/packed.ts';
import { withChange } from '../plan/change.ts';
import type { Plan } from '../plan/schema.ts';
import type { Asked } from './answering.ts';

let base: Plan | null = null;

self.addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  if ('plan' in data) {
    base = data.plan;
    return;
  }
  if (base === null) throw new Error('A change came before the plan that it is of.');
  const worked: Packed = packed(assess(withChange(base, data.change)));
  self.postMessage(worked);
});
