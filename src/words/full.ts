/** Every word, for what opens on demand. */
import { words as before } from './answer.ts';
import { enLater } from './enLater.ts';

/** What a language says beyond the first look and the answer; complete like Words. */
type LaterWords = typeof enLater;

const later: LaterWords = enLater;

export const words = { ...before, ...later };
