import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const filesIn = (place: string): string[] =>
  place.endsWith('.ts')
    ? [place]
    : readdirSync(`${ROOT}/${place}`, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts'))
        .map((name) => `${place}/${name}`);

/** Every text of files, or of the files of folders, as written down: comments taken out. */
export const writtenTexts = (...places: readonly string[]): string[] =>
  places
    .flatMap(filesIn)
    .map((name) =>
      readFileSync(`${ROOT}/${name}`, 'utf8')
        .replace(/\/\*[\s\S]*?\*\//g, '')
        .replace(/(^|\s)\/\/[^\n]*/g, '$1'),
    )
    .flatMap((code) => code.match(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g) ?? []);
