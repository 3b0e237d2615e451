/**
 * What is chosen for this device and not for a plan: kept by the browser where it keeps anything, and on the page's
 * root element as data-theme, data-face and data-side, where style sheets see it.
 */

const CHOICES = {
  /** Paper for indoors, sun for glare, dark for the evening. */
  theme: ['paper', 'sun', 'dark'],
  /** To whom the screen is turned. */
  face: ['work', 'customer', 'class'],
  /** The hand that draws; the other one holds the tablet, and the shelf is on its side. */
  side: ['right', 'left'],
  /** 'auto': as the browser asks. */
  language: ['auto', 'en', 'en-GB', 'de'],
  /** In the class face: asked before told. */
  figures: ['shown', 'hidden'],
  /** The guided first plan: offered once, and on the page only while it is open. */
  guide: ['offered', 'open', 'left'],
} as const;

export type ChoiceName = keyof typeof CHOICES;
export type ChoiceOf<N extends ChoiceName> = (typeof CHOICES)[N][number];
export type Face = ChoiceOf<'face'>;

/** What can be chosen; the first is what holds until something is. */
export const choicesOf = <N extends ChoiceName>(name: N): (typeof CHOICES)[N] => CHOICES[name];

const NAMES = Object.keys(CHOICES) as ChoiceName[];
const chosen = new Map<ChoiceName, string>();
const listeners = new Set<() => void>();

const keyOf = (name: ChoiceName): string => `feedrun-${name}`;

function show(name: ChoiceName): void {
  if (typeof document !== 'undefined') document.documentElement.dataset[name] = choice(name);
}

/** What holds now. */
export function choice<N extends ChoiceName>(name: N): ChoiceOf<N> {
  const all: readonly ChoiceOf<N>[] = CHOICES[name];
  return all.find((value) => value === chosen.get(name)) ?? (CHOICES[name][0] as ChoiceOf<N>);
}

/** Holds at once, and on later visits where the browser keeps anything. */
export function choose<N extends ChoiceName>(name: N, value: ChoiceOf<N>): void {
  chosen.set(name, value);
  show(name);
  try {
    localStorage.setItem(keyOf(name), value);
  } catch {
    // a private window keeps nothing; the choice holds until it is closed
  }
  for (const listener of listeners) listener();
}

/** Calls back after every choice; answers how to stop. */
export function onChoice(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The choices of the last visit. Values that are none are passed over. */
export function restoreChoices(): void {
  for (const name of NAMES) {
    try {
      const kept = localStorage.getItem(keyOf(name));
      if (kept === null) chosen.delete(name);
      else chosen.set(name, kept);
    } catch {
      // as above
    }
    show(name);
  }
  for (const listener of listeners) listener();
}

restoreChoices();
