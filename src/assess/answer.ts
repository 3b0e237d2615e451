/**
 * What an assessment says: ids, figures with units in their names, parameters. No sentences; src/words makes those.
 * Everything is plain JSON: no NaN, no Infinity, null where there is no figure.
 */
import type { GaugeId } from '../calc/conductor/gauge.ts';
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
  | 'small-separate-run';

/** What later work adds; listed as not checked until then. */
export type UncheckedId =
  | 'short-to-body'
  | 'breaking-capacity'
  | 'selectivity'
  | 'charging'
  | 'joint-heat'
  | 'overload-heating';

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
  /** At its own terminals, worse state. */
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
  /** State that sizes: the worse of the two. */
  sizingState: 'rest' | 'charging';
  /** The gauges are the least copper that qualifies, by exhaustive or exact search. */
  leastCopperProven: boolean;
  assumptions: readonly AssumptionUse[];
  rulesChecked: readonly RuleId[];
  rulesNotChecked: readonly { rule: UncheckedId; why: string }[];
  /** Every figure's derivation, by id. */
  whys: Readonly<Record<string, Why>>;
  /** The strictest set's answer on the unprotected length, always shown. */
  strictest: { ruleSet: 'boatCfr'; severity: Severity | null; limitM: number };
  zones: Readonly<Record<string, Exclude<Zone, 'auto'>>>;
}
