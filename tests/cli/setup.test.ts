import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { cleanedEnv, findChromium, isInstalled, stampOf, withLock } from '../../src/cli/setup.mjs';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feedrun-setup-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function program(path: string): string {
  mkdirSync(join(folder, path, '..'), { recursive: true });
  writeFileSync(join(folder, path), '#!/bin/sh\n');
  chmodSync(join(folder, path), 0o755);
  return join(folder, path);
}

describe('what counts as installed', () => {
  it('follows the content of the lock, not its date, and goes with node_modules', () => {
    const lock = join(folder, 'package-lock.json');
    writeFileSync(lock, '{"a":1}');
    expect(isInstalled(folder)).toBe(false);
    mkdirSync(join(folder, 'node_modules'));
    writeFileSync(join(folder, 'node_modules', '.setup-stamp'), stampOf(folder));
    expect(isInstalled(folder)).toBe(true);
    utimesSync(lock, new Date(0), new Date(0));
    expect(isInstalled(folder)).toBe(true);
    writeFileSync(lock, '{"a":2}');
    expect(isInstalled(folder)).toBe(false);
  });
});

describe('the Chromium it finds', () => {
  it('is CHROME_PATH before PATH, and on PATH the one without windows, then chromium, before other names', () => {
    const other = program('first/google-chrome');
    const chromium = program('second/chromium');
    const windowless = program('third/chromium-headless-shell');
    const own = program('own/browser');
    const PATH = [join(folder, 'first'), join(folder, 'second')].join(delimiter);
    expect(findChromium({ PATH, CHROME_PATH: own })).toBe(own);
    expect(findChromium({ PATH })).toBe(chromium);
    expect(findChromium({ PATH: [PATH, join(folder, 'third')].join(delimiter) })).toBe(windowless);
    expect(findChromium({ PATH: join(folder, 'first') })).toBe(other);
    expect(findChromium({ PATH: folder })).toBeUndefined();
  });

  it('is none when CHROME_PATH leads nowhere: what was asked for is not replaced by another', () => {
    program('bin/chromium');
    expect(findChromium({ PATH: join(folder, 'bin'), CHROME_PATH: join(folder, 'gone') })).toBeUndefined();
  });
});

it('a nested npm is not told of the command around it, and keeps the rest', () => {
  const given = {
    PATH: '/bin',
    npm_lifecycle_event: 'test',
    npm_package_name: 'feedrun',
    npm_command: 'run-script',
    npm_config_loglevel: 'silent',
    npm_config_omit: 'dev',
    npm_config_cache: '/cache',
    npm_config_registry: 'http://127.0.0.1/',
  };
  expect(Object.keys(cleanedEnv(given)).sort()).toEqual(['PATH', 'npm_config_cache', 'npm_config_registry']);
});

describe('two set-ups at once', () => {
  const SETUP = new URL('../../src/cli/setup.mjs', import.meta.url).href;

  /** A process that holds the lock for a while, and writes when it came and went. */
  function holder(name: string): Promise<number | null> {
    const code = `
      import { appendFileSync } from 'node:fs';
      import { withLock } from '${SETUP}';
      const [folder, name] = process.argv.slice(1);
      withLock(folder, () => {
        appendFileSync(folder + '/log', name + ' in\\n');
        Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 150);
        appendFileSync(folder + '/log', name + ' out\\n');
      });`;
    const child = spawn(process.execPath, ['--input-type=module', '-e', code, folder, name], { stdio: 'ignore' });
    return new Promise((done) => child.on('exit', done));
  }

  it('run one after the other', async () => {
    expect(await Promise.all(['a', 'b', 'c'].map(holder))).toEqual([0, 0, 0]);
    const lines = readFileSync(join(folder, 'log'), 'utf8').trim().split('\n');
    expect(lines).toHaveLength(6);
    for (const at of [0, 2, 4]) expect(lines[at + 1]).toBe(lines[at]?.replace('in', 'out'));
    expect(existsSync(join(folder, '.setup-lock'))).toBe(false);
  });

  it('a lock left by a process that is gone does not hold up the next', async () => {
    const gone = spawn(process.execPath, ['-e', '']);
    await new Promise((done) => gone.on('exit', done));
    mkdirSync(join(folder, '.setup-lock'));
    writeFileSync(join(folder, '.setup-lock', 'pid'), String(gone.pid));
    let worked = false;
    withLock(folder, () => {
      worked = true;
    });
    expect(worked).toBe(true);
  });

  it('the lock is given back when the work fails', () => {
    const work = () => {
      throw new Error('no registry');
    };
    expect(() => withLock(folder, work)).toThrow('no registry');
    expect(existsSync(join(folder, '.setup-lock'))).toBe(false);
  });
});
