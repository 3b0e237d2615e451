/** The quiet line of the first visit. */
export const guideOffer = {
  label: 'First visit',
  text: 'New here? A first plan takes seven short steps.',
  start: 'Show me',
  refuse: 'No thanks',
} as const;
