import { readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const read = (path: string): string => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');

describe('a fresh clone', () => {
  it('installs from any registry: the lock records no download address', () => {
    const lock = read('package-lock.json');
    expect(lock).toContain('"lockfileVersion": 3');
    expect(lock).not.toContain('"resolved"');
    // the only addresses left are those where a package asks for funding
    const { packages }: { packages: Record<string, { funding?: unknown }> } = JSON.parse(lock);
    const rest = Object.values(packages).map(({ funding: _funding, ...others }) => JSON.stringify(others));
    expect(rest.length).toBeGreaterThan(50);
    expect(rest.filter((entry) => /https?:/.test(entry))).toEqual([]);
    expect(read('.npmrc')).toContain('omit-lockfile-registry-resolved=true');
  });

  it('gets the versions that were tested: every package is pinned', () => {
    const manifest: { dependencies: object; devDependencies: object } = JSON.parse(read('package.json'));
    const ranges = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(ranges.length).toBeGreaterThan(20);
    expect(ranges.filter(([, range]) => !/^\d+\.\d+\.\d+$/.test(String(range)))).toEqual([]);
  });

  it('sets itself up before every command, and nothing runs at install time', () => {
    const { scripts }: { scripts: Record<string, string> } = JSON.parse(read('package.json'));
    for (const command of ['start', 'test', 'dev', 'assess']) {
      expect(scripts[`pre${command}`], command).toMatch(/^node src\/cli\/setup\.mjs/);
    }
    expect(scripts.pretest).toContain('--browser');
    // npm ci would run these, and they would call it again
    expect(Object.keys(scripts).filter((name) => /^(pre|post)?(install|prepare)$/.test(name))).toEqual([]);
  });

  it('the set-up imports only what Node brings along', () => {
    const specifiers = [...read('src/cli/setup.mjs').matchAll(/from '([^']+)'|import\('([^']+)'\)/g)];
    expect(specifiers.length).toBeGreaterThan(3);
    expect(specifiers.filter(([, name]) => !name?.startsWith('node:'))).toEqual([]);
  });
});

it('continuous integration runs exactly npm test', () => {
  const lines = read('.ci/run').trimEnd().split('\n');
  expect(lines).toEqual(['#!/usr/bin/env bash', 'set -euo pipefail', 'cd "$(dirname "$0")/.."', 'npm test']);
  expect(statSync(new URL('../.ci/run', import.meta.url)).mode & 0o111, 'it can be run').not.toBe(0);
});

it('the README names both commands, early', () => {
  const [, afterTitle = ''] = read('README.md').split(/^# .*$/m);
  const start = afterTitle.slice(0, 1_500);
  expect(start).toMatch(/^ {4}npm start$/m);
  expect(start).toMatch(/^ {4}npm test$/m);
});
