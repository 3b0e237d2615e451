import type { AmplifierAnswer, Assessment, Figure, FuseAnswer, Place, RunAnswer, SourceAnswer } from '../answer.ts';
import { dropHangsOnDrawn } from '../drawnDrop.ts';
import { type Facts, fullOf, fullOfLink } from '../facts.ts';
import { conductorCeilingA, makerCeilingA } from '../ratings.ts';
import { firstLinks } from '../unprotected.ts';
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

/** The feed: the live cable that carries most, the longest of those that carry as much, and all of its lot. */
function feedFigure(facts: Facts, { runs }: Answers): Figure {
  const { model, choice } = facts;
  const { cables } = model.circuit;
  const isLive = (index: number): boolean => model.sides.live[cables[index]?.a ?? -1] === true;
  const live = [...cables.keys()].filter(isLive);
  const carried = (index: number): number => fullOf(facts, index) ?? 0;
  const most = Math.max(0, ...live.map(carried));
  const heaviest = live.filter((index) => carried(index) >= most * (1 - 1e-6));
  const feed = greatestBy(heaviest, (index) => cables[index]?.length.lengthM ?? 0);
  const run = runs.find(({ runId }) => runId === cables[feed ?? -1]?.run.id);
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

/**
 * The main fuse: of the devices that sources meet first, the one that carries most. Where sources meet branches first
 * there is none, and no branch is named in its place.
 */
function mainFuseFigure(facts: Facts, { fuses }: Answers): Figure {
  const first = [...new Set(facts.unprotected.flatMap(firstLinks))].sort((one, other) => one - other);
  const main = greatestBy(first, (link) => fullOfLink(facts, link) ?? 0);
  const fuse = fuses[main ?? -1];
  if (main === undefined || fuse === undefined) return nothing('A');
  const places: Place[] = [{ kind: 'fitting', id: fuse.fittingId }];
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
