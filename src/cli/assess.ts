/**
 * `npm run --silent assess -- plan.json`: the answer to a plan as JSON on stdout, each finding with its sentences; '-'
 * reads the plan from stdin. Exit 0; or exit 2 with one line of reason on stderr.
 */
import { readFileSync } from 'node:fs';
import { assess } from '../assess/assess.ts';
import { openPlan } from '../plan/open.ts';
import type { Plan } from '../plan/schema.ts';
import { headlineOf, notCheckedOf, notToldOf, remedyOf, sentenceOf } from '../words/answer.ts';
import { enLater } from '../words/enLater.ts';

const REFUSED = 2;
const STDIN = 0;
const USAGE = 'Give one plan: npm run --silent assess -- plan.json, or - to read it from standard input.';

/** One line, whatever is in it. */
function refuse(reason: string): never {
  process.stderr.write(`${reason.replace(/\s+/g, ' ').trim()}\n`);
  process.exit(REFUSED);
}

/** Why a file could not be read, in words of our own: the system's differ from machine to machine. */
function whyUnread(error: unknown, path: string): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT') return `There is no file '${path}'. Check its name and folder.`;
  if (code === 'EISDIR') return `'${path}' is a folder. Name the plan in it.`;
  if (code === 'EACCES' || code === 'EPERM') return `'${path}' may not be read. Check who may read it.`;
  return `'${path}' could not be read. Copy it to this machine, then try again.`;
}

function readText(path: string): string {
  try {
    return readFileSync(path === '-' ? STDIN : path, 'utf8');
  } catch (error) {
    return refuse(whyUnread(error, path));
  }
}

/** The answer with what a person reads: the headline, and for each finding what is wrong and what to do. */
function told(plan: Plan) {
  const answer = assess(plan);
  return {
    ...answer,
    headline: { ...answer.headline, sentence: headlineOf(answer) },
    notToldSentence: notToldOf(answer),
    notCheckedSentence: notCheckedOf(answer),
    findings: answer.findings.map((finding) => ({
      ...finding,
      sentence: sentenceOf(finding, plan),
      remedy: remedyOf(finding, plan),
    })),
  };
}

function main(): void {
  const [path, ...more] = process.argv.slice(2);
  if (path === undefined || more.length > 0) refuse(USAGE);
  const opened = openPlan(readText(path));
  if (!opened.ok) {
    const { code, where, params } = opened.reason;
    refuse(enLater.refused({ ...params, code, where }));
  }
  process.stdout.write(`${JSON.stringify(told(opened.plan), null, 2)}\n`);
}

main();
