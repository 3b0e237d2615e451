import {
  BUNDLE_FACTORS,
  CARPET_FACTOR,
  type InsulationC,
  LOOM_FACTOR,
  type Table5Size,
  table5A,
} from '../tables/ampacity.ts';
import { AWG_SIZES, awgAreaMm2 } from '../tables/awg.ts';
import { MATERIAL_FIGURES, type Material } from '../tables/materials.ts';
import { cited, type Recorder } from '../why.ts';
import { type Gauge, type GaugeId, gauge } from './gauge.ts';

/** The cable and how it is wrapped: all that decides its current at 30 degC. */
export interface Cable {
  readonly gauge: GaugeId;
  readonly material: Material;
  readonly insulationC: InsulationC;
  /** In closed loom or conduit. */
  readonly loom?: boolean;
  /** Under carpet and insulation; such a cable counts as in conduit already. */
  readonly carpet?: boolean;
  /** Loaded conductors in its bundle, itself included; up to two change nothing. */
  readonly bundled?: number;
}

const bundleFactor = (bundled: number): number | null =>
  BUNDLE_FACTORS.find(([atLeast]) => bundled >= atLeast)?.[1] ?? null;

const TABLE5_SIZES = AWG_SIZES.filter((size): size is Table5Size => size !== '20');
const SMALLEST: Table5Size = '18';
const LARGEST: Table5Size = '4/0';

const TABLE = cited('cfr183425Table5');
const AWG_AREA = cited('astmB258');

/** Records the current of a copper conductor in free air under `symbol`. */
type Record30 = (size: Gauge, insulationC: InsulationC, symbol: string, rec: Recorder) => number;

const belowTable: Record30 = ({ areaMm2, areaSource }, insulationC, symbol, rec) => {
  const table = rec.input('Itable', 'A', table5A(SMALLEST, insulationC), TABLE);
  const tableArea = rec.input('Stable', 'mm2', awgAreaMm2(SMALLEST), AWG_AREA);
  const area = rec.input('S', 'mm2', areaMm2, cited(areaSource));
  return rec.step(symbol, 'A', 'Itable * S / Stable', (table * area) / tableArea, { source: 'feedrunRules' });
};

const byNumber: Record30 = (size, insulationC, symbol, rec) => {
  if (size.awgSize === null || size.awgSize === '20') return belowTable(size, insulationC, symbol, rec);
  const table = rec.input('Itable', 'A', table5A(size.awgSize, insulationC), TABLE);
  if (size.system === 'awg') return rec.step(symbol, 'A', 'Itable', table);
  const tableArea = rec.input('Stable', 'mm2', awgAreaMm2(size.awgSize), AWG_AREA);
  const area = rec.input('S', 'mm2', size.areaMm2, cited(size.areaSource));
  const amps = table * Math.sqrt(area / tableArea);
  return rec.step(symbol, 'A', 'Itable * sqrt(S / Stable)', amps, { source: 'equalLoss' });
};

const byArea: Record30 = (size, insulationC, symbol, rec) => {
  const upper = TABLE5_SIZES.find((row) => awgAreaMm2(row) >= size.areaMm2);
  if (upper === undefined) {
    const table = rec.input('Itable', 'A', table5A(LARGEST, insulationC), TABLE);
    return rec.step(symbol, 'A', 'Itable', table, { source: 'feedrunRules' });
  }
  const lower = TABLE5_SIZES[TABLE5_SIZES.indexOf(upper) - 1];
  if (lower === undefined) return belowTable(size, insulationC, symbol, rec);
  const lowA = rec.input('Ilow', 'A', table5A(lower, insulationC), TABLE);
  const highA = rec.input('Ihigh', 'A', table5A(upper, insulationC), TABLE);
  const lowArea = rec.input('Slow', 'mm2', awgAreaMm2(lower), AWG_AREA);
  const highArea = rec.input('Shigh', 'mm2', awgAreaMm2(upper), AWG_AREA);
  const area = rec.input('S', 'mm2', size.areaMm2, cited(size.areaSource));
  const ratio = Math.log(highA / lowA) / Math.log(highArea / lowArea);
  const slope = rec.step('slope', '1', 'log(Ihigh / Ilow) / log(Shigh / Slow)', ratio);
  const amps = lowA * (area / lowArea) ** slope;
  return rec.step(symbol, 'A', 'Ilow * (S / Slow) ^ slope', amps, { source: 'feedrunRules' });
};

/**
 * Current that brings this cable to its class temperature in 30 degC, A: Table 5 carried over to SAE and metric
 * sizes, other materials, wrapped and bundled cable. Recorded as 'I30'. Source: 33 CFR 183.425 Table 5 and our rules.
 * 'sae:4', copper, 105 degC, free: 160 x sqrt(18.931 / 21.151) = 151.4 A.
 */
export function tableCurrentA(cable: Cable, rec: Recorder): number {
  const size = gauge(cable.gauge);
  const record = size.system === 'mm2' ? byArea : byNumber;
  const wrapped = cable.carpet || cable.loom;
  const bundle = bundleFactor(cable.bundled ?? 1);
  if (cable.material === 'copper' && !wrapped && bundle === null) return record(size, cable.insulationC, 'I30', rec);
  let amps = record(size, cable.insulationC, 'Icopper', rec);
  let expression = 'Icopper';
  if (cable.material !== 'copper') {
    amps *= rec.input('kMaterial', '1', MATERIAL_FIGURES[cable.material].ampacityFactor, cited('equalLoss'));
    expression += ' * kMaterial';
  }
  if (wrapped) {
    amps *= rec.input('kWrapping', '1', cable.carpet ? CARPET_FACTOR : LOOM_FACTOR, cited('bs7671Table4E1A'));
    expression += ' * kWrapping';
  }
  if (bundle !== null) {
    amps *= rec.input('kBundle', '1', bundle, cited('cfr183425Note2'));
    expression += ' * kBundle';
  }
  return rec.step('I30', 'A', expression, amps);
}
