/** Names of what may be assumed: fields of the settings, of fittings and of runs. */
const SETTINGS: Readonly<Record<string, string>> = {
  restV: 'Ruhespannung',
  chargingV: 'Ladespannung',
  duty: 'Aussteuerung der Musik',
  dropLimit: 'Grenze des Spannungsfalls',
  cutOutV: 'Abschaltspannung der Endstufen',
  bodyOhm: 'Widerstand der Karosserie',
  jointOhm: 'Widerstand einer Verbindungsstelle',
  linkDropV: 'Spannungsfall eines Sicherungseinsatzes bei Nennstrom',
  bayC: 'Temperatur im Motorraum',
  wingC: 'Temperatur entlang Kotflügel',
  hotC: 'Temperatur neben heißen Teilen',
  cabinC: 'Temperatur im Innenraum',
  cargoC: 'Temperatur im Laderaum',
  underC: 'Temperatur unter dem Boden',
  usableShare: 'nutzbarer Anteil der Kapazität',
  peukert: 'Peukert-Exponent',
};

const FIELDS: Readonly<Record<string, string>> = {
  ccaA: 'Kaltstartstrom',
  capacityAh: 'Kapazität',
  'strap.lengthM': 'Länge des Massebands ab Werk',
  'strap.areaMm2': 'Querschnitt des Massebands ab Werk',
  strap: 'Masseband ab Werk',
  ratedW: 'Nennleistung',
  loadOhm: 'Last',
  efficiency: 'Wirkungsgrad',
  idleA: 'Strom im Leerlauf',
  ownOhm: 'Innenwiderstand',
  internalOhm: 'Innenwiderstand',
  esrOhm: 'Innenwiderstand',
  capacitanceF: 'Kapazität in Farad',
  outputMaxA: 'größter Ausgangsstrom',
  currentA: 'Strom',
  ratedA: 'Nennstrom',
  hotShare: 'Leistung heiß gegen kalt',
  vehicleA: 'Eigenbedarf des Fahrzeugs',
  'cable.lengthM': 'Länge der Leitung ab Werk',
  'cable.areaMm2': 'Querschnitt der Leitung ab Werk',
  usedA: 'Strom, den die Werkssicherung schon trägt',
  outputV: 'Ausgangsspannung',
  maxA: 'größter Ausgangsstrom',
  contactOhm: 'Kontaktwiderstand',
  farads: 'Kapazität in Farad',
  regulated: 'geregelte Versorgung',
  'conductor.material': 'Leitermetall',
  'conductor.insulationC': 'Isolierklasse',
  material: 'Leitermetall',
  insulationC: 'Isolierklasse',
  slackPercent: 'Zugabe',
  riseM: 'Höhenunterschied',
  zone: 'Umgebung',
  scale: 'Maßstab des Blatts',
};

/** 'settings.bodyOhm' -> 'Widerstand der Karosserie'; '<id>.efficiency' -> 'Wirkungsgrad (Endstufe hinten)'. */
export function assumption(path: string, nameOf: (id: string) => string | null): string {
  const dot = path.indexOf('.');
  const [head, field] = dot < 0 ? ['', path] : [path.slice(0, dot), path.slice(dot + 1)];
  if (head === 'settings' || head === '') return SETTINGS[field] ?? FIELDS[field] ?? field;
  const owner = nameOf(head);
  const what = FIELDS[field] ?? field;
  return owner === null ? what : `${what} (${owner})`;
}

export const regulatedWords = { yes: 'geregelt', no: 'ungeregelt' } as const;

/** Marks of where a value comes from. */
export const trusts = {
  published: 'veröffentlicht',
  memory: 'aus dem Gedächtnis',
  derived: 'hier hergeleitet',
  choice: 'unsere Wahl',
} as const;
