import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** A script of this folder as the page ships its code: bundled and minified. Running the sources costs up to twice as much. */
export async function built(script: string): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'feedrun-bench-'));
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: fileURLToPath(new URL(script, import.meta.url)),
      outDir,
      minify: true,
      rolldownOptions: { output: { entryFileNames: 'script.mjs' } },
    },
  });
  return join(outDir, 'script.mjs');
}
