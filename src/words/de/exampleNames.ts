/** What the shipped example calls what is in it. */
export const exampleNames = {
  plan: 'Musikwagen',
  sheet: 'Kastenwagen',
  battery: 'Batterie',
  mainFuse: 'Hauptsicherung',
  passThrough: 'Durchführung',
  block: 'Verteilerblock',
  bass: 'Bassendstufe',
  voice: 'Sprachendstufe',
  bassGround: 'Masse Bass',
  voiceGround: 'Masse Sprache',
} as const;
