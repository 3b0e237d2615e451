import type { SourceId } from '../sources.ts';
import { AWG_SIZES, type AwgSize, awgAreaMm2 } from '../tables/awg.ts';
import { IEC60228_CLASS5 } from '../tables/iec60228.ts';
import { saeArea } from '../tables/sae.ts';

declare const gaugeBrand: unique symbol;

/** Name of a conductor size: 'sae:4', 'awg:1/0', 'mm2:25'. Branded, so that no other string passes for one. */
export type GaugeId = string & { readonly [gaugeBrand]: true };

/** sae: least copper of automotive cable by number; awg: full AWG area; mm2: IEC 60228 nominal area. */
export type GaugeSystem = 'sae' | 'awg' | 'mm2';

export interface Gauge {
  readonly id: GaugeId;
  readonly system: GaugeSystem;
  /** Size without its system: '4', '1/0', '25'. */
  readonly label: string;
  readonly areaMm2: number;
  readonly areaM2: number;
  readonly areaSource: SourceId;
  /** The AWG number whose table row applies; null for metric sizes. */
  readonly awgSize: AwgSize | null;
}

const idOf = (system: GaugeSystem, label: string): GaugeId => `${system}:${label}` as GaugeId;

function numbered(system: 'sae' | 'awg', size: AwgSize): Gauge {
  const { areaMm2, source } =
    system === 'sae' ? saeArea(size) : { areaMm2: awgAreaMm2(size), source: 'astmB258' as const };
  return {
    id: idOf(system, size),
    system,
    label: size,
    areaMm2,
    areaM2: areaMm2 * 1e-6,
    areaSource: source,
    awgSize: size,
  };
}

function metric(areaMm2: number): Gauge {
  const label = String(areaMm2);
  return {
    id: idOf('mm2', label),
    system: 'mm2',
    label,
    areaMm2,
    areaM2: areaMm2 * 1e-6,
    areaSource: 'iec60228',
    awgSize: null,
  };
}

const GAUGES: ReadonlyMap<string, Gauge> = new Map(
  [
    ...AWG_SIZES.map((size) => numbered('sae', size)),
    ...AWG_SIZES.map((size) => numbered('awg', size)),
    ...IEC60228_CLASS5.map(([areaMm2]) => metric(areaMm2)),
  ].map((gauge) => [gauge.id, gauge]),
);

/** Every size known, system by system, each ascending in area. */
export const ALL_GAUGES: readonly GaugeId[] = [...GAUGES.values()].map(({ id }) => id);

export function isGaugeId(text: string): text is GaugeId {
  return GAUGES.has(text);
}

/** The size of that id. 'sae:4' has 18.931 mm2. Throws on an unknown id. */
export function gauge(id: GaugeId): Gauge {
  const found = GAUGES.get(id);
  if (found === undefined) throw new RangeError(`gauge: no size '${id}'`);
  return found;
}

/** Sizes of one system, ascending in area. */
export function gaugesOf(system: GaugeSystem): readonly GaugeId[] {
  return ALL_GAUGES.filter((id) => gauge(id).system === system);
}

const NUMBERED_STOCK = ['8', '4', '2', '1/0', '2/0', '4/0'];
const METRIC_STOCK = ['10', '16', '25', '35', '50', '70', '95', '120'];

/** Sizes a shop is taken to stock until told otherwise, ascending. Source: our choice. */
export const DEFAULT_STOCK: Readonly<Record<GaugeSystem, readonly GaugeId[]>> = {
  sae: NUMBERED_STOCK.map((label) => idOf('sae', label)),
  awg: NUMBERED_STOCK.map((label) => idOf('awg', label)),
  mm2: METRIC_STOCK.map((label) => idOf('mm2', label)),
};
