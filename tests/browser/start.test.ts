import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, it } from 'vitest';

/** `npm start` as a person meets it: without npm in between, so that the signals are the program's own. */
const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Two builds and two starts of Node, on a machine that may be busy. */
const START_TIMEOUT_MS = 120_000;
const children: ChildProcess[] = [];

interface Started {
  readonly child: ChildProcess;
  /** Everything it printed so far, on both streams. */
  said(): string;
  readonly ended: Promise<number | null>;
}

function start(port: string): Started {
  const env = { ...process.env, PORT: port, HOST: '127.0.0.1' };
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/serve.ts'], { cwd: ROOT, env });
  children.push(child);
  let text = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (part: Buffer) => (text += part.toString()));
  return { child, said: () => text, ended: new Promise((done) => child.on('exit', done)) };
}

afterEach(() => children.splice(0).map((child) => child.kill('SIGKILL')));

it(
  'builds, prints its address, serves the page there, says when the port is taken, and ends when told',
  async () => {
    const first = start('0');
    const ADDRESS = /http:\/\/127\.0\.0\.1:(\d+)\//;
    await expect.poll(first.said, { timeout: START_TIMEOUT_MS / 2 }).toMatch(ADDRESS);
    const [url = '', port = ''] = ADDRESS.exec(first.said()) ?? [];
    const answer = await fetch(url);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('<div id="root">');
    expect((await fetch(`${url}no-such-file.json`)).status).toBe(404);

    const second = start(port);
    expect(await second.ended).toBe(1);
    expect(second.said().trim().split('\n').at(-1)).toBe(
      `Port ${port} is taken. Stop what uses it, or choose another: PORT=${Number(port) + 1} npm start`,
    );

    first.child.kill('SIGTERM');
    expect(await first.ended).toBe(0);
    await expect(fetch(url)).rejects.toThrow();
  },
  START_TIMEOUT_MS,
);

it.each(['99999', 'abc'])('refuses PORT=%s in one line, before it builds', async (port) => {
  const started = start(port);
  expect(await started.ended).toBe(1);
  expect(started.said().trim()).toBe(`PORT is '${port}'; it has to be a whole number from 0 to 65535.`);
});
