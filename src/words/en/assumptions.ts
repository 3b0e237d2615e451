/** Names of what may be assumed: fields of the settings, of fittings and of runs. Small first letter, for the middle of a sentence. */
const SETTINGS: Readonly<Record<string, string>> = {
  restV: 'voltage at rest',
  chargingV: 'voltage while charging',
  duty: 'duty of the music',
  dropLimit: 'limit of voltage drop',
  cutOutV: 'cut-out voltage of the amplifiers',
  bodyOhm: 'body resistance',
  jointOhm: 'resistance of a joint',
  linkDropV: 'drop across a fuse-link at its rating',
  bayC: 'ambient in the engine bay',
  wingC: 'ambient along a fender',
  hotC: 'ambient beside hot parts',
  cabinC: 'ambient in the cabin',
  cargoC: 'ambient in the cargo space',
  underC: 'ambient under the body',
  usableShare: 'usable share of the capacity',
  peukert: 'Peukert exponent',
};

const FIELDS: Readonly<Record<string, string>> = {
  ccaA: 'cold cranking current',
  capacityAh: 'capacity',
  'strap.lengthM': 'length of the factory strap',
  'strap.areaMm2': 'area of the factory strap',
  strap: 'factory strap',
  ratedW: 'rated output',
  loadOhm: 'load',
  efficiency: 'efficiency',
  idleA: 'current at idle',
  ownOhm: 'own resistance',
  internalOhm: 'own resistance',
  esrOhm: 'own resistance',
  capacitanceF: 'capacity in farads',
  outputMaxA: 'largest output current',
  currentA: 'current',
  ratedA: 'rated output',
  hotShare: 'hot output over cold',
  vehicleA: "the vehicle's own current",
  'cable.lengthM': 'length of the factory cable',
  'cable.areaMm2': 'area of the factory cable',
  usedA: 'current the factory fuse feeds already',
  outputV: 'output voltage',
  maxA: 'largest output current',
  contactOhm: 'contact resistance',
  farads: 'capacity in farads',
  regulated: 'regulated supply',
  'conductor.material': 'conductor material',
  'conductor.insulationC': 'insulation class',
  material: 'conductor material',
  insulationC: 'insulation class',
  slackPercent: 'slack',
  riseM: 'rise',
  zone: 'surroundings',
  scale: 'scale of the sheet',
};

/** 'settings.bodyOhm' -> 'body resistance'; '<id>.efficiency' -> 'efficiency of Rear amplifier'. */
export function assumption(path: string, nameOf: (id: string) => string | null): string {
  const dot = path.indexOf('.');
  const [head, field] = dot < 0 ? ['', path] : [path.slice(0, dot), path.slice(dot + 1)];
  if (head === 'settings' || head === '') return SETTINGS[field] ?? FIELDS[field] ?? field;
  const owner = nameOf(head);
  const what = FIELDS[field] ?? field;
  return owner === null ? what : `${what} of ${owner}`;
}

export const regulatedWords = { yes: 'regulated', no: 'unregulated' } as const;

/** Marks of where a value comes from. */
export const trusts = {
  published: 'published',
  memory: 'from memory',
  derived: 'derived here',
  choice: 'our choice',
} as const;
