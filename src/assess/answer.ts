/**
 * What an assessment says: ids, figures with units in their names, parameters. No sentences; src/words makes those.
 * Everything is plain JSON: no NaN, no Infinity, null where there is no figure.
 */
import type { GaugeId } from '../calc/conductor/gauge.ts';
import type { FaultVerdictId, Harm } from '../calc/fault/point.ts';
import type { SourceId } from '../calc/sources.ts';
import type { Why } from '../calc/why.ts';
import type { LinkFamily, Zone } from '../plan/schema.ts';

export type Severity = 'stop' | 'fix' | 'note';

/** Rules of findings; each is one file in rules/. */
export type RuleId =
  | 'unprotected-length'
  | 'no-device'
  | 'fuse-over-conductor'
  | 'step-down'
  | 'fuse-under-load'
  | 'fuse-over-maker'
  | 'no-fuse-qualifies'
  | 'rating-not-held'
  | 'link-under-voltage'
  | 'holder-too-hot'
  | 'fuse-in-return'
  | 'no-size-in-stock'
  | 'drop-cables'
  | 'drop-whole'
  | 'below-cut-out'
  | 'cannot-carry'
  | 'ampacity'
  | 'heating'
  | 'ground-missing'
  | 'ground-smaller'
  | 'not-fed'
  | 'loose-end'
  | 'no-rating'
  | 'ratings-differ'
  | 'load-unknown'
  | 'ask-external-fuse'
  | 'unmarked-cable'
  | 'firewall-no-grommet'
  | 'pass-through-shared'
  | 'cable-changes'
  | 'source-short'
  | 'series-batteries'
  | 'positive-earth'
  | 'small-separate-run'
  | 'short-not-cleared'
  | 'short-uncertain'
  | 'back-fed'
  | 'breaking-capacity'
  | 'selectivity'
  | 'overload-heating'
  | 'charging-deficit'
  | 'capacitor-precharge'
  | 'capacitor-unfused'
  | 'joint-heat'
  | 'contact-overloaded'
  | 'takeoff-overloaded'
  | 'switch-open'
  | 'grommet-too-small'
  | 'bend-too-tight'
  | 'cable-over-terminal'
  | 'clad-as-copper'
  | 'size-not-proven'
  | 'parallel-one-fuse'
  | 'ground-on-sensor'
  | 'strap-smaller'
  | 'supply-wiring'
  | 'reducer-length'
  | 'tape-doubtful';

/** What cannot be checked with what the plan holds. */
export type UncheckedId = 'charging';

export type Place = { kind: 'run' | 'fitting'; id: string };

export type Param = number | string | null | readonly string[];

export interface Finding {
  /** Stable across re-assessment: rule plus place. */
  id: string;
  rule: RuleId;
  severity: Severity;
  /** First place is where to look; the rest take part. */
  places: readonly Place[];
  /** Figures for the sentence; unit in the name. Names of fittings and runs are looked up by id in the plan. */
  params: Readonly<Record<string, Param>>;
  source: SourceId;
  /** A drawn length decides it. */
  provisional: boolean;
  /** Assumptions (paths of settings, or '<fittingId>.<field>') whose halving or doubling flips it. */
  decidedBy: readonly string[];
  /** It does not hold as assumed, and would with one of those values halved or doubled: a note of what is near. */
  looming?: true;
  why: string | null;
}

/** One thing that the plan does not tell; shown under the headline. */
export interface NotTold {
  kind: 'lengthsNotTaped' | 'surroundingsNotMarked' | 'batteryAssumed' | 'cableUnmarked' | 'loadUnknown';
  ids: readonly string[];
}

export interface LengthAnswer {
  lengthM: number;
  origin: 'drawn' | 'taped';
  /** Uncertainty either way: 0 when taped, else the larger of 10 % and 100 mm. */
  plusMinusM: number;
}

export interface RunAnswer {
  runId: string;
  length: LengthAnswer;
  /** null: no cable in stock does it, or a remote lead. */
  gauge: GaugeId | null;
  /** Chosen by the answer, or fixed by hand. */
  chosen: boolean;
  /** What binds the choice: the criterion that one size smaller would break. */
  governs: 'drop' | 'fuse' | 'ampacity' | 'heating' | 'ground' | 'smallest' | 'fixed' | null;
  /** The smallest size of all, stock or not, that would do; null when none. */
  smallest: GaugeId | null;
  areaMm2: number | null;
  /** Full current, the worse of the two source states, A. */
  fullA: number | null;
  heatingA: number | null;
  ampacityA: number | null;
  conductorC: number | null;
  /** Along this run alone at full current. */
  dropV: number | null;
  /** Of 12 V. */
  dropPercent: number | null;
  /** The largest current that the fuses let into this run, A; null = nothing limits it, or no fuse is rated yet. */
  limitA: number | null;
  /** Length of this run that no device protects, from any source. */
  unprotectedM: number;
  whyLength: string;
  whySize: string | null;
  whyDrop: string | null;
  whyAmpacity: string | null;
}

/** A fuse: a fitting, or one output of a block. */
export interface FuseAnswer {
  fittingId: string;
  /** The block output it stands in, else null. */
  terminal: string | null;
  ratingA: number | null;
  family: LinkFamily | null;
  chosen: boolean;
  neededA: number | null;
  /** The smallest ampacity it protects. */
  ceilingA: number | null;
  fullA: number | null;
  heatingA: number | null;
  why: string | null;
}

export interface AmplifierAnswer {
  fittingId: string;
  fullA: number | null;
  heatingA: number | null;
  /** At its own terminals with the sources' own resistance: engine off, or at idle where an alternator is drawn, the worse. */
  terminalV: number | null;
  /** Cables only, feed and return; the 3 % rule's figure. */
  dropCablesV: number | null;
  dropCablesPercent: number | null;
  dropFeedV: number | null;
  dropReturnV: number | null;
  /** Whole way post to terminal, joints, links and body included. */
  dropWholeV: number | null;
  dropWholePercent: number | null;
  whyCurrent: string | null;
  whyTerminal: string | null;
  whyDrop: string | null;
}

/** One way from a source, along the conductor, to its first device or to where it ends without one. */
export interface SourceAnswer {
  fittingId: string;
  unprotectedM: number;
  plusMinusM: number;
  /** Runs along the greatest unprotected way, in order. */
  runIds: readonly string[];
  /** All live cable of this source that no device protects. */
  totalUnprotectedM: number;
  /** Where the greatest way ends: a device, or nothing at all. */
  endsAt: { fittingId: string; terminal: string | null } | null;
  why: string;
}

/** A device that sees a short on a cable, with its own current at the lowest and the highest. */
interface ShortFuse {
  fittingId: string;
  /** The block output it stands in, else null. */
  terminal: string | null;
  lowestA: number;
  highestA: number;
}

/** A dead short to the body somewhere on a live cable; null stands for never, or for no figure. */
export interface ShortAnswer {
  runId: string;
  /** The body; the negative post where no battery is joined to the body. */
  to: 'body' | 'negative';
  /** Prospective current, A: cold and aged batteries, hot conductor, at the worst place; warm ones, conductor at 20 degC, at the best. */
  lowestA: number;
  highestA: number;
  bySource: readonly { fittingId: string; lowestA: number; highestA: number }[];
  fuses: readonly ShortFuse[];
  /** By the slowest line of the standard, at the worst current of the whole range. */
  verdict: FaultVerdictId;
  harm: Harm;
  /** Ahead of the first device from some source: the unprotected length's matter. */
  unprotected: boolean;
  /** No time limits are held for the device that decides. */
  withoutLimits: boolean;
  /** A time used lies beyond the last point that the standard gives. */
  extrapolated: boolean;
  /** The worst current in the conductor, A; the device that clears it, or would have to, and within which times, s. */
  worstA: number | null;
  clearedBy: { fittingId: string; terminal: string | null } | null;
  fastestS: number | null;
  slowestS: number | null;
  /** The insulation is damaged then, s. */
  damageS: number | null;
  /** When it is cleared, or what it settles at, degC; the limit it is held against then. */
  conductorC: number | null;
  limitC: number | null;
  melts: boolean;
  /** What flows on once every device that must open has opened, A, and the sources that still feed it. */
  residualA: number;
  stillFedBy: readonly string[];
  /** The worst partial short that no fuse sees; null where nothing protects the cable or no fuse is rated. */
  partial: {
    currentA: number;
    faultOhm: number;
    /** Heat at the fault, W. */
    faultW: number;
    /** What the conductor settles at, degC; null: it finds no temperature to settle at. */
    settledC: number | null;
    limitC: number;
    /** Until the insulation is damaged, s; null: never. */
    damageS: number | null;
  } | null;
  whyHighest: string;
  whyLowest: string;
  whySlowest: string | null;
  whyConductor: string | null;
}

/** What music asks of batteries and alternators; null where it cannot be told. */
export interface SupplyAnswer {
  /** In the mean, A: with the engine off, and at the charging voltage. */
  amplifiers: readonly {
    fittingId: string;
    meanOffA: number | null;
    meanRunningA: number | null;
    whyMeanOff: string | null;
    whyMeanRunning: string | null;
  }[];
  /** All loads together, the vehicle's own left out. */
  meanOffA: number | null;
  meanRunningA: number | null;
  /** Empty where none is drawn: then nothing is told of charging. */
  alternators: readonly {
    fittingId: string;
    /** Delivered with everything at full output, A, and the most it brings hot at that speed. */
    idleOutA: number | null;
    cruiseOutA: number | null;
    idleHotA: number | null;
    cruiseHotA: number | null;
    /** At its limit at full output: the batteries carry the rest, and the posts fall. */
    saturatedIdle: boolean | null;
    saturatedCruise: boolean | null;
    whyIdleHot: string;
    whyCruiseHot: string;
  }[];
  /** What the batteries must add in the mean, the vehicle's own draw counted, A. */
  deficitIdleA: number | null;
  deficitCruiseA: number | null;
  whyDeficitIdle: string | null;
  whyDeficitCruise: string | null;
  /** Batteries that feed as one with the engine off, and how long they do. */
  groups: readonly {
    fittingIds: readonly string[];
    meanA: number;
    minutesOff: number | null;
    /** In seconds. */
    whyPlay: string | null;
  }[];
  /** Lowest voltage between any battery's posts with everything at full output, V. */
  postsV: { off: number | null; idle: number | null; cruise: number | null };
}

export interface Figure {
  /** null = no figure (nothing drawn, or 'no cable in stock does it'). */
  value: number | string | null;
  unit: 'gauge' | 'A' | 'V' | 'm';
  places: readonly Place[];
  /** Id that src/words turns into 'governed by ...'. */
  governs: string | null;
  /** A drawn length or an assumption decides it. */
  provisional: boolean;
  why: string | null;
}

export interface AssumptionUse {
  /** 'settings.<field>' or '<fittingId>.<field>' or '<runId>.<field>'. */
  path: string;
  value: number | string | boolean;
  origin: 'assumed' | 'told' | 'measured';
  source: SourceId | null;
  note: string | null;
}

export interface Assessment {
  planId: string;
  ruleSet: 'vehicle' | 'boatCfr' | 'boatAbyc';
  headline: { kind: 'stop' | 'fix' | 'provisional' | 'nothing' | 'empty'; count: number };
  notTold: readonly NotTold[];
  figures: { feed: Figure; mainFuse: Figure; worstDrop: Figure; unprotected: Figure };
  findings: readonly Finding[];
  runs: readonly RunAnswer[];
  fuses: readonly FuseAnswer[];
  amplifiers: readonly AmplifierAnswer[];
  sources: readonly SourceAnswer[];
  supply: SupplyAnswer;
  /** A dead short on every live cable of a decided size. */
  shorts: readonly ShortAnswer[];
  /** State that sizes: the worse of the two. */
  sizingState: 'rest' | 'charging';
  /** The gauges are the least copper that qualifies, by exhaustive or exact search. */
  leastCopperProven: boolean;
  assumptions: readonly AssumptionUse[];
  rulesChecked: readonly RuleId[];
  rulesNotChecked: readonly { rule: UncheckedId; why: 'noAlternator' }[];
  /** Every figure's derivation, by id. */
  whys: Readonly<Record<string, Why>>;
  /** The strictest set's answer on the unprotected length, always shown. */
  strictest: { ruleSet: 'boatCfr'; severity: Severity | null; limitM: number };
  zones: Readonly<Record<string, Exclude<Zone, 'auto'>>>;
}
