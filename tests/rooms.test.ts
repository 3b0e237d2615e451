import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/**
 * The import table of DEVELOPERS.md, checked twice: over the real files, and on the lint rules themselves, by
 * linting one made-up file for every pair of rooms.
 */
const ROOT = fileURLToPath(new URL('..', import.meta.url));
const SRC = join(ROOT, 'src');

interface Room {
  /** Rooms whose values it may import. */
  readonly uses: readonly string[];
  /** Rooms of which it may import types only; the linter cannot tell the two apart, the scan below can. */
  readonly usesTypesOf?: readonly string[];
  /** Single modules outside `uses` whose values it may import. */
  readonly usesModules?: readonly string[];
  /** Packages, apart from Node's own modules. */
  readonly packages: readonly string[];
}

const ROOMS: Readonly<Record<string, Room>> = {
  calc: { uses: [], packages: [] },
  geom: { uses: [], packages: [] },
  look: { uses: [], packages: [] },
  bracket: { uses: ['calc', 'geom'], packages: [] },
  plan: { uses: ['geom'], usesTypesOf: ['calc'], packages: ['valibot', 'nanoid'] },
  assess: { uses: ['plan', 'calc', 'geom', 'bracket'], packages: [] },
  words: { uses: [], usesTypesOf: ['plan', 'assess', 'calc'], usesModules: ['calc/sources.ts'], packages: [] },
  desk: { uses: ['plan', 'assess', 'geom'], packages: ['zustand', 'zundo', 'nanoid'] },
  drawing: { uses: ['plan', 'assess', 'geom', 'look', 'words'], packages: [] },
  sketch: {
    uses: ['desk', 'drawing', 'plan', 'geom', 'look', 'words'],
    usesTypesOf: ['assess'],
    packages: ['konva', 'react-konva', 'react', 'zustand'],
  },
  panels: {
    uses: ['desk', 'drawing', 'plan', 'assess', 'geom', 'look', 'words'],
    usesTypesOf: ['calc'],
    packages: ['react', 'react-dom', 'zustand'],
  },
  paper: { uses: ['drawing', 'plan', 'assess', 'bracket', 'look', 'words'], packages: [] },
  storage: { uses: ['plan'], packages: ['idb'] },
  cli: { uses: ['plan', 'assess', 'words'], packages: ['vite', '@valibot/to-json-schema', 'valibot'] },
  app: {
    uses: [
      ...['calc', 'geom', 'look', 'bracket', 'plan', 'assess', 'words', 'desk', 'drawing'],
      ...['sketch', 'panels', 'paper', 'storage', 'cli'],
    ],
    packages: ['react', 'react-dom', 'zustand', '@fontsource-variable/atkinson-hyperlegible-next'],
  },
};

/** Rooms that may use Node's own modules: they run on the command line, never in the page. */
const NODE_ROOMS = ['cli'];

interface Import {
  readonly specifier: string;
  readonly isTypeOnly: boolean;
}

/** The code with comments gone, so that an import named in a comment is none. */
function withoutComments(code: string): string {
  return code.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/[^\n]*/g, '$1');
}

/** Static and dynamic imports and re-exports of a module. `import { type A }` counts as type-only when every name is. */
function importsOf(code: string): Import[] {
  const found: Import[] = [];
  const text = withoutComments(code);
  const statics = /^\s*(?:import|export)\s+(type\s+)?([\w$*{},\s]*?)\s*\bfrom\s*['"]([^'"]+)['"]/gm;
  for (const [, type, clause = '', specifier = ''] of text.matchAll(statics)) {
    const names = /^\s*\{([^}]*)\}\s*$/
      .exec(clause)?.[1]
      ?.split(',')
      .filter((name) => name.trim() !== '');
    const everyNameIsType = names?.every((name) => /^\s*type\s/.test(name)) ?? false;
    found.push({ specifier, isTypeOnly: type !== undefined || everyNameIsType });
  }
  for (const [, specifier = ''] of text.matchAll(/\bimport\s*\(?\s*['"]([^'"]+)['"]/g)) {
    found.push({ specifier, isTypeOnly: false });
  }
  return found;
}

function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(tsx?|mjs|css)$/.test(name))
    .map((name) => join(folder, name));
}

function roomOf(file: string): string {
  return relative(SRC, file).split(sep)[0] ?? '';
}

function packageOf(specifier: string): string {
  return specifier.split('/', specifier.startsWith('@') ? 2 : 1).join('/');
}

/** Why an import is not allowed, or undefined when it is. */
function objection(file: string, { specifier, isTypeOnly }: Import): string | undefined {
  const from = roomOf(file);
  const room = ROOMS[from];
  if (room === undefined) return `src/${from} is no room of the table`;
  if (specifier === 'konva' || specifier === 'react-konva') return `${specifier}: import its core paths, not its root`;
  if (specifier.startsWith('node:')) return NODE_ROOMS.includes(from) ? undefined : `${from} is to run without Node`;
  if (!specifier.startsWith('.')) {
    return room.packages.includes(packageOf(specifier)) ? undefined : `${from} may not use the package ${specifier}`;
  }
  const target = resolve(dirname(file), specifier);
  if (!target.startsWith(SRC + sep)) return `${specifier} leaves src`;
  const to = roomOf(target);
  if (to === from || room.uses.includes(to)) return undefined;
  if (room.usesModules?.includes(relative(SRC, target).split(sep).join('/'))) return undefined;
  if (room.usesTypesOf?.includes(to)) return isTypeOnly ? undefined : `${from} may import only types of ${to}`;
  return `${from} may not import ${to}`;
}

describe('the import table over the real files', () => {
  const files = sourceFiles(SRC);

  it('finds the files it is to check', () => {
    expect(files.length).toBeGreaterThan(5);
    expect(files.flatMap((file) => importsOf(readFileSync(file, 'utf8'))).length).toBeGreaterThan(5);
  });

  it('every import is allowed by the table', () => {
    const objections = files.flatMap((file) =>
      importsOf(readFileSync(file, 'utf8')).flatMap((entry) => {
        const reason = objection(file, entry);
        return reason === undefined ? [] : [`${relative(ROOT, file)}: '${entry.specifier}': ${reason}`];
      }),
    );
    expect(objections).toEqual([]);
  });

  it('the table itself has no way back: no room reaches itself through others', () => {
    const reaches = (from: string, seen: readonly string[]): boolean =>
      (ROOMS[from]?.uses ?? []).some((to) => seen.includes(to) || reaches(to, [...seen, to]));
    expect(Object.keys(ROOMS).filter((room) => reaches(room, [room]))).toEqual([]);
  });
});

describe('the scan behind it', () => {
  const calc = join(SRC, 'calc', 'x.ts');
  const words = join(SRC, 'words', 'x.ts');
  const ask = (file: string, code: string) => importsOf(code).map((entry) => objection(file, entry) !== undefined);

  it('sees every form of import', () => {
    expect(ask(calc, "import { a } from '../desk/desk.ts';")).toEqual([true]);
    expect(ask(calc, "import a, { b } from '../desk/desk.ts';")).toEqual([true]);
    expect(ask(calc, "import * as a from '../desk/desk.ts';")).toEqual([true]);
    expect(ask(calc, "import '../desk/desk.ts';")).toEqual([true]);
    expect(ask(calc, "export * from '../desk/desk.ts';")).toEqual([true]);
    expect(ask(calc, "export { a } from '../desk/desk.ts';")).toEqual([true]);
    expect(ask(calc, "const a = await import('../desk/desk.ts');")).toEqual([true]);
    expect(ask(calc, "import {\n  a,\n  b,\n} from '../desk/desk.ts';")).toEqual([true]);
    expect(ask(calc, "import type { A } from '../desk/desk.ts';")).toEqual([true]);
    expect(ask(calc, "import { readFileSync } from 'node:fs';")).toEqual([true]);
    expect(ask(calc, "import { b } from './b.ts';\nimport { c } from '../desk/c.ts';")).toEqual([false, true]);
  });

  it('tells types from values', () => {
    expect(ask(words, "import type { A } from '../plan/plan.ts';")).toEqual([false]);
    expect(ask(words, "import { type A, type B } from '../plan/plan.ts';")).toEqual([false]);
    expect(ask(words, "import { type A, b } from '../plan/plan.ts';")).toEqual([true]);
    expect(ask(words, "import { SOURCES } from '../calc/sources.ts';")).toEqual([false]);
    expect(ask(words, "import { chooseFuse } from '../calc/fuse/choose.ts';")).toEqual([true]);
  });

  it('takes no import from a comment', () => {
    expect(importsOf("// import { a } from '../desk/desk.ts';\n/* import '../desk/desk.ts' */")).toEqual([]);
  });
});

describe('the lint rules', () => {
  const LINT_TIMEOUT_MS = 30_000;
  let folder = '';
  let barred: Set<string>;

  /** Lints a file tree under the project's own rules, and answers the files in which a barred import was found. */
  function filesWithBarredImports(): Set<string> {
    const biome = join(ROOT, 'node_modules', '@biomejs', 'biome', 'bin', 'biome');
    const args = ['lint', '--only=style/noRestrictedImports', '--reporter=github', '--max-diagnostics=none'];
    const result = spawnSync(process.execPath, [biome, ...args], { cwd: folder, encoding: 'utf8' });
    expect(result.status, 'the linter has to fail on barred imports').not.toBe(0);
    const named = [...result.stdout.matchAll(/noRestrictedImports,file=([^,]+),/g)].map(([, file = '']) => file);
    return new Set(named.map((file) => relative(folder, resolve(folder, file)).split(sep).join('/')));
  }

  function probe(file: string, specifier: string): void {
    mkdirSync(join(folder, dirname(file)), { recursive: true });
    writeFileSync(join(folder, file), `import { probe } from '${specifier}';\nprobe();\n`);
  }

  beforeAll(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'feedrun-rooms-')));
    cpSync(join(ROOT, '.biome.json'), join(folder, '.biome.json'));
    cpSync(join(ROOT, '.gitignore'), join(folder, '.gitignore'));
    for (const from of Object.keys(ROOMS)) {
      for (const to of Object.keys(ROOMS)) {
        probe(`src/${from}/to_${to}.ts`, `../${to}/probe.ts`);
        probe(`src/${from}/deep/down/to_${to}.ts`, `../../../${to}/deep/probe.ts`);
      }
      for (const name of ['konva', 'react-konva', 'konva/lib/Core', 'react-konva/lib/ReactKonvaCore', 'react']) {
        probe(`src/${from}/package_${name.replaceAll('/', '_')}.ts`, name);
      }
    }
    probe('tests/browser/page.test.ts', '../../src/plan/open.ts');
    probe('tests/plan/open.test.ts', '../../src/plan/open.ts');
    barred = filesWithBarredImports();
  }, LINT_TIMEOUT_MS);

  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('bar src/calc from importing ../desk', () => {
    expect(barred.has('src/calc/to_desk.ts')).toBe(true);
  });

  it.each(Object.entries(ROOMS))('%s: bars every room the table bars, from any depth, and no other', (from, room) => {
    // the linter cannot tell types from values, so rooms open for types are open to it
    const open = [from, ...room.uses, ...(room.usesTypesOf ?? [])];
    for (const to of Object.keys(ROOMS)) {
      const expected = !open.includes(to);
      expect(barred.has(`src/${from}/to_${to}.ts`), `${from} -> ${to}`).toBe(expected);
      expect(barred.has(`src/${from}/deep/down/to_${to}.ts`), `${from}/deep/down -> ${to}`).toBe(expected);
    }
  });

  it.each(Object.keys(ROOMS))('%s: Konva by its core paths in sketch alone, React where components live', (from) => {
    const sketches = from === 'sketch';
    expect(barred.has(`src/${from}/package_konva.ts`)).toBe(true);
    expect(barred.has(`src/${from}/package_react-konva.ts`)).toBe(true);
    expect(barred.has(`src/${from}/package_konva_lib_Core.ts`)).toBe(!sketches);
    expect(barred.has(`src/${from}/package_react-konva_lib_ReactKonvaCore.ts`)).toBe(!sketches);
    expect(barred.has(`src/${from}/package_react.ts`)).toBe(!['sketch', 'panels', 'app'].includes(from));
  });

  it('keep browser tests out of src, and no other tests', () => {
    expect(barred.has('tests/browser/page.test.ts')).toBe(true);
    expect(barred.has('tests/plan/open.test.ts')).toBe(false);
  });
});
