import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../../src/calc/sources.ts';
import { damageLimitC, damageLimitSource, heatSource } from '../../../src/calc/tables/adiabatic.ts';
import {
  INSULATION_CLASSES_C,
  type InsulationC,
  NOTE1_FACTOR,
  note1Source,
  type Table5Size,
  table5A,
} from '../../../src/calc/tables/ampacity.ts';
import { AWG_SIZES, type AwgSize, awgAreaMm2, awgDiameterMm } from '../../../src/calc/tables/awg.ts';
import { fuseTimes } from '../../../src/calc/tables/fuseTimes.ts';
import { class5OhmPerM, IEC60228_CLASS5 } from '../../../src/calc/tables/iec60228.ts';
import { LINK_FAMILIES, type LinkFamily, type LinkFamilyId, linkFamily } from '../../../src/calc/tables/links.ts';
import { saeArea } from '../../../src/calc/tables/sae.ts';
import note1 from '../../fixtures/published/cfr183425Note1.json' with { type: 'json' };
import table5 from '../../fixtures/published/cfr183425Table5.json' with { type: 'json' };
import times from '../../fixtures/published/fuseTimes.json' with { type: 'json' };
import class5 from '../../fixtures/published/iec60228Class5.json' with { type: 'json' };
import links from '../../fixtures/published/iso8820Links.json' with { type: 'json' };
import sae from '../../fixtures/published/saeJ1127.json' with { type: 'json' };
import examples from '../../fixtures/published/workedExamples.json' with { type: 'json' };

describe('33 CFR 183.425 Table 5, whole', () => {
  it('has the columns printed', () => expect([...INSULATION_CLASSES_C]).toEqual(table5.classesC));
  it.each(table5.rows)('row $awg AWG', ({ awg, amps }) => {
    expect(INSULATION_CLASSES_C.map((classC) => table5A(awg as Table5Size, classC))).toEqual(amps);
  });
  it('has every size from 18 AWG up', () => {
    expect(table5.rows.map(({ awg }) => awg)).toEqual(AWG_SIZES.filter((size) => size !== '20'));
  });
});

describe('33 CFR 183.425 Table 5 note 1, engine spaces', () => {
  it.each(note1.rows)('$classC °C: $factor ($trust)', ({ classC, factor, trust }) => {
    const found = INSULATION_CLASSES_C.find((each) => each === classC) ?? 60;
    expect(NOTE1_FACTOR[found]).toBe(factor);
    expect(SOURCES[note1Source(found)].trust).toBe(trust);
    // Every factor but the last is the square root of the headroom at 50 °C, to two places.
    if (classC < 200) expect(Math.abs(factor - Math.sqrt((classC - 50) / (classC - 30)))).toBeLessThan(0.0065);
  });
});

it('Table 5 refuses a class that it has no column for', () => {
  expect(() => table5A('4', 110 as InsulationC)).toThrow(RangeError);
});

describe('IEC 60228 class 5', () => {
  it('lists the sizes printed', () => {
    expect(IEC60228_CLASS5.map(([areaMm2]) => areaMm2)).toEqual(class5.rows.map(({ areaMm2 }) => areaMm2));
  });
  it.each(class5.rows)('$areaMm2 mm²: $ohmPerKm ohm/km', ({ areaMm2, ohmPerKm }) => {
    expect(class5OhmPerM(areaMm2)).toBeCloseTo(ohmPerKm / 1000, 12);
  });
  it('refuses a size it has no row for', () => expect(() => class5OhmPerM(7)).toThrow('no row'));
});

describe('ASTM B258, printed diameters and areas', () => {
  it.each(examples.awg.diametersMm)('$awg AWG is $printed mm across', ({ awg, printed }) => {
    expect(Number(awgDiameterMm(awg as AwgSize).toPrecision(3))).toBe(printed);
  });
  it.each(examples.awg.areasMm2)('$awg AWG has $printed mm²', ({ awg, printed }) => {
    expect(Number(awgAreaMm2(awg as AwgSize).toPrecision(3))).toBe(printed);
  });
  it('steps by the 39th root of 92', () => {
    expect(awgDiameterMm('1') / awgDiameterMm('2')).toBeCloseTo(examples.awg.ratioPerGauge, 7);
    expect(awgAreaMm2('1/0') / awgAreaMm2('10')).toBeCloseTo(10.164, 3);
  });
});

describe('SAE J1127 / J1128 minimum areas', () => {
  it.each(sae.rows)('SAE $sae: $areaMm2 mm² ($trust)', ({ sae: size, areaMm2, percentOfAwg, trust }) => {
    const { areaMm2: found, source } = saeArea(size as AwgSize);
    expect(found).toBeCloseTo(areaMm2, 2);
    expect((100 * found) / awgAreaMm2(size as AwgSize)).toBeCloseTo(percentOfAwg, 0);
    expect(SOURCES[source].trust).toBe(trust);
  });
  it.each(['3', '20'] as const)('SAE %s has no row and takes the least share of the rows, marked derived', (size) => {
    const least = Math.min(...sae.rows.map(({ percentOfAwg }) => percentOfAwg));
    expect((100 * saeArea(size).areaMm2) / awgAreaMm2(size)).toBeCloseTo(least, 6);
    expect(SOURCES[saeArea(size).source].trust).toBe('derived');
  });
});

describe('heat of the metal', () => {
  it.each([
    ['copper', 'memory'],
    ['aluminium', 'memory'],
    ['cca10', 'derived'],
    ['cca15', 'derived'],
  ] as const)('%s: trusted as %s', (material, trust) => {
    const { document, ...source } = SOURCES[heatSource(material)];
    expect(document).toBe('IEC 60949');
    expect(source.trust).toBe(trust);
  });
});

describe('what damages insulation', () => {
  it.each([
    [0.1, 160, 'BS 7671 Table 43.1 / IEC 60364-4-43'],
    [5, 160, 'BS 7671 Table 43.1 / IEC 60364-4-43'],
    [5.001, 155, 'ISO 6722-1'],
    [Number.POSITIVE_INFINITY, 155, 'ISO 6722-1'],
  ])('class of 105 °C, after %f s: %i °C by %s', (seconds, limitC, document) => {
    expect(damageLimitC(105, seconds)).toBe(limitC);
    expect(SOURCES[damageLimitSource(seconds)].document).toBe(document);
  });
});

describe('ISO 8820 operating times', () => {
  it.each([...new Set(times.rows.map(({ family }) => family))])(
    '%s: the first point tells no time of opening',
    (family) => {
      // it says how long the link was tested to carry that current, 4 h or 100 h, not when it opens
      const [first, ...others] = times.rows.filter((row) => row.family === family);
      const held = fuseTimes(family);
      expect(held?.carries).toBeCloseTo((first?.percent ?? 0) / 100, 12);
      const stated = others.flatMap(({ minS }) => minS ?? []);
      expect(held?.fastest.map(({ seconds }) => seconds)).toEqual(stated);
    },
  );
});

describe('fuse-link families', () => {
  it.each(links.rows)('$family: ratings, rated voltage and breaking capacity', (printed) => {
    const family = linkFamily(printed.family as LinkFamilyId);
    expect(family.ratingsA).toEqual(printed.ratingsA);
    expect(family.ratedV).toBe(printed.ratedV);
    expect(family.breakingA).toBe(printed.breakingA);
    expect(SOURCES[family.ratingsSource].trust).toBe(printed.ratingsTrust);
  });
  it("are those held and the user's own; a figure of the user's never stands in for a published one", () => {
    const blade = linkFamily('iso8820-3-E');
    const own: LinkFamily = { ...blade, id: 'own1', breakingA: 6000 };
    expect(linkFamily('own1', [own])).toBe(own);
    expect(linkFamily('iso8820-3-E', [{ ...own, id: 'iso8820-3-E' }])).toBe(blade);
    expect(() => linkFamily('own2', [own])).toThrow(RangeError);
  });
  it('gives no breaking capacity without a source, and marks what is remembered', () => {
    for (const { id, breakingA, breakingSource, ratingsSource, ratingsA } of LINK_FAMILIES) {
      expect(breakingA === null).toBe(breakingSource === null);
      expect([...ratingsA].sort((a, b) => a - b)).toEqual(ratingsA);
      if (!id.startsWith('iso8820')) expect(SOURCES[ratingsSource].trust).toBe('memory');
    }
  });
});
