import { memo } from 'react';
import type { Assessment, AssumptionUse, RuleId } from '../../assess/answer.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/answer.ts';
import { nameOfId, type Units } from '../../words/index.ts';
import { TOPICS, topicOf } from '../faces/topics.ts';
import { Term, TermNote } from '../help/Term.tsx';
import { useTerm } from '../help/useTerm.ts';
import { useUnits } from '../useDesk.ts';

type Say = (value: number, units: Units) => string;

/** How a figure is said, by how its path ends; the first that fits. */
const BY_ENDING: readonly (readonly [ending: string, say: Say])[] = [
  ['Ohm', (value, units) => units.resistance(value)],
  ['V', (value, units) => (value < 1 ? `${units.number(value * 1000, 0)} mV` : units.voltage(value))],
  ['lengthM', (value, units) => units.length(value)],
  ['areaMm2', (value, units) => units.area(value)],
  ['Ah', (value, units) => `${units.number(value, 1)} Ah`],
  ['A', (value, units) => units.current(value)],
  ['capacitanceF', (value, units) => `${units.number(value, 3)} F`],
  ['C', (value, units) => units.temperature(value)],
  ...['dropLimit', 'efficiency', 'hotShare', 'usableShare'].map((ending): readonly [string, Say] => [
    ending,
    (value, units) => units.percent(value * 100),
  ]),
];

function said({ path, value }: AssumptionUse, units: Units): string {
  if (typeof value === 'boolean') return value ? words.regulatedWords.yes : words.regulatedWords.no;
  if (typeof value === 'string')
    return Object.entries(words.fittings.materials).find(([id]) => id === value)?.[1] ?? value;
  const say = BY_ENDING.find(([ending]) => path.endsWith(ending))?.[1];
  return say === undefined ? units.number(value, 3) : say(value, units);
}

interface Group {
  /** What is assumed, without whose it is where several share it. */
  label: string;
  value: string;
  first: AssumptionUse;
  count: number;
}

/** Alike assumptions once: copper for seven cables is one line. */
function grouped(uses: readonly AssumptionUse[], units: Units, plan: Plan): Group[] {
  const groups = new Map<string, Group>();
  for (const use of uses) {
    const value = said(use, units);
    const key = [words.assumption(use.path, () => null), value, use.source].join('|');
    const known = groups.get(key);
    if (known === undefined) {
      groups.set(key, { label: words.assumption(use.path, (id) => nameOfId(plan, id)), value, first: use, count: 1 });
    } else {
      known.count += 1;
      known.label = words.assumption(use.path, () => null);
    }
  }
  return [...groups.values()];
}

const CHECKED = ['clearingTime', 'prospectiveCurrent', 'selectivity'] as const;

/** The words behind the checks whose names are in no heading. */
function CheckedWords() {
  const help = useTerm();
  return (
    <>
      <p className="checked-words">
        {CHECKED.map((id) => (
          <Term key={id} id={id} help={help} word={words.summary.checkedWords[id]} />
        ))}
      </p>
      <TermNote help={help} />
    </>
  );
}

/** What each rule is about, topic by topic. */
function Checked({ rules }: { rules: readonly RuleId[] }) {
  return (
    <dl className="checked">
      {TOPICS.map((topic) => ({ topic, ofTopic: rules.filter((rule) => topicOf(rule) === topic) }))
        .filter(({ ofTopic }) => ofTopic.length > 0)
        .map(({ topic, ofTopic }) => (
          <div key={topic}>
            <dt>{words.summary.checkedTopics[topic]}</dt>
            <dd>
              <ul>
                {ofTopic.map((rule) => (
                  <li key={rule}>{words.headline.rules[rule]}</li>
                ))}
              </ul>
            </dd>
          </div>
        ))}
    </dl>
  );
}

/** Every assumed value in use, where it comes from, and what was checked with it. */
export const Assumptions = memo(function Assumptions({ answer, plan }: { answer: Assessment; plan: Plan }) {
  const units = useUnits();
  const assumed = answer.assumptions.filter(({ origin }) => origin === 'assumed');
  const { strictest } = answer;
  const limit = units.length(strictest.limitM);
  const { severities } = words.headline;
  return (
    <>
      {assumed.length === 0 ? null : (
        <details className="fold">
          <summary>
            {words.summary.assumptions} ({assumed.length})
          </summary>
          <dl className="assumptions">
            {grouped(assumed, units, plan).map(({ label, value, first, count }) => (
              <div key={first.path} data-assumption={first.path}>
                <dt>
                  {label}
                  {count === 1 ? '' : ` ${words.summary.times(count)}`}
                </dt>
                <dd>
                  {value}
                  {first.source === null ? null : <span className="cell-note">{words.sourceLine(first.source)}</span>}
                </dd>
              </div>
            ))}
          </dl>
        </details>
      )}
      <details className="fold">
        <summary>{words.summary.checked}</summary>
        <CheckedWords />
        <Checked rules={answer.rulesChecked} />
        <p>
          {strictest.severity === null
            ? words.summary.strictestNothing(limit)
            : words.summary.strictest(severities[strictest.severity], limit)}
        </p>
      </details>
    </>
  );
});
