/** Safety words of the whole plan. */
export const cautions = {
  plan: 'Dieser Plan hilft Fachkundigen. Er ersetzt keine örtliche Vorschrift, keine Anweisung des Fahrzeugherstellers und keine Fachkraft.',
  beforeWork: 'Vor jeder Arbeit: zuerst Minus an jeder Batterie abklemmen. Schutzbrille auf, Schmuck ab.',
} as const;
