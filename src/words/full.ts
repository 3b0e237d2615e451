/** Every word, for what opens on demand; the first load carries index.ts alone. */
import { enLater } from './enLater.ts';
import { words as first } from './index.ts';

/** What a language says beyond the first look; complete like Words. */
type LaterWords = typeof enLater;

const later: LaterWords = enLater;

export const words = { ...first, ...later };
