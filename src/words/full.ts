/** Every word, for what opens on demand. */
import { words as before } from './answer.ts';
import { enLater } from './enLater.ts';
import { hear, type Said } from './language.ts';

/** What a language says beyond the first look and the answer; complete like Words. */
export type LaterWords = Said<typeof enLater>;

const withBefore = (later: LaterWords) => ({ ...before, ...later });

export let words = withBefore(enLater);

hear((language) => {
  words = withBefore(language.later(enLater));
});
