import type { SourceId } from '../../calc/sources.ts';
import type { Finding, Param, Place, RuleId, Severity } from '../answer.ts';
import type { CircuitLink } from '../circuit.ts';
import type { Facts } from '../facts.ts';

/** One rule: what it finds, in the order of the plan. */
export interface Rule {
  readonly id: RuleId;
  /** Assumed values can turn its verdict: it is judged again with each halved and doubled. */
  readonly sensitive: boolean;
  check(facts: Facts): Finding[];
}

interface Found {
  readonly severity: Severity;
  /** Where to look first; the rest take part. */
  readonly places: readonly [Place, ...Place[]];
  readonly params?: Readonly<Record<string, Param>>;
  readonly source: SourceId;
  readonly provisional?: boolean;
  readonly why?: string | null;
}

/** A finding of a rule; its id is the rule and the first place, so that it stays the same while the plan changes. */
export function finding(
  rule: RuleId,
  { severity, places, params = {}, source, provisional = false, why = null }: Found,
): Finding {
  return { id: `${rule}:${places[0].id}`, rule, severity, places, params, source, provisional, decidedBy: [], why };
}

/** How a derivation names a fuse: a fitting, or one output of a block. */
export const linkKey = ({ fitting, terminal }: Pick<CircuitLink, 'fitting' | 'terminal'>): string =>
  terminal === null ? fitting.id : `${fitting.id}.${terminal}`;

/** The same finding of one output of a block: each output has its own. */
export const ofOutput = (terminal: string | null, found: Finding): Finding =>
  terminal === null ? found : { ...found, id: `${found.id}.${terminal}` };

export const runPlace = (facts: Pick<Facts, 'model'>, cable: number): Place => ({
  kind: 'run',
  id: facts.model.circuit.cables[cable]?.run.id ?? '',
});

export const fittingPlace = ({ id }: { readonly id: string }): Place => ({ kind: 'fitting', id });

/** The place of a link as a list: none when there is no such link. */
export function linkPlaces({ model }: Pick<Facts, 'model'>, link: number | null): Place[] {
  const found = model.circuit.links[link ?? -1];
  return found === undefined ? [] : [fittingPlace(found.fitting)];
}
