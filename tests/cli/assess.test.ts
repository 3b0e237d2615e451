import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const DEMO = join(ROOT, 'public', 'demo.plan.json');

function run(args: readonly string[], input = '') {
  const script = join('src', 'cli', 'assess.ts');
  return spawnSync(process.execPath, ['--import', 'tsx', script, ...args], { cwd: ROOT, input, encoding: 'utf8' });
}

describe('the command line', { timeout: 60_000 }, () => {
  let folder = '';
  let ofDemo: ReturnType<typeof run>;
  beforeAll(() => {
    ofDemo = run([DEMO]);
    folder = mkdtempSync(join(tmpdir(), 'feedrun-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('prints the answer as JSON with its sentences, and ends with 0', () => {
    const { status, stdout, stderr } = ofDemo;
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const answer = JSON.parse(stdout);
    expect(answer.headline).toEqual({ kind: 'stop', count: 1, sentence: '1 to stop for' });
    expect(answer.findings[0]).toMatchObject({ rule: 'unprotected-length', severity: 'stop' });
    expect(answer.findings.every(({ sentence, remedy }: Record<string, string>) => sentence && remedy)).toBe(true);
    expect(answer.notCheckedSentence).toMatch(/what the alternator can carry/);
    expect(Object.keys(answer.whys).length).toBeGreaterThan(20);
  });

  it('reads a plan from standard input', () => {
    const { status, stdout } = run(['-'], readFileSync(DEMO, 'utf8'));
    expect(status).toBe(0);
    expect(stdout).toBe(ofDemo.stdout);
  });

  it.each([
    ['no plan named', []],
    ['two plans named', [DEMO, DEMO]],
    ['a file that is not there', ['no-such.plan.json']],
    ['a folder', ['public']],
  ])('refuses %s with one line on stderr, nothing on stdout, and ends with 2', (_, args) => {
    const { status, stdout, stderr } = run(args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/^[^\n]{10,}\n$/);
  });

  it('refuses a broken plan by what is wrong and where', () => {
    const broken = join(folder, 'broken.plan.json');
    writeFileSync(broken, readFileSync(DEMO, 'utf8').replace('"tapedM": null', '"tapedM": -1'));
    const { status, stdout, stderr } = run([broken]);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/^[^\n]*runs\[0\]\.tapedM[^\n]*\n$/);
  });
});
