/** Bounds of what can be typed: those of the plan's document, so that a field refuses what a file would be refused for. */
export interface Bounds {
  min: number;
  max: number;
}

/** Insulation classes a plan may name, degC. */
export const INSULATION_CLASSES = [60, 75, 80, 90, 105, 125, 200] as const;

const TEMPERATURE: Bounds = { min: -40, max: 200 };
const VOLTAGE: Bounds = { min: 9, max: 16 };

const BOUNDS: Readonly<Record<string, Bounds>> = {
  restV: VOLTAGE,
  chargingV: VOLTAGE,
  duty: { min: 0.01, max: 1 },
  dropLimit: { min: 0.005, max: 0.2 },
  cutOutV: { min: 5, max: 12 },
  bodyOhm: { min: 0, max: 1 },
  jointOhm: { min: 0, max: 0.1 },
  linkDropV: { min: 0, max: 1 },
  bayC: TEMPERATURE,
  wingC: TEMPERATURE,
  hotC: TEMPERATURE,
  cabinC: TEMPERATURE,
  cargoC: TEMPERATURE,
  underC: TEMPERATURE,
  efficiency: { min: 0.05, max: 0.99 },
  ratedW: { min: 1, max: 50_000 },
  loadOhm: { min: 0.1, max: 64 },
  ccaA: { min: 10, max: 5000 },
  capacityAh: { min: 1, max: 2000 },
  'strap.lengthM': { min: 0.01, max: 20 },
  'strap.areaMm2': { min: 0.5, max: 500 },
  externalFuseMaxA: { min: 0.5, max: 1000 },
  onboardFuseA: { min: 0.5, max: 500 },
  ratingA: { min: 0.5, max: 2000 },
  slackPercent: { min: 0, max: 100 },
  scale: { min: 0.01, max: 100 },
};

const ANY: Bounds = { min: -1e6, max: 1e6 };

/** The bounds of an input by its path: 'settings.bodyOhm', '<id>.efficiency', '<id>.strap.lengthM'. */
export const inputBounds = (path: string): Bounds => BOUNDS[path.slice(path.indexOf('.') + 1)] ?? ANY;
