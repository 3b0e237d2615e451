/** Other ways to build the plan, side by side. */
import type { AlternativeId } from '../../plan/alternatives/alternative.ts';

const names: Readonly<Record<AlternativeId, string>> = {
  thickerFeed: 'Dickere Zuleitung',
  copperClad: 'Alu, verkupfert',
  secondBattery: 'Zweite Batterie',
  otherAmplifier: 'Andere Endstufe',
};

const what: Readonly<Record<AlternativeId, string>> = {
  thickerFeed: 'Die Zuleitung eine Größe dicker, mit derselben Klasse gekauft.',
  copperClad: 'Jede zusätzliche Leitung aus Aluminium, mit 10 % Kupfer kaschiert.',
  secondBattery: 'Eine zweite Batterie neben der größten Endstufe, mit eigener Sicherung und Masse.',
  otherAmplifier: 'Eine andere Leistung an Stelle einer Endstufe.',
};

const none: Readonly<Record<AlternativeId, string>> = {
  thickerFeed: 'Noch keine Zuleitung bemessen, oder der Bestand hat keine größere.',
  copperClad: 'Keine zusätzliche Leitung ist aus Kupfer.',
  secondBattery: 'Noch keine Endstufe mit Nennleistung, oder auf dem Blatt ist kein Platz.',
  otherAmplifier: 'Noch keine Endstufe mit Nennleistung, oder die Leistung ist dieselbe.',
};

export const alternatives = {
  label: 'Varianten',
  open: 'Varianten',
  hint: 'Jede ist der ganze Plan, neu berechnet. Nichts ändert sich, bis eine angenommen wird, und auch das lässt sich rückgängig machen.',
  present: 'Wie es ist',
  figure: 'Wert',
  verdict: 'Urteil',
  terminal: (amplifier: string) => `${amplifier}, an den Anschlüssen`,
  unprotected: 'Max. ungesichert',
  fuses: 'Alle Sicherungen',
  gone: 'Nicht mehr gefunden',
  found: 'Neu gefunden',
  same: 'gleich',
  nothing: 'nichts',
  better: 'besser',
  worse: 'schlechter',
  accept: 'Annehmen',
  acceptOf: (name: string) => `Annehmen: ${name}`,
  which: 'Zu ersetzende Endstufe',
  ratedW: 'Leistung der anderen, W',
  names,
  what,
  none,
  /** The longest word of a verdict, and where it may be parted in a narrow column. */
  longest: { whole: 'nachmessen', parted: 'nach\u00admessen' },
};
