/** What a sentence about a finding is made from: its figures with units, and the names of its places. */
import type { Finding, Param, Place, Severity } from '../assess/answer.ts';
import type { FittingKind, LinkFamily, Plan } from '../plan/schema.ts';
import { familyNameIn, type NamingWords, titleOfIdIn } from './names.ts';
import { type Units, unitsOf } from './units.ts';

export interface ToldWords {
  locale: string;
  fittings: NamingWords & { linkFamilies: Readonly<Record<LinkFamily, string>> };
  findings: { unnamed: string };
}

export interface Told {
  severity: Severity;
  units: Units;
  /** A figure of the finding, or null. */
  number(name: string): number | null;
  text(name: string): string | null;
  /** A list of words; [] when the finding carries none. */
  list(name: string): readonly string[];
  /** How many places take part. */
  placeCount: number;
  /** The name of the nth place; the words for 'something' when the plan does not hold it. */
  place(index: number): string;
  /** Kind of the nth place. */
  placeKind(index: number): 'run' | FittingKind | null;
  /** The names of all places of those kinds, in their order. */
  namesOfKinds(...kinds: readonly FittingKind[]): readonly string[];
  /** The name of the first place of that kind, else null. */
  nameOfKind(kind: 'run' | FittingKind): string | null;
  /** The name of what a param points at, else null. */
  named(param: string): string | null;
  /** What a family of links is called, one of the user's own by its own name; the id itself when no family has it. */
  family(id: string): string;
  /** How a figure is said with its unit, or `otherwise` when the finding does not carry it. */
  length(name: string, otherwise?: string): string;
  /** A length said beside a limit, with as many digits as keep them apart. */
  lengthBeside(name: string, limit: string, otherwise?: string): string;
  current(name: string, otherwise?: string): string;
  voltage(name: string, otherwise?: string): string;
  percent(name: string, otherwise?: string): string;
  power(name: string, otherwise?: string): string;
  temperature(name: string, otherwise?: string): string;
  gauge(name: string, otherwise?: string): string;
}

function kindOf(plan: Plan, place: Place | undefined): 'run' | FittingKind | null {
  if (place === undefined) return null;
  if (place.kind === 'run') return 'run';
  return plan.fittings.find(({ id }) => id === place.id)?.kind ?? null;
}

const isFamilyIn = ({ fittings }: ToldWords, id: string): id is LinkFamily => Object.hasOwn(fittings.linkFamilies, id);

/** The reader of one finding over the plan it was found in. */
export function toldOf(finding: Finding, plan: Plan, words: ToldWords): Told {
  const { locale } = words;
  const nameOfId = (id: string) => titleOfIdIn(words.fittings, plan, id);
  const units = unitsOf(plan.settings.showLength, locale);
  const param = (name: string): Param => finding.params[name] ?? null;
  const number = (name: string) => {
    const value = param(name);
    return typeof value === 'number' && Number.isFinite(value) ? value : null;
  };
  const text = (name: string) => {
    const value = param(name);
    return typeof value === 'string' ? value : null;
  };
  const said =
    (format: (value: number) => string) =>
    (name: string, otherwise = '') => {
      const value = number(name);
      return value === null ? otherwise : format(value);
    };
  const nameAt = (place: Place | undefined) => (place === undefined ? null : nameOfId(place.id));
  return {
    severity: finding.severity,
    units,
    number,
    text,
    list: (name) => {
      const value = param(name);
      return typeof value === 'object' && value !== null ? value : [];
    },
    placeCount: finding.places.length,
    place: (index) => nameAt(finding.places[index]) ?? words.findings.unnamed,
    placeKind: (index) => kindOf(plan, finding.places[index]),
    namesOfKinds: (...kinds) =>
      finding.places
        .filter((place) => kinds.some((kind) => kindOf(plan, place) === kind))
        .map((place) => nameAt(place) ?? words.findings.unnamed),
    nameOfKind: (kind) => nameAt(finding.places.find((place) => kindOf(plan, place) === kind)),
    named: (name) => {
      const id = text(name);
      return id === null ? null : nameOfId(id);
    },
    family: (id) => (isFamilyIn(words, id) ? familyNameIn(words.fittings, plan, id) : id),
    length: said(units.length),
    lengthBeside: (name, limit, otherwise = '') => {
      const [value, limitM] = [number(name), number(limit)];
      if (value === null) return otherwise;
      return limitM === null ? units.length(value) : units.lengthBeside(value, limitM);
    },
    current: said(units.current),
    voltage: said(units.voltage),
    percent: said(units.percent),
    power: said(units.power),
    temperature: said(units.temperature),
    gauge: (name, otherwise = '') => {
      const id = text(name);
      return id === null ? otherwise : units.gauge(id);
    },
  };
}
