/**
 * The contest wire chart worked again. It names one size for a band of total current and of one-way length; its own text
 * gives no rule. Taken at the upper end of both bands, with SAE areas, copper at 75 degC, 0.5 V over the feed alone and the
 * 105 degC column of 33 CFR 183.425 Table 5 (free air, carried to the SAE area), it comes out of our own figures.
 */
import { describe, expect, it } from 'vitest';
import { ampacityA } from '../../src/calc/conductor/ampacity.ts';
import { type GaugeId, isGaugeId } from '../../src/calc/conductor/gauge.ts';
import { resistancePerMOhm } from '../../src/calc/conductor/resistance.ts';
import chart from '../fixtures/published/contestWireChart.json' with { type: 'json' };

/** From below the chart's smallest, so that none of ours is cut off there. */
const EVEN_SIZES = ['18', '16', '14', '12', '10', '8', '6', '4', '2', '1/0', '2/0', '4/0'];
const M_PER_FT = 0.3048;
const DROP_V = 0.5;
const COPPER_C = 75;
/** Where Table 5 holds as printed. */
const TABLE_C = 30;

const printed = (cell: string): string => (cell === '0' ? '1/0' : cell === '00' ? '2/0' : cell);

function sae(size: string): GaugeId {
  const id = `sae:${size}`;
  if (!isGaugeId(id)) throw new Error(`no size ${id}`);
  return id;
}

const dropV = (size: string, amps: number, lengthM: number): number =>
  amps * lengthM * resistancePerMOhm(sae(size), 'copper', COPPER_C);

const carriesA = (size: string): number =>
  ampacityA({
    gauge: sae(size),
    material: 'copper',
    insulationC: 105,
    zone: 'other',
    ambientC: TABLE_C,
    loom: false,
    carpet: false,
  });

interface Cell {
  readonly where: string;
  readonly amps: number;
  readonly lengthM: number;
  readonly size: string;
}

const CELLS: readonly Cell[] = chart.rows.flatMap(({ ampsTo, awg }) =>
  awg.map((cell, column): Cell => {
    const feet = chart.lengthFt[column]?.to ?? Number.NaN;
    return { where: `${ampsTo} A, ${feet} ft`, amps: ampsTo, lengthM: feet * M_PER_FT, size: printed(cell) };
  }),
);

/** How many even sizes ours is above the chart's. */
function stepsAbove({ amps, lengthM, size }: Cell): number {
  const ours = EVEN_SIZES.findIndex((one) => dropV(one, amps, lengthM) <= DROP_V && carriesA(one) >= amps);
  return ours - EVEN_SIZES.indexOf(size);
}

describe('the contest wire chart (tests/fixtures/published/contestWireChart.json)', () => {
  it('has 64 cells, all of even sizes', () => {
    expect(CELLS).toHaveLength(64);
    for (const { where, size, lengthM } of CELLS) {
      expect(EVEN_SIZES, where).toContain(size);
      expect(lengthM, where).toBeGreaterThan(1);
    }
  });

  it('is met within one even size in all 64 cells, exactly in 46; ours is one smaller in the other 18', () => {
    const steps = CELLS.map(stepsAbove);
    const count = (wanted: number): number => steps.filter((step) => step === wanted).length;
    for (const [index, cell] of CELLS.entries()) expect(Math.abs(steps[index] ?? 9), cell.where).toBeLessThanOrEqual(1);
    expect([count(0), count(-1), count(1)]).toEqual([46, 18, 0]);
  });

  it('would be too large for 0.5 V in its shortest columns: there it goes by what the cable carries', () => {
    const byDropAlone = (cell: Cell): string | undefined =>
      EVEN_SIZES.find((one) => dropV(one, cell.amps, cell.lengthM) <= DROP_V);
    const short = CELLS.find(({ where }) => where === '150 A, 4 ft');
    if (short === undefined) throw new Error('the chart has that cell');
    // 150 A over 1.22 m of 6 AWG: 0.36 V, but 120 x sqrt(0.9) = 113 A is all that it carries
    expect([short.size, byDropAlone(short)]).toEqual(['2', '6']);
    expect(carriesA('6')).toBeLessThan(120);
  });
});
