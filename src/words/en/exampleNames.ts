/** What the shipped example calls what is in it: these are the names in its file. */
export const exampleNames = {
  plan: 'Carnival sound van',
  sheet: 'Van',
  battery: 'Battery',
  mainFuse: 'Main fuse',
  passThrough: 'Firewall pass-through',
  block: 'Distribution block',
  bass: 'Bass amplifier',
  voice: 'Voice amplifier',
  bassGround: 'Bass ground',
  voiceGround: 'Voice ground',
} as const;
