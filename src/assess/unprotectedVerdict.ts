/** The rule sets on the unprotected length: which limit a way breaks, and how bad that is. */
import type { SourceId } from '../calc/sources.ts';
import type { Settings } from '../plan/schema.ts';
import type { Assessment, Severity } from './answer.ts';
import type { UnprotectedWay } from './unprotected.ts';

type RuleSet = Settings['ruleSet'];

interface Limit {
  /** Broken beyond this, m. */
  readonly limitM: number;
  readonly severity: Severity;
  readonly source: SourceId;
}

const BARE_NOTE_M = 0.178;
const BARE_STOP_M = 0.45;
const SHEATHED_M = 1.016;
const SHEATHED_AT_POST_M = 1.83;

/** Limits of each set, ascending. `reason`: the user wrote why nearer is impossible. */
function limitsFor(ruleSet: RuleSet, sheathed: boolean, reason: boolean): readonly Limit[] {
  const limit = (limitM: number, severity: Severity, source: SourceId): Limit => ({ limitM, severity, source });
  if (ruleSet === 'vehicle') {
    if (!sheathed) return [limit(BARE_NOTE_M, 'note', 'cfr183455'), limit(BARE_STOP_M, 'stop', 'nec552')];
    return [
      limit(BARE_NOTE_M, 'note', 'cfr183455'),
      limit(BARE_STOP_M, reason ? 'note' : 'fix', 'nec552'),
      limit(SHEATHED_M, 'stop', 'cfr183455'),
    ];
  }
  // at the source itself, else within 7 in, else sheathed within 40 in; each step only where the one before cannot be
  if (ruleSet === 'boatCfr') {
    if (!sheathed) return [limit(0, 'note', 'cfr183455'), limit(BARE_NOTE_M, 'stop', 'cfr183455')];
    return [
      limit(0, 'note', 'cfr183455'),
      limit(BARE_NOTE_M, reason ? 'note' : 'fix', 'cfr183455'),
      limit(SHEATHED_M, 'stop', 'cfr183455'),
    ];
  }
  if (!sheathed) return [limit(BARE_NOTE_M, 'stop', 'abycE11')];
  return [limit(BARE_NOTE_M, 'note', 'abycE11'), limit(SHEATHED_AT_POST_M, 'stop', 'abycE11')];
}

interface LengthVerdict {
  readonly severity: Severity | null;
  /** The limit it breaks, or may break; the first of the set when it breaks none. */
  readonly limitM: number;
  readonly source: SourceId;
  /** A limit lies inside the uncertainty: the verdict is the worse one until it is taped. */
  readonly provisional: boolean;
}

const RANK: Readonly<Record<Severity, number>> = { note: 1, fix: 2, stop: 3 };
export const rankOf = (severity: Severity | null): number => (severity === null ? 0 : RANK[severity]);

/** Lengths that differ by less are equal: a tenth of what plans are rounded to. */
const SAME_M = 1e-5;

const worstBeyond = (limits: readonly Limit[], lengthM: number): Limit | undefined =>
  limits.findLast(({ limitM }) => lengthM > limitM + SAME_M);

/**
 * Verdict of a rule set on one way. A length is beyond a limit when it is longer; a drawn one when it may be. 0.4 m
 * drawn (0.3 to 0.5) and bare, vehicle set: stop, limit 0.45 m, provisional.
 */
function verdictOn(ruleSet: RuleSet, way: UnprotectedWay): LengthVerdict {
  const limits = limitsFor(ruleSet, way.sheathed, way.nearerImpossible);
  const worst = worstBeyond(limits, way.lengthM + way.plusMinusM);
  const best = worstBeyond(limits, Math.max(0, way.lengthM - way.plusMinusM));
  const shown = worst ?? limits[0];
  return {
    severity: worst?.severity ?? null,
    limitM: shown?.limitM ?? 0,
    source: shown?.source ?? 'feedrunRules',
    provisional: rankOf(worst?.severity ?? null) !== rankOf(best?.severity ?? null),
  };
}

export interface JudgedWay extends LengthVerdict {
  readonly way: UnprotectedWay;
}

/** The way that a rule set judges worst: by severity, then the longest. Undefined when there is none. */
export function worstWay(ruleSet: RuleSet, ways: readonly UnprotectedWay[]): JudgedWay | undefined {
  return ways
    .map((way) => ({ way, ...verdictOn(ruleSet, way) }))
    .sort((one, other) => rankOf(other.severity) - rankOf(one.severity) || other.way.lengthM - one.way.lengthM)[0];
}

/** The strictest set's answer over all ways of all sources. */
export function strictestOn(ways: readonly UnprotectedWay[]): Assessment['strictest'] {
  const worst = worstWay('boatCfr', ways);
  return { ruleSet: 'boatCfr', severity: worst?.severity ?? null, limitM: worst?.limitM ?? 0 };
}
