/** Builds the page and serves what was built: the one way for `npm start`, the browser tests and the pictures. */
import { fileURLToPath } from 'node:url';
import { build, type InlineConfig, preview, type Rolldown } from 'vite';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** A served page: where it answers, and how to stop it. */
export interface ServedPage {
  readonly url: string;
  /** All its addresses: more than one when it serves every network of the machine. */
  readonly urls: readonly string[];
  close(): Promise<void>;
}

/**
 * Builds for release: NODE_ENV is held at production meanwhile. Under a test runner it says 'test', and the result
 * would then be a development build of React, which is not the page people get.
 */
export async function buildForRelease(config: InlineConfig): Promise<Rolldown.RolldownOutput> {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    const result = await build({ logLevel: 'warn', ...config });
    const output = Array.isArray(result) ? result[0] : result;
    if (output === undefined || !('output' in output)) throw new Error('The build gave no output.');
    return output;
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
}

/** Builds the page into `outDir` (relative to the project; emptied first). */
export function buildPage(outDir: string): Promise<Rolldown.RolldownOutput> {
  return buildForRelease({ root: ROOT, build: { outDir, emptyOutDir: true } });
}

/** Serves a built page inside this process, so that nothing outlives it. Port 0 takes any free port. */
export async function servePage(outDir: string, host: string, port: number): Promise<ServedPage> {
  const server = await preview({
    root: ROOT,
    logLevel: 'warn',
    build: { outDir },
    preview: { host, port, strictPort: true, open: false },
  });
  const urls = [...(server.resolvedUrls?.local ?? []), ...(server.resolvedUrls?.network ?? [])];
  const [url] = urls;
  if (url === undefined) throw new Error(`The server found no address for the host '${host}'.`);
  return { url, urls, close: () => server.close() };
}
