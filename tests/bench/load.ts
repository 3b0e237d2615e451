/**
 * `npm run bench:load`: the JavaScript a first visit loads, beside a hello-world that uses the same libraries and
 * nothing else, both built in this run. Fails when the page needs more than 1.4 times as much.
 */
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import type { Rolldown } from 'vite';
import { buildForRelease, buildPage } from '../../src/cli/page.ts';

const MOST_TIMES_HELLO = 1.4;
const ROOT = fileURLToPath(new URL('../..', import.meta.url));
// inside the project, so that both are built with the very same packages
const CACHE = join(ROOT, 'node_modules', '.cache', 'feedrun', 'bench');

/** The parts of Konva that src imports, so that the hello-world carries the same shapes. */
function konvaPaths(): string[] {
  const src = join(ROOT, 'src');
  const code = readdirSync(src, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => readFileSync(join(src, name), 'utf8'))
    .join('\n');
  const values = code.replace(/^import type [^;]*;/gm, '');
  return [
    ...new Set(
      [...values.matchAll(/from '(konva\/lib\/[^']+)'|import '(konva\/lib\/[^']+)'/g)].map((m) => m[1] ?? m[2] ?? ''),
    ),
  ];
}

function helloWorld(konva: readonly string[]): string {
  return `
import { openDB } from 'idb';
import { nanoid } from 'nanoid';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Layer, Stage } from 'react-konva/lib/ReactKonvaCore';
import { number, object, safeParse, string } from 'valibot';
import { temporal } from 'zundo';
import { create } from 'zustand';
${konva.map((path) => `import '${path}';`).join('\n')}

const Plan = object({ id: string(), lengthM: number() });
const usePlan = create(temporal(() => ({ id: nanoid(), lengthM: 1 })));

async function keep(plan) {
  const database = await openDB('hello', 1, { upgrade: (made) => void made.createObjectStore('plans', { keyPath: 'id' }) });
  await database.put('plans', plan);
}

function Hello() {
  const plan = usePlan();
  const undo = () => usePlan.temporal.getState().undo();
  return (
    <StrictMode>
      <button onClick={undo}>{String(safeParse(Plan, plan).success)}</button>
      <button onClick={() => keep(plan)}>Hello</button>
      <Stage width={300} height={200}><Layer /></Stage>
    </StrictMode>
  );
}
createRoot(document.getElementById('root')).render(<Hello />);
`;
}

async function buildHello(): Promise<Rolldown.RolldownOutput> {
  const root = join(CACHE, 'hello');
  rmSync(root, { recursive: true, force: true });
  mkdirSync(root, { recursive: true });
  writeFileSync(join(root, 'main.jsx'), helloWorld(konvaPaths()));
  const page =
    '<!doctype html><title>Hello</title><div id="root"></div><script type="module" src="./main.jsx"></script>';
  writeFileSync(join(root, 'index.html'), page);
  return buildForRelease({ root, configFile: false, plugins: [react()], build: { target: 'es2022' } });
}

/** Bytes, gzip -9, of the chunks the test picks and all that they import at once; what comes on demand is left out. */
function loadedBytes({ output }: Rolldown.RolldownOutput, picks: (chunk: Rolldown.OutputChunk) => boolean): number {
  const chunks = new Map(output.filter((part) => part.type === 'chunk').map((chunk) => [chunk.fileName, chunk]));
  const loaded = new Set([...chunks.values()].filter(picks).map((chunk) => chunk.fileName));
  // a set yields what is added while it is walked
  for (const name of loaded) for (const next of chunks.get(name)?.imports ?? []) if (chunks.has(next)) loaded.add(next);
  return [...loaded].reduce((sum, name) => sum + gzipSync(chunks.get(name)?.code ?? '', { level: 9 }).length, 0);
}

const isEntry = (chunk: Rolldown.OutputChunk): boolean => chunk.isEntry;
const isFrom =
  (files: readonly string[]) =>
  (chunk: Rolldown.OutputChunk): boolean =>
    files.some((file) => chunk.facadeModuleId?.endsWith(file) ?? false);
/** The frame is on screen before these, which come in chunks of their own: the sketch counts as part of the page. */
const SKETCH = ['src/sketch/Sketch.tsx'];
const ANSWER = ['src/assess/assess.ts', 'src/app/Answer.tsx'];
/** Fetched by themselves as soon as the first picture is under way: the hand with what shows it, and the keys. */
const LATE = ['src/sketch/late.ts', 'src/app/shortcuts.ts'];
const [isSketch, isAnswer, isLate] = [isFrom(SKETCH), isFrom(ANSWER), isFrom(LATE)];

const page = await buildPage(join(CACHE, 'page'));
const isBeside = (chunk: Rolldown.OutputChunk): boolean => isSketch(chunk) || isAnswer(chunk) || isLate(chunk);
const found = page.output.filter((part) => part.type === 'chunk' && isBeside(part)).length;
if (found !== SKETCH.length + ANSWER.length + LATE.length)
  throw new Error('The bench no longer finds the chunks beside the frame.');
const frameBytes = loadedBytes(page, isEntry);
const pageBytes = loadedBytes(page, (chunk) => isEntry(chunk) || isSketch(chunk));
const answerBytes = loadedBytes(page, (chunk) => isEntry(chunk) || isSketch(chunk) || isAnswer(chunk));
const withLateBytes = loadedBytes(page, (chunk) => isEntry(chunk) || isSketch(chunk) || isLate(chunk));
const helloBytes = loadedBytes(await buildHello(), isEntry);
const times = pageBytes / helloBytes;
const answerTimes = answerBytes / helloBytes;
const kilobytes = (bytes: number) => `${(bytes / 1000).toFixed(1)} kB`;
console.log(`First-load JavaScript, gzip -9`);
console.log(`  page         ${kilobytes(pageBytes)}, of which the frame, on screen first, ${kilobytes(frameBytes)}`);
console.log(`  hello-world  ${kilobytes(helloBytes)} (same libraries, same Konva parts)`);
console.log(`  ratio        ${times.toFixed(3)} (at most ${MOST_TIMES_HELLO})`);
console.log(`  with the answer fetched beside it: ${kilobytes(answerBytes)}, ${answerTimes.toFixed(3)} times (no bar)`);
console.log(`  fetched right after the first picture: ${kilobytes(withLateBytes - pageBytes)}, hand and keys (no bar)`);
if (!(times <= MOST_TIMES_HELLO)) {
  console.error('The page loads too much at first. Import what is needed later on demand.');
  process.exitCode = 1;
}
