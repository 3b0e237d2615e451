import type { SourceId } from '../sources.ts';
import {
  BEND_TIMES,
  BUNCH_FILL,
  DENSITY_KG_PER_M3,
  DENSITY_SOURCE,
  SAE_WALL_MM,
  SHEATH_KG_PER_M3,
  THICK_WALL_OUTSIDE_MM,
  THIN_WALL_OUTSIDE_MM,
} from '../tables/dimensions.ts';
import type { Material } from '../tables/materials.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';
import { type GaugeId, gauge } from './gauge.ts';
import { recordR20, STRANDING } from './resistance.ts';
import { recordMetalArea } from './thermal.ts';

/** Thickest wall listed, for a metric size between the two lists (10 mm2). From memory: 1.3 mm, as of 25 mm2. */
const BETWEEN_WALL_MM = 1.3;

function listed(areaMm2: number): readonly [mm: number, source: SourceId] | null {
  const thin = THIN_WALL_OUTSIDE_MM.get(areaMm2);
  if (thin !== undefined) return [thin, 'iso6722Dimensions'];
  const thick = THICK_WALL_OUTSIDE_MM.get(areaMm2);
  return thick === undefined ? null : [thick, 'iso6722ThickWall'];
}

function recordOutside(gaugeId: GaugeId, rec: Recorder): number {
  const size = gauge(gaugeId);
  const found = size.awgSize === null ? listed(size.areaMm2) : null;
  if (found !== null) return rec.step('Dout', 'mm', 'Dlisted', rec.input('Dlisted', 'mm', found[0], cited(found[1])));
  const area = rec.input('S', 'mm2', size.areaMm2, cited(size.areaSource));
  const fill = rec.input('kFill', '1', BUNCH_FILL, cited('commonPractice'));
  const walls = size.awgSize === null ? BETWEEN_WALL_MM : SAE_WALL_MM[size.awgSize];
  const wall = rec.input('wall', 'mm', walls, cited('saeJ1127Wall'));
  const outside = Math.sqrt((4 * area) / (Math.PI * fill)) + 2 * wall;
  return rec.step('Dout', 'mm', 'sqrt(4 * S / (pi * kFill)) + 2 * wall', outside, { source: 'outsideDerived' });
}

/**
 * Outside diameter of a single cable, mm: to be replaced by a measured one, since walls vary by the half. On the thick
 * side, for holes and bends. Metric: listed, thin wall to 6 mm2 and thick from 16; others from area, fill and wall.
 * Sources and trust: `tables/dimensions.ts`. 'mm2:25' 10.4; 'mm2:2.5' 3.0; 'sae:4' 9.4; 'sae:1/0' 13.6.
 */
export function outsideMm(gaugeId: GaugeId): number {
  return recordOutside(gaugeId, NO_WHY);
}

/** Why of `outsideMm`; the result is 'Dout'. */
export function outsideWhy(gaugeId: GaugeId): Why {
  const builder = whyBuilder();
  recordOutside(gaugeId, builder);
  return builder.done('Dout');
}

/** nec: 5 outside diameters (published); faa: 10, for bundles, faaTerminal: 3, held at a terminal (from memory). */
export type BendRule = keyof typeof BEND_TIMES;

function recordBend(outside: number, rule: BendRule, rec: Recorder, about: Abouts<'outsideMm'>): number {
  const diameter = rec.input('Dout', 'mm', outside, about.outsideMm);
  const times = rec.input('kBend', '1', BEND_TIMES[rule], cited(rule === 'nec' ? 'nec551' : 'faaBend'));
  return rec.step('Rbend', 'mm', 'kBend * Dout', times * diameter);
}

/** Least radius of a bend, mm, of a cable that thick. Source: NEC 551.47(H) as summarised. 9.4 mm gives 47. */
export function leastBendMm(outside: number, rule: BendRule = 'nec'): number {
  return recordBend(outside, rule, NO_WHY, {});
}

/** Why of `leastBendMm`; the result is 'Rbend'. */
export function leastBendWhy(outside: number, rule: BendRule = 'nec', about: Abouts<'outsideMm'> = {}): Why {
  const builder = whyBuilder();
  recordBend(outside, rule, builder, about);
  return builder.done('Rbend');
}

function recordMass(gaugeId: GaugeId, material: Material, rec: Recorder): number {
  const outside = recordOutside(gaugeId, rec);
  const r20 = recordR20(gaugeId, material, rec);
  const metal = recordMetalArea({ gauge: gaugeId, material }, r20, rec);
  const stranding = rec.input('stranding', '1', STRANDING, cited('strandingLay'));
  const density = rec.input('density', 'kgPerM3', DENSITY_KG_PER_M3[material], cited(DENSITY_SOURCE[material]));
  const fill = rec.input('kFill', '1', BUNCH_FILL, cited('commonPractice'));
  const plastic = rec.input('densityPvc', 'kgPerM3', SHEATH_KG_PER_M3, cited('densityMemory'));
  const ring = (Math.PI / 4) * outside ** 2 - metal / fill;
  const sheath = rec.step('Ssheath', 'mm2', 'pi / 4 * Dout ^ 2 - Smetal / kFill', ring);
  const mass = (stranding * metal * density + sheath * plastic) / 1e6;
  return rec.step('mass', 'kgPerM', '(stranding * Smetal * density + Ssheath * densityPvc) / 10^6', mass);
}

/**
 * Mass of one metre of single cable, kg/m: its metal by density, and a PVC sheath. An estimate, good to a fifth.
 * Sources: densities in `tables/dimensions.ts`. 'awg:4', copper: 0.247 kg/m.
 */
export function massKgPerM(gaugeId: GaugeId, material: Material): number {
  return recordMass(gaugeId, material, NO_WHY);
}

/** Why of `massKgPerM`; the result is 'mass'. */
export function massWhy(gaugeId: GaugeId, material: Material): Why {
  const builder = whyBuilder();
  recordMass(gaugeId, material, builder);
  return builder.done('mass');
}
