/** Plans of any shape that the one way in lets through: sensible, half drawn, shorted, ringed, absurd. */
import fc from 'fast-check';
import { defaultSettings, newPlan, newRun } from '../../src/plan/create.ts';
import { isToldFamily, linksOf } from '../../src/plan/links.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import {
  conductorSchema,
  type Fitting,
  type FittingKind,
  fittingSchema,
  outlineSchema,
  type Plan,
  type Point,
  planSchema,
  type Run,
  runSchema,
  type Settings,
  settingsSchema,
  type TerminalRef,
} from '../../src/plan/schema.ts';
import { terminalsOf } from '../../src/plan/terminals.ts';
import { anyValue, varied } from './anyValue.ts';
import { wiringOf } from './anyWiring.ts';

const KINDS = fittingSchema.options.map(({ entries }) => entries.kind.literal);
/** Of what a plan is mostly made, beside a third of any kind. */
const COMMON: readonly FittingKind[] = ['battery', 'fuse', 'amplifier', 'amplifier', 'ground', 'ground', 'block'];
const SHEETS = ['sheet', 'sheet', 'sheet', 'sheet', 'other'] as const;

const otherThan = (sheetId: string): string => (sheetId === 'sheet' ? 'other' : 'sheet');

const anyPoint: fc.Arbitrary<Point> = fc
  .record({ xM: fc.integer({ min: -10, max: 60 }), yM: fc.integer({ min: -5, max: 25 }) })
  .map(({ xM, yM }) => ({ xM: xM / 10, yM: yM / 10 }));

const anyKind = fc.oneof(...COMMON.map((kind) => fc.constant(kind)), ...[1, 2, 3].map(() => fc.constantFrom(...KINDS)));

/** Makes a fitting of that id: as it comes new, an amplifier with a rating, some fields at any value. */
const anyFitting: fc.Arbitrary<(id: string) => Fitting> = fc
  .record({ kind: anyKind, at: anyPoint, sheetId: fc.constantFrom(...SHEETS) })
  .chain(({ kind, ...place }) => {
    const entries = fittingSchema.options.find((option) => option.entries.kind.literal === kind)?.entries ?? {};
    const fitting: Fitting = newFitting(kind, { id: '', name: '', ...place });
    const ratedW = { value: 600, origin: 'told' as const };
    const { id: _, sheetId, at, ...usual } = fitting.kind === 'amplifier' ? { ...fitting, ratedW } : fitting;
    return varied(usual, entries, 15).map((fields) => (id: string): Fitting => {
      const made = { ...fields, id, sheetId, at } as Fitting;
      if (made.kind === 'continuation') return { ...made, other: { ...made.other, sheetId: otherThan(sheetId) } };
      if (made.kind !== 'block') return made;
      return { ...made, outputs: made.outputs.map(({ link }, index) => ({ terminal: `out${index + 1}`, link })) };
    });
  });

/** Makes a run of that id and those ends. */
type MakeRun = (ends: Pick<Run, 'id' | 'sheetId' | 'from' | 'to'>) => Run;

interface DraftRun {
  /** Which terminals, whatever their number by then. */
  readonly from: number;
  readonly to: number;
  readonly make: MakeRun;
}

const anyRun: fc.Arbitrary<DraftRun> = fc
  .record({
    kind: fc.oneof(
      fc.constantFrom<Run['kind'][]>('power', 'power', 'ground'),
      fc.constantFrom(...runSchema.entries.kind.options),
    ),
    bends: fc.array(anyPoint, { maxLength: 2 }),
    tapedM: fc.constantFrom(null, 0.15, 1, 6),
  })
  .chain(({ kind, bends, tapedM }) => {
    const nowhere = { fittingId: '', terminal: '' };
    const run = newRun({ id: '', name: '', kind, sheetId: '', from: nowhere, to: nowhere, bends });
    const { id: _, sheetId: _sheet, from: _from, to: _to, conductor, ...usual } = { ...run, tapedM };
    return fc
      .record({
        from: fc.nat(),
        to: fc.nat(),
        fields: varied(usual, runSchema.entries, 25),
        conductor: varied(conductor, conductorSchema.entries, 8),
      })
      .map(({ from, to, fields, conductor: made }) => ({
        ...{ from, to },
        make: (ends) => ({ ...run, ...fields, conductor: made, ...ends }),
      }));
  });

const anyOwnLinks = anyValue(settingsSchema.entries.ownLinks).map((own) => own as Settings['ownLinks']);

/** Settings as they come new, a few at any value; a family of links is told once, and none is held that is not told. */
const anySettings: fc.Arbitrary<Settings> = fc
  .tuple(varied(defaultSettings(), settingsSchema.entries, 40), fc.option(anyOwnLinks, { freq: 2, nil: [] }))
  .map(([settings, told]) => {
    const ownLinks = told.filter(({ family }, index) => told.findIndex((own) => own.family === family) === index);
    const held = settings.linkFamilies.filter((family) => isToldFamily({ ownLinks }, family));
    return { ...settings, ownLinks, linkFamilies: held.length > 0 ? held : defaultSettings().linkFamilies };
  });

const anyOutline = fc.oneof(
  fc.constantFrom(DEFAULT_OUTLINES.panelVan, DEFAULT_OUTLINES.bench),
  anyValue(outlineSchema).map((outline) => outline as Plan['sheets'][number]['outline']),
);

const anyAreas = fc.array(
  anyValue(planSchema.entries.areas.item).map((area) => area as Plan['areas'][number]),
  { maxLength: 2 },
);

/** Links that name an own family which this plan does not tell are of the first that it tells, or of any. */
function withToldFamilies(fitting: Fitting, settings: Settings): Fitting {
  const isTold = linksOf(fitting).every(({ link }) => isToldFamily(settings, link.family));
  if (isTold) return fitting;
  const told = settings.ownLinks[0]?.family ?? 'auto';
  const text = JSON.stringify(fitting, (key, value: unknown) => (key === 'family' ? told : value));
  return JSON.parse(text);
}

/** What a wired plan begins with: a battery and a ground. */
const usualStart = (): Fitting[] =>
  (['battery', 'ground'] as const).map((kind) =>
    newFitting(kind, { id: kind, name: '', sheetId: 'sheet', at: { xM: 0.5, yM: 1 } }),
  );

const sheetOf = (fittings: readonly Fitting[], { fittingId }: TerminalRef): string =>
  fittings.find(({ id }) => id === fittingId)?.sheetId ?? '';

/** The fittings of a plan, and what its runs are made from. */
interface Parts {
  readonly fittings: readonly Fitting[];
  readonly runs: readonly DraftRun[];
}

/** Runs between any two terminals of one sheet. */
function strewn({ fittings, runs }: Parts): Run[] {
  const terminals = fittings.flatMap((fitting) =>
    terminalsOf(fitting).flatMap((terminal) =>
      (fitting.kind === 'continuation' ? [fitting.sheetId, fitting.other.sheetId] : [fitting.sheetId]).map(
        (sheetId) => ({
          sheetId,
          ref: { fittingId: fitting.id, terminal },
        }),
      ),
    ),
  );
  return runs.flatMap(({ from, to, make }, index): Run[] => {
    const start = terminals[from % terminals.length];
    const others = terminals.filter(
      (end) =>
        end.sheetId === start?.sheetId &&
        (end.ref.fittingId !== start.ref.fittingId || end.ref.terminal !== start.ref.terminal),
    );
    const end = others[to % others.length];
    if (start === undefined || end === undefined) return [];
    return [make({ id: `s${index}`, sheetId: start.sheetId, from: start.ref, to: end.ref })];
  });
}

/** Feeds and returns as someone would lay them; where there are more of them than `runs`, the last are usual ones. */
function laid({ fittings, runs }: Parts): Run[] {
  return wiringOf(fittings, (index) => runs[index]?.to ?? 0).map(({ isReturn, from, to }, index) => {
    const sheetId = sheetOf(fittings, from);
    const usual = newRun({ id: `l${index}`, name: '', kind: 'power', sheetId, from, to, bends: [] });
    const run = runs[index]?.make({ id: usual.id, sheetId, from, to }) ?? usual;
    return { ...run, kind: isReturn ? 'ground' : run.kind === 'factory' ? 'factory' : 'power' };
  });
}

const someRuns = (maxLength: number) => fc.array(anyRun, { maxLength, size: 'max' });
const noRuns = fc.constant<Parts['runs']>([]);

/** A plan of up to fourteen fittings on two sheets: laid as someone would, at times with a few runs more; or all at random. */
export const anyPlan: fc.Arbitrary<Plan> = fc
  .record({
    fittings: fc.array(anyFitting, { maxLength: 12, size: 'max' }),
    lie: fc.oneof(
      fc.record({ isLaid: fc.constant(false), of: noRuns, more: someRuns(16) }),
      fc.record({ isLaid: fc.constant(true), of: someRuns(24), more: noRuns }),
      fc.record({ isLaid: fc.constant(true), of: someRuns(24), more: someRuns(3) }),
    ),
    settings: anySettings,
    outline: anyOutline,
    areas: anyAreas,
    mirrored: fc.boolean(),
  })
  .map(({ fittings: makers, lie: { isLaid, of, more }, settings, outline, areas, mirrored }) => {
    const base = newPlan({ id: 'plan', name: '', sheetId: 'sheet', outline, mirrored });
    const made = makers.map((make, index) => withToldFamilies(make(`f${index}`), settings));
    const fittings = isLaid ? [...usualStart(), ...made] : made;
    const plan: Plan = {
      ...base,
      settings,
      sheets: base.sheets.flatMap((sheet) => [sheet, { ...sheet, id: 'other' }]),
      fittings,
      runs: [...(isLaid ? laid({ fittings, runs: of }) : []), ...strewn({ fittings, runs: more })],
      areas: areas.map((area, index) => ({ ...area, id: `a${index}`, sheetId: 'sheet' })),
    };
    const opened = openPlan(JSON.stringify(plan));
    if (!opened.ok) throw new Error(JSON.stringify(opened.reason));
    return opened.plan;
  });
