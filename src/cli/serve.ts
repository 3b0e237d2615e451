/** `npm start`: builds the page, serves it and prints its address. PORT (4173) and HOST (127.0.0.1) may be set. */
import { readFileSync } from 'node:fs';
import { buildPage, servePage } from './page.ts';

const DEFAULT_PORT = 4173;
const LAST_PORT = 65_535;
const PARENT_CHECK_MS = 1_000;

function fail(reason: string): never {
  console.error(reason);
  process.exit(1);
}

function portFrom(text: string | undefined): number {
  if (text === undefined || text === '') return DEFAULT_PORT;
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > LAST_PORT) {
    fail(`PORT is '${text}'; it has to be a whole number from 0 to ${LAST_PORT}.`);
  }
  return port;
}

function whyNotServed(error: unknown, host: string, port: number): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  const text = error instanceof Error ? error.message : String(error);
  if (code === 'EADDRINUSE' || text.includes('already in use')) {
    return `Port ${port} is taken. Stop what uses it, or choose another: PORT=${port + 1} npm start`;
  }
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return `HOST is '${host}', which is no address of this machine.`;
  if (code === 'EACCES') return `This user may not open port ${port}. Choose another: PORT=${DEFAULT_PORT} npm start`;
  return text;
}

/** The npm behind the shell that npm starts a script with; undefined where the system does not tell. */
function npmBehindShell(shell: number): number | undefined {
  try {
    const [, npm] = /^\d+ \((?:sh|dash|bash)\) \S (\d+)/.exec(readFileSync(`/proc/${shell}/stat`, 'utf8')) ?? [];
    return npm === undefined ? undefined : Number(npm);
  } catch {
    return undefined;
  }
}

function isGone(id: number): boolean {
  try {
    process.kill(id, 0);
    return false;
  } catch {
    return true;
  }
}

/** Ends when npm ends, also when npm was killed and could pass nothing on: no server is left behind. */
function endWithParent(): void {
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  const npm = npmBehindShell(parent);
  setInterval(() => {
    if (process.ppid !== parent || (npm !== undefined && isGone(npm))) process.exit(0);
  }, PARENT_CHECK_MS).unref();
}

const port = portFrom(process.env.PORT);
const host = process.env.HOST || '127.0.0.1';
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => process.exit(0));
endWithParent();
await buildPage('dist').catch((error: unknown) => fail(`The page could not be built. ${String(error)}`));
try {
  const page = await servePage('dist', host, port);
  console.log(`Feedrun is at ${page.urls.join(' and ')}  (Ctrl-C ends it)`);
} catch (error) {
  fail(whyNotServed(error, host, port));
}
