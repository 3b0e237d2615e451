/** The guided first plan: in each step one sentence on what to do and why. */
export const guide = {
  label: 'Erster Plan',
  again: 'Erster Plan',
  step: (n: number, of: number, title: string) => `Schritt ${n} von ${of}: ${title}`,
  leave: 'Verlassen',
  fold: 'Einklappen',
  unfold: 'Ausklappen',
  done: 'Fertig',
  isDone: 'erledigt',
  isNow: 'jetzt',
  isOpen: 'noch offen',
  stepsLabel: 'Schritte',
  putBack: 'Zurücklegen',
  drawing:
    'Den Anschluss antippen, an dem die Leitung beginnt, dann den, an dem sie endet. Ein Tippen dazwischen ist ein Knick.',
  steps: {
    plan: {
      title: 'ein eigener Plan',
      text: 'Einen neuen Plan beginnen und das Fahrzeug wählen, damit Längen und warme Stellen die des Autos sind.',
      act: 'Neuen Plan beginnen',
    },
    battery: {
      title: 'die Batterie',
      text: 'Die Batterie dorthin setzen, wo sie im Auto sitzt: jede Länge zählt von dort.',
      act: 'Batterie nehmen',
      held: 'Die Batterie ist in der Hand: antippen, wo sie im Auto sitzt.',
    },
    amplifier: {
      title: 'die Endstufe',
      text: 'Die Endstufe setzen und ihre Nennleistung eingeben: sie bestimmt den Strom, und der Strom alles Weitere.',
      act: 'Endstufe nehmen',
      held: 'Die Endstufe ist in der Hand: antippen, wo sie im Auto sitzt.',
      actTell: 'Leistung eingeben',
    },
    feed: {
      title: 'die Zuleitung',
      text: 'Eine Leitung von der Batterie zur Endstufe führen, mit einer Hauptsicherung nahe der Batterie: das Stück davor schützt nichts.',
      act: 'Vorschlagen lassen',
      actAccept: 'Vorschlag annehmen',
      actDraw: 'Selbst zeichnen',
    },
    grounds: {
      title: 'die Masse',
      text: 'Jede Endstufe in der Nähe mit blankem Metall der Karosserie verbinden: was hineinfließt, muss zurückfließen.',
      act: 'Massepunkt nehmen',
      held: 'Der Massepunkt ist in der Hand: blankes Metall nahe der Endstufe antippen.',
      actDraw: 'Masseleitung zeichnen',
    },
    tape: {
      title: 'eine erste nachgemessene Länge',
      text: 'Eine Leitung im Auto mit dem Maßband messen und ihre Länge eingeben: eine gezeichnete Länge ist nur geschätzt.',
      act: 'Länge eingeben',
    },
    verdict: {
      title: 'das Urteil',
      text: 'Das Urteil über den Werten lesen: was zum Stopp zwingt, was zu beheben ist und was noch niemand angegeben hat.',
      act: 'Fertig',
    },
  },
} as const;
