/** When the page itself fails: what happened, what is kept, what to do. */
export const crash = {
  title: 'Auf dieser Seite ist etwas fehlgeschlagen.',
  kept: 'Der Plan ist wie nach dem letzten Schritt. Vorsorglich als Datei speichern, dann die Seite neu laden.',
  lost: 'Die Seite konnte nicht starten. Neu laden; die in diesem Browser gespeicherten Pläne sind noch da.',
  save: 'Plan als Datei speichern',
  reload: 'Seite neu laden',
  empty: 'Mit leerem Plan weitermachen',
  what: 'Was die Seite gemeldet hat',
} as const;
