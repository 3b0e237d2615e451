/** Works out answers beside the page, so that no frame of a drag has to wait for one. */
import { assess } from '../assess/assess.ts';
import type { Asked } from './answering.ts';
import { Beside } from './beside.ts';

const beside = new Beside(assess);

self.addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const packed = beside.hear(data);
  if (packed !== null) self.postMessage(packed, { transfer: [packed.bytes.buffer] });
});
