/** Plans of any shape that the one way in lets through: sensible, half drawn, shorted, ringed, absurd. */
import fc from 'fast-check';
import { newFitting, newPlan, newRun } from '../../src/plan/create.ts';
import { openPlan } from '../../src/plan/open.ts';
import type { Fitting, FittingKind, Plan, Run } from '../../src/plan/schema.ts';
import { terminalsOf } from '../../src/plan/terminals.ts';

const KINDS: readonly FittingKind[] = [
  'battery',
  'battery',
  'fuse',
  'fuse',
  'passThrough',
  'block',
  'amplifier',
  'amplifier',
  'ground',
  'ground',
];
const SIZES = ['auto', 'auto', 'auto', 'sae:20', 'sae:8', 'awg:2', 'mm2:35', 'sae:4/0'] as const;
const ZONES = ['auto', 'bay', 'wing', 'hot', 'cabin', 'cargo', 'under'] as const;
const ORIGINS = ['assumed', 'told', 'measured'] as const;

const anyPoint = fc
  .record({ xM: fc.integer({ min: -10, max: 60 }), yM: fc.integer({ min: -5, max: 25 }) })
  .map(({ xM, yM }) => ({ xM: xM / 10, yM: yM / 10 }));
const anyRating = fc.constantFrom<(number | 'auto')[]>('auto', 'auto', 0.5, 30, 100, 250, 2000);

const anyFitting = fc
  .record({
    kind: fc.constantFrom(...KINDS),
    at: anyPoint,
    zone: fc.constantFrom(...ZONES),
    rating: anyRating,
    outputs: fc.array(fc.option(anyRating), { minLength: 1, maxLength: 4 }),
    ratedW: fc.option(fc.constantFrom(1, 300, 1000, 50_000), { freq: 6 }),
    fuses: fc.option(fc.array(fc.constantFrom(0.5, 30, 500), { maxLength: 3 })),
    regulated: fc.boolean(),
    efficiency: fc.constantFrom(0.05, 0.55, 0.8, 0.99),
    strap: fc.boolean(),
    makerMaxA: fc.option(fc.constantFrom(0.5, 60, 1000)),
    origin: fc.constantFrom(...ORIGINS),
  })
  .map((draft) => (id: string): Fitting => {
    const { kind, at, zone, rating, outputs, ratedW, fuses, regulated, efficiency, strap, makerMaxA, origin } = draft;
    const fitting: Fitting = { ...newFitting(kind, { id, name: id, sheetId: 'sheet', at }), zone };
    if (fitting.kind === 'fuse') return { ...fitting, link: { ratingA: rating, family: 'auto' } };
    if (fitting.kind === 'battery') return strap ? fitting : { ...fitting, strap: null };
    if (fitting.kind === 'block') {
      const linked = outputs.map((ratingA, index) => ({
        terminal: `out${index + 1}`,
        link: ratingA === null ? null : { ratingA, family: 'auto' as const },
      }));
      return { ...fitting, outputs: linked };
    }
    if (fitting.kind !== 'amplifier') return fitting;
    return {
      ...fitting,
      ratedW: ratedW === null ? null : { value: ratedW, origin },
      efficiency: { value: efficiency, origin },
      regulated: { value: regulated, origin },
      onboardFusesA: fuses,
      externalFuseMaxA: makerMaxA,
    };
  });

const anyRun = fc.record({
  kind: fc.constantFrom<Run['kind'][]>('power', 'power', 'ground', 'remote'),
  from: fc.nat(),
  to: fc.nat(),
  bends: fc.array(anyPoint, { maxLength: 2 }),
  tapedM: fc.option(fc.constantFrom(0.001, 0.15, 1, 6, 100)),
  zone: fc.constantFrom(...ZONES),
  size: fc.constantFrom(...SIZES),
  material: fc.constantFrom<Run['conductor']['material']['value'][]>('copper', 'copper', 'cca10', 'aluminium'),
  insulationC: fc.constantFrom<Run['conductor']['insulationC']['value'][]>(60, 105, 200),
  origin: fc.constantFrom(...ORIGINS),
  sheathed: fc.boolean(),
  wrapped: fc.boolean(),
});

const anySettings = fc.record({
  ruleSet: fc.constantFrom<Plan['settings']['ruleSet'][]>('vehicle', 'boatCfr', 'boatAbyc'),
  bodyOhm: fc.constantFrom(0, 0.001, 1),
  jointOhm: fc.constantFrom(0, 0.0001, 0.1),
  linkDropV: fc.constantFrom(0, 0.075, 1),
  bayC: fc.constantFrom(-40, 80, 200),
  restV: fc.constantFrom(9, 12.6, 16),
  duty: fc.constantFrom(0.01, 1 / 3, 1),
  engineAlwaysRunning: fc.boolean(),
  stock: fc.constantFrom<string[][]>(
    ['sae:8', 'sae:4', 'sae:2', 'sae:1/0', 'sae:4/0'],
    ['mm2:16', 'mm2:50'],
    ['sae:20'],
  ),
});

/** A plan of up to ten fittings and fourteen runs between any of their terminals. */
export const anyPlan: fc.Arbitrary<Plan> = fc
  .record({
    fittings: fc.array(anyFitting, { maxLength: 10 }),
    runs: fc.array(anyRun, { maxLength: 14 }),
    settings: anySettings,
    isBench: fc.boolean(),
  })
  .map(({ fittings, runs, settings, isBench }) => {
    const outline = isBench
      ? ({ kind: 'bench', lengthM: 2.4, widthM: 0.8 } as const)
      : ({ kind: 'panelVan', lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 } as const);
    const base = newPlan({ id: 'plan', name: '', sheetId: 'sheet', outline, mirrored: false });
    const placed = fittings.map((make, index) => make(`f${index}`));
    const terminals = placed.flatMap((fitting) =>
      terminalsOf(fitting).map((terminal) => ({ fittingId: fitting.id, terminal })),
    );
    const drawn = runs.flatMap(
      ({ kind, from, to, bends, size, material, insulationC, origin, wrapped, ...patch }, index): Run[] => {
        const [start, end] = [terminals[from % terminals.length], terminals[to % terminals.length]];
        if (start === undefined || end === undefined || start === end) return [];
        const run = newRun({ id: `r${index}`, name: '', kind, sheetId: 'sheet', from: start, to: end, bends });
        const conductor = { size, material: { value: material, origin }, insulationC: { value: insulationC, origin } };
        return [{ ...run, ...patch, inLoom: wrapped, conductor }];
      },
    );
    const told = (value: number, origin: 'assumed' | 'told' = 'assumed') => ({ value, origin });
    const plan: Plan = {
      ...base,
      settings: {
        ...base.settings,
        ruleSet: settings.ruleSet,
        engineAlwaysRunning: settings.engineAlwaysRunning,
        stock: settings.stock,
        bodyOhm: told(settings.bodyOhm),
        jointOhm: told(settings.jointOhm),
        linkDropV: told(settings.linkDropV),
        bayC: told(settings.bayC),
        restV: told(settings.restV),
        duty: told(settings.duty),
      },
      fittings: placed,
      runs: drawn,
    };
    const opened = openPlan(JSON.stringify(plan));
    if (!opened.ok) throw new Error(JSON.stringify(opened.reason));
    return opened.plan;
  });
