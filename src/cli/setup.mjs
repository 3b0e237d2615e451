/**
 * Installs what is missing, before `npm start`, `npm test` and the other commands: the locked packages, and
 * for the tests a Chromium. Silent when there is nothing to do; whatever it says goes to stderr, so that a
 * command that prints JSON stays JSON.
 *
 * Node's own modules only: this runs before any package exists, and `npm ci` empties node_modules first.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  accessSync,
  constants,
  mkdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, delimiter, join } from 'node:path';
import { argv, env, execPath, exit, getuid, kill, pid, platform, stderr } from 'node:process';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const LOCK_WAIT_STEP_MS = 200;
/** A lock this old is left over from a machine that went down: an install takes seconds, on a slow line minutes. */
const LOCK_STALE_MS = 15 * 60_000;
/** Time allowed between making the lock folder and writing the owner into it. */
const LOCK_OWNER_GRACE_MS = 5_000;
/** First the one without windows, menus and accounts of its own: the same engine, with a sixth less work for a machine. */
const CHROMIUM_NAMES = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome'];
/** Not every system has the first. */
const CHROMIUM_PACKAGES = ['chromium-headless-shell', 'chromium'];

/** A reason to stop that is told to the person in one or two lines, without a stack. */
class SetupError extends Error {}

/** @param {string} text */
function say(text) {
  stderr.write(`${text}\n`);
}

/**
 * What an installed node_modules depends on. Not file times: a checkout changes those without changing anything.
 * @param {string} root folder with package-lock.json
 * @returns {string} sha256, hexadecimal
 */
export function stampOf(root) {
  const lock = readFileSync(join(root, 'package-lock.json'));
  return createHash('sha256').update(lock).update(`${process.version} ${platform}/${process.arch}`).digest('hex');
}

/** The stamp lives inside node_modules, so that it goes when node_modules goes. @param {string} root */
function stampFile(root) {
  return join(root, 'node_modules', '.setup-stamp');
}

/** @param {string} file @returns {string | undefined} */
function readText(file) {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
}

/** @param {string} root */
export function isInstalled(root) {
  return readText(stampFile(root)) === stampOf(root);
}

/** @param {number} id */
function isAlive(id) {
  try {
    kill(id, 0);
    return true;
  } catch (error) {
    // EPERM: it lives and belongs to someone else
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** @param {string} lock @returns {boolean} */
function isAbandoned(lock) {
  const owner = readText(join(lock, 'pid'));
  const ageMs = Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
  if (owner === undefined) return ageMs > LOCK_OWNER_GRACE_MS;
  return !isAlive(Number(owner)) || ageMs > LOCK_STALE_MS;
}

/** Moved aside before it is removed: of two that find it abandoned only one can move it. @param {string} lock */
function clearAbandoned(lock) {
  const aside = `${lock}.${pid}`;
  try {
    renameSync(lock, aside);
    rmSync(aside, { recursive: true, force: true });
  } catch {
    // another one was quicker
  }
}

/**
 * Runs `work` while no other set-up of this checkout runs (start and test begun at once would both empty node_modules).
 * @param {string} root
 * @param {() => void} work
 */
export function withLock(root, work) {
  const lock = join(root, '.setup-lock');
  let waiting = false;
  for (;;) {
    try {
      mkdirSync(lock);
      break;
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
    }
    if (isAbandoned(lock)) {
      clearAbandoned(lock);
      continue;
    }
    if (!waiting) say('Waiting for another set-up of this folder to finish.');
    waiting = true;
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, LOCK_WAIT_STEP_MS);
  }
  try {
    writeFileSync(join(lock, 'pid'), String(pid));
    work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

/**
 * The environment without what npm told about the command that called us: a nested npm must not take it for its own.
 * @param {NodeJS.ProcessEnv} given
 * @returns {NodeJS.ProcessEnv}
 */
export function cleanedEnv(given) {
  const told = /^npm_(lifecycle_|package_|command$|config_(loglevel|global|workspace|omit|production|dry_run)$)/i;
  return Object.fromEntries(Object.entries(given).filter(([name]) => !told.test(name)));
}

/**
 * Runs a command with all its output on stderr.
 * @param {string} command @param {string[]} args @param {NodeJS.ProcessEnv} environment
 * @returns {boolean} whether it succeeded
 */
function run(command, args, environment) {
  const shell = platform === 'win32' && command === 'npm';
  const result = spawnSync(command, args, { cwd: ROOT, env: environment, stdio: ['ignore', 2, 2], shell });
  return result.status === 0;
}

function installPackages() {
  if (isInstalled(ROOT)) return;
  withLock(ROOT, () => {
    if (isInstalled(ROOT)) return;
    say('Installing the packages of package-lock.json ...');
    // the npm that called us, if it was npm; --include: NODE_ENV=production or an omit setting must not lose the build tools
    const npm = env.npm_execpath;
    const isNpm = npm !== undefined && /^npm(-cli)?\.[cm]?js$/.test(basename(npm));
    const args = ['ci', '--include=dev', '--include=optional', '--ignore-scripts', '--no-audit', '--no-fund'];
    const done = isNpm ? run(execPath, [npm, ...args], cleanedEnv(env)) : run('npm', args, cleanedEnv(env));
    if (!done) throw new SetupError('The packages could not be installed (see above). Is the npm registry reachable?');
    writeFileSync(stampFile(ROOT), stampOf(ROOT));
  });
}

/** @param {string} file */
function isRunnable(file) {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/**
 * The Chromium the tests drive: CHROME_PATH when set, else the first known name on PATH.
 * @param {NodeJS.ProcessEnv} given
 * @returns {string | undefined} its path, or undefined when there is none
 */
export function findChromium(given) {
  if (given.CHROME_PATH) return isRunnable(given.CHROME_PATH) ? given.CHROME_PATH : undefined;
  const folders = (given.PATH ?? '').split(delimiter).filter(Boolean);
  return CHROMIUM_NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find(isRunnable);
}

function installChromium() {
  if (findChromium(env)) return;
  if (env.CHROME_PATH) throw new SetupError(`CHROME_PATH is ${env.CHROME_PATH}, and no program is there.`);
  const byHand = 'apt-get install chromium';
  const manual = `The tests need Chromium. Install it (on Debian, as root: ${byHand}), or set CHROME_PATH to one.`;
  const aptGet = (env.PATH ?? '').split(delimiter).some((folder) => isRunnable(join(folder, 'apt-get')));
  if (!aptGet || getuid?.() !== 0) throw new SetupError(manual);
  say('Installing Chromium from the system packages ...');
  const environment = { ...env, DEBIAN_FRONTEND: 'noninteractive' };
  const options = ['-q', '-o', 'DPkg::Lock::Timeout=300'];
  const install = () =>
    CHROMIUM_PACKAGES.some((name) =>
      run('apt-get', [...options, 'install', '-y', '--no-install-recommends', name], environment),
    );
  // updating the lists takes longer than the install itself, so only when the install cannot do without
  const done = install() || (run('apt-get', [...options, 'update'], environment) && install());
  if (!done || !findChromium(env)) throw new SetupError(manual);
}

function main() {
  try {
    installPackages();
    if (argv.includes('--browser')) installChromium();
  } catch (error) {
    if (!(error instanceof SetupError)) throw error;
    say(error.message);
    exit(1);
  }
}

if (argv[1] && realpathSync(argv[1]) === fileURLToPath(import.meta.url)) main();
