import type { FittingKind } from '../../plan/schema.ts';

/** Safety words that stand beside the fitting they concern; null where there is nothing to hurt oneself on. */
export const fittingCautions: Readonly<Record<FittingKind, string | null>> = {
  battery: 'Minus zuerst ab, zuletzt wieder an. Nichts Heißes neben einer gasenden Batterie.',
  fuse: 'Den Halter ohne Einsatz einbauen. Der Einsatz kommt zuletzt.',
  passThrough:
    'Vor dem Bohren beide Seiten ansehen. Abstand zu Kraftstoff, Bremsleitungen und Airbagkabeln; im Motorraum auch zu Scharnieren und Schloss der Motorhaube.',
  block: null,
  amplifier: null,
  ground: 'Blankes Metall, eigene Schraube: nie eine von Gurt, Airbag, Bremse oder Lenkung.',
  breaker: 'Während der Arbeit offen. Löst er wieder aus, hat das einen Grund: vor dem dritten Einschalten finden.',
  bus: 'Über jeden Bolzen unter Spannung eine Abdeckung. Ein fallender Schlüssel überbrückt zwei Schienen.',
  reducer: null,
  load: null,
  alternator:
    'Der Ausgangsbolzen steht unter Spannung, solange eine Batterie angeschlossen ist, auch bei stehendem Motor. Erst überall Minus abklemmen. Nie ohne Batterie laufen lassen.',
  jumpPost:
    'Immer unter Spannung: die Batterie sitzt anderswo. Erst diese abklemmen, dann den Punkt berühren; danach die Kappe wieder aufsetzen.',
  takeOff: 'Unter Spannung ab Batterie. Erst Minus abklemmen, und nie die Werkssicherung vergrößern.',
  charger: 'Von beiden Seiten gespeist: unter Spannung, bis beide Batterien ab sind. Er wird heiß: Luft lassen.',
  relay:
    'Beide Seiten unter Spannung, offen oder geschlossen. Es schließt von selbst: vor der Arbeit beide Batterien abklemmen.',
  switch: 'Offen heißt nicht spannungsfrei: die Batterieseite bleibt unter Spannung. Nie bei laufendem Motor öffnen.',
  capacitor:
    'Vor dem Anschließen über Widerstand oder Lampe laden; vor dem Berühren ebenso entladen. Er hält die Ladung tagelang.',
  continuation: null,
};

/** In the legend: what no picture can show. */
export const airbagCaution =
  'Keine Arbeit an Airbags und ihren Leitungen ohne Schulung; die Wartezeit des Fahrzeugherstellers einhalten.';
