/** The language of this device: as chosen in the view, else as the browser asks. */
import { useSyncExternalStore } from 'react';
import { choice, onChoice } from '../look/choices.ts';
import { words } from '../words/index.ts';
import { hear, languageFor, speakIn } from '../words/language.ts';

/** Speaks the language of this device. Where it cannot be loaded, the page goes on in the one it has. */
async function speak(): Promise<void> {
  await speakIn(languageFor(choice('language'), navigator.languages)).catch(() => undefined);
  document.documentElement.lang = words.locale;
}

/** Resolves when the page can be shown in its language; from then on follows what is chosen. */
export async function startLanguage(): Promise<void> {
  let chosen = choice('language');
  onChoice(() => {
    if (choice('language') === chosen) return;
    chosen = choice('language');
    void speak();
  });
  await speak();
}

/** The locale of the language spoken now. */
export const useLocale = (): string => useSyncExternalStore(hear, () => words.locale);
