import { choice } from '../look/choices.ts';
import type { Plan } from '../plan/schema.ts';
import { words } from '../words/index.ts';
import { measuresFor } from '../words/language.ts';

/** The shipped example in the words and lengths of this device; its cables and its rules are those of the file. */
export async function exampleHere(plan: Plan): Promise<Plan> {
  const { showLength } = measuresFor(choice('language'), navigator.languages);
  const shown = { ...plan, settings: { ...plan.settings, showLength } };
  // the file speaks English: most visits need no other names
  if (words.locale === 'en') return shown;
  const { namedExample } = await import('../words/example.ts');
  return namedExample(shown);
}
