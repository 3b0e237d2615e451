import type { Finding, RuleId } from '../../assess/answer.ts';

export type Topic = 'protection' | 'cable' | 'power' | 'ground' | 'detail';

const RULES: Readonly<Record<Exclude<Topic, 'detail'>, readonly RuleId[]>> = {
  protection: [
    'unprotected-length',
    'no-device',
    'fuse-over-conductor',
    'step-down',
    'fuse-under-load',
    'fuse-over-maker',
    'no-fuse-qualifies',
    'rating-not-held',
    'link-under-voltage',
    'holder-too-hot',
    'fuse-in-return',
    'source-short',
    'short-not-cleared',
    'short-uncertain',
    'back-fed',
    'breaking-capacity',
    'selectivity',
    'overload-heating',
    'capacitor-unfused',
    'takeoff-overloaded',
    'parallel-one-fuse',
    'ask-external-fuse',
    'supply-wiring',
  ],
  cable: [
    'no-size-in-stock',
    'drop-cables',
    'drop-whole',
    'ampacity',
    'heating',
    'unmarked-cable',
    'firewall-no-grommet',
    'pass-through-shared',
    'cable-changes',
    'grommet-too-small',
    'bend-too-tight',
    'cable-over-terminal',
    'clad-as-copper',
    'size-not-proven',
    'reducer-length',
    'tape-doubtful',
    'loose-end',
  ],
  power: [
    'below-cut-out',
    'cannot-carry',
    'not-fed',
    'no-rating',
    'ratings-differ',
    'load-unknown',
    'charging-deficit',
  ],
  ground: ['ground-missing', 'ground-smaller', 'ground-on-sensor', 'strap-smaller'],
};

/** The most telling first. */
export const TOPICS: readonly Topic[] = ['protection', 'cable', 'power', 'ground', 'detail'];

export const topicOf = (rule: RuleId): Topic =>
  (['protection', 'cable', 'power', 'ground'] as const).find((topic) => RULES[topic].includes(rule)) ?? 'detail';

/** What has to be settled before building. */
export const toSettle = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(({ severity }) => severity !== 'note');

/** How many points of each topic there are, the most telling topic first; rules that no topic knows are counted too. */
export function topicsOf(findings: readonly Finding[]): readonly { topic: Topic; count: number }[] {
  const all = toSettle(findings).map(({ rule }) => topicOf(rule));
  return TOPICS.map((topic) => ({ topic, count: all.filter((one) => one === topic).length })).filter(
    ({ count }) => count > 0,
  );
}
