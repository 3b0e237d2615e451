/** The quiet line of the first visit. */
export const guideOffer = {
  label: 'Erster Besuch',
  text: 'Neu hier? Ein erster Plan braucht sieben kurze Schritte.',
  start: 'Zeigen',
  refuse: 'Nein danke',
} as const;
