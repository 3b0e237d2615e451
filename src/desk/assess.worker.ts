/** Works out answers beside the page, so that no frame of a drag has to wait for one. */
import { assess } from '../assess/assess.ts';
import { type Asked, Beside } from './beside.ts';

const beside = new Beside(assess);

self.addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const told = beside.hear(data);
  if (told === null) return;
  const transfer = 'tables' in told ? Object.values(told.tables).map(({ buffer }) => buffer) : [];
  self.postMessage(told, { transfer });
});
