import type { AmplifierAnswer, Assessment, Figure, FuseAnswer, Place, RunAnswer, SourceAnswer } from '../answer.ts';
import { dropHangsOnDrawn } from '../drawnDrop.ts';
import { type Facts, fullOf, fullOfLink } from '../facts.ts';
import { conductorCeilingA, makerCeilingA } from '../ratings.ts';
import type { UnprotectedWay } from '../unprotected.ts';
import { worstWay } from '../unprotectedVerdict.ts';

interface Answers {
  readonly runs: readonly RunAnswer[];
  readonly fuses: readonly FuseAnswer[];
  readonly amplifiers: readonly AmplifierAnswer[];
  readonly sources: readonly SourceAnswer[];
}

const nothing = (unit: Figure['unit']): Figure => ({
  value: null,
  unit,
  places: [],
  governs: null,
  provisional: false,
  why: null,
});

const greatestBy = <T>(list: readonly T[], figure: (item: T) => number): T | undefined =>
  list.reduce<T | undefined>(
    (best, item) => (best === undefined || figure(item) > figure(best) ? item : best),
    undefined,
  );

/** Two cables carry as much as one another within this share: which of two batteries feeds alone makes a hair's difference. */
const AS_MUCH = 0.05;

/** The feed: of the live cables that carry most the thickest, the longest of those as thick, and all of its lot. */
function feedFigure(facts: Facts, { runs }: Answers): Figure {
  const { model, choice } = facts;
  const { cables } = model.circuit;
  const isLive = (index: number): boolean => model.sides.live[cables[index]?.a ?? -1] === true;
  const live = [...cables.keys()].filter(isLive);
  const carried = (index: number): number => fullOf(facts, index) ?? 0;
  const most = Math.max(0, ...live.map(carried));
  const heaviest = live.filter((index) => carried(index) >= most * (1 - AS_MUCH));
  const runOf = (index: number | undefined) => runs.find(({ runId }) => runId === cables[index ?? -1]?.run.id);
  const areaOf = (index: number): number => runOf(index)?.areaMm2 ?? 0;
  const thickest = Math.max(0, ...heaviest.map(areaOf));
  const feed = greatestBy(
    heaviest.filter((index) => areaOf(index) === thickest),
    (index) => cables[index]?.length.lengthM ?? 0,
  );
  const run = runOf(feed);
  if (feed === undefined || run === undefined) return nothing('gauge');
  const lot = choice.lots.find((candidate) => candidate.cables.includes(feed))?.cables ?? [feed];
  const places = [feed, ...lot.filter((index) => index !== feed && isLive(index))].flatMap((index): Place[] => {
    const id = cables[index]?.run.id;
    return id === undefined ? [] : [{ kind: 'run', id }];
  });
  return {
    value: run.gauge,
    unit: 'gauge',
    places,
    governs: run.governs,
    provisional:
      run.governs === 'drop' && (model.ways.behind[feed] ?? []).some((load) => dropHangsOnDrawn(facts, load)),
    why: run.whySize,
  };
}

function governsRating(facts: Facts, link: number, { chosen, ratingA, neededA, fullA }: FuseAnswer): string | null {
  if (!chosen) return 'fixed';
  if (ratingA === null || neededA === null || fullA === null) return null;
  if (ratingA < neededA)
    return makerCeilingA(facts.model, link) < conductorCeilingA(facts.model, link) ? 'maker' : 'conductor';
  const behind = facts.model.ways.behind[facts.model.circuit.cables.length + link] ?? [];
  const bySum = behind.length > 0 && behind.every((load) => facts.model.demands[load]?.law === 'constant');
  if (neededA > fullA) return 'heatingCurrent';
  return bySum ? 'sumOnboard' : 'fullCurrent';
}

/** Whether it is one output of several on a block: a branch, whatever lies ahead of it. */
function isBranch({ model }: Facts, link: number): boolean {
  const device = model.circuit.links[link];
  return device?.fitting.kind === 'block' && device.fitting.outputs.length > 1;
}

/** What the heaviest cable of a way carries, and what its end does. */
function carriedAlong(facts: Facts, { cables, end }: UnprotectedWay): { mostA: number; endA: number } {
  const along = cables.map((cable) => fullOf(facts, cable) ?? 0);
  const endA = end.kind === 'device' ? (fullOfLink(facts, end.link) ?? 0) : (along.at(-1) ?? 0);
  return { mostA: Math.max(endA, ...along), endA };
}

/** Whether a source's way leads to an amplifier past no device, and carries more than the main fuse does. */
function isBareFeed(facts: Facts, mainA: number): boolean {
  const bare = facts.unprotected.flatMap(({ ways }) => ways.filter(({ end }) => end.kind === 'load'));
  return bare.some((way) => carriedAlong(facts, way).endA > mainA);
}

/** The device that carries most of those that end the heaviest ways of the sources. */
function mainLink(facts: Facts): number | undefined {
  const ways = facts.unprotected.flatMap((unprotected) => unprotected.ways);
  const heads = ways.flatMap((way) =>
    way.end.kind === 'device' ? [{ link: way.end.link, ...carriedAlong(facts, way) }] : [],
  );
  const most = Math.max(0, ...heads.map(({ mostA }) => mostA));
  const heaviest = heads.filter(({ mostA }) => mostA >= most * (1 - AS_MUCH));
  const inOrder = heaviest.toSorted((one, other) => one.link - other.link);
  return greatestBy(inOrder, ({ endA }) => endA)?.link;
}

/**
 * The main fuse: of the devices that sources meet first, the one on the way that carries most. Where that way meets
 * branches first, or no device at all, there is none, and neither a branch nor a lighter feed's is named in its place.
 */
function mainFuseFigure(facts: Facts, { fuses }: Answers): Figure {
  const main = mainLink(facts);
  const fuse = fuses[main ?? -1];
  if (main === undefined || fuse === undefined) return nothing('A');
  const places: Place[] = [{ kind: 'fitting', id: fuse.fittingId }];
  if (isBareFeed(facts, fullOfLink(facts, main) ?? 0)) return { ...nothing('A'), governs: 'bareFeed' };
  if (isBranch(facts, main)) return { ...nothing('A'), places, governs: 'onlyBranches' };
  return {
    value: fuse.ratingA,
    unit: 'A',
    places,
    governs: governsRating(facts, main, fuse),
    provisional: false,
    why: fuse.why,
  };
}

function worstDropFigure(facts: Facts, { amplifiers }: Answers): Figure {
  const worst = greatestBy(
    amplifiers.filter(({ dropCablesV }) => dropCablesV !== null),
    ({ dropCablesV }) => dropCablesV ?? 0,
  );
  if (worst === undefined) return nothing('V');
  return {
    value: worst.dropCablesV,
    unit: 'V',
    places: [{ kind: 'fitting', id: worst.fittingId }],
    governs: 'cables',
    provisional: dropHangsOnDrawn(facts, amplifiers.indexOf(worst)),
    why: worst.whyDrop,
  };
}

function unprotectedFigure(facts: Facts, { sources }: Answers): Figure {
  const { model } = facts;
  const worst = greatestBy(sources, ({ unprotectedM }) => unprotectedM);
  const ways = worst === undefined ? undefined : facts.unprotected[sources.indexOf(worst)];
  if (worst === undefined || ways === undefined || worst.runIds.length === 0) return nothing('m');
  return {
    value: worst.unprotectedM,
    unit: 'm',
    places: [
      ...worst.runIds.map((id): Place => ({ kind: 'run', id })),
      ...(worst.endsAt === null ? [] : [{ kind: 'fitting' as const, id: worst.endsAt.fittingId }]),
    ],
    governs: worst.plusMinusM > 0 ? 'drawn' : 'taped',
    provisional: worstWay(model.settings.ruleSet, ways.ways)?.provisional ?? false,
    why: worst.why,
  };
}

/** The four figures at the head of the answer. */
export function tellFigures(facts: Facts, answers: Answers): Assessment['figures'] {
  return {
    feed: feedFigure(facts, answers),
    mainFuse: mainFuseFigure(facts, answers),
    worstDrop: worstDropFigure(facts, answers),
    unprotected: unprotectedFigure(facts, answers),
  };
}
